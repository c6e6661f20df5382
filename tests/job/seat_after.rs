//! What becomes of a press fit once it is seated: told in the plan, on the step and in the record.

use halfcase::job::kinds::seat::source::{self, Side};
use halfcase::job::kinds::seat::{HeldBy, after, answer, fields, recorded};
use halfcase::job::kinds::{Seat, Work};
use halfcase::job::sheet::{Step, StepId};
use halfcase::trade::heat_plan::{HoleIn, PlanKind};
use halfcase::trade::material::Material;
use uom::si::thermodynamic_temperature::degree_celsius;

fn row(seat: &Seat, name: &str) -> String {
    let answer = answer(seat, None).unwrap();
    let rows = after::rows(seat, &answer);
    rows.into_iter()
        .find(|(row, _)| *row == name)
        .map_or(String::new(), |(_, words)| words)
}

fn warned(seat: &Seat, words: &str) -> bool {
    let answer = answer(seat, None).unwrap();
    after::warnings(seat, &answer)
        .iter()
        .any(|line| line.contains(words))
}

fn typed(seat: &mut Seat, field: &str, value: &str) {
    fields::set(seat, &format!("seat/{field}"), value).unwrap();
}

#[test]
fn a_race_that_lets_go_when_hot_is_said_and_what_holds_it_asked() {
    let mut seat = Seat::default();
    assert_eq!(
        row(&seat, "fit as it runs"),
        "at 90 °C (usual, not told), 7 to 50 µm loose; by the alloy up to 9 µm either way"
    );
    assert!(warned(&seat, "At 90 °C it is loose. Look what holds it then"));
    typed(&mut seat, "held_by", "3");
    assert!(warned(&seat, "has only its fit"));
    typed(&mut seat, "held_by", "1");
    assert_eq!(seat.held_by, Some(HeldBy::Plate));
    assert!(!warned(&seat, "loose"));
    typed(&mut seat, "runs_at", "60");
    assert!(row(&seat, "fit as it runs").starts_with("at 60 °C, 30 µm loose to 13 µm tight"));
    let words = recorded(&seat, answer(&seat, None).ok().as_ref());
    assert!(words.contains("at 60 °C, 30 µm loose to 13 µm tight"), "{words}");
    assert!(
        words.ends_with("held by a retainer plate, cover or snap ring"),
        "{words}"
    );
    typed(&mut seat, "runs_at", "");
    assert_eq!(seat.runs_at_c, None);
    // A gear of steel on its shaft grows with it: nothing to say.
    let mut gear = Seat {
        hole_in: HoleIn::Part,
        housing: Material::Steel,
        part_material: Material::Steel,
        part_inside_mm: 0.0,
        ..Seat::default()
    };
    source::set_code(&mut gear, "62 H7/s6").unwrap();
    assert_eq!(row(&gear, "fit as it runs"), "");
}

#[test]
fn a_race_loose_when_cold_is_sent_to_the_compound_or_a_new_case() {
    let mut seat = Seat::default();
    source::set_kind(&mut seat, Side::Hole, source::Kind::Measured);
    source::set_kind(&mut seat, Side::Shaft, source::Kind::Measured);
    source::set_reading(&mut seat, Side::Hole, 62.06);
    source::set_reading(&mut seat, Side::Shaft, 61.99);
    let plan = answer(&seat, None).unwrap();
    assert_eq!(plan.plan.which, PlanKind::SlideCold);
    assert!(!after::how(&seat, &plan).contains("square and clean"));
    assert!(warned(&seat, "Loose at 20 °C by up to 70 µm"));
    assert!(warned(&seat, "Retaining compound fills up to 0.1 mm"));
    source::set_reading(&mut seat, Side::Hole, 62.15);
    assert!(warned(&seat, "more than the 0.1 mm"));
    // A bush may stand in a wider gap.
    seat.part_material = Material::Bronze;
    fields::set(&mut seat, "seat/seals", "no").unwrap();
    assert!(warned(&seat, "fills up to 0.25 mm"));
    seat.held_by = Some(HeldBy::Compound);
    assert!(!warned(&seat, "Loose"));
}

