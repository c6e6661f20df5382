//! Cautions: the gravest first, never more than three, and a number that is none counts as beyond.

use halfcase::trade::caution::{
    Caution, Cooling, Heating, Level, Lifting, Pressing, RULES, Situation, any_fuel, cautions, every, shown,
};
use halfcase::trade::compound::CompoundClass;
use proptest::prelude::*;
use std::collections::BTreeSet;
use uom::si::angle::degree;
use uom::si::f64::{Angle, Force, Mass, ThermodynamicTemperature};
use uom::si::force::kilonewton;
use uom::si::mass::kilogram;
use uom::si::thermodynamic_temperature::degree_celsius;

fn celsius(number: f64) -> ThermodynamicTemperature {
    ThermodynamicTemperature::new::<degree_celsius>(number)
}

fn pressing(force_kn: f64, rating_kn: f64) -> Situation {
    let pressing = Pressing {
        force: Some(Force::new::<kilonewton>(force_kn)),
        rating: Some(Force::new::<kilonewton>(rating_kn)),
        ..Pressing::default()
    };
    Situation {
        pressing: Some(pressing),
        ..Situation::default()
    }
}

fn heating(heating: Heating) -> Situation {
    Situation {
        heating: Some(heating),
        ..Situation::default()
    }
}

fn cooling(to: f64) -> Situation {
    Situation {
        cooling: Some(Cooling {
            to: Some(celsius(to)),
            ..Cooling::default()
        }),
        ..Situation::default()
    }
}

fn lifting(lifting: Lifting) -> Situation {
    Situation {
        lifting: Some(lifting),
        ..Situation::default()
    }
}

fn by_hand(kg: f64, lifting_index: Option<f64>) -> Situation {
    lifting(Lifting {
        mass: Some(Mass::new::<kilogram>(kg)),
        by_hand: true,
        lifting_index,
        ..Lifting::default()
    })
}

fn sling(deg: f64) -> Situation {
    lifting(Lifting {
        mass: Some(Mass::new::<kilogram>(48.0)),
        sling_angle: Some(Angle::new::<degree>(deg)),
        ..Lifting::default()
    })
}

fn hoist(share: f64) -> Situation {
    lifting(Lifting {
        mass: Some(Mass::new::<kilogram>(48.0)),
        hoist_share: Some(share),
        ..Lifting::default()
    })
}

fn ids(step: &Situation) -> Vec<&'static str> {
    cautions(step).iter().map(|caution| caution.id).collect()
}

/// Whether a step raises a caution.
fn raises(step: &Situation, id: &str) -> bool {
    ids(step).contains(&id)
}

