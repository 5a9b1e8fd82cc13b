//! Parts to cut out of paper at true size: lines to cut, marks to read, crosses to push a pin through.

use super::{Anchor, Drawing, Sketch, cross};
use crate::picture::{dashes, pen};
use dial::Dial;
use dial::assembled::Wheel;
use outline::{Curve, Motion, Point, Rect, Shape, Vec2};
use std::f64::consts::FRAC_PI_4;

/// Room for half a line's width and no more, so that the drawing is as large as the part, in mm.
const EDGE: f64 = 0.5;
const BLACK: &str = "#000000";
const GREY: &str = "#6b6b6b";
const LINE: f64 = 0.25;
/// From one line of a hatching to the next, in mm.
const HATCH: f64 = 1.6;

/// A part to cut out.
#[derive(Clone, Debug)]
pub struct Proof {
    /// Its drawing.
    pub drawing: Drawing,
    /// The part's own width in mm, over its outline.
    pub width: f64,
    /// The part's own height in mm.
    pub height: f64,
}

/// The cover: its outline and windows to cut, its art, and the wheels' middles.
pub fn cover_proof(dial: &Dial) -> Proof {
    let bounds = dial.cover.plate.bounds();
    let mut sketch =
        Sketch::new(&format!("{}: paper proof of the cover, true size", dial.name), bounds.inflate(EDGE, EDGE));
    for art in &dial.cover.art {
        sketch.picture.fill(&art.shape, GREY);
    }
    for wheel in &dial.wheels {
        let rim = Shape::from(wheel.rim.clone());
        sketch.picture.outline(&rim, pen("#b5b5b5", 0.15, dashes::HIDDEN));
        let window = Shape::from(wheel.window.edge.clone());
        sketch.picture.fill(&window, "#ffffff");
        sketch.picture.outline(&window, pen(BLACK, LINE, dashes::NONE));
        hatch(&mut sketch, &window);
        pin(&mut sketch, wheel.centre);
    }
    sketch.picture.outline(&dial.cover.plate, pen(BLACK, LINE, dashes::NONE));
    finish(sketch, bounds)
}

/// A wheel: its rim to cut, its marks, and its middle.
pub fn wheel_proof(wheel: &Wheel) -> Proof {
    let rim = Shape::from(wheel.rim.clone());
    let bounds = rim.bounds();
    let mut sketch =
        Sketch::new(&format!("paper proof of the wheel {}, true size", wheel.name), bounds.inflate(EDGE, EDGE));
    for mark in &wheel.marks {
        sketch.picture.fill(&mark.shape, BLACK);
    }
    sketch.picture.outline(&rim, pen(BLACK, LINE, dashes::NONE));
    pin(&mut sketch, wheel.centre);
    sketch.label(wheel.centre - Vec2::new(0.0, 3.6), Anchor::Middle, wheel.name.clone());
    finish(sketch, bounds)
}

fn finish(sketch: Sketch, bounds: Rect) -> Proof {
    Proof { drawing: sketch.finish(), width: bounds.width(), height: bounds.height() }
}

/// Where a pin goes through.
fn pin(sketch: &mut Sketch, at: Point) {
    cross(&mut sketch.picture, at, 1.6, pen(BLACK, 0.15, dashes::NONE));
    let ring = Shape::from(Curve::circle(at, 0.7));
    sketch.picture.outline(&ring, pen(BLACK, 0.15, dashes::NONE));
}

/// Lines over what is cut away.
fn hatch(sketch: &mut Sketch, shape: &Shape) {
    let around = shape.bounds();
    let half = around.width().hypot(around.height()) / 2.0 + 1.0;
    let slant = Motion::turn(Point::ZERO, FRAC_PI_4);
    let count = (half / HATCH) as i32;
    for k in -count..=count {
        let line = Curve::rounded_rectangle(Point::new(0.0, f64::from(k) * HATCH), 2.0 * half, 0.12, 0.0);
        let lay = slant.then(&Motion::shift(around.center().to_vec2()));
        let within = Shape::from(line).moved(&lay).common(shape);
        sketch.picture.fill(&within, "#a8a8a8");
    }
}
