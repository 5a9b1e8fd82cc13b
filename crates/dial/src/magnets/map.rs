//! The map: what a pair does in pockets of every depth.

use super::build::PIN;
use super::held::{Likely, hardest};
use super::{Build, Verdict};
use crate::Looked;
use crate::assembled::{Dial, Wheel};
use crate::findings::FLOOR;
use process::{Feel, Workshop};

/// How many depths each way.
const STEPS: usize = 37;
/// Range of depths that is shown, from a magnet standing out to one deep below its face; wider where the design lies outside.
const SHOWN: (f64, f64) = (-0.6, 1.2);

/// What one wheel's pair does in pockets of every depth.
#[derive(Clone, Debug)]
pub struct Map {
    /// Depths of the cover's pocket.
    pub cover: Vec<f64>,
    /// Depths of the wheel's pocket.
    pub wheel: Vec<f64>,
    /// What is likely; by cover depth, then wheel depth.
    pub cells: Vec<Vec<Option<Likely>>>,
    /// Depths beyond which the floor of cover or wheel shows through or breaks, when the stock comes as thin as it may.
    pub deepest: (f64, f64),
    /// The design's own depths.
    pub point: (f64, f64),
    /// How near a magnet's face comes to where it is wanted: the point may wander so far both ways.
    pub within: f64,
    /// Upper ends of the bands in which each figure is shown, the last band having none.
    pub bands: Bands,
}

/// Bands in which the figures of a map are shown.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Bands {
    /// Force at the rim, in N: the limits of a hand are among them.
    pub effort: [f64; 5],
    /// Drift, in mm, up to what the windows forgive.
    pub drift: [f64; 5],
    /// Acceleration that throws the wheel off, in multiples of gravity, from the least that is asked.
    pub thrown_at: [f64; 5],
}

/// Draws up the map of one wheel.
pub fn map(dial: &Dial, wheel: &Wheel, feel: &Feel, forgives: f64) -> Map {
    let build = Build::of(wheel);
    let point = (wheel.cover_pocket.depth, wheel.pocket.depth);
    let (most, least) = (build.under.0.max(build.under.1), build.under.0.min(build.under.1));
    let (low, high) = (SHOWN.0.min(least - 0.2), SHOWN.1.max(most + 0.2));
    let step = (high - low) / (STEPS - 1) as f64;
    let under = |k: usize| low + step * k as f64;
    // What is likely depends on the sum of the two alone, and on whether one stands out into the other.
    let at = |sum: usize, pin: bool| {
        let clear = 2.0 * low + step * sum as f64;
        let built = build.seated(if pin { (clear + 1.0, -1.0) } else { (clear / 2.0, clear / 2.0) });
        built.likely(feel, forgives)
    };
    let known: Vec<[Option<Likely>; 2]> = (0..2 * STEPS - 1).map(|sum| [at(sum, false), at(sum, true)]).collect();
    let cells = (0..STEPS)
        .map(|i| (0..STEPS).map(|j| known[i + j][usize::from(under(i).min(under(j)) + build.apart <= -PIN)]).collect())
        .collect();
    let (cover_at, wheel_at) = (point.0 - build.under.0, point.1 - build.under.1);
    Map {
        cover: (0..STEPS).map(|k| cover_at + under(k)).collect(),
        wheel: (0..STEPS).map(|k| wheel_at + under(k)).collect(),
        cells,
        deepest: (dial.cover.stock.thinnest() - FLOOR, wheel.stock.thinnest() - FLOOR),
        point,
        within: build.within,
        bands: Bands {
            effort: [feel.turn_least, 0.5, 1.0, feel.turn_stiff, feel.turn_most],
            drift: [0.2, 0.4, 0.6, 0.8, 1.0].map(|share: f64| share * forgives),
            thrown_at: [1.0, 2.0, 4.0, 6.0, 8.0].map(|times: f64| times * feel.shake),
        },
    }
}

/// The map of the wheel that is hardest to hold, and which that is.
pub fn map_of_hardest(looked: &Looked, workshop: &Workshop) -> Option<(usize, Map)> {
    let i = hardest(&looked.held)?;
    let held = looked.held[i].as_ref()?;
    let dial = &looked.laid.dial;
    Some((i, map(dial, &dial.wheels[i], &workshop.feel, held.forgives)))
}

impl Map {
    /// Whether a cell is good: easy and keeps, and no floor shows through.
    pub fn good(&self, i: usize, j: usize) -> bool {
        let easy = self.cells[i][j].is_some_and(|likely| likely.verdict == Verdict::EasyAndKeeps);
        easy && self.cover[i] <= self.deepest.0 + 1e-9 && self.wheel[j] <= self.deepest.1 + 1e-9
    }
}
