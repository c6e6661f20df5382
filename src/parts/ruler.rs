//! The line under a focal number, drawn true: its lines, its pointer, what is out of bounds hatched.

use super::dynamic::each;
use crate::job::scale::Ruler;
use leptos::prelude::*;

/// Its length in its drawing.
const LONG: f64 = 400.0;

/// The drawing; nothing where the number has no line.
pub fn under(ruler: Option<Ruler>) -> AnyView {
    let Some(ruler) = ruler else {
        return ().into_any();
    };
    let line = |at: f64| view! { <line x1=at * LONG x2=at * LONG y1="10" y2="24" /> }.into_any();
    let (from, to) = ruler.hatched;
    view! {
        <div class="ruler" role="img" aria-label=ruler.words>
            <span>{ruler.least}</span>
            <svg viewBox=format!("-8 0 {} 36", LONG + 16.0) preserveAspectRatio="none" aria-hidden="true">
                <rect class="low" x=from * LONG y="10" width=(to - from) * LONG height="14" />
                <line x1="0" x2=LONG y1="24" y2="24" />
                {each(ruler.lines, line)}
                <path d=format!("M{0} 22 l7 13 h-14 z", ruler.at * LONG) />
            </svg>
            <span>{ruler.most}</span>
        </div>
    }
    .into_any()
}
