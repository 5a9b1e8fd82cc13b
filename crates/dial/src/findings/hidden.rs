//! Marks whose nearer part the cover's own thickness hides from a reader who looks in at a slant.

use super::alike::{groups, keys, names};
use super::{Bench, Finding, Part, Quantity, Remedy, Severity, remedy};
use crate::design::WindowKind;
use crate::looks::{Reader, Seen, alike};

/// Least share of a mark's height that must be seen: words are still read with their lower half covered (E. B. Huey, The
/// Psychology and Pedagogy of Reading, 1908, from memory). Figures must also still be told apart, which is tried.
const HALF: f64 = 0.5;
/// Less than this is no more than rounding, in mm.
const NONE: f64 = 1e-3;

pub(super) fn check(bench: &Bench) -> Vec<Finding> {
    let mut findings = Vec::new();
    for (r, reader) in bench.dial.reading.readers.iter().enumerate() {
        let hidden = bench.looks.wheels.iter().enumerate().filter_map(|(i, look)| {
            let (seen, wheel) = (look.seen.get(r)?, &bench.dial.wheels[i]);
            let worst = seen.at_worst();
            let round = |length: f64| (length * 1e3).round();
            let key = (round(worst.hidden), round(worst.extent), round(seen.window_for_all), wheel.window.kind);
            (worst.hidden > NONE).then_some((i, key))
        });
        for (_, wheels) in groups(hidden) {
            findings.extend(finding(bench, reader, &bench.looks.wheels[wheels[0]].seen[r], &wheels));
        }
    }
    findings
}

fn finding(bench: &Bench, reader: &Reader, seen: &Seen, wheels: &[usize]) -> Option<Finding> {
    let wheel = &bench.dial.wheels[wheels[0]];
    let worst = seen.at_worst();
    let share = worst.height_share();
    let apart = alike(wheel, reader.view, worst.hidden);
    let fails = share < HALF || !apart.is_empty();
    let why = match apart.first() {
        _ if share <= 0.0 => "nothing of it is seen".to_owned(),
        _ if share < HALF => "less than half of it is left".to_owned(),
        Some((one, other)) => format!("{one} and {other} can then not be told apart"),
        None => "what is left still tells the figures apart".to_owned(),
    };
    let (key, what_of) = match wheel.window.kind {
        WindowKind::Round => ("window.width", "diameter"),
        _ => ("window.height", "height"),
    };
    let window = (seen.window_for_all * 10.0).ceil() / 10.0;
    // The view under which the edge is shifted by no more than there is room.
    let steep = seen.depth.atan2(seen.free.max(1e-9)).to_degrees();
    let mend = format!(
        "`{key} = \"{}\"` (the window's {what_of}) hides nothing of it; so does an edge no higher than {} above the wheel, or looking down at {:.0}° or steeper: bend over the dial, or take it up",
        bench.show(window),
        bench.show((seen.free / reader.view.hides(1.0) * 100.0).floor().max(0.0) / 100.0),
        steep.ceil(),
    );
    Some(Finding {
        rule: "hidden by the cover's thickness",
        severity: if fails { Severity::Mend } else { Severity::Note },
        what: format!(
            "marks of {}: the window's edge, {} above the wheel, hides {} of the {} of “{}” from {}, who looks down at {:.0}°: {why}",
            names(bench, wheels),
            bench.show(seen.depth),
            bench.show(worst.hidden),
            bench.show(worst.extent),
            wheel.marks[seen.worst].words,
            reader.words(),
            reader.view.seat().elevation().to_degrees(),
        ),
        measured: Some(Quantity::Share(share.max(0.0))),
        limit: Some(Quantity::Share(HALF)),
        part: Part::Window(wheels[0]),
        place: Some(wheel.window.centre),
        source: "what is seen: the window shifted by depth / tan(elevation); half a mark is enough: Huey 1908, from memory; figures are told apart by the overlap of what is left",
        mend,
        remedies: vec![Remedy::of_wheels(bench, wheels, key, &remedy::at_least(bench, window))],
        keys: keys(wheels, &[key, "mark.margin"]).into_iter().chain(["reading.seats".into()]).collect(),
    })
}
