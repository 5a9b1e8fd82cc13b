//! The cover laid over its own mirror image, as it lies when it is turned over in its hole.

use crate::picture::{Picture, dashes, pen, tone};
use dial::Dial;
use dial::findings::mirrored;
use measure::show;
use outline::{Axis, Curve, Motion, Point, Rect, Shape, Vec2};

const MARGIN: f64 = 10.0;
/// Height of the words.
const WORDS: f64 = 2.6;
/// Below this the two are the same to any eye and to any beam, and what is left between them is noise, in mm.
const SAME: f64 = 1e-3;

/// The cover's hole, the cover turned over in it about its axis, what of either misses the other, and the worst place.
pub fn symmetry(dial: &Dial) -> String {
    let hole = &dial.cover.plate;
    let cover = hole.moved(&Motion::mirror(&dial.turn_axis));
    let worst = mirrored(dial).own;
    let area = hole.bounds().union(cover.bounds()).inflate(MARGIN, MARGIN);
    let title = format!("{} turned over in its hole", dial.name);
    let mut picture = Picture::new(&title, area);
    picture.fill(&cover, tone::COVER);
    let same = worst.distance <= SAME;
    if !same {
        picture.fill(&cover.minus(hole), tone::FAIL);
        picture.fill(&hole.minus(&cover), tone::PALE);
        picture.outline(&cover, pen(tone::INK, 0.25, dashes::HIDDEN));
    }
    picture.outline(hole, pen(tone::INK, 0.25, dashes::NONE));
    let (from, to) = ends(&dial.turn_axis, area.inflate(-2.0, -2.0));
    picture.straight(from, to, pen(tone::INK, 0.3, dashes::AXIS));
    let figure = show(worst.distance, dial.show);
    let words = if same {
        "The cover is its own mirror image about the axis: turned over, it lies in its own hole.".into()
    } else {
        let ring = Shape::from(Curve::circle(worst.at, 3.0));
        picture.outline(&ring, pen(tone::PAPER, 1.1, dashes::NONE));
        picture.outline(&ring, pen(tone::FAIL, 0.5, dashes::NONE));
        format!(
            "Drawn: the hole. Dashed: the cover turned over. Red: where it does not go in. Dark: where the hole gapes. Ringed: the largest mismatch, {figure}."
        )
    };
    let at = Point::new(area.x0 + MARGIN, area.y0 - 1.0);
    let used = picture.paragraph(at, WORDS, &words, tone::INK, MARGIN);
    picture.end_at(at.y - used - MARGIN / 2.0 + WORDS);
    picture.finish()
}

/// Where an upright or level axis leaves an area.
pub(crate) fn ends(axis: &Axis, area: Rect) -> (Point, Point) {
    let middle = axis.point;
    if is_upright(axis) {
        (Point::new(middle.x, area.y0), Point::new(middle.x, area.y1))
    } else {
        (Point::new(area.x0, middle.y), Point::new(area.x1, middle.y))
    }
}

/// Whether an axis is upright; parts are turned over about upright and level ones only.
pub(crate) fn is_upright(axis: &Axis) -> bool {
    let Vec2 { x, y } = axis.direction;
    y.abs() > x.abs()
}
