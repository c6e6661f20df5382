//! Measurements of a bottom end against government manuals and a course's example. (S): seen in a stored copy.

use halfcase::job::measuring::{Field, Measure};
use halfcase::trade::material::Material;
use halfcase::trade::measure::{Allowed, MeasureVerdict};
use halfcase::trade::measuring::MeasuringError;
use halfcase::trade::measuring::backlash::{at_radius, grown_by, lash};
use halfcase::trade::measuring::flatness::{limit_over, straightness};
use halfcase::trade::measuring::float::{Wish, float_left, from_box, pack_for};
use halfcase::trade::measuring::piston::{Read, clearance as in_bore};
use halfcase::trade::measuring::ring::{gap_for, gap_in};
use halfcase::trade::measuring::runout::{between, limit_at, off_line, offset, round_one_turn};
use halfcase::trade::measuring::shell;
use halfcase::trade::measuring::turning::{Figure, by_cord, of_bearings, pack_change};
use halfcase::trade::quantity::{
    Angle, Force, Length, LengthUnit, Ratio, ThermodynamicTemperature, TorqueUnit,
};
use halfcase::trade::selection::{Pack, Size, Thicker, row_of};
use uom::si::angle::degree;
use uom::si::force::{newton, pound_force};
use uom::si::ratio::ratio;
use uom::si::thermodynamic_temperature::degree_celsius;

fn inch(value: f64) -> Length {
    LengthUnit::Inch.length(value)
}

fn mm(value: f64) -> Length {
    LengthUnit::Millimetre.length(value)
}

fn in_inches(length: Length) -> f64 {
    LengthUnit::Inch.value_of(length)
}

fn in_mm(length: Length) -> f64 {
    LengthUnit::Millimetre.value_of(length)
}

fn near(got: f64, printed: f64, within: f64, what: &str) {
    assert!(
        (got - printed).abs() <= within,
        "{what}: {got}, printed {printed}"
    );
}

/// Limits as the manuals print them in inches and in mm (S), typed in inches and shown in mm: half of the
/// printed last figure is let pass, one where they cut it off.
#[test]
fn what_is_typed_in_inches_is_shown_as_the_manual_prints_it_in_mm() {
    let pairs = [
        // TM 5-1940-277-34, end gaps and side gaps of rings.
        (0.016, 0.406, 0.000_5),
        (0.031, 0.787, 0.000_5),
        (0.012, 0.305, 0.000_5),
        (0.029, 0.737, 0.000_5),
        (0.002_5, 0.063, 0.001),
        (0.004_0, 0.102, 0.000_5),
        (0.002_7, 0.069, 0.000_5),
        (0.004_2, 0.107, 0.000_5),
        // TM 5-3825-229-14&P, end gaps, to a hundredth and cut.
        (0.014, 0.35, 0.01),
        (0.024, 0.60, 0.01),
        (0.020, 0.50, 0.01),
        // TM 9-2815-260-24, oil clearance of the mains.
        (0.001_6, 0.041, 0.000_5),
        (0.004_3, 0.109, 0.000_5),
        // TM 10-4320-307-24, end clearance of the crankshaft.
        (0.007, 0.18, 0.005),
        (0.017, 0.43, 0.005),
        (0.022, 0.56, 0.005),
        // TM 9-2815-254-24, clearance by plastic strip.
        (0.000_7, 0.018, 0.000_5),
        (0.004_7, 0.12, 0.005),
        // TM 55-1905-223-24-1, stretch of a rod bolt.
        (0.013_5, 0.343, 0.000_5),
        (0.018_5, 0.470, 0.000_5),
        // TM 5-4210-233-14&P-1, backlash by the size of the ring gear.
        (0.008, 0.20, 0.005),
        (0.018, 0.46, 0.005),
        (0.010, 0.25, 0.005),
        (0.020, 0.51, 0.005),
        // TM 5-3825-226-24, end play with new thrust bearings, and the most.
        (0.006, 0.15, 0.005),
        (0.012, 0.30, 0.005),
    ];
    let field = Field::gap("gap", "gap");
    for (inches, printed, within) in pairs {
        let kept = field.judge(inches, true).expect("a gap");
        near(kept, printed, within, &format!("{inches} in"));
        assert_eq!(field.text(kept, true), inches.to_string(), "comes back as typed");
    }
}