#[test]
fn limits_are_where_their_sources_put_them() {
    // A step just inside, one just outside, the caution, the source of the limit.
    let checks = [
        (
            sling(30.1),
            sling(29.9),
            "sling-flat",
            "ASME B30.9: not below 30° from the horizontal",
        ),
        (
            sling(45.1),
            sling(44.9),
            "sling-shallow",
            "ASME B30.9 factor table, 45°: 1.414",
        ),
        (
            sling(29.9),
            sling(30.1),
            "sling-shallow",
            "ASME B30.9: below 30° it is refused instead",
        ),
        (
            by_hand(10.0, Some(0.995)),
            by_hand(10.0, Some(1.005)),
            "hands-strain",
            "DHHS (NIOSH) 94-110: index 1",
        ),
        (
            by_hand(10.0, Some(3.01)),
            by_hand(10.0, Some(2.99)),
            "hands-strain",
            "DHHS (NIOSH) 94-110: index 3",
        ),
        (
            by_hand(10.0, Some(2.99)),
            by_hand(10.0, Some(3.01)),
            "hands-refused",
            "DHHS (NIOSH) 94-110: index 3",
        ),
        (
            by_hand(22.9, None),
            by_hand(23.1, None),
            "hands-strain",
            "DHHS (NIOSH) 94-110: load constant 23 kg",
        ),
        (
            by_hand(68.8, None),
            by_hand(69.2, None),
            "hands-refused",
            "DHHS (NIOSH) 94-110: 3 × 23 kg",
        ),
        (hoist(0.999), hoist(1.001), "hoist-over", "the rating itself"),
        (
            hoist(0.798),
            hoist(0.802),
            "hoist-near",
            "common practice, no source",
        ),
        (hoist(1.001), hoist(0.999), "hoist-near", "the rating itself"),
        (
            pressing(99.9, 100.0),
            pressing(100.1, 100.0),
            "press-over",
            "the rating itself",
        ),
        (
            pressing(79.8, 100.0),
            pressing(80.2, 100.0),
            "press-near",
            "common practice, no source",
        ),
        (
            pressing(100.1, 100.0),
            pressing(99.9, 100.0),
            "press-near",
            "the rating itself",
        ),
        (
            cooling(-39.8),
            cooling(-40.2),
            "cold-brittle",
            "common practice, no source",
        ),
        (
            cooling(0.1),
            cooling(-0.1),
            "cold-part",
            "the freezing point of water",
        ),
    ];
    for (inside, outside, id, source) in checks {
        assert!(!raises(&inside, id), "{id} too early: {source}");
        assert!(raises(&outside, id), "{id} too late: {source}");
    }
    let hot = |target| {
        heating(Heating {
            target: Some(celsius(target)),
            ..Heating::default()
        })
    };
    // ISO 13732-1, from memory: metal of 51 °C burns skin that stays on it for a minute.
    assert!(!raises(&hot(49.8), "hot-part") && raises(&hot(50.2), "hot-part"));
    let held = |target| {
        heating(Heating {
            target: Some(celsius(target)),
            part_limit: Some(celsius(60.0)),
            ..Heating::default()
        })
    };
    assert!(!raises(&held(60.0), "heat-over") && raises(&held(60.1), "heat-over"));
}

#[test]
fn the_lines_carry_the_numbers_of_the_step() {
    let line = |step: &Situation, id: &str| {
        cautions(step)
            .into_iter()
            .find(|caution| caution.id == id)
            .map(|caution| caution.danger)
            .unwrap()
    };
    assert_eq!(
        line(&pressing(23.0, 20.0), "press-over"),
        "More force than the press may give. 23.0 of 20.0 kN."
    );
    assert_eq!(
        line(&sling(25.0), "sling-flat"),
        "Sling legs too flat: each pulls more than the load weighs. 25° from the horizontal."
    );
    assert_eq!(
        line(&by_hand(48.0, Some(5.42)), "hands-refused"),
        "Not by hand. Lifting index 5.4."
    );
    // 30 kg over the 23 kg load constant of DHHS (NIOSH) 94-110 is 1.30, whatever the rest.
    assert_eq!(
        line(&by_hand(30.0, None), "hands-strain"),
        "Heavy for one person. Lifting index at least 1.3."
    );
    assert_eq!(
        line(&by_hand(48.0, Some(f64::INFINITY)), "hands-refused"),
        "Not by hand."
    );
    assert_eq!(
        line(&hoist(1.25), "hoist-over"),
        "Too heavy for the hoist as it is set. 125 % of what it may carry there."
    );
    // Just past a limit reads as past it.
    assert!(line(&hoist(1.003), "hoist-over").ends_with(" 101 % of what it may carry there."));
    assert!(line(&sling(29.9), "sling-flat").ends_with(" 29° from the horizontal."));
}

