//! What a workshop crane has left at the position of its boom.

use crate::trade::quantity::{Length, Mass, Ratio};
use crate::trade::stored;
use serde::{Deserialize, Serialize};
use std::fmt;
use uom::si::length::meter;
use uom::si::mass::kilogram;
use uom::si::ratio::ratio;

/// Share of the rating above which the margin is called thin (common practice).
const THIN_SHARE: f64 = 0.8;

/// One hole of the boom: its reach, from the post to the hook, and the rating on its plate.
#[derive(Debug, Clone, Copy, PartialEq, Serialize, Deserialize)]
pub struct BoomPosition {
    /// From the post to the hook.
    #[serde(rename = "reach_mm", with = "stored::millimetres")]
    pub reach: Length,
    /// What the plate allows there.
    #[serde(rename = "rating_kg", with = "stored::kilograms")]
    pub rating: Mass,
}

/// Why a hoist has no answer.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
#[serde(rename_all = "snake_case")]
pub enum HoistError {
    /// The load is not above zero, or absurd.
    Load,
    /// No rating is known, or one is not above zero.
    Rating,
    /// A reach is not above zero, or absurd.
    Reach,
    /// The boom's plate gives no rating that far out.
    TooFar,
}

impl fmt::Display for HoistError {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        f.write_str(match self {
            Self::Load => "Enter the load with its rigging, above zero and under 100 000 kg.",
            Self::Rating => "Enter the rating on the boom's plate for each position.",
            Self::Reach => "Enter the boom's reach, above zero and under 20 m.",
            Self::TooFar => "The plate gives no rating that far out: bring the boom in.",
        })
    }
}

impl std::error::Error for HoistError {}

/// Whether the hoist takes it.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash, Serialize, Deserialize)]
#[serde(rename_all = "snake_case")]
pub enum HoistVerdict {
    /// Up to 80 % of the rating.
    Takes,
    /// Up to the rating: no jerks, nothing stuck, mass known for sure.
    Thin,
    /// Over the rating.
    Refused,
}

/// What is left.
#[derive(Debug, Clone, Copy, PartialEq, Serialize, Deserialize)]
pub struct HoistMargin {
    /// The rating that holds at this position.
    #[serde(rename = "rating_kg", with = "stored::kilograms")]
    pub rating: Mass,
    /// The load over the rating.
    #[serde(with = "stored::fraction")]
    pub share: Ratio,
    /// The rating less the load; negative when over.
    #[serde(rename = "spare_kg", with = "stored::kilograms")]
    pub spare: Mass,
    /// The verdict.
    pub verdict: HoistVerdict,
}

/// The margin of a load, rigging included, at a known rating.
pub fn margin(load: Mass, rating: Mass) -> Result<HoistMargin, HoistError> {
    if !sane_mass(load) {
        return Err(HoistError::Load);
    }
    if !sane_mass(rating) {
        return Err(HoistError::Rating);
    }
    let share = load / rating;
    let verdict = match share.get::<ratio>() {
        s if s > 1.0 => HoistVerdict::Refused,
        s if s > THIN_SHARE => HoistVerdict::Thin,
        _ => HoistVerdict::Takes,
    };
    Ok(HoistMargin {
        rating,
        share,
        spare: rating - load,
        verdict,
    })
}

/// The rating at a reach, from the plate: that of the nearest position at least as far out, never a
/// value between two.
pub fn rating_at(positions: &[BoomPosition], reach: Length) -> Result<Mass, HoistError> {
    if !sane_reach(reach) {
        return Err(HoistError::Reach);
    }
    if positions.is_empty() || positions.iter().any(|p| !sane_mass(p.rating)) {
        return Err(HoistError::Rating);
    }
    if positions.iter().any(|p| !sane_reach(p.reach)) {
        return Err(HoistError::Reach);
    }
    // A micrometre of slack for a reach that came through another unit.
    let slack = Length::new::<meter>(1e-6);
    let mut far_enough: Vec<_> = positions.iter().filter(|p| p.reach + slack >= reach).collect();
    far_enough.sort_by(|a, b| a.reach.get::<meter>().total_cmp(&b.reach.get::<meter>()));
    far_enough.first().map(|p| p.rating).ok_or(HoistError::TooFar)
}

/// An estimate where the plate gives one position only: the same moment about the post, so
/// rating·(its reach/this reach), and never more than the rating. The plate comes first: booms and
/// rams have limits of their own.
pub fn derated(known: BoomPosition, reach: Length) -> Result<Mass, HoistError> {
    if !sane_reach(reach) || !sane_reach(known.reach) {
        return Err(HoistError::Reach);
    }
    if !sane_mass(known.rating) {
        return Err(HoistError::Rating);
    }
    Ok(known.rating * (known.reach / reach).get::<ratio>().min(1.0))
}

fn sane_mass(mass: Mass) -> bool {
    (f64::MIN_POSITIVE..1e5).contains(&mass.get::<kilogram>())
}

fn sane_reach(reach: Length) -> bool {
    (1e-3..20.0).contains(&reach.get::<meter>())
}
