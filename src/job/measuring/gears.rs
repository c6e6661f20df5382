//! Taper bearings, gears, shafts.

use super::answer::{Answer, Asked, Judged, Trouble};
use super::field::{Field, Measure};
use super::{Calculation, as_reading};
use crate::trade::measuring::backlash::{at_radius, grown_by, lash};
use crate::trade::measuring::runout::{RunOut, Swing, between, limit_at, off_line, offset, round_one_turn};
use crate::trade::measuring::turning::{Figure, by_cord, change_by, of_bearings, pack_change};
use crate::trade::quantity::{Angle, Length, Torque, fixed};
use crate::trade::selection::Thicker;
use uom::si::angle::degree;
use uom::si::length::millimeter;

const THICKER: [&str; 2] = ["lowers the preload", "raises the preload"];

static PRELOAD_FIELDS: [Field; 10] = [
    Field::load("pull", "pull on a cord, turning"),
    Field::size("radius", "radius of the cord"),
    Field::torque("torque", "or the torque as read"),
    Field::load("seal_pull", "pull of the seal alone"),
    Field::torque("seal", "or the seal’s torque"),
    Field::torque("least", "turning torque, at least"),
    Field::torque("most", "turning torque, at most"),
    Field::gap("pack", "manual: so much pack"),
    Field::torque("for", "for so much torque"),
    Field::choice("thicker", "a thicker pack", &THICKER),
];

/// Preload by turning torque.
pub static PRELOAD: Calculation = Calculation {
    id: "preload",
    name: "Bearing preload",
    how: "Oiled, turned a few times to seat, then pulled steadily: read while it turns, not as it starts. Best with the seal out. A torque told goes before a pull.",
    model: "torque = pull × radius, less the seal’s; the pack changes in proportion, by the manual’s figure",
    fields: &PRELOAD_FIELDS,
    reading: as_reading(Measure::Torque, &["least", "most"]),
    answer: preload,
};

/// A torque told by itself or by the pull on the cord.
fn told(asked: &Asked<'_>, torque: &str, pull: &str) -> Result<Option<Torque>, Trouble> {
    if let Some(torque) = asked.torque(torque) {
        return Ok(Some(torque));
    }
    let Some(pull) = asked.force(pull) else {
        return Ok(None);
    };
    Ok(Some(by_cord(pull, asked.need_length("radius")?)?))
}

fn preload(asked: &Asked<'_>) -> Result<Answer, Trouble> {
    let read = told(asked, "torque", "pull")?.ok_or_else(|| asked.missing("pull"))?;
    let seal = told(asked, "seal", "seal_pull")?;
    let torque = match seal {
        Some(seal) => of_bearings(read, seal)?,
        None => read,
    };
    let judged = asked.judge_torque(torque, "least", "most")?;
    let words = |torque: Torque| asked.torque_figure(torque).words();
    let mut rows = Vec::new();
    if let Some(seal) = seal {
        rows.push(("with the seal", words(read)));
        rows.push(("the seal’s", words(seal)));
    }
    rows.extend(pack_row(asked, torque)?);
    Ok(Answer::of(
        "turning torque",
        asked.torque_figure(torque),
        judged,
        rows,
    ))
}

/// The change of the pack, where the manual's figure and both limits are told.
fn pack_row(asked: &Asked<'_>, torque: Torque) -> Result<Option<(&'static str, String)>, Trouble> {
    let limits = (asked.torque("least"), asked.torque("most"));
    let figure = (asked.length("pack"), asked.torque("for"));
    let ((Some(least), Some(most)), (Some(pack), Some(of))) = (limits, figure) else {
        return Ok(None);
    };
    let thicker = [Thicker::Lowers, Thicker::Raises]
        .get(asked.choice("thicker"))
        .copied()
        .unwrap_or_default();
    let change = pack_change(torque, (least, most), thicker, Figure { pack, torque: of })?;
    let by = change_by(&change);
    let way = if change.by < 0.0 { "thinner" } else { "thicker" };
    let size = if change.by < 0.0 { -by } else { by };
    Ok(Some((
        "pack, to the middle",
        format!("{} {way}", asked.fine_words(size)),
    )))
}

/// Pressure angles that gears are cut to, °: 20 is usual, 14.5 old (from memory).
const PRESSURE_ANGLES: (f64, f64) = (10.0, 30.0);

const PLACES: [&str; 4] = ["place_1", "place_2", "place_3", "place_4"];

