//! A backup before it is taken in: what it would change, line by line, each to be skipped by a touch.

use crate::bench::{Bench, Restore};
use crate::parts::dynamic::piece;
use crate::parts::keys::{KeySpec, keys};
use crate::parts::when::when;
use leptos::prelude::*;

/// The preview, where a backup was chosen.
pub fn preview(bench: Bench, restore: RwSignal<Option<Restore>>) -> AnyView {
    let Some(found) = restore.get() else {
        return ().into_any();
    };
    let made = when(found.made, bench.now.get_untracked());
    let lines: Vec<AnyView> = found
        .changes
        .iter()
        .enumerate()
        .map(|(at, change)| {
            line(
                change.title.clone(),
                change.words(),
                change.can_take(),
                change.take,
                move |restore| {
                    if let Some(change) = restore.changes.get_mut(at) {
                        change.take = !change.take;
                    }
                },
                restore,
            )
        })
        .collect();
    let settings = found.settings_differ.then(|| {
        line(
            "Wrenches, shop and settings".to_owned(),
            "the file’s would replace those here".to_owned(),
            true,
            found.take_settings,
            |restore| restore.take_settings = !restore.take_settings,
            restore,
        )
    });
    let nothing = !found
        .changes
        .iter()
        .any(|change| change.can_take() && change.take)
        && !found.take_settings;
    let take = move |_| {
        if let Some(found) = restore.get_untracked() {
            restore.set(None);
            let taken = match bench.restore(&found) {
                None => return,
                Some(0) => "settings".to_owned(),
                Some(1) => "1 job".to_owned(),
                Some(count) => format!("{count} jobs"),
            };
            bench.say(format!("Taken in: {taken}. Undo puts everything back."), false);
        }
    };
    view! {
        <section class="waits" aria-label="what the backup would change">
            <h2>{format!("Backup made {made}")}</h2>
            <p>"Nothing is changed yet. Touch a line to skip it or to take it."</p>
            {lines}
            {settings}
            {found.left_out_words().map(|words| view! { <p>{words}</p> })}
            <button class="work-key first" disabled=nothing on:click=take>"Take it in"</button>
            {keys(vec![KeySpec::new("leave everything as it is", move || restore.set(None))])}
        </section>
    }
    .into_any()
}

fn line(
    title: String,
    words: String,
    can_take: bool,
    taken: bool,
    switch: impl Fn(&mut Restore) + Send + Sync + Copy + 'static,
    restore: RwSignal<Option<Restore>>,
) -> AnyView {
    let mark = match (can_take, taken) {
        (false, _) => "",
        (true, true) => "✓ taken",
        (true, false) => "skipped",
    };
    let press = move |_| {
        restore.update(|restore| {
            if let Some(restore) = restore {
                switch(restore);
            }
        });
    };
    piece(move || {
        view! {
            <button class="row-key" disabled=!can_take aria-pressed=taken.to_string() on:click=press>
                <span>{title.clone()} <br /> <span class="quiet">{words.clone()}</span></span>
                <span>{mark}</span>
            </button>
        }
        .into_any()
    })()
}
