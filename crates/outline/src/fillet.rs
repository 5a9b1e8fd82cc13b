//! Chosen corners of a curve rounded: a circle of the asked radius that touches both sides.

use crate::curve::unit;
use crate::{Curve, Segment, Shape};
use kurbo::{Point, Vec2};

/// Corners that turn by less than this are smooth already: one degree.
const SMOOTH: f64 = 0.017;

impl Shape {
    /// Rounds the convex corners that `chosen` picks. A corner whose sides are too short for the radius stays as it is.
    pub fn corners_rounded_where(&self, radius: f64, chosen: impl Fn(Point) -> bool) -> Shape {
        Shape { loops: self.loops.iter().map(|one| one.corners_rounded_where(radius, &chosen)).collect() }
    }
}

impl Curve {
    fn corners_rounded_where(&self, radius: f64, chosen: &impl Fn(Point) -> bool) -> Curve {
        let mut segments = self.segments();
        let mut at = 0;
        // Each rounded corner puts one more piece between its two sides.
        while at < segments.len() && radius > 0.0 {
            let next = (at + 1) % segments.len();
            let corner = segments[at].to();
            let turns_left = direction(&segments[at], 1.0).cross(direction(&segments[next], 0.0)) > SMOOTH;
            if turns_left
                && chosen(corner)
                && let Some((before, round, after)) = fillet(&segments[at], &segments[next], radius)
            {
                segments[at] = before;
                segments[next] = after;
                segments.insert(at + 1, round);
                at += 1;
            }
            at += 1;
        }
        Curve::from_segments(&segments).unwrap_or_else(|_| self.clone())
    }
}

/// Two sides that meet in a corner, trimmed, and the arc between them.
fn fillet(before: &Segment, after: &Segment, radius: f64) -> Option<(Segment, Segment, Segment)> {
    let corner = before.to();
    let centres = meeting(&Inner::of(before, radius)?, &Inner::of(after, radius)?);
    let centre = centres.into_iter().min_by(|a, b| (*a - corner).hypot2().total_cmp(&(*b - corner).hypot2()))?;
    let (from, to) = (foot(before, centre), foot(after, centre));
    let before = ending_at(before, from)?;
    let after = starting_at(after, to)?;
    let (out, on) = (from - centre, to - centre);
    let sweep = out.cross(on).atan2(out.dot(on));
    (sweep > 0.0).then(|| (before, Segment::Arc { centre, radius, start: out.atan2(), sweep }, after))
}

/// A side moved inwards (to the left) by the radius: where the middle of a touching circle lies.
enum Inner {
    Line(Point, Vec2),
    Circle(Point, f64),
}

impl Inner {
    fn of(side: &Segment, radius: f64) -> Option<Inner> {
        match *side {
            Segment::Line { from, to } => {
                let along = unit(to - from);
                Some(Inner::Line(from + radius * Vec2::new(-along.y, along.x), along))
            }
            Segment::Arc { centre, radius: own, sweep, .. } => {
                let inner = if sweep > 0.0 { own - radius } else { own + radius };
                (inner > 0.0).then_some(Inner::Circle(centre, inner))
            }
        }
    }
}

/// Where two lines or circles meet.
fn meeting(one: &Inner, other: &Inner) -> Vec<Point> {
    match (one, other) {
        (Inner::Line(p, along), Inner::Line(q, other)) => {
            let turn = along.cross(*other);
            if turn.abs() < 1e-12 { Vec::new() } else { vec![*p + ((*q - *p).cross(*other) / turn) * *along] }
        }
        (Inner::Line(p, along), Inner::Circle(centre, radius))
        | (Inner::Circle(centre, radius), Inner::Line(p, along)) => {
            let middle = (*centre - *p).dot(*along);
            let foot = *p + middle * *along;
            let rest = radius * radius - (foot - *centre).hypot2();
            if rest < 0.0 { Vec::new() } else { vec![foot + rest.sqrt() * *along, foot - rest.sqrt() * *along] }
        }
        (Inner::Circle(a, ra), Inner::Circle(b, rb)) => {
            let between = *b - *a;
            let square = between.hypot2();
            if square == 0.0 {
                return Vec::new();
            }
            let share = (ra * ra - rb * rb + square) / (2.0 * square);
            let rise = ra * ra / square - share * share;
            if rise < 0.0 {
                return Vec::new();
            }
            let up = rise.sqrt() * Vec2::new(-between.y, between.x);
            vec![*a + share * between + up, *a + share * between - up]
        }
    }
}

/// The point of a side's line or circle nearest to `p`.
fn foot(side: &Segment, p: Point) -> Point {
    match *side {
        Segment::Line { from, to } => {
            let along = unit(to - from);
            from + (p - from).dot(along) * along
        }
        Segment::Arc { centre, radius, .. } => centre + radius * unit(p - centre),
    }
}

/// The side up to one of its points; `None` if the point is not on it.
fn ending_at(side: &Segment, p: Point) -> Option<Segment> {
    match *side {
        Segment::Line { from, to } => {
            let (along, length) = (unit(to - from), (to - from).hypot());
            let share = (p - from).dot(along) / length;
            (share > 1e-9 && share < 1.0).then_some(Segment::Line { from, to: p })
        }
        Segment::Arc { centre, radius, start, sweep } => {
            let turned = (sweep.signum() * ((p - centre).atan2() - start)).rem_euclid(std::f64::consts::TAU);
            (turned > 1e-9 && turned < sweep.abs()).then_some(Segment::Arc {
                centre,
                radius,
                start,
                sweep: sweep.signum() * turned,
            })
        }
    }
}

/// The side from one of its points on.
fn starting_at(side: &Segment, p: Point) -> Option<Segment> {
    Some(reversed(&ending_at(&reversed(side), p)?))
}

fn reversed(side: &Segment) -> Segment {
    match *side {
        Segment::Line { from, to } => Segment::Line { from: to, to: from },
        Segment::Arc { centre, radius, start, sweep } => {
            Segment::Arc { centre, radius, start: start + sweep, sweep: -sweep }
        }
    }
}

/// Unit direction of travel at the start (0) or end (1) of a side.
fn direction(side: &Segment, t: f64) -> Vec2 {
    match *side {
        Segment::Line { from, to } => unit(to - from),
        Segment::Arc { start, sweep, .. } => {
            let out = Vec2::from_angle(start + t * sweep);
            sweep.signum() * Vec2::new(-out.y, out.x)
        }
    }
}
