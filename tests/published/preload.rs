//! Torque, pull and assembly ceiling against VDI 2230 and sums worked by hand.

use halfcase::trade::preload::{
    Condition, PreloadError, assembly_ceiling, assembly_torque, preload, torque_for,
};
use halfcase::trade::quantity::{Force, Torque};
use halfcase::trade::strength::Strength;
use halfcase::trade::thread::Thread;
use uom::si::force::{kilonewton, newton};
use uom::si::torque::newton_meter;

const CLASSES: [Strength; 3] = [Strength::Class8_8, Strength::Class10_9, Strength::Class12_9];

fn thread(name: &str) -> Thread {
    Thread::parse(name).unwrap_or_else(|error| panic!("{name}: {error}"))
}

fn close(got: f64, printed: f64, within: f64, what: &str) {
    assert!(
        (got / printed - 1.0).abs() <= within,
        "{what}: {got}, printed {printed}"
    );
}

/// VDI 2230 (2001), 90 % of R_p0.2, fine threads (S): thread, friction, F_M kN, M_A N·m for 8.8,
/// 10.9 and 12.9. All 45 rows.
#[test]
fn vdi_2230_fine_threads() {
    type Three = [f64; 3];
    let rows: [(&str, f64, Three, Three); 15] = [
        ("M8×1", 0.10, [20.7, 30.4, 35.6], [22.8, 33.5, 39.2]),
        ("M8×1", 0.12, [20.2, 29.7, 34.7], [26.1, 38.3, 44.9]),
        ("M8×1", 0.14, [19.7, 28.9, 33.9], [29.2, 42.8, 50.1]),
        ("M10×1.25", 0.10, [32.4, 47.5, 55.6], [44.0, 65.0, 76.0]),
        ("M10×1.25", 0.12, [31.6, 46.4, 54.3], [51.0, 75.0, 87.0]),
        ("M10×1.25", 0.14, [30.8, 45.2, 52.9], [57.0, 83.0, 98.0]),
        ("M12×1.25", 0.10, [49.1, 72.1, 84.4], [79.0, 116.0, 135.0]),
        ("M12×1.25", 0.12, [48.0, 70.5, 82.5], [90.0, 133.0, 155.0]),
        ("M12×1.25", 0.14, [46.8, 68.7, 80.4], [101.0, 149.0, 174.0]),
        ("M14×1.5", 0.10, [66.4, 97.5, 114.1], [124.0, 182.0, 213.0]),
        ("M14×1.5", 0.12, [64.8, 95.2, 111.4], [142.0, 209.0, 244.0]),
        ("M14×1.5", 0.14, [63.2, 92.9, 108.7], [159.0, 234.0, 274.0]),
        ("M16×1.5", 0.10, [89.6, 131.6, 154.0], [189.0, 278.0, 325.0]),
        ("M16×1.5", 0.12, [87.6, 128.7, 150.6], [218.0, 320.0, 374.0]),
        ("M16×1.5", 0.14, [85.5, 125.5, 146.9], [244.0, 359.0, 420.0]),
    ];
    for (name, friction, forces, torques) in rows {
        for ((class, force), torque) in CLASSES.into_iter().zip(forces).zip(torques) {
            let what = format!("{name} {} at {friction}", class.name());
            let got = assembly_ceiling(thread(name), class, friction);
            close(got.get::<kilonewton>(), force, 0.003_5, &what);
            let got = assembly_torque(thread(name), class, friction);
            close(got.get::<newton_meter>(), torque, 0.01, &what);
        }
    }
}

/// VDI 2230-1 table A1, coarse, friction 0.12 (M): F_M kN, M_A N·m.
#[test]
fn vdi_2230_table_a1() {
    let rows = [
        ("M6", Strength::Class8_8, 10.2, 10.1),
        ("M8", Strength::Class8_8, 18.6, 24.6),
        ("M10", Strength::Class8_8, 29.6, 48.0),
        ("M12", Strength::Class8_8, 43.0, 84.0),
        ("M8", Strength::Class10_9, 27.3, 36.1),
        ("M10", Strength::Class10_9, 43.4, 71.0),
    ];
    for (name, class, force, torque) in rows {
        close(
            assembly_ceiling(thread(name), class, 0.12).get::<kilonewton>(),
            force,
            0.005,
            name,
        );
        close(
            assembly_torque(thread(name), class, 0.12).get::<newton_meter>(),
            torque,
            0.01,
            name,
        );
    }
}

/// The ceiling formula of VDI 2230-1 worked apart from this code, N.
#[test]
fn ceiling_worked_by_hand() {
    let rows = [
        ("M6", Strength::Class8_8, 0.12, 10_182.35),
        ("M8×1", Strength::Class10_9, 0.10, 30_447.38),
        ("M10", Strength::Class12_9, 0.20, 45_386.25),
        ("M20", Strength::Class8_8, 0.12, 130_480.67),
        ("1/4-20", Strength::Grade5, 0.12, 10_074.35),
    ];
    for (name, class, friction, force) in rows {
        close(
            assembly_ceiling(thread(name), class, friction).get::<newton>(),
            force,
            1e-6,
            name,
        );
    }
}