/// Loads of springs in pounds and newtons, whole newtons (S): TM 5-1940-322-24 and TM 55-1905-223-24-3.
#[test]
fn loads_in_pounds_are_shown_in_newtons() {
    for (pounds, printed) in [(80.7, 359.0), (89.2, 397.0), (147.25, 655.0), (162.75, 724.0)] {
        near(
            Measure::Force.back(pounds, true),
            printed,
            0.5,
            &pounds.to_string(),
        );
    }
}

/// TM 9-2320-303-24-2 (S): the gap between gasket and planetary picks a shim of 1 to 7 notches; both ends of each
/// row, and a mean of readings finer than the table.
#[test]
fn a_selective_shim_by_the_manuals_table() {
    let rows = [
        (4.574, 4.843),
        (4.844, 5.113),
        (5.114, 5.383),
        (5.384, 5.653),
        (5.654, 5.923),
        (5.924, 6.193),
        (6.194, 6.463),
    ];
    for (at, (from, to)) in rows.into_iter().enumerate() {
        for gap in [from, to, from - 0.000_4, to + 0.000_4] {
            assert_eq!(row_of(&rows, gap), Some(at), "{gap}");
        }
    }
    assert_eq!(row_of(&rows, 4.573), None);
    assert_eq!(row_of(&rows, 6.464), None);
}

/// TM 5-4210-233-14P-2 table c (S): end play with standard washers picks the oversize of 0.005 or 0.010 in.
#[test]
fn thrust_washers_by_end_play() {
    let rows = [
        (f64::NEG_INFINITY, 0.016),
        (0.017, 0.026),
        (0.027, 0.036),
        (0.037, f64::INFINITY),
    ];
    for (play, row) in [
        (0.010, 0),
        (0.016, 0),
        (0.017, 1),
        (0.026, 1),
        (0.027, 2),
        (0.036, 2),
        (0.040, 3),
    ] {
        assert_eq!(row_of(&rows, play), Some(row), "{play}");
    }
    // Two washers, each thicker by 0.005 or 0.010, take up 0.010 or 0.020 of 0.022 in.
    for (oversize, left) in [(0.005, 0.012), (0.010, 0.002)] {
        near(
            in_inches(float_left(inch(0.022), inch(2.0 * oversize))),
            left,
            1e-9,
            "left",
        );
    }
}

