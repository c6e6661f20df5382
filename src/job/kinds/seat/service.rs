//! Fields of the fit as it runs, and of an interference that is given as such.

use super::answer::nominal;
use super::data::{HeldBy, Seat, USUAL_RUNNING_C};
use super::source;
use crate::job::field::{Entry, Field, Kept, Number, Refused, Set, pick, refuse};
use crate::trade::quantity::{Length, LengthUnit, in_mark, parse_deviation, shortest};
use uom::si::length::millimeter;

/// How hot it runs, °C: from a cold store to past hot oil.
const RUNNING_RANGE: (f64, f64) = (-50.0, 250.0);

/// How hot it runs; shown at the bench where it is told.
pub static RUNNING: [Number<Seat>; 1] = [Number::new(
    ("runs_at", "both parts run at"),
    Kept::Celsius,
    RUNNING_RANGE,
    "seat/runs_at_c",
    |s: &Seat| s.runs_at_c,
    |s, c| s.runs_at_c = Some(c),
)
.or_none(|s| s.runs_at_c = None)];

/// The first of every choice.
const NOT_TOLD: &str = "not told";

/// Whether the running temperature is told, by its place: no, yes.
pub fn tell_running(seat: &mut Seat, told: bool) {
    seat.runs_at_c = told.then_some(seat.runs_at_c.unwrap_or(USUAL_RUNNING_C));
}

/// What may hold it, in the order it is offered.
pub fn held_choices() -> Vec<&'static str> {
    let known = HeldBy::ALL.into_iter().map(HeldBy::words);
    std::iter::once(NOT_TOLD).chain(known).collect()
}

/// Which of [`held_choices`] holds.
pub fn held_at(seat: &Seat) -> usize {
    let at = seat
        .held_by
        .and_then(|by| HeldBy::ALL.iter().position(|one| *one == by));
    at.map_or(0, |at| at + 1)
}

/// Takes one of [`held_choices`].
pub fn choose_held(seat: &mut Seat, at: usize) {
    seat.held_by = at.checked_sub(1).and_then(|at| HeldBy::ALL.get(at).copied());
}

/// Whether the bearing is sealed, in the order it is offered.
pub const SEALED_CHOICES: [&str; 3] = [
    NOT_TOLD,
    "no: open, or no bearing",
    "yes: seals or its own grease",
];

/// Which of [`SEALED_CHOICES`] holds.
pub fn sealed_at(seat: &Seat) -> usize {
    seat.sealed.map_or(0, |sealed| 1 + usize::from(sealed))
}

/// Takes one of [`SEALED_CHOICES`].
pub fn choose_sealed(seat: &mut Seat, at: usize) {
    seat.sealed = at.checked_sub(1).map(|at| at > 0);
}

/// Choices by their place, as a form offers them.
fn offered(choices: &[&'static str]) -> Vec<(String, String)> {
    let numbered = choices.iter().enumerate();
    numbered
        .map(|(at, words)| (at.to_string(), (*words).to_owned()))
        .collect()
}

fn chosen(choices: &[&'static str], value: &str) -> Result<usize, Refused> {
    let places: Vec<usize> = (0..choices.len()).collect();
    pick(&places, value)
}

/// Whether the part is a bearing with seals of its own.
pub const SEALED: Field<Seat> = Field::Choice {
    id: "sealed",
    label: "bearing with seals or grease of its own",
    offered: || offered(&SEALED_CHOICES),
    get: |s| (*SEALED_CHOICES.get(sealed_at(s)).unwrap_or(&"")).to_owned(),
    set: |s, value| {
        choose_sealed(s, chosen(&SEALED_CHOICES, value)?);
        Ok(())
    },
};

/// What holds it should the fit let go.
pub const HELD_BY: Field<Seat> = Field::Choice {
    id: "held_by",
    label: "held by, should the fit let go",
    offered: || offered(&held_choices()),
    get: |s| (*held_choices().get(held_at(s)).unwrap_or(&"")).to_owned(),
    set: |s, value| {
        choose_held(s, chosen(&held_choices(), value)?);
        Ok(())
    },
};

/// The interference as the manual gives it, without classes.
pub const TIGHT: Field<Seat> = Field::Typed {
    id: "tight",
    label: "or the interference as the manual gives it: 0.20–0.35 mm",
    entry: Entry::Words,
    get: |s| {
        source::tight_mm(s).map_or(String::new(), |(least, most)| {
            // A clearance is written with a sign, and then "to" stands between.
            let between = if least < 0.0 { " to " } else { "–" };
            let (least, most) = (shortest(least), shortest(most));
            format!("{least}{between}{most} mm").replace('-', "−")
        })
    },
    set: set_tight,
};

/// "0.20–0.35 mm", "0.008 to 0.014 in": least first. Empty leaves the sizes as they are.
fn set_tight(seat: &mut Seat, text: &str) -> Set {
    let text = text.trim();
    if text.is_empty() {
        return Ok(());
    }
    let halves = text.split_once(" to ").or_else(|| text.split_once(['–', '-']));
    let Some((least, most)) = halves else {
        return refuse(in_mark(
            "Write the least and the most interference: 0.20–0.35 mm.",
        ));
    };
    let read = |text: &str, unit| {
        parse_deviation(text.trim(), unit).map_err(|error| Refused::Said(error.to_string()))
    };
    let most = read(most, Some(LengthUnit::Millimetre))?;
    let least = read(least, Some(most.unit))?;
    let (least, most) = (least.length(), most.length());
    if nominal(&seat.hole) <= Length::default() {
        return refuse("Enter the size of the bore first.");
    }
    if least > most {
        return refuse(in_mark("Write the least interference first: 0.20–0.35 mm."));
    }
    if nominal(&seat.hole) + least <= Length::new::<millimeter>(0.0) {
        return refuse("That clearance is larger than the bore.");
    }
    source::set_tight(seat, least, most);
    Ok(())
}