/// Steps that between them raise every caution.
fn steps() -> Vec<Situation> {
    let heat = Heating {
        target: Some(celsius(100.0)),
        ..Heating::default()
    };
    let switches: [fn(&mut Situation); 10] = [
        |s| s.running = true,
        |s| s.solvent = true,
        |s| s.spring = true,
        |s| s.compressed_air = true,
        |s| s.hot_oil = true,
        |s| s.gauging = true,
        |s| s.turning = true,
        |s| s.before_cure = true,
        |s| s.high_strength_removal = true,
        |s| (s.solvent, s.compressed_air) = (true, true),
    ];
    let mut steps: Vec<_> = switches
        .iter()
        .map(|switch| {
            let mut step = Situation::default();
            switch(&mut step);
            step
        })
        .collect();
    steps.extend(CompoundClass::ALL.map(|class| Situation {
        chemicals: vec![class],
        ..Situation::default()
    }));
    steps.extend([
        Situation {
            solvent_near: true,
            ..heating(heat.clone())
        },
        Situation {
            soft_inside: Some("Baffle screws".to_owned()),
            ..heating(heat.clone())
        },
        Situation {
            fuel_near: Some("Fuel".to_owned()),
            ..heating(heat.clone())
        },
        Situation {
            half_cured: Some("Spigot".to_owned()),
            turning: true,
            ..by_hand(10.0, Some(0.5))
        },
        heating(Heating {
            open_flame: true,
            ..heat.clone()
        }),
        heating(Heating {
            holds_seals_or_compound: true,
            ..heat.clone()
        }),
        heating(Heating {
            part_limit: Some(celsius(80.0)),
            by_manual: true,
            oil_bath: true,
            flash_point: Some(celsius(110.0)),
            induction: true,
            ..heat.clone()
        }),
        heating(Heating {
            part_limit: Some(celsius(80.0)),
            ..heat
        }),
        Situation {
            cooling: Some(Cooling {
                liquid_nitrogen: true,
                ..Cooling::default()
            }),
            ..Situation::default()
        },
        Situation {
            cooling: Some(Cooling {
                dry_ice: true,
                ..Cooling::default()
            }),
            ..Situation::default()
        },
        Situation {
            pressing: Some(Pressing {
                struck: true,
                ..Pressing::default()
            }),
            ..Situation::default()
        },
        Situation {
            pressing: Some(Pressing {
                through_rolling_elements: true,
                ..Pressing::default()
            }),
            ..Situation::default()
        },
        lifting(Lifting {
            under_load: true,
            ..Lifting::default()
        }),
        pressing(23.0, 20.0),
        pressing(18.0, 20.0),
        by_hand(48.0, Some(2.0)),
        by_hand(48.0, Some(5.0)),
        sling(25.0),
        sling(40.0),
        hoist(0.9),
        hoist(1.1),
    ]);
    steps
}

#[test]
fn every_caution_can_be_raised_and_every_one_is_listed() {
    let raised: BTreeSet<_> = steps().iter().flat_map(ids).collect();
    let idle: Vec<_> = RULES
        .iter()
        .map(|rule| rule.id)
        .filter(|id| !raised.contains(id))
        .collect();
    assert_eq!(idle, Vec::<&str>::new());
    let listed = every();
    assert_eq!(listed.len(), RULES.len());
    assert_eq!(
        listed
            .iter()
            .map(|caution| caution.id)
            .collect::<BTreeSet<_>>()
            .len(),
        RULES.len()
    );
    for caution in listed {
        assert!(
            caution.danger.ends_with('.') && caution.act.ends_with('.'),
            "{}",
            caution.id
        );
        assert!(
            caution.danger.len() <= 90 && caution.act.len() <= 120,
            "{} is too long to read",
            caution.id
        );
        assert!(!caution.danger.contains('!') && !caution.act.contains('!'));
        assert!(!caution.source.is_empty());
    }
}

