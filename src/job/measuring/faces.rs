//! Faces and edges.

use super::answer::{Answer, Asked, Trouble};
use super::field::{Field, Measure};
use super::{Calculation, as_reading};
use crate::trade::measuring::flatness::{Bridge, bridge, flatness, limit_over, straightness};
use crate::trade::quantity::Length;

const LINES: [&str; 6] = ["line_1", "line_2", "line_3", "line_4", "line_5", "line_6"];

static FLATNESS_FIELDS: [Field; 9] = [
    Field::gap("line_1", "feeler, one long side"),
    Field::gap("line_2", "other long side"),
    Field::gap("line_3", "one short side"),
    Field::gap("line_4", "other short side"),
    Field::gap("line_5", "one diagonal"),
    Field::gap("line_6", "other diagonal"),
    Field::gap("most", "gap, at most"),
    Field::size("in_each", "that limit in each, of length"),
    Field::size("length", "length of the line"),
];

/// Flatness of a face.
pub static FLATNESS: Calculation = Calculation {
    id: "flatness",
    name: "Flatness of a face",
    how: "Straightedge on the clean face, the thickest feeler that goes under it along each of six lines; 0 where none does.",
    model: "the worst line counts",
    fields: &FLATNESS_FIELDS,
    reading: as_reading(Measure::Length, &["most", "in_each", "length"]),
    answer: flat,
};

fn limit(asked: &Asked<'_>) -> Result<Option<Length>, Trouble> {
    let told = (
        asked.length("most"),
        asked.length("in_each"),
        asked.length("length"),
    );
    Ok(match told {
        (Some(most), Some(in_each), Some(length)) => Some(limit_over(most, in_each, length)?),
        (most, _, _) => most,
    })
}

fn flat(asked: &Asked<'_>) -> Result<Answer, Trouble> {
    let read: Vec<(&str, Length)> = LINES
        .iter()
        .filter_map(|id| Some((*id, asked.length(id)?)))
        .collect();
    let gaps: Vec<Length> = read.iter().map(|(_, gap)| *gap).collect();
    if gaps.is_empty() {
        return Err(asked.missing("line_1"));
    }
    let found = flatness(&gaps)?;
    let most = limit(asked)?;
    let fields = asked.calculation.fields.iter();
    let line = read.get(found.line).map_or("", |(id, _)| *id);
    let line = fields.clone().find(|field| field.id == line);
    let left = LINES.len() - gaps.len();
    let judged = asked.judge(found.worst, None, most)?.so_far(left, "line");
    let mut rows = vec![("worst along", line.map_or("", |field| field.name).to_owned())];
    if left > 0 {
        rows.push(("lines still to read", left.to_string()));
    }
    if let Some(most) = most {
        rows.push(("limit", asked.fine_words(most)));
    }
    let so_far = if left > 0 { "so far: " } else { "" };
    let bridges = match bridge(found.worst) {
        Bridge::Anaerobic => "anaerobic flange sealant, if the faces are rigid",
        Bridge::Silicone => "neutral-cure silicone, if the manual has a sealant there",
        Bridge::Nothing => "nothing: have it machined",
    };
    rows.push(("what bridges it", format!("{so_far}{bridges}")));
    Ok(Answer::of(
        "worst gap",
        asked.fine_figure(found.worst),
        judged,
        rows,
    ))
}

const HEIGHTS: [&str; 8] = ["at_1", "at_2", "at_3", "at_4", "at_5", "at_6", "at_7", "at_8"];

static STRAIGHTNESS_FIELDS: [Field; 9] = [
    Field::reading("at_1", "height at one end"),
    Field::reading("at_2", "second place"),
    Field::reading("at_3", "third"),
    Field::reading("at_4", "fourth"),
    Field::reading("at_5", "fifth"),
    Field::reading("at_6", "sixth"),
    Field::reading("at_7", "seventh"),
    Field::reading("at_8", "eighth"),
    Field::gap("most", "out of straight, at most"),
];

/// Straightness of an edge.
pub static STRAIGHTNESS: Calculation = Calculation {
    id: "straightness",
    name: "Straightness",
    how: "Slide an indicator along the edge and read it at equal steps, three places at least; or heights under a straightedge on two equal blocks.",
    model: "greatest less least height from a line: through both ends, and the closest there is (ISO 12780, least zone)",
    fields: &STRAIGHTNESS_FIELDS,
    reading: as_reading(Measure::Length, &["most"]),
    answer: straight,
};

fn straight(asked: &Asked<'_>) -> Result<Answer, Trouble> {
    let heights = asked.row(&HEIGHTS)?;
    let found = straightness(&heights)?;
    let judged = asked.judge(found.from_ends, None, asked.length("most"))?;
    Ok(Answer::of(
        "out of straight, from its ends",
        asked.fine_figure(found.from_ends),
        judged,
        vec![("at the least", asked.fine_words(found.least_zone))],
    ))
}
