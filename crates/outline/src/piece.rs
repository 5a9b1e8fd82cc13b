//! One line or arc made ready for distance questions: the exact nearest points of any two of them.

use crate::Segment;
use crate::motion::Motion;
use kurbo::{Point, Rect, Vec2};

/// A line, or an arc of at most half a circle.
#[derive(Clone, Copy, Debug)]
pub(crate) enum Piece {
    Line { a: Point, b: Point },
    Arc(Arc),
}

/// An arc of at most half a circle: ends, circle, and the middle direction with the cosine of half its sweep.
#[derive(Clone, Copy, Debug)]
pub(crate) struct Arc {
    pub(crate) a: Point,
    pub(crate) b: Point,
    pub(crate) centre: Point,
    pub(crate) radius: f64,
    pub(crate) middle: Vec2,
    pub(crate) half_cos: f64,
    pub(crate) anticlockwise: bool,
}

/// Two points, one on each of two pieces, and their distance squared.
pub(crate) type Pair = (f64, Point, Point);

impl Piece {
    /// From ends and bulge (tangent of a quarter of the sweep).
    pub(crate) fn of_bulge(a: Point, b: Point, bulge: f64) -> Piece {
        let chord = b - a;
        let length = chord.hypot();
        if bulge.abs() < 1e-9 || length <= 0.0 {
            return Piece::Line { a, b };
        }
        let radius = length * (1.0 + bulge * bulge) / (4.0 * bulge.abs());
        // From the chord's middle to the circle's: to the left of the chord for a counter-clockwise arc of less than half a circle.
        let left = Vec2::new(-chord.y, chord.x) / length;
        let off = length * (1.0 - bulge * bulge) / (4.0 * bulge);
        let centre = a.midpoint(b) + off * left;
        let middle = -bulge.signum() * left;
        // cos of half the sweep, from tan of a quarter.
        let half_cos = (1.0 - bulge * bulge) / (1.0 + bulge * bulge);
        Piece::Arc(Arc { a, b, centre, radius, middle, half_cos, anticlockwise: bulge > 0.0 })
    }

    pub(crate) fn segment(&self) -> Segment {
        match self {
            Piece::Line { a, b } => Segment::Line { from: *a, to: *b },
            Piece::Arc(arc) => {
                let start = (arc.a - arc.centre).atan2();
                let turned =
                    (arc.a - arc.centre).cross(arc.b - arc.centre).atan2((arc.a - arc.centre).dot(arc.b - arc.centre));
                let tau = std::f64::consts::TAU;
                let sweep = match (arc.anticlockwise, turned) {
                    (true, t) if t < 0.0 => t + tau,
                    (false, t) if t > 0.0 => t - tau,
                    (_, t) => t,
                };
                Segment::Arc { centre: arc.centre, radius: arc.radius, start, sweep }
            }
        }
    }

    pub(crate) fn ends(&self) -> [Point; 2] {
        match self {
            Piece::Line { a, b } => [*a, *b],
            Piece::Arc(arc) => [arc.a, arc.b],
        }
    }

    pub(crate) fn moved(&self, motion: &Motion) -> Piece {
        match self {
            Piece::Line { a, b } => Piece::Line { a: motion.apply(*a), b: motion.apply(*b) },
            Piece::Arc(arc) => Piece::Arc(Arc {
                a: motion.apply(arc.a),
                b: motion.apply(arc.b),
                centre: motion.apply(arc.centre),
                middle: motion.apply_vec(arc.middle),
                anticlockwise: arc.anticlockwise != motion.is_mirrored(),
                ..*arc
            }),
        }
    }

    pub(crate) fn bounds(&self) -> Rect {
        let [a, b] = self.ends();
        let mut bounds = Rect::from_points(a, b);
        if let Piece::Arc(arc) = self {
            for along in [Vec2::new(1.0, 0.0), Vec2::new(0.0, 1.0), Vec2::new(-1.0, 0.0), Vec2::new(0.0, -1.0)] {
                if arc.faces(along) {
                    bounds = bounds.union_pt(arc.centre + arc.radius * along);
                }
            }
        }
        bounds
    }

    /// The point of the piece nearest to `p`.
    pub(crate) fn nearest_to(&self, p: Point) -> Point {
        match self {
            Piece::Line { a, b } => {
                let along = *b - *a;
                let square = along.hypot2();
                let t = if square > 0.0 { ((p - *a).dot(along) / square).clamp(0.0, 1.0) } else { 0.0 };
                *a + t * along
            }
            Piece::Arc(arc) => {
                let off = p - arc.centre;
                if arc.faces(off) && off.hypot2() > 0.0 {
                    arc.centre + (arc.radius / off.hypot()) * off
                } else if (p - arc.a).hypot2() <= (p - arc.b).hypot2() {
                    arc.a
                } else {
                    arc.b
                }
            }
        }
    }

