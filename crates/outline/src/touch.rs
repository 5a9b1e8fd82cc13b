//! When a moving outline comes to touch a fixed one.
//!
//! Conservative advancement (Mirtich 1996, "Impulse-based dynamic simulation", ch. 2): a piece at distance d whose points
//! travel at most v per unit of motion may be moved by d / v without harm; repeated, this comes to the
//! first touch from the safe side. Pieces are advanced one by one in the order of a lower bound, so that
//! only a few of them are.

use crate::edges::{Edges, square_between};
use crate::motion::Motion;
use crate::piece::Piece;
use kurbo::{Point, Vec2};

/// A way to turn.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
#[expect(missing_docs, reason = "the names say it")]
pub enum Turn {
    Anticlockwise,
    Clockwise,
}

/// The first touch of a turning outline.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Touch {
    /// Angle turned until then, in radians, not negative.
    pub angle: f64,
    /// Where they touch.
    pub at: Point,
}

/// A distance that counts as touching, in mm.
const TOUCHING: f64 = 1e-7;
/// Steps after which a piece that creeps along an edge counts as touching it: it is within microns by then.
const STEPS: usize = 2000;

impl Edges {
    /// The smallest angle in 0 to `limit` by which these outlines, turned about `about`, come to touch
    /// `fixed`; `None` if they do not. Within 1e-7 mm of contact, from the safe side; where the way grazes `fixed`, within 1e-4 mm.
    pub fn first_touch_turning(&self, about: Point, fixed: &Edges, way: Turn, limit: f64) -> Option<Touch> {
        let sign = match way {
            Turn::Anticlockwise => 1.0,
            Turn::Clockwise => -1.0,
        };
        let mut order: Vec<(f64, f64, usize)> = Vec::with_capacity(self.pieces.len());
        for (i, piece) in self.pieces.iter().enumerate() {
            let reach = piece.farthest_from(about);
            let bound = square_between(&self.boxes[i], &fixed.bounds).sqrt() / reach;
            if bound < limit {
                order.push((bound, reach, i));
            }
        }
        order.sort_by(|a, b| a.0.total_cmp(&b.0));
        let mut best: Option<Touch> = None;
        let mut farthest = limit;
        for (bound, reach, i) in order {
            if bound >= farthest {
                break;
            }
            let mut angle = 0.0;
            for step in 0..=STEPS {
                let here = self.pieces[i].moved(&Motion::turn(about, sign * angle));
                let (distance, at) = nearest_to_piece(&here, fixed, (farthest - angle) * reach);
                if distance <= TOUCHING || step == STEPS {
                    best = Some(Touch { angle, at });
                    farthest = angle;
                    break;
                }
                angle += distance / reach;
                if angle >= farthest {
                    break;
                }
            }
        }
        best
    }

    /// These outlines stand at `direction * s`. Coming from `from`, where they are farther than `keep`
    /// from `fixed`, down to smaller s: the largest s at which they are `keep` away, within 1e-7 mm;
    /// minus infinity if they never are.
    pub fn last_touch_sliding(&self, direction: Vec2, fixed: &Edges, keep: f64, from: f64) -> f64 {
        let speed = direction.hypot();
        let mut best = f64::NEG_INFINITY;
        // Beyond this they have passed each other.
        let passed = -(reach(self) + reach(fixed) + keep) / speed;
        for piece in &self.pieces {
            let mut s = from;
            for step in 0..=STEPS {
                let here = piece.moved(&Motion::shift(s * direction));
                let (distance, _) = nearest_to_piece(&here, fixed, f64::INFINITY);
                if distance - keep <= TOUCHING || step == STEPS {
                    best = s;
                    break;
                }
                s -= (distance - keep) / speed;
                if s <= best || s < passed {
                    break;
                }
            }
        }
        best
    }
}

/// Distance of one piece from outlines, and where; pieces beyond `limit` need not be looked at.
fn nearest_to_piece(piece: &Piece, fixed: &Edges, limit: f64) -> (f64, Point) {
    let around = piece.bounds();
    let mut best = (limit * limit, Point::ZERO);
    for (other, its_box) in fixed.pieces.iter().zip(&fixed.boxes) {
        if square_between(&around, its_box) < best.0 {
            let pair = piece.nearest(other);
            if pair.0 < best.0 {
                best = (pair.0, pair.2);
            }
        }
    }
    (best.0.sqrt(), best.1)
}

/// No point of the outlines is farther from the origin.
fn reach(edges: &Edges) -> f64 {
    let b = edges.bounds();
    b.x0.abs().max(b.x1.abs()).hypot(b.y0.abs().max(b.y1.abs()))
}
