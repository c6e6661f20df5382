//! End float and preload by shims, shells, plastic strip.

use super::answer::{Answer, Asked, Judged, Trouble};
use super::field::{Field, Measure};
use super::{Calculation, as_reading};
use crate::trade::gauging::take;
use crate::trade::measuring::MeasuringError;
use crate::trade::measuring::float::{Wish, float_left, from_box, pack_for};
use crate::trade::measuring::shell;
use crate::trade::quantity::{Length, LengthUnit};
use crate::trade::selection::{Found, MOST_SHIMS, Pack, Size};

const GAPS: [&str; 3] = ["gap_1", "gap_2", "gap_3"];
const SIZES: [(&str, &str); 5] = [
    ("shim_1", "count_1"),
    ("shim_2", "count_2"),
    ("shim_3", "count_3"),
    ("shim_4", "count_4"),
    ("shim_5", "count_5"),
];
const WISHES: [&str; 2] = ["end float", "preload"];

const fn shim(id: &'static str, name: &'static str) -> Field {
    Field::number(id, name, Measure::Length, (0.01, 20.0))
}

const fn count(id: &'static str, name: &'static str) -> Field {
    Field::number(id, name, Measure::Whole, (0.0, MOST_SHIMS as f64))
}

static FLOAT_FIELDS: [Field; 16] = [
    Field::gap("gap_1", "gap without shims"),
    Field::gap("gap_2", "gap, second reading"),
    Field::gap("gap_3", "gap, third reading"),
    Field::choice("wish", "the manual wants", &WISHES),
    Field::gap("least", "at least"),
    Field::gap("most", "at most"),
    shim("shim_1", "shims in the box: thickness"),
    count("count_1", "how many of them"),
    shim("shim_2", "second thickness"),
    count("count_2", "how many of the second"),
    shim("shim_3", "third thickness"),
    count("count_3", "how many of the third"),
    shim("shim_4", "fourth thickness"),
    count("count_4", "how many of the fourth"),
    shim("shim_5", "fifth thickness"),
    count("count_5", "how many of the fifth"),
];

/// End float and shim pack.
pub static FLOAT: Calculation = Calculation {
    id: "float",
    name: "End float, shim pack",
    how: "Measure the gap without shims, the parts pushed home; two or three readings where it varies. No number of shims told counts as plenty.",
    model: "gap less float, or gap and preload; every pack of the box is tried: the fewest shims, then the nearest to the middle",
    fields: &FLOAT_FIELDS,
    // A pack to choose: the float is there to read once it is in.
    reading: None,
    answer: float,
};

fn float(asked: &Asked<'_>) -> Result<Answer, Trouble> {
    let gaps = asked.lengths(&GAPS)?;
    let (least, most) = (asked.need_length("least")?, asked.need_length("most")?);
    let squeezed = asked.choice("wish") == 1;
    let wish = if squeezed {
        Wish::Preload(least, most)
    } else {
        Wish::Float(least, most)
    };
    let wanted = pack_for(&gaps, wish)?;
    let gap = gaps.iter().copied().sum::<Length>() / gaps.len() as f64;
    let limits = format!(
        "{} to {}",
        asked.fine(wanted.least),
        asked.fine_words(wanted.most)
    );
    let mut answer = Answer {
        says: "pack",
        number: asked.fine(wanted.aim),
        unit: asked.length_unit(),
        reckoned: None,
        verdict: format!("Any pack of {limits} will do."),
        refused: false,
        open: false,
        rows: vec![("pack wanted", limits), ("gap", asked.fine_words(gap))],
    };
    let sizes = in_box(asked);
    if sizes.is_empty() {
        return Ok(answer);
    }
    match from_box(&sizes, wanted) {
        Pack::Hit(found) => {
            let pack = LengthUnit::Millimetre.length(found.sum);
            let left = float_left(gap, pack);
            answer.number = asked.fine(pack);
            answer.verdict = format!("{}.", shims_words(asked, &sizes, &found));
            answer.rows.push(if squeezed {
                ("preload it gives", asked.fine_words(-left))
            } else {
                ("float it leaves", asked.fine_words(left))
            });
        }
        Pack::Miss { below, above } => {
            answer.refused = true;
            answer.says = "pack wanted";
            answer.verdict = "No pack of these shims lies within it.".to_owned();
            for (name, found) in [("nearest below", below), ("nearest above", above)] {
                let words = found.map(|found| shims_words(asked, &sizes, &found));
                answer.rows.extend(words.map(|words| (name, words)));
            }
        }
    }
    Ok(answer)
}

fn in_box(asked: &Asked<'_>) -> Vec<Size> {
    let sizes = SIZES.iter().filter_map(|(thick, count)| {
        let thick = asked.number(thick)?;
        let count = asked.number(count).map_or(MOST_SHIMS, |count| count as u32);
        Some(Size {
            thick,
            count,
            between: false,
        })
    });
    sizes.collect()
}

