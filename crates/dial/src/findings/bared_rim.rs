//! The notch bares enough rim for a finger, and nowhere else does a wheel stick out of the cover.

use super::{Bench, Finding, Part, Quantity, Remedy, Severity};
use crate::assembled::Wheel;
use outline::{Edges, Segment, Shape};

pub(super) fn check(bench: &Bench) -> Vec<Finding> {
    let outline = Edges::of_curve(&bench.dial.cover.outline);
    let mut findings = Vec::new();
    for (i, wheel) in bench.dial.wheels.iter().enumerate() {
        findings.extend(bares_enough(bench, i, wheel));
        findings.extend(stays_under(bench, i, wheel, &outline));
        findings.extend(other_notches(bench, i, wheel));
    }
    findings
}

/// Length of a wheel's rim within an opening.
fn rim_within(wheel: &Wheel, opening: &outline::Curve) -> f64 {
    let bared = Shape::from(wheel.rim.clone()).common(&Shape::from(opening.clone()));
    // What bounds the common area is partly rim, partly the opening's edge; the rim's pieces lie off that edge.
    let edge = Edges::of_curve(opening);
    let pieces = bared.loops().iter().flat_map(|one| one.segments()).collect::<Vec<Segment>>();
    pieces.iter().filter(|piece| edge.distance_to(piece.point_at(0.5)) > 1e-6).map(Segment::length).sum()
}

fn bares_enough(bench: &Bench, i: usize, wheel: &Wheel) -> Option<Finding> {
    let bared = rim_within(wheel, &wheel.notch.cutter);
    if bared >= wheel.notch.bares - 1e-3 {
        return None;
    }
    let none = bared <= 0.0;
    Some(Finding {
        rule: "bared rim",
        severity: if none { Severity::Refuse } else { Severity::Mend },
        what: format!(
            "{}: the notch bares {} of rim, {} asked",
            wheel.name,
            bench.show(bared),
            bench.show(wheel.notch.bares)
        ),
        measured: Some(Quantity::Length(bared)),
        limit: Some(Quantity::Length(wheel.notch.bares)),
        part: Part::Notch(i),
        place: Some(wheel.notch.mouth),
        source: "the dial file's own `notch.bares`; a fingertip is 12 to 16 mm wide (common practice)",
        mend: "make the notch deeper or wider, or let the layout derive its depth".into(),
        remedies: vec![Remedy::leave(i, &["notch.depth"]), Remedy::leave(i, &["notch.depth", "notch.width"])],
        keys: vec![
            format!("counter[{i}].notch.depth"),
            "notch.depth".into(),
            "notch.width".into(),
            "notch.bares".into(),
        ],
    })
}

/// The rim inside the outline that the cover would have without its notches.
fn stays_under(bench: &Bench, i: usize, wheel: &Wheel, outline: &Edges) -> Option<Finding> {
    let whole = Shape::from(wheel.rim.clone());
    let out = whole.minus(&Shape::from(bench.dial.cover.outline.clone()));
    if out.area() <= 1e-6 {
        return None;
    }
    let rim = Edges::of_curve(&wheel.rim);
    let far = out.bounds().center();
    Some(Finding {
        rule: "wheel sticks out",
        severity: Severity::Refuse,
        what: format!(
            "{}: the wheel sticks out of the cover's outline: {:.1} mm² of it lie outside",
            wheel.name,
            out.area()
        ),
        measured: Some(Quantity::Length(-rim.nearest(outline).distance)),
        limit: Some(Quantity::Length(0.0)),
        part: Part::Wheel(i),
        place: Some(far),
        source: "a dial that sticks out catches and is turned by accident (common practice)",
        mend: "make the cover larger, the wheel smaller, or move the wheel inwards".into(),
        remedies: vec![
            Remedy { values: ["cover.width", "cover.height"].map(|key| (key.to_owned(), None)).to_vec() },
            Remedy { values: vec![(format!("counter[{i}].at"), None)] },
            Remedy::leave(i, &["wheel.radius"]),
        ],
        keys: vec![format!("counter[{i}].at"), "cover.width".into(), "cover.height".into(), "wheel.radius".into()],
    })
}

/// No other wheel's notch bares this one.
fn other_notches(bench: &Bench, i: usize, wheel: &Wheel) -> Vec<Finding> {
    let others = bench.dial.wheels.iter().enumerate().filter(|(j, _)| *j != i);
    others
        .filter_map(|(j, other)| {
            let bared = rim_within(wheel, &other.notch.cutter);
            (bared > 1e-3).then(|| Finding {
                rule: "bared rim",
                severity: Severity::Mend,
                what: format!(
                    "{}: {} of its rim also shows in the notch of {}, and may be turned by mistake",
                    wheel.name,
                    bench.show(bared),
                    other.name
                ),
                measured: Some(Quantity::Length(bared)),
                limit: Some(Quantity::Length(0.0)),
                part: Part::Notch(j),
                place: Some(other.notch.mouth),
                source: "one notch, one wheel (common practice)",
                mend: "make the notch narrower, or the gap between the wheels larger".into(),
                remedies: Vec::new(),
                keys: vec![format!("counter[{j}].notch.width"), "notch.width".into(), "wheel.gap".into()],
            })
        })
        .collect()
}