/// Packs of the walking tractor's main shaft, every one written out by hand (reckoned for this test).
#[test]
fn packs_written_out_by_hand() {
    let sizes = |rows: &[(f64, u32)]| -> Vec<Size> {
        let size = |(thick, count): &(f64, u32)| Size {
            thick: *thick,
            count: *count,
            between: false,
        };
        rows.iter().map(size).collect()
    };
    let box_mm = sizes(&[(0.50, 2), (0.20, 2), (0.10, 2), (0.05, 1)]);
    // Gap 0.62, 0.64, 0.66 (mean 0.64), float 0.05 to 0.15: pack 0.49 to 0.59, middle 0.54.
    let gaps = [mm(0.62), mm(0.64), mm(0.66)];
    let wanted = pack_for(&gaps, Wish::Float(mm(0.05), mm(0.15))).expect("a gap");
    near(in_mm(wanted.least), 0.49, 1e-9, "least");
    near(in_mm(wanted.aim), 0.54, 1e-9, "middle");
    near(in_mm(wanted.most), 0.59, 1e-9, "most");
    // One shim of 0.50 lies within it: none with fewer, though 0.50 + 0.05 is nearer.
    let Pack::Hit(found) = from_box(&box_mm, wanted) else {
        panic!("the box has it");
    };
    assert_eq!((found.taken, found.sum), (vec![1, 0, 0, 0], 0.5));
    // Preload 0.02 to 0.04: pack 0.66 to 0.68: none; 0.65 below (0.50, 0.10, 0.05), 0.70 above (0.50, 0.20).
    let wanted = pack_for(&gaps, Wish::Preload(mm(0.02), mm(0.04))).expect("a gap");
    let Pack::Miss { below, above } = from_box(&box_mm, wanted) else {
        panic!("the box has no such pack");
    };
    assert_eq!(below.map(|pack| pack.taken), Some(vec![1, 0, 1, 1]));
    assert_eq!(above.map(|pack| pack.taken), Some(vec![1, 1, 0, 0]));
    // In inches: gap 0.031, float 0.002 to 0.006 in: 0.025 to 0.029, out of 0.010 and 0.005 and 0.003.
    let wanted = pack_for(&[inch(0.031)], Wish::Float(inch(0.002), inch(0.006))).expect("a gap");
    let box_in = sizes(&[(0.254, 2), (0.127, 1), (0.0762, 2)]);
    let Pack::Hit(found) = from_box(&box_in, wanted) else {
        panic!("the box has it");
    };
    assert_eq!(found.taken, vec![2, 1, 0], "0.010 + 0.010 + 0.005 = 0.025 in");
    assert_eq!(
        pack_for(&[mm(0.04)], Wish::Float(mm(0.05), mm(0.15))).map(|wanted| in_mm(wanted.most)),
        Err(MeasuringError::NoRoom)
    );
}

/// TM 5-3805-257-14P (S): hub of 8 5/16 in radius. 24 lb is worked out there as radius times pull over 12; the
/// bands in pounds stand beside bands in ft·lb, whole numbers (one of them, 28 lb for 20 ft·lb, rounded up).
#[test]
fn turning_torque_by_a_pull_on_a_cord() {
    let at_hub = |pounds: f64| {
        let torque = by_cord(Force::new::<pound_force>(pounds), inch(8.312_5)).expect("a pull");
        TorqueUnit::PoundFoot.value_of(torque)
    };
    near(at_hub(24.0), 16.625, 1e-5, "24 lb");
    for (pounds, printed) in [(21.0, 15.0), (28.0, 20.0), (9.0, 6.0), (17.0, 12.0)] {
        near(at_hub(pounds), printed, 0.61, &pounds.to_string());
    }
    // TM 5-3805-255-14 (S) prints 2 to 6 lb as 0.746 to 2.240 kg: those are troy pounds, and we differ.
    for (pounds, misprinted, kilograms) in [(2.0, 0.746, 0.907), (6.0, 2.240, 2.722)] {
        let kgf = Force::new::<pound_force>(pounds).get::<newton>() / 9.806_65;
        near(kgf, kilograms, 0.000_5, "kg");
        assert!((kgf - misprinted).abs() > 0.1);
    }
}

/// Seal and change of pack, reckoned by hand: 14 in·lb with the seal, 4 in·lb of it alone: 10; wanted 15 to 20,
/// the manual's figure 0.001 in of pack for 5 in·lb: 7.5 short of the middle is 0.0015 in.
#[test]
fn the_seal_is_taken_off_and_the_pack_follows() {
    let pound = |value: f64| TorqueUnit::PoundInch.torque(value);
    let torque = of_bearings(pound(14.0), pound(4.0)).expect("torques");
    near(
        TorqueUnit::PoundInch.value_of(torque),
        10.0,
        1e-9,
        "less the seal",
    );
    let figure = Figure {
        pack: inch(0.001),
        torque: pound(5.0),
    };
    let limits = (pound(15.0), pound(20.0));
    for (thicker, by, from, to) in [
        (Thicker::Lowers, -0.001_5, -0.002, -0.001),
        (Thicker::Raises, 0.001_5, 0.001, 0.002),
    ] {
        let change = pack_change(torque, limits, thicker, figure).expect("a change");
        near(change.by, in_mm(inch(by)), 2e-6, "to the middle");
        near(change.from, in_mm(inch(from)), 2e-6, "least");
        near(change.to, in_mm(inch(to)), 2e-6, "most");
    }
    assert_eq!(of_bearings(pound(4.0), pound(14.0)), Err(MeasuringError::Drag));
}

