//! What drove the size of each wheel, in words.

use super::marks;
use super::places::Direction;
pub use super::wheel::Driver;
use super::wheel::{self, Fitted};
use crate::design::Design;

/// Why a wheel is as large as it is.
#[derive(Clone, Debug, PartialEq)]
pub struct Sizing {
    /// Index of the wheel.
    pub wheel: usize,
    /// Diameter over the rim, in mm.
    pub diameter: f64,
    /// What decided it.
    pub driver: Driver,
    /// Height of the marks, in mm.
    pub mark_height: f64,
    /// How many stops.
    pub stops: usize,
    /// A somewhat smaller mark height, and the diameter that it would need; in mm.
    pub smaller: Option<Smaller>,
}

/// What smaller marks would need.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Smaller {
    /// Height of all marks of the dial relative to now: e.g. 0.9.
    pub height: f64,
    /// Diameter over the rim.
    pub diameter: f64,
}

/// Tells for each wheel what drove its size, and what marks half a millimetre smaller would need.
pub(super) fn explain(design: &Design, directions: &[Direction], fitted: &[Fitted]) -> Vec<Sizing> {
    let smaller = smaller(design, directions);
    fitted
        .iter()
        .enumerate()
        .map(|(i, fit)| Sizing {
            wheel: i,
            diameter: 2.0 * fit.radius,
            driver: fit.driver,
            mark_height: design.counters[i].mark.height,
            stops: design.counters[i].marks.len(),
            smaller: smaller.as_ref().map(|small| Smaller {
                height: reduced(design.counters[i].mark.height),
                diameter: 2.0 * small[i].radius,
            }),
        })
        .collect()
}

fn reduced(height: f64) -> f64 {
    if height > 2.5 {
        height - 0.5
    } else {
        0.8 * height
    }
}

fn smaller(design: &Design, directions: &[Direction]) -> Option<Vec<Fitted>> {
    let mut small = design.clone();
    for counter in &mut small.counters {
        counter.mark.height = reduced(counter.mark.height);
    }
    let inscribed = small
        .counters
        .iter()
        .map(|counter| marks::inscribe(counter, counter.mark.height))
        .collect::<Result<Vec<_>, _>>()
        .ok()?;
    Some(wheel::fit_all(&small, &inscribed, directions))
}
