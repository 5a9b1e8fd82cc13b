//! The thinnest stroke of a filled shape, and the narrowest gap between its parts.
//!
//! From points along the edge a ray goes straight inwards (or outwards); where it leaves again, the two edges must
//! face each other, within 45 degrees, for their distance to be a stroke. A place beside a sharp tip is not one either: there the
//! area tapers to nothing, which an engraving may do.

use crate::edges::Edges;
use crate::piece::Piece;
use crate::{Curve, Segment, Shape};
use kurbo::{Point, Vec2};

/// A narrow place.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Neck {
    /// How wide it is.
    pub width: f64,
    /// Its middle.
    pub at: Point,
}

/// Rays sent from each piece, at least; and one for each so many radians of an arc.
const RAYS: f64 = 3.0;
const RAY_EVERY: f64 = 0.15;
/// Edges face each other when the cosine between their normals is below this: 45 degrees off opposite.
const FACING: f64 = -std::f64::consts::FRAC_1_SQRT_2;

/// The thinnest place of the filled area.
pub fn narrowest_stroke(shape: &Shape) -> Option<Neck> {
    narrowest(shape, -1.0)
}

/// The narrowest place of the open area between the shape's parts, or across a hole.
pub fn narrowest_gap(shape: &Shape) -> Option<Neck> {
    narrowest(shape, 1.0)
}

/// `side` +1 looks to the right of the way the curves run: out of the filled area; -1 into it.
fn narrowest(shape: &Shape, side: f64) -> Option<Neck> {
    let edges = Edges::of_pieces(shape.loops().iter().flat_map(Curve::pieces).collect());
    let rims = Rims::of(shape, &edges.pieces, side);
    let mut best: Option<Neck> = None;
    for (i, piece) in edges.pieces.iter().enumerate() {
        let rays = match piece.segment() {
            Segment::Arc { sweep, .. } => RAYS.max((sweep.abs() / RAY_EVERY).ceil()),
            Segment::Line { .. } => RAYS,
        };
        for k in 0..rays as usize {
            let (p, along) = piece.at((k as f64 + 0.5) / rays);
            let ray = side * Vec2::new(along.y, -along.x);
            let limit = best.map_or(f64::INFINITY, |neck| neck.width);
            if let Some((t, normal, j)) = first_hit(&edges, i, p, ray, limit, side)
                && normal.dot(ray) < FACING
                && !rims.beside_tip(i, j, t)
            {
                best = Some(Neck { width: t, at: p + 0.5 * t * ray });
            }
        }
    }
    best
}

/// Corners that turn by more than this are tips: an angle of less than 75 degrees is left between their sides.
const TIP: f64 = 105.0 * std::f64::consts::PI / 180.0;
/// Beside a tip of angle a the way round it is 1 / sin(a/2) times as long as the area is wide; this much more is still beside it.
const BESIDE: f64 = 1.5;

/// How the pieces follow each other round their curves.
struct Rims {
    pieces: Vec<Follows>,
}

/// One piece: the first and the number of the pieces of its curve, its length, and how far a tip that follows it
/// reaches, in widths; 0 without a tip.
struct Follows {
    first: usize,
    count: usize,
    length: f64,
    tip_reach: f64,
}

impl Rims {
    fn of(shape: &Shape, pieces: &[Piece], side: f64) -> Rims {
        let mut all = Vec::with_capacity(pieces.len());
        let mut first = 0;
        for curve in shape.loops() {
            let count = curve.pieces().count();
            for k in 0..count {
                let (here, next) = (&pieces[first + k], &pieces[first + (k + 1) % count]);
                let (out, on) = (here.at(1.0).1, next.at(0.0).1);
                // The filled area lies to the left: its tips turn left, those of the open area right.
                let turn = -side * out.cross(on).atan2(out.dot(on));
                let tip_reach = if turn > TIP { BESIDE / (turn / 2.0).cos().max(0.05) } else { 0.0 };
                all.push(Follows { first, count, length: here.segment().length(), tip_reach });
            }
            first += count;
        }
        Rims { pieces: all }
    }

    /// Whether a place of this width between two pieces lies beside a tip.
    fn beside_tip(&self, one: usize, other: usize, width: f64) -> bool {
        let Follows { first, count, .. } = self.pieces[one];
        if self.pieces[other].first != first {
            return false;
        }
        let passes = |from: usize, to: usize| {
            let (mut k, mut length) = (from, 0.0);
            while k != to {
                if length < self.pieces[k].tip_reach * width {
                    return true;
                }
                k = first + (k - first + 1) % count;
                length += self.pieces[k].length;
            }
            false
        };
        passes(one, other) || passes(other, one)
    }
}

/// Distance along a ray to the first other edge, that edge's own normal on the ray's side, and which piece it is.
fn first_hit(edges: &Edges, skip: usize, p: Point, ray: Vec2, limit: f64, side: f64) -> Option<(f64, Vec2, usize)> {
    let mut best: Option<(f64, Vec2, usize)> = None;
    for (j, piece) in edges.pieces.iter().enumerate() {
        let mut offer = |t: f64, q: Point| {
            // The ray starts on piece `skip`: only a far hit on that same piece counts.
            let floor = if j == skip { 1e-6 } else { 1e-9 };
            if t > floor && t < best.map_or(limit, |b| b.0) {
                let along = piece.along(q);
                best = Some((t, side * Vec2::new(along.y, -along.x), j));
            }
        };
        match piece {
            Piece::Line { a, b } => {
                let (along, to) = (*b - *a, *a - p);
                let turn = ray.cross(along);
                if turn != 0.0 {
                    let u = to.cross(ray) / turn;
                    if (0.0..=1.0).contains(&u) {
                        offer(to.cross(along) / turn, *a + u * along);
                    }
                }
            }
            Piece::Arc(arc) => {
                let to = arc.centre - p;
                let middle = ray.dot(to);
                let root = middle * middle - to.hypot2() + arc.radius * arc.radius;
                if root >= 0.0 {
                    for t in [middle - root.sqrt(), middle + root.sqrt()] {
                        let q = p + t * ray;
                        if arc.faces(q - arc.centre) {
                            offer(t, q);
                        }
                    }
                }
            }
        }
    }
    best
}

impl Piece {
    /// The point at a share of the piece, and the unit direction it runs in there.
    fn at(&self, share: f64) -> (Point, Vec2) {
        match self {
            Piece::Line { a, b } => (a.lerp(*b, share), crate::curve::unit(*b - *a)),
            Piece::Arc(_) => {
                let p = self.segment().point_at(share);
                (p, self.along(p))
            }
        }
    }

    /// The unit direction in which the piece runs at one of its points.
    fn along(&self, p: Point) -> Vec2 {
        match self {
            Piece::Line { a, b } => crate::curve::unit(*b - *a),
            Piece::Arc(arc) => {
                let out = crate::curve::unit(p - arc.centre);
                let along = Vec2::new(-out.y, out.x);
                if arc.anticlockwise { along } else { -along }
            }
        }
    }
}
