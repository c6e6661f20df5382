//! A bench at work, and one fault of what the browser keeps: kinds of it, each at a random point of a random
//! story. What counted as kept is there afterwards, or its loss is said and goes no further than the fault;
//! the app starts and goes on, and a backup holds what the screen shows.
//!
//! ```sh
//! HALFCASE_FAULTS=200 cargo test --test bench storage_faults -- --nocapture   # so many of each kind
//! HALFCASE_SEED=17 HALFCASE_FAULTS=1 …                                         # one of each again
//! ```

use super::chance::{Chance, told};
use super::commands::lay_out;
use super::copies::copies;
use super::{hand, promises};
use halfcase::bench::{Bench, Incoming};
use halfcase::job::carbon::{Copied, Turn, put_back};
use halfcase::job::keep::{Shelves, is_ours};
use halfcase::job::shelf::{CUT_OFF, MemoryStore, OTHERWISE, Shelf, StorageError, Store, mark_in};
use halfcase::job::start::is_nothing;
use halfcase::job::state::{Now, State};
use halfcase::trade::moment::Moment;
use reactive_graph::graph::untrack;
use reactive_graph::owner::Owner;
use reactive_graph::prelude::*;
use std::cell::{Cell, RefCell};
use std::collections::{BTreeMap, BTreeSet};
use std::rc::Rc;

/// What can go wrong with what is kept.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
enum Kind {
    /// No room for any write.
    Full,
    /// No room for the longer ones.
    FullAbove,
    /// Every write is refused, as in a private window.
    Refused,
    /// One write in a few is refused.
    RefusedNowAndThen,
    /// A write reads back otherwise than it was written.
    Altering,
    /// Nothing is read for a while, though the keys are there.
    Unread,
    /// One reading comes back empty.
    UnreadOnce,
    /// The newest copy of a thing is gone.
    CopyGone,
    /// Both copies of a thing are gone.
    ThingGone,
    /// One of the two marks is gone, or both.
    MarkGone,
    /// The newest copy of a thing, or a mark, is changed: a bit, cut, doubled.
    CopySpoilt,
    /// The same, and no room to set it aside.
    CopySpoiltAndFull,
    /// Both copies of a thing are changed.
    ThingSpoilt,
    /// A copy has the right sum and makes no sense.
    Nonsense,
    /// A copy is of a later release.
    OfALaterRelease,
    /// The newest copy of a thing is as it was a while ago.
    OldCopyBack,
    /// All is cleared while the app is open, and the browser tells.
    ClearedOpen,
    /// All is cleared while it is shut; the journal is there, all of it or its end.
    ClearedShut,
    /// The browser was stopped: all is as it was a while ago, and the journal is ahead.
    JournalAhead,
    /// The journal answered only for what was a while ago.
    JournalBehind,
    /// The journal is of another bench, with the same numbers.
    JournalApart,
    /// The app is open twice and both write.
    TwoTabs,
    /// Keys that look like ours and are not.
    ForeignKeys,
}

const KINDS: [Kind; 23] = [
    Kind::Full,
    Kind::FullAbove,
    Kind::Refused,
    Kind::RefusedNowAndThen,
    Kind::Altering,
    Kind::Unread,
    Kind::UnreadOnce,
    Kind::CopyGone,
    Kind::ThingGone,
    Kind::MarkGone,
    Kind::CopySpoilt,
    Kind::CopySpoiltAndFull,
    Kind::ThingSpoilt,
    Kind::Nonsense,
    Kind::OfALaterRelease,
    Kind::OldCopyBack,
    Kind::ClearedOpen,
    Kind::ClearedShut,
    Kind::JournalAhead,
    Kind::JournalBehind,
    Kind::JournalApart,
    Kind::TwoTabs,
    Kind::ForeignKeys,
];

/// What the browser does at this moment.
#[derive(Clone, Copy, Debug, PartialEq)]
enum Does {
    Well,
    RefusesAll(bool),
    RefusesAbove(usize),
    RefusesOneIn(usize),
    Alters,
    ReadsNothing,
    /// Of so many readings to come the last is empty.
    ReadsNothingOnce(usize),
}

