//! What the manual says of the heat and the cold, as it says it: its figures stand before ours.

use super::data::Seat;
pub use super::stated::{Manual, ManualChill, ManualHeat, Stated, both_scales};
use crate::job::field::{Entry, Field, Refused, Set, pick};
use crate::trade::heat_plan::{ChillMeans, HeatMeans};
use crate::trade::quantity::parse_temperature;

fn manual(seat: &Seat) -> Manual {
    seat.manual.unwrap_or_default()
}

fn heat(seat: &Seat) -> Option<ManualHeat> {
    manual(seat).heat
}

fn chill(seat: &Seat) -> Option<ManualChill> {
    manual(seat).chill
}

/// Keeps what is said; nothing said is no manual.
fn keep(seat: &mut Seat, now: Manual) {
    seat.manual = (now != Manual::default()).then_some(now);
}

fn keep_heat(seat: &mut Seat, heat: Option<ManualHeat>) {
    let now = Manual { heat, ..manual(seat) };
    keep(seat, now);
}

fn keep_chill(seat: &mut Seat, chill: Option<ManualChill>) {
    let now = Manual {
        chill,
        ..manual(seat)
    };
    keep(seat, now);
}

/// What the first two choices are called; the means follow.
const NO_HEAT: [&str; 2] = ["no heat", "heat, means not stated"];
const NO_CHILL: [&str; 2] = ["no cold", "cold, means not stated"];

/// What the manual may heat with, in the order it is offered.
pub fn heat_choices() -> Vec<&'static str> {
    let means = HeatMeans::ALL.into_iter().map(HeatMeans::words);
    NO_HEAT.into_iter().chain(means).collect()
}

/// What the manual may chill with, in the order it is offered.
pub fn chill_choices() -> Vec<&'static str> {
    let means = ChillMeans::ALL.into_iter().map(ChillMeans::words);
    NO_CHILL.into_iter().chain(means).collect()
}

/// Which of [`heat_choices`] holds.
pub fn heat_at(seat: &Seat) -> usize {
    let Some(heat) = heat(seat) else { return 0 };
    let at = heat
        .means
        .and_then(|means| HeatMeans::ALL.iter().position(|one| *one == means));
    at.map_or(1, |at| at + NO_HEAT.len())
}

/// Which of [`chill_choices`] holds.
pub fn chill_at(seat: &Seat) -> usize {
    let Some(chill) = chill(seat) else { return 0 };
    let at = chill
        .means
        .and_then(|means| ChillMeans::ALL.iter().position(|one| *one == means));
    at.map_or(1, |at| at + NO_CHILL.len())
}

/// Takes one of [`heat_choices`]; its temperatures stay.
pub fn choose_heat(seat: &mut Seat, at: usize) {
    let means = at
        .checked_sub(NO_HEAT.len())
        .and_then(|at| HeatMeans::ALL.get(at).copied());
    let bath = means == Some(HeatMeans::OilBath);
    let now = heat(seat).unwrap_or_default();
    let flash_point = now.flash_point.filter(|_| bath);
    let now = ManualHeat {
        means,
        flash_point,
        ..now
    };
    keep_heat(seat, (at > 0).then_some(now));
}

/// Takes one of [`chill_choices`]; its temperature stays.
pub fn choose_chill(seat: &mut Seat, at: usize) {
    let means = at
        .checked_sub(NO_CHILL.len())
        .and_then(|at| ChillMeans::ALL.get(at).copied());
    let now = chill(seat).unwrap_or_default();
    keep_chill(seat, (at > 0).then_some(ManualChill { means, ..now }));
}

/// A choice by its place, as a form offers it.
fn offered(choices: Vec<&'static str>) -> Vec<(String, String)> {
    let numbered = choices.into_iter().enumerate();
    numbered
        .map(|(at, words)| (at.to_string(), words.to_owned()))
        .collect()
}

fn chosen(choices: &[&'static str], value: &str) -> Result<usize, Refused> {
    let places: Vec<usize> = (0..choices.len()).collect();
    pick(&places, value)
}

fn words(stated: Option<Stated>) -> String {
    stated.map_or(String::new(), |stated| stated.text())
}

/// A temperature as it is typed; empty for none, a bare number in the unit that stood there.
fn typed(text: &str, before: Option<Stated>) -> Result<Option<Stated>, Refused> {
    if text.trim().is_empty() {
        return Ok(None);
    }
    let read = parse_temperature(text, before.map(|before| before.unit));
    read.map(Some).map_err(|error| Refused::Said(error.to_string()))
}

fn set_heat(seat: &mut Seat, change: impl FnOnce(&mut ManualHeat) -> Set) -> Set {
    let before = heat(seat);
    let mut now = before.unwrap_or_default();
    change(&mut now)?;
    let said = before.is_some() || now != ManualHeat::default();
    keep_heat(seat, said.then_some(now));
    Ok(())
}

/// What the one with the hole is heated with.
pub const HEAT_BY: Field<Seat> = Field::Choice {
    id: "heat_by",
    label: "the manual: heat the one with the hole",
    offered: || offered(heat_choices()),
    get: |s| (*heat_choices().get(heat_at(s)).unwrap_or(&"")).to_owned(),
    set: |s, value| {
        choose_heat(s, chosen(&heat_choices(), value)?);
        Ok(())
    },
};

/// What it is heated to.
pub const HEAT_TO: Field<Seat> = Field::Typed {
    id: "heat_to",
    label: "the manual: heat to, with its unit: 250 °F",
    entry: Entry::Words,
    get: |s| words(heat(s).and_then(|heat| heat.to)),
    set: |s, text| {
        set_heat(s, |heat| {
            heat.to = typed(text, heat.to)?;
            Ok(())
        })
    },
};

/// What it may never be hotter than.
pub const NEVER_OVER: Field<Seat> = Field::Typed {
    id: "never_over",
    label: "the manual: never over",
    entry: Entry::Words,
    get: |s| words(heat(s).and_then(|heat| heat.never_over)),
    set: |s, text| {
        set_heat(s, |heat| {
            heat.never_over = typed(text, heat.never_over.or(heat.to))?;
            Ok(())
        })
    },
};

/// The flash point of the bath's oil.
pub const FLASH_POINT: Field<Seat> = Field::Typed {
    id: "flash_point",
    label: "flash point of the bath’s oil",
    entry: Entry::Words,
    get: |s| words(heat(s).and_then(|heat| heat.flash_point)),
    set: |s, text| {
        set_heat(s, |heat| {
            heat.flash_point = typed(text, heat.flash_point)?;
            Ok(())
        })
    },
};

/// What the other is chilled with.
pub const CHILL_BY: Field<Seat> = Field::Choice {
    id: "chill_by",
    label: "the manual: chill the one that goes in",
    offered: || offered(chill_choices()),
    get: |s| (*chill_choices().get(chill_at(s)).unwrap_or(&"")).to_owned(),
    set: |s, value| {
        choose_chill(s, chosen(&chill_choices(), value)?);
        Ok(())
    },
};

/// What it is chilled to.
pub const CHILL_TO: Field<Seat> = Field::Typed {
    id: "chill_to",
    label: "the manual: chill to",
    entry: Entry::Words,
    get: |s| words(chill(s).and_then(|chill| chill.to)),
    set: |s, text| {
        let before = chill(s);
        let mut now = before.unwrap_or_default();
        now.to = typed(text, now.to)?;
        let said = before.is_some() || now.to.is_some();
        keep_chill(s, said.then_some(now));
        Ok(())
    },
};
