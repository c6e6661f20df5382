//! The phone's clock under watch: every jump noticed, none taken by itself.

use super::{MORNING, hours};
use halfcase::job::tamper::{Doubt, IN_STEP_MS, Watch, WatchKept, jump_words, let_pass_ms};
use halfcase::trade::moment::Moment;

const HOUR_MS: i64 = 3_600_000;

fn ahead(hours: i64) -> Doubt {
    Doubt {
        ahead_ms: hours * HOUR_MS,
        closed: false,
    }
}

fn fresh() -> Watch {
    Watch::begin(&WatchKept::default(), None, MORNING, 0.0, &|_, _| false).0
}

/// Our time after `own` hours by the page's clock, the phone showing `wall` hours.
fn look(watch: &mut Watch, wall: f64, own: f64) -> f64 {
    let now = watch.look(hours(wall), own * HOUR_MS as f64).now;
    (now.0 - MORNING.0) as f64 / HOUR_MS as f64
}

#[test]
fn in_step_the_phones_clock_is_ours() {
    let mut watch = fresh();
    assert_eq!(look(&mut watch, 3.0, 3.0), 3.0);
    // A correction over the network is followed.
    let seconds = 30.0 / 3_600.0;
    assert_eq!(look(&mut watch, 4.0 + seconds, 4.0), 4.0 + seconds);
    assert_eq!(watch.doubt(), None);
}

#[test]
fn a_jump_forward_is_asked_about_and_time_goes_on_by_the_pages_own() {
    let mut watch = fresh();
    let jump = watch.look(hours(9.0), HOUR_MS as f64);
    assert_eq!(jump.jumped, Some(8 * HOUR_MS));
    assert_eq!(jump.now, hours(1.0));
    assert_eq!(watch.doubt(), Some(ahead(8)));
    // Said once, held on.
    assert_eq!(watch.look(hours(10.0), 2.0 * HOUR_MS as f64).jumped, None);
    assert_eq!(look(&mut watch, 11.0, 3.0), 3.0);
    assert_eq!(watch.held_ms(), 8 * HOUR_MS);
}

#[test]
fn the_user_says_the_phone_is_right() {
    let mut watch = fresh();
    look(&mut watch, 9.0, 1.0);
    watch.phone_is_right(hours(9.0), HOUR_MS as f64);
    assert_eq!(look(&mut watch, 10.0, 2.0), 10.0);
    assert_eq!(watch.doubt(), None);
    assert_eq!(watch.held_ms(), 0);
}

#[test]
fn the_user_says_the_phone_is_wrong_and_then_sets_it_right() {
    let mut watch = fresh();
    look(&mut watch, 9.0, 1.0);
    watch.phone_is_wrong();
    assert_eq!(watch.doubt(), None);
    assert_eq!(look(&mut watch, 10.0, 2.0), 2.0);
    let back = watch.look(hours(3.0), 3.0 * HOUR_MS as f64);
    assert!(back.back_in_step);
    assert_eq!(back.now, hours(3.0));
    assert_eq!(watch.held_ms(), 0);
}

#[test]
fn many_small_steps_forward_are_one_jump() {
    let mut watch = fresh();
    let mut jumps = 0;
    // Each step below what is let pass, all within a minute of the page's own time.
    for step in 1..=100_i64 {
        let wall = Moment(MORNING.0 + step * (IN_STEP_MS - 1_000));
        let look = watch.look(wall, step as f64 * 600.0);
        jumps += usize::from(look.jumped.is_some());
        assert!(look.now.0 <= MORNING.0 + step * 600 + IN_STEP_MS, "step {step}");
    }
    assert!(jumps > 0);
}

#[test]
fn held_time_never_runs_ahead_of_the_pages_own() {
    let mut watch = fresh();
    let mut last = MORNING;
    for (minute, wall) in [0, 30, 500, 501, -900, -899, 40, 2_000, 45]
        .into_iter()
        .enumerate()
    {
        let own_min = minute as i64 * 5;
        let now = watch
            .look(Moment(MORNING.0 + wall * 60_000), own_min as f64 * 60_000.0)
            .now;
        assert!(now.0 <= MORNING.0 + own_min * 60_000 + IN_STEP_MS, "{minute}");
        assert!(now.0 >= last.0 - IN_STEP_MS, "{minute}");
        last = now;
    }
}

#[test]
fn a_clock_set_back_over_a_reload_is_noticed_and_nothing_is_earlier_than_seen() {
    let kept = WatchKept {
        seen: hours(5.0),
        ..WatchKept::default()
    };
    let (watch, look) = Watch::begin(&kept, None, hours(1.0), 0.0, &|_, _| false);
    assert_eq!(look.now, hours(5.0));
    assert_eq!(look.jumped, Some(-4 * HOUR_MS));
    assert_eq!(watch.doubt(), Some(ahead(-4)));
    // Without a kept watch the record is the witness.
    let (_, look) = Watch::begin(
        &WatchKept::default(),
        Some(hours(2.0)),
        hours(1.0),
        0.0,
        &|_, _| false,
    );
    assert_eq!(look.now, hours(2.0));
    assert_eq!(look.jumped, Some(-HOUR_MS));
}

