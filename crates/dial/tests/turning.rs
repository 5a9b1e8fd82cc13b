//! The layout and the turn test, against brute force and against the handbook.

mod common;

use common::{dial, examples, look};
use dial::assembled::{Sense, Wheel};
use dial::turning::{Fault, Other};
use outline::{Motion, Point, Vec2};
use proptest::prelude::*;

/// Points along the outline of a mark, with the wheel turned by an angle and shifted.
fn points(wheel: &Wheel, mark: usize, turn: f64, shift: Vec2) -> Vec<Point> {
    let motion = Motion::turn(wheel.centre, turn).then(&Motion::shift(shift));
    let loops = wheel.marks[mark].shape.loops();
    let pieces = loops.iter().flat_map(|one| one.segments());
    pieces.flat_map(|piece| (0..8).map(move |k| motion.apply(piece.point_at(f64::from(k) / 8.0)))).collect()
}

/// Whether, by looking at points alone, stop `k` shows its mark whole and nothing of any other.
fn whole_and_alone(wheel: &Wheel, k: usize, turn: f64, shift: Vec2) -> bool {
    let window = &wheel.window.edge;
    (0..wheel.marks.len()).all(|j| {
        let points = points(wheel, j, wheel.turned_to(k) + turn, shift);
        if j == k { points.iter().all(|p| window.contains(*p)) } else { !points.iter().any(|p| window.contains(*p)) }
    })
}

#[test]
fn every_example_passes_its_turn_test() {
    let all = examples();
    assert!(all.len() >= 5);
    for (name, text) in all {
        let looked = look(&text);
        let failing: Vec<_> =
            looked.turns.wheels.iter().flat_map(|wheel| &wheel.stops).filter(|stop| !stop.faults.is_empty()).collect();
        assert!(failing.is_empty(), "{name}: {failing:?}");
        assert!(!dial::findings::refuses(&looked.findings), "{name}: {:?}", looked.findings);
    }
}

/// The figures of the turn test against points alone: what it forgives is forgiven, a little more is not.
#[test]
fn slack_is_what_brute_force_finds() {
    let texts = [
        dial("", &[("values = \"0..24\"", ""), ("values = \"0..15\"", "")]),
        dial("[window]\nshape = \"round\"", &[("values = \"1..20\"", "")]),
        dial("[window]\nshape = \"ring sector\"", &[("values = [\"calm\", \"breeze\", \"gale\", \"storm\", 7]", "")]),
    ];
    for text in texts {
        let looked = look(&text);
        for (wheel, turns) in looked.laid.dial.wheels.iter().zip(&looked.turns.wheels) {
            for (k, stop) in turns.stops.iter().enumerate() {
                assert!(whole_and_alone(wheel, k, 0.0, Vec2::ZERO), "{} {}", turns.name, stop.words);
                // Points miss the very place that touches by a little: look a little closer and a little farther.
                for sign in [1.0, -1.0] {
                    assert!(whole_and_alone(wheel, k, sign * (stop.slack_angle - 1e-3), Vec2::ZERO), "{}", stop.words);
                }
                // A mark may also simply lean too much.
                let leans = stop.slack_angle > 8f64.to_radians() - 1e-9;
                let more = stop.slack_angle + 4e-3;
                assert!(
                    leans
                        || !whole_and_alone(wheel, k, more, Vec2::ZERO)
                        || !whole_and_alone(wheel, k, -more, Vec2::ZERO),
                    "{} {} forgives more than {}",
                    turns.name,
                    stop.words,
                    stop.slack_angle
                );
                let directions = (0..72).map(|d| Vec2::from_angle(f64::from(d) * std::f64::consts::TAU / 72.0));
                let shifted = |by: f64| directions.clone().all(|d| whole_and_alone(wheel, k, 0.0, by * d));
                assert!(shifted(stop.slack_drift - 0.01), "{}", stop.words);
                // The rim may be the nearest: points of marks do not show that.
                if stop.other != Other::Rim || stop.margin <= stop.other_distance {
                    assert!(
                        !shifted(stop.slack_drift + 0.06),
                        "{} {} drifts farther than {}",
                        turns.name,
                        stop.words,
                        stop.slack_drift
                    );
                }
            }
        }
    }
}

#[test]
fn the_smallest_wheel_is_the_smallest() {
    for counters in [
        vec![("values = \"0..24\"", "")],
        vec![("values = \"0..60\"", "")],
        vec![("values = \"-5..10\"", "window = { shape = \"round\" }")],
    ] {
        let looked = look(&dial("", &counters));
        let wheel = &looked.laid.dial.wheels[0];
        let closer = format!("window = {{ distance = \"{:.4} mm\"", wheel.window.distance - 0.02);
        let more = counters[0].1.replace("window = {", &format!("{closer},"));
        let more = if more.is_empty() { format!("{closer} }}") } else { more };
        let tight = look(&dial("", &[(counters[0].0, &more)]));
        let close = tight.turns.wheels[0]
            .stops
            .iter()
            .any(|stop| stop.faults.iter().any(|fault| matches!(fault, Fault::Close(_) | Fault::NotAlone(_))));
        assert!(close, "{counters:?}: {} is not the smallest", wheel.window.distance);
    }
}

