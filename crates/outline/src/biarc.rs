//! Smooth curves as chains of circular arcs.
//!
//! Between two points with tangents a biarc joins two arcs with a common tangent; of the one-parameter family the one
//! with equal tangent lengths is taken (Bolton 1975; Meek & Walton 1992, "Approximation of discrete data by G1 arc splines"):
//! with v = p1 - p0, t = t0 + t1, the length d solves 2 (1 - t0.t1) d^2 + 2 (v.t) d - v.v = 0. A span is halved until
//! the curve stays within the tolerance of its biarc.

use kurbo::{Point, Vec2};

/// Points of the curve that are compared with the biarc, for each span.
const LOOKS: usize = 12;
/// The largest deviation lies between looks at most this much above the largest seen: for a smooth span, whose
/// deviation is a low polynomial with its zeros at the ends and the joint.
const SURE: f64 = 0.85;
/// Halvings after which a span is as small as it gets.
const DEEPEST: u32 = 14;

/// A smooth span: its point and its unit tangent at a parameter.
pub(crate) trait Smooth {
    /// The point at `t`.
    fn point(&self, t: f64) -> Point;
    /// The direction of travel at `t`, of unit length; zero if it has none.
    fn tangent(&self, t: f64) -> Vec2;
}

/// Appends the vertices (with bulges) of arcs that stay within `tolerance` of the span, its end left out.
pub(crate) fn fit(span: &dyn Smooth, from: f64, to: f64, tolerance: f64, out: &mut Vec<(Point, f64)>) {
    halve(span, from, to, tolerance, DEEPEST, out);
}

fn halve(span: &dyn Smooth, from: f64, to: f64, tolerance: f64, depth: u32, out: &mut Vec<(Point, f64)>) {
    let (p0, p1) = (span.point(from), span.point(to));
    if (p1 - p0).hypot() < 1e-12 && depth < DEEPEST {
        return;
    }
    if let Some((joint, first, second)) = biarc(p0, span.tangent(from), p1, span.tangent(to)) {
        let near = (1..LOOKS).all(|k| {
            let p = span.point(from + (to - from) * k as f64 / LOOKS as f64);
            off_arc(p, p0, joint, first).min(off_arc(p, joint, p1, second)) <= SURE * tolerance
        });
        if near || depth == 0 {
            let straight = first.abs() < 1e-9 && second.abs() < 1e-9;
            out.push((p0, if straight { 0.0 } else { first }));
            if !straight {
                out.push((joint, second));
            }
            return;
        }
    } else if depth == 0 {
        out.push((p0, 0.0));
        return;
    }
    let middle = 0.5 * (from + to);
    halve(span, from, middle, tolerance, depth - 1, out);
    halve(span, middle, to, tolerance, depth - 1, out);
}

/// The joint and the two bulges.
fn biarc(p0: Point, t0: Vec2, p1: Point, t1: Vec2) -> Option<(Point, f64, f64)> {
    let v = p1 - p0;
    let t = t0 + t1;
    let (turn, along, square) = (2.0 * (1.0 - t0.dot(t1)), v.dot(t), v.hypot2());
    if t0.hypot2() == 0.0 || t1.hypot2() == 0.0 || along <= 0.0 {
        return None;
    }
    // The quadratic's positive root in the form that does not cancel.
    let d = square / (along + (along * along + turn * square).sqrt());
    let joint = (p0 + d * t0).midpoint(p1 - d * t1);
    let first = bulge(t0, joint - p0)?;
    let second = -bulge(-t1, joint - p1)?;
    Some((joint, first, second))
}

/// Bulge of the arc that leaves along `tangent` and ends a `chord` away: tan of half the angle between them.
fn bulge(tangent: Vec2, chord: Vec2) -> Option<f64> {
    let length = chord.hypot();
    let half = tangent.cross(chord) / (length + tangent.dot(chord));
    (length > 0.0 && half.is_finite() && half.abs() <= 1.0).then_some(half)
}

/// Distance of a point from an arc's circle or line, if it lies abreast of the arc.
fn off_arc(p: Point, a: Point, b: Point, bulge: f64) -> f64 {
    let piece = crate::piece::Piece::of_bulge(a, b, bulge);
    (piece.nearest_to(p) - p).hypot()
}
