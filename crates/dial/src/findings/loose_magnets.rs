//! What the dial's magnets can do once they are loose; and no age label, which no computation can stand for.

use super::{Bench, Finding, Part, Quantity, Severity};
use crate::magnets::{age_label, loose};
use magnet::FLUX_INDEX_LIMIT;

pub(super) fn check(bench: &Bench) -> Vec<Finding> {
    let mut findings: Vec<Finding> = loose(bench.dial).iter().filter_map(|one| {
        let over = if one.flux.hazardous() { "over" } else if one.flux.span[1] >= FLUX_INDEX_LIMIT { "near" } else { return None };
        let enclosed = if bench.dial.wheels.iter().any(|wheel| wheel.seat.cap.is_none()) {
            "; `magnet.seat = \"enclosed\"` glues a cap over each"
        } else { "" };
        Some(Finding {
            rule: "loose magnets",
            severity: Severity::Note,
            what: format!(
                "{} magnets {} x {} have a flux index of {:.0} kG\u{b2}mm\u{b2} each ({:.0} to {:.0}), {over} the limit of 50 for a magnet that can be swallowed: a loose one is a hazard to life. Who may have this dial, and with which warnings, is for local law and an accredited test to say{enclosed}",
                one.count, bench.show(one.disc.diameter), bench.show(one.disc.thickness), one.flux.index, one.flux.span[0], one.flux.span[1],
            ),
            measured: None,
            limit: None,
            part: Part::Dial,
            place: None,
            source: "16 CFR 1262.2, EN 71-1, SOR/2011-17 schedule 10: 50 kG\u{b2}mm\u{b2} at 0.38 mm over the pole",
            mend: String::new(),
            remedies: Vec::new(),
            keys: vec!["magnet.seat".into(), "magnet.diameter".into()],
        })
    }).collect();
    let art = bench.dial.cover.art.iter().filter(|art| art.weight.is_some() && age_label(&art.what));
    findings.extend(art.map(|art| Finding {
        rule: "age label",
        severity: Severity::Refuse,
        what: format!("“{}” reads as an age label or a promise of safety, on a dial with magnets that kill when they are swallowed", art.what),
        measured: None,
        limit: None,
        part: Part::Cover,
        place: Some(art.shape.bounds().center()),
        source: "such labels rest on tests by an accredited laboratory under the law of the place (16 CFR 1250 and 1262, EN 71-1): none was computed here",
        mend: "leave it out of the dial; after such a test, the label goes on the box by the rules of the place".into(),
        remedies: Vec::new(),
        keys: vec!["cover.art".into()],
    }));
    findings.extend(impossible(bench));
    findings
}

/// A disc that is thinner than its own plating has no body.
fn impossible(bench: &Bench) -> Vec<Finding> {
    let unknown = bench.held.iter().enumerate().filter(|(_, held)| held.is_none());
    unknown
        .map(|(i, _)| Finding {
            rule: "magnets that cannot be",
            severity: Severity::Refuse,
            what: format!("{}: a magnet of this size and grade cannot be computed", bench.dial.wheels[i].name),
            measured: Some(Quantity::Length(bench.dial.wheels[i].seat.wheel.thickness)),
            limit: None,
            part: Part::Wheel(i),
            place: None,
            source: "the model needs a body within the plating",
            mend: "give the magnet's true size".into(),
            remedies: Vec::new(),
            keys: vec!["magnet.thickness".into(), "magnet.diameter".into()],
        })
        .collect()
}
