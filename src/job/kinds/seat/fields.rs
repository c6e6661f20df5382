//! The numbers the Seat screen asks for.

use super::data::{Seat, SeatDepth};
use super::source::{self, Side};
use crate::job::field::{Field, Kept};
use crate::trade::heat_plan::HoleIn;

const DIAMETER: (f64, f64) = (0.5, 999.0);
const DIAMETER_WORDS: &str = "Enter a diameter in mm, from 0.5 to 999.";
const TEMPERATURE: (f64, f64) = (-100.0, 300.0);
const TEMPERATURE_WORDS: &str = "Enter a temperature from −100 to 300 °C.";

const fn diameter(name: &'static str, get: fn(&Seat) -> Option<f64>, set: fn(&mut Seat, f64)) -> Field<Seat> {
    Field {
        name,
        kept: Kept::Millimetre,
        sense: DIAMETER,
        refusal: DIAMETER_WORDS,
        get,
        set,
    }
}

const fn limit(name: &'static str, get: fn(&Seat) -> Option<f64>, set: fn(&mut Seat, f64)) -> Field<Seat> {
    Field {
        name,
        kept: Kept::Celsius,
        sense: TEMPERATURE,
        refusal: TEMPERATURE_WORDS,
        get,
        set,
    }
}

/// The sizes of the fit. A field that reads none now is not shown.
pub static SIZES: [Field<Seat>; 5] = [
    Field {
        name: "size",
        kept: Kept::Millimetre,
        sense: (1.0, 180.0),
        refusal: "Enter a nominal size from 1 to 180 mm.",
        get: source::nominal_mm,
        set: source::set_nominal,
    },
    diameter(
        "hole, read",
        |s| source::reading_mm(s, Side::Hole),
        |s, mm| source::set_reading(s, Side::Hole, mm),
    ),
    limit(
        "hole’s temperature then",
        |s| source::read_at_c(s, Side::Hole),
        |s, c| source::set_read_at(s, Side::Hole, c),
    ),
    diameter(
        "what goes in, read",
        |s| source::reading_mm(s, Side::Shaft),
        |s, mm| source::set_reading(s, Side::Shaft, mm),
    ),
    limit(
        "its temperature then",
        |s| source::read_at_c(s, Side::Shaft),
        |s, c| source::set_read_at(s, Side::Shaft, c),
    ),
];

/// What may be heated, and how hot.
pub static LIMITS: [Field<Seat>; 2] = [
    limit(
        "case (or shaft) not hotter than",
        |s| Some(s.housing_limit_c),
        |s, c| s.housing_limit_c = c,
    ),
    limit(
        "part not hotter than",
        |s| Some(s.part_limit_c),
        |s, c| s.part_limit_c = c,
    ),
];

/// The shape around the fit.
pub static SHAPE: [Field<Seat>; 4] = [
    Field {
        name: "length in contact",
        kept: Kept::Millimetre,
        sense: (0.5, 500.0),
        refusal: "Enter the length in contact, from 0.5 to 500 mm.",
        get: |s| Some(s.length_mm),
        set: |s, mm| s.length_mm = mm,
    },
    Field {
        name: "inside of what goes in, 0 if solid",
        kept: Kept::Millimetre,
        sense: (0.0, 999.0),
        refusal: DIAMETER_WORDS,
        get: |s| Some(s.part_inside_mm),
        set: |s, mm| s.part_inside_mm = mm,
    },
    diameter(
        "outside of the boss",
        |s| Some(s.boss_outside_mm),
        |s, mm| s.boss_outside_mm = mm,
    ),
    Field {
        name: "wall that holds the heat",
        kept: Kept::Millimetre,
        sense: (0.1, 200.0),
        refusal: "Enter a wall thickness from 0.1 to 200 mm.",
        get: |s| Some(s.wall_mm),
        set: |s, mm| s.wall_mm = mm,
    },
];

/// What the tools must clear.
pub static TOOLS: [Field<Seat>; 2] = [
    Field {
        name: "face that is pushed",
        kept: Kept::Millimetre,
        sense: (0.0, 999.0),
        refusal: DIAMETER_WORDS,
        get: |s| {
            let default = match s.hole_in {
                HoleIn::Housing => s.part_inside_mm,
                HoleIn::Part => s.boss_outside_mm,
            };
            Some(s.face_mm.unwrap_or(default))
        },
        set: |s, mm| s.face_mm = Some(mm),
    },
    Field {
        name: "opening behind the shoulder, 0 if none",
        kept: Kept::Millimetre,
        sense: (0.0, 999.0),
        refusal: DIAMETER_WORDS,
        get: |s| (s.hole_in == HoleIn::Housing).then_some(s.shoulder_mm.unwrap_or(0.0)),
        set: |s, mm| s.shoulder_mm = (mm > 0.0).then_some(mm),
    },
];

const DEPTH: (f64, f64) = (-100.0, 500.0);
const DEPTH_WORDS: &str = "Enter a depth below the face in mm; a minus sign where it stands proud.";

const fn depth(
    name: &'static str,
    sense: (f64, f64),
    get: fn(&Seat) -> Option<f64>,
    set: fn(&mut Seat, f64),
) -> Field<Seat> {
    Field {
        name,
        kept: Kept::Millimetre,
        sense,
        refusal: DEPTH_WORDS,
        get,
        set,
    }
}

fn with_depth(seat: &mut Seat, change: impl FnOnce(&mut SeatDepth)) {
    change(seat.depth.get_or_insert_with(SeatDepth::default));
}

/// How deep it must sit; shown where a depth is stated.
pub static DEPTHS: [Field<Seat>; 4] = [
    depth(
        "depth, least",
        DEPTH,
        |s| s.depth.map(|d| d.least_mm),
        |s, mm| with_depth(s, |d| d.least_mm = mm),
    ),
    depth(
        "depth, most",
        DEPTH,
        |s| s.depth.map(|d| d.most_mm),
        |s, mm| with_depth(s, |d| d.most_mm = mm),
    ),
    depth(
        "face to shoulder, 0 if not known",
        (0.0, 500.0),
        |s| s.depth.map(|d| d.bore_mm.unwrap_or(0.0)),
        |s, mm| with_depth(s, |d| d.bore_mm = (mm > 0.0).then_some(mm)),
    ),
    depth(
        "gap left open behind, 0 if none",
        (0.0, 100.0),
        |s| s.depth.map(|d| d.gap_mm.unwrap_or(0.0)),
        |s, mm| with_depth(s, |d| d.gap_mm = (mm > 0.0).then_some(mm)),
    ),
];
