//! Measurements of a bottom end: what must hold for any readings.

use halfcase::trade::material::Material;
use halfcase::trade::measuring::backlash::{at_radius, lash};
use halfcase::trade::measuring::engagement::{Hole, engaged};
use halfcase::trade::measuring::flatness::{Bridge, bridge, flatness, limit_over, straightness};
use halfcase::trade::measuring::float::{Wish, float_left, from_box, pack_for};
use halfcase::trade::measuring::insert::{Tap, hole};
use halfcase::trade::measuring::piston::{Read, clearance};
use halfcase::trade::measuring::ring::{gap_in, side_gap, to_file};
use halfcase::trade::measuring::runout::{between, limit_at, off_line, round_one_turn};
use halfcase::trade::measuring::shell;
use halfcase::trade::measuring::spring::{Coil, LoadRead, load_at, tested};
use halfcase::trade::measuring::stretch::{next, stretch};
use halfcase::trade::measuring::turning::{Figure, by_cord, of_bearings, pack_change};
use halfcase::trade::measuring::{MeasuringError, Standing, stands};
use halfcase::trade::quantity::{
    Angle, Force, Length, LengthUnit, Pressure, ThermodynamicTemperature, Torque, TorqueUnit,
};
use halfcase::trade::selection::{Pack, Size, Thicker};
use halfcase::trade::strip::{FemaleMaterial, insert_strip_load, strip_load};
use halfcase::trade::thread::Thread;
use proptest::prelude::*;
use std::f64::consts::PI;
use uom::si::angle::{degree, radian};
use uom::si::force::newton;
use uom::si::pressure::gigapascal;
use uom::si::thermodynamic_temperature::degree_celsius;

fn mm(value: f64) -> Length {
    LengthUnit::Millimetre.length(value)
}

fn in_mm(length: Length) -> f64 {
    LengthUnit::Millimetre.value_of(length)
}

fn nm(value: f64) -> Torque {
    TorqueUnit::NewtonMetre.torque(value)
}

fn near(one: f64, other: f64) -> bool {
    (one - other).abs() <= 1e-9 * (1.0 + one.abs())
}

fn bolts() -> Vec<Thread> {
    Thread::all().filter(|thread| !thread.is_pipe()).collect()
}

fn heights() -> impl Strategy<Value = Vec<f64>> {
    prop::collection::vec(-2.0..2.0_f64, 3..12)
}

fn lengths(values: &[f64]) -> Vec<Length> {
    values.iter().map(|value| mm(*value)).collect()
}

