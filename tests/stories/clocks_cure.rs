//! Clocks by a clock that is moved: a day's cure, a cold night, a reload, a phone set ahead, the gate,
//! the phone's calendar.

use super::harness::*;
use super::work::{acknowledge, back, whole};
use halfcase::job::keep::Shelves;
use halfcase::job::sheet::Sheet;
use halfcase::job::shelf::{MemoryStore, Shelf, Store};
use halfcase::job::start;
use halfcase::job::state::{Intent, Now};
use halfcase::trade::moment::Moment;
use icalendar::{CalendarDateTime, Component, DatePerhapsTime};
use std::rc::Rc;
use std::time::Duration;

const HOUR: Duration = Duration::from_secs(3_600);
const MINUTE: Duration = Duration::from_secs(60);
const HOUR_MS: f64 = 3_600_000.0;

/// A stud in steel, of which nothing else is known: 6 h until oil may touch it and a day to full cure at
/// 22 °C. Ends on the clocks.
async fn start_a_stud(page: &mut Page) -> Told {
    page.open_at("#bond").await?;
    page.tap(radio("Stud in a case")).await?;
    page.tap(radio("Nothing named")).await?;
    page.tap(radio("No")).await?;
    page.tap(radio("Bare steel or iron")).await?;
    page.tap(button("I don’t know the rest")).await?;
    page.type_into(textbox("which joint, in your words"), "Cylinder stud")
        .await?;
    page.tap(button(has("Compound on"))).await?;
    page.see(button(has("oil after"))).await.map(drop)
}

/// The whole of the one clock there is, over the list.
async fn open_the_clock(page: &mut Page) -> Told {
    page.tap(button(has("oil after"))).await?;
    page.see(heading("Cylinder stud")).await.map(drop)
}

#[test]
fn a_day_at_22_degrees_is_a_day_and_is_heard() {
    story_in_whole_browser("clocks-day", Screen::UPRIGHT, async |page| {
        page.open_at("#clocks").await?;
        page.offline_ready().await?;
        page.permit("notifications", true).await?;
        page.enter("shop temperature now:", &["2", "2"]).await?;
        start_a_stud(page).await?;
        page.see_words("close it by").await?;
        page.fits_everywhere("clocks-running").await?;
        open_the_clock(page).await?;
        page.key_at_least(button("Put on anew restart its clock"), 120, 88)
            .await?;
        page.key_at_least(button("Calendar a file with its alarms"), 120, 88)
            .await?;
        page.fits_everywhere("clocks-whole").await?;
        page.tap(button("back")).await?;
        // Half-way, and through a reload: five minutes less, so that a slow story is still in them.
        page.advance_clock(12 * HOUR + 5 * MINUTE).await?;
        page.see_words("11:5").await?;
        page.reload().await?;
        page.see_words("11:5").await?;
        page.advance_clock(12 * HOUR - 7 * MINUTE).await?;
        page.words_gone("cured").await?;
        page.advance_clock(2 * MINUTE).await?;
        page.see(alert(has("Cylinder stud: full cure"))).await?;
        page.see_words("cured").await?;
        page.screenshot("clocks-ringing").await?;
        let shown = "return navigator.serviceWorker.getRegistration().then(r => r.getNotifications()).then(all => all.map(n => n.title + ': ' + n.body))";
        let notified = page.script(shown, serde_json::Value::Null).await?;
        assert_eq!(notified, serde_json::json!(["Cylinder stud: full cure"]));
        // Three hours later nobody has looked; the strip still says so, until it is touched.
        page.advance_clock(3 * HOUR).await?;
        page.see_words("finished 3 h").await?;
        page.tap(button(has("running clocks"))).await?;
        page.gone(alert(has("Cylinder stud"))).await?;
        page.see_words("Cylinder stud, finished 3 h").await?;
        page.fits_everywhere("clocks-cured").await?;
        open_the_clock(page).await?;
        page.tap(button("Archive out of sight")).await?;
        page.see_words("No joint is curing.").await
    });
}

#[test]
fn sound_rests_while_there_is_nothing_to_hear() {
    story("clocks-sound", Screen::UPRIGHT, async |page| {
        // One that runs takes the battery with it, sound or not.
        page.before_each_page(
            "const Own = window.AudioContext;
             window.AudioContext = class extends Own { constructor(...all) { super(...all); window.heard = this; } };",
        )
        .await?;
        page.open_at("#clocks").await?;
        let state = async |page: &Page, wanted: &str| {
            page.until(&format!("a sound that is {wanted}"), async || {
                let state = page
                    .script("return window.heard?.state", serde_json::Value::Null)
                    .await?;
                Ok((state == wanted).then_some(()))
            })
            .await
        };
        page.see_words("No joint is curing.").await?;
        page.tap(button("Try it sound, vibration")).await?;
        state(page, "running").await?;
        let time = "return window.heard.currentTime";
        let before = page.script(time, serde_json::Value::Null).await?;
        state(page, "suspended").await?;
        let after = page.script(time, serde_json::Value::Null).await?;
        assert!(
            after.as_f64() > before.as_f64().map(|at| at + 1.0),
            "the beeps were heard out: {before} to {after}"
        );
        // And again, now that it rests.
        page.tap(button("Try it sound, vibration")).await?;
        state(page, "running").await?;
        state(page, "suspended").await
    });
}

