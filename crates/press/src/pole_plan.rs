//! The pole plan as a picture: the cover as it lies on its face, the wheels face up, and what each pocket does to the marked face.

use crate::picture::{Picture, dashes, pen, tone};
use dial::Dial;
use dial::assembled::{Poles, Wheel};
use dial::magnets::{self, PocketPole, Where};
use outline::{Curve, Motion, Point, Rect, Shape, Vec2};

const MARGIN: f64 = 8.0;
const GAP: f64 = 6.0;
const WORDS: f64 = 2.4;

/// The pole plan of a dial.
pub fn pole_plan(dial: &Dial) -> String {
    let plan = magnets::plan(dial);
    let over = Motion::mirror(&dial.turn_axis);
    let back = dial.cover.plate.moved(&over);
    let area = back.bounds();
    // The wheels stand below the cover, in a row as wide as they need.
    let widest = dial.wheels.iter().map(|wheel| wheel.radius).fold(0.0, f64::max);
    let columns = (area.width() / (2.0 * widest)).round().max(1.0) as usize;
    let wide = (columns as f64 * (2.0 * widest + GAP)).max(area.width()).max(100.0);
    let around = Rect::new(area.x0 - MARGIN, area.y0, area.x0 + wide + MARGIN, area.y1 + MARGIN + 2.0 * WORDS);
    let mut picture = Picture::new(&format!("{}: which way round each magnet goes", dial.name), around);
    picture.text(Point::new(area.x0, area.y1 + 1.5 * WORDS), WORDS, "the cover, lying on its face", tone::INK);
    let windows = dial.wheels.iter().map(|wheel| Shape::from(wheel.window.edge.clone()).moved(&over));
    let face = windows.fold(back, |face, window| face.minus(&window));
    picture.fill(&face, tone::COVER);
    picture.outline(&face, pen(tone::INK, 0.2, dashes::NONE));
    for one in plan.iter().filter(|one| one.part == Where::CoverBack) {
        pocket(&mut picture, one, &over, &dial.wheels[one.wheel]);
    }
    let mut low = area.y0;
    for (i, wheel) in dial.wheels.iter().enumerate() {
        let (row, column) = (i / columns, i % columns);
        let middle = Point::new(
            area.x0 + widest + column as f64 * (2.0 * widest + GAP),
            area.y0 - 3.0 * WORDS - widest - row as f64 * (2.0 * widest + GAP + 3.0 * WORDS),
        );
        let lay = Motion::shift(middle - wheel.centre);
        let rim = Shape::from(wheel.rim.clone()).moved(&lay);
        picture.fill(&rim, tone::WHEEL);
        picture.outline(&rim, pen(tone::INK, 0.2, dashes::NONE));
        for mark in &wheel.marks {
            picture.fill(&mark.shape.moved(&lay), tone::PALE);
        }
        for one in plan.iter().filter(|one| one.part == Where::WheelFace && one.wheel == i) {
            pocket(&mut picture, one, &lay, wheel);
        }
        low = low.min(middle.y - widest);
    }
    let words = "Lay the pole gauge over a pocket, its marked face down. Filled: the magnet pulls the marked face. Open: it pushes it away. Every cover is made so, and every wheel the other way: so any wheel fits any cover. Wheels: face up.";
    let at = Point::new(area.x0, low - 4.5 * WORDS);
    let used = picture.paragraph(at, WORDS, words, tone::INK, MARGIN);
    picture.end_at(at.y - used - MARGIN / 2.0);
    picture.finish()
}

/// One pocket, filled where it pulls, and what it does in words.
fn pocket(picture: &mut Picture, one: &PocketPole, lay: &Motion, wheel: &Wheel) {
    let middle = lay.apply(one.pocket.centre);
    let ring = Shape::from(Curve::circle(middle, one.pocket.radius));
    picture.fill(&ring, if one.poles == Poles::Pulls { tone::INK } else { tone::PAPER });
    picture.outline(&ring, pen(tone::INK, if one.clicks { 0.3 } else { 0.6 }, dashes::NONE));
    if one.clicks {
        return;
    }
    let words = format!("{}: {}", wheel.name, one.poles.words());
    // In the cover below the clicks, for a wheel below its rim.
    let down = if one.part == Where::CoverBack { wheel.hub() } else { wheel.radius };
    picture.text(middle - Vec2::new(down.min(12.0), down + 1.2 * WORDS), WORDS, &words, tone::INK);
}
