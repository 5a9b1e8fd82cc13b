//! Dials for tests.
#![allow(dead_code, reason = "each test file uses some of these")]

use dial::Looked;
use dial::job::{self, Job};
use kurbo::{Affine, BezPath};
use outline::Point;
use process::Workshop;
use std::fs;
use std::path::Path;

/// A dial made ready for the press.
pub struct Ready {
    pub text: String,
    pub looked: Looked,
    pub job: Job,
    pub workshop: Workshop,
}

pub fn ready(text: &str) -> Ready {
    ready_in(text, workshop::starter())
}

pub fn ready_in(text: &str, workshop: Workshop) -> Ready {
    let design = dial::design::read(text, &workshop).expect("reads");
    let looked = dial::look(&design, &workshop, &[]).expect("can be drawn");
    let job = job::plan(&looked.laid.dial, &workshop).expect("fits");
    Ready { text: text.into(), looked, job, workshop }
}

/// A small dial with little to draw.
pub const SMALL: &str = "name = \"Small\"\nstock = \"birch plywood 3 mm\"\n[[counter]]\nname = \"sign\"\nlabel = \"\"\nsymbols = [\"star\", \"coin\", \"bolt\"]\n";

pub fn examples() -> Vec<(String, String)> {
    let folder = concat!(env!("CARGO_MANIFEST_DIR"), "/../../examples");
    let mut all: Vec<(String, String)> = fs::read_dir(folder)
        .expect("examples")
        .map(|entry| entry.expect("an entry").path())
        .filter(|path| path.join("dial.toml").is_file())
        .map(|path| {
            (
                path.file_name().expect("a name").to_string_lossy().into_owned(),
                fs::read_to_string(path.join("dial.toml")).expect("reads"),
            )
        })
        .collect();
    all.sort();
    all
}

/// Holds a text against a golden file; `DIALWRIGHT_WRITE=1` writes it anew.
pub fn golden(name: &str, text: &str) {
    let path = Path::new(env!("CARGO_MANIFEST_DIR")).join("tests/golden").join(name);
    if std::env::var_os("DIALWRIGHT_WRITE").is_some() {
        fs::write(&path, text).expect("writes");
    }
    let was = fs::read_to_string(&path).unwrap_or_default();
    assert!(was == text, "{} has changed; look at it with DIALWRIGHT_WRITE=1 and git diff", path.display());
}

/// The paths of one step, in our coordinates: y up.
pub fn paths(svg: &str, step: &str) -> Vec<BezPath> {
    let document = roxmltree::Document::parse(svg).expect("XML");
    let root = document.root_element();
    let height: f64 = root.attribute("height").expect("a height").trim_end_matches("mm").parse().expect("a number");
    let flip = Affine::new([1.0, 0.0, 0.0, -1.0, 0.0, height]);
    document
        .descendants()
        .filter(|node| node.tag_name().name() == "g" && node.attribute("id").is_some_and(|id| id.contains(step)))
        .flat_map(|group| group.children().filter(|node| node.is_element()).collect::<Vec<_>>())
        .map(|node| flip * read(node.attribute("d").expect("path data")))
        .collect()
}

/// Path data as Beziers, its arcs within a tenth of a micron.
fn read(data: &str) -> BezPath {
    let mut path = BezPath::new();
    let mut pen = Point::ZERO;
    for segment in svgtypes::PathParser::from(data) {
        match segment.expect("path data") {
            svgtypes::PathSegment::MoveTo { abs: true, x, y } => path.move_to((x, y)),
            svgtypes::PathSegment::LineTo { abs: true, x, y } => path.line_to((x, y)),
            svgtypes::PathSegment::EllipticalArc { abs: true, rx, ry, x_axis_rotation, large_arc, sweep, x, y } => {
                let arc = kurbo::SvgArc {
                    from: pen,
                    to: Point::new(x, y),
                    radii: (rx, ry).into(),
                    x_rotation: x_axis_rotation,
                    large_arc,
                    sweep,
                };
                path.extend(kurbo::Arc::from_svg_arc(&arc).expect("an arc").append_iter(1e-4));
            }
            svgtypes::PathSegment::ClosePath { .. } => path.close_path(),
            other => panic!("not expected on a sheet: {other:?}"),
        }
        pen = path.elements().last().and_then(|element| element.end_point()).unwrap_or(pen);
    }
    path
}
