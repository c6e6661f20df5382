//! The kinds of work a step can be, a folder or file each, with the numbers each needs.
//!
//! Numbers are kept as the manual or the mechanic states them, in the unit the field names;
//! `trade` gets quantities. A new kind: its own file, a line in [`Work`], [`Work::kind`], [`Work::kind_mut`]
//! and [`LIST`].

pub mod around;
pub mod bond;
pub mod check;
pub mod clean;
pub mod fasten;
pub mod fill;
pub mod fit;
pub mod gauge;
mod joint;
pub mod kind;
pub mod lift;
pub mod run;
pub mod seat;
pub mod select;
pub mod turn;

pub use bond::Bond;
pub use check::{Bore, Check, DEPTH_WORDS, DIRECTION_WORDS, Journal, Limit, free_name, grid_name};
pub use clean::Clean;
pub use fasten::{Fasten, Reuse};
pub use fill::Fill;
pub use fit::Fit;
pub use gauge::{Gauge, Gauged};
pub use lift::{LiftWay, LiftWork};
pub use run::Run;
pub use seat::{Seat, SeatDepth, SeatWay};
pub use select::{Piece, Select};
pub use turn::Turn;

use crate::trade::application::Application;
pub(super) use kind::Kind;
use serde::{Deserialize, Serialize};

/// One kind of work.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
#[serde(rename_all = "snake_case")]
pub enum Work {
    /// Wash, blow out, wipe.
    Clean(Clean),
    /// Measure against limits.
    Check(Check),
    /// Put a part in place.
    Fit(Fit),
    /// Bring fasteners to torque.
    Fasten(Fasten),
    /// Put a compound on a joint and let it cure.
    Bond(Bond),
    /// Press or shrink a part into its bore.
    Seat(Seat),
    /// Lift by hand or by hoist.
    Lift(LiftWork),
    /// Turn by hand and feel.
    Turn(Turn),
    /// Fill with a fluid.
    Fill(Fill),
    /// Choose shims, washers, shells or rings by size.
    Select(Select),
    /// Read a bearing's clearance off gauging plastic.
    Gauge(Gauge),
    /// Start, run warm, look for leaks.
    Run(Run),
}

/// A kind by its word, and empty work of it.
pub struct Listed {
    /// The kind in one word, as the screen shows it.
    pub word: &'static str,
    /// Empty work; none where it can't do without something first. Sizes and masses begin at zero,
    /// which no sum takes: nothing is made up.
    pub blank: fn() -> Option<Work>,
}

const fn listed(word: &'static str, blank: fn() -> Option<Work>) -> Listed {
    Listed { word, blank }
}

/// The kinds of work a new step may be, in the order they are offered.
pub static LIST: [Listed; 12] = [
    listed("Clean", || Some(Work::Clean(Clean::default()))),
    listed("Check", || Some(Work::Check(Check::default()))),
    listed("Gauge", || Some(Work::Gauge(Gauge::default()))),
    listed("Select", || Some(Work::Select(Select::blank()))),
    listed("Fit", || Some(Work::Fit(Fit::default()))),
    // Fasteners need their thread and torque first: see [`fasten::begin`].
    listed("Fasten", || None),
    listed("Bond", || Some(Work::Bond(Bond::blank()))),
    listed("Seat", || Some(Work::Seat(Seat::blank()))),
    listed("Lift", || Some(Work::Lift(LiftWork::blank()))),
    listed("Turn", || Some(Work::Turn(Turn::default()))),
    listed("Fill", || Some(Work::Fill(Fill::default()))),
    listed("Run", || Some(Work::Run(Run::blank()))),
];

/// Empty work of the kind of that word; none of fasteners.
pub fn blank(word: &str) -> Option<Work> {
    LIST.iter()
        .find(|kind| kind.word == word)
        .and_then(|kind| (kind.blank)())
}

impl Work {
    /// The work as what every kind says of itself.
    pub fn kind(&self) -> &dyn Kind {
        match self {
            Self::Clean(it) => it,
            Self::Check(it) => it,
            Self::Fit(it) => it,
            Self::Fasten(it) => it,
            Self::Bond(it) => it,
            Self::Seat(it) => it,
            Self::Lift(it) => it,
            Self::Turn(it) => it,
            Self::Fill(it) => it,
            Self::Select(it) => it,
            Self::Gauge(it) => it,
            Self::Run(it) => it,
        }
    }

    /// The work as what every kind says of itself, to change it.
    pub fn kind_mut(&mut self) -> &mut dyn Kind {
        match self {
            Self::Clean(it) => it,
            Self::Check(it) => it,
            Self::Fit(it) => it,
            Self::Fasten(it) => it,
            Self::Bond(it) => it,
            Self::Seat(it) => it,
            Self::Lift(it) => it,
            Self::Turn(it) => it,
            Self::Fill(it) => it,
            Self::Select(it) => it,
            Self::Gauge(it) => it,
            Self::Run(it) => it,
        }
    }

    /// The kind in one word, as the screen shows it.
    pub fn word(&self) -> &'static str {
        self.kind().word()
    }

    /// What the step's joint is, where a compound may go on.
    pub fn application(&self) -> Option<&Application> {
        self.kind().application()
    }

    /// Whether a compound that cures goes on in this step.
    pub fn cures(&self) -> bool {
        self.application()
            .is_some_and(|application| crate::trade::compound::recommend(application).cure.is_some())
    }
}