/// A store that can be told what goes wrong.
struct Browser {
    store: MemoryStore,
    does: Cell<Does>,
    writes: Cell<usize>,
}

impl Browser {
    fn new() -> Rc<Self> {
        Rc::new(Self {
            store: MemoryStore::default(),
            does: Cell::new(Does::Well),
            writes: Cell::new(0),
        })
    }

    fn texts(&self) -> BTreeMap<String, String> {
        self.store.texts.borrow().clone()
    }

    fn change(&self, change: impl FnOnce(&mut BTreeMap<String, String>)) {
        change(&mut self.store.texts.borrow_mut());
    }
}

impl Store for Browser {
    fn get(&self, key: &str) -> Option<String> {
        match self.does.get() {
            Does::ReadsNothing => None,
            Does::ReadsNothingOnce(left) => {
                self.does.set(match left {
                    0 => Does::Well,
                    left => Does::ReadsNothingOnce(left - 1),
                });
                self.store.get(key).filter(|_| left > 0)
            }
            _ => self.store.get(key),
        }
    }

    fn set(&self, key: &str, text: &str) -> Result<(), StorageError> {
        self.writes.set(self.writes.get() + 1);
        match self.does.get() {
            Does::RefusesAll(full) if full => Err(StorageError::Full),
            Does::RefusesAll(_) => Err(StorageError::Blocked),
            Does::RefusesAbove(bytes) if text.len() > bytes => Err(StorageError::Full),
            Does::RefusesOneIn(times) if self.writes.get().is_multiple_of(times) => {
                Err(StorageError::Blocked)
            }
            Does::Alters => self.store.set(key, &text.replace('1', "2")),
            _ => self.store.set(key, text),
        }
    }

    fn remove(&self, key: &str) {
        self.store.remove(key);
    }

    fn keys(&self) -> Vec<String> {
        self.store.keys()
    }
}

thread_local! {
    static PHONE: Cell<i64> = const { Cell::new(0) };
    static OWN: Cell<f64> = const { Cell::new(0.0) };
}

/// 2026-06-01 08:00 UTC.
const MORNING_MS: i64 = 1_780_300_800_000;

fn phone() -> Moment {
    Moment(PHONE.get())
}

fn own() -> f64 {
    OWN.get()
}

fn pass(ms: i64) {
    PHONE.set(PHONE.get() + ms);
    OWN.set(OWN.get() + ms as f64);
}

/// Every thing of ours by its name, as it would be written.
type Things = BTreeMap<String, String>;

fn state_of(bench: Bench) -> State {
    untrack(|| bench.look(|state, _| state.clone()))
}

fn things(state: &State) -> Things {
    let paper = Shelves::new(Shelf::new(Rc::new(MemoryStore::default())), None);
    let all = paper.texts(state).into_iter();
    all.map(|(name, _, text)| (name, text)).collect()
}

/// Names of what differs.
fn differing(a: &Things, b: &Things) -> BTreeSet<String> {
    let names = a.keys().chain(b.keys());
    names
        .filter(|name| a.get(*name) != b.get(*name))
        .cloned()
        .collect()
}

/// The bench on its browser, the journal beside it, and what counted as kept.
struct Story {
    chance: Chance,
    browser: Rc<Browser>,
    copied: Rc<Copied>,
    /// What the journal answered for.
    turns: Vec<Turn>,
    /// What the browser held at the end of each turn.
    past: Vec<BTreeMap<String, String>>,
    /// No database: nothing is put back.
    journal: bool,
    /// As it was when last everything counted as kept.
    kept: Option<State>,
    /// What stood at the last start, before the watch over the phone's clock put its lines to it.
    seen: Things,
    told: Vec<String>,
}

impl Story {
    fn begin(seed: u64) -> Self {
        let browser = Browser::new();
        let mut chance = Chance::new(seed);
        PHONE.set(MORNING_MS);
        OWN.set(0.0);
        let journal = !chance.one_in(3);
        let copied = copied(&browser);
        lay_out(copied.clone());
        let mut story = Self {
            chance,
            browser,
            copied,
            turns: Vec::new(),
            past: Vec::new(),
            journal,
            kept: None,
            seen: Things::new(),
            told: vec![format!("journal: {journal}")],
        };
        story.turn_over();
        story
    }