/// TM 10-3930-653-14&P (S): the bend is half of the reading over one turn; 0.02 mm (0.0008 in) is right, 0.05 mm
/// (0.0020 in) the most.
#[test]
fn a_bend_is_half_the_reading() {
    for (reading_mm, bend_mm, bend_in) in [(0.04, 0.02, 0.000_8), (0.10, 0.05, 0.002_0)] {
        near(in_mm(offset(mm(reading_mm))), bend_mm, 1e-12, "mm");
        near(in_inches(offset(mm(reading_mm))), bend_in, 0.000_05, "in");
    }
}

/// TM 9-2815-202-34 and TM 55-1930-208-24 (S): high spots of neighbouring journals opposite: the sum counts, at
/// most 0.003 in; in line: the difference; at right angles the sum may be 0.004, or 0.002 on each: the vector
/// between them is then 0.0028, within the same 0.003.
#[test]
fn neighbouring_journals() {
    let at = |total: f64, turned: f64| (inch(total), Angle::new::<degree>(turned));
    let apart = |one, other| in_inches(between(one, other));
    near(apart(at(0.001, 0.0), at(0.002, 180.0)), 0.003, 1e-9, "opposite");
    near(apart(at(0.004, 70.0), at(0.001, 70.0)), 0.003, 1e-9, "in line");
    near(
        apart(at(0.002, 0.0), at(0.002, 90.0)),
        0.002_828,
        5e-7,
        "at right angles",
    );
    assert!(apart(at(0.002, 0.0), at(0.002, 90.0)) <= 0.003);
}

