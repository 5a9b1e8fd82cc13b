//! What can be read of a dial, and its pairings, as JSON: names carry their units.

use crate::report::rounded;
use dial::Looked;
use dial::looks::{Engraving, Pairing, Picks, Seen, picks};
use process::{Side, Workshop};
use serde_json::{Value, json};
use sight::Acuity;

/// The figures of what can be read: engravings, and every wheel from every seat.
pub(crate) fn reading_report(looked: &Looked) -> Value {
    let dial = &looked.laid.dial;
    let readers = dial.reading.readers.iter().map(|reader| {
        let stroke = |acuity: Acuity| rounded(reader.view.critical_stroke(acuity));
        json!({
            "name": reader.name,
            "away_mm": rounded(reader.view.seat().away()),
            "eye_mm": rounded(reader.view.seat().eye()),
            "distance_mm": rounded(reader.view.seat().distance()),
            "elevation_deg": rounded(reader.view.seat().elevation().to_degrees()),
            "azimuth_deg": rounded(reader.view.azimuth().to_degrees()),
            "height_for_16_arcmin_mm": rounded(reader.view.height_for(16.0 * sight::ARCMIN)),
            "height_for_20_arcmin_mm": rounded(reader.view.height_for(20.0 * sight::ARCMIN)),
            "critical_stroke_mm": {
                "20/20": stroke(Acuity::NORMAL), "older": stroke(Acuity::NORMAL.older()), "20/40": stroke(Acuity::WEAK),
                "asked": stroke(dial.reading.acuity),
            },
        })
    });
    let wheels = dial.wheels.iter().zip(&looked.looks.wheels).map(|(wheel, look)| {
        json!({
            "wheel": wheel.name,
            "engraving": look.engraving.as_ref().map(engraving),
            "height_mm": rounded(wheel.asked.height),
            "stroke_mm": look.stroke.map(rounded),
            "stroke_to_height": look.stroke.map(|stroke| rounded(stroke / wheel.asked.height)),
            "seen": dial.reading.readers.iter().zip(&look.seen).map(|(reader, one)| {
                let mut value = seen(one);
                value["reader"] = json!(reader.name);
                value["worst_mark"] = json!(wheel.marks[one.worst].words);
                value
            }).collect::<Vec<_>>(),
        })
    });
    json!({
        "readers": readers.collect::<Vec<_>>(),
        "eyesight": dial.reading.acuity.to_string(),
        "cover": looked.looks.cover.as_ref().map(engraving),
        "wheels": wheels.collect::<Vec<_>>(),
    })
}

fn seen(seen: &Seen) -> Value {
    let worst = seen.at_worst();
    json!({
        "angle_arcmin": rounded(sight::arcmin(seen.angle)),
        "edge_above_wheel_mm": rounded(seen.depth),
        "hidden_mm": rounded(worst.hidden),
        "seen_height_share": worst.height_share().max(0.0),
        "seen_area_share": worst.share,
        "window_for_all_mm": rounded(seen.window_for_all),
    })
}

fn engraving(one: &Engraving) -> Value {
    let (face, floor) = one.lightness();
    json!({
        "face": one.face.to_string(),
        "engraved": one.worst.colour.to_string(),
        "depth_mm": rounded(one.depth),
        "layer": one.worst.layer + 1,
        "may_show_another_layer": one.may_differ(),
        "ratio": one.contrast.ratio(),
        "polarity": one.contrast.polarity().to_string(),
        "face_l_star": rounded(face),
        "engraved_l_star": rounded(floor),
        "ciede2000": rounded(one.difference),
    })
}

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
