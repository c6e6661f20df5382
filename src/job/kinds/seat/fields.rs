//! The fields of a press fit.
//!
//! Where the plan and the Seat screen once asked for one number within two ranges, the row has the wider
//! end of each: what either took must come back in from its own file, and what the formulas can't reckon
//! with they refuse themselves, in their own words.

use super::answer::nominal;
use super::data::{Seat, SeatDepth, SeatWay};
use super::manual;
use super::sense;
use super::service;
use super::source::{self, Side, follow_materials};
use crate::job::field::{Entry, Field, Kept, Number, Refused, Set, refuse};
use crate::trade::fit::{FitCode, SizeSource};
use crate::trade::heat_plan::HoleIn;
use crate::trade::material::Material;
use crate::trade::quantity::{
    Length, MassUnit, ThermodynamicTemperature, decimal, in_mark, no_number, shortest,
};
use uom::si::length::millimeter;
use uom::si::thermodynamic_temperature::degree_celsius;

/// Diameters that can be read, mm: from a pin to a housing that two arms still span.
const DIAMETER: (f64, f64) = (0.5, 2_000.0);
/// A nominal size, mm. The fit tables end sooner, and say so.
const NOMINAL: (f64, f64) = (1.0, 2_000.0);
/// A size that may be nothing: a solid part, a bore that goes through.
const OR_NOTHING: (f64, f64) = (0.0, 2_000.0);
/// A length, a wall or a boss, mm: from a shim on.
const SOLID: (f64, f64) = (0.1, 2_000.0);
/// Temperatures, °C: from past dry ice to where steels lose their temper. A limit under the shop's
/// temperature is told of a part that must stay cold.
const TEMPERATURE: (f64, f64) = (-100.0, 300.0);

const fn mm(
    id: (&'static str, &'static str),
    range: (f64, f64),
    stored: &'static str,
    get: fn(&Seat) -> Option<f64>,
    set: fn(&mut Seat, f64),
) -> Number<Seat> {
    Number::new(id, Kept::Millimetre, range, stored, get, set)
}

const fn celsius(
    id: (&'static str, &'static str),
    stored: &'static str,
    get: fn(&Seat) -> Option<f64>,
    set: fn(&mut Seat, f64),
) -> Number<Seat> {
    Number::new(id, Kept::Celsius, TEMPERATURE, stored, get, set)
}

/// The sizes of the fit. A field that reads none now is not shown.
pub static SIZES: [Number<Seat>; 9] = [
    mm(
        ("size", "size"),
        NOMINAL,
        "size/class/nominal_mm",
        source::nominal_mm,
        source::set_nominal,
    ),
    mm(
        ("hole_read", "hole, read"),
        DIAMETER,
        "size/measured/size_mm",
        |s| source::reading_mm(s, Side::Hole),
        |s, mm| source::set_reading(s, Side::Hole, mm),
    ),
    celsius(
        ("hole_at", "hole’s temperature then"),
        "size/measured/at_c",
        |s| source::read_at_c(s, Side::Hole),
        |s, c| source::set_read_at(s, Side::Hole, c),
    ),
    mm(
        ("shaft_read", "what goes in, read"),
        DIAMETER,
        "size/measured/size_mm",
        |s| source::reading_mm(s, Side::Shaft),
        |s, mm| source::set_reading(s, Side::Shaft, mm),
    ),
    celsius(
        ("shaft_at", "its temperature then"),
        "size/measured/at_c",
        |s| source::read_at_c(s, Side::Shaft),
        |s, c| source::set_read_at(s, Side::Shaft, c),
    ),
    mm(
        ("hole_least", "hole, least"),
        DIAMETER,
        "size/between/least_mm",
        |s| source::limits_mm(s, Side::Hole).map(|(least, _)| least),
        |s, mm| source::set_least(s, Side::Hole, mm),
    ),
    mm(
        ("hole_most", "hole, most"),
        DIAMETER,
        "size/between/most_mm",
        |s| source::limits_mm(s, Side::Hole).map(|(_, most)| most),
        |s, mm| source::set_most(s, Side::Hole, mm),
    ),
    mm(
        ("shaft_least", "what goes in, least"),
        DIAMETER,
        "size/between/least_mm",
        |s| source::limits_mm(s, Side::Shaft).map(|(least, _)| least),
        |s, mm| source::set_least(s, Side::Shaft, mm),
    ),
    mm(
        ("shaft_most", "what goes in, most"),
        DIAMETER,
        "size/between/most_mm",
        |s| source::limits_mm(s, Side::Shaft).map(|(_, most)| most),
        |s, mm| source::set_most(s, Side::Shaft, mm),
    ),
];

