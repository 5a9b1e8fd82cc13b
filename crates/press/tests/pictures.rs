//! Pictures and words: what they show is read back from the SVG and held against the dial.

mod common;

use common::{Ready, SMALL, examples, ready};
use dial::findings::{Severity, mirrored};
use kurbo::{BezPath, Shape as _};
use outline::Motion;
use std::collections::BTreeSet;
use std::path::PathBuf;

const FAIL: &str = "#b3261e";

/// A dial whose cover is not its own mirror image: one notch on top, one on the right.
const LOPSIDED: &str = "name = \"Lopsided\"\nstock = \"birch plywood 3 mm\"\n[[counter]]\nname = \"rope\"\nvalues = \"0..9\"\nnotch = { angle = \"90 deg\" }\n[[counter]]\nname = \"sail\"\nvalues = \"0..9\"\nnotch = { angle = \"0 deg\" }\n";

fn files(made: &Ready) -> Vec<(PathBuf, Vec<u8>)> {
    press::job_files(&press::Make {
        looked: &made.looked,
        job: &made.job,
        workshop: &made.workshop,
        dial_file: &made.text,
        words: "",
    })
    .expect("drawn")
}

/// All paths with a certain attribute.
fn paths_with(svg: &str, key: &str, value: &str) -> Vec<BezPath> {
    let document = roxmltree::Document::parse(svg).expect("XML");
    document
        .descendants()
        .filter(|node| node.attribute(key) == Some(value))
        .filter_map(|node| node.attribute("d"))
        .map(|data| BezPath::from_svg(data).expect("path data"))
        .collect()
}

#[test]
fn pictures_are_plain_and_of_the_size_they_say() {
    // Two that show everything: words, symbols, a ring sector, six wheels; and an inch.
    for (name, text) in examples().into_iter().filter(|(name, _)| ["caravan", "orchard"].contains(&name.as_str())) {
        let made = ready(&text);
        let all = files(&made);
        let pictures: Vec<_> = all.iter().filter(|(path, _)| path.starts_with("pictures")).collect();
        for (path, bytes) in &pictures {
            if path.extension().is_none_or(|end| end != "svg") {
                continue;
            }
            let svg = std::str::from_utf8(bytes).expect("text");
            let document = roxmltree::Document::parse(svg).expect("XML");
            let tags: BTreeSet<&str> =
                document.descendants().filter(|node| node.is_element()).map(|node| node.tag_name().name()).collect();
            let mut plain = BTreeSet::from(["path", "rect", "svg", "title"]);
            // The one that shows what an eye makes of it is blurred.
            if path.ends_with("window-as-seen.svg") {
                plain.extend(["g", "filter", "feGaussianBlur"]);
            }
            // The board draws every pairing of the shelf in its materials.
            let most = if path.ends_with("pairings.svg") { 1_200_000 } else { 400_000 };
            assert!(bytes.len() < most, "{name} {}: {} bytes", path.display(), bytes.len());
            assert_eq!(tags, plain, "{name} {}", path.display());
            // An independent reader sees everything within the page.
            let tree = usvg::Tree::from_str(svg, &usvg::Options::default()).expect("reads");
            let (size, inked) = (tree.size(), tree.root().abs_bounding_box());
            assert!(
                inked.left() >= -0.01
                    && inked.top() >= -0.01
                    && inked.right() <= size.width() + 0.01
                    && inked.bottom() <= size.height() + 0.01,
                "{name} {}: {inked:?} on {size:?}",
                path.display()
            );
            let png = path.with_extension("png");
            assert!(all.iter().any(|(path, _)| *path == png), "each has a PNG");
        }
        // Strip, dial, turned over, poles, map, pairings, window as seen, and each wheel; maybe findings.
        let placed = press::findings_picture(&made.looked.laid.dial, &made.looked.findings).is_some();
        let expected = 2 * (7 + made.looked.laid.dial.wheels.len() + usize::from(placed));
        assert_eq!(pictures.len(), expected, "{name}");
    }
}

