//! Bolts in their threads, wire inserts, bolt stretch.

use super::answer::{Answer, Asked, Judged, Trouble};
use super::field::{Field, Measure};
use super::{Calculation, as_reading};
use crate::trade::measuring::engagement::{Engaged, Hole, engaged};
use crate::trade::measuring::insert::{Tap, hole, strip};
use crate::trade::measuring::stretch::{Next, next, stretch};
use crate::trade::quantity::{Length, fixed};
use crate::trade::stretch::Shank;
use crate::trade::strip::{FemaleMaterial, strip_load};
use uom::si::length::millimeter;
use uom::si::ratio::ratio;

/// In the order of [`FemaleMaterial::ALL`].
const INTO: [&str; 6] = [
    "cast aluminium",
    "wrought aluminium",
    "magnesium",
    "cast iron",
    "steel",
    "bronze",
];

fn material(asked: &Asked<'_>) -> FemaleMaterial {
    let at = asked.choice("into");
    FemaleMaterial::ALL
        .get(at)
        .copied()
        .unwrap_or(FemaleMaterial::CastAluminium)
}

/// The hole a bolt goes into.
const HOLES: [&str; 2] = ["blind", "through"];

static ENGAGEMENT_FIELDS: [Field; 6] = [
    Field::thread("thread", "bolt’s thread"),
    Field::size("bolt", "bolt, under its head"),
    Field::size("stack", "what it clamps, washers too"),
    Field::choice("into", "thread is cut in", &INTO),
    Field::choice("hole", "its hole", &HOLES),
    Field::size("threaded", "depth of full thread"),
];

/// Engagement of a bolt.
pub static ENGAGEMENT: Calculation = Calculation {
    id: "engagement",
    name: "Bolt engagement",
    how: "Length under the head; what it clamps with washers and a pressed gasket. How deep the full thread goes: of a blind hole with a depth gauge or a bolt and its turns, of one tapped through the thickness of its part.",
    model: "length − stack − one pitch of point, at most the depth of thread; wanted 2 d in aluminium, 1.25 d in steel and iron",
    fields: &ENGAGEMENT_FIELDS,
    reading: as_reading(Measure::Length, &[]),
    answer: engagement,
};

fn engagement(asked: &Asked<'_>) -> Result<Answer, Trouble> {
    let thread = asked.need_thread("thread")?;
    let material = material(asked);
    let hole = Hole {
        material,
        threaded: asked.length("threaded"),
        through: asked.choice("hole") == 1,
    };
    let found = engaged(
        asked.need_length("bolt")?,
        asked.need_length("stack")?,
        thread,
        hole,
    )?;
    let mut judged = engagement_judged(asked, hole, &found);
    let mut rows = vec![
        ("turns", fixed(found.turns, 1)),
        ("diameters", fixed(found.diameters.get::<ratio>(), 2)),
        ("wanted", asked.rough_words(found.wanted)),
    ];
    if let Some(left) = found.left {
        rows.push(("left under its point", asked.rough_words(left)));
        if left < Length::new::<millimeter>(0.0) {
            let by = asked.rough_words(-left);
            judged = judged.and(Judged::out(format!(
                "It bottoms {by} before it clamps: a shorter bolt."
            )));
        }
    }
    let (weak, strong) = strip_load(thread, material, found.length);
    rows.push((
        "strips at",
        format!("{} to {}", asked.force_words(weak), asked.force_words(strong)),
    ));
    Ok(Answer::of(
        "full thread in mesh",
        asked.rough_figure(found.length),
        judged,
        rows,
    ))
}

fn engagement_judged(asked: &Asked<'_>, hole: Hole, found: &Engaged) -> Judged {
    const ENOUGH: &str = "Enough for a bolt of ordinary strength";
    if !found.enough {
        let short = asked.rough_words(found.wanted - found.length);
        return Judged::out(match (found.all_of_hole, hole.through) {
            (false, _) => format!("Too short by {short}: a longer bolt, or an insert."),
            (true, false) => format!("Too short by {short}, and the thread goes no deeper: an insert."),
            (true, true) => {
                format!("Too short by {short}, and the thread goes no deeper: an insert, or a nut behind it.")
            }
        });
    }
    let words = match hole.threaded {
        Some(_) => format!("{ENOUGH}."),
        None => {
            let deep = asked.rough_words(found.deep);
            format!("{ENOUGH}, if the full thread is {deep} deep.")
        }
    };
    Judged {
        words,
        open: hole.threaded.is_none(),
        ..Judged::within()
    }
}

