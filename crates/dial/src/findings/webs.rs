//! The web that is left between two cuts of the cover, held against the stock's thickness.

use super::{Bench, Finding, Part, Quantity, Remedy, Severity};
use outline::{Edges, Nearest};

/// No web thinner than this, whatever the stock (common practice; also a cutting bureau's least feature).
const LEAST: f64 = 1.0;
/// A web within this of the thickness is as wide: a tenth of a micron.
const NEAR: f64 = 1e-4;

pub(super) fn check(bench: &Bench) -> Vec<Finding> {
    let dial = bench.dial;
    let thickness = dial.cover.stock.thickness();
    let plate = Edges::of(&dial.cover.plate);
    let windows: Vec<Edges> = dial.wheels.iter().map(|wheel| Edges::of_curve(&wheel.window.edge)).collect();
    let name = |i: usize| format!("the window of {}", dial.wheels[i].name);
    let mut findings = Vec::new();
    for (i, window) in windows.iter().enumerate() {
        let inside = dial.cover.plate.contains(dial.wheels[i].window.centre);
        let near = window.nearest(&plate);
        let near = if inside { near } else { Nearest { distance: 0.0, ..near } };
        findings.extend(web(bench, &name(i), "the cover's edge or a notch", near, thickness, i));
        for (j, other) in windows.iter().enumerate().skip(i + 1) {
            findings.extend(web(bench, &name(i), &name(j), window.nearest(other), thickness, i));
        }
    }
    findings
}

fn web(bench: &Bench, one: &str, other: &str, near: Nearest, thickness: f64, i: usize) -> Option<Finding> {
    let least = LEAST.max(thickness / 2.0);
    if near.distance >= thickness - NEAR {
        return None;
    }
    let severity = if near.distance < least { Severity::Refuse } else { Severity::Mend };
    Some(Finding {
        rule: "web between cuts",
        severity,
        what: format!(
            "{} is left between {one} and {other}; {} (the thickness) is strong, below {} it breaks",
            bench.show(near.distance),
            bench.show(thickness),
            bench.show(least)
        ),
        measured: Some(Quantity::Length(near.distance)),
        limit: Some(Quantity::Length(if severity == Severity::Refuse { least } else { thickness })),
        part: Part::Window(i),
        place: Some(near.on_self),
        source: "common practice: a web as wide as the sheet is thick, never under 1 mm",
        mend: "make the cover or the wheels larger, the notch less deep, or move the window".into(),
        remedies: vec![
            Remedy::leave(i, &["notch.depth"]),
            Remedy::leave(i, &["window.distance", "window.width", "window.height", "window.angle"]),
        ],
        keys: vec![
            format!("counter[{i}].window"),
            format!("counter[{i}].notch.depth"),
            "notch.depth".into(),
            "cover.width".into(),
        ],
    })
}
