//! Press fits as the screen words them, each figure against `trade` itself or a sum done by hand.

use halfcase::job::field::{Kept, Number};
use halfcase::job::kinds::seat::depth::{judge, read_words, target_words};
use halfcase::job::kinds::seat::fields::{DEPTHS, LIMITS, SHAPE, SIZES, TOOLS};
use halfcase::job::kinds::seat::oven::{OvenRun, OvenState};
use halfcase::job::kinds::seat::source::{self, Kind, Side};
use halfcase::job::kinds::seat::words::{headline, passed_over, rows, summary, tool_rows, warnings};
use halfcase::job::kinds::seat::{SeatAnswer, answer, press_fit, request};
use halfcase::job::kinds::{Seat, SeatDepth, SeatWay, Work};
use halfcase::job::progress::{Reading, StepProgress};
use halfcase::job::reading::{Verdict, What};
use halfcase::job::readings::missing;
use halfcase::job::sheet::{Step, StepId};
use halfcase::trade::cooling::TimeRange;
use halfcase::trade::fit::interference;
use halfcase::trade::heat_plan::{CoolMeans, HoleIn, PlanKind, plan};
use halfcase::trade::moment::Moment;
use halfcase::trade::quantity::{LengthUnit, MassUnit, Time};
use uom::si::thermodynamic_temperature::degree_celsius;
use uom::si::time::second;

