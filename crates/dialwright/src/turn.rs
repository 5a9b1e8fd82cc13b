//! `dialwright turn`: every stop of every wheel, as figures and as a picture.

use crate::Outcome;
use crate::args::Turn;
use crate::check::{Looked, look};
use crate::talk::{Talk, write_picture};
use dial::findings::Quantity;
use measure::show;

/// Runs the command.
pub fn run(args: &Turn) -> Result<Outcome, Talk> {
    let looked = look(&args.on, &[])?;
    if let Some(path) = &args.picture {
        write_picture(path, press::strip(&looked.dial.laid.dial, &looked.dial.turns))?;
    }
    if args.on.json {
        println!("{:#}", looked.report()["turn_test"]);
    } else {
        print!("{}", table(&looked));
    }
    Ok(if looked.dial.turns.passes() { Outcome::Well } else { Outcome::Refused })
}

fn table(looked: &Looked) -> String {
    let dial = &looked.dial.laid.dial;
    let mm = |length: f64| show(length, dial.show);
    let mut out = String::new();
    for (wheel, turns) in dial.wheels.iter().zip(&looked.dial.turns.wheels) {
        out += &format!("{}: {} stops\n", turns.name, turns.stops.len());
        let widest = turns.stops.iter().map(|stop| stop.words.chars().count()).max().unwrap_or(0).max(4);
        out += &format!(
            "  {:<widest$}  {:>7}  {:>9}  {:>9}  {:>7}  {:>9}\n",
            "mark", "seen", "margin", "others", "turn", "drift"
        );
        for stop in &turns.stops {
            let pad = widest - stop.words.chars().count();
            let faults = if stop.faults.is_empty() { "" } else { "  FAILS" };
            out += &format!(
                "  {}{}  {:>7}  {:>9}  {:>9}  {:>7}  {:>9}{faults}\n",
                stop.words,
                " ".repeat(pad),
                Quantity::Share(stop.seen).show(dial.show),
                mm(stop.margin),
                mm(stop.other_distance),
                Quantity::Angle(stop.slack_angle).show(dial.show),
                mm(stop.slack_drift),
            );
        }
        out += &format!(
            "  turns {} to count up\n",
            match wheel.counts_up {
                dial::assembled::Sense::Clockwise => "clockwise",
                dial::assembled::Sense::Anticlockwise => "anticlockwise",
            }
        );
    }
    let slack = looked.dial.turns.slack();
    out + &format!(
        "slack of the dial: {} of turning, {} of sideways drift\n",
        Quantity::Angle(slack.angle).show(dial.show),
        mm(slack.drift)
    )
}
