//! Parts as they lie on the bench while they are put together.

use super::{Drawing, Sketch};
use crate::layers::{look, look_behind};
use crate::picture::{dashes, pen, tone};
use dial::Dial;
use dial::assembled::Disc;
use outline::{Curve, Motion, Point, Shape};

const MAGNET: &str = "#aeb4b9";

/// The cover lying on its face, with its pockets open, with their magnets, or with the wheels laid on them.
pub fn cover_lying(dial: &Dial, magnets: bool, wheels: bool) -> Drawing {
    let over = Motion::mirror(&dial.turn_axis);
    let area = over_bounds(dial, &over);
    let mut sketch = Sketch::new(&format!("the cover of {} lying on its face", dial.name), area);
    let back = super::faces::open_face(dial).moved(&over);
    let colours = look_behind(&dial.cover.stock);
    sketch.picture.fill(&back, &colours.face);
    sketch.picture.outline(&back, pen(&colours.burnt, 0.2, dashes::NONE));
    for wheel in &dial.wheels {
        let clicks = wheel.clicks.iter().flat_map(|ring| ring.cover.iter().map(|pocket| (pocket, &ring.disc)));
        for (pocket, disc) in std::iter::once((&wheel.cover_pocket, &wheel.seat.cover)).chain(clicks) {
            seat(&mut sketch, &super::pockets::round(pocket).moved(&over), over.apply(pocket.centre), disc, magnets);
        }
    }
    for wheel in dial.wheels.iter().filter(|_| wheels) {
        let rim = Shape::from(wheel.rim.clone()).moved(&over);
        sketch.picture.fill(&rim, &look_behind(&wheel.stock).face);
        sketch.picture.outline(&rim, pen(&look_behind(&wheel.stock).burnt, 0.2, dashes::NONE));
    }
    sketch.finish()
}

/// The first wheel lying face up, its magnets in their pockets.
pub fn wheel_lying(dial: &Dial) -> Option<Drawing> {
    let wheel = dial.wheels.first()?;
    let rim = Shape::from(wheel.rim.clone());
    let mut sketch = Sketch::new(&format!("the wheel {} lying face up", wheel.name), rim.bounds().inflate(2.0, 2.0));
    let colours = look(&wheel.stock, wheel.mark_depth);
    sketch.picture.fill(&rim, &colours.face);
    for mark in &wheel.marks {
        sketch.picture.fill(&mark.shape, &colours.burnt);
    }
    sketch.picture.outline(&rim, pen(&colours.burnt, 0.2, dashes::NONE));
    let clicks = wheel.clicks.iter().flat_map(|ring| ring.wheel.iter().map(|pocket| (pocket, &ring.disc)));
    for (pocket, disc) in std::iter::once((&wheel.pocket, &wheel.seat.wheel)).chain(clicks) {
        seat(&mut sketch, &super::pockets::round(pocket), pocket.centre, disc, true);
    }
    Some(sketch.finish())
}

fn seat(sketch: &mut Sketch, pocket: &Shape, at: Point, disc: &Disc, magnet: bool) {
    sketch.picture.fill(pocket, tone::PALE);
    if magnet {
        sketch.picture.fill(&Shape::from(Curve::circle(at, disc.diameter / 2.0)), MAGNET);
    }
    sketch.picture.outline(pocket, pen(tone::INK, 0.2, dashes::NONE));
}

fn over_bounds(dial: &Dial, over: &Motion) -> outline::Rect {
    let wheels = dial.wheels.iter().map(|wheel| Shape::from(wheel.rim.clone()).moved(over).bounds());
    wheels.fold(dial.cover.plate.moved(over).bounds(), |all, one| all.union(one)).inflate(2.0, 2.0)
}
