//! The fields of a lift.

use super::data::{LiftWay, LiftWork};
use crate::job::field::{Field, Kept, Number, pick};
use crate::trade::quantity::MassUnit;
use crate::trade::sling::Hitch;

/// The load, hoist or hands.
pub static LOAD: [Number<LiftWork>; 1] = [Number::<LiftWork>::new(
    ("mass", "load, with its rigging"),
    Kept::Kilogram,
    (0.1, 5_000.0),
    "lift/mass_kg",
    |w| Some(w.mass_kg),
    |w, kg| w.mass_kg = kg,
)
.in_unit(|w| Kept::Kilogram.shown(w.told_in()))];

/// Centimetres, or inches for who weighs in pounds.
fn centimetres(work: &LiftWork) -> (&'static str, f64) {
    Kept::Centimetre.shown(work.told_in())
}

/// Where hands can be, cm; a load held against the body is reckoned from 25 cm on by the equation itself.
const REACH: (f64, f64) = (0.0, 300.0);

/// By hand; read only where hands lift.
pub static HANDS: [Number<LiftWork>; 4] = [
    Number::<LiftWork>::new(
        ("reach", "reach, ankles to hands"),
        Kept::Centimetre,
        REACH,
        "lift/way/hands/reach_cm",
        |w| match w.way {
            LiftWay::Hands { reach_cm, .. } => Some(reach_cm),
            LiftWay::Sling { .. } => None,
        },
        |w, cm| {
            if let LiftWay::Hands { reach_cm, .. } = &mut w.way {
                *reach_cm = cm;
            }
        },
    )
    .in_unit(centimetres),
    Number::<LiftWork>::new(
        ("from", "hands at the start"),
        Kept::Centimetre,
        REACH,
        "lift/way/hands/from_cm",
        |w| match w.way {
            LiftWay::Hands { from_cm, .. } => Some(from_cm),
            LiftWay::Sling { .. } => None,
        },
        |w, cm| {
            if let LiftWay::Hands { from_cm, .. } = &mut w.way {
                *from_cm = cm;
            }
        },
    )
    .in_unit(centimetres),
    Number::<LiftWork>::new(
        ("to", "hands at the end"),
        Kept::Centimetre,
        REACH,
        "lift/way/hands/to_cm",
        |w| match w.way {
            LiftWay::Hands { to_cm, .. } => Some(to_cm),
            LiftWay::Sling { .. } => None,
        },
        |w, cm| {
            if let LiftWay::Hands { to_cm, .. } = &mut w.way {
                *to_cm = cm;
            }
        },
    )
    .in_unit(centimetres),
    // Past 135° the equation gives no weight at all, and says so: it is no reason not to be told.
    Number::<LiftWork>::new(
        ("turn", "turn of the body"),
        Kept::Degree,
        (0.0, 180.0),
        "lift/way/hands/turn_deg",
        |w| match w.way {
            LiftWay::Hands { turn_deg, .. } => Some(turn_deg),
            LiftWay::Sling { .. } => None,
        },
        |w, deg| {
            if let LiftWay::Hands { turn_deg, .. } = &mut w.way {
                *turn_deg = deg;
            }
        },
    ),
];

/// By hand, the reach at the end, where it is another.
pub static REACH_TO: [Number<LiftWork>; 1] = [Number::<LiftWork>::new(
    ("reach_to", "reach at the end"),
    Kept::Centimetre,
    REACH,
    "lift/reach_to_cm",
    |w| w.reach_to_cm,
    |w, cm| w.reach_to_cm = Some(cm),
)
.in_unit(centimetres)
.or_none(|w| w.reach_to_cm = None)];

/// Where the centre of gravity is, when it isn't in the middle: between two legs or two people.
pub static CENTRE: [Number<LiftWork>; 2] = [
    Number::<LiftWork>::new(
        ("span", "two lifting points apart"),
        Kept::Centimetre,
        (1.0, 1_000.0),
        "lift/span_cm",
        |w| w.span_cm,
        |w, cm| w.span_cm = Some(cm),
    )
    .in_unit(centimetres)
    .or_none(|w| w.span_cm = None),
    Number::<LiftWork>::new(
        ("near", "nearer one to the centre of gravity"),
        Kept::Centimetre,
        (0.1, 1_000.0),
        "lift/near_cm",
        |w| w.near_cm,
        |w, cm| w.near_cm = Some(cm),
    )
    .in_unit(centimetres)
    .or_none(|w| w.near_cm = None),
];

