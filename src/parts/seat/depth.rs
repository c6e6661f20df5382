//! The seated depth and the gap behind it: what to reach, what was read, what that says.

use super::Answered;
use crate::bench::{Bench, Intent};
use crate::job::field::Kept;
use crate::job::kinds::Seat;
use crate::job::kinds::seat::depth::{gap_holds, judge, read_words, target_words};
use crate::job::reading::{DEPTH, GAP, Verdict};
use crate::job::sheet::StepId;
use crate::parts::dynamic::{piece, text, whether};
use crate::parts::field_table::number;
use crate::trade::quantity::MassUnit;
use leptos::prelude::*;

/// What must be reached and the readings of it; nothing where no depth is stated.
pub fn depth_readings(step: Option<StepId>, answered: Answered) -> AnyView {
    let bench = Bench::here();
    let stated = Memo::new(move |_| answered.with(|found| found.as_ref().and_then(|(seat, _)| seat.depth)));
    let shown = move |value: Option<f64>| {
        value.map_or(String::new(), |mm| Kept::Millimetre.text(mm, MassUnit::Kilogram))
    };
    let send = move |intent: Intent| bench.send(intent).map_err(|refused| refused.to_string());
    let take_depth = Callback::new(move |mm: f64| send(Intent::ReadDepth { step, mm }));
    let take_gap = Callback::new(move |mm: f64| send(Intent::ReadGap { step, mm }));
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
                    {number(DEPTH, mm, text(move || shown(bench.depth_read(step).0)), true, take_depth)}
                    <div hidden=gap_reckoned>
                        {number(GAP, mm, text(move || shown(bench.depth_read(step).1)), false, take_gap)}
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
