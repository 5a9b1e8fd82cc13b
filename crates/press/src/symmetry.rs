//! The cover laid over its own mirror image, as it lies when it is turned over in its hole.

use crate::svg::{Picture, tone};
use dial::Dial;
use dial::findings::mirrored;
use measure::show;
use outline::{Curve, Motion, Point, Shape, Vec2};

const MARGIN: f64 = 10.0;

/// The cover, its mirror image about the axis it is turned over on, what of either misses the other, and the worst place.
pub fn symmetry(dial: &Dial) -> String {
    let plate = &dial.cover.plate;
    let image = plate.moved(&Motion::mirror(&dial.turn_axis));
    let worst = mirrored(dial).own;
    let wide = plate.bounds().union(image.bounds()).inflate(MARGIN, MARGIN);
    let mut picture = Picture::new(
        &format!("{} turned over in its hole", dial.name),
        Point::new(wide.x0, wide.y0),
        Point::new(wide.x1, wide.y1),
    );
    picture.fill(plate, tone::COVER);
    // Where they differ by less than a hair the differences are slivers that only trouble the eye.
    if worst.distance > 1e-3 {
        picture.fill(&plate.minus(&image), tone::FAIL);
        picture.fill(&image.minus(plate), tone::PALE);
    }
    picture.line_round(plate, tone::INK, 0.25, "");
    picture.line_round(&image, tone::INK, 0.25, "1.5 1");
    let along = dial.turn_axis.direction / dial.turn_axis.direction.hypot();
    let reach = wide.width().hypot(wide.height()) / 2.0 - 2.0;
    let clamp = |p: Point| {
        Point::new(
            p.x.clamp(wide.x0 + 2.0, wide.x1 - 2.0),
            p.y.clamp(wide.y0 + 2.0, wide.y1 - 2.0),
        )
    };
    let (from, to) = (
        clamp(dial.turn_axis.point - reach * along),
        clamp(dial.turn_axis.point + reach * along),
    );
    picture.straight(from, to, tone::INK, 0.3, "6 1.5 1 1.5");
    if worst.distance > 1e-3 {
        picture.line_round(
            &Shape::from(Curve::circle(worst.at, 3.0)),
            tone::FAIL,
            0.4,
            "",
        );
    }
    let words = format!("largest mismatch {}", show(worst.distance, dial.show));
    picture.text(
        Point::new(wide.x0 + 3.0, wide.y1 - 4.0) + Vec2::ZERO,
        2.6,
        &words,
        tone::INK,
    );
    picture.finish()
}
