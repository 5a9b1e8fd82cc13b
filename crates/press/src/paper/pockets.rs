//! Where each pocket is and which way round its magnet goes; and a pair in its pockets, cut through its middle.

use super::{Anchor, Drawing, Sketch};
use crate::layers::look;
use crate::picture::{dashes, pen, tone};
use dial::Dial;
use dial::assembled::{Pocket, Poles, Wheel};
use dial::magnets::{self, Where};
use measure::show;
use outline::{Curve, Motion, Point, Rect, Shape, Vec2};

const MARGIN: f64 = 3.0;
const GAP: f64 = 5.0;

/// A pocket as a round shape.
pub(super) fn round(pocket: &Pocket) -> Shape {
    Shape::from(Curve::circle(pocket.centre, pocket.radius))
}

/// The cover lying on its face and the wheels face up, every pocket filled where the magnet pulls the marked face and open where it
/// pushes; the pockets of pairs are numbered in the order of [`magnets::plan`].
pub fn pole_drawing(dial: &Dial) -> Drawing {
    let over = Motion::mirror(&dial.turn_axis);
    let back = super::faces::open_face(dial).moved(&over);
    let cover = back.bounds();
    let widest = dial.wheels.iter().map(|wheel| wheel.radius).fold(0.0, f64::max);
    // A row of wheels may be a little wider than the cover.
    let columns = ((cover.width() + GAP) / (2.0 * widest + GAP) + 0.25).floor().max(1.0) as usize;
    let columns = columns.min(dial.wheels.len().max(1));
    let rows = dial.wheels.len().div_ceil(columns);
    let wide = cover.width().max(columns as f64 * (2.0 * widest + GAP) - GAP);
    let low = cover.y0 - GAP - rows as f64 * (2.0 * widest + GAP);
    let middle = cover.center().x;
    let area = Rect::new(middle - wide / 2.0, low, middle + wide / 2.0, cover.y1).inflate(MARGIN, MARGIN);
    let mut sketch = Sketch::new(&format!("{}: which way round each magnet goes", dial.name), area);
    sketch.picture.fill(&back, "#f0ebe1");
    sketch.picture.outline(&back, pen(tone::INK, 0.2, dashes::NONE));
    let row_wide = columns as f64 * (2.0 * widest + GAP) - GAP;
    let lays: Vec<Motion> = (0..dial.wheels.len())
        .map(|i| {
            let (row, column) = (i / columns, i % columns);
            let x = middle - row_wide / 2.0 + widest + column as f64 * (2.0 * widest + GAP);
            let y = cover.y0 - GAP - widest - row as f64 * (2.0 * widest + GAP);
            Motion::shift(Point::new(x, y) - dial.wheels[i].centre)
        })
        .collect();
    for (wheel, lay) in dial.wheels.iter().zip(&lays) {
        let rim = Shape::from(wheel.rim.clone()).moved(lay);
        sketch.picture.fill(&rim, "#f7f4ee");
        sketch.picture.outline(&rim, pen(tone::INK, 0.2, dashes::NONE));
        for mark in &wheel.marks {
            sketch.picture.fill(&mark.shape.moved(lay), "#d3c9b8");
        }
    }
    let mut number = 0;
    for one in magnets::plan(dial) {
        let lay = if one.part == Where::CoverBack { &over } else { &lays[one.wheel] };
        let shape = round(&one.pocket).moved(lay);
        sketch.picture.fill(&shape, if one.poles == Poles::Pulls { tone::INK } else { "#ffffff" });
        sketch.picture.outline(&shape, pen(tone::INK, if one.clicks { 0.3 } else { 0.6 }, dashes::NONE));
        if !one.clicks {
            number += 1;
            let at = lay.apply(one.pocket.centre) + Vec2::new(one.pocket.radius + 1.2, one.pocket.radius + 0.6);
            sketch.label(at, Anchor::Start, number.to_string());
        }
    }
    sketch.finish()
}

/// How many times larger than life the section is drawn.
const LARGER: f64 = 5.0;

/// A wheel's pair in its pockets, cut through the middle, face of the cover up: larger than life.
pub fn pair_section(dial: &Dial, wheel: &Wheel) -> Drawing {
    let (cover, under) = (dial.cover.stock.thickness(), wheel.stock.thickness());
    let reach = wheel.cover_pocket.reach().max(wheel.pocket.reach()) + 3.5;
    // The wheel hangs a little below the cover, so that both faces are seen; drawn apart, not to be measured.
    let apart = 0.35;
    let s = LARGER;
    let room = 46.0;
    let area = Rect::new(-s * reach - 4.0, -s * (under + apart) - 6.0, s * reach + room, s * cover + 6.0);
    let words = format!("section through the magnets of {}, {LARGER} times as large as life", wheel.name);
    let mut sketch = Sketch::new(&words, area);
    let block = |x0: f64, y0: f64, x1: f64, y1: f64| {
        let rect = Rect::new(s * x0, s * y0, s * x1, s * y1);
        Shape::from(Curve::rounded_rectangle(rect.center(), rect.width(), rect.height(), 0.0))
    };
    let ink = pen(tone::INK, 0.25, dashes::NONE);
    let hole = |pocket: &Pocket, from: f64, way: f64| {
        let mut shape = block(
            -pocket.radius,
            from.min(from + way * pocket.depth),
            pocket.radius,
            from.max(from + way * pocket.depth),
        );
        if let Some(ledge) = pocket.ledge {
            let end = from + way * ledge.depth;
            shape = shape.united(&block(-ledge.radius, from.min(end), ledge.radius, from.max(end)));
        }
        shape
    };
    let plate = block(-reach, 0.0, reach, cover).minus(&hole(&wheel.cover_pocket, 0.0, 1.0));
    sketch.picture.fill(&plate, &look(&dial.cover.stock, dial.cover.engrave_depth).face);
    sketch.picture.outline(&plate, ink);
    let disc = block(-reach, -apart - under, reach, -apart).minus(&hole(&wheel.pocket, -apart, -1.0));
    sketch.picture.fill(&disc, &look(&wheel.stock, wheel.mark_depth).face);
    sketch.picture.outline(&disc, ink);
    let glue = wheel.seat.glue;
    let (up, down) = (&wheel.seat.cover, &wheel.seat.wheel);
    let floor_up = wheel.cover_pocket.depth;
    let floor_down = -apart - wheel.pocket.depth;
    for (x, y0, y1) in [
        (up.diameter / 2.0, floor_up - glue - up.thickness, floor_up - glue),
        (down.diameter / 2.0, floor_down + glue, floor_down + glue + down.thickness),
    ] {
        let magnet = block(-x, y0, x, y1);
        sketch.picture.fill(&magnet, "#aeb4b9");
        sketch.picture.outline(&magnet, ink);
    }
    // Arrows for the two depths, right of the pockets.
    let x = s * reach + 4.0;
    let thin = pen(tone::INK, 0.18, dashes::NONE);
    for (from, to, pocket, part) in [
        (0.0, s * wheel.cover_pocket.depth, &wheel.cover_pocket, "cover"),
        (-s * apart, -s * (apart + wheel.pocket.depth), &wheel.pocket, "wheel"),
    ] {
        sketch.picture.straight(Point::new(x, from), Point::new(x, to), thin);
        for y in [from, to] {
            sketch.picture.straight(Point::new(s * pocket.radius, y), Point::new(x + 1.5, y), thin);
        }
        let depth = format!("{} deep in the {part}", show(pocket.depth, dial.show));
        sketch.label(Point::new(x + 3.0, (from + to) / 2.0), Anchor::Start, depth);
    }
    sketch.finish()
}