    fn turn_over(&mut self) {
        if let Some(turn) = self.copied.take() {
            self.turns.push(turn);
            self.past.push(self.browser.texts());
        }
    }

    /// One touch of anybody, some time after the last.
    fn touch(&mut self, bench: Bench) {
        pass(hand::pause_ms(&mut self.chance));
        bench.tick();
        let intent = untrack(|| bench.look(|state, now| hand::next(&mut self.chance, state, now)));
        let told = format!("{intent:?}");
        let done = bench.send(intent);
        let kept = !bench.not_kept.get_untracked();
        self.told.push(format!(
            "{}{}: {}",
            told.chars().take(80).collect::<String>(),
            if kept { "" } else { ", not kept" },
            done.map_or_else(|why| why.to_string(), |()| "done".to_owned())
        ));
        self.turn_over();
        if kept {
            self.kept = Some(state_of(bench));
        }
    }

    fn kept_things(&self) -> Things {
        self.kept.as_ref().map_or_else(Things::new, things)
    }

    fn touches(&mut self, bench: Bench, least: usize, more: usize) {
        for _ in 0..least + self.chance.below(more + 1) {
            self.touch(bench);
        }
    }

    /// The app, opened on what is there; what it says at once.
    fn open<T>(&mut self, then: impl FnOnce(&mut Self, Bench) -> T) -> T {
        pass(1_000 + self.chance.below(30_000) as i64);
        OWN.set(0.0);
        let back = if self.journal {
            put_back(&*self.browser, &self.turns)
        } else {
            Default::default()
        };
        if back.apart {
            // What doesn't fit will not fit later.
            self.turns.clear();
        }
        self.copied = copied(&self.browser);
        let shelves = Shelves::new(Shelf::new(self.copied.clone()), None);
        Owner::new().with(|| {
            let bench = Bench::open(shelves, phone);
            bench.say_put_back(back);
            self.seen = things(&state_of(bench));
            bench.watch_clock(own);
            self.turn_over();
            then(self, bench)
        })
    }

    /// A thing of ours that stands in the store; not the watch, which has its own stories.
    fn thing(&mut self) -> String {
        let names: BTreeSet<String> = self
            .browser
            .keys()
            .iter()
            .filter_map(|key| name_of(key))
            .collect();
        let ours: Vec<String> = names
            .into_iter()
            .filter(|name| is_ours(name) && name != "watch")
            .collect();
        self.chance.of(&ours).cloned().unwrap_or_default()
    }
}

fn copied(browser: &Rc<Browser>) -> Rc<Copied> {
    Rc::new(Copied::new(browser.clone(), Box::new(|| {})))
}

fn name_of(key: &str) -> Option<String> {
    let (name, slot) = key.strip_prefix("halfcase/")?.rsplit_once('/')?;
    (["a", "b"].contains(&slot) && !name.starts_with("rescue/")).then(|| name.to_owned())
}

fn slots(name: &str) -> [String; 2] {
    ["a", "b"].map(|slot| format!("halfcase/{name}/{slot}"))
}

/// A slot of any content with the right sum.
fn slot(sequence: u64, version: u32, data: &str) -> String {
    const CRC: crc::Crc<u32> = crc::Crc::<u32>::new(&crc::CRC_32_ISO_HDLC);
    let rest = format!("{sequence} {version}\n{data}");
    format!("{:08x} {rest}", CRC.checksum(rest.as_bytes()))
}

/// A text as it comes back from a bad disk.
fn spoilt(chance: &mut Chance, text: &str) -> String {
    let at = |chance: &mut Chance| {
        let at = chance.below(text.len());
        (0..=at).rev().find(|at| text.is_char_boundary(*at)).unwrap_or(0)
    };
    match chance.below(4) {
        0 => text[..at(chance)].to_owned(),
        1 => format!("{text}{text}"),
        2 => String::new(),
        _ => loop {
            let (byte, bit) = (at(chance), chance.below(7));
            let mut bytes = text.as_bytes().to_vec();
            bytes[byte] ^= 1 << bit;
            match String::from_utf8(bytes) {
                // A digit of the sum may only change its case.
                Ok(other) if !other.eq_ignore_ascii_case(text) => break other,
                _ => {}
            }
        },
    }
}

