//! Strokes too thin for the reader's eyes, or too heavy or light for what they are engraved in.

use super::alike::{groups, keys, names};
use super::{Bench, Finding, Part, Quantity, Remedy, Severity, remedy};
use lettering::{Lettering, Weight};
use sight::{Acuity, Polarity};

/// Stroke to height that reads well: about 1 to 6 dark on light, 1 to 7 or 8 light on dark, which blooms; our bounds about them reach
/// from a thumbwheel's 1 to 5 to the 1 to 10 of drawing letters.
const DARK_ON_LIGHT: (f64, f64) = (1.0 / 8.5, 1.0 / 4.2);
const LIGHT_ON_DARK: (f64, f64) = (1.0 / 10.0, 1.0 / 6.0);
const HOWETT: &str = "Howett, NBS Technical Note 1180 (1983), without its corrections for dim light; flat on the table";
const HANDBOOK: &str = "DOD-HDBK-791(AM) 6-5.3.2.3; MIL-STD-1472E 5.4.2.1.3.5; ISO 3098 type B";

pub(super) fn check(bench: &Bench) -> Vec<Finding> {
    let mut findings = Vec::new();
    let acuity = bench.dial.reading.acuity;
    for (r, reader) in bench.dial.reading.readers.iter().enumerate() {
        let needed = reader.view.critical_stroke(acuity);
        let thin = bench.looks.wheels.iter().enumerate().filter_map(|(i, look)| {
            let stroke = look.stroke?;
            (stroke < needed).then_some((i, (stroke, bench.dial.wheels[i].asked.height, look.weight)))
        });
        for ((stroke, height, weight), wheels) in groups(thin) {
            let at = |acuity: Acuity| bench.show(reader.view.critical_stroke(acuity));
            let what = format!(
                "marks of {}: strokes of {}, {} needed for {} with eyes of {acuity} ({} for a normal eye, {} for an older reader, {} for {})",
                names(bench, &wheels),
                bench.show(stroke),
                bench.show(needed),
                reader.words(),
                at(Acuity::NORMAL),
                at(Acuity::NORMAL.older()),
                at(Acuity::WEAK),
                Acuity::WEAK,
            );
            let mend = mend(bench, height, stroke, needed, weight);
            let remedies = remedies(bench, &wheels, height, stroke, needed, weight);
            let keys = keys(&wheels, &["mark.weight", "mark.height"]);
            let one = Finding { remedies, ..thinner(stroke, needed, Part::Wheel(wheels[0]), what, mend, keys) };
            // A symbol is told by its whole form before its finest line.
            findings.push(if weight.is_none() { Finding { severity: Severity::Note, ..one } } else { one });
        }
        if r > 0 {
            continue;
        }
        for (art, look) in bench.dial.cover.art.iter().zip(&bench.looks.art) {
            let Some(stroke) = look.stroke.filter(|stroke| *stroke < needed) else { continue };
            let what = format!(
                "“{}” on the cover: strokes of {}, {} needed for {} with eyes of {acuity}",
                art.what,
                bench.show(stroke),
                bench.show(needed),
                reader.words()
            );
            let taller = bench.show((art.height * needed / stroke * 10.0).ceil() / 10.0);
            let mend = format!("make it {taller} high");
            // The readers of a cover know it by heart sooner than they read it.
            findings.push(Finding {
                severity: Severity::Note,
                place: Some(art.shape.bounds().center()),
                ..thinner(stroke, needed, Part::Cover, what, mend, Vec::new())
            });
        }
    }
    let shares = bench.looks.wheels.iter().enumerate().filter_map(|(i, look)| {
        let polarity = look.engraving.as_ref()?.contrast.polarity();
        let share = look.stroke.filter(|_| look.weight.is_some())? / bench.dial.wheels[i].asked.height;
        let (low, high) = if polarity == Polarity::LightOnDark { LIGHT_ON_DARK } else { DARK_ON_LIGHT };
        (share < low || share > high).then_some((i, (polarity, share, high)))
    });
    for ((polarity, share, high), wheels) in groups(shares) {
        let (word, other) = if share > high { ("heavy", "lighter") } else { ("light", "heavier") };
        let limit = if polarity == Polarity::LightOnDark { "1:7 to 1:8" } else { "about 1:6" };
        findings.push(Finding {
            rule: "stroke to height",
            severity: Severity::Note,
            what: format!(
                "marks of {}: stroke to height 1:{:.1} is {word} for {polarity}, {limit} reads best",
                names(bench, &wheels),
                1.0 / share
            ),
            measured: Some(Quantity::Share(share)),
            limit: Some(Quantity::Share(high)),
            part: Part::Wheel(wheels[0]),
            place: None,
            source: HANDBOOK,
            mend: format!("choose a {other} `mark.weight`"),
            remedies: Weight::ALL
                .into_iter()
                .map(|weight| Remedy::of_wheels(bench, &wheels, "mark.weight", weight.name()))
                .collect(),
            keys: keys(&wheels, &["mark.weight"]),
        });
    }
    findings
}

fn mend(bench: &Bench, height: f64, stroke: f64, needed: f64, weight: Option<Weight>) -> String {
    let taller = bench.show((height * needed / stroke * 10.0).ceil() / 10.0);
    match heavier(height, needed, weight) {
        Some(one) => format!("`mark.weight = \"{}\"`, or `mark.height = \"{taller}\"`", one.name()),
        None => format!("`mark.height = \"{taller}\"`"),
    }
}

fn heavier(height: f64, needed: f64, weight: Option<Weight>) -> Option<Weight> {
    weight.and_then(|_| Weight::ALL.into_iter().find(|one| Lettering::shipped(*one).stroke(height) >= needed))
}

/// What `mend` says in words.
fn remedies(
    bench: &Bench,
    wheels: &[usize],
    height: f64,
    stroke: f64,
    needed: f64,
    weight: Option<Weight>,
) -> Vec<Remedy> {
    let taller = remedy::at_least(bench, (height * needed / stroke * 10.0).ceil() / 10.0);
    let bolder = heavier(height, needed, weight).map(|one| Remedy::of_wheels(bench, wheels, "mark.weight", one.name()));
    bolder.into_iter().chain([Remedy::of_wheels(bench, wheels, "mark.height", &taller)]).collect()
}

fn thinner(stroke: f64, needed: f64, part: Part, what: String, mend: String, mut keys: Vec<String>) -> Finding {
    keys.push("reading.eyesight".into());
    Finding {
        rule: "strokes as they are seen",
        severity: Severity::Mend,
        what,
        measured: Some(Quantity::Length(stroke)),
        limit: Some(Quantity::Length(needed)),
        part,
        place: None,
        source: HOWETT,
        mend,
        remedies: Vec::new(),
        keys,
    }
}
