//! The dial as outlines for the page: everything about its own middle, so that what only moves is not sent again.

use crate::house::House;
use crate::look::Seen;
use dial::Dial;
use dial::assembled::{Pocket, Sense, Wheel};
use dial::design::{Design, RimKind, WindowKind};
use dial::findings::{self, Severity};
use measure::show;
use outline::{Curve, Edges, Motion, Point, Rect, Shape, Vec2};
use press::path_data;
use process::Side;
use serde_json::{Value, json};

/// To a ten-thousandth of a mm: what lies below is noise of the arithmetic.
pub(super) fn number(value: f64) -> Value {
    if value.is_finite() { json!((value * 1e4).round() / 1e4 + 0.0) } else { Value::Null }
}

/// A place, y down.
pub(super) fn place(p: Point) -> Value {
    json!({ "x": number(p.x), "y": number(-p.y) })
}

/// An angle as SVG turns: clockwise, in degrees.
fn degrees(radians: f64) -> Value {
    number(-radians.to_degrees())
}

fn area(rect: Rect) -> Value {
    json!({ "x": number(rect.x0), "y": number(-rect.y1), "width": number(rect.width()), "height": number(rect.height()) })
}

/// Name, size, and whether it may be made.
pub(super) fn dial(seen: &Seen, house: &House) -> Value {
    let dial = &seen.laid.dial;
    let wheels = dial.wheels.iter().map(|wheel| wheel.rim.bounds());
    let around = wheels.fold(dial.cover.plate.bounds(), |all, one| all.union(one));
    let count = |severity| seen.findings.iter().filter(|finding| finding.severity == severity).count();
    let plate = dial.cover.plate.bounds();
    json!({
        "name": dial.name,
        "units": match dial.show { measure::Units::Millimetres => "mm", measure::Units::Inches => "inch" },
        "around": area(around),
        "width": show(plate.width(), dial.show),
        "height": show(plate.height(), dial.show),
        "wheels": dial.wheels.len(),
        "turned_sideways": dial.turn_axis.direction.y.abs() > dial.turn_axis.direction.x.abs(),
        "sizes": (house.sizes)(dial, &seen.laid.sizing),
        "refuse": count(Severity::Refuse),
        "mend": count(Severity::Mend),
        "note": count(Severity::Note),
        "makeable": !findings::refuses(&seen.findings),
        "passes": seen.turns.passes(),
    })
}

/// The cover: its face with the windows open.
pub(super) fn cover(dial: &Dial) -> Value {
    let windows = dial.wheels.iter().map(|wheel| Shape::from(wheel.window.edge.clone()));
    let face = windows.fold(dial.cover.plate.clone(), |face, window| face.minus(&window));
    let outline = dial.cover.outline.bounds();
    json!({
        "face": path_data(&face, Point::ZERO),
        "outline": path_data(&Shape::from(dial.cover.outline.clone()), Point::ZERO),
        "box": area(outline),
        "colour": dial.cover.stock.colour(Side::Face).to_string(),
        "back": dial.cover.stock.colour(Side::Back).to_string(),
        "burnt": press::floor_colour(&dial.cover.stock, dial.cover.engrave_depth),
        "stock": dial.cover.stock.name,
        "thickness": show(dial.cover.stock.thickness(), dial.show),
        "pockets": dial.wheels.iter().map(|wheel| pocket(&wheel.cover_pocket, dial)).collect::<Vec<_>>(),
    })
}

fn pocket(pocket: &Pocket, dial: &Dial) -> Value {
    json!({ "at": place(pocket.centre), "radius": number(pocket.radius), "depth": show(pocket.depth, dial.show) })
}

/// What is engraved on the cover. The art that the maker placed comes first, and has a path.
pub(super) fn art(dial: &Dial, design: &Design) -> Value {
    let placed = design.cover.art.len();
    let all = dial.cover.art.iter().enumerate().map(|(k, art)| {
        let asked = design.cover.art.get(k);
        let about = asked.map_or(art.shape.bounds().center(), |asked| asked.at);
        json!({
            "what": art.what,
            "path": (k < placed).then(|| format!("cover.art[{k}]")),
            "at": place(about),
            "d": path_data(&art.shape, about),
        })
    });
    Value::Array(all.collect())
}