/// The line through two journals, by vectors worked by hand (run-out to a common axis A–B as ISO 1101 tells it,
/// from memory; no printed numbers at hand).
#[test]
fn a_place_runs_off_the_line_through_two_journals() {
    let at = |total: f64, turned: f64| (mm(total), Angle::new::<degree>(turned));
    // A round place off its centre, read at eight.
    let read = |(total, high): (Length, Angle)| {
        [0.0, 45.0, 90.0, 135.0, 180.0, 225.0, 270.0, 315.0].map(|turned: f64| {
            let from_high = turned.to_radians() - high.get::<degree>().to_radians();
            total / 2.0 * from_high.cos()
        })
    };
    let off = |place, x: f64, journals, span: f64| {
        let left = off_line(&read(place), mm(x), journals, mm(span)).expect("a shaft");
        near(
            in_mm(left.total),
            in_mm(2.0 * left.offset),
            in_mm(left.total) * 0.08 + 1e-9,
            "round",
        );
        near(left.out_of_round.map_or(1.0, in_mm), 0.0, 1e-12, "round");
        (2.0 * left.offset, left.high_at)
    };
    let same = |got: (Length, Angle), total: f64, turned: f64, what: &str| {
        near(in_mm(got.0), total, 1e-9, what);
        near(got.1.get::<degree>(), turned, 1e-6, what);
    };
    // In V-blocks at true journals it is what is read.
    let true_ones = (at(0.0, 0.0), at(0.0, 0.0));
    same(
        off(at(0.05, 250.0), 70.0, true_ones, 200.0),
        0.05,
        250.0,
        "V-blocks",
    );
    // A straight shaft off its centres, all alike or the farther the more, has no bend.
    let alike = (at(0.06, 30.0), at(0.06, 30.0));
    near(
        in_mm(off(at(0.06, 30.0), 150.0, alike, 200.0).0),
        0.0,
        1e-9,
        "off centre",
    );
    let tilted = (at(0.0, 0.0), at(0.10, 80.0));
    near(
        in_mm(off(at(0.05, 80.0), 100.0, tilted, 200.0).0),
        0.0,
        1e-9,
        "tilted",
    );
    // Halfway between (0.03, 0) and (0, 0.04) lies (0.015, 0.02); the place at (0.06, 0.08): (0.045, 0.06).
    let crossed = (at(0.03, 0.0), at(0.04, 90.0));
    let place = at(0.10, 53.130_102_354);
    same(off(place, 50.0, crossed, 100.0), 0.075, 53.130_102, "halfway");
    // Overhung by half the span, behind the second: the line is at (−0.015, 0.06), the place (0.075, 0.02) off it.
    same(
        off(place, 150.0, crossed, 100.0),
        0.077_620_873_5,
        14.931_417,
        "overhung",
    );
    // And before the first, at (0.045, −0.02): (0.015, 0.10).
    same(
        off(place, -50.0, crossed, 100.0),
        0.101_118_742_1,
        81.469_234,
        "before the first",
    );
    // At a journal it is how far the two run apart: the rule for neighbours.
    let (one, other) = crossed;
    near(
        in_mm(off(one, 100.0, crossed, 100.0).0),
        in_mm(between(one, other)),
        1e-12,
        "at a journal",
    );
    // An oval stays in what is left: 0, 0.06, 0, 0.06 at journals that run true is 0.06, on its centre.
    let oval = [0.0, 0.06, 0.0, 0.06].map(mm);
    let left = off_line(&oval, mm(50.0), true_ones, mm(100.0)).expect("a shaft");
    near(in_mm(left.most()), 0.06, 1e-12, "oval");
    near(in_mm(left.offset), 0.0, 1e-12, "oval");
    // Three places may miss the high spot: cos 30° of 0.06 is 0.051 962, its fit all of it.
    let three = [90.0_f64, -30.0, -150.0].map(|from_high| mm(0.03 * from_high.to_radians().cos()));
    let left = off_line(&three, mm(50.0), true_ones, mm(100.0)).expect("a shaft");
    near(in_mm(left.total), 0.051_961_524_2, 1e-9, "three places");
    near(in_mm(left.most()), 0.06, 1e-9, "three places");
    let refused = |x: f64, span: f64| off_line(&read(place), mm(x), crossed, mm(span)).err();
    assert_eq!(refused(50.0, 0.0), Some(MeasuringError::Base));
    assert_eq!(refused(f64::NAN, 100.0), Some(MeasuringError::Size));
    assert_eq!(refused(-10_000.0, 100.0), Some(MeasuringError::Size));
    assert_eq!(
        off_line(&read(place), mm(1.0), (at(1_001.0, 0.0), other), mm(2.0)).err(),
        Some(MeasuringError::Reading)
    );
    assert_eq!(
        off_line(&oval[..2], mm(1.0), crossed, mm(2.0)).err(),
        Some(MeasuringError::Few(3))
    );
}

/// Readings made for this test: r = 0.05 + 0.03·cos(θ − 60°) every 45°, rounded to a tenth of a µm; and the same
/// with an oval of 0.004·cos 2θ on it, which no offset can make.
#[test]
fn readings_round_one_turn() {
    let readings = [0.0650, 0.0790, 0.0760, 0.0578, 0.0350, 0.0210, 0.0240, 0.0422].map(mm);
    let found = round_one_turn(&readings).expect("readings");
    near(in_mm(found.offset), 0.03, 5e-5, "offset");
    near(found.high_at.get::<degree>(), 60.0, 0.1, "high spot");
    near(in_mm(found.total), 0.058, 1e-9, "total");
    let oval = [0.004, 0.0, -0.004, 0.0, 0.004, 0.0, -0.004, 0.0].map(mm);
    let both: Vec<Length> = readings.into_iter().zip(oval).map(|(r, o)| r + o).collect();
    let found = round_one_turn(&both).expect("readings");
    near(in_mm(found.offset), 0.03, 5e-5, "the offset stays");
    near(
        in_mm(found.out_of_round.expect("eight readings")),
        0.008,
        2e-4,
        "oval",
    );
    // Four readings 0, 0.02, 0.04, 0.02: high half a turn on, offset 0.02, total 0.04.
    let found = round_one_turn(&[0.0, 0.02, 0.04, 0.02].map(mm)).expect("readings");
    near(in_mm(found.offset), 0.02, 1e-9, "four readings");
    near(found.high_at.get::<degree>(), 180.0, 1e-6, "half a turn on");
    // "0.001 in each inch of radius" on a face read at 2.5 in (common practice, no source).
    let limit = limit_at(inch(0.001), inch(1.0), inch(2.5)).expect("a limit");
    near(in_inches(limit), 0.002_5, 1e-9, "at its radius");
}