#[test]
fn a_cold_night_ends_the_same_cure_later() {
    story("clocks-night", Screen::UPRIGHT, async |page| {
        page.open_at("#clocks").await?;
        // Without a day there is no night to plan.
        page.enter("planned at night:", &["1", "0"]).await?;
        page.see_words("Enter the shop temperature now first").await?;
        page.tap(button("cancel")).await?;
        page.enter("shop temperature now:", &["2", "2"]).await?;
        page.enter("planned at night:", &["clear", "1", "0"]).await?;
        page.see_words("from today 20:00: 10 °C, planned").await?;
        page.see_words("from tomorrow 07:00: 22 °C, planned").await?;
        start_a_stud(page).await?;
        page.screenshot("clocks-night").await?;
        page.advance_clock(24 * HOUR).await?;
        page.words_gone("cured").await?;
        // 12 h of day, 11 h of night at 1/2.5^1.2 worth 3.7 h, and 8.3 h of the next day: 31.3 h.
        page.advance_clock(7 * HOUR).await?;
        page.words_gone("cured").await?;
        page.advance_clock(HOUR / 2).await?;
        page.see_words("cured").await
    });
}

#[test]
fn a_phone_set_ahead_is_said_and_shortens_nothing() {
    story("clocks-tamper", Screen::UPRIGHT, async |page| {
        page.open_at("#clocks").await?;
        page.enter("shop temperature now:", &["2", "2"]).await?;
        start_a_stud(page).await?;
        page.advance_clock(HOUR + 5 * MINUTE).await?;
        page.set_phone_clock_ahead(8.0 * HOUR_MS).await?;
        page.see_words("The phone’s clock has gone 8 h ahead").await?;
        page.see_words("Cures are held until you say which is right.")
            .await?;
        page.see_words("4:5").await?;
        page.fits_everywhere("clocks-doubt").await?;
        page.key_at_least(button("The phone is right count that time"), 120, 88)
            .await?;
        // The question outlives a reload.
        page.reload().await?;
        page.see_words("The phone’s clock has gone 8 h ahead").await?;
        page.see_words("4:5").await?;
        page.tap(button("The phone is wrong hold cures back")).await?;
        page.words_gone("Cures are held").await?;
        page.advance_clock(HOUR).await?;
        page.see_words("3:5").await?;
        // The phone is set right: nothing is asked, nothing changes.
        page.set_phone_clock_ahead(-8.0 * HOUR_MS).await?;
        page.see_words("3:5").await?;
        page.words_gone("Cures are held").await?;
        // The same jump, and this time the phone had only slept.
        page.set_phone_clock_ahead(8.0 * HOUR_MS).await?;
        page.tap(button("The phone is right count that time")).await?;
        page.see_words("13:5").await
    });
}

/// A job of two steps on the page's shelves, as the app itself keeps it.
async fn lay_out_a_small_job(page: &mut Page) -> Told {
    let sheet = Sheet::from_json(
        r#"{"version":1,"title":"Gearbox","steps":[
            {"id":1,"title":"Case joint","work":{"bond":{"joint":"case halves","application":
             {"kind":"case_halves","manual":"anaerobic_sealant","face":"steel_iron","rigid":true,"gap_mm":0.0,
              "fluid":"oil","temperature_c":100,"oil_ways":false}}}},
            {"id":2,"title":"Gearbox oil","work":{"fill":{"fluid":"oil","litres":1.1}}}]}"#,
    )
    .expect("a sheet of our own");
    let store = Rc::new(MemoryStore::default());
    let shelves = Shelves::new(Shelf::new(store.clone()), None);
    // Onto what the page has stored already.
    let mut state = start::example();
    shelves.keep_everything(&state).expect("memory takes it");
    let begun = state.apply(&Intent::BeginJob(Box::new(sheet)), Now::utc(Moment(0)));
    let begun = begun.expect("a job may begin");
    state.take(begun.clone());
    shelves.keep(&state, &begun).expect("memory takes it");
    let entries: Vec<(String, String)> = store
        .keys()
        .into_iter()
        .filter_map(|key| store.get(&key).map(|entry| (key, entry)))
        .collect();
    for (key, entry) in entries {
        page.store(&key, &entry).await?;
    }
    page.reload().await
}

#[test]
fn the_gate_opens_on_time_by_itself() {
    story("clocks-gate", Screen::UPRIGHT, async |page| {
        page.open().await?;
        lay_out_a_small_job(page).await?;
        page.open_at("#job").await?;
        page.see(heading("Case joint")).await?;
        page.tap(button(has("Compound on"))).await?;
        page.tap(button("Done")).await?;
        page.tap(button(has("Next step"))).await?;
        page.see(heading("Gearbox oil")).await?;
        page.see(button("Shut see what it waits for")).await?;
        page.fits_the_hand().await?;
        page.screenshot("gate-shut").await?;
        // Not without a reason.
        whole(page).await?;
        page.see_words("Opens today 14:0").await?;
        page.tap(button("override")).await?;
        page.tap(button("Override")).await?;
        page.see_words("Write the reason first").await?;
        back(page).await?;
        page.advance_clock(6 * HOUR - MINUTE).await?;
        page.see(button("Shut see what it waits for")).await?;
        page.advance_clock(MINUTE).await?;
        page.see(button("Read put in")).await?;
        page.words_gone("Not before").await
    });
}

