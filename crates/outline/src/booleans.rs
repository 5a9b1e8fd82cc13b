//! Union, difference and intersection of shapes.
//!
//! The kernel cuts one simple curve against another; regions with holes are ours to carry. All rests
//! on one operation: taking the inside of a curve out of one piece of land with its lakes.

use crate::{Curve, Shape};
use cavalier_contours::polyline::{BooleanOp, BooleanResultInfo, PlineBooleanOptions, PlineSource, Polyline};
use kurbo::{Point, Rect};

/// Positions closer than this are the same, in mm.
pub(crate) const SAME: f64 = 1e-7;
/// Loops with less area are slivers left where outlines only touch, in mm2.
pub(crate) const SLIVER: f64 = 1e-9;

impl Shape {
    /// What lies in either.
    pub fn united(&self, other: &Shape) -> Shape {
        if self.is_empty() {
            return other.clone();
        }
        if other.is_empty() {
            return self.clone();
        }
        // What is left of a wide plane when both are taken out of it, turned inside out.
        let around = self.bounds().union(other.bounds());
        let far = around.inflate(around.width() + 10.0, around.height() + 10.0);
        let plane = Shape::from(rectangle(&far));
        let rest = plane.minus(self).minus(other);
        let edge = |curve: &Curve| curve.bounds().width() > around.width() + 1.0;
        Shape { loops: rest.loops.iter().filter(|one| !edge(one)).map(Curve::reversed).collect() }
    }

    /// What lies in this one and not in the other.
    pub fn minus(&self, other: &Shape) -> Shape {
        if !meet(&self.bounds(), &other.bounds()) {
            return self.clone();
        }
        let mut rest: Vec<Shape> = self.pieces();
        for taken in other.pieces() {
            rest = rest.iter().flat_map(|land| take_piece(land, &taken)).collect();
        }
        Shape::joined(&rest)
    }

    /// What lies in both.
    pub fn common(&self, other: &Shape) -> Shape {
        if !meet(&self.bounds(), &other.bounds()) {
            return Shape::empty();
        }
        let mut both = Vec::new();
        for a in self.pieces() {
            for b in other.pieces() {
                let mut lands: Vec<Shape> =
                    cut(&a.loops[0], &b.loops[0], BooleanOp::And).0.into_iter().map(Shape::from).collect();
                for hole in a.loops[1..].iter().chain(&b.loops[1..]) {
                    let hole = hole.clone().anticlockwise();
                    lands = lands.iter().flat_map(|land| take_curve(land, &hole)).collect();
                }
                both.extend(lands);
            }
        }
        Shape::joined(&both)
    }
}

/// One piece of land less another: less its whole outline, and again what lies in its lakes.
fn take_piece(land: &Shape, taken: &Shape) -> Vec<Shape> {
    let mut rest = take_curve(land, &taken.loops[0]);
    for lake in &taken.loops[1..] {
        rest.extend(land.common(&Shape::from(lake.clone())).pieces());
    }
    rest
}

/// One piece of land (outer curve first, then its lakes) less the inside of a counter-clockwise curve.
fn take_curve(land: &Shape, curve: &Curve) -> Vec<Shape> {
    let outer = &land.loops[0];
    let lakes = &land.loops[1..];
    if !meet(&outer.bounds(), &curve.bounds()) {
        return vec![land.clone()];
    }
    let (left, inside, untouched) = cut_out(outer, curve);
    if untouched {
        return vec![land.clone()];
    }
    if inside {
        return with_lake(land, curve);
    }
    let mut rest: Vec<Shape> = left.into_iter().map(Shape::from).collect();
    for lake in lakes {
        let lake = lake.clone().anticlockwise();
        rest = rest.iter().flat_map(|land| take_curve(land, &lake)).collect();
    }
    rest
}

/// A curve that lies inside the land's outer curve becomes a lake, joined with the lakes that it touches;
/// land that the joined lakes enclose becomes islands.
fn with_lake(land: &Shape, curve: &Curve) -> Vec<Shape> {
    let mut lake = curve.clone();
    let mut apart: Vec<Curve> = land.loops[1..].iter().map(|lake| lake.clone().anticlockwise()).collect();
    let mut islands: Vec<Curve> = Vec::new();
    loop {
        let before = apart.len();
        let mut still = Vec::with_capacity(before);
        for other in apart {
            if !meet(&lake.bounds(), &other.bounds()) {
                still.push(other);
                continue;
            }
            let (mut joined, enclosed) = cut(&lake, &other, BooleanOp::Or);
            if joined.len() == 1 {
                lake = joined.remove(0);
                islands.extend(enclosed);
            } else {
                still.push(other);
            }
        }
        apart = still;
        if apart.len() == before {
            break;
        }
    }
    let (within, beside): (Vec<Curve>, Vec<Curve>) = apart
        .into_iter()
        .partition(|one| one.a_point().is_some_and(|p| islands.iter().any(|island| island.contains(p))));
    let mut rest = vec![Shape::new(land.loops[0].clone(), beside.into_iter().chain([lake]).collect())];
    for island in islands {
        let mut pieces = vec![Shape::from(island)];
        for one in &within {
            pieces = pieces.iter().flat_map(|piece| take_curve(piece, one)).collect();
        }
        rest.extend(pieces);
    }
    rest
}

/// The outer curves left of `outer` when `curve` is taken out; whether `curve` lies wholly inside it; whether it lies wholly outside.
fn cut_out(outer: &Curve, curve: &Curve) -> (Vec<Curve>, bool, bool) {
    let result = outer.pline.boolean_opt(&curve.pline, BooleanOp::Not, &options());
    match result.result_info {
        BooleanResultInfo::Pline2InsidePline1 => (Vec::new(), true, false),
        BooleanResultInfo::Pline1InsidePline2 | BooleanResultInfo::Overlapping => (Vec::new(), false, false),
        BooleanResultInfo::Disjoint | BooleanResultInfo::InvalidInput => (Vec::new(), false, true),
        BooleanResultInfo::Intersected => (curves(result.pos_plines.into_iter().map(|one| one.pline)), false, false),
    }
}

/// The outer curves and the holes of a boolean of two simple counter-clockwise curves.
fn cut(a: &Curve, b: &Curve, operation: BooleanOp) -> (Vec<Curve>, Vec<Curve>) {
    let result = a.pline.boolean_opt(&b.pline, operation, &options());
    (
        curves(result.pos_plines.into_iter().map(|one| one.pline)),
        curves(result.neg_plines.into_iter().map(|one| one.pline)),
    )
}

/// Results as counter-clockwise curves, slivers left out. The kernel may run either way.
fn curves(plines: impl Iterator<Item = Polyline<f64>>) -> Vec<Curve> {
    plines
        .map(|pline| Curve { pline: pline.remove_repeat_pos(SAME).unwrap_or(pline) })
        .filter(|curve| curve.area().abs() > SLIVER)
        .map(Curve::anticlockwise)
        .collect()
}

fn options() -> PlineBooleanOptions<'static, f64> {
    PlineBooleanOptions { pos_equal_eps: SAME, ..PlineBooleanOptions::new() }
}

fn rectangle(r: &Rect) -> Curve {
    let p = |x, y| (Point::new(x, y), 0.0);
    Curve::from_bulges([p(r.x0, r.y0), p(r.x1, r.y0), p(r.x1, r.y1), p(r.x0, r.y1)])
}

pub(crate) fn meet(a: &Rect, b: &Rect) -> bool {
    a.x0 <= b.x1 && b.x0 <= a.x1 && a.y0 <= b.y1 && b.y0 <= a.y1
}
