//! What is engraved on the cover's face, clear of windows, edges and notches.

use super::{Bench, Finding, Part, Quantity, Severity};
use outline::Edges;

/// Least distance of engraving from a cut (common practice: a char edge and the beam's placing).
const CLEAR: f64 = 1.0;

pub(super) fn check(bench: &Bench) -> Vec<Finding> {
    let plate = Edges::of(&bench.dial.cover.plate);
    let windows: Vec<Edges> = bench.dial.wheels.iter().map(|wheel| Edges::of_curve(&wheel.window.edge)).collect();
    let mut findings = Vec::new();
    for art in &bench.dial.cover.art {
        let edges = Edges::of(&art.shape);
        let middle = art.shape.bounds().center();
        let mut look = |what: String, distance: f64, at| {
            if distance < CLEAR - 1e-6 {
                findings.push(finding(bench, &art.what, &what, distance, at));
            }
        };
        let near = edges.nearest(&plate);
        let distance = if bench.dial.cover.plate.contains(middle) { near.distance } else { 0.0 };
        look("the cover's edge or a notch".into(), distance, near.on_self);
        for (wheel, window) in bench.dial.wheels.iter().zip(&windows) {
            let near = edges.nearest(window);
            let distance = if wheel.window.edge.contains(middle) { 0.0 } else { near.distance };
            look(format!("the window of {}", wheel.name), distance, near.on_self);
        }
    }
    findings
}

fn finding(bench: &Bench, art: &str, other: &str, distance: f64, at: outline::Point) -> Finding {
    Finding {
        rule: "room for art",
        severity: if distance <= 0.0 { Severity::Refuse } else { Severity::Mend },
        what: format!("“{art}” on the cover is {} from {other}, {} needed", bench.show(distance), bench.show(CLEAR)),
        measured: Some(Quantity::Length(distance)),
        limit: Some(Quantity::Length(CLEAR)),
        part: Part::Cover,
        place: Some(at),
        source: "common practice",
        mend: "make it smaller, move it, or set a shorter `label` (\"\" for none)".into(),
        remedies: Vec::new(),
        keys: vec!["cover.art".into(), "counter.label".into()],
    }
}