/// Each side's own size: the screen sets both at once, a file need not.
static NOMINALS: [Number<Seat>; 2] = [
    mm(
        ("hole_size", "size of the hole"),
        NOMINAL,
        "size/bearing_bore/nominal_mm",
        |s| source::nominal_of(s, Side::Hole),
        |s, mm| source::set_nominal_of(s, Side::Hole, mm),
    ),
    mm(
        ("shaft_size", "size of what goes in"),
        NOMINAL,
        "size/bearing_outer/nominal_mm",
        |s| source::nominal_of(s, Side::Shaft),
        |s, mm| source::set_nominal_of(s, Side::Shaft, mm),
    ),
];

/// What may be heated, and how hot.
pub static LIMITS: [Number<Seat>; 2] = [
    celsius(
        ("housing_limit", "case (or shaft) not hotter than"),
        "seat/housing_limit_c",
        |s| Some(s.housing_limit_c),
        |s, c| s.housing_limit_c = c,
    ),
    celsius(
        ("part_limit", "part not hotter than"),
        "seat/part_limit_c",
        |s| Some(s.part_limit_c),
        |s, c| s.part_limit_c = c,
    ),
];

/// The shape around the fit.
pub static SHAPE: [Number<Seat>; 4] = [
    mm(
        ("length", "length in contact"),
        SOLID,
        "seat/length_mm",
        |s| Some(s.length_mm),
        |s, mm| s.length_mm = mm,
    ),
    mm(
        ("inside", "inside of what goes in, 0 if solid"),
        OR_NOTHING,
        "seat/part_inside_mm",
        |s| Some(s.part_inside_mm),
        |s, mm| s.part_inside_mm = mm,
    ),
    mm(
        ("boss", "outside of the boss"),
        SOLID,
        "seat/boss_outside_mm",
        |s| Some(s.boss_outside_mm),
        |s, mm| s.boss_outside_mm = mm,
    ),
    mm(
        ("wall", "wall that holds the heat"),
        SOLID,
        "seat/wall_mm",
        |s| Some(s.wall_mm),
        |s, mm| s.wall_mm = mm,
    ),
];

/// What the tools must clear.
pub static TOOLS: [Number<Seat>; 2] = [
    mm(
        ("face", "face that is pushed"),
        OR_NOTHING,
        "seat/face_mm",
        |s| {
            let default = match s.hole_in {
                HoleIn::Housing => s.part_inside_mm,
                HoleIn::Part => s.boss_outside_mm,
            };
            Some(s.face_mm.unwrap_or(default))
        },
        |s, mm| s.face_mm = Some(mm),
    ),
    mm(
        ("shoulder", "opening behind the shoulder, 0 if none"),
        OR_NOTHING,
        "seat/shoulder_mm",
        |s| (s.hole_in == HoleIn::Housing).then_some(s.shoulder_mm.unwrap_or(0.0)),
        |s, mm| s.shoulder_mm = (mm > 0.0).then_some(mm),
    ),
];

/// Below the face, mm; negative where it stands proud.
const DEPTH: (f64, f64) = (-100.0, 500.0);

fn with_depth(seat: &mut Seat, change: impl FnOnce(&mut SeatDepth)) {
    change(seat.depth.get_or_insert_with(SeatDepth::default));
}

