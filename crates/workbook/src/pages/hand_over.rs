//! What goes along to whoever gets the dial.

use super::words::{part, parts};
use crate::Make;
use crate::book::{Book, NAMES};
use crate::ink::short;
use dial::assembled::Sense;
use press::magnets_words;
use press::paper::dial_face;
use serde_json::{Value, json};

pub(super) fn data(make: &Make, book: &mut Book) -> Value {
    let dial = &make.looked.laid.dial;
    let words = parts(magnets_words(make.looked, make.workshop));
    let care = words.iter().find(|one| one.heading == "Take care").map(part);
    let turning = dial.wheels.iter().map(|wheel| {
        let sense = match wheel.counts_up {
            Sense::Clockwise => "clockwise",
            Sense::Anticlockwise => "anticlockwise",
        };
        json!({ "name": short(&wheel.name, NAMES), "sense": sense })
    });
    json!({ "care": care, "face": book.drawing(&dial_face(dial, &[])), "wheels": turning.collect::<Vec<_>>() })
}
