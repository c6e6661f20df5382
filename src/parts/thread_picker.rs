//! A thread: the ones in use first, any other by typing a part of it, or that the manual states none.

use super::dynamic::{piece, press};
use super::keys::{KeySpec, keys};
use super::sheet::sheet;
use crate::trade::thread::Thread;
use leptos::prelude::*;

/// The threads one meets most, offered behind those in use.
const COMMON: [&str; 8] = ["M5", "M6", "M8", "M10", "M12", "M14", "1/4-20 UNC", "5/16-18 UNC"];
/// As many as a thumb finds at a glance.
const MOST: usize = 12;

/// Asks for a thread; `take` gets its designation, empty where none is stated, and says what is wrong
/// with one that was typed.
pub fn thread_sheet(
    asked: String,
    in_use: Vec<Thread>,
    take: impl Fn(&str) -> Result<(), String> + Copy + Send + Sync + 'static,
    leave: impl Fn() + Clone + Send + Sync + 'static,
) -> AnyView {
    let typed = RwSignal::new(String::new());
    let trouble = RwSignal::new(String::new());
    let go = move |words: &str| {
        if let Err(words) = take(words) {
            trouble.try_set(words);
        }
    };
    let offered = piece(move || {
        let found = typed.with(|typed| match typed.trim() {
            "" => first(&in_use),
            typed => Thread::found(typed),
        });
        let specs = found.into_iter().take(MOST).map(|thread| {
            let name = thread.name();
            KeySpec::new(name.clone(), move || go(&name))
        });
        keys(specs.collect())
    });
    let own = press(move || typed.with_untracked(|typed| go(typed)));
    let name = asked.clone();
    let escape = leave.clone();
    let inside = view! {
        <p class="mid">{asked}</p>
        <label>
            "find it: m10x1, 1/2-20, #10-32, G 1/4"
            <input
                type="text"
                autocomplete="off"
                autocapitalize="off"
                prop:value=typed
                on:input=move |event| {
                    typed.set(event_target_value(&event));
                    trouble.set(String::new());
                }
            />
        </label>
        <p class="trouble-line" role="alert">{trouble}</p>
        {offered}
        <div class="two">
            <button class="work-key first" on:click=own>"use"</button>
            <button class="work-key" on:click=press(move || go(""))>"not stated"</button>
        </div>
        <button on:click=press(leave)>"cancel"</button>
    };
    sheet(name, escape, inside.into_any())
}

/// Those in use, each once, then the common ones.
pub fn first(in_use: &[Thread]) -> Vec<Thread> {
    let mut first: Vec<Thread> = Vec::new();
    let common = COMMON.iter().filter_map(|name| Thread::parse(name).ok());
    for thread in in_use.iter().copied().chain(common) {
        if !first.contains(&thread) {
            first.push(thread);
        }
    }
    first
}
