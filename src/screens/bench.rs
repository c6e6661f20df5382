//! The bench: my wrenches, the shop, ratings, how the display looks, what is kept.

mod bottles;

use crate::bench::{Bench, Look};
use crate::device::release::{self, Kept};
use crate::device::wake_lock::Awake;
use crate::parts::number_field::NumberField;
use crate::parts::shop::ShopTemperature;
use crate::parts::work_keys::UndoKey;
use crate::screens::torque::WrenchRow;
use crate::trade::quantity::TorqueUnit;
use crate::trade::wrench::{Wrench, WrenchKind};
use leptos::prelude::*;

/// Settings of the bench.
#[component]
pub fn BenchScreen() -> impl IntoView {
    view! {
        <div class="page">
            <h1>"Bench"</h1>
            <fieldset>
                <legend>"My wrenches"</legend>
                <WrenchRow />
                <NewWrench />
            </fieldset>
            <bottles::Bottles />
            <fieldset>
                <legend>"The shop"</legend>
                <div class="two">
                    <ShopTemperature />
                    <Ratings />
                </div>
            </fieldset>
            <Display />
            <Standing />
            <UndoKey />
        </div>
    }
}

/// A wrench being described.
#[derive(Clone, Copy)]
struct Draft {
    name: RwSignal<String>,
    unit: RwSignal<TorqueUnit>,
    min: RwSignal<f64>,
    max: RwSignal<f64>,
    division: RwSignal<f64>,
    thimble: RwSignal<Option<f64>>,
}

impl Draft {
    fn wrench(self) -> Wrench {
        let (unit, max) = (self.unit.get(), self.max.get());
        let name = self.name.get().trim().to_owned();
        Wrench {
            name: if name.is_empty() {
                "Wrench".to_owned()
            } else {
                name
            },
            unit,
            min: self.min.get(),
            max,
            division: self.division.get(),
            kind: self
                .thimble
                .get()
                .map_or(WrenchKind::Dial, |main_division| WrenchKind::Thimble {
                    main_division,
                }),
            accuracy: Wrench::typical_accuracy(unit.torque(max)),
        }
    }
}

#[component]
fn NewWrench() -> impl IntoView {
    let bench = Bench::here();
    let open = RwSignal::new(false);
    let draft = Draft {
        name: RwSignal::new(String::new()),
        unit: RwSignal::new(TorqueUnit::NewtonMetre),
        min: RwSignal::new(5.0),
        max: RwSignal::new(25.0),
        division: RwSignal::new(0.5),
        thimble: RwSignal::new(None),
    };
    let trouble = RwSignal::new(None::<String>);
    let add = move |_| {
        let wrench = untrack(|| draft.wrench());
        match wrench.check() {
            Ok(()) => {
                trouble.set(None);
                open.set(false);
                bench.set("new wrench", |settings| {
                    settings.wrenches.push(wrench);
                    settings.in_hand = settings.wrenches.len() - 1;
                });
            }
            Err(error) => trouble.set(Some(error.to_string())),
        }
    };
    let symbol = Signal::derive(move || draft.unit.get().symbol().to_owned());
    view! {
        <Show when=move || open.get() fallback=move || view! { <button on:click=move |_| open.set(true)>"add a wrench"</button> }>
            <label>
                "its name"
                <input
                    type="text"
                    autocomplete="off"
                    prop:value=move || draft.name.get()
                    on:input=move |event| draft.name.set(event_target_value(&event))
                />
            </label>
            <div class="tiles" role="radiogroup" aria-label="unit of its scale">
                {TorqueUnit::ALL
                    .map(|unit| {
                        view! {
                            <button
                                role="radio"
                                aria-checked=move || (draft.unit.get() == unit).to_string()
                                on:click=move |_| draft.unit.set(unit)
                            >
                                {unit.symbol()}
                            </button>
                        }
                    })
                    .collect_view()}
            </div>
            <div class="two">
                <DraftNumber name="lowest mark" unit=symbol value=draft.min />
                <DraftNumber name="highest mark" unit=symbol value=draft.max />
                <DraftNumber name="smallest division" unit=symbol value=draft.division />
            </div>
            <div class="tiles" role="radiogroup" aria-label="its scale">
                <button
                    role="radio"
                    aria-checked=move || draft.thimble.get().is_none().to_string()
                    on:click=move |_| draft.thimble.set(None)
                >
                    "one scale or digits"
                </button>
                <button
                    role="radio"
                    aria-checked=move || draft.thimble.get().is_some().to_string()
                    on:click=move |_| draft.thimble.set(Some(draft.division.get_untracked() * 10.0))
                >
                    "lines and a thimble, ten divisions a line"
                </button>
            </div>
            {move || trouble.get().map(|words| view! { <p class="trouble-line" role="alert">{words}</p> })}
            <button class="work-key first" on:click=add>"Add it"</button>
        </Show>
    }
}

