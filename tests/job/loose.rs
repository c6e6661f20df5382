//! A race that is loose in its bore leads to the retaining answer, with what Seat knows filled in; and bonds
//! that earlier releases stored say what they said.

use halfcase::job::bonding::Walk;
use halfcase::job::json;
use halfcase::job::kinds::Seat;
use halfcase::job::kinds::seat::{answer, loose};
use halfcase::trade::application::{Application, Face, Held, JointKind};
use halfcase::trade::compound::{CompoundClass, recommend};
use uom::si::length::millimeter;

/// The walking tractor's main bearing, 62 mm, in a bore measured at 20 °C.
fn bearing_in(bore_mm: f64) -> Seat {
    json::read(&format!(
        r#"{{"part":"main bearing","hole":{{"measured":{{"size_mm":{bore_mm},"at_c":20,"material":"cast_aluminium"}}}},
        "shaft":{{"bearing_outer":{{"nominal_mm":62}}}},"housing":"cast_aluminium","part_material":"bearing_steel",
        "length_mm":16,"part_inside_mm":52,"boss_outside_mm":80,"wall_mm":9,"housing_limit_c":120,"part_limit_c":120}}"#
    ))
    .unwrap()
}

fn led_to(seat: &Seat) -> Option<Application> {
    let worked = answer(seat, None).unwrap();
    loose(seat, &worked).and_then(|walk| walk.joint)
}

#[test]
fn a_loose_race_opens_bond_with_the_gap_filled_in() {
    // Normal class, ISO 492: 62 mm is 0 to −13 µm, so in a bore of 62.020 the gap is 20 to 33 µm.
    let joint = led_to(&bearing_in(62.02)).unwrap();
    assert_eq!(
        (joint.kind, joint.held),
        (JointKind::Cylindrical, Some(Held::Race))
    );
    assert_eq!(joint.face, Some(Face::CastAluminium));
    let gap_mm = joint.gap.unwrap().get::<millimeter>();
    assert!((gap_mm - 0.033).abs() < 1e-9, "{gap_mm}");
    assert_eq!(recommend(&joint).class, Some(CompoundClass::RetainingCompound));
    // Worn past what keeps it centred: a new case, not a compound.
    let joint = led_to(&bearing_in(62.12)).unwrap();
    assert_eq!(recommend(&joint).class, None);
    assert_eq!(recommend(&joint).rule, "bore-off-centre");
}

#[test]
fn a_fit_that_may_be_tight_does_not_lead_to_bond() {
    for bore_mm in [61.97, 61.995, 62.0 - 1e-6] {
        assert_eq!(led_to(&bearing_in(bore_mm)), None, "{bore_mm}");
    }
}

#[test]
fn what_bond_was_opened_with_is_not_asked_again() {
    let seat = bearing_in(62.02);
    let mut walk = loose(&seat, &answer(&seat, None).unwrap()).unwrap();
    let mut asked = Vec::new();
    while let Some(question) = walk.next() {
        asked.push(question.id);
        walk.choose(question.id, question.choices[0].id).unwrap();
        assert!(asked.len() < 20);
    }
    assert!(asked.contains(&"manual"));
    for told in ["gap", "face", "held"] {
        assert!(!asked.contains(&told), "{told} is asked again");
    }
    let text = serde_json::to_string(&walk).unwrap();
    assert_eq!(serde_json::from_str::<Walk>(&text).unwrap(), walk);
}

#[test]
fn a_bond_stored_before_these_questions_says_what_it_said_and_is_written_back_the_same() {
    let stored = [
        (
            r#"{"kind":"cylindrical","manual":"not_stated","face":"aluminium","gap_mm":0.05,"apart":"service","temperature_c":120.0,"oil_ways":false}"#,
            Some(CompoundClass::RetainingCompound),
        ),
        (
            r#"{"kind":"fastener","manual":"lock_medium","precoated":false,"locked":false,"face":"aluminium","assembled":false,"thread_mm":6.0,"hole":"blind","apart":"service","vibration":true,"temperature_c":120.0}"#,
            Some(CompoundClass::ThreadlockMedium),
        ),
        (
            r#"{"kind":"fastener","manual":"not_stated","locked":true,"hole":null}"#,
            None,
        ),
        (
            r#"{"kind":"fastener","manual":"not_stated","face":"stainless","hole":"blind","vibration":false}"#,
            None,
        ),
        (
            r#"{"kind":"fastener","manual":"not_stated","face":"stainless","thread_mm":8.0}"#,
            Some(CompoundClass::ThreadlockMedium),
        ),
        (
            r#"{"kind":"stud","manual":"not_stated","face":"steel_iron","thread_mm":12.0,"apart":"never"}"#,
            Some(CompoundClass::ThreadlockHigh),
        ),
        (r#"{"kind":"washer"}"#, Some(CompoundClass::LightOil)),
        (r#"{"kind":"o_ring"}"#, Some(CompoundClass::LightOil)),
    ];
    for (text, class) in stored {
        let joint: Application = json::read(text).unwrap();
        assert_eq!(recommend(&joint).class, class, "{text}");
        let written = json::write(&joint).unwrap();
        for new in ["partner", "plastic_part", "held", "outside"] {
            assert!(!written.contains(new), "{new} is written into {written}");
        }
    }
}