/// How many legs; the screen offers them as words.
static LEGS: [Number<LiftWork>; 1] = [Number::<LiftWork>::new(
    ("legs", "sling legs"),
    Kept::Bare,
    (1.0, 4.0),
    "lift/way/sling/legs",
    |w| match w.way {
        LiftWay::Sling { legs, .. } => Some(f64::from(legs)),
        LiftWay::Hands { .. } => None,
    },
    |w, count| {
        if let LiftWay::Sling { legs, .. } = &mut w.way {
            *legs = count as u8;
        }
    },
)
.whole()];

/// By sling; read only where a hoist lifts. Legs that lie flat can be told: that is what the STOP is for.
pub static SLING: [Number<LiftWork>; 1] = [Number::<LiftWork>::new(
    ("angle", "legs, from the horizontal"),
    Kept::Degree,
    (0.0, 90.0),
    "lift/way/sling/angle_deg",
    |w| match w.way {
        LiftWay::Sling { angle_deg, .. } => Some(angle_deg),
        LiftWay::Hands { .. } => None,
    },
    |w, deg| {
        if let LiftWay::Sling { angle_deg, .. } = &mut w.way {
            *angle_deg = deg;
        }
    },
)];

/// The boom; the screen offers the holes of my hoist.
pub static BOOM: [Number<LiftWork>; 1] = [Number::<LiftWork>::new(
    ("boom", "post to hook"),
    Kept::Millimetre,
    (1.0, 20_000.0),
    "lift/boom_mm",
    |w| w.boom_mm,
    |w, mm| w.boom_mm = Some(mm),
)
.or_none(|w| w.boom_mm = None)];

/// Every field of a lift, in the order of the plan.
pub static TABLE: [Field<LiftWork>; 13] = [
    Field::Words {
        id: "load",
        label: "what is lifted",
        get: |w| &w.load,
        set: |w, words| w.load = words,
    },
    Field::Choice {
        id: "weighs_in",
        label: "told in",
        offered: || {
            let words = [("0", "kg and cm"), ("1", "lb and inches")];
            words
                .map(|(at, words)| (at.to_owned(), words.to_owned()))
                .to_vec()
        },
        get: |w| {
            let words = match w.told_in() {
                MassUnit::Kilogram => "kg and cm",
                MassUnit::Pound => "lb and inches",
            };
            words.to_owned()
        },
        set: |w, at| {
            w.weighs_in = Some(pick(&[MassUnit::Kilogram, MassUnit::Pound], at)?);
            Ok(())
        },
    },
    Field::Numbers(&LOAD),
    Field::Flag {
        id: "sling",
        label: "by sling",
        get: |w| matches!(w.way, LiftWay::Sling { .. }),
        set: |w, yes| w.way = if yes { LiftWay::sling() } else { LiftWay::hands() },
    },
    Field::Numbers(&HANDS),
    Field::Numbers(&REACH_TO),
    Field::Numbers(&LEGS),
    Field::Numbers(&SLING),
    Field::Choice {
        id: "hitch",
        label: "slings go round it",
        offered: || {
            let words = Hitch::ALL.iter().enumerate();
            words
                .map(|(at, hitch)| (at.to_string(), hitch.words().to_owned()))
                .collect()
        },
        get: |w| w.hitch.words().to_owned(),
        set: |w, at| {
            w.hitch = pick(&Hitch::ALL, at)?;
            Ok(())
        },
    },
    Field::Flag {
        id: "eyebolts",
        label: "on eyebolts with a shoulder",
        get: |w| w.eyebolts,
        set: |w, yes| w.eyebolts = yes,
    },
    Field::Numbers(&CENTRE),
    Field::AtBench(&BOOM),
    Field::Flag {
        id: "under",
        label: "somebody reaches under it",
        get: |w| w.under_load,
        set: |w, yes| w.under_load = yes,
    },
];
