//! Marks too small to cut: strokes that the beam fills and islands that fall out.

use super::{Bench, Finding, Part, Quantity, Remedy, Severity, remedy};
use crate::assembled::{Art, Mark};
use crate::design::Motif;
use lettering::{Lettering, Symbol, Weight};
use outline::Point;
use std::collections::BTreeMap;

/// Least engraved stroke in wood (common practice: two or three lines of the raster, two spots of the beam).
const STROKE: f64 = 0.3;
/// Least standing island inside a stroke (common practice).
const ISLAND: f64 = 0.5;

pub(super) fn check(bench: &Bench) -> Vec<Finding> {
    let mut findings = Vec::new();
    let all: Vec<usize> = (0..bench.dial.wheels.len()).collect();
    for (i, wheel) in bench.dial.wheels.iter().enumerate() {
        let fine =
            wheel.marks.iter().map(|mark| (mark.words.clone(), fine_of_mark(mark, wheel.asked.height, wheel.weight)));
        let worst = worst_of(fine);
        let keys = vec![format!("counter[{i}].mark.height"), "mark.height".into()];
        let taller = |height: &str| {
            vec![
                Remedy::of_wheels(bench, &[i], "mark.height", height),
                Remedy::of_wheels(bench, &all, "mark.height", height),
            ]
        };
        findings.extend(report(
            bench,
            Part::Wheel(i),
            &format!("{}: ", wheel.name),
            &worst,
            wheel.asked.height,
            keys,
            &taller,
        ));
    }
    for art in &bench.dial.cover.art {
        let worst = worst_of(std::iter::once((art.what.clone(), fine_of_art(art))));
        let keys = Vec::new();
        let taller = |height: &str| remedy::of_art(bench, art, height);
        findings.extend(report(bench, Part::Cover, "", &worst, art.height, keys, &taller));
    }
    findings
}

/// The finest places of one mark, in mm.
#[derive(Clone, Copy, Debug, Default)]
struct Fine {
    stroke: Option<(f64, Option<Point>)>,
    island: Option<(f64, Option<Point>)>,
}

fn fine_of_mark(mark: &Mark, height: f64, weight: Weight) -> Fine {
    match &mark.motif {
        Motif::Text(text) => fine_of_text(text, height, weight),
        Motif::Symbol(symbol) => fine_of_symbol(*symbol, height),
    }
}

fn fine_of_art(art: &Art) -> Fine {
    match art.weight {
        Some(weight) => fine_of_text(&art.what, art.height, weight),
        None => Symbol::named(&art.what).map(|symbol| fine_of_symbol(symbol, art.height)).unwrap_or_default(),
    }
}

/// From the font's own measures, taken once for each glyph.
fn fine_of_text(text: &str, height: f64, weight: Weight) -> Fine {
    let lettering = Lettering::shipped(weight);
    Fine {
        stroke: lettering.thinnest_stroke(text, height).map(|width| (width, None)),
        island: lettering.smallest_island(text, height).map(|across| (across, None)),
    }
}

/// From the drawing's own measures, taken once for each symbol.
fn fine_of_symbol(symbol: Symbol, height: f64) -> Fine {
    let (stroke, island) = symbol.finest(height);
    Fine { stroke: stroke.map(|width| (width, None)), island: island.map(|across| (across, None)) }
}

type Worst = BTreeMap<&'static str, (f64, Option<Point>, Vec<String>)>;

/// The smallest stroke and the smallest island over some marks, with all marks that are below the limit.
fn worst_of(fine: impl Iterator<Item = (String, Fine)>) -> Worst {
    let mut worst: Worst = BTreeMap::new();
    for (words, one) in fine {
        for (kind, measured, limit) in [("stroke", one.stroke, STROKE), ("island", one.island, ISLAND)] {
            let Some((width, at)) = measured else {
                continue;
            };
            let entry = worst.entry(kind).or_insert((f64::INFINITY, None, Vec::new()));
            if width < limit {
                entry.2.push(words.clone());
            }
            if width < entry.0 {
                (entry.0, entry.1) = (width, at);
            }
        }
    }
    worst
}

fn report(
    bench: &Bench,
    part: Part,
    whose: &str,
    worst: &Worst,
    height: f64,
    keys: Vec<String>,
    taller: &dyn Fn(&str) -> Vec<Remedy>,
) -> Vec<Finding> {
    let mut findings = Vec::new();
    for (kind, (width, at, below)) in worst {
        let limit = if *kind == "stroke" { STROKE } else { ISLAND };
        if below.is_empty() {
            continue;
        }
        let wanted = height * limit / width;
        let (what, why) = if *kind == "stroke" {
            ("the thinnest stroke", "the beam is about as wide, so it burns out")
        } else {
            ("the smallest standing island", "it burns away or breaks out, and the figure is hard to read")
        };
        findings.push(Finding {
            rule: "marks too small to cut",
            severity: Severity::Mend,
            what: format!(
                "{whose}{what} of {} is {}, {} needed: {why}",
                some(below),
                bench.show(*width),
                bench.show(limit)
            ),
            measured: Some(Quantity::Length(*width)),
            limit: Some(Quantity::Length(limit)),
            part,
            place: *at,
            source: "common practice for engraving wood",
            mend: format!(
                "make it {} high, or choose a lighter or heavier `mark.weight`",
                bench.show((wanted * 10.0).ceil() / 10.0)
            ),
            remedies: taller(&remedy::at_least(bench, (wanted * 10.0).ceil() / 10.0)),
            keys: keys.clone(),
        });
    }
    findings
}

fn some(words: &[String]) -> String {
    let quoted: Vec<String> = words.iter().take(4).map(|word| format!("“{word}”")).collect();
    match words.len() {
        0..=4 => quoted.join(", "),
        n => format!("{} and {} more", quoted.join(", "), n - 4),
    }
}
