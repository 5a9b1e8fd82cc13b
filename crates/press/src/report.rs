//! Everything that was computed, as JSON: names carry their units, the order is fixed.

use crate::job_files::sheet_name;
use crate::magnets_report::magnets_report;
use crate::sheet::step_id;
use dial::Looked;
use dial::assembled::{Sense, Wheel};
use dial::findings::{Finding, Quantity};
use dial::job::{Job, Setup, Sheet, Step};
use dial::layout::{Driver, Laid, Sizing};
use dial::turning::{Fault, Other, Stop, TurnTest};
use outline::Point;
use serde_json::{Map, Value, json};

/// Version of the report's form.
const VERSION: u32 = 1;

/// The report of a dial.
pub fn report(looked: &Looked) -> Value {
    let Looked { laid, turns, held, findings, .. } = looked;
    let dial = &laid.dial;
    let plate = dial.cover.plate.bounds();
    json!({
        "schema_version": VERSION,
        "name": dial.name,
        "cover": {
            "stock": dial.cover.stock.name,
            "thickness_mm": dial.cover.stock.thickness(),
            "width_mm": rounded(plate.width()),
            "height_mm": rounded(plate.height()),
            "area_mm2": rounded(dial.cover.plate.area()),
            "perimeter_mm": rounded(dial.cover.plate.perimeter()),
        },
        "wheels": dial.wheels.iter().enumerate().map(|(i, one)| wheel(one, laid.sizing.iter().find(|size| size.wheel == i))).collect::<Vec<_>>(),
        "turn_test": turn_test(turns),
        "reading": crate::looks_report::reading_report(looked),
        "magnets": magnets_report(dial, held),
        "findings": findings.iter().map(|one| finding(laid, one)).collect::<Vec<_>>(),
    })
}

/// The figures of a job: every sheet with its setups and their steps in running order.
pub fn job_report(job: &Job) -> Value {
    let sheets = job.sheets.iter().map(|sheet| {
        json!({
            "number": sheet.number,
            "stock": sheet.stock.name,
            "kerf_x_mm": sheet.stock.kerf.x,
            "kerf_y_mm": sheet.stock.kerf.y,
            "width_mm": rounded(sheet.width),
            "height_mm": rounded(sheet.height),
            "parts": sheet.parts.iter().map(|part| json!({ "name": part.name, "at": place(part.at) })).collect::<Vec<_>>(),
            "setups": sheet.setups.iter().map(|one| setup(sheet, one)).collect::<Vec<_>>(),
        })
    });
    json!({
        "setups": job.sheets.iter().map(|sheet| sheet.setups.len()).sum::<usize>(),
        "sheets": sheets.collect::<Vec<_>>(),
    })
}

fn setup(sheet: &Sheet, setup: &Setup) -> Value {
    let step = |(i, step): (usize, &Step)| {
        json!({
            "group": step_id(i + 1, step),
            "kind": step.kind.words(),
            "depth_mm": step.depth(),
            "pieces": step.work.len(),
        })
    };
    json!({
        "number": setup.number,
        "file": format!("sheets/{}", sheet_name(sheet, setup)),
        "turned_over": setup.turned.iter().map(|part| part.name.as_str()).collect::<Vec<_>>(),
        "steps": setup.steps.iter().enumerate().map(step).collect::<Vec<_>>(),
    })
}

/// To a tenth of a micron: what lies below is noise of the arithmetic.
pub(crate) fn rounded(value: f64) -> Value {
    if value.is_finite() { json!((value * 1e4).round() / 1e4 + 0.0) } else { Value::Null }
}

pub(crate) fn place(p: Point) -> Value {
    json!({ "x_mm": rounded(p.x), "y_mm": rounded(p.y) })
}

pub(crate) fn degrees(radians: f64) -> Value {
    rounded(radians.to_degrees())
}

