//! Clicks: what a ring of small magnets adds to a wheel, and whether a finger feels it.

use super::build::{COAT, magnetic};
use super::{Build, Held};
use crate::assembled::{Pocket, Wheel};
use magnet::{Clicks, Pair, Seat};
use std::f64::consts::{PI, TAU};

/// Angles looked at between two stops.
const LOOKS: usize = 48;
/// Least wall between two small pockets.
const WALL: f64 = 1.0;

/// What the clicks of one wheel do.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Clicking {
    /// How many small magnets stand in the wheel and in the cover.
    pub magnets: (usize, usize),
    /// Radius of the ring.
    pub ring: f64,
    /// Largest torque back to a stop, in N·mm.
    pub torque: f64,
    /// Angle off the stop at which it is reached.
    pub at: f64,
    /// Torque of friction that it must exceed to be felt, in N·mm: the pair's pull and the clicks' own.
    pub friction: f64,
    /// What the clicks add to the pull at a stop, in N.
    pub pull: f64,
    /// Force at the rim that turns the wheel over a click, in N.
    pub effort: f64,
    /// Most stops that such magnets on this ring let one feel, one magnet in the cover; 0 when none can be felt.
    pub most_stops: usize,
}

impl Clicking {
    /// Whether a finger feels it: the wheel draws itself into its stop against the friction.
    pub fn felt(&self) -> bool {
        self.torque > self.friction
    }
}

/// What the clicks of a wheel do, if it has any. The pairs' forces simply add up (rigid magnetisation).
pub fn clicking(wheel: &Wheel, held: &Held) -> Option<Clicking> {
    let ring = wheel.clicks.as_ref()?;
    let build = Build::of(wheel);
    let pair = Pair::twins(magnetic(&ring.disc, 0.5)?);
    // A click magnet lies as deep under its face as its pocket is deeper than it and its glue.
    let under =
        |pockets: &[Pocket]| pockets.first().map_or(0.0, |one| one.depth - wheel.seat.glue - ring.disc.thickness);
    let gap =
        (build.faces_apart() + under(&ring.wheel) + under(&ring.cover) + build.flatness / 2.0).max(0.0) + 2.0 * COAT;
    let (in_wheel, in_cover) = (ring.wheel.len(), ring.cover.len());
    let clicks = |in_wheel: usize, in_cover: usize| Clicks {
        pair,
        gap,
        ring: ring.radius,
        fixed: Seat::evenly(in_cover),
        turning: Seat::evenly(in_wheel),
    };
    let coefficient = (held.friction.low * held.friction.high).sqrt();
    let friction_of = |pull: f64| coefficient * pull * held.contact.new_faces();
    let stops = wheel.marks.len();
    let here = clicks(in_wheel, in_cover);
    let (torque, at) = peak(&here, stops);
    let pull = here.pull(0.0);
    let friction = friction_of(held.likely.pull + pull.max(0.0));
    let felt = |n: usize| {
        let one = clicks(n, 1);
        peak(&one, n).0 > friction_of(held.likely.pull + one.pull(0.0).max(0.0))
    };
    Some(Clicking {
        magnets: (in_wheel, in_cover),
        ring: ring.radius,
        torque,
        at,
        friction,
        pull,
        effort: (friction + torque) / build.rim,
        most_stops: most_felt(room(ring.radius, 2.0 * ring.wheel.first().map_or(0.0, |pocket| pocket.radius)), felt),
    })
}

/// The largest torque back to a stop within half the way to the next, and where.
fn peak(clicks: &Clicks, stops: usize) -> (f64, f64) {
    let half = PI / stops as f64;
    (1..=LOOKS)
        .map(|k| half * k as f64 / LOOKS as f64)
        .map(|angle| (-clicks.torque(angle), angle))
        .max_by(|a, b| a.0.total_cmp(&b.0))
        .unwrap_or((0.0, 0.0))
}

/// How many pockets have room on a ring.
fn room(ring: f64, pocket: f64) -> usize {
    let half = ((pocket + WALL) / 2.0 / ring).clamp(1e-3, 1.0).asin();
    (TAU / (2.0 * half) + 1e-9) as usize
}

/// The largest count, from 2 to `limit`, that is still felt: the more there are, the nearer they stand and the flatter the torque.
fn most_felt(limit: usize, felt: impl Fn(usize) -> bool) -> usize {
    if limit < 2 || !felt(2) {
        return 0;
    }
    let (mut low, mut high) = (2, limit + 1);
    while high - low > 1 {
        let middle = (low + high) / 2;
        if felt(middle) { low = middle } else { high = middle }
    }
    low
}