#[test]
fn margins_are_kept_exactly_and_used_up() {
    let looked = look(&dial("[mark]\nmargin = \"1.1 mm\"\nclear = \"0.7 mm\"", &[("values = \"0..24\"", "")]));
    let stops = &looked.turns.wheels[0].stops;
    let least = |measure: &dyn Fn(&dial::turning::Stop) -> f64| stops.iter().map(measure).fold(f64::INFINITY, f64::min);
    assert!((least(&|stop| stop.margin) - 1.1).abs() < 1e-3);
    assert!((least(&|stop| stop.other_distance) - 0.7).abs() < 1e-3);
    assert!(stops.iter().all(|stop| stop.lean < 1e-9 && stop.seen == 1.0));
}

/// Two wheels whose windows face each other run opposite ways round, and the same push counts up at both notches.
#[test]
fn facing_windows_are_not_the_same_part() {
    let looked = look(&dial("", &[("values = \"0..9\"", ""), ("values = \"0..9\"", "")]));
    let [left, right] = &looked.laid.dial.wheels[..] else { panic!("two wheels") };
    assert_eq!((left.counts_up, right.counts_up), (Sense::Clockwise, Sense::Anticlockwise));
    // The two discs laid on each other, first mark at the same place: the second marks are not.
    let seat =
        |wheel: &Wheel, k: usize| (wheel.marks[k].shape.bounds().center() - wheel.centre).atan2() - wheel.window.angle;
    let step = std::f64::consts::TAU / 10.0;
    assert!((seat(left, 1).rem_euclid(std::f64::consts::TAU) - step).abs() < 0.02);
    assert!((seat(right, 1).rem_euclid(std::f64::consts::TAU) - (std::f64::consts::TAU - step)).abs() < 0.02);
    for wheel in [left, right] {
        assert!(wheel.notch.push_up.y > 0.99, "pushing up counts up: {:?}", wheel.notch.push_up);
    }
    for turns in &looked.turns.wheels {
        assert!(turns.next_from.y > 0.9, "the next mark comes from above: {:?}", turns.next_from);
    }
}

/// MIL-STD-1472E 5.2.3.3.1: numbers progress clockwise round the face, the dial moves counter-clockwise for an increase; 5.2.3.3.2:
/// numerals upright in the reading position.
#[test]
fn numbers_clockwise_is_what_the_handbook_says() {
    for angle in ["12 o'clock", "9 o'clock", "200 deg"] {
        let window = format!("running = \"numbers clockwise\"\nwindow = {{ angle = \"{angle}\" }}");
        let looked = look(&dial("", &[("values = \"0..11\"", &window)]));
        let wheel = &looked.laid.dial.wheels[0];
        for k in 0..11 {
            let seat = |k: usize| wheel.marks[k].shape.bounds().center() - wheel.centre;
            assert!(seat(k).cross(seat(k + 1)) < 0.0, "{angle}: {k} and the next run clockwise");
        }
        assert!(wheel.turned_to(1) > 0.0, "{angle}: the wheel turns counter-clockwise for an increase");
        assert!(looked.turns.wheels[0].stops.iter().all(|stop| stop.lean < 1e-9));
    }
    let reversed = look(&dial("", &[("values = \"0..11\"", "running = \"turn clockwise\"")]));
    assert!(reversed.laid.dial.wheels[0].turned_to(1) < 0.0);
}

#[test]
fn neighbours_are_seen_where_they_are_asked_for() {
    for shape in ["rounded rectangle", "round", "ring sector"] {
        let looked = look(&dial(
            &format!("[window]\nshape = \"{shape}\"\nshows = \"neighbours too\""),
            &[("values = \"10..21\"", "")],
        ));
        assert!(
            looked.turns.passes(),
            "{shape}: {:?}",
            looked.turns.wheels[0].stops.iter().map(|stop| &stop.faults).collect::<Vec<_>>()
        );
    }
}

proptest! {
    #![proptest_config(ProptestConfig { cases: 40, ..ProptestConfig::default() })]

    /// Whatever is asked within reason, the layout's own sizes pass their own turn test.
    #[test]
    fn derived_layouts_pass(
        first in -20i64..20, stops in 2i64..60, height in 2.0f64..9.0, margin in 0.3f64..2.0, clear in 0.1f64..1.5,
        shape in prop::sample::select(vec!["rounded rectangle", "round", "ring sector"]),
        angle in prop::option::of(-180.0f64..180.0), corner in prop::option::of(0.0f64..3.0),
        running in prop::sample::select(vec!["alike", "alike reversed", "numbers clockwise", "turn clockwise"]),
    ) {
        let angle = angle.map_or(String::new(), |a| format!("angle = \"{a:.3} deg\""));
        let corner = corner.map_or(String::new(), |c| format!("corner = \"{c:.3} mm\""));
        let text = dial(
            &format!("[mark]\nheight = \"{height:.3} mm\"\nmargin = \"{margin:.3} mm\"\nclear = \"{clear:.3} mm\"\n[window]\nshape = \"{shape}\"\n{angle}\n{corner}"),
            &[(&format!("values = \"{first}..{}\"", first + stops), &format!("running = \"{running}\""))],
        );
        let looked = look(&text);
        let failing: Vec<_> = looked.turns.wheels[0].stops.iter().filter(|stop| !stop.faults.is_empty()).map(|stop| (&stop.words, &stop.faults, stop.margin, stop.other_distance)).collect();
        prop_assert!(failing.is_empty(), "{text}\n{failing:?}");
    }
}
