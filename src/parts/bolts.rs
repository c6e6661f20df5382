//! The bolts of a step drawn where they lie: tallied, next, still to do; each bears the number it is
//! called by everywhere.

use super::dynamic::{Press, each, piece, press, text};
use leptos::prelude::*;

/// One bolt in the drawing.
#[derive(Debug, Clone, PartialEq)]
pub struct Bolt {
    /// Place in the unit square, from the top left.
    pub at: (f64, f64),
    /// What it is called.
    pub name: String,
    /// Brought to this pass's torque.
    pub tallied: bool,
    /// The one to do now.
    pub next: bool,
}

/// The pattern, as large as its place; the bolts keep their size and their figures theirs.
#[component]
pub fn Bolts(
    #[prop(into)] bolts: Signal<Vec<Bolt>>,
    /// The part's outline: a class.
    outline: &'static str,
    /// Where the part's front is: top, right, bottom or left.
    front: Option<&'static str>,
    /// A bolt is touched, by its place from 0: where the order is free it is the one that is done.
    #[prop(into)]
    touched: Callback<usize>,
) -> impl IntoView {
    let words = text(move || {
        bolts.with(|bolts| {
            let done = bolts.iter().filter(|bolt| bolt.tallied).count();
            let next = bolts
                .iter()
                .find(|bolt| bolt.next)
                .map_or(String::new(), |bolt| format!(", next number {}", bolt.name));
            let front = front.map_or(String::new(), |side| format!(", its front at the {side}"));
            format!("{done} of {} tallied{next}{front}", bolts.len())
        })
    });
    // As many as stand beside and above each other: a bolt is no larger than its share.
    let apart = move |of: fn(&Bolt) -> f64| {
        text(move || {
            bolts.with(|bolts| {
                let mut all: Vec<i64> = bolts.iter().map(|bolt| (of(bolt) * 100.0) as i64).collect();
                all.sort_unstable();
                all.dedup();
                all.len().to_string()
            })
        })
    };
    let (across, down) = (apart(|bolt| bolt.at.0), apart(|bolt| bolt.at.1));
    // Rows reach the edges of their place, whatever room the pattern leaves around them.
    let before = StoredValue::new(None::<Vec<bool>>);
    let drawn = piece(move || {
        let bolts = bolts.get();
        // What was counted just now flashes once.
        let tallied: Vec<bool> = bolts.iter().map(|bolt| bolt.tallied).collect();
        let was = before.with_value(Clone::clone).unwrap_or_else(|| tallied.clone());
        before.set_value(Some(tallied));
        let just = move |place: usize, bolt: &Bolt| bolt.tallied && was.get(place) == Some(&false);
        let (left, right) = ends(&mut bolts.iter().map(|bolt| bolt.at.0));
        let (top, bottom) = ends(&mut bolts.iter().map(|bolt| bolt.at.1));
        each(bolts.into_iter().enumerate(), |(place, bolt)| {
            let at = (along(bolt.at.0, left, right), along(bolt.at.1, top, bottom));
            let just = just(place, &bolt);
            draw(Bolt { at, ..bolt }, just, press(move || touched.run(place)))
        })
        .into_any()
    });
    view! {
        <div class=outline data-front=front role="img" aria-label=words style=("--across", across) style=("--down", down)>
            <div class="field-of-bolts">{drawn}</div>
            {front.map(|_| view! { <span class="front" aria-hidden="true">"front"</span> }.into_any())}
        </div>
    }
    .into_any()
}

/// The least and the most of them, each from 0 to 1.
fn ends(all: &mut dyn Iterator<Item = f64>) -> (f64, f64) {
    all.fold((1.0, 0.0), |(least, most), at| (at.min(least), at.max(most)))
}

/// Where it is between the ends; in the middle where they are one.
fn along(at: f64, from: f64, to: f64) -> f64 {
    if to > from { (at - from) / (to - from) } else { 0.5 }
}

fn draw(bolt: Bolt, just: bool, touch: Press) -> AnyView {
    let (x, y) = (format!("{:.4}", bolt.at.0), format!("{:.4}", bolt.at.1));
    view! {
        <span class="bolt" class:tallied=bolt.tallied class:next=bolt.next class:just=just style=("--x", x) style=("--y", y) on:click=touch>
            {bolt.name}
        </span>
    }
    .into_any()
}