fn wheel(wheel: &Wheel, size: Option<&Sizing>) -> Value {
    json!({
        "name": wheel.name,
        "stock": wheel.stock.name,
        "centre": place(wheel.centre),
        "radius_mm": rounded(wheel.radius),
        "stops": wheel.marks.len(),
        "marks": wheel.marks.iter().map(|mark| mark.words.as_str()).collect::<Vec<_>>(),
        "mark_height_mm": wheel.asked.height,
        "counts_up": match wheel.counts_up { Sense::Clockwise => "clockwise", Sense::Anticlockwise => "anticlockwise" },
        "sizing": size.map(|size| json!({
            "diameter_mm": rounded(size.diameter),
            "because": match size.driver {
                Driver::Neighbours { .. } => "neighbours",
                Driver::Pocket => "marks clear of the pocket",
                Driver::WindowPocket => "window clear of the pocket",
                Driver::Asked => "asked",
                Driver::SameSize(_) => "same size as the largest",
            },
            "smaller_marks": size.smaller.map(|small| json!({ "mark_height_mm": small.height, "diameter_mm": rounded(small.diameter) })),
        })),
        "window": {
            "centre": place(wheel.window.centre),
            "angle_deg": degrees(wheel.window.angle),
            "distance_mm": rounded(wheel.window.distance),
            "width_mm": rounded(wheel.window.width),
            "height_mm": rounded(wheel.window.height),
            "corner_mm": rounded(wheel.window.corner),
        },
        "notch": {
            "mouth": place(wheel.notch.mouth),
            "angle_deg": degrees(wheel.notch.angle),
            "width_mm": rounded(wheel.notch.width),
            "depth_mm": rounded(wheel.notch.depth),
            "push_up": [rounded(wheel.notch.push_up.x), rounded(wheel.notch.push_up.y)],
        },
        "pocket": { "centre": place(wheel.pocket.centre), "diameter_mm": rounded(2.0 * wheel.pocket.radius), "depth_mm": rounded(wheel.pocket.depth) },
        "cover_pocket": { "centre": place(wheel.cover_pocket.centre), "diameter_mm": rounded(2.0 * wheel.cover_pocket.radius), "depth_mm": rounded(wheel.cover_pocket.depth) },
    })
}

fn turn_test(turns: &TurnTest) -> Value {
    let slack = turns.slack();
    json!({
        "passes": turns.passes(),
        "slack_angle_deg": degrees(slack.angle),
        "slack_drift_mm": rounded(slack.drift),
        "wheels": turns.wheels.iter().map(|wheel| json!({
            "name": wheel.name,
            "next_mark_from": [rounded(wheel.next_from.x), rounded(wheel.next_from.y)],
            "stops": wheel.stops.iter().map(stop).collect::<Vec<_>>(),
        })).collect::<Vec<_>>(),
    })
}

fn stop(stop: &Stop) -> Value {
    json!({
        "mark": stop.words,
        "seen_share": stop.seen,
        "margin_mm": rounded(stop.margin),
        "nearest_other": other(&stop.other),
        "other_distance_mm": rounded(stop.other_distance),
        "lean_deg": degrees(stop.lean),
        "in_order": stop.in_order,
        "slack_angle_deg": degrees(stop.slack_angle),
        "slack_drift_mm": rounded(stop.slack_drift),
        "faults": stop.faults.iter().map(fault).collect::<Vec<_>>(),
    })
}

fn other(other: &Other) -> Value {
    match other {
        Other::Mark(stop) => json!({ "mark_of_stop": stop }),
        Other::Rim => json!("rim"),
        Other::Pocket => json!("pocket"),
    }
}

fn fault(fault: &Fault) -> Value {
    json!(match fault {
        Fault::NotWhole => "not whole",
        Fault::Tight => "tight",
        Fault::NotAlone(_) => "not alone",
        Fault::Close(_) => "close",
        Fault::Leans => "leans",
        Fault::OutOfOrder => "out of order",
        Fault::NeighbourHidden => "neighbour hidden",
    })
}

fn finding(laid: &Laid, finding: &Finding) -> Value {
    let mut all = Map::new();
    all.insert("rule".into(), json!(finding.rule));
    all.insert("severity".into(), json!(finding.severity.word()));
    all.insert("what".into(), json!(finding.what));
    for (name, quantity) in [("measured", finding.measured), ("limit", finding.limit)] {
        if let Some(quantity) = quantity {
            let (unit, value) = match quantity {
                Quantity::Length(mm) => ("_mm", rounded(mm)),
                Quantity::Angle(radians) => ("_deg", degrees(radians)),
                Quantity::Share(share) => ("_share", json!(share)),
                Quantity::Count(count) => ("_count", json!(count)),
                Quantity::Force(force) => ("_n", rounded(force)),
                Quantity::Sight(radians) => ("_arcmin", rounded(sight::arcmin(radians))),
                Quantity::Ratio(ratio) => ("_ratio", json!(ratio)),
            };
            all.insert(format!("{name}{unit}"), value);
        }
    }
    all.insert("part".into(), json!(finding.part.words(&laid.dial)));
    if let Some(at) = finding.place {
        all.insert("place".into(), place(at));
    }
    all.insert("source".into(), json!(finding.source));
    all.insert("mend".into(), json!(finding.mend));
    all.insert("keys".into(), json!(finding.keys));
    Value::Object(all)
}
