//! What can be read of a dial, and its pairings, as JSON: names carry their units.

use crate::report::{reading_report, rounded};
use dial::Looked;
use dial::looks::{Pairing, Picks, picks};
use process::{Side, Workshop};
use serde_json::{Value, json};

/// All of `dialwright looks`: what can be read, the pairings best first, and what people picked.
pub fn looks_report(looked: &Looked, workshop: &Workshop, ranked: &[Pairing]) -> Value {
    let mut report = reading_report(looked);
    report["pairings"] = ranked.iter().map(pairing).collect();
    report["picked"] = picks(&workshop.votes).map_or(Value::Null, |one| picked_report(&one));
    report
}

fn pairing(one: &Pairing) -> Value {
    let stock = |stock: &process::Stock| {
        json!({
            "stock": stock.name,
            "face": stock.colour(Side::Face).to_string(),
            "back": stock.colour(Side::Back).to_string(),
            "finish": stock.finish(Side::Face).word(),
            "back_finish": stock.finish(Side::Back).word(),
            "thickness_mm": rounded(stock.thickness()),
            "looks": stock.surfaces.source,
        })
    };
    json!({
        "name": one.name(),
        "does": one.does(),
        "why_not": one.reasons.iter().map(|reason| reason.words()).collect::<Vec<_>>(),
        "cover": stock(&one.cover),
        "wheel": stock(&one.wheel),
        "marks_ratio": one.marks.as_ref().map(|one| one.contrast.ratio()),
        "art_ratio": one.art.as_ref().map(|one| one.contrast.ratio()),
        "seen_height_share": one.seen.max(0.0),
        "effort_n": one.likely.map(|likely| rounded(likely.effort)),
        "turning": one.likely.map(|likely| likely.verdict.words()),
        "drift_mm": one.likely.and_then(|likely| likely.drift).map(rounded),
        "price": one.price.map(|price| (price * 100.0).round() / 100.0),
    })
}

/// What people picked, as JSON.
pub fn picked_report(picks: &Picks) -> Value {
    json!({
        "choices": picks.cast,
        "favourite": picks.favourite,
        "verdict": picks.verdict,
        "ranking": picks.picked.iter().map(|one| json!({
            "name": one.name, "share": one.share, "log_strength": one.strength.map(|strength| strength.0),
            "standard_error": one.strength.map(|strength| strength.1), "laid_out": one.laid_out,
        })).collect::<Vec<_>>(),
    })
}
