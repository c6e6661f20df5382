//! My bottles and tubes: what is on the shelf, and what their labels say.

use crate::bench::Bench;
use crate::device::time::local;
use crate::job::bottle::Bottle;
use crate::job::date::written;
use crate::parts::choice_tiles::{ChoiceTiles, Tile};
use crate::parts::dynamic::{derive, from_its_top, memo, piece, press, text};
use crate::parts::number_field::NumberField;
use crate::trade::compound::CompoundClass;
use crate::trade::quantity::{ThermodynamicTemperature, Time, shortest};
use leptos::prelude::*;
use uom::si::thermodynamic_temperature::degree_celsius;
use uom::si::time::{hour, minute};

/// The shelf.
#[component]
pub fn Bottles() -> impl IntoView {
    let bench = Bench::here();
    let draft = RwSignal::new(None::<Bottle>);
    let open = memo(move || draft.with(Option::is_some));
    let add = move || {
        draft.set(Some(Bottle::new(
            bench.next_bottle(),
            CompoundClass::ThreadlockMedium,
        )))
    };
    view! {
        <fieldset>
            <legend>"My bottles and tubes"</legend>
            {piece(move || if open.get() {
                view! { <Label draft /> }.into_any()
            } else {
                view! {
                    <Shelf draft />
                    <button on:click=press(add)>"add a bottle or tube"</button>
                }
                .into_any()
            })}
        </fieldset>
    }
}

#[component]
fn Shelf(draft: RwSignal<Option<Bottle>>) -> impl IntoView {
    let bench = Bench::here();
    let today = memo(move || local(bench.now.get()).day);
    let row = move |bottle: Bottle| {
        let state = match bottle.spoiled(today.get()) {
            Some(why) => why.to_string(),
            None if bottle.in_use => "in use".to_owned(),
            None => String::new(),
        };
        let (name, class) = (bottle.name.clone(), bottle.class.name());
        view! {
            <button class="row-key" on:click=press(move || draft.set(Some(bottle.clone())))>
                <span>
                    <strong>{name}</strong>
                    <br />
                    {class}
                </span>
                <span class="quiet">{state}</span>
            </button>
        }
        .into_any()
    };
    piece(move || {
        let bottles = bench.settings.with(|settings| settings.bottles.clone());
        bottles.into_iter().map(row).collect::<Vec<_>>().into_any()
    })
}

/// One figure of a label.
struct Figure {
    name: &'static str,
    unit: &'static str,
    /// 0 takes it out.
    optional: bool,
    least: f64,
    most: f64,
    get: fn(&Bottle) -> Option<f64>,
    set: fn(&mut Bottle, Option<f64>),
}

const LONGEST_H: f64 = 90.0 * 24.0;

/// A figure the label may leave out.
const fn figure(
    name: &'static str,
    unit: &'static str,
    most: f64,
    get: fn(&Bottle) -> Option<f64>,
    set: fn(&mut Bottle, Option<f64>),
) -> Figure {
    Figure {
        name,
        unit,
        optional: true,
        least: 0.0,
        most,
        get,
        set,
    }
}

fn in_minutes(time: Option<Time>) -> Option<f64> {
    time.map(|time| time.get::<minute>())
}

fn in_hours(time: Option<Time>) -> Option<f64> {
    time.map(|time| time.get::<hour>())
}

fn minutes(number: Option<f64>) -> Option<Time> {
    number.map(Time::new::<minute>)
}

fn hours(number: Option<f64>) -> Option<Time> {
    number.map(Time::new::<hour>)
}

/// Every figure, in the order labels print them.
static FIGURES: [Figure; 13] = [
    Figure {
        optional: false,
        least: 5.0,
        ..figure(
            "its times hold at",
            "°C",
            60.0,
            |b| Some(b.label.at.get::<degree_celsius>()),
            |b, n| {
                b.label.at = ThermodynamicTemperature::new::<degree_celsius>(n.unwrap_or(22.0));
            },
        )
    },
    figure(
        "close it within",
        "min",
        60.0 * LONGEST_H,
        |b| in_minutes(b.label.assembly),
        |b, n| {
            b.label.assembly = minutes(n);
        },
    ),
    figure(
        "holds after",
        "min",
        60.0 * LONGEST_H,
        |b| in_minutes(b.label.fixture),
        |b, n| {
            b.label.fixture = minutes(n);
        },
    ),
    figure(
        "handled after",
        "h",
        LONGEST_H,
        |b| in_hours(b.label.handling),
        |b, n| b.label.handling = hours(n),
    ),
    figure(
        "oil after",
        "h",
        LONGEST_H,
        |b| in_hours(b.label.fit_for_oil),
        |b, n| b.label.fit_for_oil = hours(n),
    ),
    figure(
        "pressure after",
        "h",
        LONGEST_H,
        |b| in_hours(b.label.fit_for_pressure),
        |b, n| {
            b.label.fit_for_pressure = hours(n);
        },
    ),
    Figure {
        optional: false,
        ..figure(
            "full cure after",
            "h",
            LONGEST_H,
            |b| in_hours(Some(b.label.full)),
            |b, n| {
                b.take_full(Time::new::<hour>(n.unwrap_or(24.0)));
            },
        )
    },
    Figure {
        least: -40.0,
        ..figure(
            "put on from",
            "°C",
            60.0,
            |b| b.apply_from_c,
            |b, n| b.apply_from_c = n,
        )
    },
    figure("stands", "°C", 500.0, |b| b.stands_c, |b, n| b.stands_c = n),
    figure(
        "fills a gap of",
        "mm",
        50.0,
        |b| b.fills_mm,
        |b, n| b.fills_mm = n,
    ),
    figure(
        "good until, month",
        "1–12",
        12.0,
        |b| b.expires_month.map(f64::from),
        |b, n| {
            b.expires_month = n.map(|n| n as u32);
        },
    ),
    figure(
        "good until, year",
        "",
        2_200.0,
        |b| b.expires_year.map(f64::from),
        |b, n| {
            b.expires_year = n.map(|n| n as i32);
        },
    ),
    figure(
        "keeps, once open",
        "months",
        240.0,
        |b| b.keeps_months,
        |b, n| b.keeps_months = n,
    ),
];

