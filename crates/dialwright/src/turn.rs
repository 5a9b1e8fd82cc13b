//! `dialwright turn`: every stop of every wheel, as figures and as a picture.

use crate::Outcome;
use crate::args::Turn;
use crate::check::{Looked, look};
use crate::talk::Talk;
use dial::findings::Quantity;
use measure::show;
use std::path::Path;

/// Runs the command.
pub fn run(args: &Turn) -> Result<Outcome, Talk> {
    let looked = look(&args.on)?;
    if let Some(path) = &args.picture {
        draw(&looked, path)?;
    }
    if args.on.json {
        println!("{:#}", looked.report()["turn_test"]);
    } else {
        print!("{}", table(&looked));
    }
    Ok(if looked.turns.passes() { Outcome::Well } else { Outcome::Refused })
}

fn draw(looked: &Looked, path: &Path) -> Result<(), Talk> {
    let svg = press::strip(&looked.laid.dial, &looked.turns);
    let bytes = match path.extension().and_then(|end| end.to_str()) {
        Some("svg") => svg.into_bytes(),
        Some("png") => press::png(&svg).map_err(|error| Talk::Plain(error.to_string()))?,
        _ => {
            return Err(Talk::Plain(format!("{}: a picture ends in .svg or .png", path.display())));
        }
    };
    std::fs::write(path, bytes).map_err(|error| Talk::Plain(format!("{} cannot be written: {error}", path.display())))
}

fn table(looked: &Looked) -> String {
    let dial = &looked.laid.dial;
    let mm = |length: f64| show(length, dial.show);
    let mut out = String::new();
    for (wheel, turns) in dial.wheels.iter().zip(&looked.turns.wheels) {
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
    let slack = looked.turns.slack();
    out + &format!(
        "slack of the dial: {} of turning, {} of sideways drift\n",
        Quantity::Angle(slack.angle).show(dial.show),
        mm(slack.drift)
    )
}
