//! Cure times beside their sources, each worked out by hand from the rule named.

use halfcase::trade::cure::{
    Chemistry, CureSpec, LabelError, LabelTimes, Milestone, NoCure, ShopHistory, ShopReading, Substrate,
};
use halfcase::trade::moment::Moment;
use uom::si::f64::{Length, Ratio, ThermodynamicTemperature, Time};
use uom::si::length::millimeter;
use uom::si::ratio::percent;
use uom::si::thermodynamic_temperature::degree_celsius;
use uom::si::time::{day, hour, minute};

const START: Moment = Moment(1_000_000);

fn celsius(number: f64) -> ThermodynamicTemperature {
    ThermodynamicTemperature::new::<degree_celsius>(number)
}

fn hours(number: f64) -> Time {
    Time::new::<hour>(number)
}

fn anaerobic(substrate: Substrate, gap_mm: f64, activator: bool) -> CureSpec {
    CureSpec {
        chemistry: Chemistry::Anaerobic {
            substrate,
            gap: Length::new::<millimeter>(gap_mm),
            activator,
        },
        label: LabelTimes {
            assembly: Some(Time::new::<minute>(10.0)),
            ..LabelTimes::full_only(celsius(22.0), hours(24.0))
        },
    }
}

fn steel() -> CureSpec {
    anaerobic(Substrate::SteelOrIron, 0.05, false)
}

fn silicone(depth_mm: f64) -> CureSpec {
    CureSpec {
        chemistry: Chemistry::MoistureSilicone {
            depth: Length::new::<millimeter>(depth_mm),
        },
        label: LabelTimes {
            assembly: Some(Time::new::<minute>(5.0)),
            ..LabelTimes::full_only(celsius(23.0), hours(24.0))
        },
    }
}

fn reading(after_h: f64, temperature: f64, humidity: Option<f64>) -> ShopReading {
    ShopReading {
        at: START.plus(hours(after_h)),
        temperature: celsius(temperature),
        humidity: humidity.map(Ratio::new::<percent>),
    }
}

fn shop(temperature: f64, humidity: Option<f64>) -> ShopHistory {
    ShopHistory(vec![reading(0.0, temperature, humidity)])
}

/// Earliest, likely and latest, in hours after the start.
fn range_h(spec: &CureSpec, milestone: Milestone, shop: &ShopHistory) -> [f64; 3] {
    let done = spec.reached_at(milestone, START, shop).unwrap();
    [done.earliest, done.likely, done.latest].map(|at| at.since(START).get::<hour>())
}

#[track_caller]
fn check_h(spec: &CureSpec, shop: &ShopHistory, expected_h: [f64; 3]) {
    let got = range_h(spec, Milestone::FullCure, shop);
    for (got, expected) in got.into_iter().zip(expected_h) {
        assert!(
            (got - expected).abs() <= expected * 1e-4,
            "{got} h, expected {expected} h"
        );
    }
}

#[test]
fn at_the_labels_temperature_it_takes_the_labels_time() {
    // Common practice, no source: full cure 24 h at 22 °C on steel.
    check_h(&steel(), &shop(22.0, None), [24.0; 3]);
    check_h(&steel(), &ShopHistory::default(), [24.0; 3]);
    check_h(
        &anaerobic(Substrate::BrassOrCopper, 0.0, false),
        &shop(22.0, None),
        [24.0; 3],
    );
    // Warmer than the label never shortens it.
    check_h(&steel(), &shop(35.0, None), [24.0; 3]);
    assert!(
        steel()
            .reached_at(Milestone::FullCure, START, &ShopHistory::default())
            .unwrap()
            .shop_unknown
    );
    assert!(
        !steel()
            .reached_at(Milestone::FullCure, START, &shop(22.0, None))
            .unwrap()
            .shop_unknown
    );
}

