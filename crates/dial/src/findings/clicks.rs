//! Whether clicks are felt.

use super::{Bench, Finding, Part, Quantity, Severity};
use crate::magnets::clicking;
use measure::Units;

pub(super) fn check(bench: &Bench) -> Vec<Finding> {
    let wheels = bench.dial.wheels.iter().zip(bench.held).enumerate();
    wheels
        .filter_map(|(i, (wheel, held))| {
            let clicking = clicking(wheel, held.as_ref()?)?;
            let felt = clicking.felt();
            let most = match clicking.most_stops {
                0 => "no number of stops can be felt on this ring".to_owned(),
                n => format!("up to {n} stops can be felt on this ring, with one magnet in the cover"),
            };
            Some(Finding {
                rule: "clicks",
                severity: if felt { Severity::Note } else { Severity::Mend },
                what: format!(
                    "{}: {} magnets in the wheel and {} in the cover, {} from the middle, draw it into its stops with {:.1} N\u{b7}mm at {}, against {:.1} N\u{b7}mm of friction: the click is {}felt; {most}",
                    wheel.name,
                    clicking.magnets.0,
                    clicking.magnets.1,
                    bench.show(clicking.ring),
                    clicking.torque,
                    Quantity::Angle(clicking.at).show(Units::Millimetres),
                    clicking.friction,
                    if felt { "" } else { "not " },
                ),
                measured: None,
                limit: None,
                part: Part::Wheel(i),
                place: Some(wheel.centre),
                source: "superposed pairs (Furlani 1993), pivot friction",
                mend: if felt { String::new() } else { "let a ring or the magnets alone touch, choose stronger small magnets on a wider ring, or fewer stops".into() },
                remedies: Vec::new(),
                keys: vec!["click.diameter".into(), "click.ring".into()],
            })
        })
        .collect()
}