#[test]
fn the_mismatch_is_drawn_where_it_is() {
    let made = ready(LOPSIDED);
    let dial = &made.looked.laid.dial;
    let svg = press::symmetry(dial);
    let hole = &dial.cover.plate;
    let turned = hole.moved(&Motion::mirror(&dial.turn_axis));
    let stands: f64 = paths_with(&svg, "fill", FAIL).iter().map(|path| path.area().abs()).sum();
    let expected = turned.minus(hole).area();
    assert!(expected > 1.0, "{expected}");
    assert!((stands - expected).abs() < 0.01, "{stands} {expected}");
    let worst = mirrored(dial).own;
    let ring = &paths_with(&svg, "stroke", FAIL)[0];
    let area = hole.bounds().union(turned.bounds()).inflate(10.0, 10.0);
    let there = ring.bounding_box().center();
    assert!((there.x - (worst.at.x - area.x0)).abs() < 0.001, "{there:?}");
    assert!((there.y - (area.y1 - worst.at.y)).abs() < 0.001, "{there:?}");
    // A cover that is its own mirror image has nothing red.
    let whole = press::symmetry(&ready(&examples()[2].1).looked.laid.dial);
    assert!(!whole.contains(FAIL));
}

#[test]
fn findings_with_a_place_are_ringed_and_numbered() {
    let made = ready(LOPSIDED);
    let dial = &made.looked.laid.dial;
    let placed: Vec<_> = made
        .looked
        .findings
        .iter()
        .filter(|finding| finding.severity != Severity::Note && finding.place.is_some())
        .collect();
    assert!(!placed.is_empty());
    let svg = press::findings_picture(dial, &made.looked.findings).expect("a picture");
    assert_eq!(paths_with(&svg, "stroke", FAIL).len(), placed.len());
    // A number at the ring and one before the words.
    assert_eq!(paths_with(&svg, "fill", FAIL).len(), 2 * placed.len());
    assert!(press::findings_picture(dial, &[]).is_none());
    assert!(!press::dial_front(dial).contains(FAIL));
}

#[test]
fn the_check_line_of_a_ticket_is_fifty_millimetres() {
    let made = ready(SMALL);
    let sheet = &made.job.sheets[0];
    let colours = &made.workshop.machine.colours;
    for setup in &sheet.setups {
        let svg = press::ticket_picture(&made.looked.laid.dial, sheet, setup, colours);
        let lines = paths_with(&svg, "stroke-width", "0.3");
        let fifty = lines
            .iter()
            .map(|line| line.bounding_box())
            .filter(|b| (b.width() - 50.0).abs() < 1e-4 && b.height() == 0.0);
        assert_eq!(fifty.count(), 1, "setup {}", setup.number);
        let root = roxmltree::Document::parse(&svg).expect("XML");
        let root = root.root_element();
        let (width, view) = (root.attribute("width"), root.attribute("viewBox"));
        let (width, view) = (width.expect("a width"), view.expect("a view"));
        assert_eq!(Some(width.trim_end_matches("mm")), view.split(' ').nth(2), "one unit is one mm");
    }
}

#[test]
fn the_steps_in_figures_are_those_of_the_sheets() {
    for (name, text) in examples() {
        let made = ready(&text);
        let report = press::job_report(&made.job);
        let colours = &made.workshop.machine.colours;
        let mut setups = 0;
        for (sheet, drawn) in report["sheets"].as_array().expect("sheets").iter().zip(&made.job.sheets) {
            let listed = sheet["setups"].as_array().expect("setups");
            for (setup, one) in listed.iter().zip(&drawn.setups) {
                setups += 1;
                let svg = press::sheet(&made.looked.laid.dial.name, drawn, one, colours);
                let document = roxmltree::Document::parse(&svg).expect("XML");
                for step in setup["steps"].as_array().expect("steps") {
                    let group = document
                        .descendants()
                        .find(|node| node.attribute("id") == step["group"].as_str())
                        .expect("the group");
                    let pieces = group.children().filter(|node| node.is_element()).count();
                    assert_eq!(step["pieces"], pieces, "{name} {}", step["group"]);
                }
            }
        }
        assert_eq!(report["setups"], setups, "{name}");
    }
}

#[test]
fn any_name_can_be_made() {
    let odd = SMALL.replace(
        "\"Small\"",
        "\"a\\u0001b\\n<&> \\\"x\\\" \\u202e\\uffff, a name far longer than the seventy-eight columns of a ticket, and then some\"",
    );
    let made = ready(&odd.replace("\"sign\"", "\"\\u0007 <sign> \\u4e00\""));
    for (path, bytes) in files(&made) {
        let Ok(text) = String::from_utf8(bytes) else {
            continue;
        };
        if path.extension().is_some_and(|end| end == "svg") {
            roxmltree::Document::parse(&text).unwrap_or_else(|error| panic!("{}: {error}", path.display()));
        }
        if path.starts_with("tickets") {
            assert!(text.lines().all(|line| line.chars().count() <= 78), "{text}");
            assert!(text.chars().all(|c| c == '\n' || !c.is_control()), "{text:?}");
        }
    }
}
