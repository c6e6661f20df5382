//! What the manual says of heat and cold stands, as it says it, and goes before our own plan.

use super::sheet;
use halfcase::job::form;
use halfcase::job::kinds::seat::{self, manual};
use halfcase::job::kinds::{Seat, Work};
use halfcase::job::planning::PlanRefused;
use halfcase::job::sheet::{Sheet, Step};
use halfcase::job::situation::{Around, cautions_of};
use halfcase::trade::caution::Level;
use uom::si::thermodynamic_temperature::degree_celsius;

/// The drive gear of the transfer gearbox: heated, onto its shaft.
fn gear() -> Sheet {
    sheet(
        r#"{"id":1,"title":"Drive gear","work":{"seat":{"part":"drive gear",
            "hole":{"class":{"nominal_mm":50,"class":"H7"}},"shaft":{"class":{"nominal_mm":50,"class":"p6"}},
            "hole_in":"part","housing":"steel","part_material":"steel","length_mm":18,"boss_outside_mm":90,
            "wall_mm":12,"housing_limit_c":150,"part_limit_c":150,"way":"heat",
            "manual":{"heat":{"means":"oven","to":"250 °F","never_over":"275 °F"}}}}}"#,
    )
}

fn seat(sheet: &Sheet) -> Seat {
    match &sheet.steps[0].work {
        Work::Seat(seat) => seat.clone(),
        _ => panic!("no seat"),
    }
}

fn set(step: &mut Step, field: &str, value: &str) -> Result<(), PlanRefused> {
    let sheet = Sheet::new("x", vec![step.clone()]);
    form::set(&sheet, step, field, value)
}

#[test]
fn the_manuals_figure_is_shown_first_in_its_own_unit() {
    let sheet = gear();
    let first = seat::order(&seat(&sheet)).unwrap();
    assert_eq!((first.number.as_str(), first.unit), ("250", "°F"));
    assert!(first.says.starts_with("the manual"), "{}", first.says);
    assert!(
        first.also.contains("never over 275 °F (135 °C)"),
        "{}",
        first.also
    );
    // It comes back from its file as it is printed.
    assert!(sheet.to_json().contains("\"250 °F\""));
    assert_eq!(Sheet::from_json(&sheet.to_json()).unwrap(), sheet);
}

/// 250 °F is 121 °C exactly to the degree (NIST SP 811): that is what is followed, ours stands beside it.
#[test]
fn what_is_followed_is_the_manuals_and_ours_says_why_it_differs() {
    let seat = seat(&gear());
    let answer = seat::answer(&seat, None).unwrap();
    let heated = manual::Manual::heat_to(&seat.manual.unwrap()).unwrap();
    assert!((heated.get::<degree_celsius>() - 121.1).abs() < 0.1);
    assert!(answer.manual.is_some());
    assert_eq!(answer.followed(), answer.manual.as_ref().unwrap());
    let beside = seat::beside(&seat, &answer).unwrap();
    assert!(beside.contains("the manual’s 250 °F stands"), "{beside}");
    // Without the manual our own plan is all there is.
    let alone = Seat { manual: None, ..seat };
    assert_eq!(seat::order(&alone), None);
    assert!(seat::answer(&alone, None).unwrap().manual.is_none());
}

/// A bath near its oil's flash point stops the step (common practice, no source).
#[test]
fn a_bath_near_its_flash_point_stops() {
    let stops = |flash: &str| {
        let mut step = gear().steps.remove(0);
        set(&mut step, "seat/heat_by", &oil_bath()).unwrap();
        set(&mut step, "seat/flash_point", flash).unwrap();
        cautions_of(&step.work, &Around::default())
            .iter()
            .any(|caution| caution.id == "oil-flash" && caution.level == Level::Stop)
    };
    assert!(stops("140 °C"));
    assert!(!stops("230 °C"));
}

fn oil_bath() -> String {
    let choices = manual::heat_choices();
    choices
        .iter()
        .position(|words| words.contains("oil"))
        .unwrap()
        .to_string()
}

#[test]
fn senseless_sizes_are_refused_where_they_are_typed_and_in_a_file() {
    let mut step = gear().steps.remove(0);
    let before = step.clone();
    for (field, value, says) in [
        ("seat/boss", "40", "must be larger than the fit"),
        ("seat/never_over", "200 °F", "is above its own limit"),
        ("seat/heat_to", "900 °F", "lies between"),
        ("seat/heat_to", "hot", ""),
    ] {
        match set(&mut step, field, value) {
            Err(PlanRefused::Field(words)) => assert!(words.contains(says), "{field}: {words}"),
            other => panic!("{field} = {value}: {other:?}"),
        }
        assert_eq!(step, before, "{field}");
    }
    let file = gear()
        .to_json()
        .replace("\"boss_outside_mm\": 90", "\"boss_outside_mm\": 40");
    assert!(file.contains("\"boss_outside_mm\": 40"));
    let refused = Sheet::from_json(&file).map_err(|error| error.to_string());
    assert!(refused.is_err_and(|words| words.contains("must be larger than the fit")));
}