/// TM 9-2815-254-24 (S): timing gears 0.004–0.007 in (0.10–0.17 mm), at most 0.012 (0.30).
#[test]
fn backlash_against_the_manual() {
    let found = lash(&[0.005, 0.006, 0.007, 0.006].map(inch)).expect("readings");
    near(in_inches(found.mean), 0.006, 1e-9, "mean");
    near(in_inches(found.spread), 0.002, 1e-9, "spread");
    let allowed = Allowed {
        least: Some(inch(0.004)),
        most: Some(inch(0.007)),
    };
    assert_eq!(allowed.judge(found.most), Ok(MeasureVerdict::Within));
    assert!(matches!(
        allowed.judge(inch(0.012)),
        Ok(MeasureVerdict::Above { .. })
    ));
    // Read at 60 mm, meant at 45: three quarters (geometry).
    let there = at_radius(mm(0.20), mm(60.0), mm(45.0)).expect("radii");
    near(in_mm(there), 0.15, 1e-12, "at its radius");
    // 2·tan 20° = 0.7279, 2·tan 14.5° = 0.5172 (handbooks of gears, from memory).
    for (degrees, factor) in [(20.0, 0.727_9), (14.5, 0.517_2)] {
        let grown = grown_by(mm(0.1), Angle::new::<degree>(degrees)).expect("gears");
        near(in_mm(grown), 0.1 * factor, 5e-6, "apart");
    }
}

/// Two diameters of bore are π of gap. TM 5-3825-229-14&P (S) prints 0.0031 in of gap for 0.0012 in of bore: that
/// answers to 0.001 in (0.025 mm, rounded there to 0.03), and we differ.
#[test]
fn a_ring_in_a_smaller_bore() {
    let lost = |bore: f64| {
        let gap = gap_in(inch(0.020), inch(4.0), inch(4.0 - bore)).expect("a ring");
        0.020 - in_inches(gap)
    };
    near(lost(0.001), 0.003_1, 0.000_05, "a thousandth");
    assert!((lost(0.001_2) - 0.003_1).abs() > 0.000_5);
    // 0.004 in an inch of bore (common practice, no source).
    for (bore, gap) in [(3.0, 0.012), (3.5, 0.014), (4.0, 0.016)] {
        let wanted = gap_for(inch(bore), Ratio::new::<ratio>(0.004)).expect("a bore");
        near(in_inches(wanted), gap, 1e-9, &bore.to_string());
    }
}

/// TM 9-2815-254-24 (S): clearance 0.0007–0.0025 in, 0.0047 at most; walls and bore made up for it.
#[test]
fn shells_leave_a_clearance() {
    let clearance =
        shell::clearance(inch(2.124_5), [inch(0.061_5), inch(0.061_6)], inch(2.0)).expect("sizes");
    near(in_inches(clearance), 0.001_4, 1e-9, "clearance");
    let wall = shell::wall_for(inch(2.124_5), inch(2.0), inch(0.001_6)).expect("sizes");
    near(
        in_inches(wall),
        0.061_45,
        1e-9,
        "wall for the middle of 0.0007 to 0.0025",
    );
}

