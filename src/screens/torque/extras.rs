//! What is needed less often: a second value, an adapter, a self-locking nut, a turn.

use super::entry::{Entry, Panel};
use crate::bench::Desk;
use crate::job::adapter::Adapter;
use crate::job::sense;
use crate::parts::adapter_drawing::adapter_drawing;
use crate::parts::dynamic::{Piece, memo, piece, press, text, whether};
use crate::parts::number_field::NumberField;
use crate::trade::quantity::{in_mark, shortest};
use leptos::prelude::*;

/// The less frequent things, one below the other.
#[component]
pub fn Extras(entry: Entry) -> impl IntoView {
    view! {
        <button class="row-key" on:click=press(move || entry.panel.set(Panel::Also))>
            <span>"the manual also says"</span>
            <span class="figures">{text(move || also_words(entry))}</span>
        </button>
        <AdapterPart entry />
        <NutPart entry />
        <TurnPart entry />
        <StretchPart entry />
    }
}

fn also_words(entry: Entry) -> String {
    let typed = entry.also_typed.get();
    if typed.is_empty() {
        "a second unit".to_owned()
    } else {
        format!("{} {}", in_mark(&typed), entry.also_unit.get().symbol())
    }
}

#[component]
fn AdapterPart(entry: Entry) -> impl IntoView {
    let adapter = memo(move || entry.desk.with(|desk| desk.adapter));
    let on = whether(move || entry.desk.with(|desk| desk.adapter_on));
    let part: Piece = piece(move || {
        if !on.get() {
            return ().into_any();
        }
        view! {
            {piece(move || adapter_drawing(adapter.get()))}
            <div class="two">
                {size(entry, "L, grip to drive", "mm", |a| a.wrench_mm, |a, number| a.wrench_mm = number)}
                {size(entry, "E, drive to bolt", "mm", |a| a.adapter_mm, |a, number| a.adapter_mm = number)}
                {size(entry, "angle between", "°", |a| a.angle_deg, |a, number| a.angle_deg = number)}
            </div>
        }
        .into_any()
    });
    view! {
        <fieldset>
            <legend>"Adapter on the drive"</legend>
            <button
                aria-pressed=text(move || on.get().to_string())
                on:click=press(move || entry.on_desk("adapter", |desk| desk.adapter_on = !desk.adapter_on))
            >
                {text(move || if on.get() { "take it off" } else { "put one on" }.to_owned())}
            </button>
            {part}
        </fieldset>
    }
}

/// One of the adapter's sizes; refused when the three together make no sense.
fn size(
    entry: Entry,
    name: &'static str,
    unit: &'static str,
    get: fn(&Adapter) -> f64,
    set: fn(&mut Adapter, f64),
) -> AnyView {
    let value = text(move || entry.desk.with(|desk| shortest(get(&desk.adapter))));
    let take = move |number: f64| {
        let mut adapter = entry.desk.with_untracked(|desk| desk.adapter);
        set(&mut adapter, number);
        adapter.factor().map_err(|error| error.to_string())?;
        entry.on_desk("size of the adapter", |desk| desk.adapter = adapter);
        Ok(())
    };
    view! { <NumberField name unit=unit.to_owned() value take /> }.into_any()
}

#[component]
fn NutPart(entry: Entry) -> impl IntoView {
    let value = text(move || {
        entry
            .desk
            .with(|desk| desk.running.map_or(String::new(), shortest))
    });
    let take = move |number: f64| {
        let number = sense::RUNNING.of(number)?;
        entry.on_desk("running torque", |desk| {
            desk.running = (number > 0.0).then_some(number)
        });
        Ok(())
    };
    let said = text(move || {
        entry
            .whole
            .get()
            .and_then(|whole| whole.running)
            .unwrap_or_default()
    });
    view! {
        <fieldset>
            <legend>"Self-locking nut"</legend>
            <NumberField
                name="running torque, before it seats; 0 for none"
                unit=text(move || entry.unit.get().symbol().to_owned())
                value
                take
            />
            <p role="status">{said}</p>
        </fieldset>
    }
}

#[component]
fn TurnPart(entry: Entry) -> impl IntoView {
    let value = text(move || {
        entry
            .desk
            .with(|desk| desk.turn_deg.map_or(String::new(), shortest))
    });
    let take = move |number: f64| {
        let number = sense::TURN_DEG.of(number)?;
        entry.on_desk("turn", |desk| desk.turn_deg = (number > 0.0).then_some(number));
        Ok(())
    };
    view! {
        <fieldset>
            <legend>"Turn after the torque"</legend>
            <NumberField name="turn a further; 0 for none" unit="°".to_owned() value take />
        </fieldset>
    }
}

/// A bolt's pull by its stretch: the thread comes from the bolt's panel.
#[component]
fn StretchPart(entry: Entry) -> impl IntoView {
    let said: Piece = piece(move || {
        let lines = entry.whole.get().map_or(Vec::new(), |whole| whole.pull);
        let line = |words: String| view! { <p class="mid">{words}</p> }.into_any();
        lines.into_iter().map(line).collect::<Vec<_>>().into_any()
    });
    let known = whether(move || entry.desk.with(|desk| desk.bolt.is_some()));
    view! {
        <fieldset>
            <legend>"Pull by stretch"</legend>
            <p class="quiet" hidden=known>"Choose the thread under “bolt” first."</p>
            <div class="two">
                {length(entry, "stretch: tight less free; 0 for none", sense::STRETCH_MM, |d| d.stretch_mm, |d, mm| d.stretch_mm = mm)}
                {length(entry, "grip: head to nut or hole", sense::GRIP_MM, |d| d.grip_mm, |d, mm| d.grip_mm = mm)}
                {length(entry, "plain shank in the grip", sense::GRIP_MM, |d| d.plain_mm, |d, mm| d.plain_mm = mm)}
                {length(entry, "its diameter; 0 for the thread’s", sense::SHANK_MM, |d| d.shank_mm, |d, mm| d.shank_mm = mm)}
            </div>
            <div role="status">{said}</div>
        </fieldset>
    }
}

/// A length on the desk, mm; 0 takes it back.
fn length(
    entry: Entry,
    name: &'static str,
    sense: sense::Sense,
    get: fn(&Desk) -> Option<f64>,
    set: fn(&mut Desk, Option<f64>),
) -> AnyView {
    let value = text(move || {
        let now = entry.desk.with(get);
        now.map_or(String::new(), shortest)
    });
    let take = move |mm: f64| {
        let told = sense.told(mm)?;
        entry.on_desk("stretch of the bolt", |desk| set(desk, told));
        Ok(())
    };
    view! { <NumberField name unit="mm".to_owned() value take /> }.into_any()
}
