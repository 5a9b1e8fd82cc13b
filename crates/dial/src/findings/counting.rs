//! Which push at which notch counts up, told for every wheel.

use super::{Bench, Finding, Part, Severity};
use crate::assembled::Sense;
use outline::Vec2;

pub(super) fn check(bench: &Bench) -> Vec<Finding> {
    bench
        .dial
        .wheels
        .iter()
        .zip(&bench.turns.wheels)
        .enumerate()
        .map(|(i, (wheel, turns))| Finding {
            rule: "counting",
            severity: Severity::Note,
            what: format!(
                "{}: at the notch {}, pushing the rim {} counts up; the wheel turns {} and the next mark comes in from {}",
                wheel.name,
                side(Vec2::from_angle(wheel.notch.angle)),
                way(wheel.notch.push_up),
                match wheel.counts_up {
                    Sense::Clockwise => "clockwise",
                    Sense::Anticlockwise => "anticlockwise",
                },
                from(turns.next_from),
            ),
            measured: None,
            limit: None,
            part: Part::Notch(i),
            place: Some(wheel.notch.mouth),
            source: "computed from the marks as they lie on the wheel",
            mend: String::new(),
            remedies: Vec::new(),
            keys: vec![format!("counter[{i}].running")],
        })
        .collect()
}

/// The nearest of eight directions.
fn eighth(direction: Vec2) -> usize {
    let turns = direction.y.atan2(direction.x) / std::f64::consts::TAU;
    (turns * 8.0).round().rem_euclid(8.0) as usize
}

fn side(direction: Vec2) -> &'static str {
    [
        "on the right",
        "at the upper right",
        "at the top",
        "at the upper left",
        "on the left",
        "at the lower left",
        "at the bottom",
        "at the lower right",
    ][eighth(direction)]
}

pub(super) fn way(direction: Vec2) -> &'static str {
    ["to the right", "up and right", "up", "up and left", "to the left", "down and left", "down", "down and right"]
        [eighth(direction)]
}

fn from(direction: Vec2) -> &'static str {
    [
        "the right",
        "the upper right",
        "above",
        "the upper left",
        "the left",
        "the lower left",
        "below",
        "the lower right",
    ][eighth(direction)]
}
