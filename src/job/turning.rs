//! How far the phone has been turned, from its own tilt angles: an aid beside an angle gauge.

/// Flatter than this the phone's compass angle counts, steeper its tilt against gravity.
const FLAT_DEG: f64 = 45.0;

/// The phone's angle about the axis through its display, °, from the angles a browser gives: `alpha`
/// about the vertical, `beta` and `gamma` the tilts. Lying flat that is `alpha`; standing, the angle
/// of gravity across the display. Only differences mean something, and only while it lies or stands
/// alike. Nothing for angles that are no numbers.
pub fn heading_deg(alpha: f64, beta: f64, gamma: f64) -> Option<f64> {
    if !(alpha.is_finite() && beta.is_finite() && gamma.is_finite()) {
        return None;
    }
    if beta.abs() < FLAT_DEG && gamma.abs() < FLAT_DEG {
        return Some(alpha.rem_euclid(360.0));
    }
    let (beta, gamma) = (beta.to_radians(), gamma.to_radians());
    // Gravity in the display's plane (rotation Z-X′-Y″ of the W3C device orientation events).
    let (across, along) = (beta.cos() * gamma.sin(), beta.sin());
    Some(across.atan2(along).to_degrees().rem_euclid(360.0))
}

/// The turn from one heading to another the short way, °: −180 to 180.
pub fn turn_deg(from: f64, to: f64) -> f64 {
    (to - from + 180.0).rem_euclid(360.0) - 180.0
}