proptest! {
    /// The pack's middle leaves the middle of the float; whatever the box gives leaves one within its limits.
    #[test]
    fn a_pack_leaves_the_float_it_was_chosen_for(
        gap in 0.5..3.0_f64,
        least in 0.0..0.3_f64,
        wide in 0.0..0.2_f64,
        sizes in prop::collection::vec((5_u32..80, 0_u32..4), 1..5),
        squeezed in any::<bool>(),
    ) {
        let (low, high) = (mm(least), mm(least + wide));
        let wish = if squeezed { Wish::Preload(low, high) } else { Wish::Float(low, high) };
        let wanted = pack_for(&[mm(gap)], wish).expect("room for it");
        prop_assert!(wanted.least <= wanted.aim && wanted.aim <= wanted.most);
        let sign = if squeezed { -1.0 } else { 1.0 };
        let left = in_mm(float_left(mm(gap), wanted.aim)) * sign;
        prop_assert!(near(left, least + wide / 2.0), "{left}");
        let sizes: Vec<Size> = sizes
            .into_iter()
            .map(|(hundredths, count)| Size { thick: f64::from(hundredths) / 100.0, count, between: false })
            .collect();
        if let Pack::Hit(found) = from_box(&sizes, wanted) {
            let left = in_mm(float_left(mm(gap), mm(found.sum))) * sign;
            prop_assert!(left >= least - 2e-6 && left <= least + wide + 2e-6, "{left}");
        }
    }

    /// A shaft that only lies off its centre is found out, wherever the readings begin and whatever the dial's zero.
    #[test]
    fn an_offset_is_found_out(
        offset in 0.001..1.0_f64,
        turned in 0.0..360.0_f64,
        zero in -1.0..1.0_f64,
        steps in 3_usize..25,
    ) {
        let turn = |at: usize| 2.0 * PI * at as f64 / steps as f64;
        let readings: Vec<Length> = (0..steps)
            .map(|at| mm(zero + offset * (turn(at) - turned.to_radians()).cos()))
            .collect();
        let found = round_one_turn(&readings).expect("readings");
        prop_assert!((in_mm(found.offset) - offset).abs() < 1e-9);
        let off = (found.high_at.get::<degree>() - turned).rem_euclid(360.0);
        prop_assert!(!(1e-6..=360.0 - 1e-6).contains(&off), "{off}");
        prop_assert!(in_mm(found.total) <= 2.0 * offset + 1e-9);
        let rest = found.out_of_round.map_or(0.0, in_mm);
        prop_assert!(rest < 1e-9);
        prop_assert_eq!(found.out_of_round.is_none(), steps == 3);
    }

    /// Two run-outs lie between their difference and their sum apart, whichever is named first.
    #[test]
    fn neighbours_lie_between_difference_and_sum(
        one in 0.0..1.0_f64, other in 0.0..1.0_f64, at in 0.0..7.0_f64, at_other in 0.0..7.0_f64,
    ) {
        let a = (mm(one), Angle::new::<radian>(at));
        let b = (mm(other), Angle::new::<radian>(at_other));
        let apart = in_mm(between(a, b));
        prop_assert!(near(apart, in_mm(between(b, a))));
        prop_assert!(apart >= (one - other).abs() - 1e-9 && apart <= one + other + 1e-9);
    }

    /// However a shaft lies in what turns it, its own bend is read, whole, at any place within or outside the
    /// journals; and a straight shaft has none.
    #[test]
    fn a_bend_knows_nothing_of_the_centres(
        bend in 0.0..1.0_f64, bend_at in 0.0..6.2_f64, first in (0.0..1.0_f64, 0.0..6.2_f64),
        second in (0.0..1.0_f64, 0.0..6.2_f64), share in -1.0..2.0_f64, span in 10.0..900.0_f64,
        oval in 0.0..0.2_f64,
    ) {
        let point = |(far, turned): (f64, f64)| (far * turned.cos(), far * turned.sin());
        let (own, one, two) = (point((bend, bend_at)), point(first), point(second));
        let line = |one: f64, two: f64| one + (two - one) * share;
        let (x, y) = (own.0 + line(one.0, two.0), own.1 + line(one.1, two.1));
        let swing = |x: f64, y: f64| (mm(x.hypot(y)), Angle::new::<radian>(y.atan2(x)));
        let journals = (swing(one.0, one.1), swing(two.0, two.1));
        let read: Vec<Length> = (0..8)
            .map(|place| f64::from(place) * std::f64::consts::FRAC_PI_4)
            .map(|turned| mm((x * turned.cos() + y * turned.sin()) / 2.0 + oval * (2.0 * turned).cos()))
            .collect();
        let left = off_line(&read, mm(share * span), journals, mm(span)).expect("a shaft");
        let off = (2.0 * left.offset, left.high_at);
        prop_assert!((in_mm(off.0) - bend).abs() < 1e-9, "{off:?}");
        // What is not round is left in, and judged.
        prop_assert!(left.out_of_round.is_some_and(|out| (in_mm(out) - 2.0 * oval).abs() < 1e-9), "{left:?}");
        prop_assert!(left.most() >= left.total && in_mm(left.most()) >= bend - 1e-9);
        if bend > 1e-3 {
            let turned = (off.1.get::<radian>() - bend_at).rem_euclid(2.0 * std::f64::consts::PI);
            prop_assert!(!(1e-6..2.0 * std::f64::consts::PI - 1e-6).contains(&turned), "{turned}");
        }
    }

    /// Straightness does not know how the edge lay or which way up it was read; closest is never more than from the
    /// ends, and no other slope is closer.
    #[test]
    fn straightness_is_the_edges_own(values in heights(), slope in -1.0..1.0_f64, lift in -2.0..2.0_f64) {
        let found = straightness(&lengths(&values)).expect("heights");
        prop_assert!(found.least_zone <= found.from_ends);
        let tilted: Vec<f64> = values.iter().enumerate().map(|(at, one)| one + lift + slope * at as f64).collect();
        let upside_down: Vec<f64> = values.iter().map(|one| -one).collect();
        for other in [tilted, upside_down] {
            let other = straightness(&lengths(&other)).expect("heights");
            prop_assert!(near(in_mm(other.from_ends), in_mm(found.from_ends)));
            prop_assert!(near(in_mm(other.least_zone), in_mm(found.least_zone)));
        }
        let left: Vec<f64> = values.iter().enumerate().map(|(at, one)| one - slope * at as f64).collect();
        let zone = left.iter().fold(f64::MIN, |a, b| a.max(*b)) - left.iter().fold(f64::MAX, |a, b| a.min(*b));
        prop_assert!(in_mm(found.least_zone) <= zone + 1e-9);
    }

    /// Worst, least, mean: in order, whatever the order of the readings.
    #[test]
    fn the_order_of_readings_does_not_matter(mut values in prop::collection::vec(0.0..2.0_f64, 2..9)) {
        let found = lash(&lengths(&values)).expect("readings");
        prop_assert!(in_mm(found.least) <= in_mm(found.mean) + 1e-12 && in_mm(found.mean) <= in_mm(found.most) + 1e-12);
        prop_assert!(near(in_mm(found.spread), in_mm(found.most - found.least)));
        let flat = flatness(&lengths(&values)).expect("readings");
        prop_assert_eq!(flat.worst, found.most);
        prop_assert!(near(values[flat.line], in_mm(flat.worst)));
        values.reverse();
        let other = lash(&lengths(&values)).expect("readings");
        prop_assert!(near(in_mm(other.mean), in_mm(found.mean)) && other.spread == found.spread);
    }

    /// There and back: another bore, another radius, another place.
    #[test]
    fn what_is_carried_there_comes_back(
        gap in 0.5..2.0_f64, bore in 40.0..120.0_f64, wider in -0.1..0.3_f64, radius in 10.0..200.0_f64,
    ) {
        let there = gap_in(mm(gap), mm(bore), mm(bore + wider)).expect("a ring");
        let back = gap_in(there, mm(bore + wider), mm(bore)).expect("a ring");
        prop_assert!(near(in_mm(back), gap));
        prop_assert_eq!(there > mm(gap), wider > 0.0);
        let there = at_radius(mm(gap), mm(radius), mm(bore)).expect("radii");
        let back = at_radius(there, mm(bore), mm(radius)).expect("radii");
        prop_assert!(near(in_mm(back), gap));
        let filed = in_mm(to_file(mm(gap), mm(1.0)));
        prop_assert!(filed >= 0.0 && gap + filed >= 1.0 - 1e-12);
        let twice = limit_at(mm(0.05), mm(25.0), mm(2.0 * radius)).expect("a limit");
        let once = limit_at(mm(0.05), mm(25.0), mm(radius)).expect("a limit");
        prop_assert!(near(in_mm(twice), 2.0 * in_mm(once)));
        prop_assert!(limit_over(mm(0.05), mm(100.0), mm(radius)).expect("a limit") >= mm(0.05));
    }

    /// A size is the sum of what lies in it.
    #[test]
    fn clearances_add_up(journal in 20.0..80.0_f64, wall in 1.0..4.0_f64, gap in 0.0..0.2_f64, at in -20.0..80.0_f64) {
        let housing = mm(journal + 2.0 * wall + gap);
        let found = shell::clearance(housing, [mm(wall), mm(wall)], mm(journal)).expect("sizes");
        prop_assert!(near(in_mm(found), gap));
        let back = shell::wall_for(housing, mm(journal), mm(gap)).expect("sizes");
        prop_assert!(near(in_mm(back), wall));
        prop_assert!(near(in_mm(side_gap(mm(wall + gap), mm(wall)).expect("sizes")), gap));
        let read = |size: f64, material| Read { size: mm(size), material };
        let bore = read(journal + gap, Material::CastIron);
        let warm = ThermodynamicTemperature::new::<degree_celsius>(at);
        let found = clearance(bore, mm(journal + gap + 0.02), read(journal, Material::CastAluminium), warm).expect("sizes");
        prop_assert!(found.least <= found.mean && found.mean <= found.most);
        // A warm aluminium piston reads larger than it is: at 20 °C there is more room.
        prop_assert_eq!(in_mm(found.least) > gap + 1e-12, at > 20.0);
    }

    /// Rates go with the fourth power of the wire, the third of the coil, the number of coils.
    #[test]
    fn springs_go_by_their_powers(wire in 1.0..6.0_f64, index in 4.0..12.0_f64, working in 2.0..20.0_f64) {
        let coil = |wire: f64, mean: f64, working: f64| Coil { wire: mm(wire), mean: mm(mean), working };
        let g = Pressure::new::<gigapascal>(79.3);
        let rate = |c: Coil| c.rate(g).expect("a spring");
        let mean = wire * index * 2.0;
        let one = rate(coil(wire, mean, working));
        prop_assert!(near((rate(coil(2.0 * wire, mean, working)) / one).value, 16.0));
        prop_assert!(near((rate(coil(wire, 2.0 * mean, working)) / one).value, 0.125));
        prop_assert!(near((rate(coil(wire, mean, 2.0 * working)) / one).value, 0.5));
        let free = mm(200.0);
        let read = |height: f64| LoadRead {
            load: load_at(one, free, mm(height)).expect("a height"),
            height: mm(height),
        };
        let found = tested(read(150.0), read(120.0)).expect("loads");
        prop_assert!(near((found.rate / one).value, 1.0) && (in_mm(found.free) - 200.0).abs() < 1e-6);
    }

    /// Torque of a cord less the seal's and the seal's are the whole; the change brings it to the middle.
    #[test]
    fn turning_torque_adds_up(
        pull in 0.1..200.0_f64, radius in 5.0..300.0_f64, share in 0.0..1.0_f64, least in 0.1..3.0_f64,
        wide in 0.0..2.0_f64, per in 0.01..0.2_f64, raises in any::<bool>(),
    ) {
        let read = by_cord(Force::new::<newton>(pull), mm(radius)).expect("a pull");
        let seal = read * share;
        let torque = of_bearings(read, seal).expect("a seal");
        prop_assert!(near(TorqueUnit::NewtonMetre.value_of(torque + seal), pull * radius / 1000.0));
        let thicker = if raises { Thicker::Raises } else { Thicker::Lowers };
        let figure = Figure { pack: mm(per), torque: nm(1.0) };
        let change = pack_change(torque, (nm(least), nm(least + wide)), thicker, figure).expect("a change");
        let sign = if raises { 1.0 } else { -1.0 };
        let after = TorqueUnit::NewtonMetre.value_of(torque) + sign * change.by / per;
        prop_assert!((after - least - wide / 2.0).abs() < 1e-3, "{after}");
    }

    /// More length is more thread in mesh until the hole ends; turns, diameters and what is left go with it.
    #[test]
    fn engagement_goes_with_the_bolt(at in any::<prop::sample::Index>(), stack in 1.0..60.0_f64, reach in 0.5..80.0_f64, depth in 5.0..60.0_f64) {
        let bolts = bolts();
        let thread = bolts[at.index(bolts.len())];
        let into = |threaded| Hole { material: FemaleMaterial::CastAluminium, threaded, through: false };
        let found = engaged(mm(stack + reach), mm(stack), thread, into(None)).expect("a bolt");
        let longer = engaged(mm(stack + reach + 1.0), mm(stack), thread, into(None)).expect("a bolt");
        prop_assert!(longer.length >= found.length && found.length < mm(reach));
        prop_assert!((found.turns * in_mm(thread.pitch()) - in_mm(found.length)).abs() < 1e-9);
        prop_assert_eq!(found.enough, in_mm(found.length) >= in_mm(found.wanted) * (1.0 - 1e-9));
        let blind = engaged(mm(stack + reach), mm(stack), thread, into(Some(mm(depth)))).expect("a bolt");
        prop_assert!(blind.length <= found.length && blind.length <= mm(depth));
        prop_assert!(near(in_mm(blind.left.expect("a blind hole")), depth - reach));
        // Tapped through to the same depth, no less is in mesh and nothing bottoms.
        let through = Hole { through: true, ..into(Some(mm(depth))) };
        let through = engaged(mm(stack + reach), mm(stack), thread, through).expect("a bolt");
        prop_assert!(through.length == blind.length && through.left.is_none());
        prop_assert_eq!(through.all_of_hole, through.length >= mm(depth));
        // Blind, no longer bolt holds better once the point is at the bottom.
        prop_assert_eq!(blind.all_of_hole, mm(stack + reach) - mm(stack) >= mm(depth));
    }

    /// Nothing that can be typed or read from a file brings it down; what is no number is refused.
    #[test]
    fn any_number_at_all_is_taken_or_refused(values in prop::collection::vec(any::<f64>(), 8), count in 0_usize..8) {
        let all = lengths(&values);
        let some = &all[..count];
        let _ = (round_one_turn(some), flatness(some), straightness(some), lash(some));
        let _ = pack_for(some, Wish::Float(all[0], all[1]));
        let _ = pack_for(some, Wish::Preload(all[0], all[1]));
        let _ = (gap_in(all[0], all[1], all[2]), shell::clearance(all[0], [all[1], all[2]], all[3]));
        let _ = Coil { wire: all[0], mean: all[1], working: values[2] }.steel_rate();
        let _ = (stretch(all[0], all[1]), next(all[0], Some(all[1]), Some(all[2])));
        let _ = (limit_at(all[0], all[1], all[2]), limit_over(all[0], all[1], all[2]));
        let _ = by_cord(Force::new::<newton>(values[0]), all[1]);
        let nan = mm(f64::NAN);
        prop_assert!(round_one_turn(&[nan, all[0], all[1]]).is_err());
        prop_assert!(straightness(&[nan, nan, nan]).is_err() && lash(&[nan, nan]).is_err());
        prop_assert_eq!(stands(f64::NAN, Some(0.0), None), Err(MeasuringError::Reading));
    }
}

