//! The answer: the class, the bottle it comes from, how it is put on, when it is cured, and why.

use super::desk::Desk;
use crate::job::bonding::{BondAnswer, Section};
use crate::job::clock::marks;
use crate::job::figures::Figures;
use crate::parts::choice_tiles::{ChoiceTiles, Tile};
use crate::parts::dynamic::{memo, piece, press, text};
use crate::parts::when::span;
use crate::trade::cure::Milestone;
use crate::trade::quantity::in_mark;
use leptos::prelude::*;
use uom::si::thermodynamic_temperature::degree_celsius;

/// The tile of no bottle at all.
const TYPICAL: &str = "typical";

/// The answer as far as the joint is known.
#[component]
pub fn AnswerCard(desk: Desk) -> impl IntoView {
    let whole = memo(move || desk.walk.with(|walk| walk.next().is_none()));
    let head = text(move || {
        if whole.get() {
            "goes on it"
        } else {
            "so far, the rest taken the cautious way"
        }
        .to_owned()
    });
    let title = text(move || desk.answer().map_or("", |answer| answer.title()).to_owned());
    let reason = text(move || {
        let reason = desk.answer().map_or("", |answer| answer.recommendation.reason);
        in_mark(&desk.bench.in_figures(reason))
    });
    let refused = text(move || {
        let refused = desk.answer().and_then(|answer| answer.refused);
        desk.bench.in_figures(&refused.unwrap_or_default())
    });
    view! {
        <section class="answer" aria-label="answer">
            <p class="quiet">{head}</p>
            <p class="class">{title}</p>
            <p class="reason">{reason}</p>
            <p class="trouble-line" role="status">{refused}</p>
            {piece(move || if whole.get() {
                view! {
                    <Bottles desk />
                    <Cure desk />
                    <Sections desk />
                }
                .into_any()
            } else {
                ().into_any()
            })}
        </section>
    }
}

/// Out of which bottle, and whether an activator goes on first.
#[component]
fn Bottles(desk: Desk) -> impl IntoView {
    let bench = desk.bench;
    let tiles = memo(move || {
        desk.answer()
            .map(|answer| bottle_tiles(desk.bench.figures(), &answer))
            .unwrap_or_default()
    });
    let chosen = Callback::new(move |id: String| {
        let Some(answer) = untrack(|| desk.answer()) else {
            return;
        };
        let class = answer.recommendation.class;
        if id == TYPICAL {
            return bench.take_typical(|bottle| class.is_some_and(|class| bottle.serves(class)));
        }
        let touched = answer.shelf.iter().find(|shelved| shelved.id.0.to_string() == id);
        match touched.map(|shelved| (shelved, &shelved.unfit)) {
            Some((shelved, Some(why))) => {
                let why = untrack(|| bench.in_figures(&why.to_string()));
                bench.say(format!("“{}” is refused. {why}", shelved.name), true);
            }
            Some((shelved, None)) => bench.take_bottle(shelved.id),
            None => {}
        }
    });
    let activator = memo(move || desk.answer().is_some_and(|answer| answer.takes_activator()));
    let toggle = move || desk.activator.update(|on| *on = !*on);
    view! {
        {piece(move || if tiles.with(Vec::is_empty) {
            ().into_any()
        } else {
            view! { <ChoiceTiles name="out of which bottle" tiles press=chosen /> }.into_any()
        })}
        {piece(move || if activator.get() {
            view! {
                <button class="toggle" aria-pressed=text(move || desk.activator.get().to_string()) on:click=press(toggle)>
                    "activator goes on first"
                </button>
            }
            .into_any()
        } else {
            ().into_any()
        })}
    }
}

fn bottle_tiles(figures: Figures, answer: &BondAnswer) -> Vec<Tile> {
    if answer.shelf.is_empty() || answer.spec.is_none() && answer.refused.is_none() {
        return Vec::new();
    }
    let taken = answer.bottle.as_ref().map(|bottle| bottle.id);
    let none = taken.is_none() && answer.refused.is_none();
    let typical = Tile::new(TYPICAL, "typical figures", none);
    let shelved = answer.shelf.iter().map(|shelved| Tile {
        small: shelved
            .unfit
            .as_ref()
            .map_or(String::new(), |why| figures.said(&format!("refused. {why}"))),
        ..Tile::new(
            shelved.id.0.to_string(),
            shelved.name.clone(),
            taken == Some(shelved.id),
        )
    });
    std::iter::once(typical).chain(shelved).collect()
}

/// When it is cured, put on now, in the shop as it is and is planned to be.
#[component]
fn Cure(desk: Desk) -> impl IntoView {
    let rows = memo(move || cure_rows(desk));
    let row = |(name, words): (String, String)| view! { <dt>{name}</dt> <dd>{words}</dd> }.into_any();
    view! { <dl class="facts">{piece(move || rows.get().into_iter().map(row).collect::<Vec<_>>().into_any())}</dl> }
}

fn cure_rows(desk: Desk) -> Vec<(String, String)> {
    let Some(spec) = desk.answer().and_then(|answer| answer.spec) else {
        return Vec::new();
    };
    let now = desk.bench.now.get();
    desk.bench.settings.with(|settings| {
        let said = |words: String| settings.figures().said(&words);
        let shop = match settings.temperature_at(now) {
            Some(shop) => said(format!("{:.0} °C", shop.get::<degree_celsius>())),
            None => said(format!(
                "not told: the label’s {:.0} °C is taken",
                spec.label.at.get::<degree_celsius>()
            )),
        };
        let mut rows = vec![("shop".to_owned(), shop)];
        for mark in marks(&spec, now, &settings.shop) {
            let (early, late) = (
                span(mark.done.earliest.since(now)),
                span(mark.done.latest.since(now)),
            );
            let words = match mark.last.is_deadline() {
                true => format!("within {early}"),
                false if early == late => format!("after {late}"),
                false => format!("after {late} ({early} at the earliest)"),
            };
            rows.push((mark.words(), words));
        }
        if let Err(why) = spec.reached_at(Milestone::FullCure, now, &settings.shop) {
            rows.push(("cure".to_owned(), said(why.to_string())));
        }
        rows
    })
}

/// All else that is to know.
#[component]
fn Sections(desk: Desk) -> impl IntoView {
    let sections = memo(move || desk.answer().map(|answer| answer.sections()).unwrap_or_default());
    let section = move |Section { title, lines }: Section| {
        let figures = desk.bench.figures();
        let lines = lines
            .into_iter()
            .map(|line| view! { <li>{figures.said(&line)}</li> }.into_any());
        view! {
            <h2>{title}</h2>
            <ul>{lines.collect::<Vec<_>>()}</ul>
        }
        .into_any()
    };
    piece(move || {
        sections
            .get()
            .into_iter()
            .map(section)
            .collect::<Vec<_>>()
            .into_any()
    })
}
