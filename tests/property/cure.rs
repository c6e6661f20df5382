//! A cure never ends earlier than its label, and whatever slows it never ends it sooner.

use halfcase::trade::compound::CompoundClass;
use halfcase::trade::cure::{
    Chemistry, CureSpec, LabelTimes, Milestone, ShopHistory, ShopReading, Substrate,
};
use halfcase::trade::moment::Moment;
use proptest::prelude::*;
use uom::si::f64::{Length, Ratio, ThermodynamicTemperature, Time};
use uom::si::length::millimeter;
use uom::si::ratio::ratio;
use uom::si::thermodynamic_temperature::degree_celsius;
use uom::si::time::{minute, second};

const METALS: [Substrate; 6] = [
    Substrate::BrassOrCopper,
    Substrate::SteelOrIron,
    Substrate::Aluminium,
    Substrate::Stainless,
    Substrate::Plated,
    Substrate::Unknown,
];

fn celsius(number: f64) -> ThermodynamicTemperature {
    ThermodynamicTemperature::new::<degree_celsius>(number)
}

fn mm(number: f64) -> Length {
    Length::new::<millimeter>(number)
}

prop_compose! {
    fn any_chemistry()(
        which in 0..3_u8,
        metal in proptest::sample::select(METALS.as_slice()),
        gap in 0.0..0.74_f64,
        activator in any::<bool>(),
        depth in 0.0..20.0_f64,
    ) -> Chemistry {
        match which {
            0 => Chemistry::Anaerobic { substrate: metal, gap: mm(gap), activator },
            1 => Chemistry::MoistureSilicone { depth: mm(depth) },
            _ => Chemistry::SolventDrying,
        }
    }
}

prop_compose! {
    fn any_spec()(
        chemistry in any_chemistry(),
        at in 5.0..40.0_f64,
        minutes in proptest::collection::vec(1.0..3000.0_f64, 6),
        named in proptest::collection::vec(any::<bool>(), 5),
    ) -> CureSpec {
        let mut minutes = minutes;
        minutes.sort_by(f64::total_cmp);
        let time = |at: usize| named[at].then(|| Time::new::<minute>(minutes[at]));
        CureSpec {
            chemistry,
            label: LabelTimes {
                assembly: time(0),
                fixture: time(1),
                handling: time(2),
                fit_for_oil: time(3),
                fit_for_pressure: time(4),
                ..LabelTimes::full_only(celsius(at), Time::new::<minute>(minutes[5]))
            },
        }
    }
}

prop_compose! {
    /// Readings a shop could have, in any order, from before the start to long after it.
    fn any_shop()(
        readings in proptest::collection::vec(
            (-100_000_000..400_000_000_i64, 6.0..45.0_f64, proptest::option::of(0.06..1.0_f64)), 0..6),
    ) -> ShopHistory {
        ShopHistory(readings.into_iter().map(|(at, temperature, humidity)| ShopReading {
            at: Moment(at),
            temperature: celsius(temperature),
            humidity: humidity.map(Ratio::new::<ratio>),
        }).collect())
    }
}

/// The same shop, colder by so many kelvin.
fn colder(shop: &ShopHistory, by: f64) -> ShopHistory {
    ShopHistory(
        shop.0
            .iter()
            .map(|reading| ShopReading {
                temperature: celsius((reading.temperature.get::<degree_celsius>() - by).max(5.5)),
                ..reading.clone()
            })
            .collect(),
    )
}

