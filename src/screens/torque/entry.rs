//! What is typed on the Torque screen and what comes of it, tied to what the bench keeps.

use crate::bench::{Bench, Desk, remembered, typed_words};
use crate::job::answer::TorqueAnswer;
use crate::job::asked::{Question, WholeAnswer, answer};
use crate::job::guarding::GuardAnswer;
use crate::job::sense;
use crate::job::sheet::StepId;
use crate::job::text_form::said;
use crate::parts::dynamic::{derive, memo};
use crate::trade::guard::Fastener;
use crate::trade::quantity::{TorqueStatement, TorqueUnit, parse_torque, parse_torques};
use leptos::prelude::*;

/// The lower half of the screen.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Panel {
    /// The keypad: no sheet is open.
    Keys,
    /// The ways to the others, where there is no room for them.
    Menu,
    /// A field for the manual's own words.
    Words,
    /// The keypad for what the manual also says.
    Also,
    /// The bolt and the guard's details.
    Bolt,
    /// Which wrench.
    Wrench,
    /// Adapter, nut, turn, second value.
    More,
}

/// The screen's state. Copy it freely: it holds handles.
#[derive(Clone, Copy)]
pub struct Entry {
    bench: Bench,
    /// What the manual says, as typed.
    pub typed: RwSignal<String>,
    /// Its unit.
    pub unit: RwSignal<TorqueUnit>,
    /// What it also says.
    pub also_typed: RwSignal<String>,
    /// Its unit.
    pub also_unit: RwSignal<TorqueUnit>,
    /// What the lower half shows.
    pub panel: RwSignal<Panel>,
    /// The bench's things for this screen.
    pub desk: Memo<Desk>,
    /// What is typed, read.
    pub read: Memo<Result<TorqueStatement, String>>,
    /// The second value, read; none while empty.
    pub also: Memo<Option<Result<TorqueStatement, String>>>,
    /// Everything that comes of it.
    pub whole: Memo<Option<WholeAnswer>>,
    /// What to set.
    pub set: Signal<Option<TorqueAnswer>>,
    /// Why nothing can be set.
    pub trouble: Signal<Option<String>>,
    /// The slip guard's word.
    pub guard: Signal<Option<GuardAnswer>>,
}

impl Entry {
    /// The entry as it was left, or with the value of the step it is opened from.
    pub fn open(bench: Bench, from: Option<StepId>) -> Self {
        arrive(bench, from);
        let kept = memo(move || {
            bench.settings.with(|s| Typed {
                typed: s.torque_typed.clone(),
                unit: s.torque_unit,
                also_typed: s.desk.also_typed.clone(),
                also_unit: s.desk.also_unit,
            })
        });
        let first = kept.get_untracked();
        let (typed, unit) = (RwSignal::new(first.typed), RwSignal::new(first.unit));
        let (also_typed, also_unit) = (RwSignal::new(first.also_typed), RwSignal::new(first.also_unit));
        let read = memo(move || typed.with(|text| read(text, unit.get())));
        let also = memo(move || {
            also_typed.with(|text| (!text.is_empty()).then(|| self::read(text, also_unit.get())))
        });
        let desk = memo(move || bench.settings.with(|s| s.desk.clone()));
        let whole = memo(move || {
            read.get()
                .ok()
                .map(|statement| whole(bench, &statement, also.get(), &desk.get()))
        });
        let set = derive(move || whole.get().and_then(|whole| whole.set));
        let trouble = derive(move || match read.get() {
            // An empty entry is an invitation, not a mistake.
            Err(_) if typed.with(String::is_empty) => None,
            Err(words) => Some(words),
            Ok(_) => None,
        });
        let guard = derive(move || whole.get().and_then(|whole| whole.guard));
        let entry = Self {
            bench,
            typed,
            unit,
            also_typed,
            also_unit,
            panel: RwSignal::new(Panel::Keys),
            desk,
            read,
            also,
            whole,
            set,
            trouble,
            guard,
        };
        entry.keep_alike(kept);
        on_cleanup(move || remember_kept(bench));
        entry
    }

    /// What is typed is kept; what is kept anew (undo, a correction) is shown.
    fn keep_alike(self, kept: Memo<Typed>) {
        Effect::new(move || {
            let kept = kept.get();
            set_if_new(self.typed, kept.typed);
            set_if_new(self.unit, kept.unit);
            set_if_new(self.also_typed, kept.also_typed);
            set_if_new(self.also_unit, kept.also_unit);
        });
        Effect::new(move || {
            let now = Typed {
                typed: self.typed.get(),
                unit: self.unit.get(),
                also_typed: self.also_typed.get(),
                also_unit: self.also_unit.get(),
            };
            if now != kept.get_untracked() {
                self.bench.note(|settings| {
                    (settings.torque_typed, settings.torque_unit) = (now.typed, now.unit);
                    (settings.desk.also_typed, settings.desk.also_unit) = (now.also_typed, now.also_unit);
                });
            }
        });
    }

