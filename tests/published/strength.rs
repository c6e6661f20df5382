//! Proof loads and strengths against ISO 898-1, SAE J429 and ISO 3506-1.

use halfcase::trade::strength::{Strength, proof_load};
use halfcase::trade::thread::Thread;
use uom::si::force::newton;
use uom::si::pressure::megapascal;

const MPA_PER_KSI: f64 = 6.894_757_293;

fn thread(name: &str) -> Thread {
    Thread::parse(name).unwrap_or_else(|error| panic!("{name}: {error}"))
}

/// ISO 898-1 proof loads, N (S). The table uses rounded areas and rounds the load: within 1 %.
#[test]
fn iso_898_1_proof_loads() {
    let rows = [
        ("M3", 2_920.0, 4_180.0, 4_880.0),
        ("M4", 5_100.0, 7_290.0, 8_520.0),
        ("M5", 8_230.0, 11_800.0, 13_800.0),
        ("M6", 11_600.0, 16_700.0, 19_500.0),
        ("M8", 21_200.0, 30_400.0, 35_500.0),
        ("M10", 33_700.0, 48_100.0, 56_300.0),
        ("M12", 48_900.0, 70_000.0, 81_800.0),
        ("M14", 66_700.0, 95_500.0, 112_000.0),
        ("M16", 91_000.0, 130_000.0, 152_000.0),
        ("M18", 115_000.0, 159_000.0, 186_000.0),
        ("M20", 147_000.0, 203_000.0, 238_000.0),
        ("M24", 212_000.0, 293_000.0, 342_000.0),
    ];
    let check = |name: &str, class: Strength, printed: f64| {
        let got = proof_load(thread(name), class).get::<newton>();
        assert!(
            (got / printed - 1.0).abs() < 0.01,
            "{name} {}: {got}, printed {printed}",
            class.name()
        );
    };
    for (name, low, middle, high) in rows {
        check(name, Strength::Class8_8, low);
        check(name, Strength::Class10_9, middle);
        check(name, Strength::Class12_9, high);
    }
    check("M6", Strength::Class4_6, 4_520.0);
    check("M8", Strength::Class4_6, 8_240.0);
    check("M6", Strength::Class5_8, 7_640.0);
    check("M8", Strength::Class5_8, 13_900.0);
}

/// Proof stress and least yield, MPa. ISO 898-1: S_p S, yields M; ISO 3506-1 R_p0.2 S;
/// SAE J429, ksi: proof S, yield M.
#[test]
fn stresses_as_printed() {
    let ksi = |proof: f64, yielding: f64| (proof * MPA_PER_KSI, yielding * MPA_PER_KSI);
    let rows = [
        (Strength::Class4_6, "M10", (225.0, 240.0)),
        (Strength::Class4_8, "M10", (310.0, 340.0)),
        (Strength::Class5_8, "M10", (380.0, 420.0)),
        (Strength::Class8_8, "M16", (580.0, 640.0)),
        (Strength::Class8_8, "M18", (600.0, 660.0)),
        (Strength::Class10_9, "M20", (830.0, 940.0)),
        (Strength::Class12_9, "M20", (970.0, 1100.0)),
        (Strength::Grade2, "3/4-10", ksi(55.0, 57.0)),
        (Strength::Grade2, "M20", ksi(33.0, 36.0)),
        (Strength::Grade5, "3/4-10", ksi(85.0, 92.0)),
        (Strength::Grade8, "3/4-10", ksi(120.0, 130.0)),
        (Strength::Stainless50, "M12", (210.0, 210.0)),
        (Strength::Stainless70, "M12", (450.0, 450.0)),
        (Strength::Stainless80, "M12", (600.0, 600.0)),
    ];
    for (class, name, (proof, yielding)) in rows {
        let got = class.proof_stress(thread(name)).get::<megapascal>();
        assert!((got / proof - 1.0).abs() < 1e-8, "{} {name}: {got}", class.name());
        let got = class.yield_strength(thread(name)).get::<megapascal>();
        assert!(
            (got / yielding - 1.0).abs() < 1e-8,
            "{} {name}: {got}",
            class.name()
        );
    }
}

#[test]
fn every_class_yields_above_its_proof_stress() {
    for class in Strength::ALL {
        for thread in Thread::all().filter(|thread| !thread.is_pipe()) {
            assert!(
                class.yield_strength(thread) >= class.proof_stress(thread),
                "{} {thread}",
                class.name()
            );
        }
    }
    let mut names: Vec<&str> = Strength::ALL.iter().map(|class| class.name()).collect();
    names.sort_unstable();
    names.dedup();
    assert_eq!(names.len(), Strength::ALL.len());
}