fn shims_words(asked: &Asked<'_>, sizes: &[Size], found: &Found) -> String {
    let used = sizes.iter().zip(&found.taken).filter(|(_, taken)| **taken > 0);
    let each: Vec<String> = used
        .map(|(size, taken)| {
            format!(
                "{taken} × {}",
                asked.fine(LengthUnit::Millimetre.length(size.thick))
            )
        })
        .collect();
    if each.is_empty() {
        return "No shim at all".to_owned();
    }
    let sum = asked.fine_words(LengthUnit::Millimetre.length(found.sum));
    format!("{} = {sum}", each.join(" + "))
}

static SHELL_FIELDS: [Field; 6] = [
    Field::size("housing", "housing bore, cap torqued"),
    Field::size("wall_1", "wall of one shell"),
    Field::size("wall_2", "wall of the other"),
    Field::size("journal", "journal"),
    Field::gap("least", "clearance, at least"),
    Field::gap("most", "clearance, at most"),
];

/// Clearance of a shell bearing.
pub static SHELL: Calculation = Calculation {
    id: "shell",
    name: "Shell clearance",
    how: "Bore with its cap at full torque, shells read at the crown, journal at its largest. One wall told counts for both. Pick by the manual’s codes first, then check here.",
    model: "bore − both walls − journal; the shells’ crush takes a little more",
    fields: &SHELL_FIELDS,
    reading: as_reading(Measure::Length, &["least", "most"]),
    answer: shells,
};

fn shells(asked: &Asked<'_>) -> Result<Answer, Trouble> {
    let (housing, journal) = (asked.need_length("housing")?, asked.need_length("journal")?);
    let wall = asked.need_length("wall_1")?;
    let walls = [wall, asked.length("wall_2").unwrap_or(wall)];
    let clearance = shell::clearance(housing, walls, journal)?;
    let (least, most) = (asked.length("least"), asked.length("most"));
    let judged = asked.judge(clearance, least, most)?;
    let mut rows = Vec::new();
    if let (Some(least), Some(most)) = (least, most) {
        let middle = shell::wall_for(housing, journal, (least + most) / 2.0);
        rows.extend(
            middle
                .ok()
                .map(|wall| ("wall for the middle", asked.fine_words(wall))),
        );
    }
    Ok(Answer::of(
        "clearance",
        asked.fine_figure(clearance),
        judged,
        rows,
    ))
}

static PLASTIC_FIELDS: [Field; 4] = [
    Field::gap("least", "clearance, at least"),
    Field::gap("most", "clearance, at most"),
    Field::gap("wide", "read at the widest"),
    Field::gap("narrow", "read at the narrow end"),
];

/// Which plastic strip, and what two ends of it say.
pub static PLASTIC: Calculation = Calculation {
    id: "plastic",
    name: "Plastic strip",
    how: "Cap on at full torque, nothing turned. The widest place tells the least clearance, the difference of the ends the taper.",
    model: "ranges of the cards, TM 5-2420-222-34: 0.001–0.003, 0.002–0.006, 0.004–0.009 in",
    fields: &PLASTIC_FIELDS,
    reading: None,
    answer: plastic,
};

fn plastic(asked: &Asked<'_>) -> Result<Answer, Trouble> {
    let (least, most) = (asked.need_length("least")?, asked.need_length("most")?);
    if least > most {
        return Err(MeasuringError::Limits.into());
    }
    let take = take(least, most);
    let (from, to) = take.plastic.range();
    let range = format!("{} to {}", asked.fine(from), asked.fine_words(to));
    let mut answer = Answer {
        says: "take the strip for",
        number: format!("{}–{}", asked.fine(from), asked.fine(to)),
        unit: asked.length_unit(),
        reckoned: None,
        verdict: if take.whole {
            format!("The {} strip tells all of the limits.", take.plastic.words())
        } else {
            format!(
                "No strip tells all of the limits; the {} one tells most.",
                take.plastic.words()
            )
        },
        refused: false,
        open: false,
        rows: vec![("its card tells", range)],
    };
    let narrow = asked.length("narrow");
    let wide = asked.length("wide");
    if let Some(read) = wide {
        // The narrow end tells the wider gap.
        let ends = (read, narrow.unwrap_or(read));
        let mut judged = asked.judge_span(ends, Some(least), Some(most))?;
        if ends.1 < ends.0 {
            judged = judged.and(Judged::out(
                "The narrow end tells the wider gap: read both again.".to_owned(),
            ));
        }
        if !take.plastic.tells(read) {
            judged = judged.and(Judged::out("That is outside what this card tells.".to_owned()));
        }
        answer.verdict = judged.words;
        answer.refused = judged.refused;
        answer.says = "clearance";
        answer.number = asked.fine(read);
    }
    if let (Some(wide), Some(narrow)) = (wide, narrow) {
        answer
            .rows
            .push(("taper", asked.fine_words((narrow - wide).abs())));
    }
    Ok(answer)
}