/// Torque over pull, mm: P/(2π) + μ_th·d2/(2·cos 30°) + μ_b·D_b/2, worked apart from this code.
#[test]
fn lever_worked_by_hand() {
    let rows = [
        ("M6", 0.10, 0.16, 1.087_265_1),
        ("M6", 0.24, 0.24, 1.829_339_3),
        ("M8×1", 0.10, 0.16, 1.408_735_2),
        ("M10", 0.08, 0.08, 1.168_212_6),
        ("M20", 0.15, 0.15, 3.871_438_2),
        ("1/4-20", 0.15, 0.15, 1.344_150_7),
    ];
    for (name, in_thread, under_head, lever_mm) in rows {
        let got = torque_for(Force::new::<newton>(1000.0), thread(name), in_thread, under_head);
        close(got.get::<newton_meter>(), lever_mm, 1e-7, name);
    }
}

/// Friction is held to 0–1 and the pull to 10¹² N: M6 at 1 is 0.159 154 9 + 3.089 102 + 3.87 mm.
#[test]
fn wild_inputs_are_held() {
    let at = |force_n: f64, friction: f64| {
        torque_for(Force::new::<newton>(force_n), thread("M6"), friction, friction).get::<newton_meter>()
    };
    close(at(1000.0, 7.0), 7.118_257, 1e-6, "friction held to 1");
    close(at(1000.0, -1.0), 0.159_154_9, 1e-6, "friction held to 0");
    close(at(1e300, 7.0), 7.118_257e9, 1e-6, "pull held");
}

/// The rule T = K·F·d with K = 0.2 answers to a friction of about 0.15 (common practice, no source).
#[test]
fn nut_factor_of_dry_tables() {
    for name in ["M6", "M8", "M10", "M12", "M16", "3/8-16", "1/2-13"] {
        let t = thread(name);
        let torque = torque_for(Force::new::<newton>(1.0), t, 0.15, 0.15);
        let factor = (torque / (Force::new::<newton>(1.0) * t.major())).value;
        close(factor, 0.2, 0.06, name);
    }
}

/// Ranges after the friction classes of VDI 2230 (common practice); the middle column is what
/// tables are worked at: 0.12 oiled (VDI 2230), 0.15 otherwise (K = 0.2).
#[test]
fn friction_table() {
    let rows = [
        (Condition::Dry, 0.12, 0.15, 0.24),
        (Condition::Oiled, 0.08, 0.12, 0.16),
        (Condition::Plated, 0.12, 0.15, 0.24),
        (Condition::CompoundWet, 0.10, 0.15, 0.20),
        // Common practice, no source.
        (Condition::StainlessDry, 0.30, 0.35, 0.40),
        (Condition::Paste, 0.06, 0.09, 0.12),
        (Condition::Unknown, 0.08, 0.15, 0.24),
    ];
    assert_eq!(rows.map(|row| row.0), Condition::ALL);
    for (condition, low, usual, high) in rows {
        assert_eq!(condition.friction(), (low, high));
        assert!((condition.usual_friction() - usual).abs() < 1e-12);
        assert!(!condition.words().is_empty() && !condition.reason().is_empty());
    }
}

/// 9 N·m on an oiled M6: 9 over the levers at 0.16 and 0.08, worked by hand.
#[test]
fn preload_range() {
    let range = preload(Torque::new::<newton_meter>(9.0), thread("M6"), Condition::Oiled).expect("a range");
    close(
        range.high.get::<newton>(),
        9_000.0 / 0.715_883_07,
        1e-6,
        "slippery",
    );
    // P/(2π) + 0.16 · (5.350 481/(2·cos 30°) + 7.74/2) = 1.272 611 2 mm.
    close(range.low.get::<newton>(), 9_000.0 / 1.272_611_2, 1e-6, "rough");
}

#[test]
fn refuses_impossible_torques() {
    let asked = |nm: f64| preload(Torque::new::<newton_meter>(nm), thread("M6"), Condition::Dry);
    for nm in [0.0, -1.0, f64::NAN, f64::NEG_INFINITY] {
        assert_eq!(asked(nm), Err(PreloadError::NotPositive), "{nm}");
    }
    for nm in [10_000_001.0, f64::MAX, f64::INFINITY] {
        assert_eq!(asked(nm), Err(PreloadError::TooLarge), "{nm}");
    }
    assert!(asked(10_000_000.0).is_ok());
    assert_eq!(
        PreloadError::NotPositive.to_string(),
        "A torque must be more than zero: type it again."
    );
    assert_eq!(
        PreloadError::TooLarge.to_string(),
        "That is more than 10 000 000 N·m: check the value and its unit."
    );
}
