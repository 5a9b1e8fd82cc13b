//! Pockets against marks, windows, edges and other pockets.

use super::{Bench, Finding, Part, Quantity, Remedy, Severity};
use crate::assembled::{Pocket, Wheel};
use outline::{Curve, Edges, Point, Rect};

/// Least wall between a pocket and anything cut or engraved (our own proposal: it keeps the magnet's glue in).
const WALL: f64 = 1.0;

pub(super) fn check(bench: &Bench) -> Vec<Finding> {
    let wheels = 0..bench.dial.wheels.len();
    wheels.flat_map(|i| in_the_wheel(bench, i).into_iter().chain(in_the_cover(bench, i))).collect()
}

/// Pockets in a wheel's face: its pair's, and those of its clicks.
fn in_the_wheel(bench: &Bench, i: usize) -> Vec<Finding> {
    let wheel = &bench.dial.wheels[i];
    let mut near = Vec::new();
    for pocket in std::iter::once(&wheel.pocket).chain(wheel.clicks.iter().flat_map(|ring| &ring.wheel)) {
        let edge = ring(pocket);
        let marks = wheel.marks.iter().filter(|mark| may_be_near(&mark.shape.bounds(), pocket));
        near.extend(marks.map(|mark| {
            let nearest = Edges::of(&mark.shape).nearest(&edge);
            let distance = if mark.shape.contains(pocket.centre) { 0.0 } else { nearest.distance };
            (format!("a pocket of the wheel and “{}”", mark.words), distance, nearest.on_self)
        }));
        let rim = wheel.rim.nearest_to(pocket.centre) - pocket.reach();
        near.push(("a pocket of the wheel and its rim".into(), rim, pocket.centre));
        if *pocket != wheel.pocket {
            let apart = (pocket.centre - wheel.pocket.centre).hypot() - pocket.reach() - wheel.pocket.reach();
            near.push(("the pockets of the wheel's pair and clicks".into(), apart, pocket.centre));
        }
    }
    worst(bench, i, Part::Wheel(i), near)
}

/// Pockets in the cover's back that belong to a wheel.
fn in_the_cover(bench: &Bench, i: usize) -> Vec<Finding> {
    let wheels = &bench.dial.wheels;
    let plate = Edges::of(&bench.dial.cover.plate);
    let of = |k: usize| {
        let wheel: &Wheel = &wheels[k];
        std::iter::once(&wheel.cover_pocket).chain(wheel.clicks.iter().flat_map(|ring| &ring.cover))
    };
    let mut near = Vec::new();
    for pocket in of(i) {
        let edge = ring(pocket);
        for other in wheels {
            let nearest = edge.nearest(&Edges::of_curve(&other.window.edge));
            let distance = if other.window.edge.contains(pocket.centre) { 0.0 } else { nearest.distance };
            near.push((format!("a pocket of the cover and the window of {}", other.name), distance, nearest.on_self));
        }
        let nearest = edge.nearest(&plate);
        let distance = if bench.dial.cover.plate.contains(pocket.centre) { nearest.distance } else { 0.0 };
        near.push(("a pocket of the cover and the cover's edge or a notch".into(), distance, nearest.on_self));
        let others = (i..wheels.len()).flat_map(of).filter(|other| *other != pocket);
        near.extend(others.map(|other| {
            let apart = (pocket.centre - other.centre).hypot() - pocket.reach() - other.reach();
            ("two pockets of the cover".into(), apart, pocket.centre)
        }));
    }
    worst(bench, i, Part::Cover, near)
}

/// What is too near, the nearest of each kind.
fn worst(bench: &Bench, i: usize, part: Part, mut near: Vec<(String, f64, Point)>) -> Vec<Finding> {
    near.retain(|one| one.1 < WALL - 1e-6);
    near.sort_by(|a, b| a.1.total_cmp(&b.1));
    let mut said: Vec<String> = Vec::new();
    near.retain(|one| {
        let new = !said.contains(&one.0);
        said.push(one.0.clone());
        new
    });
    near.into_iter().map(|(what, distance, at)| finding(bench, i, what, part, distance, at)).collect()
}

/// Whether a mark's box comes so near to a pocket that the mark itself has to be looked at.
fn may_be_near(bounds: &Rect, pocket: &Pocket) -> bool {
    let (dx, dy) = (
        (bounds.x0 - pocket.centre.x).max(pocket.centre.x - bounds.x1).max(0.0),
        (bounds.y0 - pocket.centre.y).max(pocket.centre.y - bounds.y1).max(0.0),
    );
    dx.hypot(dy) < pocket.reach() + WALL
}

fn ring(pocket: &Pocket) -> Edges {
    Edges::of_curve(&Curve::circle(pocket.centre, pocket.reach()))
}

fn finding(bench: &Bench, i: usize, what: String, part: Part, distance: f64, at: Point) -> Finding {
    let distance = distance.max(0.0);
    Finding {
        rule: "room for pockets",
        severity: if distance <= 0.0 { Severity::Refuse } else { Severity::Mend },
        what: format!(
            "{}: {} is left between {what}, {} needed",
            bench.dial.wheels[i].name,
            bench.show(distance),
            bench.show(WALL)
        ),
        measured: Some(Quantity::Length(distance)),
        limit: Some(Quantity::Length(WALL)),
        part,
        place: Some(at),
        source: "our own proposal",
        mend: "choose a smaller magnet, or let the layout derive the window's distance".into(),
        remedies: vec![
            Remedy::leave(i, &["window.distance"]),
            Remedy::leave(i, &["window.distance", "window.width", "window.height"]),
        ],
        keys: vec!["magnet.diameter".into(), format!("counter[{i}].window.distance")],
    }
}