/// What the fault may cost where that is said: things by name, all but these must be there.
struct Hit {
    things: BTreeSet<String>,
    /// Everything since the fault is another's.
    instead: Option<Things>,
    /// Anything may be gone.
    all: bool,
}

impl Hit {
    fn nothing() -> Self {
        Self {
            things: BTreeSet::new(),
            instead: None,
            all: false,
        }
    }

    fn of(name: &str) -> Self {
        let mut hit = Self::nothing();
        hit.things.insert(name.to_owned());
        hit
    }
}

/// Damage to what is stored, whether the app is open or not.
fn damage(story: &mut Story, kind: Kind) -> Hit {
    let texts = story.browser.texts();
    let name = story.thing();
    let [new, old] = copies(&name, |key| texts.get(key).cloned());
    let browser = story.browser.clone();
    let told = match kind {
        Kind::CopyGone => {
            browser.change(|all| drop(all.remove(&new)));
            new.clone()
        }
        Kind::ThingGone => {
            browser.change(|all| slots(&name).iter().for_each(|key| drop(all.remove(key))));
            name.clone()
        }
        Kind::MarkGone => {
            let [new, old] = copies("mark", |key| texts.get(key).cloned());
            let which = story.chance.below(3);
            browser.change(|all| {
                let gone = [vec![&new], vec![&old], vec![&new, &old]];
                gone[which].iter().for_each(|key| drop(all.remove(*key)));
            });
            story.told.push(format!("-- marks gone: {which}"));
            // Without its mark the last touch counts as cut off.
            return Hit {
                all: which == 0,
                ..Hit::nothing()
            };
        }
        Kind::CopySpoilt | Kind::CopySpoiltAndFull | Kind::ThingSpoilt => {
            let mark = kind != Kind::ThingSpoilt && story.chance.one_in(6);
            let [new, old] = if mark {
                copies("mark", |key| texts.get(key).cloned())
            } else {
                [new.clone(), old.clone()]
            };
            let both = kind == Kind::ThingSpoilt;
            for key in [Some(&new), both.then_some(&old)].into_iter().flatten() {
                if let Some(text) = texts.get(key) {
                    let bad = spoilt(&mut story.chance, text);
                    browser.change(|all| drop(all.insert(key.clone(), bad)));
                }
            }
            if mark {
                story.told.push("-- a mark spoilt".to_owned());
                return Hit::nothing();
            }
            name.clone()
        }
        Kind::Nonsense => {
            let text = texts.get(&new).map_or("", String::as_str);
            let mut head = text.lines().next().unwrap_or_default().split(' ').skip(1);
            let mut number = || head.next().and_then(|word| word.parse::<u64>().ok()).unwrap_or(1);
            let (sequence, version) = (number(), number() as u32);
            let nonsense = [
                "{}",
                "[]",
                "null",
                "7",
                "\"\"",
                "{\"id\":\"x\"}",
                "[{}]",
                "{\"steps\":3}",
                "[[",
            ];
            let data = nonsense[story.chance.below(nonsense.len())];
            let bad = slot(sequence, version, data);
            browser.change(|all| drop(all.insert(new.clone(), bad)));
            story.told.push(format!("-- {data} in {new}"));
            return Hit::of(&name);
        }
        Kind::OfALaterRelease => {
            let sequence = texts
                .get(&new)
                .and_then(|text| text.split(' ').nth(1)?.parse().ok());
            let later = slot(sequence.unwrap_or(1), 9, "{\"as\":\"nobody knows\"}");
            browser.change(|all| drop(all.insert(new.clone(), later)));
            new.clone()
        }
        Kind::OldCopyBack => {
            let past = story.chance.below(story.past.len());
            let then = story.past[past]
                .get(&new)
                .filter(|then| texts.get(&new) != Some(then))
                .cloned();
            match then {
                Some(then) => browser.change(|all| drop(all.insert(new.clone(), then))),
                // It stands as it stood: the other copy's text, then.
                None => browser.change(|all| {
                    let older = all.get(&old).cloned();
                    drop(older.map(|older| all.insert(new.clone(), older)));
                }),
            }
            format!("{new} as after turn {past}")
        }
        Kind::ForeignKeys => {
            let job = texts.iter().find(|(key, _)| key.starts_with("halfcase/job/"));
            let job = job.map_or(String::new(), |(_, text)| text.clone());
            let keys: [(&str, String); 12] = [
                ("halfcase/", "x".to_owned()),
                ("halfcase//a", slot(2, 1, "1")),
                ("halfcase/x", "x".to_owned()),
                ("halfcase/x/a", slot(u64::MAX, 1, "1")),
                ("halfcase/else/a", slot(u64::MAX - 1, u32::MAX, "{}")),
                ("halfcase/else/b", slot(3, 1, "{\"a\":1}")),
                ("halfcase/job/99999999999/a", job.clone()),
                ("halfcase/job/77/a", job),
                ("halfcase/job/x/b", slot(1, 2, "{}")),
                ("halfcase/rescue/job/1/a/0", "x".to_owned()),
                ("halfcase/record/77/0000/a", slot(4, 2, "[]")),
                ("halfcase-look", "neon".to_owned()),
            ];
            let mut told = Vec::new();
            for (key, text) in keys {
                if story.chance.one_in(3) {
                    browser.change(|all| drop(all.insert(key.to_owned(), text)));
                    told.push(key);
                }
            }
            story.told.push(format!("-- foreign: {told:?}"));
            // A sound sheet is a job, and may come up in the list where that is in doubt.
            let mut hit = Hit::of("jobs");
            hit.things.extend(["job/77", "record/77/0000"].map(str::to_owned));
            return hit;
        }
        _ => return Hit::nothing(),
    };
    story.told.push(format!("-- {kind:?}: {told}"));
    Hit::of(&name)
}

