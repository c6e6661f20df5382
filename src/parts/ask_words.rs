//! A key that asks for words before it acts: a reason, a name, a remark.

use super::dynamic::{in_sight, piece, press};
use leptos::prelude::*;

/// Initials have this many letters at most.
pub const MOST_INITIALS: &str = "4";

/// The key; touched, it opens a field. `take` judges the words and tells whether they were taken.
#[component]
pub fn AskWords(
    /// The key's words.
    #[prop(into)]
    key: String,
    /// What is asked for.
    #[prop(into)]
    label: String,
    /// What stands in the field to begin with.
    #[prop(optional, into)]
    first: String,
    /// Initials asked for beside them, where somebody answers for it.
    #[prop(optional, into)]
    signed: Option<RwSignal<String>>,
    /// Takes the words; false keeps the field open with what was typed.
    #[prop(into)]
    take: Callback<String, bool>,
) -> impl IntoView {
    let open = RwSignal::new(false);
    let typed = RwSignal::new(first.clone());
    let first = StoredValue::new(first);
    let (key, label) = (StoredValue::new(key), StoredValue::new(label));
    let go = move |_| {
        let begins = first.get_value();
        if take.run(typed.get_untracked()) {
            open.try_set(false);
            // The next remark is not the last one over again.
            if begins.is_empty() {
                typed.try_set(begins);
            }
        }
    };
    let asked = move || {
        if !open.get() {
            return view! { <button class="row-key" on:click=press(move || open.set(true))>{key.get_value()}</button> }.into_any();
        }
        view! {
            <div class="asked" node_ref=in_sight()>
                <label>
                    {label.get_value()}
                    <input
                        type="text"
                        autocomplete="off"
                        prop:value=typed
                        on:input=move |event| typed.set(event_target_value(&event))
                    />
                </label>
                {signed.map(initials)}
                <div class="two">
                    <button class="work-key first" on:click=go>{key.get_value()}</button>
                    <button on:click=press(move || open.set(false))>"cancel"</button>
                </div>
            </div>
        }
        .into_any()
    };
    piece(asked)
}

/// Who answers for it.
fn initials(signed: RwSignal<String>) -> AnyView {
    view! {
        <label>
            "Initials"
            <input
                type="text"
                autocomplete="off"
                maxlength=MOST_INITIALS
                prop:value=signed
                on:input=move |event| signed.set(event_target_value(&event))
            />
        </label>
    }
    .into_any()
}
