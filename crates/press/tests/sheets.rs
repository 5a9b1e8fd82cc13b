//! Sheets read back by independent readers (an XML reader, a reader of path data, usvg) and measured against the dial.

mod common;

use common::{Ready, SMALL, examples, golden, paths, ready, ready_in};
use dial::job::{Setup, Sheet, StepKind};
use kurbo::{BezPath, Shape as _};
use outline::{Axis, Edges, Motion, Point, Shape};
use std::collections::BTreeSet;

/// All that a sheet may be off the design, in mm, once the kerf is undone.
const OFF: f64 = 0.01;

/// Largest distance, either way, between a path and an outline, each looked at densely, less `kerf`.
fn off(path: &BezPath, design: &Shape, kerf: f64) -> f64 {
    let read = Edges::of(&Shape::from_path(path, 1e-4));
    let design_edges = Edges::of(design);
    let there =
        path.segments().flat_map(|piece| (0..16).map(move |k| kurbo::ParamCurve::eval(&piece, f64::from(k) / 16.0)));
    let there = there.map(|p| (design_edges.distance_to(p) - kerf).abs()).fold(0.0, f64::max);
    let pieces = design.loops().iter().flat_map(|one| one.segments()).collect::<Vec<_>>();
    let back = pieces.iter().flat_map(|piece| (0..16).map(move |k| piece.point_at(f64::from(k) / 16.0)));
    // Round a concave corner of the design the beam's path is farther than half a kerf; it need only not be nearer.
    let back = back.map(|p| (kerf - read.distance_to(p)).max(0.0)).fold(0.0, f64::max);
    there.max(back)
}

fn sheet_of<'a>(made: &'a Ready, part: &str) -> (&'a Sheet, Point) {
    let found = made
        .job
        .sheets
        .iter()
        .find_map(|sheet| sheet.parts.iter().find(|one| one.name == part).map(|one| (sheet, one)));
    let (sheet, placed) = found.expect("the part is on a sheet");
    // Parts are laid without turning: their shift follows from the box of their outline.
    (sheet, Point::new(placed.outline.bounds().x0, placed.outline.bounds().y0))
}

