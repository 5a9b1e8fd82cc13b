//! What drove the size of each wheel, in words.

use super::marks::Inscribed;
use super::places::Direction;
pub use super::wheel::Driver;
use super::wheel::{self, Fitted};
use crate::design::Design;
use outline::Point;

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
    /// Height of the marks, in mm; those of the other wheels are smaller alike.
    pub height: f64,
    /// Diameter over the rim.
    pub diameter: f64,
}

/// Tells for each wheel what drove its size, and what marks half a millimetre smaller would need.
pub(super) fn explain(
    design: &Design,
    inscribed: &[Vec<Inscribed>],
    directions: &[Direction],
    fitted: &[Fitted],
) -> Vec<Sizing> {
    let smaller = smaller(design, inscribed, directions);
    fitted
        .iter()
        .enumerate()
        .map(|(i, fit)| Sizing {
            wheel: i,
            diameter: 2.0 * fit.radius,
            driver: fit.driver,
            mark_height: design.counters[i].mark.height,
            stops: design.counters[i].marks.len(),
            smaller: Some(Smaller {
                height: reduced(design.counters[i].mark.height),
                diameter: 2.0 * smaller[i].radius,
            }),
        })
        .collect()
}

fn reduced(height: f64) -> f64 {
    if height > 2.5 { height - 0.5 } else { 0.8 * height }
}

/// The sizes of all wheels with somewhat smaller marks: outlines scale, margins do not.
fn smaller(design: &Design, inscribed: &[Vec<Inscribed>], directions: &[Direction]) -> Vec<Fitted> {
    let mut small = design.clone();
    let mut marks = inscribed.to_vec();
    for (counter, marks) in small.counters.iter_mut().zip(&mut marks) {
        let height = reduced(counter.mark.height);
        for mark in marks {
            mark.shape = mark.shape.scaled(Point::ZERO, height / counter.mark.height);
        }
        counter.mark.height = height;
    }
    wheel::fit_all(&small, &marks, directions)
}