/// A wheel with its window, notch and pocket.
pub(super) fn wheel(wheel: &Wheel) -> Value {
    let window = &wheel.window;
    let rim = wheel.rim.moved(&Motion::shift(-wheel.centre.to_vec2()));
    let edge = window.edge.moved(&Motion::shift(-window.centre.to_vec2()));
    json!({
        "name": wheel.name,
        "at": place(wheel.centre),
        "radius": number(wheel.radius),
        "rim": path_data(&Shape::from(rim), Point::ZERO),
        "scalloped": wheel.rim_kind != RimKind::Plain,
        "colour": wheel.stock.colour(Side::Face).to_string(),
        "back": wheel.stock.colour(Side::Back).to_string(),
        "burnt": press::floor_colour(&wheel.stock, wheel.mark_depth),
        "stops": wheel.marks.len(),
        // One stop further, the wheel is turned by this.
        "step": degrees(wheel.turned_to(1)),
        "counts_up": match wheel.counts_up { Sense::Clockwise => "clockwise", Sense::Anticlockwise => "anticlockwise" },
        "window": {
            "at": place(window.centre),
            "d": path_data(&Shape::from(edge), Point::ZERO),
            "angle": number(window.angle.to_degrees()),
            "distance": number(window.distance),
            "width": number(window.width),
            "height": number(window.height),
            "box": area(window.edge.bounds()),
            "round": window.kind == WindowKind::Round,
        },
        "notch": {
            "angle": number(wheel.notch.angle.to_degrees()),
            "mouth": place(wheel.notch.mouth),
            "push": { "x": number(wheel.notch.push_up.x), "y": number(-wheel.notch.push_up.y) },
            "cutter": path_data(&Shape::from(wheel.notch.cutter.clone()), Point::ZERO),
        },
        "pocket": { "radius": number(wheel.pocket.radius) },
    })
}

/// A wheel's marks, each as it stands upright in the window, about the window's middle: moving window or wheel leaves
/// them as they are.
pub(super) fn marks(wheel: &Wheel) -> Value {
    let all = wheel.marks.iter().enumerate().map(|(k, mark)| {
        let there = Motion::turn(wheel.centre, wheel.turned_to(k)).then(&Motion::shift(-wheel.window.centre.to_vec2()));
        json!({ "words": mark.words, "d": path_data(&mark.shape.moved(&there), Point::ZERO) })
    });
    Value::Array(all.collect())
}

/// Something of a dial that can be measured from.
pub(crate) struct Feature {
    /// What it is called.
    pub(crate) words: String,
    /// Its outline.
    pub(crate) edges: Edges,
}

/// The feature of a name: `cover`, `window/0`, `notch/0`, `rim/0`, `pocket/0`, `middle/0`, `art/0`.
pub(crate) fn feature(dial: &Dial, name: &str) -> Option<Feature> {
    let (kind, i) = name.split_once('/').map_or((name, 0), |(kind, i)| (kind, i.parse().unwrap_or(usize::MAX)));
    let dot = |at: Point| Edges::of_curve(&Curve::circle(at, 1e-6));
    if kind == "cover" {
        return Some(Feature { words: "the cover's edge".into(), edges: Edges::of_curve(&dial.cover.outline) });
    }
    if kind == "art" {
        let art = dial.cover.art.get(i)?;
        return Some(Feature { words: format!("“{}” on the cover", art.what), edges: Edges::of(&art.shape) });
    }
    let wheel = dial.wheels.get(i)?;
    let (what, edges) = match kind {
        "window" => ("the window", Edges::of_curve(&wheel.window.edge)),
        "notch" => ("the notch", Edges::of_curve(&wheel.notch.cutter)),
        "rim" => ("the rim", Edges::of_curve(&wheel.rim)),
        "pocket" => ("the pocket", Edges::of_curve(&Curve::circle(wheel.pocket.centre, wheel.pocket.radius))),
        "middle" => ("the middle", dot(wheel.centre)),
        _ => return None,
    };
    Some(Feature { words: format!("{what} of {}", wheel.name), edges })
}

/// The way from one place to another, for a line on the page.
pub(crate) fn line(from: Point, to: Point) -> Value {
    let way: Vec2 = to - from;
    json!({ "from": place(from), "to": place(to), "angle": degrees(way.atan2()) })
}
