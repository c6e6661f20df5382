//! The fields of a fasten step.

use super::data::{CONDITIONS, Fasten, Front, Lock, Reuse, layout, layout_words, rectangle};
use super::lengths::Lengths;
use super::passes;
use crate::job::field::{Entry, Field, Kept, Number, Refused, Set, pick, pick_maybe, refuse};
use crate::job::text_form::{said, stages, thread};
use crate::job::units::Units;
use crate::trade::application::{Application, JointKind};
use crate::trade::guard::Fastener;
use crate::trade::order::{Layout, MOST_BOLTS};
use crate::trade::quantity::{LengthUnit, Stated, Unit, convert};
use crate::trade::strength::Strength;
use crate::trade::strip::FemaleMaterial;

static COUNT: [Number<Fasten>; 1] = [Number::<Fasten>::new(
    ("count", "how many"),
    Kept::Bare,
    (1.0, MOST_BOLTS as f64),
    "count/count",
    // As it is written: `count()` would cut a file's 100 to what there can be.
    |f| {
        Some(match f.layout {
            Layout::Single => 1.0,
            Layout::Line { count } | Layout::Circle { count } | Layout::Free { count } => count as f64,
            Layout::PairedRows { pairs } => pairs as f64 * 2.0,
            Layout::Rectangle { across, down } => (across as f64 + down as f64) * 2.0,
        })
    },
    |f, count| {
        let count = count as usize;
        f.layout = match f.layout {
            // Its upper row stays.
            Layout::Rectangle { across, .. } => rectangle(count, across),
            _ => layout(layout_words(&f.layout), count),
        };
    },
)
.whole()
.fits(|f, count| has(f.layout, count as usize))];

/// What is said of a rectangle of another count.
const NO_RECTANGLE: &str = "A rectangle needs an even count of four or more: change how many first.";

/// Whether so many lie round a rectangle.
fn rectangular(count: usize) -> bool {
    count.is_multiple_of(2) && count > 3
}

/// Whether a pattern can be of so many as it stands, a rectangle with its upper row.
fn has(layout: Layout, count: usize) -> Result<(), String> {
    match layout {
        Layout::PairedRows { .. } if !count.is_multiple_of(2) => {
            Err("Two rows need an even count: change how they lie first.".to_owned())
        }
        Layout::Rectangle { .. } if !rectangular(count) => {
            Err("A rectangle needs an even count of four or more: change how they lie first.".to_owned())
        }
        Layout::Rectangle { across, .. } => row_fits(count, across)
            .map_err(|most| format!("{most}, and {across} are there: change that first.")),
        Layout::Single
        | Layout::Line { .. }
        | Layout::PairedRows { .. }
        | Layout::Circle { .. }
        | Layout::Free { .. } => Ok(()),
    }
}

/// Whether so many fit in the upper row of a rectangle of that count.
///
/// # Errors
/// How many do, to be ended with what to do about it: "At most 8 of 16 fit in the upper row".
pub fn row_fits(count: usize, across: usize) -> Result<(), String> {
    let most = count / 2;
    let fits = across <= most;
    fits.then_some(())
        .ok_or_else(|| format!("At most {most} of {count} fit in the upper row"))
}

/// How many of a rectangle's are in its upper row, corners included. Said of another even pattern, it becomes
/// a rectangle.
pub static ACROSS: [Number<Fasten>; 1] = [Number::<Fasten>::new(
    ("across", "in the upper row of a rectangle"),
    Kept::Bare,
    (2.0, 31.0),
    "rectangle/across",
    |f| match f.layout {
        Layout::Rectangle { across, .. } => Some(across as f64),
        _ => None,
    },
    |f, across| f.layout = rectangle(f.layout.count(), across as usize),
)
.whole()
.fits(|f, across| {
    let count = f.layout.count();
    if !rectangular(count) {
        return Err(NO_RECTANGLE.to_owned());
    }
    row_fits(count, across as usize).map_err(|most| format!("{most}: enter fewer, or change how many first."))
})
.or_none(|f| {
    if let Layout::Rectangle { .. } = f.layout {
        f.layout = layout("rectangle", f.layout.count());
    }
})];