#[test]
fn ten_kelvin_colder_takes_about_twice_as_long() {
    // Common practice, no source: about half the rate per 10 K, range 1.7 to 2.5.
    check_h(&steel(), &shop(12.0, None), [24.0 * 1.7, 48.0, 60.0]);
    // 17 K: 1.7^1.7, 2^1.7, 2.5^1.7.
    check_h(&steel(), &shop(5.0, None), [59.154_6, 77.976_2, 113.948_5]);
    let gasket = CureSpec {
        chemistry: Chemistry::SolventDrying,
        ..steel()
    };
    check_h(&gasket, &shop(12.0, None), [40.8, 48.0, 60.0]);
}

#[test]
fn a_cold_night_ends_later() {
    // 10 h at 22 °C, 12 h at 10 °C, then 22 °C again. The night counts 12 h × k^−1.2: for k = 1.7, 2 and
    // 2.5 that is 6.348, 5.223 and 3.996 h of the label's 24.
    let night = ShopHistory(vec![
        reading(0.0, 22.0, None),
        reading(22.0, 22.0, None),
        reading(10.0, 10.0, None),
    ]);
    check_h(&steel(), &night, [29.651_9, 30.776_7, 32.003_7]);
}

#[test]
fn below_five_degrees_it_hardly_cures() {
    // Common practice, no source.
    let refused = |temperature| {
        steel()
            .reached_at(Milestone::FullCure, START, &shop(temperature, None))
            .err()
    };
    assert_eq!(refused(4.96), Some(NoCure::TooCold));
    assert_eq!(refused(5.0), None);
    // A night below 5 °C counts for nothing: 10 h, 12 h lost, 14 h.
    let frost = ShopHistory(vec![
        reading(0.0, 22.0, None),
        reading(10.0, 2.0, None),
        reading(22.0, 22.0, None),
    ]);
    check_h(&steel(), &frost, [36.0; 3]);
}

#[test]
fn slow_metals_take_longer_unless_an_activator_is_used() {
    // Common practice, no source: aluminium, stainless and plated are slow; the factors are our own.
    let on = |substrate| anaerobic(substrate, 0.05, false);
    let air = shop(22.0, None);
    check_h(&on(Substrate::Aluminium), &air, [24.0, 36.0, 48.0]);
    for substrate in [Substrate::Stainless, Substrate::Plated, Substrate::Unknown] {
        check_h(&on(substrate), &air, [24.0, 48.0, 72.0]);
        check_h(&anaerobic(substrate, 0.05, true), &air, [24.0; 3]);
    }
}

#[test]
fn a_gap_takes_longer_until_it_does_not_cure_at_all() {
    let across = |gap_mm| anaerobic(Substrate::SteelOrIron, gap_mm, false);
    let air = shop(22.0, None);
    // Common practice, no source; halfway between 0.05 and 0.25 mm half of what is added.
    check_h(&across(0.25), &air, [30.0, 36.0, 48.0]);
    check_h(&across(0.15), &air, [27.0, 30.0, 36.0]);
    check_h(&across(0.05), &air, [24.0; 3]);
    // Handbook of Adhesives and Sealants, ch. 10: hardly cures across about 0.75 mm.
    let refused = |gap_mm| across(gap_mm).reached_at(Milestone::FullCure, START, &air).err();
    assert_eq!(refused(0.745), None);
    assert_eq!(refused(0.75), Some(NoCure::GapTooWide));
    assert_eq!(refused(f64::NAN), Some(NoCure::GapTooWide));
}

#[test]
fn silicone_deepens_with_the_root_of_time() {
    let air = shop(23.0, Some(50.0));
    // Published for 23 °C, 50 %: 2 to 3 mm in the first 24 h; 2.5 mm is its middle.
    check_h(&silicone(2.5), &air, [24.0; 3]);
    // Published beside it: 7.5 mm in 7 days. Root law at 2.8, 2.65 and 2.5 mm per root day.
    let [earliest, likely, latest] = range_h(&silicone(7.5), Milestone::FullCure, &air);
    assert!(
        (earliest / 24.0 - 7.0).abs() < 7.0 * 0.03,
        "{} days",
        earliest / 24.0
    );
    check_h(&silicone(7.5), &air, [172.193_9, 192.239_2, 216.0]);
    assert!(earliest < likely && likely < latest);
    // Twice the depth, four times the time (sharp front: Comyn, Int. J. Adhes. Adhes. 18, 1998).
    check_h(&silicone(5.0), &air, [76.530_6, 85.439_7, 96.0]);
    let refused = |depth_mm| {
        silicone(depth_mm)
            .reached_at(Milestone::FullCure, START, &air)
            .err()
    };
    assert_eq!(refused(50.0), None);
    assert_eq!(refused(50.1), Some(NoCure::DepthUnusable));
    assert_eq!(refused(-0.1), Some(NoCure::DepthUnusable));
}