#[test]
fn each_switch_raises_its_own_caution_at_its_own_level() {
    use Level::{Care, Stop};
    let wet = |class| Situation {
        chemicals: vec![class],
        ..Situation::default()
    };
    let on = |set: fn(&mut Situation)| {
        let mut step = Situation::default();
        set(&mut step);
        step
    };
    let warm = |set: fn(&mut Heating)| {
        let mut heat = Heating {
            target: Some(celsius(40.0)),
            ..Heating::default()
        };
        set(&mut heat);
        heating(heat)
    };
    let near = |step: Situation| Situation {
        solvent_near: true,
        ..step
    };
    let soft = |step: Situation| Situation {
        soft_inside: Some("Baffle screws".to_owned()),
        ..step
    };
    let checks: Vec<(Situation, Vec<(&str, Level)>)> = vec![
        (Situation::default(), vec![]),
        (on(|s| s.spring = true), vec![("spring", Stop)]),
        (on(|s| s.turning = true), vec![("turning", Stop)]),
        (on(|s| s.before_cure = true), vec![("before-cure", Stop)]),
        (
            on(|s| s.running = true),
            vec![("exhaust", Stop), ("running-parts", Care)],
        ),
        (
            on(|s| s.high_strength_removal = true),
            vec![("locked-removal", Stop)],
        ),
        (on(|s| s.hot_oil = true), vec![("hot-oil", Care)]),
        (on(|s| s.gauging = true), vec![("gauging", Care)]),
        (on(|s| s.compressed_air = true), vec![("air", Care)]),
        (on(|s| s.solvent = true), vec![("solvent", Care)]),
        (wet(CompoundClass::SemiDryingGasket), vec![("solvent", Care)]),
        (
            wet(CompoundClass::ThreadlockMedium),
            vec![("anaerobic-skin", Care)],
        ),
        (
            wet(CompoundClass::SiliconeNeutral),
            vec![("silicone-vapour", Care)],
        ),
        (wet(CompoundClass::LightOil), vec![]),
        (warm(|_| ()), vec![]),
        (near(warm(|_| ())), vec![("heat-solvent", Stop)]),
        (
            near(on(|s| s.high_strength_removal = true)),
            vec![("heat-solvent", Stop), ("locked-removal", Stop)],
        ),
        (near(on(|s| s.spring = true)), vec![("spring", Stop)]),
        (soft(warm(|_| ())), vec![("heat-soft-inside", Stop)]),
        // The step says so itself: once is enough.
        (
            soft(warm(|h| h.holds_seals_or_compound = true)),
            vec![("heat-seals", Stop)],
        ),
        (soft(on(|s| s.spring = true)), vec![("spring", Stop)]),
        (
            on(|s| (s.fuel, s.hot_near) = (Some(any_fuel()), Some("Bearing".to_owned()))),
            vec![("hot-fuel", Stop)],
        ),
        (on(|s| s.fuel = Some(any_fuel())), vec![]),
        (on(|s| s.hot_near = Some("Bearing".to_owned())), vec![]),
        (
            on(|s| (s.fuel_near, s.high_strength_removal) = (Some("Fuel".to_owned()), true)),
            vec![("hot-fuel", Stop), ("locked-removal", Stop)],
        ),
        (
            on(|s| (s.half_cured, s.turning) = (Some("Spigot".to_owned()), true)),
            vec![("turning", Stop), ("half-cured-turn", Care)],
        ),
        (on(|s| s.half_cured = Some("Spigot".to_owned())), vec![]),
        (warm(|h| h.open_flame = true), vec![("heat-flame", Stop)]),
        (
            warm(|h| h.holds_seals_or_compound = true),
            vec![("heat-seals", Stop)],
        ),
    ];
    for (step, expected) in checks {
        let got: Vec<_> = cautions(&step)
            .iter()
            .map(|caution| (caution.id, caution.level))
            .collect();
        assert_eq!(got, expected, "{step:?}");
    }
}

#[test]
fn solvent_and_heat_in_one_step_stop_it() {
    let step = Situation {
        solvent: true,
        ..heating(Heating::default())
    };
    assert_eq!(ids(&step).first(), Some(&"heat-solvent"));
    let step = Situation {
        chemicals: vec![CompoundClass::SemiDryingGasket],
        ..heating(Heating::default())
    };
    assert_eq!(ids(&step).first(), Some(&"heat-solvent"));
}

fn maybe() -> impl Strategy<Value = Option<f64>> {
    proptest::option::of(any::<f64>())
}