/// How long the bolt is under its head, mm. The plan took 1 mm at least, the table of fasteners anything
/// above nothing: a grub screw may have next to no length.
pub static LENGTH: [Number<Fasten>; 1] = [Number::<Fasten>::new(
    ("length", "length under the head"),
    Kept::Millimetre,
    (0.1, 1_000.0),
    "fasten/length_mm",
    |f| f.length_mm,
    |f, mm| f.length_mm = Some(mm),
)
.or_none(|f| f.length_mm = None)];

/// How deep it is screwed in, mm. The plan took 0.5 to 500 mm, the table of fasteners up to a metre: a
/// through bolt's thread may be as long as the bolt.
pub static ENGAGEMENT: [Number<Fasten>; 1] = [Number::<Fasten>::new(
    ("engagement", "engaged depth"),
    Kept::Millimetre,
    (0.1, 1_000.0),
    "fasten/engagement_mm",
    |f| f.engagement_mm,
    |f, mm| f.engagement_mm = Some(mm),
)
.or_none(|f| f.engagement_mm = None)];

macro_rules! length {
    ($id:literal, $name:literal, $range:expr, $stored:literal, $field:ident) => {
        Number::<Fasten>::new(
            ($id, $name),
            Kept::Millimetre,
            $range,
            $stored,
            |f| f.stated_lengths().millimetres(f.stated_lengths().$field),
            |f, mm| {
                let own = convert(mm, "mm", f.length_unit().symbol()).unwrap_or(mm);
                let $field = Some(Stated::plain(own));
                f.state_lengths(Lengths {
                    $field,
                    ..f.stated_lengths()
                });
            },
        )
        .or_none(|f| {
            let stated = f.stated_lengths();
            f.state_lengths(Lengths {
                $field: None,
                ..stated
            });
        })
        .stated(
            |f| f.stated_lengths().$field,
            |f, stated| {
                let $field = Some(stated);
                f.state_lengths(Lengths {
                    $field,
                    ..f.stated_lengths()
                });
            },
        )
        .in_unit(|f| {
            let unit = f.length_unit();
            (unit.symbol(), unit.metres() / LengthUnit::Millimetre.metres())
        })
    };
}

/// How far a bolt stretches, mm (from memory: manuals state 0.1 to 0.6 mm for bolts of some 50 to 100 mm).
const STRETCHES: (f64, f64) = (0.001, 5.0);
/// How long one is over its ends, mm.
const OVER_ENDS: (f64, f64) = (1.0, 1_000.0);

/// How far each stretches.
pub static STRETCH: [Number<Fasten>; 2] = [
    length!(
        "stretch_least",
        "least stretch",
        STRETCHES,
        "fasten/stretch_least_mm",
        stretch_least
    ),
    length!(
        "stretch_most",
        "most stretch",
        STRETCHES,
        "fasten/stretch_most_mm",
        stretch_most
    ),
];

/// What the bolt clamps, how much of that is plain shank, and how thick that is, mm: its pull is reckoned from its
/// stretch by them.
pub static GRIP: [Number<Fasten>; 3] = [
    Number::<Fasten>::new(
        ("grip", "grip: head to nut or hole"),
        Kept::Millimetre,
        (1.0, 1_000.0),
        "fasten/grip_mm",
        |f| f.grip_mm,
        |f, mm| f.grip_mm = Some(mm),
    )
    .or_none(|f| f.grip_mm = None),
    Number::<Fasten>::new(
        ("plain", "plain shank in the grip"),
        Kept::Millimetre,
        (0.0, 1_000.0),
        "fasten/plain_mm",
        |f| f.plain_mm,
        |f, mm| f.plain_mm = Some(mm),
    )
    .or_none(|f| f.plain_mm = None),
    Number::<Fasten>::new(
        ("shank", "its diameter, if not the thread’s: a waist"),
        Kept::Millimetre,
        (0.5, 200.0),
        "fasten/shank_mm",
        |f| f.shank_mm,
        |f, mm| f.shank_mm = Some(mm),
    )
    .or_none(|f| f.shank_mm = None),
];

/// How often one may be tightened in all, new ones counted.
pub static USES: [Number<Fasten>; 1] = [Number::<Fasten>::new(
    ("most_uses", "may be tightened, times in all"),
    Kept::Bare,
    (1.0, 20.0),
    "fasten/most_uses",
    |f| f.most_uses.map(f64::from),
    |f, times| f.most_uses = Some(times as u32),
)
.whole()
.or_none(|f| f.most_uses = None)];

