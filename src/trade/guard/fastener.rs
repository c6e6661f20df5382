//! What a fastener is, and so what torque becomes it.

use serde::{Deserialize, Serialize};

/// What is tightened.
#[derive(Debug, Clone, Copy, Default, PartialEq, Eq, Hash, Serialize, Deserialize)]
#[serde(rename_all = "snake_case")]
pub enum Fastener {
    /// Nobody said; judged as a bolt, and asked about when the torque is low for one.
    #[default]
    NotTold,
    /// It clamps: a bolt, a screw, a nut.
    Bolt,
    /// A stud driven into its hole; the nut on it is a bolt's.
    Stud,
    /// It seals: a plug, a union, a sensor, a nozzle holder.
    Plug,
    /// A hollow bolt that holds a ring fitting between two washers.
    Banjo,
    /// A spark plug or a glow plug.
    HeadPlug,
    /// A nut that holds what sits on a shaft.
    ShaftNut,
    /// A bolt that squeezes a soft gasket.
    SoftClamp,
}

/// What a torque is measured against.
#[derive(Debug, Clone, Copy)]
pub(super) enum Law {
    /// What its class bears.
    Class,
    /// A torque of its own: so many N·m for each square millimetre of diameter².
    Square(f64),
    /// A share of what a plain bolt of class 8.8 is brought to.
    Share(f64),
}

/// How far from its own torque a fastener that loads its thread little is still believed: by these
/// factors below and above it, it is noted and stopped.
#[derive(Debug, Clone, Copy)]
pub(super) struct Spread {
    pub(super) noted_below: f64,
    pub(super) stopped_below: f64,
    pub(super) noted_above: f64,
    pub(super) stopped_above: f64,
}

/// The second squared is under eight, so that of two torques eight times apart never both pass.
const CLOSE: Spread = Spread {
    noted_below: 2.0,
    stopped_below: 2.8,
    noted_above: 2.0,
    stopped_above: 2.8,
};
/// From just run home to held firmly is ten times: wider downwards, for upwards a slip would pass. What passes without
/// a word times `stopped_above` is under 8.85: in·lb typed as N·m is stopped. The firmest of tables are stopped too.
const LIGHT: Spread = Spread {
    noted_below: 3.15,
    stopped_below: 3.25,
    noted_above: 2.2,
    stopped_above: 2.8,
};

impl Fastener {
    /// All of them, in the order they are offered.
    pub const ALL: [Self; 8] = [
        Self::NotTold,
        Self::Bolt,
        Self::Stud,
        Self::Plug,
        Self::Banjo,
        Self::HeadPlug,
        Self::ShaftNut,
        Self::SoftClamp,
    ];

    /// Whether nobody said.
    pub fn is_not_told(&self) -> bool {
        *self == Self::NotTold
    }

    /// It in words.
    pub const fn words(self) -> &'static str {
        match self {
            Self::NotTold => "not told",
            Self::Bolt => "bolt, screw or nut",
            Self::Stud => "stud driven in",
            Self::Plug => "plug, union or sensor",
            Self::Banjo => "banjo bolt",
            Self::HeadPlug => "spark or glow plug",
            Self::ShaftNut => "shaft nut",
            Self::SoftClamp => "clamp on a soft gasket",
        }
    }

    /// What stands behind its thread: "M14×1.5 plug"; nothing for a bolt.
    pub const fn behind(self) -> &'static str {
        match self {
            Self::NotTold | Self::Bolt => "",
            Self::Stud => " stud",
            Self::Plug => " plug",
            Self::Banjo => " banjo bolt",
            Self::HeadPlug => " spark or glow plug",
            Self::ShaftNut => " shaft nut",
            Self::SoftClamp => " on a soft gasket",
        }
    }

    /// Whether it is drilled through: what its class says of a solid bolt, it doesn't bear.
    pub const fn is_hollow(self) -> bool {
        matches!(self, Self::Banjo)
    }

    /// The law of its torque.
    ///
    /// A seat seals by pull for each millimetre round it, so a plug's torque grows with the square of
    /// the diameter, not with its cube as a bolt's: 0.12 N·m/mm² lies amid unions in aluminium (0.05)
    /// and O-ring ends in steel (0.25); spark plugs by the same. A banjo bolt seals on two washers at
    /// once: 0.2. A shaft nut holds, rather than stretches, its shaft: 0.38. A bolt on a soft gasket gets
    /// not half a bolt's, a stud driven in not a third.
    /// The middles of the tables in `tests/published/corpus`, rounded.
    pub(super) const fn law(self) -> Law {
        match self {
            Self::NotTold | Self::Bolt => Law::Class,
            Self::Plug | Self::HeadPlug => Law::Square(0.12),
            Self::Banjo => Law::Square(0.2),
            Self::ShaftNut => Law::Square(0.38),
            Self::SoftClamp => Law::Share(0.45),
            Self::Stud => Law::Share(0.31),
        }
    }

    /// How far from that torque it is believed.
    pub(super) const fn spread(self) -> Spread {
        match self {
            Self::Stud => LIGHT,
            Self::NotTold
            | Self::Bolt
            | Self::Plug
            | Self::Banjo
            | Self::HeadPlug
            | Self::ShaftNut
            | Self::SoftClamp => CLOSE,
        }
    }
}