/// How a story ended.
#[derive(Debug, PartialEq)]
enum End {
    /// All that counted as kept is there.
    Whole,
    /// Something is gone, and it is said.
    Said,
}

/// Trouble that stands on the screen.
fn troubles(bench: Bench) -> Vec<String> {
    bench.said.with_untracked(|all| {
        let all = all.iter().filter(|said| said.trouble);
        all.map(|said| said.words.clone()).collect()
    })
}

/// A backup made now holds every job, clock and setting that is shown.
fn backup_holds_all(story: &Story, bench: Bench) {
    let (text, shown) = (bench.backup_text(), state_of(bench));
    Owner::new().with(|| {
        let store = Rc::new(MemoryStore::default());
        let other = Bench::open(Shelves::new(Shelf::new(store), None), phone);
        let read = other.read_file(&text);
        let Ok(Incoming::Backup(found)) = read else {
            panic!("no backup: {:?}\n{}", read.err(), story.told.join("\n"));
        };
        for head in shown.jobs.heads.iter().filter(|head| !head.deleted) {
            let Some(job) = shown.files.get(&head.id) else {
                continue;
            };
            if is_nothing(&job.sheet, &job.record) || shown.lost.contains(&head.id) {
                continue;
            }
            let held = found.jobs.iter().find(|held| held.id == head.id);
            assert!(
                held.is_some_and(|held| held.sheet == job.sheet && held.record == job.record),
                "job {} is not whole in the backup:\n{}",
                head.id.0,
                story.told.join("\n")
            );
        }
        assert!(
            found.clocks == shown.clocks && found.settings.as_ref() == Some(&shown.settings),
            "clocks or settings are not whole in the backup:\n{}",
            story.told.join("\n")
        );
    });
}

