//! The wheel: how far from its middle the marks must stand so that each is alone in its window, and
//! the radius that follows.

use super::marks::Inscribed;
use super::places::Direction;
use super::seat::{self, Hub};
use super::window::{self, Opening};
use crate::design::{CounterDesign, Design, RimKind, WindowKind};
use outline::{Curve, Edges, Motion, Point, Vec2};
use std::f64::consts::TAU;

/// Least web between a mark and the magnet's pocket in the wheel's face: one plate's worth of a thin
/// face ply, so that the engraving does not break into the pocket (our own proposal).
pub(crate) const MARK_TO_POCKET: f64 = 1.0;
/// Least web between a window and the pocket in the cover's back (half of the usual plate; our own proposal).
pub(crate) const WINDOW_TO_POCKET: f64 = 1.5;
/// Length of rim for one scoop of a scalloped rim (common practice: about a fingertip ridge).
const SCOOP: f64 = 4.0;
/// Distances are settled to this.
const SETTLED: f64 = 1e-6;

/// What decided how far from the middle the marks stand.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum Driver {
    /// Two marks that follow each other must not be seen together.
    Neighbours {
        /// Stop of the one that comes too near.
        mark: usize,
        /// Stop of the one that is shown.
        shown: usize,
    },
    /// The marks must stay clear of the magnet's pocket.
    Pocket,
    /// The window must stay clear of the magnet's pocket.
    WindowPocket,
    /// The maker asked for it.
    Asked,
    /// It follows the largest wheel of the dial.
    SameSize(usize),
}

/// Sizes of one wheel.
#[derive(Clone, Copy, Debug)]
pub(super) struct Fitted {
    pub(super) window: Opening,
    pub(super) distance: f64,
    pub(super) radius: f64,
    pub(super) rim: RimKind,
    pub(super) driver: Driver,
}

/// Finds the sizes of all wheels.
pub(super) fn fit_all(design: &Design, inscribed: &[Vec<Inscribed>], directions: &[Direction]) -> Vec<Fitted> {
    // A ring sector and a window that shows the neighbours depend on the distance that they decide:
    // settle both together. Other windows settle in the first round.
    let mut distances = vec![30.0; inscribed.len()];
    let mut openings: Vec<Opening> = Vec::new();
    let mut drivers = vec![Driver::Asked; inscribed.len()];
    let mut found: Vec<Option<(Opening, (f64, Driver))>> = vec![None; inscribed.len()];
    for _ in 0..40 {
        let next = openings_at(design, inscribed, directions, &distances);
        let settled = next.iter().zip(&openings).all(|(a, b)| a.differs_by(b) < SETTLED);
        if settled && !openings.is_empty() {
            break;
        }
        openings = next;
        for (i, marks) in inscribed.iter().enumerate() {
            let counter = &design.counters[i];
            // What an opening needs depends on the distance only where the opening itself does.
            let known =
                found[i].filter(|(opening, _)| *opening == openings[i] && opening.kind != WindowKind::RingSector);
            let needs = known.map_or_else(
                || {
                    needed(
                        counter,
                        marks,
                        &openings[i],
                        directions[i].window,
                        distances[i],
                        seat::hub(design, marks.len()),
                    )
                },
                |(_, needs)| needs,
            );
            found[i] = Some((openings[i], needs));
            (distances[i], drivers[i]) = needs;
        }
        share_largest(design, &mut distances, &mut drivers);
        for (i, counter) in design.counters.iter().enumerate() {
            if let Some(asked) = counter.window.distance {
                (distances[i], drivers[i]) = (asked, Driver::Asked);
            } else if let Some(radius) = counter.wheel.radius {
                let reach = radius - counter.wheel.land - scoop_depth(counter.wheel.rim);
                (distances[i], drivers[i]) =
                    (distance_that_reaches(&openings[i], directions[i].window, reach), Driver::Asked);
            }
        }
    }
    radii(design, directions, &openings, &distances, &drivers)
}