/// How deep it must sit; shown where a depth is stated.
pub static DEPTHS: [Number<Seat>; 4] = [
    mm(
        ("depth_least", "depth, least"),
        DEPTH,
        "seat/depth/least_mm",
        |s| s.depth.map(|d| d.least_mm),
        |s, mm| with_depth(s, |d| d.least_mm = mm),
    ),
    mm(
        ("depth_most", "depth, most"),
        DEPTH,
        "seat/depth/most_mm",
        |s| s.depth.map(|d| d.most_mm),
        |s, mm| with_depth(s, |d| d.most_mm = mm),
    ),
    mm(
        ("depth_bore", "face to shoulder, 0 if not known"),
        (0.0, 500.0),
        "seat/depth/bore_mm",
        |s| s.depth.map(|d| d.bore_mm.unwrap_or(0.0)),
        |s, mm| with_depth(s, |d| d.bore_mm = (mm > 0.0).then_some(mm)),
    ),
    mm(
        ("depth_gap", "gap left open behind, 0 if none"),
        (0.0, 100.0),
        "seat/depth/gap_mm",
        |s| s.depth.map(|d| d.gap_mm.unwrap_or(0.0)),
        |s, mm| with_depth(s, |d| d.gap_mm = (mm > 0.0).then_some(mm)),
    ),
];

/// Every field of a press fit, in the order of the plan.
pub static TABLE: [Field<Seat>; 26] = [
    Field::Words {
        id: "part",
        label: "part",
        get: |s| &s.part,
        set: |s, words| s.part = words,
    },
    manual::HEAT_BY,
    manual::HEAT_TO,
    manual::NEVER_OVER,
    manual::FLASH_POINT,
    manual::CHILL_BY,
    manual::CHILL_TO,
    Field::Typed {
        id: "hole",
        label: "bore: size and class, or mm measured or from–to",
        entry: Entry::Words,
        get: |s| size_words(&s.hole),
        set: |s, words| {
            let other = source::nominal_of(s, Side::Shaft);
            let before = source::nominal_of(s, Side::Hole);
            s.hole = size(words, s.housing)?;
            source::follow_size(s, Side::Hole, before, other);
            Ok(())
        },
    },
    Field::Typed {
        id: "shaft",
        label: "part: “62 bearing”, size and class, or mm measured or from–to",
        entry: Entry::Words,
        get: |s| size_words(&s.shaft),
        set: |s, words| {
            let other = source::nominal_of(s, Side::Hole);
            let before = source::nominal_of(s, Side::Shaft);
            s.shaft = size(words, s.part_material)?;
            source::follow_size(s, Side::Shaft, before, other);
            Ok(())
        },
    },
    service::TIGHT,
    Field::AtBench(&SIZES),
    Field::AtBench(&NOMINALS),
    Field::Material {
        id: "housing",
        label: "housing",
        get: |s| s.housing,
        set: |s, material| s.housing = material,
    },
    Field::Material {
        id: "part_material",
        label: "part made of",
        get: |s| s.part_material,
        set: |s, material| s.part_material = material,
    },
    Field::Numbers(&SHAPE),
    Field::Numbers(&LIMITS),
    service::SEALED,
    Field::Numbers(&service::RUNNING),
    service::HELD_BY,
    Field::AtBench(&TOOLS),
    Field::AtBench(&DEPTHS),
    Field::Flag {
        id: "seals",
        label: "seals or cured compound in it",
        get: |s| s.holds_seals,
        set: |s, yes| s.holds_seals = yes,
    },
    Field::Flag {
        id: "heat",
        label: "the housing may be heated",
        get: |s| s.way == SeatWay::Heat,
        set: |s, yes| s.way = if yes { SeatWay::Heat } else { SeatWay::Press },
    },
    Field::Flag {
        id: "flame",
        label: "heated with an open flame",
        get: |it| it.open_flame,
        set: |it, yes| it.open_flame = yes,
    },
    Field::Flag {
        id: "through_balls",
        label: "pushed through the balls of a bearing",
        get: |it| it.through_balls,
        set: |it, yes| it.through_balls = yes,
    },
    Field::Flag {
        id: "struck",
        label: "driven in with a hammer",
        get: |it| it.struck,
        set: |it, yes| it.struck = yes,
    },
];

