//! The parts of all steps in one list: what each is, where it is, whether it must be new.

use super::kinds::Work;
pub use super::part::{Part, PartKey, PartPlace, PartState};
use super::progress::{Progress, Status, StepProgress};
use super::sheet::{Sheet, Step, StepId};
/// One line of the list.
#[derive(Debug, Clone, PartialEq)]
pub struct Listed {
    /// The step that needs it.
    pub step: StepId,
    /// What the record knows it by.
    pub key: PartKey,
    /// What it is.
    pub name: String,
    /// How many are needed.
    pub of: u32,
    /// It must be new.
    pub new_part: bool,
    /// It is a fastener.
    pub fastener: bool,
    /// Where it is.
    pub place: PartPlace,
    /// How many were counted here.
    pub here: u32,
    /// It went to the shop.
    pub sent: bool,
    /// Its step is done.
    pub done: bool,
    /// What is wrong with it; empty where it is fit, or nobody looked.
    pub unfit: String,
    /// New ones must be on, and nobody said yet that they are.
    pub new_wanted: bool,
}

impl Listed {
    /// Counted whole and within reach, or of a step that is done.
    pub fn ticked(&self) -> bool {
        self.done || self.here >= self.of && self.place.at_hand()
    }

    /// "2 of 4 here, in bag 7".
    pub fn words(&self) -> String {
        if !self.unfit.is_empty() {
            return format!("not fit: {}; {}", self.unfit, self.place.words());
        }
        if self.place == PartPlace::Fitted {
            return self.place.words();
        }
        let place = self.place.words();
        match self.here {
            _ if self.done && self.place == PartPlace::NotSaid => "its step is done".to_owned(),
            _ if self.done => format!("its step is done; last {place}"),
            0 => place,
            here if here >= self.of => format!("all {} here, {place}", self.of),
            here => format!("{here} of {} here, {place}", self.of),
        }
    }
}

/// What the whole list comes to.
#[derive(Debug, Clone, Copy, Default, PartialEq, Eq)]
pub struct PartsTally {
    /// Lines.
    pub all: usize,
    /// Lines counted whole.
    pub ticked: usize,
    /// Lines that went to the shop.
    pub sent: usize,
    /// Those of them that are back and counted whole.
    pub back: usize,
    /// Lines on order.
    pub on_order: usize,
}

impl PartsTally {
    /// Counts the list.
    pub fn of(list: &[Listed]) -> Self {
        let count = |which: fn(&Listed) -> bool| list.iter().filter(|part| which(part)).count();
        Self {
            all: list.len(),
            ticked: count(Listed::ticked),
            sent: count(|part| part.sent),
            back: count(|part| part.sent && part.ticked()),
            on_order: count(|part| part.place == PartPlace::OnOrder),
        }
    }

    /// Sentences for the head of the list.
    pub fn words(&self) -> Vec<String> {
        let mut words = vec![format!("{} of {} counted and at hand.", self.ticked, self.all)];
        if self.sent > 0 {
            words.push(match self.sent - self.back {
                0 => format!(
                    "Everything sent to the shop is back: {} of {}.",
                    self.back, self.sent
                ),
                left => format!("Sent to the shop: {}. Not back or not whole: {left}.", self.sent),
            });
        }
        if self.on_order > 0 {
            words.push(format!("On order: {}.", self.on_order));
        }
        words
    }
}

/// The parts of every step, in the order of the steps.
pub fn list(sheet: &Sheet, progress: &Progress) -> Vec<Listed> {
    sheet.steps.iter().flat_map(|step| here(step, progress)).collect()
}

/// The parts of one step, brought up to what the record says.
pub fn here(step: &Step, progress: &Progress) -> Vec<Listed> {
    let planned = of_step(step).into_iter();
    let mut all: Vec<Listed> = planned.map(|part| seen(part, progress)).collect();
    let touched = progress.touched(step.id);
    if let Some(own) = all.iter_mut().find(|part| part.key == PartKey::Own)
        && touched.is_some_and(|touched| used_up(step, touched))
    {
        (own.new_part, own.new_wanted) = (true, true);
    }
    all
}

/// Fasteners that were tightened as often as they may be.
fn used_up(step: &Step, progress: &StepProgress) -> bool {
    matches!(&step.work, Work::Fasten(fasten) if fasten.used_up(progress))
}

/// The first part of a step of which new ones must be on, and nobody said that they are.
pub fn new_wanted(step: &Step, progress: &StepProgress) -> Option<PartKey> {
    if used_up(step, progress) {
        return Some(PartKey::Own);
    }
    let mut planned = of_step(step).into_iter().filter(|part| part.new_part);
    planned
        .find(|part| !progress.new_on.contains(&part.key))
        .map(|part| part.key)
}

/// A part as planned, brought up to what the record says. Nothing is in the machine that nobody said is.
fn seen(mut part: Listed, progress: &Progress) -> Listed {
    if let Some(state) = progress.part(part.step, part.key) {
        part.sent |= state.sent;
        part.place = state.place.clone();
        part.here = state.here;
    }
    let Some(step) = progress.touched(part.step) else {
        return part;
    };
    part.done = matches!(step.status, Status::Done(_));
    part.unfit = step.unfit(part.key).unwrap_or_default().to_owned();
    if part.new_part && step.new_on.contains(&part.key) {
        part.new_wanted = false;
        part.place = PartPlace::Fitted;
        part.here = part.of;
    }
    part
}

/// What one step needs, as planned.
fn of_step(step: &Step) -> Vec<Listed> {
    let line = |key: PartKey, name: &str, of: u32, new_part: bool, place: PartPlace| Listed {
        key,
        step: step.id,
        name: name.to_owned(),
        of: of.max(1),
        new_part,
        fastener: false,
        sent: place == PartPlace::AtShop,
        place,
        here: 0,
        done: false,
        unfit: String::new(),
        new_wanted: new_part,
    };
    let own = step.work.kind().part().map(|own| Listed {
        fastener: own.fastener,
        ..line(
            PartKey::Own,
            &own.name,
            own.count,
            own.new_part,
            PartPlace::NotSaid,
        )
    });
    let mut lines: Vec<Listed> = own.into_iter().collect();
    for part in &step.parts {
        match lines.first_mut() {
            Some(own) if part.own && own.key == PartKey::Own => {
                own.new_part |= part.new_part;
                own.new_wanted |= part.new_part;
                own.sent |= part.place == PartPlace::AtShop;
                own.place = part.place.clone();
            }
            _ => lines.push(line(
                PartKey::More(part.id),
                &part.name,
                part.count,
                part.new_part,
                part.place.clone(),
            )),
        }
    }
    lines
}

/// What a part of a step is called, as planned now.
pub fn name(step: &Step, key: PartKey) -> Option<String> {
    let part = of_step(step).into_iter().find(|line| line.key == key)?;
    Some(part.name)
}

/// How many of a part a step needs.
pub fn count(step: &Step, key: PartKey) -> u32 {
    let part = of_step(step).into_iter().find(|line| line.key == key);
    part.map_or(1, |line| line.of)
}

/// The part of a step that form 1 knew by that name.
pub fn by_name(step: &Step, name: &str) -> Option<PartKey> {
    let own = of_step(step).into_iter().find(|line| line.name == name);
    own.map(|line| line.key)
}
