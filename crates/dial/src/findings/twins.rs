//! Marks that can be taken for another mark when the dial is read upside down: 6 and 9, 66 and 99, 68 and 89.

use super::{Bench, Finding, Part, Quantity, Remedy, Severity};
use crate::design::Motif;
use outline::Shape;

pub(super) fn check(bench: &Bench) -> Vec<Finding> {
    let mut findings = Vec::new();
    for (i, wheel) in bench.dial.wheels.iter().enumerate() {
        // As they stand in the window, bars and dots included.
        let upright: Vec<Shape> = (0..wheel.marks.len()).map(|k| wheel.upright(k)).collect();
        let twins = lettering::upside_down_twins(&upright.iter().collect::<Vec<_>>());
        for twin in &twins {
            let (a, b) = (&wheel.marks[twin.first].words, &wheel.marks[twin.second].words);
            findings.push(Finding {
                rule: "upside-down twins",
                severity: Severity::Mend,
                what: format!("{}: “{a}” upside down can be taken for “{b}”", wheel.name),
                measured: Some(Quantity::Share(twin.overlap)),
                limit: Some(Quantity::Share(lettering::TWIN_LIMIT)),
                part: Part::Wheel(i),
                place: Some(wheel.window.centre),
                source: "our own proposal, measured on fonts whose 6 is a turned 9 (overlap 0.9 to 1)",
                mend: "set `mark.twins` to \"bar\" or \"dot\"".into(),
                remedies: ["where needed", "bar", "dot"]
                    .map(|how| Remedy::of_wheels(bench, &[i], "mark.twins", how))
                    .to_vec(),
                keys: vec![format!("counter[{i}].mark.twins"), "mark.twins".into()],
            });
        }
        findings.extend(told(bench, i, twins.is_empty()));
    }
    findings
}

/// Says how the pairs of this sequence are told apart.
fn told(bench: &Bench, i: usize, apart: bool) -> Option<Finding> {
    let wheel = &bench.dial.wheels[i];
    let texts: Vec<&str> = wheel
        .marks
        .iter()
        .filter_map(|mark| match &mark.motif {
            Motif::Text(text) => Some(text.as_str()),
            Motif::Symbol(_) => None,
        })
        .collect();
    let pairs: Vec<String> = texts
        .iter()
        .filter_map(|text| {
            let turned = lettering::reads_upside_down(text)?;
            (**text < *turned && texts.contains(&turned.as_str())).then(|| format!("{text}/{turned}"))
        })
        .collect();
    if pairs.is_empty() || !apart {
        return None;
    }
    let marked = wheel.marks.iter().filter(|mark| mark.told_apart).count();
    let how = if marked > 0 {
        format!("{marked} marks carry a bar or dot")
    } else {
        "the font draws their figures so differently that neither needs a bar or a dot".into()
    };
    Some(Finding {
        rule: "upside-down twins",
        severity: Severity::Note,
        what: format!("{}: {} told apart: {how}", wheel.name, list(&pairs)),
        measured: Some(Quantity::Count(pairs.len())),
        limit: None,
        part: Part::Wheel(i),
        place: None,
        source: "half-turn partners of figures: 0-0, 1-1, 6-9, 8-8 (common practice)",
        mend: String::new(),
        remedies: Vec::new(),
        keys: vec![format!("counter[{i}].mark.twins")],
    })
}

fn list(pairs: &[String]) -> String {
    match pairs.len() {
        0..=4 => pairs.join(", "),
        n => format!("{} and {} more pairs", pairs[..3].join(", "), n - 3),
    }
}
