//! What belongs to the bench rather than to a job: wrenches, shop temperature, ratings, the look.

use super::bonding::Walk;
use super::bottle::Bottle;
use super::desk::Desk;
use super::figures::Figures;
use super::kinds::lift::Hoist;
use super::kinds::seat::oven::OvenRun;
use super::kinds::{LiftWork, Seat};
use super::measuring::MeasureBench;
use super::night::Night;
use crate::trade::cure::ShopHistory;
use crate::trade::hoist::BoomPosition;
use crate::trade::moment::Moment;
use crate::trade::quantity::{
    DecimalMark, Mass, MassUnit, TemperatureUnit, ThermodynamicTemperature, TorqueUnit,
};
use crate::trade::wrench::{Wrench, WrenchKind};
use serde::{Deserialize, Serialize};
use uom::si::mass::kilogram;

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
    /// Asked for a wrench, the user said that any will do: torques are converted and set on none.
    #[serde(skip_serializing_if = "std::ops::Not::not")]
    pub any_wrench: bool,
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
    /// Each new thing a step asks is read aloud.
    #[serde(skip_serializing_if = "std::ops::Not::not")]
    pub aloud: bool,
    /// A press that counts is heard.
    #[serde(skip_serializing_if = "std::ops::Not::not")]
    pub ticks: bool,
    /// What our own temperatures are said in: °C or °F.
    #[serde(skip_serializing_if = "is_celsius")]
    pub temperature: TemperatureUnit,
    /// What our numbers are shown with on the screen: a decimal point or comma.
    #[serde(skip_serializing_if = "is_point")]
    pub decimal: DecimalMark,
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
    /// What is typed on the Measure screen.
    #[serde(skip_serializing_if = "MeasureBench::is_blank")]
    pub measure: MeasureBench,
}

fn is_celsius(unit: &TemperatureUnit) -> bool {
    *unit == TemperatureUnit::Celsius
}

fn is_point(mark: &DecimalMark) -> bool {
    *mark == DecimalMark::Point
}

impl Default for Settings {
    fn default() -> Self {
        Self {
            wrenches: Vec::new(),
            in_hand: 0,
            any_wrench: false,
            shop: ShopHistory::default(),
            night: None,
            bottles: Vec::new(),
            walk: Walk::default(),
            press_kn: None,
            hoist_kg: None,
            look: Look::Phone,
            aloud: false,
            ticks: false,
            temperature: TemperatureUnit::Celsius,
            decimal: DecimalMark::Point,
            initials: String::new(),
            torque_typed: String::new(),
            torque_unit: TorqueUnit::NewtonMetre,
            desk: Desk::default(),
            seat: SeatBench::default(),
            lift: LiftBench::default(),
            measure: MeasureBench::default(),
        }
    }
}

/// Three ordinary wrenches. Earlier releases laid them out on every new bench.
fn example_wrenches() -> Vec<Wrench> {
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
    /// Those of the example.
    pub fn example() -> Self {
        Self {
            wrenches: example_wrenches(),
            ..Self::default()
        }
    }

    /// Whether nothing of it was ever told, whichever release laid it out.
    pub fn untouched(&self) -> bool {
        *self == Self::default() || *self == Self::example()
    }

    /// The wrench in the hand.
    pub fn wrench(&self) -> Option<&Wrench> {
        self.wrenches.get(self.in_hand)
    }

    /// The shop's temperature at `now`, when it was ever told.
    pub fn temperature_at(&self, now: Moment) -> Option<ThermodynamicTemperature> {
        self.shop.at(now).map(|reading| reading.temperature)
    }

    /// What our own figures are said in.
    pub fn figures(&self) -> Figures {
        Figures {
            temperature: self.temperature,
            mass: self.lift.unit,
        }
    }

    /// My hoist, as told.
    pub fn hoist(&self) -> Hoist<'_> {
        Hoist {
            boom: &self.lift.boom,
            rating: self.hoist_kg.map(Mass::new::<kilogram>),
        }
    }
}

/// What the Seat screen keeps on the bench.
#[derive(Debug, Clone, Default, PartialEq, Serialize, Deserialize)]
#[serde(default)]
pub struct SeatBench {
    /// Its own numbers, apart from any step.
    pub work: Seat,
    /// The depth read for them, mm.
    pub depth_mm: Option<f64>,
    /// The gap read for them, mm.
    pub gap_mm: Option<f64>,
    /// A part on its way from the oven or the freezer.
    pub oven: Option<OvenRun>,
}

/// What the Lift screen keeps on the bench.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
#[serde(default)]
pub struct LiftBench {
    /// Its own numbers, apart from any step.
    pub work: LiftWork,
    /// The holes of my hoist's boom, each with its rating, from the post outwards.
    pub boom: Vec<BoomPosition>,
    /// What weights are typed and shown in.
    pub unit: MassUnit,
}

impl Default for LiftBench {
    fn default() -> Self {
        Self {
            work: LiftWork::default(),
            boom: Vec::new(),
            unit: MassUnit::Kilogram,
        }
    }
}

/// A part of the settings that is kept by itself, so that a digit typed on Torque writes no wrenches.
pub struct Piece {
    /// What it is kept under.
    pub name: &'static str,
    /// Its fields, as serde names them.
    pub fields: &'static [&'static str],
    /// Whether two settings have it alike.
    pub same: fn(&Settings, &Settings) -> bool,
    /// Takes it over from others.
    pub take: fn(&mut Settings, &Settings),
}

macro_rules! piece {
    ($name:literal: $($field:ident),+) => {
        Piece {
            name: $name,
            fields: &[$(stringify!($field)),+],
            same: |a, b| $(a.$field == b.$field)&&+,
            take: |to, from| { $(to.$field.clone_from(&from.$field);)+ },
        }
    };
}

/// Every piece; each field stands in one.
pub const PIECES: [Piece; 7] = [
    piece!("bench": look, aloud, ticks, initials, temperature, decimal),
    piece!("tools": wrenches, in_hand, any_wrench, press_kn, hoist_kg),
    piece!("bottles": bottles),
    piece!("shop": shop, night),
    piece!("screens": walk, seat, lift),
    piece!("typed": torque_typed, torque_unit, desk),
    piece!("measure": measure),
];
