//! Engravings that do not stand out from their face.

use super::alike::{groups, keys, names};
use super::{Bench, Finding, Part, Quantity, Remedy, Severity, remedy};
use crate::looks::{Engraving, level};
use process::Stock;
use sight::Level;

/// A little deeper than a layer is thick, so that the next one shows all over.
const THROUGH: f64 = 1.25;
const SOURCE: &str = "WCAG 2.2, success criteria 1.4.3 and 1.4.11, large text taken as that which looks as high as 18 points on a screen; colours as the stock says";

pub(super) fn check(bench: &Bench) -> Vec<Finding> {
    let mut findings = Vec::new();
    let asked = bench.looks.wheels.iter().enumerate().filter_map(|(i, look)| {
        let least = look.seen.iter().map(|seen| level(look.weight, seen.angle)).max_by(stricter)?;
        Some((i, (look.engraving.clone()?, least, bench.dial.wheels[i].stock.clone())))
    });
    for ((engraving, least, stock), wheels) in groups(asked) {
        let whose = format!("marks of {}", names(bench, &wheels));
        let keys = keys(&wheels, &["mark.depth", "mark.height"]);
        let keys = keys.into_iter().chain(["wheel.stock".into(), "stock".into()]).collect();
        let part = Part::Wheel(wheels[0]);
        let deeper = |depth: &str| Remedy::of_wheels(bench, &wheels, "mark.depth", depth);
        findings.extend(finding(bench, &whose, &engraving, least, &stock, "mark.depth", &deeper, part, keys));
    }
    let art = bench.dial.cover.art.iter().zip(&bench.looks.art);
    let least = art.filter_map(|(art, look)| Some(level(art.weight, look.first_angle?))).max_by(stricter);
    if let (Some(engraving), Some(least)) = (&bench.looks.cover, least) {
        let stock = &bench.dial.cover.stock;
        let keys = ["cover.engrave_depth", "cover.stock", "stock"].map(str::to_owned).to_vec();
        let whose = "text and symbols on the cover";
        let key = "cover.engrave_depth";
        let deeper = |depth: &str| Remedy::set(key, depth);
        findings.extend(finding(bench, whose, engraving, least, stock, key, &deeper, Part::Cover, keys));
    }
    findings
}

fn stricter(a: &Level, b: &Level) -> std::cmp::Ordering {
    a.least().total_cmp(&b.least())
}

#[expect(clippy::too_many_arguments, reason = "wheels and cover differ in each of them")]
fn finding(
    bench: &Bench,
    whose: &str,
    engraving: &Engraving,
    least: Level,
    stock: &Stock,
    depth_key: &str,
    deeper: &dyn Fn(&str) -> Remedy,
    part: Part,
    keys: Vec<String>,
) -> Option<Finding> {
    let passes = engraving.contrast.passes(least);
    let doubtful = engraving.measured.is_some_and(|measured| measured.low < least.least());
    if passes && !doubtful {
        return None;
    }
    let measured = engraving.measured.map_or(String::new(), |measured| {
        // Never rounded towards what would pass.
        let cut = |ratio: f64| (ratio * 10.0 + 1e-6).floor() / 10.0;
        format!(" (measured: between {} and {})", cut(measured.low), cut(measured.high))
    });
    let (face, floor) = engraving.lightness();
    let shows = &stock.layers[engraving.worst.layer].named;
    let depth = would_do(stock, least);
    let may = if engraving.may_differ() { "may show" } else { "shows" };
    Some(Finding {
        rule: "contrast of the engraving",
        severity: if passes { Severity::Note } else { Severity::Mend },
        what: format!(
            "{whose}: {}:1{measured} against the face, {}:1 needed ({least}): “{}” engraved {} deep {may} {shows}, L* {floor:.0} on L* {face:.0}, {}",
            engraving.contrast.shown(),
            least.least(),
            stock.name,
            bench.show(engraving.depth),
            engraving.contrast.polarity(),
        ),
        measured: Some(Quantity::Ratio(engraving.contrast.ratio())),
        limit: Some(Quantity::Ratio(least.least())),
        part,
        place: None,
        source: SOURCE,
        mend: mend(stock, depth, depth_key),
        remedies: depth.map(|depth| deeper(&remedy::at_least(bench, depth))).into_iter().collect(),
        keys,
    })
}

/// A depth at which the same stock would do.
fn would_do(stock: &Stock, least: Level) -> Option<f64> {
    let mut top = 0.0;
    let bottoms = stock.layers.iter().map(|layer| {
        top += layer.thickness;
        top
    });
    let depths = std::iter::once(0.3).chain(bottoms.map(|bottom| (bottom * THROUGH * 20.0).ceil() / 20.0));
    let does = |depth: &f64| Engraving::of(stock, *depth).is_some_and(|one| one.contrast.passes(least));
    // A depth of more than half the sheet leaves too little of it.
    depths.filter(|depth| *depth < stock.thinnest() / 2.0).find(does)
}

/// That depth, or another stock.
fn mend(stock: &Stock, depth: Option<f64>, depth_key: &str) -> String {
    let mend = match depth {
        Some(depth) => format!("`{depth_key} = \"{depth} mm\"` would do"),
        None => "choose a stock whose face differs more from what lies under it, or fill the engraving with paint; `dialwright looks` shows all pairings".to_owned(),
    };
    if stock.surfaces.measured() { mend } else { mend + "; these colours are typical ones: measure this very sheet" }
}
