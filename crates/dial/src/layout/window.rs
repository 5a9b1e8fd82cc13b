//! The window: the smallest opening in which every mark stands whole with the asked margin.

use super::marks::{Inscribed, around};
use crate::assembled::Window;
use crate::design::{CounterDesign, Shows, WindowDesign, WindowKind};
use outline::{Curve, Edges, Motion, Point, Shape, Vec2};

/// Size of a window, not yet placed.
#[derive(Clone, Copy, Debug, PartialEq)]
pub(super) struct Opening {
    pub(super) kind: WindowKind,
    pub(super) width: f64,
    pub(super) height: f64,
    pub(super) corner: f64,
}

/// How near to the asked margin a derived window is brought.
const NEAR: f64 = 1e-6;

pub(super) fn neighbours_share(window: &WindowDesign) -> Option<f64> {
    match window.shows {
        Shows::OneMark => None,
        Shows::Neighbours(share) => Some(share),
    }
}

impl Opening {
    /// The edge of the opening for a wheel about `wheel`, the marks standing `distance` from there in direction `angle`.
    pub(super) fn edge(&self, wheel: Point, angle: f64, distance: f64) -> Curve {
        let centre = wheel + distance * Vec2::from_angle(angle);
        match self.kind {
            WindowKind::RoundedRectangle => Curve::rounded_rectangle(centre, self.width, self.height, self.corner),
            WindowKind::Round => Curve::circle(centre, self.width / 2.0),
            WindowKind::RingSector => {
                let inner = (distance - self.height / 2.0).max(0.01 * distance);
                let half_angle = (self.width / 2.0 / distance).min(std::f64::consts::FRAC_PI_2);
                Curve::ring_sector(wheel, inner, distance + self.height / 2.0, angle, half_angle, self.corner)
            }
        }
    }

    /// The opening as a part of the assembled dial.
    pub(super) fn built(&self, wheel: Point, angle: f64, distance: f64) -> Window {
        Window {
            kind: self.kind,
            centre: wheel + distance * Vec2::from_angle(angle),
            angle,
            distance,
            width: self.width,
            height: self.height,
            corner: self.corner,
            edge: self.edge(wheel, angle, distance),
        }
    }

    /// The larger of two openings, side by side.
    pub(super) fn joined(self, other: Opening) -> Opening {
        Opening {
            width: self.width.max(other.width),
            height: self.height.max(other.height),
            corner: self.corner.min(other.corner),
            ..self
        }
    }
}

/// The smallest opening for the marks of a counter, with whatever the maker asked for put in its place.
/// A ring sector depends on where it stands; `angle` and `distance` say where.
pub(super) fn smallest(counter: &CounterDesign, marks: &[Inscribed], angle: f64, distance: f64) -> Opening {
    let margin = counter.mark.margin;
    let mut opening = match counter.window.kind {
        WindowKind::RoundedRectangle => rectangle(counter, marks),
        WindowKind::Round => {
            let shapes: Vec<&Shape> = marks.iter().map(|mark| &mark.shape).collect();
            let across = 2.0 * (outline::enclosing_radius(&shapes, Point::ZERO) + margin);
            Opening { kind: WindowKind::Round, width: across, height: across, corner: across / 2.0 }
        }
        WindowKind::RingSector => sector(counter, marks, angle, distance),
    };
    opening = pushed_out(opening, counter, marks, angle, distance);
    opening.width = counter.window.width.unwrap_or(opening.width);
    opening.height = counter.window.height.unwrap_or(opening.height);
    if opening.kind == WindowKind::Round {
        opening.height = opening.width;
    }
    opening
}

/// The box of the marks grown by the margin.
fn rectangle(counter: &CounterDesign, marks: &[Inscribed]) -> Opening {
    let margin = counter.mark.margin;
    let size = around(marks).size();
    Opening {
        kind: WindowKind::RoundedRectangle,
        width: size.width + 2.0 * margin,
        height: size.height + 2.0 * margin,
        corner: counter.window.corner.unwrap_or(margin),
    }
}

/// Corners no rounder than the margin take nothing from it: the opening is the union of discs of that radius. Rounder
/// ones push the sides out until the outlines themselves keep the margin.
fn pushed_out(opening: Opening, counter: &CounterDesign, marks: &[Inscribed], angle: f64, distance: f64) -> Opening {
    let margin = counter.mark.margin;
    if opening.kind == WindowKind::Round || opening.corner <= margin {
        return opening;
    }
    let grown = |by: f64| Opening { width: opening.width + 2.0 * by, height: opening.height + 2.0 * by, ..opening };
    let wheel = Point::ZERO - distance * Vec2::from_angle(angle);
    let edges: Vec<Edges> = marks.iter().map(|mark| Edges::of(&mark.shape)).collect();
    let keeps = |by: f64| {
        let curve = grown(by).edge(wheel, angle, distance);
        let edge = Edges::of_curve(&curve);
        marks
            .iter()
            .zip(&edges)
            .all(|(mark, edges)| inside(&curve, &mark.shape) && edges.nearest_under(&edge, margin - NEAR).is_none())
    };
    // With the sides pushed out by the whole radius the corners no longer matter.
    let (mut low, mut high) = (0.0, opening.corner);
    while high - low > NEAR {
        let middle = (low + high) / 2.0;
        if keeps(middle) { high = middle } else { low = middle }
    }
    grown(high)
}

