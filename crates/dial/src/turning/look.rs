//! One wheel turned through its stops: what is seen in the window, and how near everything is.

use super::slack;
use super::{Fault, Other, Stop, WheelTurns};
use crate::assembled::{Mark, Wheel};
use crate::design::Running;
use crate::layout;
use outline::{Curve, Edges, Motion, Nearest, Point, Shape, Vec2};

/// Margins are kept when they are within this of what was asked: a hundredth of what the beam can place.
const NEAR: f64 = 1e-3;
/// A mark that leans more than this from upright looks crooked (our own proposal).
pub(super) const LEAN: f64 = 8.0 * std::f64::consts::PI / 180.0;

/// A wheel made ready for turning.
pub(super) struct Turned<'a> {
    pub(super) wheel: &'a Wheel,
    pub(super) window: Edges,
    pub(super) marks: Vec<Ready>,
    /// Distance of the window from what does not change as the wheel turns.
    pub(super) still: Vec<(Other, f64)>,
}

/// A mark made ready: its edges, and a circle round it for quick looks.
pub(super) struct Ready {
    pub(super) edges: Edges,
    pub(super) middle: Point,
    pub(super) reach: f64,
}

impl<'a> Turned<'a> {
    fn of(wheel: &'a Wheel) -> Turned<'a> {
        let window = Edges::of_curve(&wheel.window.edge);
        let marks = wheel.marks.iter().map(Ready::of).collect();
        let still = vec![(Other::Pocket, pocket_distance(wheel, &window)), (Other::Rim, rim_distance(wheel))];
        Turned { wheel, window, marks, still }
    }

    /// The motion that turns the wheel to stop `k`.
    pub(super) fn motion(&self, k: usize) -> Motion {
        Motion::turn(self.wheel.centre, self.wheel.turned_to(k))
    }
}

impl Ready {
    fn of(mark: &Mark) -> Ready {
        let edges = Edges::of(&mark.shape);
        let bounds = edges.bounds();
        Ready { edges, middle: bounds.center(), reach: bounds.size().to_vec2().hypot() / 2.0 }
    }
}

/// The pocket with all that is about it: caps, washer. Clicks lie away from the window at every stop only by the layout's grace, so
/// they count as well.
fn pocket_distance(wheel: &Wheel, window: &Edges) -> f64 {
    let hub = Curve::circle(wheel.pocket.centre, wheel.hub());
    let inside = wheel.window.edge.contains(wheel.pocket.centre)
        || (wheel.window.edge.nearest_to(wheel.pocket.centre) < wheel.hub());
    if inside { 0.0 } else { window.nearest(&Edges::of_curve(&hub)).distance }
}

/// The rim turns too: what counts is its lowest place, which passes every window sooner or later.
fn rim_distance(wheel: &Wheel) -> f64 {
    let lowest = wheel.rim.nearest_to(wheel.centre);
    (lowest - wheel.window.edge.farthest_from(wheel.centre)).max(0.0)
}

/// Turns one wheel through all its stops.
pub(super) fn wheel(wheel: &Wheel) -> WheelTurns {
    let turned = Turned::of(wheel);
    let stops: Vec<Stop> = (0..wheel.marks.len()).map(|k| stop(&turned, k)).collect();
    WheelTurns { name: wheel.name.clone(), next_from: comes_from(&turned, 0), stops }
}

fn stop(turned: &Turned, k: usize) -> Stop {
    let wheel = turned.wheel;
    let motion = turned.motion(k);
    let here = turned.marks[k].edges.moved(&motion);
    let shown = Shown::of(turned, k, &motion, &here);
    let (other, other_distance) = nearest_other(turned, k, &motion);
    let up = motion.apply_vec(wheel.marks[k].up);
    let lean = up.x.atan2(up.y).abs();
    let in_order = runs_as_asked(turned, k);
    let mut faults = Vec::new();
    if shown.seen < 1.0 {
        faults.push(Fault::NotWhole);
    } else if shown.margin < wheel.asked.margin - NEAR {
        faults.push(Fault::Tight);
    }
    if other_distance <= 0.0 {
        faults.push(Fault::NotAlone(other.clone()));
    } else if other_distance < asked_of(&other, wheel) - NEAR {
        faults.push(Fault::Close(other.clone()));
    }
    if lean > LEAN {
        faults.push(Fault::Leans);
    }
    if !in_order {
        faults.push(Fault::OutOfOrder);
    }
    if wheel.asked.neighbours.is_some_and(|share| neighbour_seen(turned, k) < share - NEAR) {
        faults.push(Fault::NeighbourHidden);
    }
    let fails = shown.seen < 1.0 || other_distance <= 0.0 || lean > LEAN;
    let slack_angle = if fails { 0.0 } else { slack::angle(turned, k, &motion, &here, lean) };
    let slack_drift = if fails { 0.0 } else { shown.margin.min(other_distance) };
    Stop {
        words: wheel.marks[k].words.clone(),
        seen: shown.seen,
        margin: shown.margin,
        margin_at: shown.at,
        other,
        other_distance,
        lean,
        in_order,
        slack_angle,
        slack_drift,
        faults,
    }
}

/// The rim need only not be seen; marks and pocket keep the asked distance.
fn asked_of(other: &Other, wheel: &Wheel) -> f64 {
    match other {
        Other::Rim => 0.0,
        Other::Mark(_) | Other::Pocket => wheel.asked.clear,
    }
}

/// How a mark stands in its window.
struct Shown {
    seen: f64,
    margin: f64,
    at: Point,
}

impl Shown {
    fn of(turned: &Turned, k: usize, motion: &Motion, here: &Edges) -> Shown {
        let Nearest { distance, on_other, .. } = here.nearest(&turned.window);
        let edge = &turned.wheel.window.edge;
        let crosses = distance <= 0.0;
        let within = !crosses && wholly_within(edge, &turned.wheel.marks[k].shape, motion);
        if within {
            return Shown { seen: 1.0, margin: distance, at: on_other };
        }
        let mark = turned.wheel.marks[k].shape.moved(motion);
        let seen = mark.common(&Shape::from(edge.clone())).area() / mark.area();
        // A mark that only touches the edge is seen whole to the last digit, and still not whole.
        Shown { seen: seen.min(1.0 - f64::EPSILON), margin: if crosses { 0.0 } else { -distance }, at: on_other }
    }
}

/// Whether every loop of a shape that does not cross `edge` lies inside it.
fn wholly_within(edge: &Curve, shape: &Shape, motion: &Motion) -> bool {
    shape.loops().iter().all(|one| one.segments().first().is_none_or(|piece| edge.contains(motion.apply(piece.from()))))
}

/// The nearest thing that should not be seen, and its distance from the window's edge; 0 when it is seen.
fn nearest_other(turned: &Turned, k: usize, motion: &Motion) -> (Other, f64) {
    let mut nearest = (Other::Rim, f64::INFINITY);
    for (other, distance) in &turned.still {
        if *distance < nearest.1 {
            nearest = (other.clone(), *distance);
        }
    }
    for j in unwanted(turned, k) {
        let mark = &turned.marks[j];
        let middle = motion.apply(mark.middle);
        if circle_distance(turned, middle, mark.reach) >= nearest.1 {
            continue;
        }
        let there = mark.edges.moved(motion);
        let seen = turned.wheel.window.edge.contains(middle)
            || turned.wheel.marks[j].shape.loops().iter().any(|one| {
                one.segments().first().is_some_and(|p| turned.wheel.window.edge.contains(motion.apply(p.from())))
            });
        let distance = if seen { 0.0 } else { there.nearest(&turned.window).distance };
        if distance < nearest.1 {
            nearest = (Other::Mark(j), distance);
        }
    }
    nearest
}

/// A lower bound for the distance from the window's box to a circle.
pub(super) fn circle_distance(turned: &Turned, middle: Point, reach: f64) -> f64 {
    let b = turned.window.bounds();
    let dx = (b.x0 - middle.x).max(middle.x - b.x1).max(0.0);
    let dy = (b.y0 - middle.y).max(middle.y - b.y1).max(0.0);
    dx.hypot(dy) - reach
}

/// Stops whose marks must not be seen at stop `k`: all others, or all but the two neighbours where these may be seen.
pub(super) fn unwanted(turned: &Turned, k: usize) -> impl Iterator<Item = usize> {
    let stops = turned.marks.len();
    let neighbours = turned.wheel.asked.neighbours.is_some();
    (0..stops).filter(move |&j| {
        let apart = (j + stops - k) % stops;
        j != k && !(neighbours && (apart == 1 || apart == stops - 1))
    })
}

/// The smaller share of width, along the way the marks travel, that is seen of the two neighbours.
fn neighbour_seen(turned: &Turned, k: usize) -> f64 {
    let stops = turned.marks.len();
    let window = Shape::from(turned.wheel.window.edge.clone());
    let travel = Vec2::from_angle(turned.wheel.window.angle + std::f64::consts::FRAC_PI_2);
    let width = |shape: &Shape| {
        let size = shape.bounds().size();
        if travel.x.abs() > travel.y.abs() { size.width } else { size.height }
    };
    [(k + 1) % stops, (k + stops - 1) % stops]
        .into_iter()
        .map(|j| {
            let there = turned.wheel.marks[j].shape.moved(&turned.motion(k));
            let seen = there.common(&window);
            if seen.is_empty() { 0.0 } else { width(&seen) / width(&there) }
        })
        .fold(f64::INFINITY, f64::min)
}

/// The side of the window from which the next mark of the sequence comes in when stop `k` is shown and the wheel is turned to count up.
fn comes_from(turned: &Turned, k: usize) -> Vec2 {
    let wheel = turned.wheel;
    let anticlockwise = Vec2::from_angle(wheel.window.angle + std::f64::consts::FRAC_PI_2);
    // Two stops lie opposite each other: only the way the wheel turns tells.
    if wheel.marks.len() < 3 {
        return -wheel.counts_up.sign() * anticlockwise;
    }
    let next = (k + 1) % wheel.marks.len();
    let seat = |j: usize| turned.marks[j].middle - wheel.centre;
    seat(k).cross(seat(next)).signum() * anticlockwise
}

/// Whether the next mark lies where the asked running puts it, measured on the marks as they lie.
fn runs_as_asked(turned: &Turned, k: usize) -> bool {
    let wheel = turned.wheel;
    let from = comes_from(turned, k);
    let alike = || from.dot(layout::next_from(wheel.window.angle)) > 0.0;
    // A mark that comes in from the anticlockwise side lies there.
    let anticlockwise = Vec2::from_angle(wheel.window.angle).cross(from) > 0.0;
    match wheel.asked.running {
        Running::Alike => alike(),
        Running::AlikeReversed => !alike(),
        Running::NumbersClockwise => !anticlockwise,
        Running::TurnClockwise => anticlockwise,
    }
}
