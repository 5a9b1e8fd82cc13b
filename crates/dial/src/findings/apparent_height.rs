//! Marks that look too small from where they are read.

use super::alike::{groups, keys, names};
use super::{Bench, Finding, Part, Quantity, Remedy, Severity, remedy};
use sight::HeightLimit;

pub(super) fn check(bench: &Bench) -> Vec<Finding> {
    let mut findings = Vec::new();
    let limit = HeightLimit::LEAST;
    for (r, reader) in bench.dial.reading.readers.iter().enumerate() {
        // Never below what is needed once it is written with one digit.
        let least = reader.view.height_for(limit.angle);
        let needed = bench.show((least * 10.0).ceil() / 10.0);
        let written = remedy::at_least(bench, (least * 10.0).ceil() / 10.0);
        let heights = bench.dial.wheels.iter().map(|wheel| wheel.asked.height);
        let low = bench.looks.wheels.iter().zip(heights).enumerate().filter_map(|(i, (look, height))| {
            let angle = look.seen.get(r)?.angle;
            (angle < limit.angle).then_some((i, (angle, height)))
        });
        for ((angle, height), wheels) in groups(low) {
            let what = format!(
                "marks of {}: {} high, they look {} high to {} (foreshortened, {} away and {:.0}° from above the table), {} needed",
                names(bench, &wheels),
                bench.show(height),
                Quantity::Sight(angle).show(bench.dial.show),
                reader.words(),
                bench.show(reader.view.seat().distance()),
                reader.view.seat().elevation().to_degrees(),
                Quantity::Sight(limit.angle).show(bench.dial.show),
            );
            let mend = format!("`mark.height = \"{needed}\"`, or let {} not need to read it", reader.words());
            let keys = keys(&wheels, &["mark.height"]);
            let remedies = vec![Remedy::of_wheels(bench, &wheels, "mark.height", &written)];
            findings.push(Finding { remedies, ..finding(angle, Part::Wheel(wheels[0]), what, mend, keys) });
        }
        if r > 0 {
            continue;
        }
        for (art, look) in bench.dial.cover.art.iter().zip(&bench.looks.art) {
            // A plus or a minus beside a notch is told by its strokes alone.
            let told = matches!(art.what.as_str(), "+" | "\u{2212}");
            let Some(angle) = look.first_angle.filter(|angle| !told && *angle < limit.angle) else { continue };
            let what = format!(
                "“{}” on the cover: {} high, it looks {} high to {}, {} needed",
                art.what,
                bench.show(art.height),
                Quantity::Sight(angle).show(bench.dial.show),
                reader.words(),
                Quantity::Sight(limit.angle).show(bench.dial.show),
            );
            let mend = format!("make it {needed} high, or use a shorter word or a symbol");
            let keys = (0..bench.dial.wheels.len()).map(|i| format!("counter[{i}].label_height")).collect();
            findings.push(Finding {
                place: Some(art.shape.bounds().center()),
                remedies: remedy::of_art(bench, art, &written),
                ..finding(angle, Part::Cover, what, mend, keys)
            });
        }
    }
    findings
}

fn finding(angle: f64, part: Part, what: String, mend: String, mut keys: Vec<String>) -> Finding {
    keys.push("reading.seats".into());
    Finding {
        rule: "height as it is seen",
        severity: Severity::Mend,
        what,
        measured: Some(Quantity::Sight(angle)),
        limit: Some(Quantity::Sight(HeightLimit::LEAST.angle)),
        part,
        place: None,
        source: HeightLimit::LEAST.source,
        mend,
        remedies: Vec::new(),
        keys,
    }
}
