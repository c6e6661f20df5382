//! Radial rolling bearings of the Normal tolerance class, and the thickness of their rings.

use crate::trade::fit::{FitError, Limits, checked_nominal};
use crate::trade::quantity::Length;

/// Upper end of the band in mm, and how far below nominal the mean diameter may lie, µm
/// (ISO 492, Normal class, Δdmp and ΔDmp; the upper deviation is nought).
type Band = (f64, f64);

const BORE: [Band; 11] = [
    (18.0, 8.0),
    (30.0, 10.0),
    (50.0, 12.0),
    (80.0, 15.0),
    (120.0, 20.0),
    (180.0, 25.0),
    (250.0, 30.0),
    (315.0, 35.0),
    (400.0, 40.0),
    (500.0, 45.0),
    (630.0, 50.0),
];

const OUTSIDE: [Band; 12] = [
    (18.0, 8.0),
    (30.0, 9.0),
    (50.0, 11.0),
    (80.0, 13.0),
    (120.0, 15.0),
    (150.0, 18.0),
    (180.0, 25.0),
    (250.0, 30.0),
    (315.0, 35.0),
    (400.0, 40.0),
    (500.0, 45.0),
    (630.0, 50.0),
];

fn find(nominal: Length, bands: &[Band]) -> Result<Limits, FitError> {
    let mm = checked_nominal(nominal)?;
    let (_, depth) = bands
        .iter()
        .find(|(upper, _)| mm <= *upper)
        .ok_or(FitError::Size(mm))?;
    Ok(Limits::micrometres(-depth, 0.0))
}

/// Limits of the mean outside diameter of a radial bearing, Normal class, to 630 mm (ISO 492).
/// Tapered-roller bearings have their own.
pub fn outer_limits(nominal: Length) -> Result<Limits, FitError> {
    find(nominal, &OUTSIDE)
}

/// Limits of the mean bore of a radial bearing, Normal class, to 630 mm (ISO 492).
/// The tolerance of the bore lies below nominal, unlike an H hole's.
pub fn bore_limits(nominal: Length) -> Result<Limits, FitError> {
    find(nominal, &BORE)
}
