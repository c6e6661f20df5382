//! What belongs to the bench rather than to a job: wrenches, shop temperature, ratings, the look.

use super::{Desk, LiftBench, SeatBench};
use crate::job::bonding::Walk;
use crate::job::bottle::Bottle;
use crate::job::night::Night;
use crate::trade::cure::{ShopHistory, ShopReading};
use crate::trade::moment::Moment;
use crate::trade::quantity::{ThermodynamicTemperature, TorqueUnit};
use crate::trade::wrench::{Wrench, WrenchKind};
use serde::{Deserialize, Serialize};
use uom::si::thermodynamic_temperature::degree_celsius;

/// Dark or light.
#[derive(Debug, Clone, Copy, Default, PartialEq, Eq, Serialize, Deserialize)]
#[serde(rename_all = "snake_case")]
pub enum Look {
    /// As the phone is set.
    #[default]
    Phone,
    /// A lamp-lit bench.
    Dark,
    /// Daylight, glare.
    Light,
}

/// The bench's own settings. Fields missing from an older form take their first values.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
#[serde(default)]
pub struct Settings {
    /// My wrenches, in my order.
    pub wrenches: Vec<Wrench>,
    /// Which of them is in the hand.
    pub in_hand: usize,
    /// The shop's temperature, as told.
    pub shop: ShopHistory,
    /// The nights planned in it.
    pub night: Option<Night>,
    /// My bottles and tubes, in my order.
    pub bottles: Vec<Bottle>,
    /// The joint on the Bond screen.
    pub walk: Walk,
    /// What my press may push, kN.
    pub press_kn: Option<f64>,
    /// What my hoist may lift, kg.
    pub hoist_kg: Option<f64>,
    /// Dark or light.
    pub look: Look,
    /// Who signs the record.
    pub initials: String,
    /// What is typed on the Torque screen, so that a reload loses nothing.
    pub torque_typed: String,
    /// The unit it is typed in.
    pub torque_unit: TorqueUnit,
    /// What else lies on the Torque screen.
    pub desk: Desk,
    /// The Seat screen's own numbers, and what is on its way from the oven.
    pub seat: SeatBench,
    /// The Lift screen's own numbers, my hoist's boom, kg or lb.
    pub lift: LiftBench,
}

impl Default for Settings {
    fn default() -> Self {
        Self {
            wrenches: first_wrenches(),
            in_hand: 0,
            shop: ShopHistory::default(),
            night: None,
            bottles: Vec::new(),
            walk: Walk::default(),
            press_kn: None,
            hoist_kg: None,
            look: Look::Phone,
            initials: String::new(),
            torque_typed: String::new(),
            torque_unit: TorqueUnit::NewtonMetre,
            desk: Desk::default(),
            seat: SeatBench::default(),
            lift: LiftBench::default(),
        }
    }
}

/// Three ordinary wrenches to begin with; the user puts their own in their place.
fn first_wrenches() -> Vec<Wrench> {
    let wrench = |name: &str, unit, min, max, division, main_division, accuracy| Wrench {
        name: name.to_owned(),
        unit,
        min,
        max,
        division,
        kind: WrenchKind::Thimble { main_division },
        accuracy,
    };
    vec![
        wrench("Small", TorqueUnit::PoundInch, 20.0, 120.0, 1.0, 10.0, 0.04),
        wrench("Middle", TorqueUnit::NewtonMetre, 10.0, 60.0, 0.5, 5.0, 0.04),
        wrench("Large", TorqueUnit::NewtonMetre, 40.0, 210.0, 1.0, 10.0, 0.04),
    ]
}

impl Settings {
    /// The wrench in the hand.
    pub fn wrench(&self) -> Option<&Wrench> {
        self.wrenches.get(self.in_hand)
    }

    /// What is typed and carried to the Torque screen.
    pub fn entry(&self) -> (&str, TorqueUnit, &Desk) {
        (&self.torque_typed, self.torque_unit, &self.desk)
    }

    /// Takes what is typed and carried to the Torque screen from another.
    pub fn take_entry(&mut self, from: &Self) {
        self.torque_typed.clone_from(&from.torque_typed);
        self.torque_unit = from.torque_unit;
        self.desk.clone_from(&from.desk);
    }

    /// Notes the shop's temperature from `at` on, °C.
    pub fn note_temperature(&mut self, at: Moment, celsius: f64) {
        let temperature = ThermodynamicTemperature::new::<degree_celsius>(celsius);
        self.shop.0.push(ShopReading {
            at,
            temperature,
            humidity: None,
        });
    }

    /// The shop's temperature at `now`, when it was ever told.
    pub fn temperature_at(&self, now: Moment) -> Option<ThermodynamicTemperature> {
        self.shop.at(now).map(|reading| reading.temperature)
    }
}
