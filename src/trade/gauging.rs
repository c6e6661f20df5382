//! Gauging plastic: how wide a thread of it is squeezed tells a bearing's clearance.
//!
//! The card it is sold with tells the clearance for a width; here is only which one to take, and what its
//! card can tell at all.

use super::quantity::{Length, LengthUnit};
use serde::{Deserialize, Serialize};

/// What is sold, by the clearance they tell.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize, Deserialize)]
#[serde(rename_all = "snake_case")]
pub enum Plastic {
    /// 0.001 to 0.003 in.
    Fine,
    /// 0.002 to 0.006 in.
    Medium,
    /// 0.004 to 0.009 in.
    Coarse,
}

/// Cards in mm are rounded: 0.003 in is printed as 0.076 and read as 0.08.
const CARD_IN: f64 = 0.000_2;

impl Plastic {
    /// Every one, the finest first.
    pub const ALL: [Self; 3] = [Self::Fine, Self::Medium, Self::Coarse];

    /// The clearances its card tells (TM 5-2420-222-34).
    pub fn range(self) -> (Length, Length) {
        let inch = |value: f64| LengthUnit::Inch.length(value);
        match self {
            Self::Fine => (inch(0.001), inch(0.003)),
            Self::Medium => (inch(0.002), inch(0.006)),
            Self::Coarse => (inch(0.004), inch(0.009)),
        }
    }

    /// What it is called.
    pub fn words(self) -> &'static str {
        match self {
            Self::Fine => "fine",
            Self::Medium => "medium",
            Self::Coarse => "coarse",
        }
    }

    /// Whether its card tells that clearance, as cards are rounded.
    pub fn tells(self, clearance: Length) -> bool {
        let (least, most) = self.range();
        let slack = LengthUnit::Inch.length(CARD_IN);
        clearance >= least - slack && clearance <= most + slack
    }
}

/// Which to take for limits.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct Take {
    /// Which.
    pub plastic: Plastic,
    /// Its card tells every clearance within the limits.
    pub whole: bool,
}

/// The finest whose card tells all from `least` to `most`; where none does, the one that tells the
/// most of it, of as much the coarser: too wide a gap must show.
pub fn take(least: Length, most: Length) -> Take {
    if let Some(plastic) = Plastic::ALL
        .into_iter()
        .find(|plastic| plastic.tells(least) && plastic.tells(most))
    {
        return Take { plastic, whole: true };
    }
    let told = |plastic: &Plastic| {
        let (from, to) = plastic.range();
        let ends = |a: Length, b: Length| (LengthUnit::Micrometre.value_of(a - b) * 1000.0).round();
        // Negative where it tells nothing of it: then the nearest.
        ends(
            if to < most { to } else { most },
            if from > least { from } else { least },
        )
    };
    let best = Plastic::ALL
        .into_iter()
        .max_by(|a, b| told(a).total_cmp(&told(b)))
        .unwrap_or(Plastic::Medium);
    Take {
        plastic: best,
        whole: false,
    }
}
