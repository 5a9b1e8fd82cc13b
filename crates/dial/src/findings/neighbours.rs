//! Neighbouring wheels whose magnets push each other aside.

use super::{Bench, Finding, Part, Quantity, Remedy, Severity, remedy};
use crate::magnets::neighbours;

/// A shift that begins to eat up what a window forgives (our own proposal: a tenth of the usual half millimetre).
const MATTERS: f64 = 0.05;

pub(super) fn check(bench: &Bench) -> Vec<Finding> {
    let name = |i: usize| bench.dial.wheels[i].name.as_str();
    let matter = neighbours(bench.dial).into_iter().filter(|one| one.shift > MATTERS);
    matter
        .map(|one| Finding {
            rule: "neighbouring magnets",
            severity: Severity::Mend,
            what: format!(
                "{}: the pair of {}, {} away, pushes it {} aside with {:.2} N",
                name(one.wheel),
                name(one.other),
                bench.show(one.apart),
                bench.show(one.shift),
                one.force
            ),
            measured: Some(Quantity::Length(one.shift)),
            limit: Some(Quantity::Length(MATTERS)),
            part: Part::Wheel(one.wheel),
            place: Some(bench.dial.wheels[one.wheel].centre),
            source: "two dipoles side by side; the limit is our own proposal",
            mend: "set the wheels farther apart (`wheel.gap`), or choose smaller magnets".into(),
            remedies: vec![farther(bench, one.wheel, one.other, one.apart * (one.shift / MATTERS).powf(0.25))],
            keys: vec!["wheel.gap".into(), "magnet.diameter".into()],
        })
        .collect()
}

/// The gap between the wheels with which their middles are so far apart: what two dipoles do to each other sideways falls
/// with the fourth power of their distance.
fn farther(bench: &Bench, wheel: usize, other: usize, apart: f64) -> Remedy {
    let radii = bench.dial.wheels[wheel].radius + bench.dial.wheels[other].radius;
    Remedy::set("wheel.gap", remedy::at_least(bench, apart - radii))
}
