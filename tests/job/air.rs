//! What is known of the shop's air while a joint cures: told for it, told long ago, not at all.

use super::{MORNING, hours};
use halfcase::job::air::{Air, air_of};
use halfcase::job::clock::{ClockId, CureClock};
use halfcase::trade::cure::{Chemistry, CureSpec, LabelTimes, ShopHistory, ShopReading};
use halfcase::trade::moment::Moment;
use halfcase::trade::quantity::{ThermodynamicTemperature, Time};
use uom::si::thermodynamic_temperature::degree_celsius;
use uom::si::time::hour;

fn celsius(celsius: f64) -> ThermodynamicTemperature {
    ThermodynamicTemperature::new::<degree_celsius>(celsius)
}

fn reading(at: Moment, warm: f64) -> ShopReading {
    ShopReading {
        at,
        temperature: celsius(warm),
        humidity: None,
    }
}

#[test]
fn a_temperature_of_last_summer_is_not_told_for_todays_cure() {
    let clock = CureClock {
        id: ClockId(1),
        name: "Case joint".to_owned(),
        compound: "a sealant".to_owned(),
        spec: CureSpec {
            chemistry: Chemistry::SolventDrying,
            label: LabelTimes::full_only(celsius(22.0), Time::new::<hour>(24.0)),
        },
        started: MORNING,
        held_ms: 0,
        bound: None,
        ended: None,
    };
    let air = |readings: &[ShopReading]| air_of(&clock, &ShopHistory(readings.to_vec()));
    assert_eq!(air(&[]), Air::NotTold { label: celsius(22.0) });
    let august = hours(-2_000.0);
    assert_eq!(
        air(&[reading(august, 22.0)]),
        Air::Stale {
            temperature: celsius(22.0),
            told: august
        }
    );
    // Told yesterday evening, this morning, or after it went on: told.
    for told in [-12.0, 0.0, 0.5] {
        assert_eq!(
            air(&[reading(august, 22.0), reading(hours(told), 8.0)]),
            Air::Told,
            "{told}"
        );
    }
    // Too long before, or hours after it went on: those hours still go by last summer's.
    for told in [-19.0, 1.5] {
        assert!(
            matches!(
                air(&[reading(august, 22.0), reading(hours(told), 8.0)]),
                Air::Stale { .. }
            ),
            "{told}"
        );
    }
}
