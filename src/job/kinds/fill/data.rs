//! What a fill step holds.

use crate::job::text_form;
use crate::trade::caution::{Fuel, any_fuel, fuel_named};
use crate::trade::quantity::{Typed, VolumeUnit};
use serde::{Deserialize, Serialize};

/// A volume as the manual states it.
pub type Amount = Typed<VolumeUnit>;

/// Filled with a fluid.
#[derive(Debug, Clone, Default, PartialEq, Serialize, Deserialize)]
#[serde(default)]
pub struct Fill {
    /// The fluid.
    pub fluid: String,
    /// How much goes into what is dry, where that is stated in litres; 0 where it isn't.
    pub litres: f64,
    /// It is hot when it is handled.
    pub hot: bool,
    /// How much goes into what is dry, in another unit.
    #[serde(skip_serializing_if = "Option::is_none", with = "text_form::volume")]
    pub dry: Option<Amount>,
    /// How much goes in again after draining, which leaves some behind.
    #[serde(skip_serializing_if = "Option::is_none", with = "text_form::volume")]
    pub refill: Option<Amount>,
    /// It was drained: the refill is what counts, not the dry fill.
    #[serde(skip_serializing_if = "std::ops::Not::not")]
    pub drained: bool,
    /// The level it is filled to, in words; empty where only the amount counts.
    #[serde(skip_serializing_if = "String::is_empty")]
    pub level: String,
    /// It is fuel, whatever it is called.
    #[serde(skip_serializing_if = "std::ops::Not::not")]
    pub fuel: bool,
    /// It is no fuel, whatever it is called.
    #[serde(skip_serializing_if = "std::ops::Not::not")]
    pub no_fuel: bool,
    /// What it is measured in at the bench, where that is not the manual's unit.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub measured_in: Option<VolumeUnit>,
}

/// How far what was put in may lie from the stated amount without a word: common practice, no source.
/// A tenth is what a jug is read to, and what a filter or a cooler left full makes.
const NEAR: f64 = 0.1;

impl Fill {
    /// The fuel it is, by its name or as told; none where it is none.
    pub fn fuel(&self) -> Option<&'static Fuel> {
        let fuel = fuel_named(&self.fluid).or_else(|| self.fuel.then(any_fuel));
        // Where a file says both, it is handled as what lights.
        fuel.filter(|_| self.fuel || !self.no_fuel)
    }

    /// How much goes into what is dry, where the manual says.
    pub fn dry(&self) -> Option<Amount> {
        self.dry
            .or_else(|| (self.litres > 0.0).then(|| litres(self.litres)))
    }

    /// Keeps how much goes into what is dry: litres as every release wrote them.
    pub fn set_dry(&mut self, amount: Option<Amount>) {
        let in_litres = amount.filter(|amount| amount.unit == VolumeUnit::Litre);
        self.litres = in_litres.map_or(0.0, |amount| amount.value);
        self.dry = amount.filter(|_| in_litres.is_none());
    }

    /// How much is to go in this time, where the manual says.
    pub fn stated(&self) -> Option<Amount> {
        if self.drained { self.refill } else { self.dry() }
    }

    /// Whether the amount is asked for: where one is stated, and where there is no level to go by.
    pub fn asks_amount(&self) -> bool {
        self.stated().is_some() || self.level.is_empty()
    }

    /// The unit it is measured in at the bench: as chosen, else the manual's, else litres.
    pub fn unit(&self) -> VolumeUnit {
        self.measured_in
            .or_else(|| self.stated().map(|amount| amount.unit))
            .unwrap_or(VolumeUnit::Litre)
    }

    /// Whether so much, in [`Self::unit`], is near enough to what is stated; none where nothing is.
    pub fn near(&self, value: f64) -> Option<bool> {
        let stated = self.stated()?.volume();
        let off = (self.unit().volume(value) - stated).abs();
        Some(off <= stated * (NEAR + 1e-9))
    }
}

/// So many litres, with the digits they were kept with.
fn litres(value: f64) -> Amount {
    let text = value.to_string();
    let behind = text.split_once('.').map_or(0, |(_, behind)| behind.len());
    Typed {
        value,
        unit: VolumeUnit::Litre,
        decimals: behind.min(12) as u8,
    }
}
