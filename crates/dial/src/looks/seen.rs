//! What a reader sees of a wheel through its window: how high the marks look, and what the cover's own thickness hides of them.

use super::Reader;
use crate::assembled::Wheel;
use crate::magnets::Build;
use outline::{Motion, Point, Rect, Shape, Vec2};
use sight::View;

/// What one reader sees of one wheel.
#[derive(Clone, Debug)]
pub struct Seen {
    /// Visual angle of its marks, foot to top.
    pub angle: f64,
    /// One for each stop.
    pub stops: Vec<SeenStop>,
    /// The stop of which least is seen.
    pub worst: usize,
    /// From the cover's face down to the wheel's.
    pub depth: f64,
    /// Height of the window (diameter of a round one) that would hide nothing of any mark, its middle where it is.
    pub window_for_all: f64,
    /// From the window's edge to the nearest mark, on the reader's side: thickness hides nothing as long as the edge is shifted by less.
    pub free: f64,
}

/// What one reader sees of one stop.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct SeenStop {
    /// Share of the mark's area that is seen, 0 to 1.
    pub share: f64,
    /// How much of the mark is hidden, along the view.
    pub hidden: f64,
    /// The mark's extent along the view.
    pub extent: f64,
}

impl SeenStop {
    /// Share of its extent along the view that is seen.
    pub fn height_share(&self) -> f64 {
        1.0 - self.hidden / self.extent
    }
}

impl Seen {
    /// What a reader sees of a wheel through a cover of this thickness.
    pub fn of(wheel: &Wheel, thickness: f64, reader: &Reader) -> Seen {
        let view = reader.view;
        let (depth, visible) = visible(wheel, thickness, view);
        let straight = straight(wheel, view);
        let opening = Shape::from(wheel.window.edge.clone()).moved(&straight).bounds();
        let centre = wheel.window.centre;
        let mut stops = Vec::new();
        let (mut window_for_all, mut free): (f64, f64) = (0.0, f64::INFINITY);
        for k in 0..wheel.marks.len() {
            let (stop, around) = stop(wheel, k, &visible, &straight);
            stops.push(stop);
            let reach = Vec2::new((around.x0 - centre.x).abs().max(around.x1 - centre.x), centre.y - around.y0);
            window_for_all = window_for_all.max(needed(wheel, reach, view.hides(depth)));
            free = free.min(around.y0 - opening.y0);
        }
        let worst = (0..stops.len()).min_by(|a, b| stops[*a].share.total_cmp(&stops[*b].share)).unwrap_or(0);
        Seen { angle: view.angular_height(wheel.asked.height), stops, worst, depth, window_for_all, free }
    }

    /// The stop of which least is seen.
    pub fn at_worst(&self) -> SeenStop {
        self.stops.get(self.worst).copied().unwrap_or(SeenStop { share: 0.0, hidden: 0.0, extent: 1.0 })
    }
}

/// Turns the window such that the reader looks along +y.
fn straight(wheel: &Wheel, view: View) -> Motion {
    Motion::turn(wheel.window.centre, -view.azimuth())
}

/// What is seen of one stop, and the box of its mark as the reader looks.
fn stop(wheel: &Wheel, k: usize, visible: &Shape, straight: &Motion) -> (SeenStop, Rect) {
    let mark = wheel.upright(k);
    let around = mark.moved(straight).bounds();
    let seen = mark.common(visible);
    let there = seen.moved(straight).bounds();
    let extent = around.height();
    let hidden = if seen.is_empty() { extent } else { (there.y0 - around.y0).max(0.0) };
    (SeenStop { share: (seen.area() / mark.area()).min(1.0), hidden, extent }, around)
}

/// What is seen of one stop through a cover of another thickness.
pub(super) fn stop_through(wheel: &Wheel, k: usize, thickness: f64, view: View) -> SeenStop {
    let (_, visible) = visible(wheel, thickness, view);
    stop(wheel, k, &visible, &straight(wheel, view)).0
}

/// How far the wheel's face lies below the cover's, and the part of its plane that is seen through the window: the window shifted by
/// its upper edge, as far as that meets the window shifted by its lower one.
fn visible(wheel: &Wheel, thickness: f64, view: View) -> (f64, Shape) {
    let gap = gap(wheel);
    let window = Shape::from(wheel.window.edge.clone());
    let shifted = |depth: f64| {
        let [x, y] = view.shift(depth);
        window.moved(&Motion::shift(Vec2::new(x, y)))
    };
    let depth = thickness + gap;
    let visible = if gap > 0.0 { shifted(depth).common(&shifted(gap)) } else { shifted(depth).common(&window) };
    (depth, visible)
}

/// How far a wheel's face lies below the cover's back.
pub fn gap(wheel: &Wheel) -> f64 {
    let build = Build::of(wheel);
    build.apart + (-build.clear()).max(0.0)
}

/// The window that hides nothing of a mark that reaches so far aside and towards the reader, when its edge hides so much.
fn needed(wheel: &Wheel, reach: Vec2, hides: f64) -> f64 {
    match wheel.window.kind {
        crate::design::WindowKind::Round => 2.0 * (reach - Vec2::new(0.0, -hides)).hypot(),
        _ => 2.0 * (reach.y + hides),
    }
}

/// A mark cut off as the cover's edge cuts it for this view: what lies nearer to the reader than this is gone.
pub(super) fn cut_off(mark: &Shape, view: View, hidden: f64) -> Shape {
    let straight = Motion::turn(Point::ZERO, -view.azimuth());
    let turned = mark.moved(&straight);
    let around = turned.bounds();
    let cut = outline::Axis::horizontal(around.y0 + hidden);
    turned.clipped_to_half(&cut, outline::Side::Left)
}