static BACKLASH_FIELDS: [Field; 11] = [
    Field::gap("place_1", "backlash, first place"),
    Field::gap("place_2", "a quarter turn on"),
    Field::gap("place_3", "half a turn on"),
    Field::gap("place_4", "three quarters on"),
    Field::size("read_at", "radius it was read at"),
    Field::size("pitch", "radius the manual means"),
    Field::gap("least", "backlash, at least"),
    Field::gap("most", "backlash, at most"),
    Field::gap("spread", "may vary by"),
    Field::reading("apart", "spur gears: centres to be moved apart by"),
    Field::number("angle", "their pressure angle", Measure::Degrees, PRESSURE_ANGLES),
];

/// Backlash at four places.
pub static BACKLASH: Calculation = Calculation {
    id: "backlash",
    name: "Backlash",
    how: "Hold one gear, rock the other, indicator square to the tooth; at four places of the larger gear. The radii only where it was read on an arm.",
    model: "mean, spread; carried to another radius in proportion; grows by 2·tan(pressure angle) of what the centres move apart",
    fields: &BACKLASH_FIELDS,
    reading: as_reading(Measure::Length, &["least", "most"]),
    answer: backlash,
};

fn backlash(asked: &Asked<'_>) -> Result<Answer, Trouble> {
    let mut places = asked.lengths(&PLACES)?;
    if let (Some(read_at), Some(pitch)) = (asked.length("read_at"), asked.length("pitch")) {
        let carried: Result<Vec<Length>, _> =
            places.iter().map(|one| at_radius(*one, read_at, pitch)).collect();
        places = carried?;
    }
    let found = lash(&places)?;
    let (least, most) = (asked.length("least"), asked.length("most"));
    let mut judged = asked.judge_span((found.least, found.most), least, most)?;
    let mut rows = vec![
        ("least", asked.fine_words(found.least)),
        ("most", asked.fine_words(found.most)),
        ("varies by", asked.fine_words(found.spread)),
    ];
    if let Some(apart) = asked.length("apart") {
        let angle = Angle::new::<degree>(asked.need("angle")?);
        let moved = found.mean + grown_by(apart, angle)?;
        rows.push(("mean, with the centres moved", asked.fine_words(moved)));
    }
    let spread = asked.length("spread");
    if asked.judge(found.spread, None, spread)?.refused {
        judged = judged.and(Judged::out("It varies too much: look for run-out.".to_owned()));
    }
    Ok(Answer::of(
        "backlash, mean",
        asked.fine_figure(found.mean),
        judged,
        rows,
    ))
}

const ROUND: [&str; 8] = ["at_1", "at_2", "at_3", "at_4", "at_5", "at_6", "at_7", "at_8"];

static RUN_OUT_FIELDS: [Field; 19] = [
    Field::gap("total", "greatest less least reading"),
    Field::reading("at_1", "or round the turn: first"),
    Field::reading("at_2", "second"),
    Field::reading("at_3", "third"),
    Field::reading("at_4", "fourth"),
    Field::reading("at_5", "fifth"),
    Field::reading("at_6", "sixth"),
    Field::reading("at_7", "seventh"),
    Field::reading("at_8", "eighth"),
    Field::gap("most", "total reading, at most"),
    Field::size("each", "that limit for each, of radius"),
    Field::size("radius", "radius it is read at"),
    Field::gap("before", "journal A, total reading"),
    Field::number(
        "before_high",
        "journal A, high spot on from the first",
        Measure::Degrees,
        (0.0, 360.0),
    ),
    Field::gap("next", "journal B, total reading"),
    Field::number(
        "next_high",
        "journal B, high spot on from the first",
        Measure::Degrees,
        (0.0, 360.0),
    ),
    Field::number(
        "from_before",
        "from journal A to here, − beyond A",
        Measure::Length,
        (-5_000.0, 5_000.0),
    ),
    Field::size("span", "from journal A to journal B"),
    Field::gap("between", "here and journal B may run apart by"),
];

/// What is told of a neighbouring journal.
const NEXT: [&str; 3] = ["next", "next_high", "between"];
/// What is told of the one on the other side: the two make a line.
pub(in crate::job) const OTHER_SIDE: [&str; 4] = ["before", "before_high", "from_before", "span"];

/// What a limit per radius and journals told beside it come to.
pub(in crate::job) const FACE_OR_JOURNALS: &str = "A limit for each of radius is for a face, read along the shaft; journals are read across it: take out one of the two.";

/// The least offset that is shown as one, mm.
const SEEN_OFFSET_MM: f64 = 0.000_5;