fn radii(
    design: &Design,
    directions: &[Direction],
    openings: &[Opening],
    distances: &[f64],
    drivers: &[Driver],
) -> Vec<Fitted> {
    let mut fitted: Vec<Fitted> = Vec::new();
    for (i, counter) in design.counters.iter().enumerate() {
        let far = openings[i].edge(Point::ZERO, directions[i].window, distances[i]).farthest_from(Point::ZERO);
        let radius = counter.wheel.radius.unwrap_or(far + counter.wheel.land + scoop_depth(counter.wheel.rim));
        fitted.push(Fitted {
            window: openings[i],
            distance: distances[i],
            radius,
            rim: counter.wheel.rim,
            driver: drivers[i],
        });
    }
    if design.same_size {
        let free = |i: &usize| design.counters[*i].wheel.radius.is_none();
        let largest = (0..fitted.len()).filter(free).map(|i| fitted[i].radius).fold(0.0, f64::max);
        for i in (0..fitted.len()).filter(free) {
            fitted[i].radius = largest;
        }
    }
    for fit in &mut fitted {
        if let RimKind::Scalloped { count, depth } = fit.rim {
            let count = count.unwrap_or(((TAU * fit.radius / SCOOP).round() as usize).max(8));
            fit.rim = RimKind::Scalloped { count: Some(count), depth };
        }
    }
    fitted
}

/// The openings at the present distances; alike for all wheels that are to be the same size.
fn openings_at(
    design: &Design,
    inscribed: &[Vec<Inscribed>],
    directions: &[Direction],
    distances: &[f64],
) -> Vec<Opening> {
    let mut openings: Vec<Opening> = inscribed
        .iter()
        .enumerate()
        .map(|(i, marks)| {
            let (counter, angle, distance) = (&design.counters[i], directions[i].window, distances[i]);
            let opening = window::smallest(counter, marks, angle, distance);
            window::widened(opening, counter, marks, angle, distance)
        })
        .collect();
    if design.same_size {
        let all = openings.clone();
        for (i, opening) in openings.iter_mut().enumerate() {
            if design.counters[i].window.width.is_some() || design.counters[i].window.height.is_some() {
                continue;
            }
            for (j, other) in all.iter().enumerate() {
                // Upright openings compare as they are; ring sectors only where they look the same way.
                let alike =
                    other.kind == opening.kind && design.counters[i].window.shows == design.counters[j].window.shows;
                if alike && design.counters[i].window.corner == design.counters[j].window.corner {
                    *opening = opening.joined(*other);
                }
            }
        }
    }
    openings
}

fn share_largest(design: &Design, distances: &mut [f64], drivers: &mut [Driver]) {
    if !design.same_size {
        return;
    }
    let free: Vec<usize> = (0..distances.len())
        .filter(|&i| design.counters[i].wheel.radius.is_none() && design.counters[i].window.distance.is_none())
        .collect();
    let Some(&largest) = free.iter().max_by(|&&a, &&b| distances[a].total_cmp(&distances[b])) else {
        return;
    };
    for i in free {
        if i != largest {
            distances[i] = distances[largest];
            drivers[i] = Driver::SameSize(largest);
        }
    }
}

