//! Pockets against marks, windows, edges and other pockets.

use super::{Bench, Finding, Part, Quantity, Severity};
use crate::assembled::Pocket;
use outline::{Curve, Edges, Point, Rect};

/// Least wall between a pocket and anything cut or engraved (our own proposal: it keeps the magnet's glue in).
const WALL: f64 = 1.0;

pub(super) fn check(bench: &Bench) -> Vec<Finding> {
    let mut findings = Vec::new();
    let wheels = &bench.dial.wheels;
    let plate = Edges::of(&bench.dial.cover.plate);
    for (i, wheel) in wheels.iter().enumerate() {
        let mut look = |what: String, part: Part, distance: f64, at: Point| {
            if distance < WALL - 1e-6 {
                findings.push(finding(bench, i, what, part, distance, at));
            }
        };
        let pocket = ring(&wheel.pocket);
        let nearest_mark = wheel
            .marks
            .iter()
            .filter(|mark| may_be_near(&mark.shape.bounds(), &wheel.pocket))
            .map(|mark| {
                (Edges::of(&mark.shape).nearest(&pocket), mark.shape.contains(wheel.pocket.centre), &mark.words)
            })
            .min_by(|a, b| a.0.distance.total_cmp(&b.0.distance));
        if let Some((near, over, words)) = nearest_mark {
            let distance = if over { 0.0 } else { near.distance };
            look(format!("the wheel's pocket and “{words}”"), Part::Wheel(i), distance, near.on_self);
        }
        let rim = wheel.rim.nearest_to(wheel.pocket.centre) - wheel.pocket.radius;
        look("the wheel's pocket and its rim".into(), Part::Wheel(i), rim, wheel.pocket.centre);
        let cover_pocket = ring(&wheel.cover_pocket);
        for other in wheels {
            let near = cover_pocket.nearest(&Edges::of_curve(&other.window.edge));
            let distance = if other.window.edge.contains(wheel.cover_pocket.centre) { 0.0 } else { near.distance };
            look(format!("the cover's pocket and the window of {}", other.name), Part::Cover, distance, near.on_self);
        }
        let near = cover_pocket.nearest(&plate);
        let distance = if bench.dial.cover.plate.contains(wheel.cover_pocket.centre) { near.distance } else { 0.0 };
        look("the cover's pocket and the cover's edge or a notch".into(), Part::Cover, distance, near.on_self);
        for other in &wheels[i + 1..] {
            let apart = (wheel.cover_pocket.centre - other.cover_pocket.centre).hypot();
            let distance = apart - wheel.cover_pocket.radius - other.cover_pocket.radius;
            look(
                format!("the cover's pockets for this wheel and {}", other.name),
                Part::Cover,
                distance,
                wheel.cover_pocket.centre,
            );
        }
    }
    findings
}

/// Whether a mark's box comes so near to a pocket that the mark itself has to be looked at.
fn may_be_near(bounds: &Rect, pocket: &Pocket) -> bool {
    let (dx, dy) = (
        (bounds.x0 - pocket.centre.x).max(pocket.centre.x - bounds.x1).max(0.0),
        (bounds.y0 - pocket.centre.y).max(pocket.centre.y - bounds.y1).max(0.0),
    );
    dx.hypot(dy) < pocket.radius + WALL
}

fn ring(pocket: &Pocket) -> Edges {
    Edges::of_curve(&Curve::circle(pocket.centre, pocket.radius))
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
        keys: vec!["magnet.diameter".into(), format!("counter[{i}].window.distance")],
    }
}
