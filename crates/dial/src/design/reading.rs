//! Who must read the dial, and from where, as asked for.

use super::build::Scope;
use super::parameters::DIAL_FILE;
use super::reader::Value;
use super::table::{default_angle, default_length, fixed};
use crate::looks::{Reader, Reading};
use sight::{Acuity, Seat, View};
use std::f64::consts::PI;

/// The readers that a file asks for.
pub(super) fn build(dial: &Scope) -> Reading {
    let usual = || fixed(DIAL_FILE, "reading.seats").into_iter().map(str::to_owned).collect();
    let seats: Vec<String> = match dial.value("reading.seats") {
        Some(Value::Words(words)) => words.clone(),
        _ => usual(),
    };
    let mut readers: Vec<Reader> = seats.iter().map(|word| at(word)).collect();
    readers.extend(one_more(dial));
    let over = dial.number("reading.eyesight").or_else(|| fixed(DIAL_FILE, "reading.eyesight")?.parse().ok());
    let acuity = over.and_then(|over| Acuity::snellen(over).ok()).unwrap_or(Acuity::WEAK);
    Reading { readers, acuity }
}

/// The reader at a usual seat. The neighbour is taken to see the mark as upright as the owner does: from aside its height would be
/// foreshortened less.
fn at(word: &str) -> Reader {
    let view = match word {
        "neighbour" => View::upright(Seat::NEIGHBOUR),
        "across" => View::new(Seat::ACROSS, PI),
        _ => View::upright(Seat::OWNER),
    };
    Reader { name: word.to_owned(), view }
}

/// One at a distance of the maker's own.
fn one_more(dial: &Scope) -> Option<Reader> {
    let away = dial.number("reading.distance")?;
    let eye = dial.number("reading.eye").unwrap_or_else(|| default_length(DIAL_FILE, "reading.eye"));
    let side = dial.number("reading.side").unwrap_or_else(|| default_angle(DIAL_FILE, "reading.side"));
    Reader::at(away, eye, side).ok()
}
