//! The paper proof: cover and wheels at true size, over several sheets of paper where a part is larger than one.

use crate::Make;
use crate::book::{Book, NAMES};
use crate::ink::short;
use measure::show;
use press::paper::{Proof, cover_proof, wheel_proof};
use serde_json::{Value, json};

/// How far neighbouring pieces lie over each other when they are joined, in mm.
const LAP: f64 = 12.0;
/// Room above a piece for the words that tell which it is, in mm.
const HEAD: f64 = 12.0;
/// Room for joining marks beyond a piece, in mm.
const RIM: f64 = 4.0;

pub(super) fn data(make: &Make, book: &mut Book) -> Value {
    let dial = &make.looked.laid.dial;
    let (width, height) = make.paper.room();
    let mut part = |name: &str, proof: &Proof| {
        let mut drawing = proof.drawing.clone();
        // Names in the part itself only where they have room: the page says them anyhow.
        drawing.labels.retain(|label| label.words.chars().count() < 14);
        json!({
            "name": short(name, NAMES),
            "size": format!("{} \u{d7} {}", show(proof.width, dial.show), show(proof.height, dial.show)),
            "drawing": book.drawing(&drawing),
            "tiles": tiles(drawing.width, drawing.height, width, height - HEAD),
        })
    };
    let cover = part("cover", &cover_proof(dial));
    let wheels: Vec<Value> = dial.wheels.iter().map(|wheel| part(&wheel.name, &wheel_proof(wheel))).collect();
    json!({ "cover": cover, "wheels": wheels, "lap": LAP, "lap_words": measure::show(LAP, make.looked.laid.dial.show) })
}

/// The pieces of a drawing that is larger than the page: corner and size of each, row by row; empty when it fits on one.
fn tiles(w: f64, h: f64, width: f64, height: f64) -> Vec<Value> {
    if w <= width && h <= height {
        return Vec::new();
    }
    // Where nothing is joined, there are no marks beyond the piece either.
    let cut = |length: f64, room: f64| -> Vec<(f64, f64)> {
        let joined = room - 2.0 * RIM;
        let n = if length <= room { 1 } else { ((length - LAP) / (joined - LAP)).ceil() as usize };
        let piece = (length + LAP * (n - 1) as f64) / n as f64;
        (0..n).map(|k| (k as f64 * (piece - LAP), piece)).collect()
    };
    let columns = cut(w, width);
    let rows = cut(h, height);
    let mut all = Vec::new();
    for (r, (y, high)) in rows.iter().enumerate() {
        for (c, (x, wide)) in columns.iter().enumerate() {
            let name = format!("{}{}", char::from(b'A' + u8::try_from(r.min(25)).unwrap_or(25)), c + 1);
            all.push(json!({
                "name": name, "x": x, "y": y, "w": wide, "h": high,
                "right": c + 1 < columns.len(), "down": r + 1 < rows.len(), "left": c > 0, "up": r > 0,
            }));
        }
    }
    all
}