#[test]
fn a_sealed_bearing_has_its_own_limit() {
    // 62 R7 at up to 60 µm tight asks for 20 + (60 + 31)/62/21e-6 = 90 °C.
    let mut seat = Seat::default();
    source::set_code(&mut seat, "62 R7").unwrap();
    let open = answer(&seat, None).unwrap();
    assert_eq!(open.plan.which, PlanKind::HeatHousing);
    assert!(warned(&seat, "Has the bearing seals"));
    typed(&mut seat, "sealed", "2");
    let sealed = answer(&seat, None).unwrap();
    assert!((sealed.hottest.get::<degree_celsius>() - 80.0).abs() < 1e-9);
    assert_eq!(sealed.plan.which, PlanKind::PressCold);
    assert!(!warned(&seat, "Has the bearing seals"));
    typed(&mut seat, "sealed", "1");
    assert_eq!(answer(&seat, None).unwrap().plan, open.plan);
    // Where nothing comes to 80 °C nothing is asked.
    assert!(!warned(&Seat::default(), "Has the bearing seals"));
}

#[test]
fn time_in_the_oven_goes_by_the_thickest_section() {
    let mut seat = Seat::default();
    // (84 − 62)/2 = 11 mm: 8.8 to 13.2 minutes.
    assert_eq!(
        row(&seat, "in an oven up to heat"),
        "9 to 14 min for 11 mm of section"
    );
    assert!(row(&seat, "on a hot plate").contains("read the side away"));
    assert_eq!(
        row(&seat, "the fit takes off the bearing"),
        "0 to 27 µm of its clearance, about 70 % of what is tight"
    );
    typed(&mut seat, "heat_by", "2");
    assert_eq!(row(&seat, "on a hot plate"), "");
    typed(&mut seat, "heat_by", "4");
    assert_eq!(row(&seat, "in an oven up to heat"), "");
    let cold = Seat {
        way: halfcase::job::kinds::SeatWay::Press,
        ..Seat::default()
    };
    assert_eq!(row(&cold, "in an oven up to heat"), "");
}

/// A ring gear by the manual's own interference, in inches, no class anywhere.
#[test]
fn a_ring_gear_of_400_mm_is_reckoned_by_the_manuals_interference() {
    let mut seat = Seat::blank();
    seat.hole_in = HoleIn::Part;
    seat.housing = Material::CastIron;
    seat.part_material = Material::Steel;
    let refused = fields::set(&mut seat, "seat/tight", "0.012–0.020 in").unwrap_err();
    assert!(format!("{refused:?}").contains("size of the bore first"));
    for (field, value) in [
        ("hole", "400"),
        ("length", "25"),
        ("boss", "440"),
        ("wall", "20"),
        ("part_limit", "250"),
        ("housing_limit", "250"),
        ("tight", "0.012–0.020 in"),
    ] {
        typed(&mut seat, field, value);
    }
    let fit = answer(&seat, None).unwrap().interference;
    assert!((fit.most.get::<uom::si::length::millimeter>() - 0.508).abs() < 1e-9);
    assert!((fit.least.get::<uom::si::length::millimeter>() - 0.3048).abs() < 1e-9);
    assert_eq!(source::tight_mm(&seat), Some((0.3048, 0.508)));
    // Limits typed from to, and a class of 300 mm.
    typed(&mut seat, "hole", "399.98–400.02");
    assert_eq!(source::limits_mm(&seat, Side::Hole), Some((399.98, 400.02)));
    assert!(fields::set(&mut seat, "seat/hole", "400.02–399.98").is_err());
    let step = Step::new(StepId(1), "Ring gear", Work::Seat(seat.clone()));
    let text = serde_json::to_string(&step).unwrap();
    assert_eq!(serde_json::from_str::<Step>(&text).unwrap(), step);
    assert!(
        text.contains(r#""between":{"least_mm":399.98,"most_mm":400.02}"#),
        "{text}"
    );
    // What says nothing new is written as it was.
    let plain = serde_json::to_string(&Seat::default()).unwrap();
    for new in ["runs_at_c", "held_by", "sealed"] {
        assert!(!plain.contains(new));
    }
}
