//! The turn test: every stop of every wheel is turned into its window and looked at, on the real outlines.

mod look;
mod slack;

use crate::assembled::{Dial, Wheel};
use outline::{Point, Vec2};

/// What the turn test found for a whole dial.
#[derive(Clone, Debug)]
pub struct TurnTest {
    /// One for each wheel.
    pub wheels: Vec<WheelTurns>,
}

/// What it found for one wheel.
#[derive(Clone, Debug)]
pub struct WheelTurns {
    /// Name of the counter.
    pub name: String,
    /// The side from which the next mark comes when counting up, as seen in the window: a unit vector.
    pub next_from: Vec2,
    /// One for each stop, in counting order.
    pub stops: Vec<Stop>,
}

/// One stop in its window.
#[derive(Clone, Debug)]
pub struct Stop {
    /// The mark in words.
    pub words: String,
    /// Share of the mark's area that is seen, 0 to 1.
    pub seen: f64,
    /// Least distance from the mark to the window's edge; 0 when it crosses the edge, negative when it is wholly outside.
    pub margin: f64,
    /// Where that is, on the window's edge.
    pub margin_at: Point,
    /// What else comes nearest to the window.
    pub other: Other,
    /// Least distance from that to the window's edge; 0 when it is seen.
    pub other_distance: f64,
    /// Angle by which the mark leans from upright.
    pub lean: f64,
    /// Whether the mark that follows when counting up is the next of the sequence.
    pub in_order: bool,
    /// How far the wheel may be turned off this stop, either way, before any of this fails.
    pub slack_angle: f64,
    /// How far the wheel may be shifted sideways, in any direction, before any of this fails.
    pub slack_drift: f64,
    /// What fails.
    pub faults: Vec<Fault>,
}

/// Things that should not be seen in a window.
#[derive(Clone, Debug, PartialEq, Eq)]
pub enum Other {
    /// Another mark, by its stop.
    Mark(usize),
    /// The wheel's rim: beyond it there is nothing.
    Rim,
    /// The magnet's pocket.
    Pocket,
}

/// Ways in which a stop can fail.
#[derive(Clone, Debug, PartialEq, Eq)]
pub enum Fault {
    /// Part of the mark is hidden.
    NotWhole,
    /// The mark is nearer to the window's edge than asked.
    Tight,
    /// Something else is seen.
    NotAlone(Other),
    /// Something else is nearer to the window's edge than asked.
    Close(Other),
    /// The mark leans.
    Leans,
    /// A neighbour is not the next of the sequence.
    OutOfOrder,
    /// Less of a neighbour is seen than asked.
    NeighbourHidden,
}

/// The least that any stop forgives.
#[derive(Clone, Debug, PartialEq)]
pub struct Slack {
    /// Smallest angle, and where.
    pub angle: f64,
    /// Wheel and stop of the smallest angle.
    pub angle_at: (usize, usize),
    /// Smallest sideways drift, and where.
    pub drift: f64,
    /// Wheel and stop of the smallest drift.
    pub drift_at: (usize, usize),
}

/// Turns every wheel of a dial through every stop.
pub fn turn(dial: &Dial) -> TurnTest {
    TurnTest { wheels: dial.wheels.iter().map(look::wheel).collect() }
}

/// Turns one wheel through every stop.
pub fn turn_wheel(wheel: &Wheel) -> WheelTurns {
    look::wheel(wheel)
}

impl TurnTest {
    /// The dial's slack: the least that any stop of any wheel forgives.
    pub fn slack(&self) -> Slack {
        let mut slack = Slack { angle: f64::INFINITY, angle_at: (0, 0), drift: f64::INFINITY, drift_at: (0, 0) };
        for (w, wheel) in self.wheels.iter().enumerate() {
            for (k, stop) in wheel.stops.iter().enumerate() {
                if stop.slack_angle < slack.angle {
                    (slack.angle, slack.angle_at) = (stop.slack_angle, (w, k));
                }
                if stop.slack_drift < slack.drift {
                    (slack.drift, slack.drift_at) = (stop.slack_drift, (w, k));
                }
            }
        }
        slack
    }

    /// Whether every stop passes.
    pub fn passes(&self) -> bool {
        self.wheels.iter().flat_map(|wheel| &wheel.stops).all(|stop| stop.faults.is_empty())
    }
}
