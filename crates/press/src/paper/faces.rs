//! The dial in the colours of its stocks, from the front and from behind.

use super::{Anchor, Drawing, Sketch};
use crate::layers::{look, look_behind};
use crate::picture::{dashes, pen, tone};
use dial::Dial;
use outline::{Axis, Motion, Point, Rect, Shape, Vec2};

/// Room round the dial, in mm.
const MARGIN: f64 = 2.0;

/// The dial from the front, every wheel at its first stop; `places` get a numbered ring.
pub fn dial_face(dial: &Dial, places: &[Point]) -> Drawing {
    let mut sketch = Sketch::new(&format!("{} from the front", dial.name), around(dial));
    let picture = &mut sketch.picture;
    for wheel in &dial.wheels {
        let colours = look(&wheel.stock, wheel.mark_depth);
        let rim = Shape::from(wheel.rim.clone());
        picture.fill(&rim, &colours.face);
        for mark in &wheel.marks {
            picture.fill(&mark.shape, &colours.burnt);
        }
        picture.outline(&rim, pen(&colours.burnt, 0.15, dashes::NONE));
    }
    let colours = look(&dial.cover.stock, dial.cover.engrave_depth);
    let face = open_face(dial);
    picture.fill(&face, &colours.face);
    for art in &dial.cover.art {
        picture.fill(&art.shape, &colours.burnt);
    }
    picture.outline(&face, pen(&colours.burnt, 0.2, dashes::NONE));
    let rings = gathered(places);
    for (at, _) in &rings {
        let ring = Shape::from(outline::Curve::circle(*at, 2.4));
        sketch.picture.outline(&ring, pen("#ffffff", 1.1, dashes::NONE));
        sketch.picture.outline(&ring, pen(tone::FAIL, 0.45, dashes::NONE));
    }
    for (at, words) in rings {
        sketch.label(at + Vec2::new(3.2, 2.6), Anchor::Start, words);
    }
    sketch.finish()
}

/// The dial from behind, turned over sideways: the cover's back, its pockets where no wheel hides them, and the wheels' backs, numbered.
pub fn dial_back(dial: &Dial) -> Drawing {
    let over = Motion::mirror(&Axis::vertical(0.0));
    let area = around(dial);
    let area = Rect::new(-area.x1, area.y0, -area.x0, area.y1);
    let mut sketch = Sketch::new(&format!("{} from behind", dial.name), area);
    let picture = &mut sketch.picture;
    let plate = open_face(dial).moved(&over);
    picture.fill(&plate, &look_behind(&dial.cover.stock).face);
    picture.outline(&plate, pen(&look_behind(&dial.cover.stock).burnt, 0.2, dashes::NONE));
    for wheel in &dial.wheels {
        let rim = Shape::from(wheel.rim.clone()).moved(&over);
        picture.fill(&rim, &look_behind(&wheel.stock).face);
        picture.outline(&rim, pen(&look_behind(&wheel.stock).burnt, 0.2, dashes::NONE));
        // What lies under the wheel's back: its window and the pocket, dashed.
        for hidden in [Shape::from(wheel.window.edge.clone()), super::pockets::round(&wheel.pocket)] {
            picture.outline(&hidden.moved(&over), pen(&look_behind(&wheel.stock).burnt, 0.15, dashes::HIDDEN));
        }
    }
    for (i, wheel) in dial.wheels.iter().enumerate() {
        let at = over.apply(wheel.centre - Vec2::new(0.0, wheel.radius / 2.0));
        sketch.label(at, Anchor::Middle, (i + 1).to_string());
    }
    sketch.finish()
}

/// Numbered places; those that lie on each other share a ring.
fn gathered(places: &[Point]) -> Vec<(Point, String)> {
    let mut rings: Vec<(Point, String)> = Vec::new();
    for (i, at) in places.iter().enumerate() {
        let number = (i + 1).to_string();
        match rings.iter_mut().find(|one| one.0.distance(*at) < 6.0) {
            Some(one) => one.1 = format!("{}, {number}", one.1),
            None => rings.push((*at, number)),
        }
    }
    rings
}

/// The cover with its windows open.
pub(super) fn open_face(dial: &Dial) -> Shape {
    let windows = dial.wheels.iter().map(|wheel| Shape::from(wheel.window.edge.clone()));
    windows.fold(dial.cover.plate.clone(), |face, window| face.minus(&window))
}

/// Cover and wheels, with a margin.
pub(super) fn around(dial: &Dial) -> Rect {
    let wheels = dial.wheels.iter().map(|wheel| wheel.rim.bounds());
    wheels.fold(dial.cover.plate.bounds(), |all, one| all.union(one)).inflate(MARGIN, MARGIN)
}