prop_compose! {
    /// Any step at all, with any numbers.
    fn any_step()(
        numbers in proptest::collection::vec(maybe(), 9),
        switches in proptest::collection::vec(any::<bool>(), 30),
        chemicals in proptest::collection::vec(proptest::sample::select(CompoundClass::ALL.as_slice()), 0..4),
    ) -> Situation {
        Situation {
            pressing: switches[0].then(|| Pressing {
                force: numbers[0].map(Force::new::<kilonewton>),
                rating: numbers[1].map(Force::new::<kilonewton>),
                through_rolling_elements: switches[1],
                struck: switches[2],
            }),
            heating: switches[3].then(|| Heating {
                target: numbers[2].map(celsius),
                part_limit: numbers[3].map(celsius),
                holds_seals_or_compound: switches[4],
                open_flame: switches[6],
                by_manual: switches[20],
                oil_bath: switches[21],
                flash_point: numbers[3].map(celsius),
                induction: switches[22],
            }),
            cooling: switches[7].then(|| Cooling { to: numbers[4].map(celsius), dry_ice: switches[8], liquid_nitrogen: switches[23] }),
            lifting: switches[9].then(|| Lifting {
                mass: numbers[5].map(Mass::new::<kilogram>),
                by_hand: switches[10],
                lifting_index: numbers[6],
                sling_angle: numbers[7].map(Angle::new::<degree>),
                hoist_share: numbers[8],
                under_load: switches[11],
            }),
            chemicals,
            solvent: switches[12],
            solvent_near: switches[5],
            soft_inside: switches[25].then(|| "Baffle screws".to_owned()),
            half_cured: switches[26].then(|| "Spigot".to_owned()),
            hot_near: switches[27].then(|| "Bearing".to_owned()),
            fuel: switches[28].then(any_fuel),
            fuel_near: switches[29].then(|| "Fuel".to_owned()),
            spring: switches[13],
            compressed_air: switches[14],
            hot_oil: switches[15],
            turning: switches[16],
            before_cure: switches[17],
            high_strength_removal: switches[18],
            running: switches[19],
            gauging: switches[24],
        }
    }
}

#[test]
fn a_share_too_large_to_write_is_left_out_of_the_words() {
    for caution in cautions(&hoist(f64::MAX)) {
        assert!(!caution.danger.contains("inf"), "{}", caution.danger);
    }
}

proptest! {
    #[test]
    fn the_gravest_come_first_and_at_most_three_are_shown(step in any_step()) {
        let all: Vec<Caution> = cautions(&step);
        prop_assert!(all.windows(2).all(|pair| pair[0].level >= pair[1].level));
        prop_assert_eq!(&all, &cautions(&step));
        let top = shown(&all);
        prop_assert_eq!(top.len(), all.len().min(3));
        prop_assert_eq!(top, &all[..top.len()]);
        for caution in &all {
            prop_assert!(!caution.danger.contains("NaN") && !caution.danger.contains("inf"), "{}", caution.danger);
        }
    }

    #[test]
    fn a_number_that_is_none_stops_the_step(which in 0..5_u8) {
        let (step, id) = match which {
            0 => (pressing(f64::NAN, 20.0), "press-over"),
            1 => (pressing(1.0, f64::NAN), "press-over"),
            2 => (sling(f64::NAN), "sling-flat"),
            3 => (hoist(f64::NAN), "hoist-over"),
            _ => (by_hand(1.0, Some(f64::NAN)), "hands-refused"),
        };
        prop_assert!(raises(&step, id));
    }

    #[test]
    fn a_press_without_a_rating_worth_the_name_is_stopped(force in 0.0..1e6_f64, rating in -1e6..=0.0_f64) {
        prop_assert!(raises(&pressing(force, rating), "press-over"));
    }
}

#[test]
fn a_long_title_pushes_nothing_out_of_a_warning() {
    let title = "Bearing ".repeat(30);
    let step = Situation {
        fuel: Some(any_fuel()),
        hot_near: Some(title.clone()),
        ..Situation::default()
    };
    let danger = cautions(&step)[0].danger.clone();
    let quoted: String = title.chars().take(40).collect();
    assert!(danger.contains(&format!("“{quoted}…”")), "{danger}");
    assert!(!danger.contains(&title));
}