proptest! {
    #[test]
    fn never_earlier_than_the_label(spec in any_spec(), shop in any_shop(), start in -1_000_000..1_000_000_i64) {
        let start = Moment(start);
        for milestone in Milestone::ALL {
            let Some(label) = spec.label.time_to(milestone) else { continue };
            let done = spec.reached_at(milestone, start, &shop).unwrap();
            prop_assert!(done.earliest <= done.likely && done.likely <= done.latest);
            let floor_ms = label.get::<second>() * 1000.0;
            let least = done.earliest.since(start).get::<second>() * 1000.0;
            if milestone.is_deadline() {
                let most = done.latest.since(start).get::<second>() * 1000.0;
                prop_assert!(most <= floor_ms + 1.0, "a deadline is never put off");
                prop_assert_eq!(done.binding(milestone), done.earliest);
            } else {
                prop_assert!(least >= floor_ms, "{:?}: {} before {}", milestone, least, floor_ms);
                prop_assert_eq!(done.binding(milestone), done.latest);
            }
            prop_assert_eq!(done.shop_unknown, shop.is_empty());
        }
    }

    #[test]
    fn milestones_come_in_order(spec in any_spec(), shop in any_shop()) {
        let at: Vec<_> = Milestone::ALL[1..].iter()
            .map(|milestone| spec.reached_at(*milestone, Moment(0), &shop).unwrap())
            .collect();
        prop_assert!(at.windows(2).all(|pair| pair[0].latest <= pair[1].latest && pair[0].likely <= pair[1].likely));
    }

    #[test]
    fn colder_is_never_sooner(spec in any_spec(), shop in any_shop(), by in 0.0..20.0_f64) {
        let warm = spec.reached_at(Milestone::FullCure, Moment(0), &shop).unwrap();
        let cold = spec.reached_at(Milestone::FullCure, Moment(0), &colder(&shop, by)).unwrap();
        prop_assert!(cold.earliest >= warm.earliest && cold.likely >= warm.likely && cold.latest >= warm.latest);
    }

    #[test]
    fn a_colder_plan_for_the_night_is_never_sooner(spec in any_spec(), shop in any_shop(),
        from in 0..200_000_000_i64, temperature in 5.5..20.0_f64) {
        let before = spec.reached_at(Milestone::FullCure, Moment(0), &shop).unwrap();
        let at = Moment(from);
        let now = shop.at(at).map_or(spec.label.at, |reading| reading.temperature);
        prop_assume!(!shop.is_empty() && celsius(temperature) <= now);
        let humidity = shop.at(at).and_then(|reading| reading.humidity);
        let mut planned = shop;
        planned.0.push(ShopReading { at, temperature: celsius(temperature), humidity });
        let after = spec.reached_at(Milestone::FullCure, Moment(0), &planned).unwrap();
        prop_assert!(after.latest >= before.latest);
    }

    #[test]
    fn wider_and_deeper_are_never_sooner(spec in any_spec(), shop in any_shop(), more in 0.0..5.0_f64) {
        let done = spec.reached_at(Milestone::FullCure, Moment(0), &shop).unwrap();
        let chemistry = match spec.chemistry {
            Chemistry::Anaerobic { substrate, gap, activator } => {
                Chemistry::Anaerobic { substrate, gap: mm((gap.get::<millimeter>() + more / 10.0).min(0.74)), activator }
            }
            Chemistry::MoistureSilicone { depth } => {
                Chemistry::MoistureSilicone { depth: mm(depth.get::<millimeter>() + more) }
            }
            Chemistry::SolventDrying => Chemistry::SolventDrying,
        };
        let wider = CureSpec { chemistry, ..spec }.reached_at(Milestone::FullCure, Moment(0), &shop).unwrap();
        prop_assert!(wider.earliest >= done.earliest && wider.likely >= done.likely && wider.latest >= done.latest);
    }

    #[test]
    fn drier_is_never_sooner(spec in any_spec(), shop in any_shop(), share in 0.1..1.0_f64) {
        let damp = ShopHistory(shop.0.iter().map(|reading| ShopReading {
            humidity: Some(Ratio::new::<ratio>(0.6)), ..reading.clone() }).collect());
        let dry = ShopHistory(shop.0.iter().map(|reading| ShopReading {
            humidity: Some(Ratio::new::<ratio>(0.6 * share)), ..reading.clone() }).collect());
        let quick = spec.reached_at(Milestone::FullCure, Moment(0), &damp).unwrap();
        let slow = spec.reached_at(Milestone::FullCure, Moment(0), &dry).unwrap();
        prop_assert!(slow.earliest >= quick.earliest && slow.latest >= quick.latest);
    }

    #[test]
    fn an_activator_never_slows_it(spec in any_spec(), shop in any_shop()) {
        let Chemistry::Anaerobic { substrate, gap, .. } = spec.chemistry else { return Ok(()) };
        let with = |activator| CureSpec { chemistry: Chemistry::Anaerobic { substrate, gap, activator }, ..spec.clone() }
            .reached_at(Milestone::FullCure, Moment(0), &shop).unwrap();
        prop_assert!(with(true).latest <= with(false).latest);
    }

    #[test]
    fn the_order_of_the_readings_does_not_matter(spec in any_spec(), shop in any_shop()) {
        let instants: std::collections::BTreeSet<_> = shop.0.iter().map(|reading| reading.at).collect();
        prop_assume!(instants.len() == shop.0.len());
        let mut turned = shop.clone();
        turned.0.reverse();
        prop_assert_eq!(
            spec.reached_at(Milestone::FullCure, Moment(0), &shop),
            spec.reached_at(Milestone::FullCure, Moment(0), &turned)
        );
    }

    #[test]
    fn any_numbers_at_all_give_an_answer_or_a_reason(
        kelvin in any::<f64>(), minutes in any::<f64>(), gap in any::<f64>(), reading in any::<f64>(),
        humidity in any::<f64>(), at in any::<i64>(), start in any::<i64>(), which in 0..3_u8,
    ) {
        use uom::si::thermodynamic_temperature::kelvin as k;
        let chemistry = match which {
            0 => Chemistry::Anaerobic { substrate: Substrate::Plated, gap: mm(gap), activator: false },
            1 => Chemistry::MoistureSilicone { depth: mm(gap) },
            _ => Chemistry::SolventDrying,
        };
        for (label_at, minutes) in [(ThermodynamicTemperature::new::<k>(kelvin), minutes), (celsius(22.0), 1440.0)] {
            let label = LabelTimes {
                assembly: Some(Time::new::<minute>(minutes / 10.0)),
                ..LabelTimes::full_only(label_at, Time::new::<minute>(minutes))
            };
            let spec = CureSpec { chemistry, label };
            let shop = ShopHistory(vec![
                ShopReading { at: Moment(at), temperature: ThermodynamicTemperature::new::<k>(reading),
                    humidity: Some(Ratio::new::<ratio>(humidity)) },
                ShopReading { at: Moment(0), temperature: celsius(30.0), humidity: None },
            ]);
            for milestone in Milestone::ALL {
                match spec.reached_at(milestone, Moment(start), &shop) {
                    Ok(done) => prop_assert!(done.earliest >= Moment(start) && done.earliest <= done.latest),
                    Err(reason) => prop_assert!(reason.to_string().ends_with('.')),
                }
            }
        }
    }

    #[test]
    fn a_clock_is_stored_and_read_back_the_same(minutes in 1..10_000_u32, tenths in 50..400_u32, metal in 0..6_usize) {
        let spec = CureSpec {
            chemistry: Chemistry::Anaerobic { substrate: METALS[metal], gap: mm(0.1), activator: false },
            label: LabelTimes {
                fixture: Some(Time::new::<minute>(0.5)),
                ..LabelTimes::full_only(celsius(f64::from(tenths) / 10.0), Time::new::<minute>(f64::from(minutes)))
            },
        };
        let text = serde_json::to_string(&spec).unwrap();
        let read: CureSpec = serde_json::from_str(&text).unwrap();
        prop_assert_eq!(&read, &spec);
        let shop = ShopHistory(vec![ShopReading { at: Moment(5), temperature: celsius(f64::from(tenths) / 10.0),
            humidity: Some(Ratio::new::<ratio>(0.45)) }]);
        let text = serde_json::to_string(&shop).unwrap();
        prop_assert_eq!(serde_json::from_str::<ShopHistory>(&text).unwrap(), shop);
    }
}

#[test]
fn typical_figures_are_sound_for_every_class() {
    let joint = halfcase::trade::application::Application::default();
    for class in CompoundClass::ALL {
        let Some(spec) = class.typical_cure(&joint) else {
            continue;
        };
        for milestone in &Milestone::ALL[1..] {
            assert!(
                spec.reached_at(*milestone, Moment(0), &ShopHistory::default())
                    .is_ok(),
                "{class:?}"
            );
        }
    }
}