#[component]
fn DraftNumber(name: &'static str, unit: Signal<String>, value: RwSignal<f64>) -> impl IntoView {
    let take = move |number: f64| {
        if number > 0.0 {
            value.set(number);
            Ok(())
        } else {
            Err("It must be above zero.".to_owned())
        }
    };
    view! { <NumberField name unit value=Signal::derive(move || value.get().to_string()) take /> }
}

#[component]
fn Ratings() -> impl IntoView {
    let bench = Bench::here();
    let shown = |value: Option<f64>| value.map_or(String::new(), |value| value.to_string());
    let press = Signal::derive(move || shown(bench.settings.with(|s| s.press_kn)));
    let hoist = Signal::derive(move || shown(bench.settings.with(|s| s.hoist_kg)));
    let take_press = move |kn: f64| match kn {
        kn if kn > 0.0 && kn <= 5_000.0 => {
            bench.set("press rating", |settings| settings.press_kn = Some(kn));
            Ok(())
        }
        _ => Err("A press gives between 0 and 5 000 kN: read its plate again.".to_owned()),
    };
    let take_hoist = move |kg: f64| match kg {
        kg if kg > 0.0 && kg <= 50_000.0 => {
            bench.set("hoist rating", |settings| settings.hoist_kg = Some(kg));
            Ok(())
        }
        _ => Err("A hoist carries between 0 and 50 000 kg: read its plate again.".to_owned()),
    };
    view! {
        <NumberField name="my press gives" unit="kN".to_owned() value=press take=take_press />
        <NumberField name="my hoist carries" unit="kg".to_owned() value=hoist take=take_hoist />
    }
}

#[component]
fn Display() -> impl IntoView {
    let bench = Bench::here();
    let looks = [
        (Look::Phone, "as the phone"),
        (Look::Dark, "dark"),
        (Look::Light, "light"),
    ];
    view! {
        <fieldset>
            <legend>"Display"</legend>
            <div class="tiles" role="radiogroup" aria-label="look">
                {looks
                    .map(|(look, words)| {
                        view! {
                            <button
                                role="radio"
                                aria-checked=move || (bench.settings.with(|s| s.look) == look).to_string()
                                on:click=move |_| bench.set("look", |settings| settings.look = look)
                            >
                                {words}
                            </button>
                        }
                    })
                    .collect_view()}
            </div>
            <label>
                "Initials for the record"
                <input
                    type="text"
                    autocomplete="off"
                    maxlength="4"
                    prop:value=move || bench.settings.with(|s| s.initials.clone())
                    on:change=move |event| {
                        let initials = event_target_value(&event);
                        bench.set("initials", |settings| settings.initials = initials);
                    }
                />
            </label>
        </fieldset>
    }
}

/// What the phone does for us: offline, awake.
#[component]
fn Standing() -> impl IntoView {
    let bench = Bench::here();
    let offline = move || match bench.kept.get() {
        Kept::Asking => "Looking whether the app is kept on this phone.",
        Kept::Whole => "Kept on this phone: starts without a network.",
        Kept::Not => "Not kept on this phone: it needs HTTPS (or localhost), and no private browsing.",
        Kept::NewerWaits => "A newer release is on this phone and waits for your word.",
    };
    let awake = move || match bench.awake.get() {
        Awake::Held => "The display stays awake while a step or clock is open.",
        Awake::Refused => "This browser can’t keep the display awake: set the phone’s own time-out longer.",
        Awake::NotAsked => "The display may sleep: nothing is open.",
    };
    view! {
        <fieldset>
            <legend>"This phone"</legend>
            <p role="status">{offline}</p>
            <Show when=move || bench.kept.get() == Kept::NewerWaits>
                <button class="work-key" on:click=move |_| release::take_over()>"Take the newer release"</button>
            </Show>
            <p>{awake}</p>
            <p class="quiet">
                "Everything stays in this browser’s storage. A page that is not installed may be cleared by some phones after a week without use: put it on the home screen first."
            </p>
        </fieldset>
    }
}