#[test]
fn limits_are_within_and_the_wrong_way_round_is_refused() {
    assert_eq!(stands(1.0, Some(1.0), Some(2.0)), Ok(Standing::Within));
    assert_eq!(stands(2.5, Some(1.0), Some(2.0)), Ok(Standing::Above(0.5)));
    assert_eq!(stands(0.5, Some(1.0), None), Ok(Standing::Below(0.5)));
    for (least, most) in [
        (None, None),
        (Some(2.0), Some(1.0)),
        (Some(f64::NAN), None),
        (None, Some(f64::INFINITY)),
    ] {
        assert_eq!(
            stands(1.0, least, most),
            Err(MeasuringError::Limits),
            "{least:?} {most:?}"
        );
    }
}

/// The same limits as the compound rules have: 0.25 mm and 3 mm.
#[test]
fn what_bridges_a_gap() {
    for (gap, bridged) in [
        (0.0, Bridge::Anaerobic),
        (0.25, Bridge::Anaerobic),
        (0.251, Bridge::Silicone),
        (3.0, Bridge::Silicone),
        (3.01, Bridge::Nothing),
    ] {
        assert_eq!(bridge(mm(gap)), bridged, "{gap}");
    }
}

/// The hole for an insert is larger in every way, and the part strips later.
#[test]
fn an_insert_holds_more_than_its_bolt() {
    for thread in bolts() {
        let insert = 1.5 * thread.major();
        let found = hole(thread, insert, Tap::Bottoming).expect("an insert");
        let sizes = [
            thread.major(),
            found.drill_least,
            found.drill_most,
            found.pitch_diameter,
            found.major,
        ];
        assert!(sizes.windows(2).all(|two| two[0] < two[1]), "{thread}: {sizes:?}");
        assert!(found.tapped < found.drilled, "{thread}");
        let plug = hole(thread, insert, Tap::Plug).expect("an insert");
        assert!(plug.drilled > found.drilled, "{thread}");
        for material in FemaleMaterial::ALL {
            let (weak, strong) = strip_load(thread, material, insert);
            let (weak_in, strong_in) = insert_strip_load(thread, 1.299, material, insert);
            assert!(weak < weak_in && strong < strong_in, "{thread}");
        }
    }
    let pipe = Thread::all().find(Thread::is_pipe).expect("a pipe thread");
    assert_eq!(hole(pipe, mm(10.0), Tap::Plug), Err(MeasuringError::Pipe));
}
