//! The turn test: every stop of every wheel as it stands in its window.

use crate::Make;
use crate::book::Book;
use crate::ink::short;
use dial::findings::Quantity;
use dial::turning::{Stop, WheelTurns};
use measure::show;
use press::paper::stop_in_window;
use press::turn_words;
use serde_json::{Value, json};

pub(super) fn data(make: &Make, book: &mut Book) -> Value {
    let looked = make.looked;
    let dial = &looked.laid.dial;
    let wheels: Vec<Value> = looked
        .turns
        .wheels
        .iter()
        .enumerate()
        .map(|(w, test)| {
            let stops = test.stops.iter().enumerate().map(|(k, stop)| {
                let drawing = stop_in_window(dial, w, k, stop);
                json!({
                    "words": short(&stop.words, 18),
                    "angle": Quantity::Angle(stop.slack_angle).show(dial.show),
                    "drift": show(stop.slack_drift, dial.show),
                    "fails": !stop.faults.is_empty(),
                    "drawing": book.drawing(&drawing),
                })
            });
            let stops: Vec<Value> = stops.collect();
            json!({ "name": test.name, "verdict": verdict(make, test), "stops": stops })
        })
        .collect();
    json!({ "passes": looked.turns.passes(), "wheels": wheels })
}

fn verdict(make: &Make, test: &WheelTurns) -> String {
    let units = make.looked.laid.dial.show;
    let all = test.stops.len();
    let failing = test.stops.iter().filter(|stop| !stop.faults.is_empty()).count();
    if failing > 0 {
        return format!("{failing} of {all} stops fail: {}.", turn_words(test));
    }
    let least = |of: fn(&Stop) -> f64| test.stops.iter().map(of).fold(f64::INFINITY, f64::min);
    let angle = Quantity::Angle(least(|stop| stop.slack_angle)).show(units);
    let drift = show(least(|stop| stop.slack_drift), units);
    format!("All {all} stops pass; the tightest forgives {angle} of turning, the tightest {drift} of drift.")
}