/// Whether a shape lies inside a curve that it does not cross: one point of each of its loops tells.
fn inside(curve: &Curve, shape: &Shape) -> bool {
    shape.loops().iter().all(|one| one.segments().first().is_none_or(|piece| curve.contains(piece.from())))
}

/// A ring sector about the wheel's middle: arcs at the marks' nearest and farthest points, sides through the middle.
fn sector(counter: &CounterDesign, marks: &[Inscribed], angle: f64, distance: f64) -> Opening {
    let margin = counter.mark.margin;
    let place = Motion::shift(distance * Vec2::from_angle(angle));
    let placed: Vec<Shape> = marks.iter().map(|mark| mark.shape.moved(&place)).collect();
    let mut reach: f64 = 0.0;
    let mut half_angle: f64 = 0.0;
    for shape in &placed {
        for curve in shape.loops() {
            let (near, far) = (curve.nearest_to(Point::ZERO), curve.farthest_from(Point::ZERO));
            reach = reach.max(far - distance).max(distance - near);
            half_angle = half_angle.max(half_angle_of(&curve.segments(), angle, margin));
        }
    }
    Opening {
        kind: WindowKind::RingSector,
        width: 2.0 * half_angle * distance,
        height: 2.0 * (reach + margin),
        corner: counter.window.corner.unwrap_or(margin),
    }
}

/// The half angle that keeps every point of these pieces `margin` away from the sides: |p| sin(half - θ) >= margin.
fn half_angle_of(pieces: &[outline::Segment], angle: f64, margin: f64) -> f64 {
    /// Points along one piece; the pieces of a glyph are short, so that the chord error stays far below a micron.
    const POINTS: usize = 8;
    let axis = Vec2::from_angle(angle);
    let mut widest: f64 = 0.0;
    for piece in pieces {
        for step in 0..=POINTS {
            let p = piece.point_at(step as f64 / POINTS as f64).to_vec2();
            let off = axis.cross(p).atan2(axis.dot(p)).abs();
            widest = widest.max(off + (margin / p.hypot()).min(1.0).asin());
        }
    }
    widest
}

/// Widens an opening along the way the marks travel until at least the asked share of the width of each neighbour is seen.
pub(super) fn widened(
    opening: Opening,
    counter: &CounterDesign,
    marks: &[Inscribed],
    angle: f64,
    distance: f64,
) -> Opening {
    let Some(share) = neighbours_share(&counter.window) else {
        return opening;
    };
    let neighbours = Neighbours::of(marks, angle, distance);
    let sized = |along: f64| match opening.kind {
        WindowKind::RoundedRectangle if !neighbours.sideways => {
            Opening { height: counter.window.height.unwrap_or(along), ..opening }
        }
        WindowKind::Round => {
            let across = counter.window.width.unwrap_or(along);
            Opening { width: across, height: across, ..opening }
        }
        _ => Opening { width: counter.window.width.unwrap_or(along), ..opening },
    };
    let least = match opening.kind {
        WindowKind::RoundedRectangle if !neighbours.sideways => opening.height,
        _ => opening.width,
    };
    let most = least + 4.0 * neighbours.reach;
    // The mark that asks for most decides. Each is tried at what those before it asked for, and most are content; halving
    // always begins from the same ends, so that the order of the marks does not matter.
    sized(neighbours.shapes.iter().fold(least, |along, shape| {
        let content = |along: f64| neighbours.seen(shape, &sized(along), share);
        if content(along) { along } else { halved(least, most, content) }
    }))
}

/// The least length between two that will do, to within `WIDTH` above it; the larger one is taken to do.
fn halved(mut low: f64, mut high: f64, will_do: impl Fn(f64) -> bool) -> f64 {
    while high - low > WIDTH {
        let middle = (low + high) / 2.0;
        if will_do(middle) { high = middle } else { low = middle }
    }
    high
}

/// A window that shows the neighbours is brought this near to the asked share, in mm.
const WIDTH: f64 = 1e-3;

/// The marks where they lie one stop before and after their own.
struct Neighbours {
    shapes: Vec<Shape>,
    sideways: bool,
    reach: f64,
    wheel: Point,
    angle: f64,
    distance: f64,
}

impl Neighbours {
    fn of(marks: &[Inscribed], angle: f64, distance: f64) -> Neighbours {
        let step = std::f64::consts::TAU / marks.len() as f64;
        let travel = Vec2::from_angle(angle + std::f64::consts::FRAC_PI_2);
        let wheel = Point::ZERO - distance * Vec2::from_angle(angle);
        let turned = |turn: f64| marks.iter().map(move |mark| mark.shape.moved(&Motion::turn(wheel, turn)));
        let shapes: Vec<Shape> = turned(step).chain(turned(-step)).collect();
        let reach = outline::enclosing_radius(&shapes.iter().collect::<Vec<_>>(), Point::ZERO);
        Neighbours { shapes, sideways: travel.x.abs() > travel.y.abs(), reach, wheel, angle, distance }
    }

    /// Whether at least this share of the width of one is seen.
    fn seen(&self, shape: &Shape, opening: &Opening, share: f64) -> bool {
        let window = Shape::from(opening.edge(self.wheel, self.angle, self.distance));
        let width = |shape: &Shape| {
            if self.sideways { shape.bounds().width() } else { shape.bounds().height() }
        };
        let seen = shape.common(&window);
        !seen.is_empty() && width(&seen) >= share * width(shape)
    }
}
