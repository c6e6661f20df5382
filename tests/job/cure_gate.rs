//! When the gate of a fill opens for common joints, by typical figures, from a cold shop to a hot one.

use super::MORNING;
use halfcase::job::bottle::{Bottle, BottleId};
use halfcase::job::keep::Shelves;
use halfcase::job::shelf::{MemoryStore, Shelf};
use halfcase::trade::application::{Apart, Application, Face, Fluid, Hole, JointKind, ManualWord, PlugSeal};
use halfcase::trade::compound::{CompoundClass, recommend};
use halfcase::trade::cure::{Milestone, ShopHistory, ShopReading};
use halfcase::trade::quantity::{Length, ThermodynamicTemperature, Time};
use std::rc::Rc;
use uom::si::length::millimeter;
use uom::si::thermodynamic_temperature::degree_celsius;
use uom::si::time::hour;

const TEMPERATURES: [f64; 4] = [5.0, 15.0, 22.0, 35.0];

fn joint(kind: JointKind, manual: ManualWord, face: Face, gap_mm: Option<f64>) -> Application {
    Application {
        manual: Some(manual),
        face: Some(face),
        gap: gap_mm.map(Length::new::<millimeter>),
        precoated: Some(false),
        locked: Some(false),
        assembled: Some(false),
        rigid: Some(true),
        fluid: Some(Fluid::Oil),
        hole: Some(Hole::Blind),
        apart: Some(Apart::Service),
        seal: Some(PlugSeal::Taper),
        vibration: Some(true),
        oxygen_sensor: Some(false),
        oil_ways: Some(false),
        thread: Some(Length::new::<millimeter>(8.0)),
        temperature: Some(ThermodynamicTemperature::new::<degree_celsius>(120.0)),
        ..Application::new(kind)
    }
}

fn case_joint() -> Application {
    joint(
        JointKind::CaseHalves,
        ManualWord::AnaerobicSealant,
        Face::CastAluminium,
        Some(0.1),
    )
}

/// Early, likely and late, in hours, in a shop of that temperature whose humidity nobody has told.
fn oil_h(joint: &Application, celsius: f64) -> [f64; 3] {
    let shop = ShopHistory(vec![ShopReading {
        at: MORNING,
        temperature: ThermodynamicTemperature::new::<degree_celsius>(celsius),
        humidity: None,
    }]);
    let spec = recommend(joint).cure.unwrap();
    let done = spec.reached_at(Milestone::FitForOil, MORNING, &shop).unwrap();
    [done.earliest, done.likely, done.latest].map(|at| at.since(MORNING).get::<hour>())
}

/// 2.5 days at 22 °C and 12 days at 5 °C stood here: a gate like that is opened by hand. Practice fills a
/// bolted case the next day, in a cold shop two or three days later (common practice, no source).
#[test]
fn a_case_joint_is_filled_the_next_day() {
    let [early, likely, late] = oil_h(&case_joint(), 22.0);
    assert!(early >= 6.0 && likely < late && late <= 24.0, "{late} h at 22 °C");
    let cold = oil_h(&case_joint(), 5.0)[2];
    assert!(cold > late && cold <= 3.0 * 24.0, "{cold} h at 5 °C");
}

/// A joint, its class, the label's time for oil by the class (hours, common practice, no source), and what
/// the trade does (common practice, no source).
type Row = (&'static str, CompoundClass, Application, f64, &'static str);

fn ten_joints() -> [Row; 10] {
    use CompoundClass::*;
    use Face::{CastAluminium, SteelOrIron};
    use JointKind::*;
    use ManualWord::{
        AnaerobicSealant, LiquidGasket, LockHigh, LockMedium, Retaining, Silicone, ThreadSealant,
    };
    let with_nut = |it: Application| Application {
        hole: Some(Hole::Through),
        apart: Some(Apart::Never),
        thread: Some(Length::new::<millimeter>(12.0)),
        ..it
    };
    [
        (
            "case halves, aluminium, 0.1 mm, anaerobic",
            AnaerobicFlange,
            case_joint(),
            6.0,
            "next day; cold shop: warm it, or two to three days",
        ),
        (
            "stiff cover, iron, close, anaerobic",
            AnaerobicFlange,
            joint(FlangeRigid, AnaerobicSealant, SteelOrIron, Some(0.0)),
            6.0,
            "4 to 8 h; cold: next day or the day after",
        ),
        (
            "stiff cover, aluminium, 0.25 mm, anaerobic",
            AnaerobicFlange,
            joint(FlangeRigid, AnaerobicSealant, CastAluminium, Some(0.25)),
            6.0,
            "next day; cold: three days, or an activator",
        ),
        (
            "screw, blind in aluminium, medium lock",
            ThreadlockMedium,
            joint(ThreadedFastener, LockMedium, CastAluminium, None),
            6.0,
            "over night",
        ),
        (
            "bolt and nut, steel, high-strength lock",
            ThreadlockHigh,
            with_nut(joint(ThreadedFastener, LockHigh, SteelOrIron, None)),
            6.0,
            "same day; cold: next day",
        ),
        (
            "sleeve in aluminium, 0.05 mm, retaining",
            RetainingCompound,
            joint(Cylindrical, Retaining, CastAluminium, Some(0.05)),
            6.0,
            "over night",
        ),
        (
            "sleeve on steel, 0.1 mm, retaining",
            RetainingCompound,
            joint(Cylindrical, Retaining, SteelOrIron, Some(0.1)),
            6.0,
            "same day to over night",
        ),
        (
            "taper plug in aluminium, pipe sealant",
            AnaerobicPipe,
            joint(PlugOrPipeThread, ThreadSealant, CastAluminium, None),
            4.0,
            "half a day; cold: a day or two",
        ),
        (
            "stamped cover, 3 mm, silicone",
            SiliconeNeutral,
            joint(FlangeFlexible, Silicone, CastAluminium, Some(3.0)),
            24.0,
            "24 h and more; cold or dry: days",
        ),
        (
            "case halves, liquid gasket",
            SemiDryingGasket,
            joint(CaseHalves, LiquidGasket, CastAluminium, Some(0.1)),
            2.0,
            "an hour or two; cold: half a day",
        ),
    ]
}