const TAPS: [&str; 2] = ["plug tap, lead of four", "bottoming tap"];

static INSERT_FIELDS: [Field; 4] = [
    Field::thread("thread", "bolt’s thread"),
    Field::size("insert", "insert’s length"),
    Field::choice("tap", "tapped with", &TAPS),
    Field::choice("into", "put into", &INTO),
];

/// A wire thread insert.
pub static INSERT: Calculation = Calculation {
    id: "insert",
    name: "Wire thread insert",
    how: "Inserts come in 1, 1.5, 2, 2.5 and 3 diameters. Drill and tap square; the insert sits half to three quarters of a pitch under the face. Its own paper goes before this.",
    model: "minor diameter = nominal + 0.2165 P and its tolerance; depths by ASME B18.29.8M; strips like a thread 1.3 P larger",
    fields: &INSERT_FIELDS,
    reading: None,
    answer: insert,
};

fn insert(asked: &Asked<'_>) -> Result<Answer, Trouble> {
    let thread = asked.need_thread("thread")?;
    let length = asked.need_length("insert")?;
    let tap = if asked.choice("tap") == 1 {
        Tap::Bottoming
    } else {
        Tap::Plug
    };
    let found = hole(thread, length, tap)?;
    let (weak, strong) = strip(thread, length, material(asked))?;
    Ok(Answer {
        says: "drill",
        number: format!(
            "{}–{}",
            asked.rough(found.drill_least),
            asked.rough(found.drill_most)
        ),
        unit: asked.length_unit(),
        reckoned: None,
        verdict: "Then the insert’s own tap, of the same pitch.".to_owned(),
        refused: false,
        open: false,
        rows: vec![
            ("drilled at least", asked.rough_words(found.drilled)),
            ("full thread at least", asked.rough_words(found.tapped)),
            ("tapped hole across", asked.rough_words(found.major)),
            ("its pitch diameter", asked.fine_words(found.pitch_diameter)),
            (
                "strips out at",
                format!("{} to {}", asked.force_words(weak), asked.force_words(strong)),
            ),
        ],
    })
}

static STRETCH_FIELDS: [Field; 9] = [
    Field::size("free", "length before, over the ends"),
    Field::size("tight", "length when tight"),
    Field::gap("least", "stretch, at least"),
    Field::gap("most", "stretch, at most"),
    Field::size("longest", "to be used again: free length at most"),
    Field::thread("thread", "bolt’s thread"),
    Field::size("grip", "what it clamps"),
    Field::number(
        "shank",
        "plain shank in the grip",
        Measure::Length,
        (0.0, 5_000.0),
    ),
    Field::size("around", "shank’s diameter"),
];

/// Bolt stretch.
pub static STRETCH: Calculation = Calculation {
    id: "stretch",
    name: "Bolt stretch",
    how: "Over the ends, the same spot each time, at one temperature. With thread and grip it also tells the pull.",
    model: "F = δ·E/(l₁/A₁ + l₂/A_s), E 207 GPa, with the give of head and nut and without; only while the bolt is elastic",
    fields: &STRETCH_FIELDS,
    reading: as_reading(Measure::Length, &["least", "most"]),
    answer: bolt_stretch,
};

fn bolt_stretch(asked: &Asked<'_>) -> Result<Answer, Trouble> {
    let (free, tight) = (asked.need_length("free")?, asked.need_length("tight")?);
    let found = stretch(free, tight)?;
    let (least, most) = (asked.length("least"), asked.length("most"));
    let mut judged = asked.judge(found, least, most)?;
    if !judged.open {
        match next(found, least, most)? {
            Next::Keep => {}
            Next::Again => judged.words += " Loosen it and tighten it anew.",
            Next::Replace => judged.words += " Replace it.",
        }
    }
    let longest = asked.judge(free, None, asked.length("longest"))?;
    if longest.refused {
        judged = judged.and(Judged::out("It is too long to be used again.".to_owned()));
    }
    let mut rows = Vec::new();
    if let (Some(thread), Some(grip)) = (asked.thread("thread"), asked.length("grip")) {
        let bolt = Shank {
            thread,
            strength: None,
            grip,
            plain: asked.length("shank").unwrap_or_default(),
            diameter: asked.length("around"),
        };
        let pull = bolt.pull(found)?;
        rows.push((
            "pull it tells",
            format!(
                "{} to {}",
                asked.force_words(pull.low),
                asked.force_words(pull.high)
            ),
        ));
    }
    Ok(Answer::of("stretch", asked.fine_figure(found), judged, rows))
}