    pub(crate) fn farthest_from(&self, p: Point) -> f64 {
        let [a, b] = self.ends();
        let ends = (a - p).hypot().max((b - p).hypot());
        match self {
            Piece::Line { .. } => ends,
            Piece::Arc(arc) => {
                let off = arc.centre - p;
                if off.hypot2() > 0.0 && arc.faces(off) {
                    off.hypot() + arc.radius
                } else {
                    ends.max(if off.hypot2() == 0.0 { arc.radius } else { 0.0 })
                }
            }
        }
    }

    /// The nearest points of two pieces: 0 when they cross, else between an end and the other piece, or
    /// where both are square to the line between them.
    pub(crate) fn nearest(&self, other: &Piece) -> Pair {
        let mut best = (f64::INFINITY, Point::ZERO, Point::ZERO);
        let mut offer = |p: Point, q: Point| {
            let square = (p - q).hypot2();
            if square < best.0 {
                best = (square, p, q);
            }
        };
        if let Some(p) = self.crossing(other) {
            return (0.0, p, p);
        }
        for p in self.ends() {
            offer(p, other.nearest_to(p));
        }
        for q in other.ends() {
            offer(self.nearest_to(q), q);
        }
        match (self, other) {
            (Piece::Line { .. }, Piece::Line { .. }) => {}
            (Piece::Line { .. }, Piece::Arc(arc)) => {
                let p = self.nearest_to(arc.centre);
                offer(p, other.nearest_to(p));
            }
            (Piece::Arc(arc), Piece::Line { .. }) => {
                let q = other.nearest_to(arc.centre);
                offer(self.nearest_to(q), q);
            }
            (Piece::Arc(one), Piece::Arc(two)) => {
                let between = two.centre - one.centre;
                let apart = between.hypot();
                if apart > 0.0 {
                    let along = between / apart;
                    for p in [one.centre + one.radius * along, one.centre - one.radius * along] {
                        if one.faces(p - one.centre) {
                            offer(p, other.nearest_to(p));
                        }
                    }
                } else {
                    // Concentric: where both face the same way, if they do anywhere.
                    for along in [one.middle, two.middle] {
                        if one.faces(along) && two.faces(along) {
                            offer(one.centre + one.radius * along, two.centre + two.radius * along);
                        }
                    }
                }
            }
        }
        best
    }

    /// A point where two pieces cross or touch.
    fn crossing(&self, other: &Piece) -> Option<Point> {
        match (self, other) {
            (Piece::Line { a, b }, Piece::Line { a: c, b: d }) => {
                let (one, two, off) = (*b - *a, *d - *c, *c - *a);
                let turn = one.cross(two);
                if turn == 0.0 {
                    return None;
                }
                let (t, u) = (off.cross(two) / turn, off.cross(one) / turn);
                ((0.0..=1.0).contains(&t) && (0.0..=1.0).contains(&u)).then(|| *a + t * one)
            }
            (Piece::Line { a, b }, Piece::Arc(arc)) | (Piece::Arc(arc), Piece::Line { a, b }) => {
                let along = *b - *a;
                let off = *a - arc.centre;
                let (square, half, rest) = (along.hypot2(), off.dot(along), off.hypot2() - arc.radius * arc.radius);
                let root = half * half - square * rest;
                if root < 0.0 || square == 0.0 {
                    return None;
                }
                let root = root.sqrt();
                [(-half - root) / square, (-half + root) / square]
                    .into_iter()
                    .filter(|t| (0.0..=1.0).contains(t))
                    .map(|t| *a + t * along)
                    .find(|p| arc.faces(*p - arc.centre))
            }
            (Piece::Arc(one), Piece::Arc(two)) => {
                let between = two.centre - one.centre;
                let square = between.hypot2();
                if square == 0.0 {
                    return None;
                }
                let along = (one.radius * one.radius - two.radius * two.radius + square) / (2.0 * square);
                let up = one.radius * one.radius / square - along * along;
                if up < 0.0 {
                    return None;
                }
                let (foot, rise) = (one.centre + along * between, up.sqrt() * Vec2::new(-between.y, between.x));
                [foot + rise, foot - rise]
                    .into_iter()
                    .find(|p| one.faces(*p - one.centre) && two.faces(*p - two.centre))
            }
        }
    }
}

impl Arc {
    /// Whether the arc has a point in this direction from its circle's middle.
    pub(crate) fn faces(&self, direction: Vec2) -> bool {
        self.middle.dot(direction) >= self.half_cos * direction.hypot() - 1e-12
    }
}
