//! Pistons and rings in a bore.

use super::answer::{Answer, Asked, Trouble};
use super::field::{Field, Measure};
use super::{Calculation, as_reading};
use crate::trade::material::Material;
use crate::trade::measuring::piston::{self, Read};
use crate::trade::measuring::ring;
use crate::trade::quantity::{Ratio, ThermodynamicTemperature};
use uom::si::ratio::ratio;
use uom::si::thermodynamic_temperature::degree_celsius;

const METALS: [&str; 3] = ["cast iron", "cast aluminium", "steel"];
const METALS_OF: [Material; 3] = [Material::CastIron, Material::CastAluminium, Material::Steel];
const PISTONS: [&str; 2] = ["cast aluminium", "cast iron"];
const PISTONS_OF: [Material; 2] = [Material::CastAluminium, Material::CastIron];

static PISTON_FIELDS: [Field; 8] = [
    Field::size("narrowest", "bore at its narrowest"),
    Field::size("widest", "bore at its widest"),
    Field::size("piston", "piston, at the manual’s height"),
    Field::choice("block", "bore is in", &METALS),
    Field::choice("crown", "piston is", &PISTONS),
    Field::number("at", "parts’ temperature", Measure::Temperature, (-40.0, 150.0)),
    Field::gap("least", "clearance, at least"),
    Field::gap("most", "clearance, at most"),
];

/// Piston-to-bore clearance.
pub static PISTON: Calculation = Calculation {
    id: "piston",
    name: "Piston clearance",
    how: "Bore in two directions at three depths; piston across the thrust faces at the height the manual names. Parts and micrometer at one temperature.",
    model: "bore less piston, both carried to 20 °C by their expansion",
    fields: &PISTON_FIELDS,
    reading: as_reading(Measure::Length, &["least", "most"]),
    answer: piston_clearance,
};

fn piston_clearance(asked: &Asked<'_>) -> Result<Answer, Trouble> {
    let narrowest = asked.need_length("narrowest")?;
    let widest = asked.length("widest").unwrap_or(narrowest);
    let material =
        |of: &[Material], id: &str| of.get(asked.choice(id)).copied().unwrap_or(Material::CastIron);
    let bore = Read {
        size: narrowest,
        material: material(&METALS_OF, "block"),
    };
    let piston = Read {
        size: asked.need_length("piston")?,
        material: material(&PISTONS_OF, "crown"),
    };
    let at = ThermodynamicTemperature::new::<degree_celsius>(asked.number("at").unwrap_or(20.0));
    let found = piston::clearance(bore, widest, piston, at)?;
    let (least, most) = (asked.length("least"), asked.length("most"));
    let judged = asked.judge_span((found.least, found.most), least, most)?;
    Ok(Answer::of(
        "clearance at 20 °C",
        asked.fine_figure(found.mean),
        judged,
        vec![
            ("least", asked.fine_words(found.least)),
            ("most", asked.fine_words(found.most)),
        ],
    ))
}

static END_GAP_FIELDS: [Field; 6] = [
    Field::gap("gap", "gap, ring square in the bore"),
    Field::size("bore", "bore there"),
    Field::size("wider", "bore at its widest"),
    Field::number(
        "share",
        "least gap for each of bore",
        Measure::Share,
        (0.0005, 0.05),
    ),
    Field::gap("least", "gap, at least"),
    Field::gap("most", "gap, at most"),
];

/// End gap of a ring.
pub static END_GAP: Calculation = Calculation {
    id: "end-gap",
    name: "Ring end gap",
    how: "Push the ring square with a piston, as deep as the manual says. “For each of bore” is the manual’s figure such as 0.004: in an inch of bore, or mm in a mm.",
    model: "the gap grows by π for each unit that the bore is wider",
    fields: &END_GAP_FIELDS,
    reading: as_reading(Measure::Length, &["least", "most"]),
    answer: end_gap,
};

fn end_gap(asked: &Asked<'_>) -> Result<Answer, Trouble> {
    let gap = asked.need_length("gap")?;
    let bore = asked.length("bore");
    let mut rows = Vec::new();
    let by_share = match asked.number("share") {
        Some(share) => {
            let bore = bore.ok_or_else(|| asked.missing("bore"))?;
            let wanted = ring::gap_for(bore, Ratio::new::<ratio>(share))?;
            rows.push(("least by the bore", asked.fine_words(wanted)));
            Some(wanted)
        }
        None => None,
    };
    // The stricter of the two says what to file.
    let least = match (by_share, asked.length("least")) {
        (Some(one), Some(other)) if other > one => Some(other),
        (one, other) => one.or(other),
    };
    let most = asked.length("most");
    let mut judged = asked.judge(gap, least, most)?;
    if let Some(least) = least {
        let off = ring::to_file(gap, least);
        if judged.refused && gap < least {
            judged.words = format!("File off {} in all.", asked.fine_words(off));
        }
    }
    if let Some(wider) = asked.length("wider") {
        let bore = bore.ok_or_else(|| asked.missing("bore"))?;
        let there = ring::gap_in(gap, bore, wider)?;
        rows.push(("gap at the widest", asked.fine_words(there)));
        judged = judged.and(asked.judge(there, None, most)?);
    }
    Ok(Answer::of("end gap", asked.fine_figure(gap), judged, rows))
}

static SIDE_GAP_FIELDS: [Field; 4] = [
    Field::size("groove", "groove width"),
    Field::size("ring", "ring height"),
    Field::gap("least", "side gap, at least"),
    Field::gap("most", "side gap, at most"),
];

/// Side gap of a ring.
pub static SIDE_GAP: Calculation = Calculation {
    id: "side-gap",
    name: "Ring side gap",
    how: "Groove clean, ring rolled round it. The feeler that just goes in is the same gap.",
    model: "groove width less ring height",
    fields: &SIDE_GAP_FIELDS,
    reading: as_reading(Measure::Length, &["least", "most"]),
    answer: side_gap,
};

fn side_gap(asked: &Asked<'_>) -> Result<Answer, Trouble> {
    let gap = ring::side_gap(asked.need_length("groove")?, asked.need_length("ring")?)?;
    let judged = asked.judge(gap, asked.length("least"), asked.length("most"))?;
    Ok(Answer::of("side gap", asked.fine_figure(gap), judged, Vec::new()))
}
