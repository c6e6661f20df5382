//! Every caution there is, on one plain page.

use crate::bench::Bench;
use crate::parts::dynamic::press;
use crate::trade::caution::{Caution, Level, every};
use crate::trade::quantity::in_mark;
use leptos::prelude::*;

/// The page.
pub fn cautions_screen() -> AnyView {
    let (stop, care): (Vec<Caution>, Vec<Caution>) = every()
        .into_iter()
        .partition(|caution| caution.level == Level::Stop);
    view! {
        <div class="page cautions">
            <h1>"Cautions"</h1>
            <p class="first">
                "The service manual, the label and safety sheet, local codes and licensed practice come first. Where one of them says otherwise, follow it."
            </p>
            <p>
                "A step shows those of its own work, three at most. STOP: read and acknowledge before the step can be closed. CARE: mind it."
            </p>
            {part("STOP", "caution stop", stop)}
            {part("CARE", "caution", care)}
            <button class="side-key" on:click=press(crate::device::place::back)>
                "back"
            </button>
        </div>
    }
    .into_any()
}

fn part(word: &'static str, class: &'static str, cautions: Vec<Caution>) -> AnyView {
    let figures = Bench::here().figures();
    let rows: Vec<AnyView> = cautions
        .into_iter()
        .map(|caution| {
            view! {
                <li class=class>
                    <p>
                        <strong>{figures.said(&caution.danger)}</strong>
                        " "
                        {in_mark(&figures.said(caution.act))}
                    </p>
                    <p class="quiet source">{caution.source}</p>
                </li>
            }
            .into_any()
        })
        .collect();
    view! {
        <h2 class="mid">{word}</h2>
        <ul>{rows}</ul>
    }
    .into_any()
}
