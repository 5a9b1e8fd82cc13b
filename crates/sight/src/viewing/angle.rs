//! Visual angle.

use std::f64::consts::PI;

/// One minute of arc in radians.
pub const ARCMIN: f64 = PI / (180.0 * 60.0);

/// An angle in radians, in minutes of arc.
///
/// ```
/// assert!((sight::arcmin(std::f64::consts::PI) - 10800.0).abs() < 1e-9);
/// ```
#[must_use]
pub fn arcmin(angle: f64) -> f64 {
    angle / ARCMIN
}

/// The visual angle, in radians, of a size seen square on from a distance, both in mm: 2 atan(size / 2 distance).
///
/// ```
/// use sight::{angle_of, arcmin};
/// assert!((arcmin(angle_of(2.91, 500.0)) - 20.0).abs() < 0.01);
/// ```
#[must_use]
pub fn angle_of(size: f64, distance: f64) -> f64 {
    2.0 * (size / 2.0).atan2(distance)
}

/// The size in mm that fills a visual angle, in radians and below half a turn, seen square on from a distance in mm.
///
/// ```
/// use sight::{ARCMIN, size_at};
/// assert!((size_at(16.0 * ARCMIN, 1000.0) - 4.65).abs() < 0.005);
/// ```
#[must_use]
pub fn size_at(angle: f64, distance: f64) -> f64 {
    2.0 * distance * (angle / 2.0).tan()
}
