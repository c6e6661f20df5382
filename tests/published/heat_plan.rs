//! Heat plans, worked by hand from α·d·ΔT with the cautious end of each range, and the limits that
//! published practice gives.

use halfcase::trade::fit::{Interference, SizeSource, interference};
use halfcase::trade::heat_plan::{
    ChillMeans, CoolMeans, HeatPlan, HoleIn, LimitOf, PlanError, PlanKind, PlanRequest, Rejection, plan,
    usual_slip_clearance,
};
use halfcase::trade::material::Material;
use halfcase::trade::quantity::{Length, ThermodynamicTemperature};
use uom::si::length::{micrometer, millimeter};
use uom::si::thermodynamic_temperature::degree_celsius;

fn mm(value: f64) -> Length {
    Length::new::<millimeter>(value)
}

fn celsius(value: f64) -> ThermodynamicTemperature {
    ThermodynamicTemperature::new::<degree_celsius>(value)
}

/// The gearbox bearing: 62 mm outside, into an aluminium bore of class N7.
fn bearing_in_n7() -> PlanRequest {
    let bore = SizeSource::Class {
        nominal: mm(62.0),
        class: "N7".parse().unwrap(),
    };
    let ring = SizeSource::BearingOuter { nominal: mm(62.0) };
    PlanRequest {
        diameter: mm(62.0),
        interference: interference(&bore, &ring).unwrap(),
        hole_in: HoleIn::Housing,
        housing: Material::CastAluminium,
        part: Material::BearingSteel,
        housing_limit: celsius(120.0),
        part_limit: celsius(120.0),
        may_heat: true,
        may_cool: Some(CoolMeans::Freezer),
        may_press: true,
        slip_clearance: usual_slip_clearance(mm(62.0)),
        room: celsius(20.0),
    }
}

fn degrees(ours: Option<ThermodynamicTemperature>, theirs: f64) {
    let ours = ours.unwrap().get::<degree_celsius>();
    assert!((ours - theirs).abs() < 0.001, "{ours} °C is not {theirs} °C");
}

fn clearance(plan: &HeatPlan, theirs: f64) {
    let ours = plan.clearance_at_fit.get::<micrometer>();
    assert!((ours - theirs).abs() < 0.001, "{ours} µm is not {theirs} µm");
}

#[test]
fn a_bearing_into_n7_by_heat() {
    // 39 µm at most and 31 µm of slip: 70/(62 000·21e-6) = 53.76 K, so 74 °C; it then has
    // 62·21·54/1000 − 39 = 31.308 µm. Half of that is gone at 61.977 °C.
    let plan = plan(&bearing_in_n7()).unwrap();
    assert_eq!(plan.which, PlanKind::HeatHousing);
    degrees(plan.housing_to, 74.0);
    degrees(plan.housing_until, 61.977);
    assert_eq!((plan.part_to, plan.part_until), (None, None));
    clearance(&plan, 31.308);
    assert!(plan.rejected.is_empty());
}

#[test]
fn a_looser_fit_needs_the_heat_of_the_guides() {
    // A bearing maker's mounting guide, seen: 20 to 50 K above the room is usually enough. K7, 21 µm at
    // most: 59.94 °C.
    let mut request = bearing_in_n7();
    request.interference.most = mm(0.021);
    let heat = plan(&request).unwrap().housing_to.unwrap();
    assert!(celsius(40.0) < heat && heat < celsius(70.0));
    degrees(Some(heat), 60.0);
}

#[test]
fn a_case_held_to_60_degrees_falls_to_freezer_and_heat() {
    // The ring at −18 °C: 62 000·11e-6·(38 − 0.00085·38²) = 25.079 µm smaller, so 13.921 µm of
    // interference is left by cold alone. With it: 20 + (70 − 25.079)/(62 000·21e-6) = 54.50 °C, so 55.
    let plan = plan(&PlanRequest {
        housing_limit: celsius(60.0),
        ..bearing_in_n7()
    })
    .unwrap();
    assert_eq!(plan.which, PlanKind::HeatAndCool);
    degrees(plan.housing_to, 55.0);
    degrees(plan.part_to, -18.0);
    degrees(plan.housing_until, 42.846);
    degrees(plan.part_until, 6.270);
    clearance(&plan, 31.649);
    let said: Vec<_> = plan
        .rejected
        .iter()
        .map(|(kind, why)| (*kind, why.to_string()))
        .collect();
    assert_eq!(
        said,
        [
            (
                PlanKind::HeatHousing,
                "It takes 74 °C; the housing's limit is 60 °C.".to_owned()
            ),
            (
                PlanKind::CoolPart,
                "It leaves 0.014 mm of interference; 0.031 mm of clearance is wanted.".to_owned()
            ),
        ]
    );
}

