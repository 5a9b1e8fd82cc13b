//! Every figure on paper is the figure of the report.

use crate::read::{Read, example, squeezed};
use press::report;
use serde_json::Value;
use workbook::{Document, Paper};

/// What stands on paper is what the report says.
#[test]
fn every_figure_is_the_figure_of_the_report() {
    let ready = example("orchard");
    let units = ready.looked.laid.dial.show;
    let figures = report(&ready.looked);
    let number = |value: &Value| value.as_f64().expect("a number");
    let length = |value: &Value| squeezed(&measure::show(number(value), units));
    let has = |text: &str, words: &str| assert!(text.contains(words), "“{words}” is not in: {text}");

    let dial = Read::of(&ready.alone(Document::Dial, Paper::Letter)).all_text();
    has(&dial, &length(&figures["cover"]["width_mm"]));
    has(&dial, &length(&figures["cover"]["height_mm"]));
    has(&dial, &format!("{:.1}\u{b0}", number(&figures["turn_test"]["slack_angle_deg"])));
    for wheel in figures["wheels"].as_array().expect("wheels") {
        has(&dial, wheel["name"].as_str().expect("a name"));
        has(&dial, &measure::show(2.0 * number(&wheel["radius_mm"]), units));
        has(&dial, &length(&wheel["window"]["width_mm"]));
    }

    let turns = Read::of(&ready.alone(Document::TurnTest, Paper::Letter)).all_text();
    let mut stops = 0;
    for wheel in figures["turn_test"]["wheels"].as_array().expect("wheels") {
        for stop in wheel["stops"].as_array().expect("stops") {
            let angle = number(&stop["slack_angle_deg"]);
            has(
                &turns,
                &format!(
                    "{} {angle:.1}\u{b0} \u{b7} {}",
                    stop["mark"].as_str().expect("a mark"),
                    length(&stop["slack_drift_mm"])
                ),
            );
            stops += 1;
        }
    }
    assert_eq!(stops, 42);

    let bench = Read::of(&ready.alone(Document::Assembly, Paper::Letter)).all_text();
    let held = &figures["magnets"]["wheels"][0]["held"];
    let newtons = |name: &str, end: &str| format!("{:.2}", number(&held[name][end]));
    has(&bench, &format!("{} to {} N all the way round", newtons("effort_n", "least"), newtons("effort_n", "most")));
    has(&bench, &format!("between {} and {} N", newtons("pull_n", "least"), newtons("pull_n", "most")));
    has(&bench, &format!("forgives {}", length(&held["window_forgives_mm"])));

    let magnets = Read::of(&ready.alone(Document::Magnets, Paper::Letter)).all_text();
    for wheel in figures["wheels"].as_array().expect("wheels") {
        for pocket in ["pocket", "cover_pocket"] {
            has(&magnets, &length(&wheel[pocket]["diameter_mm"]));
            has(&magnets, &length(&wheel[pocket]["depth_mm"]));
        }
    }
    for one in figures["magnets"]["wheels"].as_array().expect("wheels") {
        let held = &one["held"];
        let two = |name: &str, end: &str| format!("{:.2}", number(&held[name][end]));
        let spread =
            |name: &str| format!("{} N ({} to {} N)", two(name, "likely"), two(name, "least"), two(name, "most"));
        has(&magnets, &spread("effort_n"));
        has(&magnets, &spread("pull_n"));
        has(&magnets, &format!("{:.0} g", number(&held["slips_at_g"])));
    }
    let materials = Read::of(&ready.alone(Document::Materials, Paper::Letter)).all_text();
    for one in figures["magnets"]["count"].as_array().expect("magnets") {
        has(&magnets, &format!("{} magnets", one["all"]));
        has(&materials, &format!("{} to glue in", one["glued"]));
        has(&materials, &length(&one["diameter_mm"]));
    }
    let tickets = Read::of(&ready.alone(Document::Tickets, Paper::Letter)).all_text();
    for wheel in figures["wheels"].as_array().expect("wheels") {
        has(&tickets, &length(&wheel["pocket"]["depth_mm"]));
    }
}
