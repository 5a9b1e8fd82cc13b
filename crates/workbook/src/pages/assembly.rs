//! Putting the dial together, and checks that a person can do at the bench, with limits from the model.

use crate::Make;
use crate::book::{Book, NAMES};
use crate::ink::short;
use dial::magnets::Held;
use dial::turning::Stop;
use measure::show;
use press::paper::{cover_lying, dial_face, wheel_lying};
use serde_json::{Value, json};

pub(super) fn data(make: &Make, book: &mut Book) -> Value {
    let dial = &make.looked.laid.dial;
    let caps = dial.wheels.iter().any(|wheel| wheel.seat.cap.is_some());
    let washers = dial.wheels.iter().any(|wheel| wheel.seat.ring.as_ref().is_some_and(|ring| ring.washer.is_some()));
    let more = match (caps, washers) {
        (true, true) => " Then its cap into the ledge, and its washer.",
        (true, false) => " Then its cap into the ledge, flush.",
        (false, true) => " Then the washer about each wheel\u{2019}s pocket.",
        (false, false) => "",
    };
    let mut pictures = vec![
        json!({ "drawing": book.drawing(&cover_lying(dial, false, false)), "words": "Cover on its face, on a clean cloth. Every pocket brushed out, its depth within the limits on the ticket." }),
        json!({ "drawing": book.drawing(&cover_lying(dial, true, false)), "words": format!("Its magnets glued in, each tried with the pole gauge before the glue.{more}") }),
    ];
    if let Some(drawing) = wheel_lying(dial) {
        pictures.push(json!({ "drawing": book.drawing(&drawing), "words": format!("Every wheel face up, its magnets glued in the other way round.{more} Let all glue cure by its own sheet.") }));
    }
    pictures.push(json!({ "drawing": book.drawing(&cover_lying(dial, true, true)), "words": "Wheels laid face down onto the cover\u{2019}s back: slide each in from the side, a finger between, so that the magnets do not snap and chip." }));
    pictures.push(json!({ "drawing": book.drawing(&dial_face(dial, &[])), "words": "Turned over. Every wheel turned once round, until it has centred itself." }));
    json!({ "pictures": pictures, "checks": bench(make) })
}

/// The checks at the bench: one row for all wheels where their limits agree, else one for each kind of wheel, by name.
fn bench(make: &Make) -> Vec<Value> {
    let wheels = make.looked.laid.dial.wheels.len();
    let mut rows: Vec<(Check, Vec<&str>)> = Vec::new();
    for (held, names) in groups(make) {
        for check in checks(make, held, &names) {
            match rows.iter_mut().find(|row| row.0 == check) {
                Some(row) => row.1.extend(&names),
                None => rows.push((check, names.clone())),
            }
        }
    }
    let order = |check: &Check| rows.iter().position(|row| row.0.name == check.name);
    let mut sorted: Vec<&(Check, Vec<&str>)> = rows.iter().collect();
    sorted.sort_by_key(|row| order(&row.0));
    sorted
        .into_iter()
        .map(|(check, names)| {
            let of = names.iter().map(|name| short(name, NAMES)).collect::<Vec<_>>().join(", ");
            json!({
                "name": check.name,
                "of": if names.len() == wheels { String::new() } else { of },
                "do": check.act,
                "accept": check.accept,
                "reject": check.reject,
            })
        })
        .collect()
}

/// Wheels that are held alike, and their names.
fn groups<'a>(make: &'a Make) -> Vec<(&'a Held, Vec<&'a str>)> {
    let mut groups: Vec<(&Held, Vec<&str>)> = Vec::new();
    for (wheel, held) in make.looked.laid.dial.wheels.iter().zip(&make.looked.held) {
        let Some(held) = held else { continue };
        match groups.iter_mut().find(|group| group.0 == held) {
            Some(group) => group.1.push(&wheel.name),
            None => groups.push((held, vec![&wheel.name])),
        }
    }
    groups
}

/// One check: what is done, what is accepted, and what is not.
#[derive(PartialEq)]
struct Check {
    name: &'static str,
    act: &'static str,
    accept: String,
    reject: String,
}

/// The checks of wheels that are held so.
fn checks(make: &Make, held: &Held, names: &[&str]) -> [Check; 6] {
    let dial = &make.looked.laid.dial;
    let mm = |length: f64| if length.is_finite() { show(length, dial.show) } else { "off its seat".into() };
    let feel = &make.workshop.feel;
    let of_these = make.looked.turns.wheels.iter().filter(|wheel| names.contains(&wheel.name.as_str()));
    let stops: Vec<&Stop> = of_these.flat_map(|wheel| &wheel.stops).collect();
    let least = |of: fn(&Stop) -> f64| stops.iter().map(|stop| of(stop)).fold(f64::INFINITY, f64::min);
    let grams = |newtons: f64| format!("{:.0} g", newtons * 1e3 / 9.806_65);
    let check = |name, act, accept, reject| Check { name, act, accept, reject };
    [
        check(
            "Spin",
            "Hook a spring balance or a luggage scale to the rim and turn the wheel once round.",
            format!(
                "{:.2} to {:.2} N all the way round ({} to {}).",
                held.effort.low,
                held.effort.high,
                grams(held.effort.low),
                grams(held.effort.high)
            ),
            format!(
                "Less: it moves when it is only brushed (under {:.2} N). More, or one place harder than the rest: glue, soot or a burr; over {:.2} N no finger turns it.",
                feel.turn_least, feel.turn_most
            ),
        ),
        check(
            "Pull",
            "Hang the cover up by its edge, wheels free below, and pull one straight off with the scale.",
            format!(
                "Lets go between {:.2} and {:.2} N ({} to {}).",
                held.pull.low,
                held.pull.high,
                grams(held.pull.low),
                grams(held.pull.high)
            ),
            "Outside of that: a pocket of the wrong depth, or a magnet of another grade.".into(),
        ),
        check(
            "Lay down",
            "Lay the dial on its face, on its back, on each edge; knock on the table.",
            format!(
                "No wheel leaves its seat; after a turn of {:.0}\u{b0} at most it is centred again.",
                held.centred_by.high.to_degrees()
            ),
            format!("A wheel rests more than {} off its middle, or drops.", mm(held.rest.high)),
        ),
        check(
            "Shake",
            "Shake it as hard as you can, flat, ten times to and fro.",
            format!(
                "Every number still in its window. By the model it slips aside at {:.0} g and is thrown off at {:.0} g; wanted are {:.0} g.",
                held.slips_at, held.likely.thrown_at, feel.shake
            ),
            "A wheel has come off, or a number has moved on.".into(),
        ),
        check(
            "Every number",
            "Turn with one finger through every stop; look straight on.",
            format!(
                "Whole and alone in its window. One finger pushes the wheel {} aside at most; the window forgives {}.",
                mm(held.drift.high),
                mm(held.forgives)
            ),
            format!(
                "Part of a number is hidden or a neighbour is seen when the wheel is let go; drawn are {} to the window\u{2019}s edge.",
                mm(least(|stop| stop.margin))
            ),
        ),
        check(
            "Any wheel, any cover",
            "Lay every wheel of this size into every place of this size of every cover of the family.",
            "It is pulled in, never pushed off.".into(),
            "Pushed off: a magnet is the wrong way round. Find it with the pole gauge.".into(),
        ),
    ]
}