#[test]
fn dry_ice_alone_where_no_heat_is_allowed() {
    // −78 °C: 62 000·11e-6·(98 − 0.00085·98²) = 61.269 µm, less 39: 22.269 µm.
    let cold = PlanRequest {
        may_heat: false,
        may_cool: Some(CoolMeans::DryIce),
        slip_clearance: mm(0.020),
        ..bearing_in_n7()
    };
    let chilled = plan(&cold).unwrap();
    assert_eq!(chilled.which, PlanKind::CoolPart);
    degrees(chilled.part_to, -78.0);
    degrees(chilled.part_until, -58.787);
    clearance(&chilled, 22.269);
    assert_eq!(chilled.rejected, [(PlanKind::HeatHousing, Rejection::NotAllowed)]);
    // The freezer by itself leaves 13.921 µm of interference, as above.
    let frozen = plan(&PlanRequest {
        may_cool: Some(CoolMeans::Freezer),
        ..cold
    })
    .unwrap();
    match frozen.rejected[1] {
        (
            PlanKind::CoolPart,
            Rejection::TooLittle {
                clearance_mm,
                wanted_mm,
            },
        ) => {
            assert!((clearance_mm + 0.013_921).abs() < 1e-6 && (wanted_mm - 0.020).abs() < 1e-9);
        }
        ref other => panic!("{other:?}"),
    }
    // With 25 µm wanted it is not enough, and the press is left.
    let pressed = plan(&PlanRequest {
        slip_clearance: mm(0.025),
        ..cold
    })
    .unwrap();
    assert_eq!(pressed.which, PlanKind::PressCold);
    clearance(&pressed, -39.0);
    let why = pressed.rejected[1].1;
    assert_eq!(
        why.to_string(),
        "It gives 0.022 mm of clearance; 0.025 mm is wanted."
    );
    let none = plan(&PlanRequest {
        slip_clearance: mm(0.025),
        may_press: false,
        ..cold
    })
    .unwrap();
    assert_eq!(none.which, PlanKind::NoPlan);
    assert_eq!(none.rejected.len(), 4);
}

#[test]
fn a_bearing_onto_a_shaft_is_itself_heated() {
    // 25 mm on k6, 25 µm at most, 12.5 µm of slip: 37.5/(25 000·11e-6) = 136.4 K, past the bearing's
    // 120 °C. With the shaft at −18 °C, 10.112 µm smaller: 119.59 °C, so 120 with 12.612 µm.
    let onto = PlanRequest {
        diameter: mm(25.0),
        interference: Interference {
            least: mm(0.002),
            most: mm(0.025),
        },
        hole_in: HoleIn::Part,
        housing: Material::Steel,
        slip_clearance: mm(0.0125),
        housing_limit: celsius(150.0),
        ..bearing_in_n7()
    };
    let both = plan(&onto).unwrap();
    assert_eq!(both.which, PlanKind::HeatAndCool);
    degrees(both.part_to, 120.0);
    degrees(both.housing_to, -18.0);
    clearance(&both, 12.612);
    let (kind, why) = both.rejected[0];
    assert_eq!(
        (kind, why.to_string().as_str()),
        (PlanKind::HeatPart, "It takes 157 °C; the part's limit is 120 °C.")
    );
    assert_eq!(both.rejected[1].0, PlanKind::CoolShaft);
    let light = plan(&PlanRequest {
        slip_clearance: mm(0.0),
        ..onto
    })
    .unwrap();
    assert_eq!(light.which, PlanKind::HeatPart);
    // 25/(25 000·11e-6) = 90.9 K.
    degrees(light.part_to, 111.0);
    assert_eq!(light.housing_to, None);
}

#[test]
fn slip_clearance_of_common_practice() {
    // Half of a thousandth of the diameter, at least 10 µm (common practice, no source).
    assert!((usual_slip_clearance(mm(62.0)).get::<micrometer>() - 31.0).abs() < 1e-9);
    assert!((usual_slip_clearance(mm(10.0)).get::<micrometer>() - 10.0).abs() < 1e-9);
}

#[test]
fn every_limit_is_heeded() {
    let whose = |request: PlanRequest| match plan(&request).unwrap().rejected.first() {
        Some((_, Rejection::TooHot { whose, .. })) => *whose,
        other => panic!("{other:?}"),
    };
    let tight = PlanRequest {
        interference: Interference {
            least: mm(0.0),
            most: mm(0.3),
        },
        housing_limit: celsius(250.0),
        part_limit: celsius(250.0),
        ..bearing_in_n7()
    };
    assert_eq!(
        whose(PlanRequest {
            housing_limit: celsius(70.0),
            ..tight
        }),
        LimitOf::Housing
    );
    // The sealed ring takes on the housing's heat when it touches.
    assert_eq!(
        whose(PlanRequest {
            part_limit: celsius(80.0),
            ..tight
        }),
        LimitOf::Part
    );
    assert_eq!(whose(tight), LimitOf::PartMaterial);
    let magnesium = PlanRequest {
        housing: Material::Magnesium,
        part: Material::Steel,
        ..tight
    };
    assert_eq!(whose(magnesium), LimitOf::HousingMaterial);
}

