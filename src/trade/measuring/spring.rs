//! Coil springs that are pressed: rate, load at a height, free length.

use super::{MeasuringError, mm, size_mm};
use crate::trade::quantity::{Force, Length, Pressure};
use uom::si::f64::RadiantExposure;
use uom::si::force::newton;
use uom::si::length::meter;
use uom::si::pressure::{gigapascal, pascal};
use uom::si::radiant_exposure::joule_per_square_meter as newton_per_meter;

/// Force for a length; its dimension is that of a radiant exposure, J/m² or N/m.
pub type Rate = RadiantExposure;

/// Shear modulus of spring steel wire, least and most of the handbooks, GPa: 78.5, 79.3, 81.4 and 81.5 are
/// printed (from memory).
pub const STEEL_SHEAR_GPA: (f64, f64) = (78.5, 81.5);

/// A coil spring of round wire.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Coil {
    /// The wire's diameter d.
    pub wire: Length,
    /// The coil's mean diameter D: outside less one wire.
    pub mean: Length,
    /// The coils that work n: with ends closed and ground, all but two (common practice).
    pub working: f64,
}

impl Coil {
    /// A spring by its outside diameter.
    pub fn by_outside(wire: Length, outside: Length, working: f64) -> Self {
        Self {
            wire,
            mean: outside - wire,
            working,
        }
    }

    /// Its rate for a shear modulus G: k = G·d⁴/(8·D³·n).
    ///
    /// Holds for round wire, pitch angle small, D/d from about 4 (handbooks); open coils, not one on another.
    ///
    /// # Errors
    /// A size, count or modulus that makes no sense.
    pub fn rate(&self, shear: Pressure) -> Result<Rate, MeasuringError> {
        let wire_m = size_mm(self.wire).map(|_| self.wire.get::<meter>())?;
        let mean_m = size_mm(self.mean).map_err(|_| MeasuringError::Coil)? / 1000.0;
        if mean_m <= wire_m {
            return Err(MeasuringError::Coil);
        }
        if !(self.working > 0.0 && self.working <= 200.0) {
            return Err(MeasuringError::Coils);
        }
        if !(1.0..=500.0).contains(&shear.get::<gigapascal>()) {
            return Err(MeasuringError::Modulus);
        }
        let rate = shear.get::<pascal>() * wire_m.powi(4) / (8.0 * mean_m.powi(3) * self.working);
        Ok(Rate::new::<newton_per_meter>(rate))
    }

    /// Its rate in steel, least and most of [`STEEL_SHEAR_GPA`].
    ///
    /// # Errors
    /// As [`Coil::rate`].
    pub fn steel_rate(&self) -> Result<(Rate, Rate), MeasuringError> {
        let (low, high) = STEEL_SHEAR_GPA;
        let at = |gpa: f64| self.rate(Pressure::new::<gigapascal>(gpa));
        Ok((at(low)?, at(high)?))
    }

    /// Its height with coil on coil, both ends closed and ground: (n + 2)·d.
    pub fn solid(&self) -> Length {
        self.wire * (self.working + 2.0)
    }
}

/// The load at a height: rate times what it is shortened by.
///
/// # Errors
/// A height that is not under the free length.
pub fn load_at(rate: Rate, free: Length, height: Length) -> Result<Force, MeasuringError> {
    if size_mm(height)? > size_mm(free)? {
        return Err(MeasuringError::Height);
    }
    Ok(rate * (free - height))
}

/// A load read at a height.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct LoadRead {
    /// The load.
    pub load: Force,
    /// The height it was read at.
    pub height: Length,
}

/// What two loads of one spring say.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Tested {
    /// Its rate between them.
    pub rate: Rate,
    /// The free length they lead to, where the rate is the same all the way; a weak spring's is short.
    pub free: Length,
}

/// Rate and free length of a spring read at two heights; the shorter one bears more.
///
/// # Errors
/// The same height twice, or loads that don't rise as it shortens.
pub fn tested(one: LoadRead, other: LoadRead) -> Result<Tested, MeasuringError> {
    size_mm(one.height)?;
    size_mm(other.height)?;
    let shorter = one.height - other.height;
    if shorter == mm(0.0) {
        return Err(MeasuringError::Heights);
    }
    let rate = (other.load - one.load) / shorter;
    let sane = |load: Force| (0.0..=1e9).contains(&load.get::<newton>());
    if !sane(one.load) || !sane(other.load) {
        return Err(MeasuringError::Load);
    }
    if rate.get::<newton_per_meter>() <= 0.0 {
        return Err(MeasuringError::Loads);
    }
    Ok(Tested {
        rate,
        free: one.height + one.load / rate,
    })
}
