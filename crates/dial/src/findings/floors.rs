//! The floor that is left under a pocket when the stock comes as thin as it may, and less whatever is engraved on the other face.

use super::{Bench, Finding, Part, Quantity, Remedy, Severity, remedy};
use crate::assembled::Pocket;
use outline::{Curve, Shape};
use process::Stock;

/// A floor that holds a magnet's pull and does not show through (our own proposal: one face ply).
pub(crate) const FLOOR: f64 = 0.4;
/// Below this the beam's own scatter goes through (engraved depth scatters by 10 to 20 %: common practice).
const THROUGH: f64 = 0.15;

pub(super) fn check(bench: &Bench) -> Vec<Finding> {
    let mut findings = Vec::new();
    for (i, wheel) in bench.dial.wheels.iter().enumerate() {
        findings.extend(floor(bench, i, &wheel.pocket, &wheel.stock, 0.0, Part::Wheel(i), "magnet.wheel_pocket"));
        let disc = Shape::from(Curve::circle(wheel.cover_pocket.centre, wheel.cover_pocket.radius));
        let engraved = bench.dial.cover.art.iter().any(|art| !art.shape.common(&disc).is_empty());
        let engraved = if engraved { bench.dial.cover.engrave_depth } else { 0.0 };
        findings.extend(floor(
            bench,
            i,
            &wheel.cover_pocket,
            &bench.dial.cover.stock,
            engraved,
            Part::Cover,
            "magnet.cover_pocket",
        ));
    }
    // Pockets of one size in one stock say it once.
    let mut said: Vec<Finding> = Vec::new();
    for finding in findings {
        if !said.iter().any(|one| one.keys == finding.keys && one.measured == finding.measured) {
            said.push(finding);
        }
    }
    said
}

fn floor(
    bench: &Bench,
    i: usize,
    pocket: &Pocket,
    stock: &Stock,
    engraved: f64,
    part: Part,
    key: &str,
) -> Option<Finding> {
    let floor = stock.thinnest() - pocket.depth - engraved;
    if floor >= FLOOR {
        return None;
    }
    let over = if engraved > 0.0 {
        format!(", less {} engraved on the other face", bench.show(engraved))
    } else {
        String::new()
    };
    Some(Finding {
        rule: "floor under a pocket",
        severity: if floor < THROUGH { Severity::Refuse } else { Severity::Mend },
        what: format!(
            "{}: a floor of {} is left under the pocket of {} when {} comes {} thick, as thin as it may{over}; {} needed",
            part.words(bench.dial),
            bench.show(floor),
            bench.show(pocket.depth),
            stock.name,
            bench.show(stock.thinnest()),
            bench.show(if floor < THROUGH { THROUGH } else { FLOOR })
        ),
        measured: Some(Quantity::Length(floor)),
        limit: Some(Quantity::Length(if floor < THROUGH { THROUGH } else { FLOOR })),
        part,
        place: Some(bench.dial.wheels[i].centre),
        source: "EN 315 or the stock's own tolerance for the thickness; the floor is our own proposal",
        mend: "measure your sheet and give its true thickness, choose a thinner magnet, a shallower pocket, or a thicker stock".into(),
        remedies: shallower(bench, stock.thinnest() - engraved - FLOOR, key),
        keys: vec![key.into(), "magnet.thickness".into(), "stock".into()],
    })
}

/// The pocket's depth left to the seat, or as deep as the floor allows.
fn shallower(bench: &Bench, depth: f64, key: &str) -> Vec<Remedy> {
    let left = Remedy { values: vec![(key.to_owned(), None)] };
    let deep = (depth > 0.0).then(|| Remedy::set(key, remedy::at_most(bench, depth)));
    std::iter::once(left).chain(deep).collect()
}