#[test]
fn a_joint_opened_again_shuts_the_gate_anew_and_a_reason_opens_it() {
    story("clocks-reopened", Screen::UPRIGHT, async |page| {
        page.open().await?;
        lay_out_a_small_job(page).await?;
        page.open_at("#step/1").await?;
        page.tap(button(has("Compound on"))).await?;
        page.tap(button("Done")).await?;
        page.advance_clock(20 * HOUR).await?;
        // Untouched for so long: the first touch only wakes it.
        page.see(button(has("touch to wake"))).await?;
        page.press("Enter").await?;
        page.gone(button(has("touch to wake"))).await?;
        whole(page).await?;
        page.tap(button("Put on anew restart its clock")).await?;
        back(page).await?;
        page.see_words("Undo").await?;
        page.advance_clock(5 * HOUR).await?;
        page.open_at("#step/2").await?;
        page.see(button("Shut see what it waits for")).await?;
        page.see_words("Not before").await?;
        whole(page).await?;
        page.tap(button("override")).await?;
        page.type_into(textbox(has("Why it may be opened")), "only to flush it")
            .await?;
        page.tap(button("Override")).await?;
        back(page).await?;
        page.see_words("A compound has not cured: oil or load now makes a leak")
            .await?;
        page.screenshot("gate-opened").await?;
        // The override is undone as anything else.
        page.tap(button(has("Undo"))).await?;
        page.see(button("Shut see what it waits for")).await?;
        page.words_gone("A compound has not cured").await?;
        whole(page).await?;
        page.tap(button("override")).await?;
        page.type_into(textbox(has("Why it may be opened")), "only to flush it")
            .await?;
        page.tap(button("Override")).await?;
        back(page).await?;
        acknowledge(page).await?;
        page.see(button("Read put in")).await.map(drop)
    });
}

/// What the file's events start at, in milliseconds since 1970, as an independent library reads it.
fn starts(file: &[u8]) -> Vec<f64> {
    let text = std::str::from_utf8(file).expect("a calendar file is UTF-8");
    let calendar: icalendar::Calendar = text.parse().expect("a calendar file");
    assert_eq!(text.matches("TRIGGER:PT0S").count(), calendar.events().count());
    let start = |event: &icalendar::Event| match event.get_start() {
        Some(DatePerhapsTime::DateTime(CalendarDateTime::Utc(start))) => start.timestamp_millis() as f64,
        other => panic!("not in UTC: {other:?}"),
    };
    calendar.events().map(start).collect()
}

/// A day's cure that begins the day before the clocks change there, and where it ends by the wall.
async fn over_a_change_of_clocks(page: &mut Page, zone: &str, wait: Duration, ends: &str) -> Told {
    page.time_zone(zone).await?;
    page.open_at("#clocks").await?;
    page.advance_clock(wait).await?;
    page.enter("shop temperature now:", &["2", "2"]).await?;
    let before = page.now_ms().await?;
    start_a_stud(page).await?;
    let after = page.now_ms().await?;
    open_the_clock(page).await?;
    page.see_words(ends).await?;
    page.screenshot(&format!("clocks-{}", zone.replace('/', "-")))
        .await?;
    page.tap(button("Calendar a file with its alarms")).await?;
    let (name, file) = page.downloaded().await?;
    assert!(name.ends_with(".ics"), "{name}");
    let last = starts(&file).pop().expect("an event");
    let day = 24.0 * HOUR_MS;
    assert!(
        (before + day..=after + day + 1_000.0).contains(&last),
        "{last} is not a day after {before}"
    );
    // And the file of all clocks holds the same.
    page.tap(button("back")).await?;
    page.tap(button("Calendar all running clocks")).await?;
    let (_, all) = page.downloaded().await?;
    assert_eq!(starts(&all), starts(&file));
    page.see_words("check in the calendar that its alarm is set")
        .await
}

#[test]
fn the_calendar_rings_at_the_right_instant_where_summer_time_begins() {
    // Berlin: the night to 29 March 2026. From 2 March 08:00 UTC to 28 March 08:00 UTC, 09:00 there;
    // a day later it is 10:00.
    story("clocks-berlin", Screen::UPRIGHT, async |page| {
        over_a_change_of_clocks(page, "Europe/Berlin", 26 * 24 * HOUR, "tomorrow 10:0").await
    });
}

#[test]
fn and_in_another_zone_on_its_own_day() {
    // New York: the night to 8 March 2026. 7 March 17:00 UTC is 12:00 there; a day later it is 13:00.
    story("clocks-new-york", Screen::UPRIGHT, async |page| {
        over_a_change_of_clocks(page, "America/New_York", (5 * 24 + 9) * HOUR, "tomorrow 13:0").await
    });
}