#[test]
fn every_window_wheel_notch_and_pocket_is_within_a_hundredth() {
    for (name, text) in examples() {
        let made = ready(&text);
        let dial = &made.looked.laid.dial;
        let (sheet, corner) = sheet_of(&made, "cover");
        let lay = Motion::shift(corner - Point::new(dial.cover.plate.bounds().x0, dial.cover.plate.bounds().y0));
        let face = press::sheet(&dial.name, sheet, &sheet.setups[0], &made.workshop.machine.colours);
        let half = dial.cover.stock.kerf.x / 2.0;
        let inside = paths(&face, "cut-inside");
        assert_eq!(inside.len(), dial.wheels.len(), "{name}");
        for (wheel, path) in dial.wheels.iter().zip(&inside) {
            let window = Shape::from(wheel.window.edge.moved(&lay));
            assert!(off(path, &window, half) < OFF, "{name} window {}: {}", wheel.name, off(path, &window, half));
            // Holes shrink.
            assert!(path.area().abs() < window.area());
        }
        // The plate with all its notches; it grows.
        let plate = dial.cover.plate.moved(&lay);
        let outside = paths(&face, "cut-outside");
        assert!(off(&outside[0], &plate, half) < OFF, "{name} plate: {}", off(&outside[0], &plate, half));
        assert!(outside[0].area().abs() > plate.area());
        // Turned over: pockets mirrored about the upright or level axis through the cover's middle, no cut lines.
        let turned: Vec<&Setup> = sheet.setups.iter().filter(|setup| setup.is_turned()).collect();
        assert_eq!(turned.len(), 1, "{name}");
        let back = press::sheet(&dial.name, sheet, turned[0], &made.workshop.machine.colours);
        assert!(!back.contains("stroke-width"), "{name}: nothing is cut face down");
        let axis = Axis { point: lay.apply(dial.turn_axis.point), direction: dial.turn_axis.direction };
        let pockets = paths(&back, "pocket");
        assert_eq!(pockets.len(), dial.wheels.len());
        for (wheel, path) in dial.wheels.iter().zip(&pockets) {
            let there = Motion::mirror(&axis).apply(lay.apply(wheel.cover_pocket.centre));
            let bounds = path.bounding_box();
            assert!((bounds.center() - there).hypot() < OFF, "{name} pocket of {}", wheel.name);
            assert!((bounds.width() - 2.0 * wheel.cover_pocket.radius).abs() < OFF);
        }
        for wheel in &dial.wheels {
            let part = format!("wheel {}", wheel.name);
            let (sheet, corner) = sheet_of(&made, &part);
            let lay = Motion::shift(corner - Point::new(wheel.rim.bounds().x0, wheel.rim.bounds().y0));
            let face = press::sheet(&dial.name, sheet, &sheet.setups[0], &made.workshop.machine.colours);
            let rim = Shape::from(wheel.rim.moved(&lay));
            let half = wheel.stock.kerf.x / 2.0;
            let best =
                paths(&face, "cut-outside").iter().map(|path| off(path, &rim, half)).fold(f64::INFINITY, f64::min);
            assert!(best < OFF, "{name} rim of {}: {best}", wheel.name);
            let centre = lay.apply(wheel.pocket.centre);
            assert!(paths(&face, "pocket").iter().any(|path| {
                let b = path.bounding_box();
                (b.center() - centre).hypot() < OFF && (b.width() - 2.0 * wheel.pocket.radius).abs() < OFF
            }));
            // Engraving is not compensated: each mark's area to the last hundredth of a square millimetre.
            let engraved = paths(&face, "engrave");
            for mark in &wheel.marks {
                let there = mark.shape.moved(&lay);
                assert!(
                    engraved.iter().any(|path| (path.area().abs() - there.area()).abs() < 0.01
                        && (path.bounding_box().center() - there.bounds().center()).hypot() < OFF),
                    "{name} {}",
                    mark.words
                );
            }
        }
    }
}

#[test]
fn a_machine_with_two_kerfs_still_cuts_true() {
    let mut workshop = workshop::starter();
    for stock in &mut workshop.stocks {
        stock.kerf = process::Kerf { x: 0.26, y: 0.12 };
    }
    let made = ready_in(&examples()[2].1, workshop);
    let dial = &made.looked.laid.dial;
    let sheet = &made.job.sheets[0];
    let face = press::sheet(&dial.name, sheet, &sheet.setups[0], &made.workshop.machine.colours);
    for (wheel, path) in dial.wheels.iter().zip(paths(&face, "cut-inside")) {
        let (window, cut) = (wheel.window.edge.bounds(), path.bounding_box());
        assert!((window.width() - cut.width() - 0.26).abs() < OFF, "{}", wheel.name);
        assert!((window.height() - cut.height() - 0.12).abs() < OFF, "{}", wheel.name);
    }
    let plate = dial.cover.plate.bounds();
    let cut = paths(&face, "cut-outside")[0].bounding_box();
    assert!((cut.width() - plate.width() - 0.26).abs() < OFF && (cut.height() - plate.height() - 0.12).abs() < OFF);
}