/// The smallest distance such that, there and farther out, every mark is alone in its window and
/// everything keeps clear of the pocket.
fn needed(
    counter: &CounterDesign,
    marks: &[Inscribed],
    opening: &Opening,
    angle: f64,
    distance: f64,
    hub: Hub,
) -> (f64, Driver) {
    let outwards = Vec2::from_angle(angle);
    let wheel = Point::ZERO - distance * outwards;
    let edge = opening.edge(wheel, angle, distance);
    let window = Edges::of_curve(&edge);
    let upright: Vec<Edges> = marks.iter().map(|mark| Edges::of(&mark.shape)).collect();
    let ring = |radius: f64| Edges::of_curve(&Curve::circle(Point::ZERO, radius));
    let (middle, under_marks) = (ring(hub.middle), ring(hub.marks));
    let window_reach = edge.farthest_from(Point::ZERO);
    let mut best = (0.0, Driver::Pocket);

    // The cover needs a web between window and pocket; the wheel's clicks must only not be seen.
    for (taken, radius, keep) in
        [(&middle, hub.middle, WINDOW_TO_POCKET.max(counter.mark.clear)), (&under_marks, hub.marks, counter.mark.clear)]
    {
        push_out(&mut best, &window, outwards, taken, keep, radius + keep + window_reach + 1.0, Driver::WindowPocket);
    }
    let reach = |mark: &Inscribed| {
        let b = mark.shape.bounds();
        b.x0.abs().max(b.x1.abs()).hypot(b.y0.abs().max(b.y1.abs()))
    };
    for (mark, edges) in marks.iter().zip(&upright) {
        let from = hub.marks + MARK_TO_POCKET + reach(mark) + 1.0;
        push_out(&mut best, edges, outwards, &under_marks, MARK_TO_POCKET, from, Driver::Pocket);
    }

    let stops = marks.len();
    let step = TAU / stops as f64;
    let showing_neighbours = window::neighbours_share(&counter.window).is_some();
    for (k, mark) in marks.iter().enumerate() {
        for (offset, turn) in [(1, step), (stops - 1, -step)] {
            let shown = (k + offset) % stops;
            let there = upright[k].moved(&Motion::turn(Point::ZERO, turn));
            let along = Vec2::from_angle(angle + turn) - outwards;
            // Where neighbours may be seen, only the marks themselves must keep apart, and the marks
            // after the neighbours must not be seen.
            let (fixed, keep, fixed_reach) = if showing_neighbours {
                (&upright[shown], counter.mark.clear.max(counter.mark.margin), reach(&marks[shown]))
            } else {
                (&window, counter.mark.clear, window_reach)
            };
            let from = (fixed_reach + reach(mark) + keep + 1.0) / along.hypot();
            push_out(&mut best, &there, along, fixed, keep, from, Driver::Neighbours { mark: k, shown });
            if showing_neighbours && stops > 4 {
                let there = upright[k].moved(&Motion::turn(Point::ZERO, 2.0 * turn));
                let along = Vec2::from_angle(angle + 2.0 * turn) - outwards;
                let from = (window_reach + reach(mark) + counter.mark.clear + 1.0) / along.hypot();
                push_out(
                    &mut best,
                    &there,
                    along,
                    &window,
                    counter.mark.clear,
                    from,
                    Driver::Neighbours { mark: k, shown },
                );
            }
        }
    }
    best
}

/// Raises `best` until `mover`, at `along * distance`, keeps clear of `fixed`; costs one quick look where it does already.
fn push_out(best: &mut (f64, Driver), mover: &Edges, along: Vec2, fixed: &Edges, keep: f64, from: f64, driver: Driver) {
    if best.0 >= from {
        return;
    }
    let here = mover.moved(&Motion::shift(best.0 * along));
    if best.0 > 0.0 && here.nearest_under(fixed, keep).is_none() && !overlapping(&here, fixed) {
        return;
    }
    let distance = mover.last_touch_sliding(along, fixed, keep, from);
    if distance > best.0 {
        *best = (distance, driver);
    }
}

/// Whether the boxes overlap: then one might lie inside the other without their edges being near.
fn overlapping(a: &Edges, b: &Edges) -> bool {
    let both = a.bounds().intersect(b.bounds());
    both.width() > 0.0 && both.height() > 0.0
}

/// The distance at which the opening's farthest corner is `reach` from the wheel's middle.
fn distance_that_reaches(opening: &Opening, angle: f64, reach: f64) -> f64 {
    let far = |distance: f64| opening.edge(Point::ZERO, angle, distance).farthest_from(Point::ZERO);
    let (mut low, mut high) = (0.1, reach.max(0.2));
    while high - low > SETTLED {
        let middle = (low + high) / 2.0;
        if far(middle) > reach { high = middle } else { low = middle }
    }
    low
}

/// Depth of the scoops of a rim.
pub(super) fn scoop_depth(rim: RimKind) -> f64 {
    match rim {
        RimKind::Plain => 0.0,
        RimKind::Scalloped { depth, .. } => depth,
    }
}

/// The rim as a curve.
pub(super) fn rim(centre: Point, radius: f64, kind: RimKind) -> Curve {
    match kind {
        RimKind::Scalloped { count: Some(count), depth } => Curve::scalloped(centre, radius, count, depth),
        _ => Curve::circle(centre, radius),
    }
}

impl Opening {
    /// Largest difference of a measure, in mm.
    fn differs_by(&self, other: &Opening) -> f64 {
        (self.width - other.width).abs().max((self.height - other.height).abs())
    }
}
