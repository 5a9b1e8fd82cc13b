//! One stop as it stands in its window, in the colours of the stocks.

use super::{Drawing, Sketch};
use crate::layers::look;
use crate::picture::{dashes, pen, tone};
use dial::Dial;
use dial::turning::Stop;
use outline::{Curve, Motion, Shape};

/// Room round the window, in mm.
const PAD: f64 = 1.6;

/// Stop `k` of a wheel: the opening, what is really seen through it, and pale what of its own mark the cover hides.
pub fn stop_in_window(dial: &Dial, wheel: usize, k: usize, stop: &Stop) -> Drawing {
    let wheel = &dial.wheels[wheel];
    let window = Shape::from(wheel.window.edge.clone());
    let shown = window.bounds().inflate(PAD, PAD);
    let failing = if stop.faults.is_empty() { "" } else { ", fails" };
    let mut sketch = Sketch::new(&format!("{} at {}{failing}", wheel.name, stop.words), shown);
    let (cover, under) = (look(&dial.cover.stock, dial.cover.engrave_depth), look(&wheel.stock, wheel.mark_depth));
    let card = Curve::rounded_rectangle(shown.center(), shown.width(), shown.height(), 1.0);
    sketch.picture.fill(&Shape::from(card.clone()), &cover.face);
    sketch.picture.fill(&window, &under.face);
    let turned = Motion::turn(wheel.centre, wheel.turned_to(k));
    for (j, mark) in wheel.marks.iter().enumerate() {
        let there = mark.shape.moved(&turned);
        if !shown.overlaps(there.bounds()) {
            continue;
        }
        if j == k && stop.seen >= 1.0 {
            sketch.picture.fill(&there, &under.burnt);
            continue;
        }
        if j == k {
            let hidden = there.common(&Shape::from(card.clone())).minus(&window);
            sketch.picture.fill(&hidden, tone::PALE);
        }
        sketch.picture.fill(&there.common(&window), &under.burnt);
    }
    sketch.picture.outline(&window, pen(&cover.burnt, 0.15, dashes::NONE));
    if !stop.faults.is_empty() {
        let inner = shown.inflate(-0.4, -0.4);
        let edge = Curve::rounded_rectangle(inner.center(), inner.width(), inner.height(), 0.7);
        sketch.picture.outline(&Shape::from(edge), pen(tone::FAIL, 0.7, dashes::NONE));
    }
    sketch.finish()
}