/// How long one may be over its ends and come again.
pub static LONGEST: [Number<Fasten>; 1] = [length!(
    "longest",
    "greatest length over the ends",
    OVER_ENDS,
    "fasten/longest_mm",
    longest
)];

/// Whether each length that is stated lies within its range.
fn lengths_make_sense(lengths: &Lengths) -> bool {
    let within = |stated, (least, most): (f64, f64)| {
        let mm = lengths.millimetres(stated);
        mm.is_none_or(|mm| mm >= least && mm <= most)
    };
    within(lengths.stretch_least, STRETCHES)
        && within(lengths.stretch_most, STRETCHES)
        && within(lengths.longest, OVER_ENDS)
}

const LAYOUTS: [&str; 5] = ["line", "two rows", "rectangle", "circle", "as numbered"];

/// Every field of fasteners, in the order of the plan; the joint of what goes on them comes behind.
pub static TABLE: [Field<Fasten>; 28] = [
    Field::Typed {
        id: "torque",
        label: "manual says",
        entry: Entry::Torque,
        get: |f| f.torque.text(),
        set: |f, words| {
            f.say(said::typed(words, None).map_err(Refused::Said)?);
            Ok(())
        },
    },
    Field::Typed {
        id: "thread",
        label: "thread",
        entry: Entry::Thread,
        get: |f| f.thread_name(),
        set: |f, words| {
            f.thread = thread::read(words).map_err(Refused::Said)?;
            Ok(())
        },
    },
    Field::Choice {
        id: "fastener",
        label: "it is",
        offered: || {
            let words = Fastener::ALL.iter().enumerate();
            words
                .map(|(at, fastener)| (at.to_string(), fastener.words().to_owned()))
                .collect()
        },
        get: |f| f.what_it_is().words().to_owned(),
        set: |f, at| {
            f.take_fastener(pick(&Fastener::ALL, at)?);
            Ok(())
        },
    },
    Field::Numbers(&COUNT),
    Field::Choice {
        id: "layout",
        label: "how they lie",
        offered: || LAYOUTS.map(|words| (words.to_owned(), words.to_owned())).to_vec(),
        get: |f| layout_words(&f.layout).to_owned(),
        set: set_layout,
    },
    Field::Numbers(&ACROSS),
    Field::Choice {
        id: "front",
        label: "the part’s front in the drawing",
        offered: || {
            let words = Front::ALL.iter().enumerate();
            words
                .map(|(at, front)| (at.to_string(), front.words().to_owned()))
                .collect()
        },
        get: |f| f.front.words().to_owned(),
        set: |f, at| {
            f.front = pick(&Front::ALL, at)?;
            Ok(())
        },
    },
    Field::Typed {
        id: "labels",
        label: "the manual’s numbers, in the order of the places",
        entry: Entry::Words,
        get: Fasten::label_words,
        set: |f, words| f.set_labels(words).map_err(Refused::Said),
    },
    Field::Typed {
        id: "passes",
        label: "passes, % of the torque",
        entry: Entry::Words,
        get: |f| passes::words(&f.passes),
        set: |f, words| {
            f.passes = passes::read(words).map_err(|why| Refused::Said(why.to_owned()))?;
            Ok(())
        },
    },
    Field::Typed {
        id: "stages",
        label: "stages on one line: oil; snug 10 N·m; 20 N·m; 60° ± 5°",
        entry: Entry::Words,
        get: |f| stages::line(&f.stages),
        set: |f, words| {
            f.stages = stages::typed_line(words).map_err(Refused::Said)?;
            Ok(())
        },
    },
    Field::Choice {
        id: "lengths_in",
        label: "stretch and length over the ends in",
        offered: || {
            let units = Units::LENGTHS.iter().enumerate();
            units
                .map(|(at, unit)| (at.to_string(), unit.symbol().to_owned()))
                .collect()
        },
        get: |f| f.length_unit().symbol().to_owned(),
        set: |f, at| f.take_length_unit(pick(&Units::LENGTHS, at)?, lengths_make_sense),
    },
    Field::Numbers(&STRETCH),
    Field::Flag {
        id: "stretch_decides",
        label: "tightened to the stretch: the torque is only where to begin",
        get: |f| f.stretch_decides,
        set: |f, yes| f.stretch_decides = yes,
    },
    Field::Numbers(&GRIP),
    Field::Flag {
        id: "to_yield",
        label: "tightened past its yield",
        get: |f| f.to_yield,
        set: |f, yes| f.to_yield = yes,
    },
    Field::Numbers(&LENGTH),
    Field::Choice {
        id: "class",
        label: "class",
        offered: || or_not_known(&Strength::ALL, Strength::name),
        get: |f| f.strength.map_or("not known", Strength::name).to_owned(),
        set: |f, at| {
            f.strength = pick_maybe(&Strength::ALL, at)?;
            Ok(())
        },
    },
    Field::Choice {
        id: "into",
        label: "screwed into",
        offered: || or_not_known(&FemaleMaterial::ALL, FemaleMaterial::words),
        get: |f| f.into.map_or("not known", FemaleMaterial::words).to_owned(),
        set: |f, at| {
            f.into = pick_maybe(&FemaleMaterial::ALL, at)?;
            Ok(())
        },
    },
    Field::Numbers(&ENGAGEMENT),
    Field::Choice {
        id: "condition",
        label: "thread",
        offered: || {
            let words = CONDITIONS.iter().enumerate();
            words
                .map(|(at, condition)| (at.to_string(), condition.words().to_owned()))
                .collect()
        },
        get: |f| f.condition.words().to_owned(),
        set: |f, at| {
            f.condition = pick(&CONDITIONS, at)?;
            Ok(())
        },
    },
    Field::Flag {
        id: "locking",
        label: "self-locking nuts",
        get: |f| f.self_locking,
        set: |f, yes| f.self_locking = yes,
    },
    Field::Flag {
        id: "apart",
        label: "the manual says their running torque is not added",
        get: |f| f.running_apart,
        set: |f, yes| f.running_apart = yes,
    },
    Field::Choice {
        id: "lock",
        label: "locked by",
        offered: || {
            let words = Lock::ALL.iter().enumerate();
            words
                .map(|(at, lock)| (at.to_string(), lock.words().to_owned()))
                .collect()
        },
        get: |f| f.lock.words().to_owned(),
        set: |f, at| {
            f.lock = pick(&Lock::ALL, at)?;
            Ok(())
        },
    },
    Field::Flag {
        id: "new",
        label: "new ones only",
        get: |f| f.reuse == Reuse::New,
        set: |f, yes| f.reuse = if yes { Reuse::New } else { Reuse::Again },
    },
    Field::Numbers(&USES),
    Field::Numbers(&LONGEST),
    Field::Flag {
        id: "old_locked",
        label: "high-strength threadlocker holds the old ones",
        get: |f| f.old_locked,
        set: |f, yes| f.old_locked = yes,
    },
    Field::Flag {
        id: "compound",
        label: "a compound or washer goes with it",
        get: |f| f.compound.is_some(),
        set: |f, yes| {
            let joint = || Application {
                thread: f.thread.map(|thread| thread.major()),
                ..Application::new(JointKind::ThreadedFastener)
            };
            f.compound = yes.then(joint);
        },
    },
];

fn set_layout(fasten: &mut Fasten, words: &str) -> Set {
    if !LAYOUTS.contains(&words) {
        return refuse("Choose one of those shown.");
    }
    let count = fasten.layout.count();
    if words == "two rows" && !count.is_multiple_of(2) {
        return refuse("Two rows need an even count: change how many first.");
    }
    if words == "rectangle" && !rectangular(count) {
        return refuse(NO_RECTANGLE);
    }
    fasten.layout = layout(words, count);
    Ok(())
}

/// Each of `all` by its place in the list, behind "not known".
fn or_not_known<T: Copy>(all: &[T], words: fn(T) -> &'static str) -> Vec<(String, String)> {
    let unknown = std::iter::once((String::new(), "not known".to_owned()));
    let offered = all
        .iter()
        .enumerate()
        .map(|(at, one)| (at.to_string(), words(*one).to_owned()));
    unknown.chain(offered).collect()
}