#[test]
fn a_reload_forgets_no_doubt() {
    let mut watch = fresh();
    look(&mut watch, 9.0, 1.0);
    let kept = WatchKept {
        seen: hours(1.0),
        held_ms: watch.held_ms(),
        asked: watch.doubt().is_some(),
        closed: false,
        ..WatchKept::default()
    };
    let text = serde_json::to_string(&kept).unwrap();
    let kept: WatchKept = serde_json::from_str(&text).unwrap();
    let (again, look) = Watch::begin(&kept, None, hours(9.5), 0.0, &|_, _| false);
    assert_eq!(look.now, hours(1.5));
    assert_eq!(again.doubt(), Some(ahead(8)));
    // Time that passes while the page is closed is the phone's to tell.
    let (_, look) = Watch::begin(
        &WatchKept {
            seen: hours(1.0),
            ..WatchKept::default()
        },
        None,
        hours(7.0),
        0.0,
        &|_, _| false,
    );
    assert_eq!((look.now, look.jumped), (hours(7.0), None));
}

#[test]
fn a_twentieth_of_a_wait_is_let_pass_a_minute_at_least_and_half_an_hour_at_most() {
    let minutes = |wait: i64| let_pass_ms(wait * 60_000) / 60_000;
    assert_eq!([120, 360, 600, 1_440, -5].map(minutes), [6, 18, 30, 30, 1]);
}

#[test]
fn jumps_in_words() {
    assert!(jump_words(8 * HOUR_MS).starts_with("The phone’s clock has gone 8 h ahead"));
    assert!(jump_words(-90 * 60_000).starts_with("The phone’s clock is 1 h 30 min behind"));
    assert!(jump_words(5 * 60_000).contains("5 min ahead"));
}

/// While the app is closed only the phone counts: what would ripen meanwhile is asked about, once.
#[test]
fn time_away_that_would_ripen_a_cure_is_held_until_it_is_said_to_have_passed() {
    let kept = WatchKept {
        seen: hours(1.0),
        ..WatchKept::default()
    };
    let ripe_at_20 = |from: Moment, to: Moment| from < hours(20.0) && hours(20.0) <= to;
    let (mut watch, look) = Watch::begin(&kept, None, hours(31.0), 0.0, &ripe_at_20);
    assert_eq!((look.now, look.jumped), (hours(1.0), Some(30 * HOUR_MS)));
    let doubt = watch.doubt().unwrap();
    let words = doubt.words("Mon 09:00", "Tue 15:00");
    assert!(
        doubt.closed
            && words.contains(
                "sure of Mon 09:00, the phone showed Tue 15:00: did 30 h pass with Halfcase closed?"
            ),
        "{words}"
    );
    // Our time goes on from what was seen.
    assert_eq!(watch.look(hours(32.0), HOUR_MS as f64).now, hours(2.0));
    // It stands over another reload, and is asked no second time.
    let kept = WatchKept {
        seen: hours(2.0),
        held_ms: watch.held_ms(),
        asked: true,
        closed: true,
        ..WatchKept::default()
    };
    let (again, look) = Watch::begin(&kept, None, hours(33.0), 0.0, &ripe_at_20);
    assert_eq!((look.now, look.jumped), (hours(3.0), None));
    assert!(again.doubt().unwrap().closed);
    // Left unanswered until what was counted would ripen it after all: the question grows with it.
    let (longer, look) = Watch::begin(&kept, None, hours(50.5), 0.0, &ripe_at_20);
    assert_eq!(look.now, hours(2.0));
    assert_eq!(longer.doubt().unwrap().ahead_ms, 48 * HOUR_MS + HOUR_MS / 2);
    watch.phone_is_right(hours(32.0), HOUR_MS as f64);
    assert_eq!(watch.doubt(), None);
    // Nothing ripens, or no time was away: nothing is asked.
    let kept = WatchKept {
        seen: hours(1.0),
        ..WatchKept::default()
    };
    assert_eq!(
        Watch::begin(&kept, None, hours(19.0), 0.0, &ripe_at_20).0.doubt(),
        None
    );
    let (watch, _) = Watch::begin(&kept, None, hours(1.0), 0.0, &|_, _| true);
    assert_eq!(watch.doubt(), None);
    // With the watch lost the record is the witness.
    let (watch, look) = Watch::begin(
        &WatchKept::default(),
        Some(hours(1.0)),
        hours(31.0),
        0.0,
        &ripe_at_20,
    );
    assert!(watch.doubt().is_some_and(|doubt| doubt.closed) && look.now == hours(1.0));
}
