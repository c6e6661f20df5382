//! Focal numbers on their lines: where the pointer stands, what is hatched, what the ends say.

use halfcase::job::example;
use halfcase::job::figures::Figures;
use halfcase::job::kinds::lift::{self, Hoist, LiftingAnswer};
use halfcase::job::kinds::seat::oven::OvenRun;
use halfcase::job::kinds::{LiftWay, LiftWork, Seat, SeatWay, Work, seat};
use halfcase::trade::cooling::TimeRange;
use halfcase::trade::lift::Grip;
use halfcase::trade::moment::Moment;
use halfcase::trade::quantity::{Mass, MassUnit, TemperatureUnit, Time};
use uom::si::mass::kilogram;
use uom::si::time::second;

fn near(a: f64, b: f64) -> bool {
    (a - b).abs() < 0.006
}

/// From the shop's 20 °C to the limit of 120. At 74 °C 31 µm are loose (see `how.rs`); half of them are used
/// up 15.7 µm lower, 12 K at 1.301 µm a degree: home by 62 °C.
#[test]
fn a_temperature_lies_between_too_cool_and_its_limit() {
    let answer = seat::answer(&Seat::default(), None).expect("it is whole");
    let line = seat::ruler::ruler(&answer, None, Figures::default()).expect("it has ends");
    assert!(
        near(line.at, 0.54) && near(line.hatched.1, 0.42) && line.hatched.0 == 0.0,
        "{line:?}"
    );
    assert_eq!((line.least.as_str(), line.most.as_str()), ("20", "limit 120"));
    assert_eq!(line.words, "74 °C; home by 62 °C, limit 120 °C");
    let fahrenheit = Figures {
        temperature: TemperatureUnit::Fahrenheit,
        mass: MassUnit::Kilogram,
    };
    let line = seat::ruler::ruler(&answer, None, fahrenheit).expect("it has ends");
    assert!(near(line.at, 0.54), "the same place: {line:?}");
    assert_eq!((line.least.as_str(), line.most.as_str()), ("68", "limit 248"));
}

/// 250 °F is 121 °C, 275 °F is 135 °C: the line under the manual's number is in the manual's unit.
#[test]
fn a_manuals_temperature_lies_on_a_line_of_its_own_unit() {
    let inch = example::inch();
    let seat = inch.steps.iter().find_map(|step| match &step.work {
        Work::Seat(seat) => seat::order(seat).map(|_| seat),
        _ => None,
    });
    let seat = seat.expect("its drive gear is heated by the manual");
    let answer = seat::answer(seat, None).expect("it is whole");
    let line = seat::ruler::of_manual(seat, &answer, Figures::default()).expect("a line");
    assert_eq!((line.least.as_str(), line.most.as_str()), ("68", "limit 275"));
    assert!(near(line.at, (250.0 - 68.0) / (275.0 - 68.0)), "{line:?}");
    assert_eq!(
        seat::ruler::of_manual(&Seat::default(), &answer, Figures::default()),
        None
    );
}

#[test]
fn a_force_lies_on_the_presss_own_line_or_over_it() {
    let seat = Seat {
        way: SeatWay::Press,
        ..Seat::default()
    };
    let answer = seat::answer(&seat, None).expect("it is whole");
    assert_eq!(
        seat::ruler::ruler(&answer, None, Figures::default()),
        None,
        "a press not told has no line"
    );
    let roomy = seat::ruler::ruler(&answer, Some(1_000.0), Figures::default()).expect("a line");
    assert!(roomy.at < 0.5 && roomy.most == "press 1000", "{roomy:?}");
    assert_eq!(roomy.hatched, (1.0, 1.0), "nothing of it is over the press");
    // 1000 kN is 224 809 lbf (NIST SP 811: 1 lbf is 4.448 222 N), said in three figures.
    let pounds = Figures {
        temperature: TemperatureUnit::Celsius,
        mass: MassUnit::Pound,
    };
    let line = seat::ruler::ruler(&answer, Some(1_000.0), pounds).expect("a line");
    assert_eq!(line.most, "press 225000");
    assert!(
        line.words.ends_with("of the press’s 225000 lbf"),
        "{}",
        line.words
    );
    let takes: f64 = line
        .words
        .split(' ')
        .nth(2)
        .and_then(|it| it.parse().ok())
        .expect("a number");
    assert!((takes / 225_000.0 - roomy.at).abs() < 0.01, "{}", line.words);
    let weak = seat::ruler::ruler(&answer, Some(1.0), Figures::default()).expect("a line");
    assert_eq!((weak.at, weak.hatched.1), (1.0, 1.0));
    assert!(weak.hatched.0 > 0.0 && weak.hatched.0 < 1.0, "{weak:?}");
}

fn hands(mass_kg: f64) -> LiftWork {
    LiftWork {
        mass_kg,
        way: LiftWay::Hands {
            reach_cm: 25.0,
            from_cm: 75.0,
            to_cm: 75.0,
            turn_deg: 0.0,
            grip: Grip::Good,
        },
        ..LiftWork::blank()
    }
}

/// In the best of places one person's limit is the equation's 23 kg (revised NIOSH lifting equation, 1994).
#[test]
fn a_load_lies_against_what_may_carry_it() {
    let of = |work: &LiftWork, hoist: Hoist<'_>| {
        let answer = lift::answer(work, hoist).expect("it can be reckoned");
        lift::ruler::ruler(work, &answer, MassUnit::Kilogram)
    };
    let light = of(&hands(11.5), Hoist::default()).expect("a line");
    assert!(near(light.at, 0.5) && near(light.hatched.0, 1.0), "{light:?}");
    assert_eq!(light.words, "load 11.5 of 23.0 kg for one person");
    let heavy = of(&hands(46.0), Hoist::default()).expect("a line");
    assert!(near(heavy.at, 1.0) && near(heavy.hatched.0, 0.5), "{heavy:?}");
    let slung = LiftWork {
        mass_kg: 48.0,
        way: LiftWay::Sling {
            legs: 2,
            angle_deg: 60.0,
        },
        ..LiftWork::blank()
    };
    assert_eq!(of(&slung, Hoist::default()), None, "no rating, no line");
    let hoist = Hoist {
        rating: Some(Mass::new::<kilogram>(240.0)),
        ..Hoist::default()
    };
    let line = of(&slung, hoist).expect("a line");
    assert!(near(line.at, 0.2) && line.most == "240", "{line:?}");
    assert!(matches!(
        lift::answer(&slung, hoist),
        Ok(LiftingAnswer::Sling { .. })
    ));
}

#[test]
fn the_way_from_the_oven_lies_on_all_of_its_time() {
    let seconds = Time::new::<second>;
    let window = TimeRange {
        shortest: seconds(150.0),
        longest: seconds(200.0),
    };
    let run = OvenRun::begun(Moment(1_000_000), None, window);
    let line = run.ruler(Moment(1_000_000 + 50_000)).expect("a line");
    assert!(
        near(line.at, 0.25) && near(line.hatched.0, 0.75) && line.hatched.1 == 1.0,
        "{line:?}"
    );
    assert_eq!((line.least.as_str(), line.most.as_str()), ("0", "3:20"));
    assert_eq!(line.words, "0:50 gone of 3:20");
    assert_eq!(
        run.ruler(Moment(9_000_000)).map(|line| line.at),
        Some(1.0),
        "late is at its end"
    );
}