fn row(rows: &[(&'static str, String)], name: &str) -> String {
    rows.iter()
        .find(|(row, _)| *row == name)
        .map_or(String::new(), |(_, words)| words.clone())
}

fn worked(seat: &Seat) -> SeatAnswer {
    answer(seat, None).unwrap()
}

/// 62 N7 is −39 to −9 µm (ISO 286-2), a normal bearing of 62 mm 0 to −13 µm (ISO 492):
/// from 4 µm loose to 39 µm tight. Slip 31 µm: (39 + 31) µm / 62 mm / 21e-6 = 53.8 K over 20 °C.
#[test]
fn a_62_mm_bearing_into_n7_aluminium_goes_in_by_heat() {
    let seat = Seat::default();
    let answer = worked(&seat);
    let head = headline(&answer);
    assert_eq!(
        (head.says, head.number.as_str(), head.unit, head.also.as_str()),
        ("warm the housing evenly to", "74", "°C", "")
    );
    let rows = rows(&answer, Some(100.0));
    assert_eq!(row(&rows, "fit at 20 °C"), "4 µm loose to 39 µm tight");
    assert!(row(&rows, "my press").ends_with("% of its 100 kN"));
    assert_eq!(passed_over(&answer), []);
}

/// In a case that may not exceed 60 °C: the freezer alone leaves 39 − 62 000·11e-6·(38 − 0.000 85·38²)
/// = 14 µm tight; with it 34.5 K on the case are enough.
#[test]
fn the_same_in_a_case_that_may_not_exceed_60_falls_to_freezer_plus_heat() {
    let seat = Seat {
        housing_limit_c: 60.0,
        cool: Some(CoolMeans::Freezer),
        ..Seat::default()
    };
    let answer = worked(&seat);
    assert_eq!(answer.plan.which, PlanKind::HeatAndCool);
    let head = headline(&answer);
    assert_eq!(
        (head.number.as_str(), head.also.as_str()),
        ("55", "and cool the part to −18 °C")
    );
    let passed = passed_over(&answer);
    assert_eq!(
        row(&passed, "heat the housing"),
        "It takes 74 °C; the housing's limit is 60 °C."
    );
    assert!(row(&passed, "cool the part").contains("0.014 mm of interference"));
    // Without a freezer it falls to the press, or to no way at all.
    let pressed = Seat {
        cool: None,
        ..seat.clone()
    };
    assert_eq!(worked(&pressed).plan.which, PlanKind::PressCold);
    let none = Seat {
        no_press: true,
        ..pressed
    };
    assert_eq!(headline(&worked(&none)).says, "no way within these limits");
}

#[test]
fn the_answer_is_the_trades() {
    let seats = [
        Seat::default(),
        Seat {
            way: SeatWay::Press,
            ..Seat::default()
        },
        Seat {
            housing_limit_c: 60.0,
            cool: Some(CoolMeans::Freezer),
            ..Seat::default()
        },
        gear_on_shaft(),
    ];
    for seat in seats {
        let answer = worked(&seat);
        let fit = interference(&seat.hole, &seat.shaft).unwrap();
        assert_eq!(answer.interference, fit);
        assert_eq!(answer.plan, plan(&request(&seat, fit, answer.room)).unwrap());
        assert_eq!(answer.force, Some(press_fit(&seat).force(&fit).unwrap()));
        assert_eq!(answer.stress, Some(press_fit(&seat).stress(&fit).unwrap()));
        // The drawing's tightest pair leaves just the plan's clearance, cold just the most interference.
        let sizes = answer.sizes;
        let micro = |length| LengthUnit::Micrometre.value_of(length);
        assert!((micro(sizes.part_cold - sizes.hole_cold) - micro(fit.most)).abs() < 1e-6);
        let left = micro(sizes.hole_joining - sizes.part_joining);
        assert!((left - micro(answer.plan.clearance_at_fit)).abs() < 0.1, "{left}");
    }
}

/// A 50 H7/p6 gear of steel onto its shaft: 1 to 42 µm tight (ISO 286-2: H7 0 to +25, p6 +26 to +42).
fn gear_on_shaft() -> Seat {
    let mut seat = Seat {
        hole_in: HoleIn::Part,
        part_inside_mm: 0.0,
        boss_outside_mm: 90.0,
        ..Seat::default()
    };
    seat.housing = halfcase::trade::material::Material::Steel;
    seat.part_material = halfcase::trade::material::Material::Steel;
    seat.part_limit_c = 150.0;
    seat.housing_limit_c = 150.0;
    source::set_code(&mut seat, "50 H7/p6").unwrap();
    seat
}

#[test]
fn a_gear_onto_its_shaft_is_heated_itself() {
    let seat = gear_on_shaft();
    let answer = worked(&seat);
    assert_eq!(row(&rows(&answer, None), "fit at 20 °C"), "1 to 42 µm tight");
    let head = headline(&answer);
    // (42 + 25) µm / 50 mm / 11e-6 = 121.8 K over 20 °C.
    assert_eq!(
        (head.says, head.number.as_str()),
        ("warm the part evenly to", "142")
    );
    assert!(row(&tool_rows(&seat, &answer), "push with").starts_with("inside 50.5 or more"));
}

/// The ring's inside plus half a millimetre, the bore less half a millimetre, the shoulder plus half.
#[test]
fn tools_are_named_by_the_caliper() {
    let seat = Seat {
        face_mm: Some(53.2),
        shoulder_mm: Some(56.0),
        ..Seat::default()
    };
    let answer = worked(&seat);
    let rows = tool_rows(&seat, &answer);
    assert_eq!(
        row(&rows, "push with"),
        "inside 53.7 or more, outside 61.5 mm or less"
    );
    assert_eq!(
        row(&rows, "stand it on"),
        "inside 56.5 or more, outside 84.0 mm or less"
    );
    let solid = Seat {
        part_inside_mm: 0.0,
        ..Seat::default()
    };
    let rows = tool_rows(&solid, &worked(&solid));
    assert_eq!(row(&rows, "push with"), "outside 61.5 mm or less, solid or tube");
}

#[test]
fn a_thin_boss_and_a_small_press_are_said() {
    let mut seat = Seat {
        boss_outside_mm: 66.0,
        way: SeatWay::Press,
        ..Seat::default()
    };
    source::set_code(&mut seat, "62 U7").unwrap();
    let answer = worked(&seat);
    let lines = warnings(&answer, Some(0.1));
    assert!(
        lines
            .iter()
            .any(|line| line.contains("Your press may not give that")),
        "{lines:?}"
    );
    // A thin ring takes nearly all of the strain: 71 GPa · 0.106 / 62 = 121 MPa over the 90 of a weak alloy.
    let share = answer.stress.unwrap().housing_share.value;
    assert!((1.0..1.35).contains(&share), "{share}");
    assert!(lines.iter().any(|line| line.contains("too thin")), "{lines:?}");
    assert_eq!(warnings(&worked(&Seat::default()), None), [] as [&str; 0]);
}

/// Bore 17.50 mm deep, ring 16 mm wide, read 0.50 mm below the face: 1.00 mm stays open behind.
#[test]
fn the_gap_behind_is_what_the_depth_leaves() {
    let depth = SeatDepth {
        least_mm: 0.4,
        most_mm: 0.6,
        bore_mm: Some(17.5),
        gap_mm: Some(0.8),
    };
    let good = judge(&depth, 16.0, 0.5);
    assert!(good.depth_holds && good.gap_holds);
    assert!((good.gap_mm.unwrap() - 1.0).abs() < 1e-9);
    let deep = judge(&depth, 16.0, 0.8);
    assert!(!deep.depth_holds && !deep.gap_holds);
    // Both ends count, whatever the last bits say.
    assert!(judge(&depth, 16.0, 0.4).depth_holds && judge(&depth, 16.0, 0.6).depth_holds);
    assert!(!judge(&depth, 16.0, 0.39).depth_holds);
    assert_eq!(
        target_words(&depth),
        "0.40 to 0.60 mm below the face, at least 0.80 mm open behind"
    );
    let proud = SeatDepth {
        least_mm: -1.1,
        most_mm: -0.9,
        ..SeatDepth::default()
    };
    assert_eq!(target_words(&proud), "0.90 to 1.10 mm proud of the face");
    assert!(judge(&proud, 16.0, -1.0).depth_holds && !judge(&proud, 16.0, 1.0).depth_holds);
}

/// Pressing on is no help to a part that sits too deep already.
#[test]
fn only_what_sits_too_high_is_pressed_on() {
    let depth = SeatDepth {
        least_mm: 0.9,
        most_mm: 1.1,
        ..SeatDepth::default()
    };
    let said = |read_mm| read_words(&judge(&depth, 14.0, read_mm));
    assert!(said(0.5).contains("press on"), "{}", said(0.5));
    assert!(!said(1.5).contains("press on"), "{}", said(1.5));
    assert!(said(1.5).contains("Too deep"));
    assert_eq!(said(1.0), "Depth within its limits.");
}

#[test]
fn a_stated_depth_must_be_read_and_the_gap_with_it() {
    let mut seat = Seat::default();
    let mut progress = StepProgress::default();
    let asks = |seat: &Seat, progress: &StepProgress| {
        let step = Step::new(StepId(1), "Bearing", Work::Seat(seat.clone()));
        missing(&step, progress)
    };
    assert_eq!(asks(&seat, &progress), None);
    seat.depth = Some(SeatDepth {
        least_mm: 0.9,
        most_mm: 1.1,
        bore_mm: Some(17.5),
        gap_mm: Some(0.3),
    });
    assert_eq!(asks(&seat, &progress), Some(What::Depth));
    let reading = |what, value| Reading {
        what,
        value,
        unit: "mm".to_owned(),
        verdict: Verdict::Within,
        tool: String::new(),
        at_c: None,
        decimals: None,
    };
    progress.readings.push(reading(What::Depth, 1.02));
    assert_eq!(asks(&seat, &progress), Some(What::Gap));
    progress.readings.push(reading(What::Gap, 0.48));
    assert_eq!(asks(&seat, &progress), None);
    assert_eq!(
        summary(&worked(&seat)),
        "warm the housing evenly to 74 °C; 4 µm loose to 39 µm tight"
    );
}

#[test]
fn the_countdown_is_worked_out_from_the_instant_it_began() {
    let seconds = |s: f64| Time::new::<second>(s);
    let begun = Moment(1_780_300_800_000);
    let run = OvenRun::begun(
        begun,
        Some(StepId(8)),
        TimeRange {
            shortest: seconds(125.0),
            longest: seconds(187.0),
        },
    );
    let after = |s: f64| run.state(begun.plus(seconds(s)));
    assert_eq!(after(0.0), OvenState::Open(seconds(125.0)));
    assert_eq!(after(65.0), OvenState::Open(seconds(60.0)));
    assert_eq!(after(125.0), OvenState::Doubtful(seconds(62.0)));
    assert_eq!(after(190.0), OvenState::Shut(seconds(3.0)));
    // A clock set back gives nothing.
    assert_eq!(after(-900.0), OvenState::Open(seconds(125.0)));
    let text = serde_json::to_string(&run).unwrap();
    assert_eq!(serde_json::from_str::<OvenRun>(&text).unwrap(), run);
}

#[test]
fn sizes_are_chosen_by_touch() {
    let mut seat = Seat {
        part_inside_mm: 44.0,
        ..Seat::default()
    };
    source::set_code(&mut seat, "52 H7/p6").unwrap();
    assert_eq!(source::nominal_mm(&seat), Some(52.0));
    assert_eq!(source::class(&seat, Side::Hole).unwrap().to_string(), "H7");
    assert_eq!(source::class(&seat, Side::Shaft).unwrap().to_string(), "p6");
    // What the code leaves out stays.
    source::set_code(&mut seat, "K6").unwrap();
    assert_eq!(source::nominal_mm(&seat), Some(52.0));
    assert_eq!(source::class(&seat, Side::Shaft).unwrap().to_string(), "p6");
    let refused = source::set_code(&mut seat, "52 Q7").unwrap_err();
    assert!(refused.to_string().contains("no tolerance class"), "{refused}");

    for kind in Kind::ALL {
        for side in [Side::Hole, Side::Shaft] {
            source::set_kind(&mut seat, side, kind);
            assert_eq!(Kind::of(source::of(&seat, side)), kind);
        }
    }
    source::set_reading(&mut seat, Side::Hole, 51.987);
    source::set_reading(&mut seat, Side::Shaft, 52.01);
    source::set_read_at(&mut seat, Side::Hole, 26.0);
    assert_eq!(source::read_at_c(&seat, Side::Hole), Some(26.0));
    // Aluminium read warm by a steel gauge: smaller still at 20 °C, by 52·(22 − 11.5)e-6·6 = 3.3 µm.
    let fit = worked(&seat).interference;
    let micro = LengthUnit::Micrometre.value_of(fit.most);
    assert!((micro - (23.0 + 3.3)).abs() < 0.1, "{micro}");
}

#[test]
fn a_room_that_is_told_changes_the_plan() {
    let warm = uom::si::f64::ThermodynamicTemperature::new::<degree_celsius>(30.0);
    let seat = Seat::default();
    // A part 10 K warmer is 62 000·12.5e-6·10 = 7.8 µm larger: 5.9 K more on the case.
    assert_eq!(headline(&answer(&seat, Some(warm)).unwrap()).number, "80");
}

#[test]
fn each_field_reads_back_what_it_keeps_and_refuses_nonsense() {
    let tables: [&[Number<Seat>]; 5] = [&SIZES, &LIMITS, &SHAPE, &TOOLS, &DEPTHS];
    for kind in [Kind::Class, Kind::Measured] {
        for field in tables.into_iter().flatten() {
            let mut seat = Seat {
                depth: Some(SeatDepth::default()),
                ..Seat::default()
            };
            source::set_kind(&mut seat, Side::Hole, kind);
            source::set_kind(&mut seat, Side::Shaft, kind);
            if (field.get)(&seat).is_none() {
                continue;
            }
            let kept = field.judge(12.5, MassUnit::Kilogram).unwrap();
            (field.set)(&mut seat, kept);
            let back = (field.get)(&seat).unwrap();
            assert!((back - 12.5).abs() < 1e-9, "{}: {back}", field.name);
            let said = field.judge(1e6, MassUnit::Kilogram).unwrap_err();
            assert!(said.starts_with("Enter a number from "), "{}: {said}", field.name);
            assert!(field.judge(f64::NAN, MassUnit::Kilogram).is_err());
        }
    }
    assert_eq!(Kept::Millimetre.text(62.0, MassUnit::Kilogram), "62");
    assert_eq!(Kept::Millimetre.text(61.974, MassUnit::Kilogram), "61.974");
}

#[test]
fn a_seat_without_the_newer_fields_is_still_read() {
    let old = r#"{"part":"62 mm ball bearing","hole":{"class":{"nominal_mm":62,"class":"N7"}},
        "shaft":{"bearing_outer":{"nominal_mm":62}},"housing":"cast_aluminium","part_material":"bearing_steel",
        "length_mm":16,"part_inside_mm":54,"boss_outside_mm":84,"wall_mm":8,"housing_limit_c":120,"part_limit_c":120}"#;
    let seat: Seat = serde_json::from_str(old).unwrap();
    assert_eq!(
        seat,
        Seat {
            part: "62 mm ball bearing".to_owned(),
            ..Seat::default()
        }
    );
}