fn tell(kind: Kind, seed: u64) -> End {
    let mut story = Story::begin(seed);
    if matches!(
        kind,
        Kind::JournalAhead | Kind::JournalBehind | Kind::JournalApart | Kind::ClearedShut
    ) {
        story.journal = true;
    }
    let mut hit = Hit::nothing();
    let mut said = story.open(|story, bench| {
        story.touches(bench, 4, 30);
        let open = story.chance.one_in(2);
        let stays = story.chance.one_in(2);
        let browser = story.browser.clone();
        let does = match kind {
            Kind::Full => Does::RefusesAll(true),
            Kind::Refused => Does::RefusesAll(false),
            Kind::FullAbove => Does::RefusesAbove(20 + story.chance.below(4_000)),
            Kind::RefusedNowAndThen => Does::RefusesOneIn(2 + story.chance.below(6)),
            Kind::Altering => Does::Alters,
            Kind::Unread if open => Does::ReadsNothing,
            Kind::UnreadOnce if open => Does::ReadsNothingOnce(story.chance.below(60)),
            _ => Does::Well,
        };
        browser.does.set(does);
        match kind {
            Kind::ClearedOpen => {
                browser.change(BTreeMap::clear);
                if story.chance.one_in(2) {
                    // A touch before the browser tells.
                    story.touch(bench);
                }
                bench.store_cleared();
                story.turn_over();
            }
            Kind::TwoTabs => hit.instead = Some(in_another_tab(story)),
            _ if open => hit = damage(story, kind),
            _ => {}
        }
        story.touches(bench, usize::from(kind == Kind::TwoTabs), 6);
        if !stays {
            browser.does.set(Does::Well);
            story.touches(bench, 0, 3);
        }
        let words = troubles(bench);
        let not_kept = bench.not_kept.get_untracked();
        assert!(
            !not_kept || !words.is_empty(),
            "not kept, and nothing is said:\n{}",
            story.told.join("\n")
        );
        if !(kind == Kind::Unread && browser.does.get() == Does::ReadsNothing) {
            backup_holds_all(story, bench);
        }
        browser.does.set(Does::Well);
        if !open && kind != Kind::TwoTabs {
            hit = damage(story, kind);
        }
        words
    });
    shut(&mut story, kind, &mut hit);
    let words = story.open(|story, bench| {
        let words = troubles(bench);
        if kind == Kind::Nonsense {
            // Something for certain, kept by the start that set the copy aside.
            bench.note(|settings| settings.torque_typed.push('1'));
            story.turn_over();
        }
        words
    });
    if kind == Kind::Nonsense {
        let seen = std::mem::take(&mut story.seen);
        let again = story.open(|_, bench| troubles(bench));
        assert!(
            !again.iter().any(|said| said == OTHERWISE),
            "missed a second time, though nothing more is gone: {again:?}\n{}",
            story.told.join("\n")
        );
        story.seen = seen;
    }
    let not_read = story.browser.does.get() == Does::ReadsNothing;
    if not_read {
        // Nothing can be shown: that is said, and nothing is written over what is there.
        assert!(
            !words.is_empty(),
            "nothing is read, and nothing is said:\n{}",
            story.told.join("\n")
        );
        story.open(|story, bench| {
            let kept = story.kept.take();
            story.touches(bench, 1, 4);
            story.kept = kept;
        });
        story.browser.does.set(Does::Well);
        story.open(|_, _| ());
    }
    said.extend(words);
    goes_on(&mut story, kind, &hit, &said)
}

/// What happens while the app is shut.
fn shut(story: &mut Story, kind: Kind, hit: &mut Hit) {
    let browser = story.browser.clone();
    match kind {
        Kind::ClearedShut => {
            browser.change(BTreeMap::clear);
            if story.chance.one_in(2) {
                let gone = story.chance.below(story.turns.len());
                story.turns.drain(..gone);
                hit.all = gone > 0;
                story
                    .told
                    .push(format!("-- all gone, and {gone} turns of the journal"));
            }
        }
        Kind::JournalAhead => {
            let past = story.chance.below(story.past.len());
            let then = story.past[past].clone();
            browser.change(|all| *all = then);
            story.told.push(format!("-- as after turn {past}"));
        }
        Kind::JournalBehind => {
            let left = story.chance.below(story.turns.len());
            story.turns.truncate(left);
        }
        Kind::JournalApart => {
            // Another bench of as many turns or more: the first ones alike, then others.
            let now = PHONE.get();
            let mut other = Story::begin(story.chance.below(1_000_000) as u64);
            let touches = story.turns.len() + 8;
            other.open(|other, bench| (0..touches).for_each(|_| other.touch(bench)));
            story.turns = other.turns;
            PHONE.set(now);
        }
        Kind::Unread => browser.does.set(Does::ReadsNothing),
        Kind::UnreadOnce => browser.does.set(Does::ReadsNothingOnce(story.chance.below(120))),
        Kind::CopySpoiltAndFull => browser.does.set(Does::RefusesAll(true)),
        _ => {}
    }
}

