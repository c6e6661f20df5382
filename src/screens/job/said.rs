//! What a step asks to be read or said, one thing each: the field or the keys, the verdict, and what settles it.

use super::accept::accept;
use crate::bench::{Bench, Intent, ReadWith};
use crate::job::progress::Reading;
use crate::job::reading::{Fact, What};
use crate::job::readings;
use crate::job::sheet::Step;
use crate::parts::ask_words::AskWords;
use crate::parts::dynamic::{memo, piece, text};
use crate::parts::keys::{KeySpec, keys};
use crate::parts::number_field::NumberField;
use crate::parts::typed::decimals;
use leptos::prelude::*;

/// How it was read: with no tool named, and the digits it was typed with.
pub fn as_typed(typed: RwSignal<String>) -> ReadWith {
    ReadWith {
        decimals: typed.with_untracked(|typed| decimals(typed)),
        ..ReadWith::default()
    }
}

/// The tool in the hand, and the digits a reading was typed with.
pub fn read_with(with: RwSignal<ReadWith>, typed: RwSignal<String>) -> ReadWith {
    ReadWith {
        decimals: typed.with_untracked(|typed| decimals(typed)),
        ..with.get_untracked()
    }
}

/// A number to read, in the unit the plan asks for it in.
///
/// It is `asked` where it is the one thing the step asks for now.
pub fn read(step: StoredValue<Step>, what: What, name: &str, asked: bool) -> AnyView {
    let name = name.to_owned();
    let bench = Bench::here();
    let (id, unit) = step.with_value(|step| {
        let unit = readings::unit(step, &what).unwrap_or_default().to_owned();
        (step.id, unit)
    });
    let (kept, asked_in) = (StoredValue::new(what.clone()), StoredValue::new(unit.clone()));
    let reading = memo(move || {
        bench
            .progress
            .with(|progress| kept.with_value(|what| progress.touched(id)?.reading(what).cloned()))
    });
    let typed = RwSignal::new(String::new());
    let take = move |value: f64| {
        let with = as_typed(typed);
        asked_in
            .with_value(|unit| bench.measure(id, kept.get_value(), value, unit, &with))
            .map_err(|refused| refused.to_string())
    };
    let value = move || {
        reading.with(|found| {
            let shown = |found: &Reading| asked_in.with_value(|unit| found.shown_in(unit));
            found.as_ref().map_or(String::new(), shown)
        })
    };
    let said = move || {
        reading.with(|found| {
            found
                .as_ref()
                .map_or(String::new(), |found| found.verdict.words().to_owned())
        })
    };
    view! {
        <NumberField name unit=Signal::stored(unit) value=text(value) take signed=true typed asked />
        <p><strong>{text(said)}</strong></p>
        {accept(id, what)}
    }
    .into_any()
}

/// Something to look at and say, yes or no; where it fails and there is more to say, words.
pub fn say(step: StoredValue<Step>, fact: Fact) -> AnyView {
    let bench = Bench::here();
    let (id, name) = step.with_value(|step| (step.id, fact.name(Some(step))));
    let (good, bad) = fact.answers();
    let open = RwSignal::new(false);
    let now = memo(move || {
        bench
            .progress
            .with(|progress| progress.touched(id)?.said(fact).map(|said| said.holds))
    });
    let tell = move |holds: bool, words: String| {
        let outcome = bench.send(Intent::Say {
            step: id,
            fact,
            holds,
            words,
        });
        let taken = outcome.is_ok();
        bench.tell(outcome);
        taken
    };
    let tiles = piece(move || {
        let now = now.get();
        keys(vec![
            KeySpec::choice(good, now == Some(true), move || {
                open.set(false);
                tell(true, String::new());
            }),
            KeySpec::choice(bad, now == Some(false), move || {
                if fact.asks_where() {
                    open.set(true);
                } else {
                    tell(false, String::new());
                }
            }),
        ])
    });
    let place = Callback::new(move |words: String| tell(false, words));
    let asked = piece(move || {
        match open.get() {
        true => view! { <AskWords key="say where it leaks" label="Where it leaks: this goes into the record." take=place /> }
            .into_any(),
        false => ().into_any(),
    }
    });
    let label = name.clone();
    view! {
        <section class="to-say" aria-label=label>
            <h2>{name}</h2>
            {tiles}
            {asked}
            {accept(id, What::Fact(fact))}
        </section>
    }
    .into_any()
}
