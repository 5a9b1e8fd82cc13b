//! The dial: pictures true to the colours of its stocks, the figures that matter, and the findings.

use crate::Make;
use crate::book::{Book, NARROW};
use crate::ink::short;
use dial::assembled::{Sense, Wheel};
use dial::findings::{Finding, Quantity, Severity};
use measure::show;
use outline::Point;
use press::paper::{dial_back, dial_face, taken_apart};
use serde_json::{Value, json};

pub(super) fn data(make: &Make, book: &mut Book) -> Value {
    let looked = make.looked;
    let dial = &looked.laid.dial;
    let mm = |length: f64| show(length, dial.show);
    let plate = dial.cover.plate.bounds();
    let slack = looked.turns.slack();
    let at = |(wheel, stop): (usize, usize)| {
        let found = looked.turns.wheels.get(wheel).and_then(|one| one.stops.get(stop).map(|stop| (one, stop)));
        found.map_or(String::new(), |(wheel, stop)| format!("at \u{201c}{}\u{201d} of {}", stop.words, wheel.name))
    };
    let figures = json!([
        [
            "Cover",
            format!(
                "{} \u{d7} {}, {}, {} thick",
                mm(plate.width()),
                mm(plate.height()),
                dial.cover.stock.name,
                mm(dial.cover.stock.thickness())
            )
        ],
        ["Turn test", if looked.turns.passes() { "every stop passes" } else { "some stops fail: see the turn test" }],
        [
            "Forgives",
            format!(
                "{} of turning, {}; {} of sideways drift, {}",
                Quantity::Angle(slack.angle).show(dial.show),
                at(slack.angle_at),
                mm(slack.drift),
                at(slack.drift_at)
            )
        ],
        [
            "Sheets",
            format!(
                "{}, in {} setups",
                count(make.job.sheets.len(), "sheet"),
                make.job.sheets.iter().map(|sheet| sheet.setups.len()).sum::<usize>()
            )
        ],
    ]);
    let placed: Vec<(&Finding, Point)> = looked
        .findings
        .iter()
        .filter(|finding| finding.severity != Severity::Note)
        .filter_map(|finding| finding.place.map(|at| (finding, at)))
        .collect();
    let places: Vec<Point> = placed.iter().map(|one| one.1).collect();
    let mut number = 0;
    let findings: Vec<Value> = looked
        .findings
        .iter()
        .map(|finding| {
            let ringed = finding.severity != Severity::Note && finding.place.is_some();
            number += usize::from(ringed);
            json!({
                "number": ringed.then_some(number),
                "severity": finding.severity.word(),
                "part": finding.part.words(dial),
                "what": finding.what,
                "mend": finding.mend,
                "source": finding.source,
            })
        })
        .collect();
    json!({
        "line": format!("{} behind a cover of {}", count(dial.wheels.len(), "wheel"), dial.cover.stock.name),
        "face": book.drawing(&dial_face(dial, &[])),
        "back": book.drawing(&dial_back(dial)),
        "apart": book.drawing(&taken_apart(dial)),
        "ringed": (!places.is_empty()).then(|| book.drawing(&dial_face(dial, &places))),
        "figures": figures,
        "wheels": dial.wheels.iter().enumerate().map(|(i, one)| wheel(make, i, one)).collect::<Vec<_>>(),
        "findings": findings,
    })
}

fn wheel(make: &Make, i: usize, wheel: &Wheel) -> Value {
    let dial = &make.looked.laid.dial;
    let mm = |length: f64| show(length, dial.show);
    let words = |k: usize| wheel.marks.get(k).map_or(String::new(), |mark| short(&mark.words, NARROW));
    json!({
        "name": wheel.name,
        "stock": format!("{}, {}", wheel.stock.name, mm(wheel.stock.thickness())),
        "stops": wheel.marks.len(),
        "counts": format!("{} to {}", words(0), words(wheel.marks.len().saturating_sub(1))),
        "diameter": mm(2.0 * wheel.radius),
        "window": format!("{} \u{d7} {}", mm(wheel.window.width), mm(wheel.window.height)),
        "mark": mm(wheel.asked.height),
        "sense": match wheel.counts_up { Sense::Clockwise => "clockwise", Sense::Anticlockwise => "anticlockwise" },
        "held": make.looked.held.get(i).and_then(|held| held.as_ref()).map_or("cannot be held".to_owned(), |held| {
            format!("{}; {:.2} N at the rim", held.likely.verdict.words(), held.effort.likely)
        }),
    })
}

/// "1 sheet", "2 sheets".
pub(super) fn count(n: usize, what: &str) -> String {
    if n == 1 { format!("1 {what}") } else { format!("{n} {what}s") }
}