/// The app is open twice: what the other one keeps.
fn in_another_tab(story: &mut Story) -> Things {
    let copied = copied(&story.browser);
    let shelves = Shelves::new(Shelf::new(copied.clone()), None);
    let kept = Owner::new().with(|| {
        let other = Bench::open(shelves, phone);
        story.touches(other, 1, 6);
        // Something for certain.
        other.note(|settings| settings.torque_typed.push('1'));
        things(&state_of(other))
    });
    story.turns.extend(copied.take());
    story.past.push(story.browser.texts());
    story.told.push("-- another tab wrote".to_owned());
    kept
}

/// After the fault: what is there, what is said of it, and that the bench can be worked on.
fn goes_on(story: &mut Story, kind: Kind, hit: &Hit, said: &[String]) -> End {
    let kept = hit.instead.clone().unwrap_or_else(|| story.kept_things());
    let gone = differing(&kept, &story.seen);
    let told = |story: &Story| format!("{gone:?} differ, said {said:?}\n{}", story.told.join("\n"));
    assert!(
        gone.is_empty() || !said.is_empty(),
        "lost without a word: {}",
        told(story)
    );
    assert!(
        hit.all || gone.is_subset(&hit.things),
        "more is lost than was hit ({:?}): {}",
        hit.things,
        told(story)
    );
    story.browser.does.set(Does::Well);
    story.told.push("-- goes on".to_owned());
    let mark = mark_in(&*story.browser);
    story.open(|story, bench| {
        let now = Now::utc(bench.now.get_untracked());
        promises::gates_are_shut(&state_of(bench), now, &story.told.join("\n"));
        backup_holds_all(story, bench);
        story.touches(bench, 3, 10);
        let refused = bench.not_kept.get_untracked();
        assert!(
            !refused || kind == Kind::OfALaterRelease,
            "nothing is kept any more: {:?}\n{}",
            troubles(bench),
            story.told.join("\n")
        );
    });
    if kind != Kind::OfALaterRelease {
        let kept_more = mark_in(&*story.browser) > mark;
        let words = story.open(|_, bench| troubles(bench));
        assert!(
            !kept_more
                || [CUT_OFF, OTHERWISE]
                    .iter()
                    .all(|odd| !words.iter().any(|said| said == odd)),
            "missed a second time, though nothing more is gone: {words:?}\n{}",
            story.told.join("\n")
        );
        let gone = differing(&story.kept_things(), &story.seen);
        assert!(
            gone.is_empty(),
            "{gone:?} differ afterwards:\n{}",
            story.told.join("\n")
        );
    }
    if gone.is_empty() { End::Whole } else { End::Said }
}

#[test]
fn nothing_kept_is_lost_without_a_word_by_any_fault_of_the_store() {
    let first = told("HALFCASE_SEED", 1);
    let times = told("HALFCASE_FAULTS", 2);
    let lost: RefCell<Vec<(Kind, u64)>> = RefCell::default();
    for kind in KINDS {
        let (mut whole, mut said) = (0, 0);
        for seed in first..first + times {
            match std::panic::catch_unwind(|| tell(kind, seed)) {
                Ok(End::Whole) => whole += 1,
                Ok(End::Said) => said += 1,
                Err(_) => lost.borrow_mut().push((kind, seed)),
            }
        }
        let lost = lost.borrow().iter().filter(|(of, _)| *of == kind).count();
        println!("{kind:?}: {times} tried, {whole} whole, {said} with what is gone said, {lost} lost");
    }
    let lost = lost.take();
    assert!(lost.is_empty(), "lost: {lost:?}");
}