/// A label being written down.
#[component]
fn Label(draft: RwSignal<Option<Bottle>>) -> impl IntoView {
    let bench = Bench::here();
    let trouble = RwSignal::new(String::new());
    let change = move |change: &dyn Fn(&mut Bottle)| {
        draft.update(|draft| {
            if let Some(bottle) = draft {
                change(bottle);
            }
        });
    };
    let keep = move || {
        let Some(mut bottle) = draft.get_untracked() else {
            return;
        };
        bottle.name = bottle.name.trim().to_owned();
        match bottle.label.check() {
            _ if bottle.name.is_empty() => trouble.set("Give it a name of your own first.".to_owned()),
            Err(error) => trouble.set(error.to_string()),
            Ok(()) => {
                bench.shelve(bottle);
                draft.set(None);
            }
        }
    };
    let away = move || {
        if let Some(bottle) = draft.get_untracked() {
            bench.throw_away(bottle.id);
        }
        draft.set(None);
    };
    let classes = text_of(draft, |b| b.class.name().to_owned());
    let tiles = derive(move || {
        let all = CompoundClass::ALL.iter().enumerate();
        all.map(|(at, class)| Tile::new(at.to_string(), class.name(), classes.get() == class.name()))
            .collect()
    });
    let take_class = Callback::new(move |at: String| {
        let class = at
            .parse()
            .ok()
            .and_then(|at: usize| CompoundClass::ALL.get(at).copied());
        change(&|bottle| {
            if let Some(class) = class {
                bottle.become_of(class);
            }
        });
    });
    let opened = text_of(draft, |b| {
        b.opened.map_or("not opened yet".to_owned(), |day| {
            format!("opened {}", written(day))
        })
    });
    let open_today = move || {
        let today = local(bench.time()).day;
        change(&|bottle| bottle.opened = bottle.opened.is_none().then_some(today));
    };
    view! {
        <div class="bottle-form" node_ref=from_its_top()>
        <label>
            "its name, in your words"
            <input
                type="text"
                autocomplete="off"
                maxlength="40"
                prop:value=text_of(draft, |b| b.name.clone())
                on:input=move |event| change(&|bottle| bottle.name = event_target_value(&event))
            />
        </label>
        <ChoiceTiles name="what it is" tiles press=take_class />
        <p class="quiet">"What its label says; 0 takes a figure out. Left out, the next longer time counts."</p>
        <div class="two">{FIGURES.iter().map(|figure| figure_field(figure, draft)).collect::<Vec<_>>()}</div>
        <button on:click=press(open_today)>{opened} " · change"</button>
        <p class="trouble-line" role="alert">{trouble}</p>
        <div class="clock-keys">
            <button class="work-key first" on:click=press(keep)>"Keep it"</button>
            <button class="work-key" on:click=press(move || draft.set(None))>"Cancel"</button>
            <button class="work-key" on:click=press(away)>"Throw away"</button>
        </div>
        </div>
    }
}

fn text_of(draft: RwSignal<Option<Bottle>>, words: fn(&Bottle) -> String) -> Signal<String> {
    text(move || draft.with(|draft| draft.as_ref().map(words).unwrap_or_default()))
}

fn figure_field(figure: &'static Figure, draft: RwSignal<Option<Bottle>>) -> AnyView {
    let bench = Bench::here();
    let of_heat = figure.unit == "°C";
    let value = text(move || {
        let number = draft.with(|draft| draft.as_ref().and_then(|bottle| (figure.get)(bottle)));
        let number = number.map(|number| match of_heat {
            true => bench.figures().of_celsius(number),
            false => number,
        });
        number.map_or(String::new(), |number| shortest((number * 100.0).round() / 100.0))
    });
    let take = move |typed: f64| {
        let figures = untrack(|| bench.figures());
        let number = match of_heat {
            true => figures.celsius(typed),
            false => typed,
        };
        if !(figure.least..=figure.most).contains(&number) {
            let (least, most, unit) = (shortest(figure.least), shortest(figure.most), figure.unit);
            return Err(figures.said(&format!("A label says {least} to {most} {unit}: read it again.")));
        }
        let out = figure.optional && typed == 0.0;
        draft.update(|draft| {
            if let Some(bottle) = draft {
                (figure.set)(bottle, (!out).then_some(number));
            }
        });
        Ok(())
    };
    let unit = text(move || match of_heat {
        true => bench.figures().degree().to_owned(),
        false => figure.unit.to_owned(),
    });
    view! { <NumberField name=figure.name unit value take signed={figure.least < 0.0} /> }.into_any()
}