    /// Shows another lower half; a value that is left is remembered.
    pub fn show(self, panel: Panel) {
        self.remember();
        self.panel.set(panel);
    }

    /// Remembers the typed value among the last ones.
    pub fn remember(self) {
        if let Ok(statement) = self.read.get_untracked() {
            let words = remembered(&statement);
            if self
                .desk
                .with_untracked(|desk| desk.recent.first() != Some(&words))
            {
                self.bench.note(|settings| settings.desk.remember(&statement));
            }
        }
    }

    /// Puts a corrected value in the entry's place.
    pub fn correct(self, statement: &TorqueStatement) {
        self.remember();
        self.bench.enter(statement, "correction of the torque");
    }

    /// Says what the bolt is.
    pub fn tell(self, fastener: Fastener) {
        self.on_desk("what it is", |desk| {
            desk.bolt.iter_mut().for_each(|bolt| bolt.take_fastener(fastener));
        });
    }

    /// Takes the manual's own words: one value, or the same one in several units, and the turn behind it.
    pub fn take_words(self, words: &str) -> Option<String> {
        let unit = Some(self.unit.get_untracked());
        let (words, turn) = said::turn_behind(words);
        if let Some(Err(why)) = turn.map(|turn| sense::TURN_DEG.of(turn)) {
            return Some(why.to_owned());
        }
        let statements = match parse_torques(words, unit) {
            Ok(statements) => statements,
            Err(error) => return Some(error.to_string()),
        };
        if let Some(Err(why)) = statements.iter().map(said::no_angle).find(Result::is_err) {
            return Some(why);
        }
        self.remember();
        if let Some(first) = statements.first() {
            self.bench.enter(first, "entry");
            self.bench.note(|settings| {
                settings.desk.turn_deg = turn.or(settings.desk.turn_deg);
                let second = statements.get(1);
                settings.desk.also_typed = second.map_or(String::new(), typed_words);
                settings.desk.also_unit = second.map_or(settings.desk.also_unit, |second| second.unit);
            });
            self.panel.set(Panel::Keys);
        }
        None
    }

    /// Changes what lies beside the entry, with undo.
    pub fn on_desk(self, words: &'static str, change: impl FnOnce(&mut Desk)) {
        self.bench.on_desk(words, change);
    }
}

/// What is typed in both places.
#[derive(Debug, Clone, PartialEq)]
struct Typed {
    typed: String,
    unit: TorqueUnit,
    also_typed: String,
    also_unit: TorqueUnit,
}

/// From a step its value is carried, once; empty-handed, a step's adapter doesn't stay on unseen.
fn arrive(bench: Bench, from: Option<StepId>) {
    let last = bench.settings.with_untracked(|s| s.desk.from);
    if last == from {
        return;
    }
    let step = from.and_then(|id| bench.sheet.with_untracked(|sheet| sheet.step(id).cloned()));
    match step {
        Some(step) => bench.carry(&step),
        None => bench.note(|settings| (settings.desk.from, settings.desk.adapter_on) = (None, false)),
    }
}

fn whole(
    bench: Bench,
    statement: &TorqueStatement,
    also: Option<Result<TorqueStatement, String>>,
    desk: &Desk,
) -> WholeAnswer {
    let also = also.and_then(Result::ok);
    bench.settings.with(|s| {
        answer(Question {
            statement,
            also: also.as_ref(),
            bolt: desk.bolt.as_ref(),
            turn_deg: desk.turn_deg,
            stretch: desk.stretch(),
            running: desk.running.map(|value| statement.unit.torque(value)),
            adapter: desk.adapter(),
            wrenches: &s.wrenches,
            in_hand: s.in_hand,
        })
    })
}

/// The screen is left: its value is remembered from what is kept, as its own signals are going.
fn remember_kept(bench: Bench) {
    let kept = bench
        .settings
        .with_untracked(|s| read(&s.torque_typed, s.torque_unit));
    if let Ok(statement) = kept {
        bench.note(|settings| settings.desk.remember(&statement));
    }
}

fn read(text: &str, unit: TorqueUnit) -> Result<TorqueStatement, String> {
    let read = parse_torque(text, Some(unit)).map_err(|error| error.to_string())?;
    said::no_angle(&read).map(|()| read)
}

fn set_if_new<T: PartialEq + Send + Sync + 'static>(signal: RwSignal<T>, value: T) {
    if signal.with_untracked(|old| *old != value) {
        signal.set(value);
    }
}