#[test]
fn dry_air_slows_silicone() {
    // Rate in proportion to humidity up to the label's 50 % (sharp front, Comyn 1998); damper is no quicker.
    check_h(&silicone(2.5), &shop(23.0, Some(25.0)), [48.0; 3]);
    check_h(&silicone(2.5), &shop(23.0, Some(90.0)), [24.0; 3]);
    check_h(
        &silicone(7.5),
        &shop(23.0, Some(90.0)),
        [172.193_9, 192.239_2, 216.0],
    );
    // Humidity not read: common practice, 50 % with 40 % at the harsh end: 24 h × 50/40.
    check_h(&silicone(2.5), &shop(23.0, None), [24.0, 24.0, 30.0]);
    let refused = |humidity| {
        silicone(2.5)
            .reached_at(Milestone::FullCure, START, &shop(23.0, Some(humidity)))
            .err()
    };
    assert_eq!(refused(5.02), None);
    assert_eq!(refused(4.98), Some(NoCure::TooDry));
    // Dry air is nothing to an anaerobic.
    check_h(&steel(), &shop(22.0, Some(1.0)), [24.0; 3]);
}

#[test]
fn the_time_to_join_runs_out_sooner_in_the_warm() {
    let limit_min = |spec: &CureSpec, shop: &ShopHistory| {
        range_h(spec, Milestone::AssemblyLimit, shop).map(|hours| hours * 60.0)
    };
    let near = |got: [f64; 3], expected: [f64; 3]| {
        for (got, expected) in got.into_iter().zip(expected) {
            assert!(
                (got - expected).abs() <= expected * 1e-3,
                "{got} min, expected {expected} min"
            );
        }
    };
    // Common practice, no source: skin in 5 min at the quick end; 10 K warmer a half, at worst 1/2.5.
    near(
        limit_min(&silicone(2.5), &shop(33.0, Some(50.0))),
        [2.0, 2.5, 5.0],
    );
    near(
        limit_min(&silicone(2.5), &shop(23.0, Some(100.0))),
        [2.5, 2.5, 5.0],
    );
    // More than saturated is a misread hygrometer; 60 K above the label is where it ends: 1/64, 1/2.5^6.
    near(
        limit_min(&silicone(2.5), &shop(23.0, Some(150.0))),
        [2.5, 2.5, 5.0],
    );
    near(
        limit_min(&silicone(2.5), &shop(120.0, None)),
        [0.020_48, 0.078_125, 5.0],
    );
    // Cold and dry put a deadline off for nobody.
    near(limit_min(&silicone(2.5), &shop(10.0, Some(20.0))), [5.0; 3]);
    near(limit_min(&silicone(2.5), &ShopHistory::default()), [5.0; 3]);
    // From memory: an activator can halve the time until it grips.
    near(
        limit_min(
            &anaerobic(Substrate::SteelOrIron, 0.05, true),
            &ShopHistory::default(),
        ),
        [5.0, 5.0, 10.0],
    );
    near(
        limit_min(&anaerobic(Substrate::SteelOrIron, 0.05, true), &shop(22.0, None)),
        [5.0, 5.0, 10.0],
    );
    let no_limit = CureSpec {
        label: LabelTimes::full_only(celsius(22.0), hours(24.0)),
        ..steel()
    };
    assert_eq!(
        no_limit.reached_at(Milestone::AssemblyLimit, START, &shop(22.0, None)),
        Err(NoCure::NoFigure)
    );
}