#[test]
fn sheets_are_plain_and_in_running_order() {
    for (name, text) in examples() {
        let made = ready(&text);
        for sheet in &made.job.sheets {
            for setup in &sheet.setups {
                let svg = press::sheet(&made.looked.laid.dial.name, sheet, setup, &made.workshop.machine.colours);
                let document = roxmltree::Document::parse(&svg).expect("XML");
                let tags: BTreeSet<&str> = document
                    .descendants()
                    .filter(|node| node.is_element())
                    .map(|node| node.tag_name().name())
                    .collect();
                assert_eq!(tags, BTreeSet::from(["desc", "g", "path", "svg", "title"]), "{name}");
                assert!(document.descendants().all(|node| {
                    ["transform", "style", "clip-path", "class"].iter().all(|key| node.attribute(*key).is_none())
                }));
                let root = document.root_element();
                let (w, h) = (
                    root.attribute("width").expect("w").trim_end_matches("mm"),
                    root.attribute("height").expect("h").trim_end_matches("mm"),
                );
                assert_eq!(root.attribute("viewBox"), Some(format!("0 0 {w} {h}").as_str()), "true mm");
                let order: Vec<StepKind> = setup.steps.iter().map(|step| step.kind).collect();
                assert!(order.is_sorted(), "{name}: {order:?}");
                let ids: Vec<&str> = document.descendants().filter_map(|node| node.attribute("id")).collect();
                assert!(ids[0].starts_with(&format!("setup-{}-", setup.number)));
                assert!(
                    ids[1..].iter().enumerate().all(|(i, id)| id.starts_with(&format!("step-{}-", i + 1))),
                    "{ids:?}"
                );
                for data in document.descendants().filter_map(|node| node.attribute("d")) {
                    assert!(data.ends_with('Z'), "closed");
                    // Curves are kept: no piece of a chain of short lines.
                    assert!(data.split('M').all(|chain| chain.matches('L').count() < 60), "{name}");
                }
                // A second reader sees the same size and no fewer paths, all on the sheet.
                let tree = usvg::Tree::from_str(&svg, &usvg::Options::default()).expect("usvg reads it");
                let mm = 25.4 / 96.0;
                assert!((f64::from(tree.size().width()) * mm - sheet.width).abs() < 1e-3);
                let b = tree.root().abs_bounding_box();
                assert!(
                    f64::from(b.left()) * mm > 4.0 && f64::from(b.right()) * mm < sheet.width - 4.0,
                    "{name}: {b:?}"
                );
                assert!(
                    sheet.width <= made.workshop.machine.bed_width && sheet.height <= made.workshop.machine.bed_height
                );
            }
        }
    }
}

#[test]
fn the_same_dial_gives_the_same_bytes() {
    let files = |text: &str| {
        let made = ready(text);
        let make = press::Make {
            looked: &made.looked,
            job: &made.job,
            workshop: &made.workshop,
            dial_file: &made.text,
            words: "",
        };
        press::job_files(&make).expect("drawn")
    };
    let text = &examples()[0].1;
    assert!(files(text) == files(text));
}

#[test]
fn what_leaves_the_house_is_looked_at_when_it_changes() {
    let made = ready(SMALL);
    let sheet = &made.job.sheets[0];
    let colours = &made.workshop.machine.colours;
    for setup in &sheet.setups {
        golden(&format!("sheet-{}.svg", setup.number), &press::sheet("Small", sheet, setup, colours));
        golden(
            &format!("ticket-{}.txt", setup.number),
            &press::ticket(&made.looked.laid.dial, sheet, setup, &made.workshop),
        );
    }
}

#[test]
fn failing_stops_are_plainly_marked() {
    let tight = SMALL.replace("[[counter]]", "[window]\nwidth = \"4 mm\"\nheight = \"6.8 mm\"\n[[counter]]");
    let made = ready(&tight);
    let failing = made.looked.turns.wheels[0].stops.iter().filter(|stop| !stop.faults.is_empty()).count();
    assert!(failing > 0);
    let strip = press::strip(&made.looked.laid.dial, &made.looked.turns);
    // A frame and a cross on a disc for each, and once more where the sign is explained.
    for sign in ["stroke=\"#b3261e\"", "\"#b3261e\" d=\"M"] {
        let times = strip.matches(sign).count();
        assert!(times > failing, "{sign}: {times}");
    }
    let frames = strip.matches("stroke=\"#b3261e\"").count();
    assert_eq!(frames, failing + 1);
    let whole = ready(SMALL);
    assert_eq!(press::strip(&whole.looked.laid.dial, &whole.looked.turns).matches("stroke=\"#b3261e\"").count(), 0);
    assert!(press::png(&strip).expect("rasters").starts_with(b"\x89PNG"));
}
