//! Wheels clear of each other and of the cover's edge, with room for moisture movement.

use super::{Bench, Finding, Part, Quantity, Remedy, Severity, remedy};
use crate::assembled::Wheel;
use outline::Edges;

/// Free room that must be left when the wood has moved, for cutting and placing (our own proposal: two cuts of 0.1 mm).
const FREE: f64 = 0.2;
/// Change of wood moisture from a dry winter room to a damp summer one, in per cent (30 to 50 % relative
/// humidity is 6 to 9 %, 65 % is 12 %: Wood Handbook, as told by Wengert).
const MOISTURE: f64 = 4.0;

pub(super) fn check(bench: &Bench) -> Vec<Finding> {
    let wheels = &bench.dial.wheels;
    let outline = Edges::of_curve(&bench.dial.cover.outline);
    let mut findings = Vec::new();
    for (i, wheel) in wheels.iter().enumerate() {
        for other in &wheels[i + 1..] {
            let gap = (wheel.centre - other.centre).hypot() - wheel.radius - other.radius;
            let room = FREE + growth(wheel) + growth(other);
            if gap < room {
                let middle = wheel.centre.lerp(other.centre, 0.5);
                let severity = if gap <= 0.0 { Severity::Refuse } else { Severity::Mend };
                let mut finding = finding(
                    bench,
                    i,
                    gap,
                    room,
                    &format!("{} and {}: the wheels are", wheel.name, other.name),
                    "apart",
                    severity,
                );
                finding.place = Some(middle);
                finding.keys = vec!["wheel.gap".into(), format!("counter[{i}].at")];
                let gap = Remedy::set("wheel.gap", remedy::at_least(bench, room));
                let free = Remedy { values: (0..wheels.len()).map(|i| (format!("counter[{i}].at"), None)).collect() };
                finding.remedies = vec![gap.clone(), free.clone(), gap.also(free)];
                findings.push(finding);
            }
        }
        let rim = Edges::of_curve(&wheel.rim);
        let near = rim.nearest(&outline);
        let room = FREE + growth(wheel);
        // A wheel that crosses the edge is the business of another rule.
        if near.distance > 0.0 && near.distance < room {
            let mut finding = finding(
                bench,
                i,
                near.distance,
                room,
                &format!("{}: the rim is", wheel.name),
                "inside the cover's edge",
                Severity::Mend,
            );
            finding.place = Some(near.on_self);
            finding.keys = vec!["cover.edge".into()];
            let edge = Remedy::set("cover.edge", remedy::at_least(bench, room));
            let free = Remedy { values: ["cover.width", "cover.height"].map(|key| (key.to_owned(), None)).to_vec() };
            finding.remedies = vec![edge.clone(), edge.also(free)];
            findings.push(finding);
        }
    }
    findings
}

/// How much a wheel's radius may grow with moisture: D C (M2 - M1) / 2 (Wood Handbook FPL-GTR-190, eq. 13-2; table 13-5).
/// The layer that moves most decides: a thin face follows a thick core, but not the other way; this is the safe side.
fn growth(wheel: &Wheel) -> f64 {
    let swelling = wheel.stock.layers.iter().filter_map(|layer| layer.material).map(|material| material.swelling);
    wheel.radius * swelling.fold(0.0, f64::max) * MOISTURE
}

fn finding(bench: &Bench, i: usize, measured: f64, room: f64, who: &str, how: &str, severity: Severity) -> Finding {
    Finding {
        rule: "clearance",
        severity,
        what: format!(
            "{who} {} {how}, {} needed when the wood takes up {MOISTURE} % of moisture",
            bench.show(measured),
            bench.show(room)
        ),
        measured: Some(Quantity::Length(measured)),
        limit: Some(Quantity::Length(room)),
        part: Part::Wheel(i),
        place: None,
        source: "Wood Handbook FPL-GTR-190 table 13-5 for the movement; 0.2 mm of free room is our own proposal",
        mend: "ask for more `wheel.gap` or `cover.edge`, or make the wheels of plywood, which hardly moves".into(),
        remedies: Vec::new(),
        keys: Vec::new(),
    }
}
