//! The bolt, as far as it is known, and what the torque does to it.

use super::entry::Entry;
use crate::bench::Bench;
use crate::job::guarding::KnownBolt;
use crate::job::text_form::thread::read;
use crate::parts::dynamic::{Piece, memo, piece, press};
use crate::parts::guard::guard_details;
use crate::parts::picker::pick;
use crate::parts::thread_picker::{first, thread_sheet};
use crate::trade::guard::{Fastener, Joint};
use crate::trade::preload::Condition;
use crate::trade::strength::Strength;
use crate::trade::strip::FemaleMaterial;
use crate::trade::thread::Thread;
use leptos::prelude::*;

/// Thread, class, material, condition; above them the guard's details.
#[component]
pub fn BoltPanel(entry: Entry) -> impl IntoView {
    let details: Piece = piece(move || {
        let bolt = entry.desk.with(|desk| desk.bolt);
        match (entry.guard.get(), entry.read.get(), bolt) {
            (Some(guard), Ok(statement), Some(bolt)) => guard_details(guard, statement, bolt),
            _ => ().into_any(),
        }
    });
    let known = memo(move || entry.desk.with(|desk| desk.bolt.is_some()));
    let more: Piece = piece(move || {
        if known.get() {
            rest(entry)
        } else {
            view! { <p class="quiet">"With the thread known, a slip of the unit or the point is caught."</p> }
                .into_any()
        }
    });
    view! {
        {details}
        <Threads entry />
        {more}
    }
}

/// The thread by tiles: the common ones, and every other.
#[component]
fn Threads(entry: Entry) -> impl IntoView {
    let all = RwSignal::new(false);
    let tiles: Piece = piece(move || {
        let now = entry.desk.with(|desk| desk.bolt.map(|bolt| bolt.joint.thread));
        let mut threads = first(&[]);
        threads.extend(now.filter(|now| !threads.contains(now)));
        let tile = move |thread: Thread| {
            let pressed = now == Some(thread);
            view! {
                <button role="radio" aria-checked=pressed.to_string() on:click=press(move || take_thread(entry, thread))>
                    {thread.name()}
                </button>
            }.into_any()
        };
        threads.into_iter().map(tile).collect::<Vec<_>>().into_any()
    });
    let other: Piece = piece(move || {
        if !all.get() {
            return ().into_any();
        }
        let take = move |words: &str| {
            match read(words)? {
                Some(thread) => take_thread(entry, thread),
                None => entry.on_desk("bolt", |desk| desk.bolt = None),
            }
            all.try_set(false);
            Ok(())
        };
        let in_use = Bench::here().threads_in_use();
        thread_sheet("Which thread?".to_owned(), in_use, take, move || all.set(false))
    });
    view! {
        <div class="tiles narrow" role="radiogroup" aria-label="thread">
            {tiles}
        </div>
        <div class="corrections">
            <button on:click=press(move || all.set(true))>"other threads"</button>
            <button on:click=press(move || entry.on_desk("bolt", |desk| desk.bolt = None))>"no bolt"</button>
        </div>
        {other}
    }
}

fn take_thread(entry: Entry, thread: Thread) {
    entry.on_desk("thread", |desk| {
        // Another thread is another hole: how deep the last one went says nothing of it.
        let joint = match desk.bolt {
            Some(bolt) => Joint {
                thread,
                engagement: None,
                ..bolt.joint
            },
            None => Joint::of(thread),
        };
        desk.bolt = Some(KnownBolt {
            joint,
            seal: desk.bolt.is_some_and(|bolt| bolt.seal),
        });
    });
}

fn rest(entry: Entry) -> AnyView {
    let bolt = move || entry.desk.with(|desk| desk.bolt);
    let change = move |words: &'static str, how: &dyn Fn(&mut KnownBolt)| {
        entry.on_desk(words, |desk| {
            if let Some(bolt) = &mut desk.bolt {
                how(bolt);
            }
        });
    };
    let unknown_or = |names: Vec<&str>| {
        std::iter::once("not known")
            .chain(names)
            .map(str::to_owned)
            .collect::<Vec<_>>()
    };
    // 0 stands for not known.
    let place = |at: Option<usize>| Some(at.map_or(0, |at| at + 1));
    let class = move || {
        place(
            bolt()?
                .joint
                .strength
                .and_then(|s| Strength::ALL.iter().position(|o| *o == s)),
        )
    };
    let into = move || {
        place(
            bolt()?
                .joint
                .material
                .and_then(|m| FemaleMaterial::ALL.iter().position(|o| *o == m)),
        )
    };
    let condition = move || {
        Condition::ALL
            .iter()
            .position(|o| Some(*o) == bolt().map(|b| b.joint.condition))
    };
    let is = move || {
        let is = bolt()?.what_it_is();
        Fastener::ALL.iter().position(|o| *o == is)
    };
    let nth = |at: usize| at.checked_sub(1);
    view! {
        <div class="picks">
            {pick("class", unknown_or(Strength::ALL.iter().map(|s| s.name()).collect()), class, move |at| {
                change("class", &|bolt| bolt.joint.strength = nth(at).and_then(|at| Strength::ALL.get(at).copied()));
            })}
            {pick("screwed into", unknown_or(FemaleMaterial::ALL.iter().map(|m| m.words()).collect()), into, move |at| {
                change("material", &|bolt| {
                    bolt.joint.material = nth(at).and_then(|at| FemaleMaterial::ALL.get(at).copied());
                });
            })}
            {pick("thread is", Condition::ALL.iter().map(|c| c.words().to_owned()).collect(), condition, move |at| {
                change("condition", &|bolt| {
                    bolt.joint.condition = Condition::ALL.get(at).copied().unwrap_or(Condition::Unknown);
                });
            })}
            {pick("it is", Fastener::ALL.iter().map(|f| f.words().to_owned()).collect(), is, move |at| {
                Fastener::ALL.get(at).into_iter().for_each(|fastener| entry.tell(*fastener));
            })}
        </div>
    }
    .into_any()
}