/// Run-out.
pub static RUN_OUT: Calculation = Calculation {
    id: "run-out",
    name: "Run-out",
    how: "On centres or V-blocks at the journals. Three to eight readings at equal steps of one turn also tell where it is high. A and B are journals on either side: B alone, to see how far two run apart; both on centres, to see a bend. Read all from one mark, turned one way.",
    model: "offset = half the total reading; through the readings a sine of one turn by least squares, by which journals are compared; on centres, less the line through the journals on either side",
    fields: &RUN_OUT_FIELDS,
    reading: as_reading(Measure::Length, &["most", "each", "radius"]),
    answer: run_out,
};

fn run_out(asked: &Asked<'_>) -> Result<Answer, Trouble> {
    let told = |ids: &[&str]| ids.iter().any(|id| asked.number(id).is_some());
    let between_both = told(&OTHER_SIDE);
    let beside = between_both || told(&NEXT);
    if beside && told(&["each", "radius"]) {
        return Err(Trouble::Said(FACE_OR_JOURNALS.to_owned()));
    }
    // Where it is high is known from readings round the turn alone.
    let turned = beside || told(&ROUND);
    let mut rows = Vec::new();
    let mut found_round = None;
    let mut own = None;
    let total = if turned {
        let readings = asked.row(&ROUND)?;
        let found = round_one_turn(&readings)?;
        found_round = Some((2.0 * found.offset, found.high_at));
        own = between_both
            .then(|| off_the_journals(asked, &readings))
            .transpose()?;
        if let Some(left) = own {
            rows.push(("total reading as read", asked.fine_words(found.total)));
            rows.push(("bend", asked.fine_words(left.offset)));
            // What lies on the line is bent no way.
            rows.extend(seen_high(&left).map(|high| ("bent towards", high)));
        }
        let names = match own.is_some() {
            true => ("offset as read", "high spot as read"),
            false => ("offset", "high spot"),
        };
        rows.push((names.0, asked.fine_words(found.offset)));
        rows.extend(seen_high(&found).map(|high| (names.1, high)));
        let out = found.out_of_round.map(|out| asked.fine_words(out));
        rows.extend(out.map(|words| ("not round by", words)));
        found.total
    } else {
        let total = asked.need_length("total")?;
        rows.push(("offset", asked.fine_words(offset(total))));
        total
    };
    let mut most = asked.length("most");
    if let Some(limit) = most.filter(|_| told(&["each", "radius"])) {
        let limit = limit_at(limit, asked.need_length("each")?, asked.need_length("radius")?)?;
        rows.push(("limit at that radius", asked.fine_words(limit)));
        most = Some(limit);
    }
    // Ovality and all: the limit is one of the total reading, with the journals told as without.
    let run = own.map_or(total, |left| left.most());
    let mut judged = asked.judge(run, None, most)?;
    if let Some(here) = found_round.filter(|_| beside) {
        // By the offset, not the total reading: an oval journal swings the indicator and runs true. The line taken
        // off, journal B lies on it.
        let apart = match own {
            Some(left) => 2.0 * left.offset,
            None => between(here, journal(asked, "next", "next_high")?),
        };
        rows.push(("runs apart from journal B", asked.fine_words(apart)));
        let most = asked.length("between");
        if asked.judge(apart, None, most)?.refused {
            let words = "The two journals run too far apart: the shaft is bent between them.";
            judged = judged.and(Judged::out(words.to_owned()));
        }
    }
    let name = match own {
        Some(_) => "total reading off the line of the journals",
        None => "total indicator reading",
    };
    Ok(Answer::of(name, asked.fine_figure(run), judged, rows))
}

/// Where it is high; none of what lies on its centre: the angle would be that of its dust.
fn seen_high(found: &RunOut) -> Option<String> {
    let seen = found.offset >= Length::new::<millimeter>(SEEN_OFFSET_MM);
    let high_at = found.high_at.get::<degree>().round() % 360.0;
    seen.then(|| format!("{}° on from the first", fixed(high_at, 0)))
}

/// A journal's total reading and its high spot; one that runs true is high nowhere.
fn journal(asked: &Asked<'_>, total: &str, high: &str) -> Result<Swing, Trouble> {
    let total = asked.need_length(total)?;
    let high = match total > Length::new::<millimeter>(0.0) {
        true => asked.need(high)?,
        false => 0.0,
    };
    Ok((total, Angle::new::<degree>(high)))
}

/// What is left of the readings off the line through the journals on either side.
fn off_the_journals(asked: &Asked<'_>, readings: &[Length]) -> Result<RunOut, Trouble> {
    let journals = (
        journal(asked, "before", "before_high")?,
        journal(asked, "next", "next_high")?,
    );
    let (at, span) = (asked.need_length("from_before")?, asked.need_length("span")?);
    Ok(off_line(readings, at, journals, span)?)
}
