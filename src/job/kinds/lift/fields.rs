//! The numbers the Lift screen asks for.

use super::data::{LiftWay, LiftWork};
use crate::job::field::{Field, Kept};

/// The load, hoist or hands.
pub static LOAD: [Field<LiftWork>; 1] = [Field {
    name: "load, with its rigging",
    kept: Kept::Kilogram,
    sense: (0.1, 5_000.0),
    refusal: "Enter the mass, above zero and under 5 000 kg.",
    get: |w| Some(w.mass_kg),
    set: |w, kg| w.mass_kg = kg,
}];

const HEIGHT: (f64, f64) = (0.0, 300.0);
const HEIGHT_WORDS: &str = "Enter a height of the hands above the floor, from 0 to 300 cm.";

const fn height(
    name: &'static str,
    get: fn(&LiftWork) -> Option<f64>,
    set: fn(&mut LiftWork, f64),
) -> Field<LiftWork> {
    Field {
        name,
        kept: Kept::Centimetre,
        sense: HEIGHT,
        refusal: HEIGHT_WORDS,
        get,
        set,
    }
}

/// By hand; read only where hands lift.
pub static HANDS: [Field<LiftWork>; 4] = [
    Field {
        name: "reach, ankles to hands",
        kept: Kept::Centimetre,
        sense: HEIGHT,
        refusal: "Enter the reach from the ankles to the hands, from 0 to 300 cm.",
        get: |w| match w.way {
            LiftWay::Hands { reach_cm, .. } => Some(reach_cm),
            LiftWay::Sling { .. } => None,
        },
        set: |w, cm| {
            if let LiftWay::Hands { reach_cm, .. } = &mut w.way {
                *reach_cm = cm;
            }
        },
    },
    height(
        "hands at the start",
        |w| match w.way {
            LiftWay::Hands { from_cm, .. } => Some(from_cm),
            LiftWay::Sling { .. } => None,
        },
        |w, cm| {
            if let LiftWay::Hands { from_cm, .. } = &mut w.way {
                *from_cm = cm;
            }
        },
    ),
    height(
        "hands at the end",
        |w| match w.way {
            LiftWay::Hands { to_cm, .. } => Some(to_cm),
            LiftWay::Sling { .. } => None,
        },
        |w, cm| {
            if let LiftWay::Hands { to_cm, .. } = &mut w.way {
                *to_cm = cm;
            }
        },
    ),
    Field {
        name: "turn of the body",
        kept: Kept::Degree,
        sense: (0.0, 180.0),
        refusal: "Enter the turn from straight ahead, from 0 to 180°.",
        get: |w| match w.way {
            LiftWay::Hands { turn_deg, .. } => Some(turn_deg),
            LiftWay::Sling { .. } => None,
        },
        set: |w, deg| {
            if let LiftWay::Hands { turn_deg, .. } = &mut w.way {
                *turn_deg = deg;
            }
        },
    },
];

/// By sling; read only where a hoist lifts.
pub static SLING: [Field<LiftWork>; 1] = [Field {
    name: "legs, from the horizontal",
    kept: Kept::Degree,
    sense: (0.0, 90.0),
    refusal: "Enter the legs’ angle from the horizontal, from 0 to 90°.",
    get: |w| match w.way {
        LiftWay::Sling { angle_deg, .. } => Some(angle_deg),
        LiftWay::Hands { .. } => None,
    },
    set: |w, deg| {
        if let LiftWay::Sling { angle_deg, .. } = &mut w.way {
            *angle_deg = deg;
        }
    },
}];
