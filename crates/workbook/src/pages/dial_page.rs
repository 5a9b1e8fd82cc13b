//! The dial: pictures true to the colours of its stocks, the figures that matter, and the findings.

use crate::Make;
use crate::book::{Book, NARROW};
use crate::ink::short;
use dial::assembled::{Dial, Sense, Wheel};
use dial::findings::{Finding, Part, Quantity, Severity};
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
    json!({
        "line": format!("{} behind a cover of {}", count(dial.wheels.len(), "wheel"), dial.cover.stock.name),
        "face": book.drawing(&dial_face(dial, &[])),
        "back": book.drawing(&dial_back(dial)),
        "apart": book.drawing(&taken_apart(dial)),
        "ringed": (!places.is_empty()).then(|| book.drawing(&dial_face(dial, &places))),
        "figures": figures,
        "wheels": dial.wheels.iter().enumerate().map(|(i, one)| wheel(make, i, one)).collect::<Vec<_>>(),
        "findings": findings(dial, &looked.findings),
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

/// The findings as rows. Those that say the same of several wheels stand in one row; those with a ring in the picture each keep their own.
fn findings(dial: &Dial, all: &[Finding]) -> Vec<Value> {
    let mut rows: Vec<(&Finding, Option<usize>, Vec<&str>, &str)> = Vec::new();
    let mut number = 0;
    for one in all {
        let ringed = one.severity != Severity::Note && one.place.is_some();
        number += usize::from(ringed);
        let (names, what) = if kind(one.part).is_some() {
            begins_with_wheels(dial, &one.what)
        } else {
            (Vec::new(), one.what.as_str())
        };
        let same = |row: &&mut (&Finding, Option<usize>, Vec<&str>, &str)| {
            row.1.is_none()
                && !names.is_empty()
                && kind(row.0.part) == kind(one.part)
                && (row.0.rule, row.0.severity, row.3, &row.0.mend) == (one.rule, one.severity, what, &one.mend)
        };
        match rows.iter_mut().find(same) {
            Some(row) if !ringed => row.2.extend(names),
            _ => rows.push((one, ringed.then_some(number), names, what)),
        }
    }
    rows.into_iter()
        .map(|(one, number, names, what)| {
            let of_wheels = kind(one.part).filter(|_| !names.is_empty());
            json!({
                "number": number,
                "severity": one.severity.word(),
                "part": of_wheels.map_or_else(|| one.part.words(dial), |kind| format!("{kind} {}", names.join(", "))),
                "what": what,
                "mend": one.mend,
                "source": one.source,
            })
        })
        .collect()
}

/// What a part is to its wheel, if it has one.
fn kind(part: Part) -> Option<&'static str> {
    match part {
        Part::Wheel(_) => Some("wheel"),
        Part::Window(_) => Some("window of"),
        Part::Notch(_) => Some("notch of"),
        Part::Dial | Part::Cover => None,
    }
}

/// The wheels that a sentence begins with ("water, salt: ..."), and what it says of them.
fn begins_with_wheels<'a>(dial: &'a Dial, sentence: &'a str) -> (Vec<&'a str>, &'a str) {
    let mut names: Vec<&str> = Vec::new();
    let mut rest = sentence;
    loop {
        let next = |end: &str| {
            let fits = |name: &&str| rest.strip_prefix(*name).is_some_and(|after| after.starts_with(end));
            dial.wheels.iter().map(|wheel| wheel.name.as_str()).find(fits)
        };
        if let Some(name) = next(": ") {
            names.push(name);
            return (names, &rest[name.len() + 2..]);
        }
        let Some(name) = next(", ") else { return (Vec::new(), sentence) };
        names.push(name);
        rest = &rest[name.len() + 2..];
    }
}
