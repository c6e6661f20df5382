//! A step that must be done before a bead skins: until when, and what to do when it is too late.

use crate::bench::{Ask, Bench, Intent};
use crate::job::reading::What;
use crate::job::sheet::StepId;
use crate::job::skins::Deadline;
use crate::parts::ask_words::AskWords;
use crate::parts::clock_bar::left_text;
use crate::parts::dynamic::{each, memo, piece, press, text};
use crate::parts::not_together::not_together;
use crate::parts::when::when;
use leptos::prelude::*;

/// Until when the step must be done, what comes too late, and what of its plan doesn't go together.
pub fn skin(step: StepId) -> AnyView {
    let bench = Bench::here();
    let late = memo(move || match bench.ask(step) {
        Some(Ask::Skinned(late)) => Some(late),
        _ => None,
    });
    let deadlines = memo(move || bench.deadlines(Some(step)));
    let list = piece(move || {
        let late = late.get();
        let others = deadlines.get().into_iter();
        let others = others.filter(|deadline| late.is_none_or(|late| late.clock != deadline.clock));
        each(others, |deadline| {
            view! { <p class="mid">{text(move || until_words(bench, deadline))}</p> }.into_any()
        })
        .into_any()
    });
    let stop = piece(move || late.get().map_or(().into_any(), |late| too_late(bench, late)));
    view! { {stop} {list} {not_together(bench, Some(step))} }.into_any()
}

/// It skinned first, on the stage.
pub fn late(step: StepId) -> AnyView {
    let bench = Bench::here();
    let late = memo(move || match bench.ask(step) {
        Some(Ask::Skinned(late)) => Some(late),
        _ => None,
    });
    piece(move || late.get().map_or(().into_any(), |late| too_late(bench, late))).into_any()
}

fn title(bench: Bench, step: StepId) -> String {
    bench
        .sheet
        .with(|sheet| sheet.step(step).map_or(String::new(), |step| step.title.clone()))
}

fn until_words(bench: Bench, deadline: Deadline) -> String {
    let (now, bead) = (bench.now.get(), title(bench, deadline.bead));
    let usual = match deadline.usual {
        true => " Its label gives no such time: the usual one is taken.",
        false => "",
    };
    match deadline.until {
        Err(why) => format!("Before “{bead}” skins; when that is, nobody knows: {why}"),
        Ok(until) if until <= now => format!("“{bead}” has skinned; it was accepted as it is."),
        Ok(until) => format!(
            "Before “{bead}” skins, {}: {} left.{usual}",
            when(until, now),
            left_text(until, now)
        ),
    }
}

/// It skinned first: put on anew, or accepted over initials.
fn too_late(bench: Bench, late: Deadline) -> AnyView {
    let initials = RwSignal::new(bench.settings.with_untracked(|s| s.initials.clone()));
    let take = Callback::new(move |reason: String| {
        let outcome = bench.send(Intent::Accept {
            step: late.step,
            what: What::Skin(late.clock),
            reason,
            initials: initials.get_untracked(),
        });
        let taken = outcome.is_ok();
        bench.tell(outcome);
        taken
    });
    let bead = title(bench, late.bead);
    let words = format!(
        "“{bead}” has skinned: it no longer seals where it is joined. Open the joint, wipe it off and put it \
         on anew, as its label says."
    );
    view! {
        <section class="finding stop" aria-label="it has skinned">
            <h2>"STOP"</h2>
            <p class="mid">{words}</p>
            <button class="work-key" on:click=press(move || bench.restart(late.clock))>
                "Put on anew"
                <small>"restart its clock; what was tightened is loose"</small>
            </button>
            <AskWords
                key="accept it as it is"
                label="Why it may stay as it is: this goes into the record."
                take
                signed=initials
            />
        </section>
    }
    .into_any()
}