/// Reckoned apart from this code: at 30 °C with a steel micrometer an 80 mm bore in iron reads
/// 80·(10.5 − 11.5)·1e-6·10 = −0.8 µm, a 79.93 mm piston in aluminium 79.93·(22 − 11.5)·1e-6·10 = +8.4 µm: 0.070
/// read is 0.0792 at 20 °C.
#[test]
fn a_warm_piston_is_carried_to_20_degrees() {
    let read = |size: f64, material| Read {
        size: mm(size),
        material,
    };
    let bore = read(80.0, Material::CastIron);
    let piston = read(79.93, Material::CastAluminium);
    for (celsius, expected) in [(20.0, 0.070), (30.0, 0.079_2)] {
        let at = ThermodynamicTemperature::new::<degree_celsius>(celsius);
        let found = in_bore(bore, mm(80.02), piston, at).expect("sizes");
        near(in_mm(found.least), expected, 5e-5, "least");
        near(in_mm(found.most), expected + 0.02, 5e-5, "most");
        near(in_mm(found.mean), expected + 0.01, 5e-5, "mean");
    }
}

/// "0.002 in in any 6 in", as manuals limit a head's face (from memory): the double in twice the length, and no
/// less than itself in a shorter one. Sizes are refused from 10 m on, as the sentence says.
#[test]
fn a_limit_in_so_much_of_length() {
    let over = |length: f64| limit_over(inch(0.002), inch(6.0), inch(length)).map(in_inches);
    for (length, limit) in [
        (12.0, 0.004),
        (9.0, 0.003),
        (6.0, 0.002),
        (5.98, 0.002),
        (1.0, 0.002),
    ] {
        near(over(length).expect("a length"), limit, 1e-12, "over its length");
    }
    near(over(6.03).expect("a length"), 0.002_01, 1e-12, "a little longer");
    assert_eq!(over(0.0), Err(MeasuringError::Size));
    let long = |length_mm: f64| limit_over(mm(0.05), mm(150.0), mm(length_mm)).err();
    assert_eq!(long(9_999.9), None);
    assert_eq!(long(10_000.0), Some(MeasuringError::Size));
    assert_eq!(
        limit_over(mm(0.05), mm(0.0), mm(300.0)).err(),
        Some(MeasuringError::Base)
    );
    assert_eq!(
        limit_over(mm(-0.05), mm(150.0), mm(300.0)).err(),
        Some(MeasuringError::Limits)
    );
}

/// A course's example of an autocollimator on a base of 100 mm (S): rises of 0, 1.5, 3.5, −1, 0 and 2 µm after the
/// first; brought to both ends the edge lies between +2 and −1 µm: 3 µm.
#[test]
fn straightness_from_its_ends() {
    let heights = [0.0, 0.0, 1.5, 5.0, 4.0, 4.0, 6.0].map(|um| LengthUnit::Micrometre.length(um));
    let found = straightness(&heights).expect("heights");
    near(
        LengthUnit::Micrometre.value_of(found.from_ends),
        3.0,
        1e-9,
        "from its ends",
    );
    // Reckoned by hand: on the line of 1 µm a step through the second place and the sixth, the fourth is 3 µm up.
    near(
        LengthUnit::Micrometre.value_of(found.least_zone),
        3.0,
        1e-9,
        "least zone",
    );
    let step = [0.0, 0.0, 3.0, 3.0].map(|um| LengthUnit::Micrometre.length(um));
    let found = straightness(&step).expect("heights");
    // From its ends: −1 and +1. Closest: the line through the two middle points' corners, 1.5.
    near(
        LengthUnit::Micrometre.value_of(found.from_ends),
        2.0,
        1e-9,
        "a step",
    );
    near(
        LengthUnit::Micrometre.value_of(found.least_zone),
        1.5,
        1e-9,
        "a step, closest",
    );
}
