//! What a lift step holds.

use crate::job::units::Units;
use crate::trade::lift::Grip;
use crate::trade::quantity::{LengthUnit, MassUnit};
use crate::trade::sling::Hitch;
use serde::{Deserialize, Serialize};

/// Something heavy moved.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
pub struct LiftWork {
    /// What is lifted.
    pub load: String,
    /// How heavy it is, kg.
    pub mass_kg: f64,
    /// By hand or by sling.
    pub way: LiftWay,
    /// Where the hoist's boom stands: from the post to the hook, mm.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub boom_mm: Option<f64>,
    /// Someone has to be or reach under it.
    #[serde(default)]
    pub under_load: bool,
    /// By hand, the reach where it is set down, cm; the same as at the start where it isn't told.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub reach_to_cm: Option<f64>,
    /// What its weight and lengths are typed and told in, kg with cm or lb with inches; none: as the job's
    /// manual measures.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub weighs_in: Option<MassUnit>,
    /// How the slings go round it.
    #[serde(default, skip_serializing_if = "is_straight")]
    pub hitch: Hitch,
    /// The legs pull on shoulder-type eyebolts.
    #[serde(default, skip_serializing_if = "is_false")]
    pub eyebolts: bool,
    /// How far the two lifting points are apart, cm, where the centre of gravity isn't in the middle.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub span_cm: Option<f64>,
    /// How far the centre of gravity is from the nearer one, cm.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub near_cm: Option<f64>,
}

fn is_straight(hitch: &Hitch) -> bool {
    *hitch == Hitch::Straight
}

fn is_false(it: &bool) -> bool {
    !it
}

impl Default for LiftWork {
    /// Twenty kilograms from the floor to the bench: numbers to put one's own in place of.
    fn default() -> Self {
        Self {
            load: String::new(),
            mass_kg: 20.0,
            way: LiftWay::hands(),
            boom_mm: None,
            under_load: false,
            reach_to_cm: None,
            weighs_in: None,
            hitch: Hitch::Straight,
            eyebolts: false,
            span_cm: None,
            near_cm: None,
        }
    }
}

impl LiftWork {
    /// What it is told in.
    pub fn told_in(&self) -> MassUnit {
        self.weighs_in.unwrap_or(MassUnit::Kilogram)
    }

    /// The same, told as a job of those units tells it, where it doesn't say itself.
    pub fn told_by(&self, units: Units) -> Self {
        let pounds = matches!(units.length, LengthUnit::Inch | LengthUnit::Thou);
        Self {
            weighs_in: self.weighs_in.or(pounds.then_some(MassUnit::Pound)),
            ..self.clone()
        }
    }
}

/// How it is lifted.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
#[serde(rename_all = "snake_case")]
pub enum LiftWay {
    /// By hand: how far the hands are from the ankles, from which to which height, how far the body
    /// turns, how it is held.
    Hands {
        reach_cm: f64,
        from_cm: f64,
        to_cm: f64,
        #[serde(default)]
        turn_deg: f64,
        #[serde(default = "fair_grip")]
        grip: Grip,
    },
    /// By hoist: sling legs and their angle from the horizontal.
    Sling { legs: u8, angle_deg: f64 },
}

fn fair_grip() -> Grip {
    Grip::Fair
}

impl LiftWay {
    /// An ordinary lift by hand to begin with.
    pub fn hands() -> Self {
        Self::Hands {
            reach_cm: 40.0,
            from_cm: 30.0,
            to_cm: 90.0,
            turn_deg: 0.0,
            grip: fair_grip(),
        }
    }

    /// An ordinary sling to begin with.
    pub fn sling() -> Self {
        Self::Sling {
            legs: 2,
            angle_deg: 60.0,
        }
    }
}