/// Changes the field of that path; a reading's material goes with its part's.
///
/// # Errors
/// As [`crate::job::field::set`], and what makes no sense beside the other sizes.
pub fn set(seat: &mut Seat, path: &str, value: &str) -> Set {
    let mut changed = seat.clone();
    crate::job::field::set(&TABLE, &mut changed, "seat", path, value)?;
    follow_materials(&mut changed);
    sense::changed(seat, &changed).map_err(Refused::Said)?;
    *seat = changed;
    Ok(())
}

/// A size as it is typed: "62 N7", "62 bearing", "61.982".
fn size_words(size: &SizeSource) -> String {
    let mm = (nominal(size).get::<millimeter>() * 1e6).round() / 1e6;
    let mm = if mm == 0.0 { String::new() } else { shortest(mm) };
    match size {
        SizeSource::Class { class, .. } => format!("{mm} {class}"),
        SizeSource::BearingOuter { .. } => format!("{mm} bearing"),
        SizeSource::BearingBore { .. } => format!("{mm} bearing bore"),
        SizeSource::Measured { .. } => mm,
        SizeSource::Between { most, .. } => {
            format!(
                "{mm}–{}",
                shortest((most.get::<millimeter>() * 1e6).round() / 1e6)
            )
        }
    }
}

/// "62 N7", "62 bearing", "25 bearing bore", "61.982": a size as it is typed; empty where it is not known.
fn size(value: &str, material: Material) -> Result<SizeSource, Refused> {
    let text = value.trim();
    if text.is_empty() {
        return Ok(SizeSource::Measured {
            size: Length::new::<millimeter>(0.0),
            at: ThermodynamicTemperature::new::<degree_celsius>(20.0),
            material,
        });
    }
    if let Some(size) = text.strip_suffix("bearing bore") {
        let nominal = length(size, &SIZES[0])?;
        return Ok(SizeSource::BearingBore { nominal });
    }
    if let Some(size) = text.strip_suffix("bearing") {
        let nominal = length(size, &SIZES[0])?;
        return Ok(SizeSource::BearingOuter { nominal });
    }
    if decimal(text.trim_end_matches("mm")).is_some() {
        return Ok(SizeSource::Measured {
            size: length(text.trim_end_matches("mm"), &SIZES[1])?,
            at: ThermodynamicTemperature::new::<degree_celsius>(20.0),
            material,
        });
    }
    if let Some((least, most)) = text.trim_end_matches("mm").split_once(['–', '-'])
        && decimal(least).is_some()
        && decimal(most).is_some()
    {
        let (least, most) = (length(least, &SIZES[1])?, length(most, &SIZES[1])?);
        if least > most {
            return refuse(in_mark("Write the least size first: 61.970–62.000."));
        }
        return Ok(SizeSource::Between { least, most });
    }
    let code: FitCode = text.parse().map_err(|_| {
        Refused::Said(in_mark(
            "Write a size as 62 N7, 62 bearing, 25 bearing bore, 61.982 or 61.970–62.000.",
        ))
    })?;
    match (code.nominal, code.hole.or(code.shaft)) {
        (Some(nominal), Some(class)) => {
            SIZES[0]
                .judge(nominal.get::<millimeter>(), MassUnit::Kilogram)
                .map_err(Refused::Said)?;
            Ok(SizeSource::Class { nominal, class })
        }
        _ => refuse("Write the size before the class: 62 N7."),
    }
}

fn length(text: &str, row: &Number<Seat>) -> Result<Length, Refused> {
    let typed = decimal(text).ok_or_else(|| Refused::Said(no_number(text)))?;
    let mm = row.judge(typed, MassUnit::Kilogram).map_err(Refused::Said)?;
    Ok(Length::new::<millimeter>(mm))
}
