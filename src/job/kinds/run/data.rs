//! What a run step holds.

use crate::job::id::StepId;
use crate::job::reading::{Fact, What};
use crate::job::text_form;
use crate::trade::quantity::{TemperatureUnit, Typed};
use serde::{Deserialize, Serialize};

/// A temperature as the manual states it.
pub type Warmth = Typed<TemperatureUnit>;

/// Started and run.
#[derive(Debug, Clone, Default, PartialEq, Serialize, Deserialize)]
#[serde(default)]
pub struct Run {
    /// What is started.
    pub what: String,
    /// Run until it reads at least that.
    #[serde(skip_serializing_if = "Option::is_none", with = "text_form::temperature")]
    pub until: Option<Warmth>,
    /// It must not read more than that.
    #[serde(skip_serializing_if = "Option::is_none", with = "text_form::temperature")]
    pub never_over: Option<Warmth>,
    /// Run for at least so many minutes.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub minutes: Option<f64>,
    /// It is left to cool before anything is touched again.
    #[serde(skip_serializing_if = "std::ops::Not::not")]
    pub cool: bool,
    /// The level that is looked at again afterwards, in words; empty where none is.
    #[serde(skip_serializing_if = "String::is_empty")]
    pub level: String,
    /// The fasteners that are brought to torque again afterwards; none: not again.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub torque_again: Option<StepId>,
}

impl Run {
    /// A run that is looked at cold again, of which nothing else is said.
    pub fn blank() -> Self {
        Self {
            cool: true,
            ..Self::default()
        }
    }

    /// What it asks to be read and said, in its turn.
    pub fn asked(&self) -> Vec<What> {
        let warm = self.until.is_some() || self.never_over.is_some();
        let all = [
            (true, What::Fact(Fact::Runs)),
            (warm, What::RanAt),
            (self.minutes.is_some(), What::RanFor),
            (true, What::Fact(Fact::NoLeaks)),
            (self.cool, What::Fact(Fact::Cooled)),
            (!self.level.is_empty(), What::Fact(Fact::Level)),
            (self.torque_again.is_some(), What::Fact(Fact::TorquedAgain)),
        ];
        all.into_iter()
            .filter(|(asked, _)| *asked)
            .map(|(_, what)| what)
            .collect()
    }

    /// The scale its temperature is read on.
    pub fn scale(&self) -> TemperatureUnit {
        let stated = self.until.or(self.never_over);
        stated.map_or(TemperatureUnit::Celsius, |stated| stated.unit)
    }

    /// The least and the most it may read, on [`Self::scale`].
    pub fn warmth(&self) -> (Option<f64>, Option<f64>) {
        let on_scale = |stated: Warmth| match stated.unit == self.scale() {
            true => stated.value,
            // A limit given on the other scale is read to a tenth.
            false => (self.scale().value_of(stated.temperature()) * 10.0).round() / 10.0,
        };
        (self.until.map(on_scale), self.never_over.map(on_scale))
    }

    /// Whether so warm a reading, on [`Self::scale`], lies within what is stated; none where nothing is.
    pub fn warm(&self, value: f64) -> Option<bool> {
        match self.warmth() {
            (None, None) => None,
            (least, most) => {
                Some(least.is_none_or(|least| value >= least) && most.is_none_or(|most| value <= most))
            }
        }
    }

    /// Whether it ran so many minutes and no less; none where no time is stated.
    pub fn long_enough(&self, minutes: f64) -> Option<bool> {
        self.minutes.map(|least| minutes >= least)
    }
}
