//! Outlines made ready for many distance questions.

use crate::motion::Motion;
use crate::piece::Piece;
use crate::{Curve, Shape};
use kurbo::{Point, Rect};

/// The pieces of an outline with a box round each.
#[derive(Clone, Debug)]
pub struct Edges {
    pub(crate) pieces: Vec<Piece>,
    pub(crate) boxes: Vec<Rect>,
    pub(crate) bounds: Rect,
}

/// The nearest points of two outlines.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Nearest {
    /// Distance in mm; 0 when the outlines cross.
    pub distance: f64,
    /// The point on the one that was asked.
    pub on_self: Point,
    /// The point on the other.
    pub on_other: Point,
}

impl Edges {
    /// The outlines of a shape.
    pub fn of(shape: &Shape) -> Edges {
        Edges::of_pieces(shape.loops().iter().flat_map(Curve::pieces).collect())
    }

    /// One curve.
    pub fn of_curve(curve: &Curve) -> Edges {
        Edges::of_pieces(curve.pieces().collect())
    }

    pub(crate) fn of_pieces(pieces: Vec<Piece>) -> Edges {
        let boxes: Vec<Rect> = pieces.iter().map(Piece::bounds).collect();
        let bounds = boxes.iter().copied().reduce(|all, one| all.union(one)).unwrap_or_default();
        Edges { pieces, boxes, bounds }
    }

    /// Moved.
    pub fn moved(&self, motion: &Motion) -> Edges {
        Edges::of_pieces(self.pieces.iter().map(|piece| piece.moved(motion)).collect())
    }

    /// The box around all.
    pub fn bounds(&self) -> Rect {
        self.bounds
    }

    /// Distance of a point from the nearest piece.
    pub fn distance_to(&self, p: Point) -> f64 {
        let mut best = f64::INFINITY;
        for (piece, around) in self.pieces.iter().zip(&self.boxes) {
            if square_from_box(p, around) < best {
                best = best.min((piece.nearest_to(p) - p).hypot2());
            }
        }
        best.sqrt()
    }

    /// The nearest points of two outlines: exact, boundary to boundary, 0 when they cross.
    pub fn nearest(&self, other: &Edges) -> Nearest {
        let far = Nearest { distance: f64::INFINITY, on_self: Point::ZERO, on_other: Point::ZERO };
        self.search(other, f64::INFINITY).unwrap_or(far)
    }

    /// The nearest points if they are nearer than `limit`; quick when they are not.
    pub fn nearest_under(&self, other: &Edges, limit: f64) -> Option<Nearest> {
        self.search(other, limit * limit)
    }

    /// Looks at pairs of pieces in the order in which their boxes promise most.
    fn search(&self, other: &Edges, limit: f64) -> Option<Nearest> {
        if limit <= 0.0 || square_between(&self.bounds, &other.bounds) >= limit {
            return None;
        }
        let mut best = (limit, Point::ZERO, Point::ZERO);
        let mut found = false;
        // The most promising pair first: it makes most of the rest unnecessary.
        let mut first = (f64::INFINITY, 0, 0);
        let near: Vec<(usize, f64)> = self
            .boxes
            .iter()
            .enumerate()
            .map(|(i, around)| (i, square_between(around, &other.bounds)))
            .filter(|(_, square)| *square < limit)
            .collect();
        for &(i, bound) in &near {
            if bound >= first.0 {
                continue;
            }
            for (j, around) in other.boxes.iter().enumerate() {
                let square = square_between(&self.boxes[i], around);
                if square < first.0 {
                    first = (square, i, j);
                }
            }
        }
        let mut look = |i: usize, j: usize, best: &mut (f64, Point, Point)| {
            let pair = self.pieces[i].nearest(&other.pieces[j]);
            if pair.0 < best.0 {
                *best = pair;
                found = true;
            }
        };
        if first.0 < best.0 {
            look(first.1, first.2, &mut best);
        }
        for (i, bound) in near {
            if bound >= best.0 {
                continue;
            }
            for j in 0..other.pieces.len() {
                if square_between(&self.boxes[i], &other.boxes[j]) < best.0 {
                    look(i, j, &mut best);
                }
            }
        }
        found.then(|| Nearest { distance: best.0.sqrt(), on_self: best.1, on_other: best.2 })
    }
}

/// Square of the distance between two boxes; 0 when they overlap.
pub(crate) fn square_between(a: &Rect, b: &Rect) -> f64 {
    let dx = (b.x0 - a.x1).max(a.x0 - b.x1).max(0.0);
    let dy = (b.y0 - a.y1).max(a.y0 - b.y1).max(0.0);
    dx * dx + dy * dy
}

fn square_from_box(p: Point, b: &Rect) -> f64 {
    let dx = (b.x0 - p.x).max(p.x - b.x1).max(0.0);
    let dy = (b.y0 - p.y).max(p.y - b.y1).max(0.0);
    dx * dx + dy * dy
}
