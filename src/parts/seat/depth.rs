//! The seated depth and the gap behind it: what to reach, what was read, what that says.

use super::Answered;
use crate::bench::{Bench, Intent};
use crate::job::field::Kept;
use crate::job::kinds::Seat;
use crate::job::kinds::seat::depth::{gap_holds, judge, read_words, target_words};
use crate::job::reading::{DEPTH, GAP, Verdict, What};
use crate::job::sheet::StepId;
use crate::parts::dynamic::{memo, piece, text, whether};
use crate::parts::number_field::NumberField;
use crate::trade::quantity::{MassUnit, Stated};
use leptos::prelude::*;

/// What must be reached and the readings of it; nothing where no depth is stated.
pub fn depth_readings(step: Option<StepId>, answered: Answered) -> AnyView {
    let bench = Bench::here();
    let stated = memo(move || answered.with(|found| found.as_ref().and_then(|(seat, _)| seat.depth)));
    let shown = move |value: Option<f64>| {
        value.map_or(String::new(), |mm| Kept::Millimetre.text(mm, MassUnit::Kilogram))
    };
    let send = move |intent: Intent| bench.send(intent).map_err(|refused| refused.to_string());
    let (depth_typed, gap_typed) = (RwSignal::new(String::new()), RwSignal::new(String::new()));
    let stated_mm = |typed: RwSignal<String>, mm: f64| {
        let stated = typed.with_untracked(|typed| Stated::typed(typed));
        stated.unwrap_or(Stated::plain(mm))
    };
    let take_depth = move |mm: f64| {
        let mm = stated_mm(depth_typed, mm);
        send(Intent::ReadDepth { step, mm })
    };
    let take_gap = move |mm: f64| {
        let mm = stated_mm(gap_typed, mm);
        send(Intent::ReadGap { step, mm })
    };
    let kept = move |what: What| match step {
        Some(id) => bench.progress.with(|progress| {
            let read = progress.touched(id).and_then(|step| step.reading(&what));
            read.map_or(String::new(), |read| read.shown_in("mm"))
        }),
        None => {
            let (depth, gap) = bench.depth_read(None);
            shown(if what == What::Depth { depth } else { gap })
        }
    };
    let mm = Signal::stored("mm".to_owned());
    let says = text(move || {
        let read = bench.depth_read(step);
        answered.with(|found| found.as_ref().map_or(String::new(), |(seat, _)| said(seat, read)))
    });
    // Where the bore's depth is known the gap is reckoned, not read.
    let gap_reckoned = whether(move || {
        stated
            .get()
            .is_none_or(|d| d.bore_mm.is_some() || d.gap_mm.is_none())
    });
    piece(move || {
        let Some(depth) = stated.get() else {
            return ().into_any();
        };
        view! {
            <section class="depth" aria-label="seated depth">
                <p class="mid">{target_words(&depth)}</p>
                <div class="two">
                    <NumberField name=DEPTH unit=mm value=text(move || kept(What::Depth)) take=take_depth signed=true typed=depth_typed />
                    <div hidden=gap_reckoned>
                        <NumberField name=GAP unit=mm value=text(move || kept(What::Gap)) take=take_gap typed=gap_typed />
                    </div>
                </div>
                <p role="status">{says}</p>
            </section>
        }
        .into_any()
    })
    .into_any()
}

fn said(seat: &Seat, (depth_mm, gap_mm): (Option<f64>, Option<f64>)) -> String {
    let Some(stated) = seat.depth else {
        return String::new();
    };
    let depth = depth_mm.map(|mm| judge(&stated, seat.length_mm, mm));
    let gap = gap_mm
        .filter(|_| stated.bore_mm.is_none() && stated.gap_mm.is_some())
        .map(|mm| {
            format!(
                " The gap is {}.",
                Verdict::of(Some(gap_holds(&stated, mm))).words()
            )
        });
    format!(
        "{}{}",
        depth.map_or("Not read yet.".to_owned(), |answer| read_words(&answer)),
        gap.unwrap_or_default()
    )
}
