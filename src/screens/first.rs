//! Before the first job: what this is, and three ways to begin.

use crate::bench::Bench;
use crate::parts::ask_words::AskWords;
use crate::parts::dynamic::press;
use crate::screens::Route;
use leptos::prelude::*;

/// Begins an empty job of that title and goes to its plan; refused, it is said why.
pub fn begin_empty(bench: Bench, title: &str) -> bool {
    let begun = bench.tell_plan(bench.begin_empty(title)).is_some();
    if begun {
        Route::Plan.go();
    }
    begun
}

/// What stands in the place of a job where none was begun.
#[component]
pub fn FirstScreen() -> impl IntoView {
    let bench = Bench::here();
    let example = press(move || {
        bench.look_at_example();
        Route::Job.go();
    });
    let begin = Callback::new(move |title: String| begin_empty(bench, &title));
    view! {
        <div class="page beginning">
            <h1>"Halfcase"</h1>
            <p class="mid">
                "At the bench while an engine or a gearbox goes back together: the number to set on your own wrench, what goes on each joint and when it has cured, and a record of it all."
            </p>
            <button class="work-key first" on:click=press(|| Route::Torque.go())>"Convert one torque"</button>
            <button class="work-key" on:click=example>
                "Look at an example job"
                <small>"marked EXAMPLE; closed, it leaves nothing behind"</small>
            </button>
            <AskWords key="Start my job" label="What is the job?" take=begin />
            <p class="quiet">"All of it stays on this phone. There is no account, and nothing is sent."</p>
            <button class="row-key" on:click=press(|| Route::Jobs.go())>"I have a job sheet or a backup as a file"</button>
        </div>
    }
}
