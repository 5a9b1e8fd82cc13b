//! What the page is shown of a dial, in pieces: a piece that has not changed is not sent again.
//!
//! Places are in mm, y down, the origin at the cover's middle; angles in degrees as SVG turns them, clockwise.

mod found;
mod order;
mod scene;
mod shop;
mod stops;

use crate::house::{House, Shop};
use crate::kin::{Kin, Trouble};
use crate::look::Seen;
use dial::Mistake;
pub(crate) use found::findings;
pub(crate) use order::parameters;
pub(crate) use scene::{feature, line};
use serde_json::{Value, json};
pub(crate) use shop::workshop_order;
use std::hash::{DefaultHasher, Hash, Hasher};

/// One piece of what the page is shown.
pub struct Piece {
    /// Its name, as `wheel/0`.
    pub name: String,
    /// Tells whether it changed.
    pub hash: u64,
    /// What it says.
    pub value: Value,
}

impl Piece {
    fn new(name: impl Into<String>, value: Value) -> Piece {
        let mut hasher = DefaultHasher::new();
        value.to_string().hash(&mut hasher);
        Piece { name: name.into(), hash: hasher.finish(), value }
    }
}

/// All pieces of a dial that could be drawn.
pub(crate) fn of_dial(seen: &Seen, text: &str, shop: &Shop, kin: &Kin, house: &House) -> Vec<Piece> {
    let mut all = vec![
        Piece::new("dial", scene::dial(seen, house)),
        Piece::new("cover", scene::cover(&seen.laid.dial)),
        Piece::new("art", scene::art(&seen.laid.dial, &seen.design)),
        Piece::new("findings", findings(&seen.findings, seen, text)),
        Piece::new("order", order::order(seen, text)),
        Piece::new("stocks", order::stocks(&seen.design, text, shop)),
        Piece::new("mistakes", mistakes(&[], text, shop, kin)),
    ];
    for (i, wheel) in seen.laid.dial.wheels.iter().enumerate() {
        all.push(Piece::new(format!("wheel/{i}"), scene::wheel(wheel)));
        all.push(Piece::new(format!("marks/{i}"), scene::marks(wheel)));
        all.push(Piece::new(format!("stops/{i}"), stops::stops(wheel, &seen.turns.wheels[i], seen.laid.dial.show)));
    }
    all
}

/// All pieces of a file with mistakes.
pub(crate) fn of_mistakes(found: &[Mistake], text: &str, shop: &Shop, kin: &Kin) -> Vec<Piece> {
    vec![Piece::new("mistakes", mistakes(found, text, shop, kin))]
}

/// Mistakes of the dial file with their places in it, and those of the workshop file in words.
fn mistakes(found: &[Mistake], text: &str, shop: &Shop, kin: &Kin) -> Value {
    let workshop: Vec<Value> = shop.mistakes.iter().map(|one| mistake(one, &shop.text)).collect();
    json!({
        "dial_file": found.iter().map(|one| mistake(one, text)).collect::<Vec<_>>(),
        "workshop_file": workshop,
        "standard": kin.wrong.as_ref().map(trouble),
    })
}

/// Why a standard could not be had, with the places in it.
fn trouble(of: &Trouble) -> Value {
    let mistakes: Vec<Value> = of.mistakes.iter().map(|one| mistake(one, &of.text)).collect();
    json!({ "what": of.what, "help": of.help, "file": of.file, "mistakes": mistakes })
}

/// A mistake with its places: lines from 1, columns in UTF-16 units from 0 as a browser counts them.
pub(crate) fn mistake(mistake: &Mistake, text: &str) -> Value {
    let label = |label: &dial::Label| {
        let line_at = |byte: usize| text.get(..byte).map_or(0, |before| before.matches('\n').count()) + 1;
        let units = |byte: usize| text.get(..byte).map_or(0, |before| before.encode_utf16().count());
        json!({
            "line": line_at(label.span.start),
            "from": units(label.span.start),
            "to": units(label.span.end),
            "words": label.words,
        })
    };
    json!({
        "what": mistake.what,
        "at": mistake.at.as_ref().map(label),
        "also": mistake.also.iter().map(label).collect::<Vec<_>>(),
        "help": mistake.help,
    })
}