#[test]
fn a_milestone_the_label_leaves_out_waits_for_the_next() {
    let label = LabelTimes {
        fixture: Some(Time::new::<minute>(30.0)),
        fit_for_oil: Some(hours(3.0)),
        ..LabelTimes::full_only(celsius(22.0), hours(24.0))
    };
    let spec = CureSpec { label, ..steel() };
    let at = |milestone| range_h(&spec, milestone, &shop(22.0, None))[2];
    assert_eq!(at(Milestone::Fixture), 0.5);
    assert_eq!(at(Milestone::Handling), 3.0);
    assert_eq!(at(Milestone::FitForOil), 3.0);
    assert_eq!(at(Milestone::FitForPressure), 24.0);
    assert_eq!(at(Milestone::FullCure), 24.0);
}

#[test]
fn full_cure_follows_the_law_of_its_kind() {
    let latest = |spec: &CureSpec, shop: &ShopHistory| range_h(spec, Milestone::FullCure, shop)[2];
    let near = |got: f64, expected: f64| {
        assert!(
            (got / expected - 1.0).abs() < 1e-6,
            "{got} h, expected {expected} h"
        );
    };
    near(latest(&steel(), &shop(22.0, None)), 24.0);
    near(latest(&steel(), &ShopHistory::default()), 24.0);
    // 10 K colder, harsh end 2.5: 60 h.
    near(latest(&steel(), &shop(12.0, None)), 60.0);
    // Depth by the root of time: three times the depth takes nine days.
    near(latest(&silicone(7.5), &shop(23.0, Some(50.0))), 216.0);
    // A night: after 10 h the 14 h left go at 2.5^−1.2.
    let night = ShopHistory(vec![reading(0.0, 22.0, None), reading(10.0, 10.0, None)]);
    near(latest(&steel(), &night), 10.0 + 14.0 / 0.333_021_3);
    assert!(
        steel()
            .reached_at(Milestone::FullCure, START, &shop(4.0, None))
            .is_err()
    );
}

#[test]
fn a_label_that_makes_no_sense_is_refused() {
    let label = |at: f64, full_days: f64| LabelTimes::full_only(celsius(at), Time::new::<day>(full_days));
    assert_eq!(label(22.0, 90.0).check(), Ok(()));
    assert_eq!(label(22.0, 90.5).check(), Err(LabelError::Time));
    assert_eq!(label(22.0, 0.0).check(), Err(LabelError::Time));
    assert_eq!(label(22.0, f64::NAN).check(), Err(LabelError::Time));
    assert_eq!(label(5.0, 1.0).check(), Ok(()));
    assert_eq!(label(4.97, 1.0).check(), Err(LabelError::Temperature));
    assert_eq!(label(60.0, 1.0).check(), Ok(()));
    assert_eq!(label(60.3, 1.0).check(), Err(LabelError::Temperature));
    let turned = LabelTimes {
        fixture: Some(Time::new::<day>(2.0)),
        ..label(22.0, 1.0)
    };
    assert_eq!(turned.check(), Err(LabelError::Order));
    let spec = CureSpec {
        label: turned,
        ..steel()
    };
    let refused = spec
        .reached_at(Milestone::FullCure, START, &shop(22.0, None))
        .unwrap_err();
    assert_eq!(
        refused.to_string(),
        "The label's times have to grow from the time to join to full cure: check them."
    );
}

#[test]
fn refusals_say_what_to_do() {
    let words = [
        (
            NoCure::TooCold,
            "Below 5 °C it hardly cures: warm the shop or the part and enter the temperature.",
        ),
        (
            NoCure::TooDry,
            "The air is too dry for it to cure: add moisture and enter the humidity.",
        ),
        (
            NoCure::GapTooWide,
            "It does not cure across a gap of 0.75 mm or more: choose another compound.",
        ),
        (NoCure::DepthUnusable, "Enter the depth of the bead, 0 to 50 mm."),
        (
            NoCure::NoFigure,
            "The label gives no time for this: enter it from the label.",
        ),
        (
            NoCure::Label(LabelError::Time),
            "Enter the label's times, each above zero and at most 90 days.",
        ),
        (
            NoCure::Label(LabelError::Temperature),
            "Enter the temperature the label's times hold at, 5 to 60 °C.",
        ),
    ];
    for (refusal, expected) in words {
        assert_eq!(refusal.to_string(), expected);
    }
}