fn span(hours: f64) -> String {
    if hours < 48.0 {
        format!("{hours:.0} h")
    } else {
        format!("{:.1} d", hours / 24.0)
    }
}

/// Printed with `--nocapture`, as it stands in DEVELOPERS.md.
#[test]
fn the_gate_opens_later_the_colder_it_is_and_never_before_the_label() {
    println!("| joint | 5 °C | 15 °C | 22 °C | 35 °C | practice (no source) |");
    println!("| --- | --- | --- | --- | --- | --- |");
    for (name, class, joint, label_h, practice) in ten_joints() {
        assert_eq!(recommend(&joint).class, Some(class), "{name}");
        let ranges = TEMPERATURES.map(|celsius| oil_h(&joint, celsius));
        for [early, likely, late] in ranges {
            assert!(early >= label_h && early <= likely && likely <= late, "{name}");
        }
        for pair in ranges.windows(2) {
            assert!((0..3).all(|end| pair[0][end] >= pair[1][end]), "{name}");
        }
        // Cold slows it, heat never hurries it past what stands on the label: 23 °C at most.
        assert!(
            ranges[0][2] > ranges[1][2] && ranges[1][2] > ranges[2][2],
            "{name}"
        );
        // What people wait for at all (common practice, no source): two days in a warm shop, a week in a cold one.
        assert!(ranges[2][2] <= 48.0 && ranges[0][2] <= 8.0 * 24.0, "{name}");
        let cells = ranges.map(|[_, likely, late]| format!("{} ({})", span(late), span(likely)));
        println!("| {name} | {} | {practice} |", cells.join(" | "));
    }
}

/// Every class that cures has a time for oil of its own, or waits until it has cured through; none under
/// what is usual (common practice, no source).
#[test]
fn every_class_that_cures_has_its_time_for_oil() {
    use CompoundClass::*;
    for class in CompoundClass::ALL {
        let Some(spec) = class.typical_cure(&case_joint()) else {
            continue;
        };
        let oil_h = spec.label.time_to(Milestone::FitForOil).unwrap().get::<hour>();
        let usual = match class {
            ThreadlockLow | ThreadlockMedium | ThreadlockHigh | ThreadlockWicking | RetainingCompound
            | AnaerobicFlange => 6.0,
            AnaerobicPipe => 4.0,
            SemiDryingGasket => 2.0,
            SiliconeNeutral | SiliconeSensorSafe => 24.0,
            PtfePaste | LightOil | Grease | AntiSeize => unreachable!("{class:?} does not cure"),
        };
        assert!((oil_h - usual).abs() < 1e-9, "{class:?}: {oil_h} h");
        assert_eq!(spec.label.full, Time::new::<hour>(24.0));
    }
}

/// What ran in an earlier release goes on by its own label: where it names no time for oil, full cure counts,
/// whatever is usual now.
#[test]
fn a_clock_of_an_earlier_release_opens_no_gate_before_its_label() {
    let store = MemoryStore::default();
    *store.texts.borrow_mut() = serde_json::from_str(include_str!("../fixtures/form-1/store.json")).unwrap();
    let state = Shelves::new(Shelf::new(Rc::new(store)), None).read().state;
    assert!(state.clocks.len() > 1);
    for clock in &state.clocks {
        let label = &clock.spec.label;
        assert_eq!(label.fit_for_oil, None, "{}", clock.name);
        let oil = clock
            .reached_at(Milestone::FitForOil, &state.settings.shop)
            .unwrap();
        assert!(oil.earliest >= clock.started.plus(label.full), "{}", clock.name);
    }
}

/// A bottle begins with its class's usual figures. A slow one, of whose label only full cure is typed, must not
/// let the oil in by them.
#[test]
fn a_slow_bottle_waits_for_its_own_full_cure() {
    let new = || Bottle::new(BottleId(1), CompoundClass::RetainingCompound);
    let oil_h = |bottle: &Bottle| bottle.label.time_to(Milestone::FitForOil).unwrap().get::<hour>();
    assert!((oil_h(&new()) - 6.0).abs() < 1e-9);
    for full_h in [72.0, 4.0] {
        let mut bottle = new();
        bottle.take_full(Time::new::<hour>(full_h));
        assert!((oil_h(&bottle) - full_h).abs() < 1e-9, "{full_h} h");
        assert_eq!(bottle.label.check(), Ok(()));
    }
    // A slip of the thumb among the classes, and back: no usual time comes in its place.
    let mut bottle = new();
    bottle.take_full(Time::new::<hour>(72.0));
    bottle.become_of(CompoundClass::SiliconeNeutral);
    bottle.become_of(CompoundClass::RetainingCompound);
    assert!((oil_h(&bottle) - 72.0).abs() < 1e-9, "{} h", oil_h(&bottle));
    // The same as usual changes nothing; a label's own time for oil stays.
    let mut bottle = new();
    bottle.take_full(Time::new::<hour>(24.0));
    assert!((oil_h(&bottle) - 6.0).abs() < 1e-9);
    bottle.label.fit_for_oil = Some(Time::new::<hour>(10.0));
    bottle.take_full(Time::new::<hour>(72.0));
    assert!((oil_h(&bottle) - 10.0).abs() < 1e-9);
}