#[test]
fn the_exact_limit_may_be_used() {
    // 73.763 °C is needed: a limit of 73.8 allows it though 74 passes the limit.
    let plan = plan(&PlanRequest {
        housing_limit: celsius(73.8),
        ..bearing_in_n7()
    })
    .unwrap();
    assert_eq!(plan.which, PlanKind::HeatHousing);
    degrees(plan.housing_to, 73.763);
}

#[test]
fn clearance_goes_in_by_hand() {
    let loose = Interference {
        least: mm(-0.030),
        most: mm(-0.001),
    };
    let plan = plan(&PlanRequest {
        interference: loose,
        ..bearing_in_n7()
    })
    .unwrap();
    assert_eq!(plan.which, PlanKind::SlideCold);
    assert_eq!((plan.housing_to, plan.part_to), (None, None));
    clearance(&plan, 1.0);
}

#[test]
fn a_cold_room_asks_for_more() {
    // At 0 °C the case is heated to the same 20 + … less what the ring has shrunk:
    // the ring loses 62 000·11e-6·(20 − 0.00085·400) = 13.408 µm: 20 + (70 − 13.408)/1.302 = 63.47 °C.
    let plan = plan(&PlanRequest {
        room: celsius(0.0),
        ..bearing_in_n7()
    })
    .unwrap();
    degrees(plan.housing_to, 64.0);
}

#[test]
fn refusals_say_what_to_do() {
    let say = |request: PlanRequest| plan(&request).unwrap_err().to_string();
    let request = bearing_in_n7();
    assert_eq!(
        say(PlanRequest {
            diameter: mm(0.0),
            ..request
        }),
        "Enter the diameter of the fit, above zero and under 10 m."
    );
    assert_eq!(
        say(PlanRequest {
            interference: Interference {
                least: mm(0.0),
                most: mm(1.0)
            },
            ..request
        }),
        "An interference of 1.000 mm is no fit at this size: check both sizes."
    );
    assert_eq!(
        say(PlanRequest {
            slip_clearance: mm(-0.01),
            ..request
        }),
        "Enter a slip clearance from zero to a hundredth of the diameter."
    );
    assert_eq!(
        say(PlanRequest {
            room: celsius(50.2),
            ..request
        }),
        "Enter a room temperature between −30 and 50 °C."
    );
    assert!(
        plan(&PlanRequest {
            room: celsius(49.9),
            ..request
        })
        .is_ok()
    );
    assert!(
        plan(&PlanRequest {
            room: celsius(-29.9),
            ..request
        })
        .is_ok()
    );
    assert!(
        plan(&PlanRequest {
            room: celsius(-30.2),
            ..request
        })
        .is_err()
    );
    assert_eq!(
        plan(&PlanRequest {
            part_limit: celsius(500.0),
            ..request
        }),
        Err(PlanError::Limit)
    );
    assert_eq!(
        PlanError::Limit.to_string(),
        "Enter a heat limit between −100 and 300 °C."
    );
    // A hundredth of the diameter is where both stop making sense.
    let with = |most: f64, slip: f64| {
        let interference = Interference {
            least: mm(0.0),
            most: mm(most),
        };
        plan(&PlanRequest {
            interference,
            slip_clearance: mm(slip),
            ..request
        })
        .is_ok()
    };
    assert!(with(0.619, 0.031) && !with(0.623, 0.031));
    assert!(with(0.039, 0.619) && !with(0.039, 0.623));
}

#[test]
fn a_plan_survives_storage() {
    let request = bearing_in_n7();
    let text = serde_json::to_string(&request).unwrap();
    assert!(
        text.contains(r#""diameter_mm":62.0"#) && text.contains(r#""least_mm":-0.004"#),
        "{text}"
    );
    let again: PlanRequest = serde_json::from_str(&text).unwrap();
    assert_eq!(
        plan(&again).unwrap().housing_to,
        plan(&request).unwrap().housing_to
    );
}

/// What a part left in it gets to is what boils or turns to gas there at one atmosphere: nitrogen −195.8 °C (US
/// National Institute of Standards and Technology), carbon dioxide −78.5 °C (the same); a food freezer −18 °C
/// (Codex Alimentarius, CXC 8); all M.
#[test]
fn cold_baths_stand_at_what_boils_in_them() {
    for (means, published) in [
        (ChillMeans::LiquidNitrogen, -195.8),
        (ChillMeans::DryIce, -78.5),
        (ChillMeans::Freezer, -18.0),
    ] {
        let celsius = means.temperature().get::<degree_celsius>();
        assert!((celsius - published).abs() <= 0.5, "{}: {celsius}", means.words());
    }
}

/// A room from −30 to 50 °C (ours, no source).
#[test]
fn a_room_ends_where_it_is_said_to() {
    let with_room = |room| {
        plan(&PlanRequest {
            room: celsius(room),
            ..bearing_in_n7()
        })
    };
    for (inside, outside) in [(-29.9, -30.3), (49.9, 50.4)] {
        assert_ne!(with_room(inside).err(), Some(PlanError::Room), "{inside}");
        assert_eq!(with_room(outside).err(), Some(PlanError::Room), "{outside}");
    }
}
