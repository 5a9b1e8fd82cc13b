//! Small parts that are cut with the sheets so that the bench can measure: a pole gauge that holds the master magnet, and a depth gauge
//! with tongues about the wanted depth.

use super::plan::Part;
use crate::assembled::{Dial, Pocket};
use crate::magnets::{Where, marked_face};
use lettering::{Lettering, TwinMark, Weight};
use measure::{Units, show};
use outline::{Curve, Motion, Point, Shape, Vec2};
use std::f64::consts::PI;

/// Height of the words on a gauge, and depth of all engraving.
const WORDS: f64 = 3.0;
const DEPTH: f64 = 0.3;
/// Steps about the wanted depth, one on each side of a hexagon; the sixth side is plain.
const STEPS: [f64; 5] = [-0.2, -0.1, 0.0, 0.1, 0.2];
/// How much narrower than its pocket a tongue is, and the shoulder on each side of it.
const ROOM: f64 = 0.8;
const SHOULDER: f64 = 4.0;
/// The paddle that holds the master magnet.
const PADDLE: (f64, f64) = (62.0, 18.0);

/// The gauges of a dial, cut from the cover's stock: a depth gauge for each depth that its pockets have.
pub(super) fn gauges(dial: &Dial) -> Vec<Part<'_>> {
    if !dial.gauges || dial.wheels.is_empty() {
        return Vec::new();
    }
    let mut wanted: Vec<&Pocket> = Vec::new();
    let clicks = dial.wheels.iter().filter_map(|wheel| wheel.clicks.as_ref()?.wheel.first());
    let pairs = dial.wheels.iter().flat_map(|wheel| [&wheel.cover_pocket, &wheel.pocket]);
    for pocket in pairs.chain(clicks) {
        let alike = |one: &&Pocket| (one.depth - pocket.depth).abs() < 0.05 && pocket.radius >= one.radius - 0.5;
        if !wanted.iter().any(alike) {
            wanted.push(pocket);
        }
    }
    let depths = wanted.into_iter().enumerate().map(|(k, pocket)| depth_gauge(dial, pocket, k + 1));
    std::iter::once(pole_gauge(dial)).chain(depths).collect()
}

fn part(dial: &Dial, name: String, outline: Shape, words: Vec<Shape>, pocket: Option<Pocket>) -> Part<'_> {
    Part {
        name,
        stock: &dial.cover.stock,
        outline,
        inside: Vec::new(),
        face: words.into_iter().map(|shape| (shape, DEPTH)).collect(),
        face_pockets: pocket.into_iter().collect(),
        back: Vec::new(),
        back_pockets: Vec::new(),
    }
}

/// A paddle: the master magnet is glued into its pocket, the marked face out, and beside it stands what that face finds where.
fn pole_gauge(dial: &Dial) -> Part<'_> {
    let seat = &dial.wheels[0].seat;
    let (length, height) = PADDLE;
    let outline = Curve::rounded_rectangle(Point::ZERO, length, height, height / 2.0 - 1.0);
    let pocket = Pocket {
        centre: Point::new(height / 2.0 - length / 2.0, 0.0),
        radius: dial.wheels[0].cover_pocket.radius,
        depth: seat.cover.thickness + seat.glue,
        ledge: None,
    };
    let from = pocket.centre.x + pocket.radius + 2.0;
    let middle = (from + length / 2.0 - 5.0) / 2.0;
    let says = |part: Where, name: &str| format!("{name} {}", marked_face(part, seat.poles).words());
    let lines = [(says(Where::CoverBack, "cover"), 1.0), (says(Where::WheelFace, "wheel"), -1.0)];
    let words = lines.iter().filter_map(|(words, side)| written(words, Point::new(middle, side * WORDS)));
    part(dial, "pole gauge".into(), Shape::from(outline), words.collect(), Some(pocket))
}

/// A hexagon with a tongue on five of its sides: that of the wanted depth goes in until its shoulders rest on the face, the next deeper
/// one does not.
fn depth_gauge<'a>(dial: &'a Dial, pocket: &Pocket, number: usize) -> Part<'a> {
    let width = (2.0 * pocket.radius - ROOM).max(1.0);
    let side = width + 2.0 * SHOULDER;
    let across = side * 3f64.sqrt() / 2.0;
    let mut outline = Shape::from(Curve::regular_polygon(Point::ZERO, 6, across, 0.0));
    let mut words = Vec::new();
    for (k, step) in STEPS.into_iter().enumerate() {
        // A shallow pocket has no tongues that would be shorter than nothing.
        let depth = pocket.depth + step;
        if depth < 0.1 {
            continue;
        }
        // The plain side lies at the bottom; from there round it deeper and deeper, each word upright when its tongue points up.
        let turn = Motion::turn(Point::ZERO, PI - (k as f64 + 1.0) * PI / 3.0);
        // It reaches into the hexagon, so that the two become one.
        let middle = Point::new(0.0, across + (depth - 1.0) / 2.0);
        let tongue = Shape::from(Curve::rounded_rectangle(middle, width, depth + 1.0, 0.0));
        outline = outline.united(&tongue.moved(&turn));
        let figure = show(depth, dial.show);
        let figure = if dial.show == Units::Millimetres { figure.trim_end_matches(" mm") } else { &figure };
        let place = Point::new(0.0, across - 1.2 * WORDS);
        words.extend(written(figure, place).map(|shape| shape.moved(&turn)));
        if step == 0.0 {
            // A bar below the wanted one.
            let bar = Curve::rounded_rectangle(place - Vec2::new(0.0, 0.9 * WORDS), width, 0.5, 0.0);
            words.push(Shape::from(bar).moved(&turn));
        }
    }
    let name = if number == 1 { "depth gauge".to_owned() } else { format!("depth gauge {number}") };
    part(dial, name, outline, words, None)
}

/// Words about a middle, if the font has them.
fn written(words: &str, middle: Point) -> Option<Shape> {
    let shape = Lettering::shipped(Weight::Medium).inscription(words, WORDS, TwinMark::None).ok()?;
    Some(shape.moved(&Motion::shift(middle.to_vec2())))
}
