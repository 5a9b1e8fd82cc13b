//! The turn test's figures, stop by stop.

use super::scene::number;
use dial::assembled::Wheel;
use dial::turning::{Fault, Other, WheelTurns};
use measure::{Units, show};
use outline::{Motion, Rect};
use serde_json::{Value, json};

/// Room round a window in which its strip shows what the cover hides.
const AROUND: f64 = 2.0;

/// Every stop of a wheel: what is seen, how near everything is, what fails, and which other marks come into sight.
pub(super) fn stops(wheel: &Wheel, turns: &WheelTurns, units: Units) -> Value {
    let sight = wheel.window.edge.bounds().inflate(AROUND, AROUND);
    let boxes: Vec<(outline::Point, f64)> = wheel
        .marks
        .iter()
        .map(|mark| {
            let around = mark.shape.bounds();
            (around.center(), around.size().to_vec2().hypot() / 2.0)
        })
        .collect();
    let all = turns.stops.iter().enumerate().map(|(k, stop)| {
        json!({
            "words": stop.words,
            "seen": number(stop.seen),
            "margin": show(stop.margin, units),
            "margin_mm": number(stop.margin),
            "slack_deg": number(stop.slack_angle.to_degrees()),
            "drift": show(stop.slack_drift, units),
            "drift_mm": number(stop.slack_drift),
            "faults": stop.faults.iter().map(fault).collect::<Vec<_>>(),
            "others": others(wheel, &boxes, k, sight),
        })
    });
    Value::Array(all.collect())
}

/// The marks beside the stop's own that come near its window.
fn others(wheel: &Wheel, boxes: &[(outline::Point, f64)], k: usize, sight: Rect) -> Vec<usize> {
    let turned = Motion::turn(wheel.centre, wheel.turned_to(k));
    let near = |j: usize| {
        let (middle, reach) = boxes[j];
        let there = turned.apply(middle);
        sight.inflate(reach, reach).contains(there)
    };
    (0..boxes.len()).filter(|&j| j != k && near(j)).collect()
}

/// Names of faults; the page has the words.
fn fault(fault: &Fault) -> &'static str {
    match fault {
        Fault::NotWhole => "not whole",
        Fault::Tight => "tight",
        Fault::NotAlone(Other::Mark(_)) => "another mark",
        Fault::NotAlone(Other::Rim) => "rim",
        Fault::NotAlone(Other::Pocket) => "pocket",
        Fault::Close(_) => "close",
        Fault::Leans => "leans",
        Fault::OutOfOrder => "out of order",
        Fault::NeighbourHidden => "neighbour hidden",
    }
}
