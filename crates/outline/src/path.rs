//! Bezier paths as shapes of arcs.

use crate::biarc::{self, Smooth};
use crate::curve::unit;
use crate::edges::Edges;
use crate::{Curve, Shape};
use kurbo::{BezPath, CubicBez, ParamCurve, ParamCurveDeriv, PathEl, PathSeg, Point, Vec2};

impl Shape {
    /// The area that a path fills by the nonzero rule, its Bezier pieces as circular arcs within `tolerance` mm of
    /// them. Contours that overlap are united; those that run against the rest are holes. Single contours must not cross themselves.
    pub fn from_path(path: &BezPath, tolerance: f64) -> Shape {
        let curves: Vec<Curve> = contours(path).iter().filter_map(|one| curve_of(one, tolerance)).collect();
        if !any_cross(&curves) {
            return Shape::from_loops(curves);
        }
        // The largest contour runs the way land runs.
        let land_is_clockwise =
            curves.iter().max_by(|a, b| a.area().abs().total_cmp(&b.area().abs())).is_some_and(Curve::is_clockwise);
        let (land, holes): (Vec<&Curve>, Vec<&Curve>) =
            curves.iter().partition(|one| one.is_clockwise() == land_is_clockwise);
        let unite = |all: Vec<&Curve>| {
            all.into_iter().fold(Shape::empty(), |shape, one| shape.united(&Shape::from(one.clone())))
        };
        unite(land).minus(&unite(holes))
    }
}

fn contours(path: &BezPath) -> Vec<BezPath> {
    let mut all: Vec<BezPath> = Vec::new();
    for element in path.elements() {
        match (element, all.last_mut()) {
            (PathEl::MoveTo(_), _) | (_, None) => all.push(BezPath::from_vec(vec![*element])),
            (_, Some(last)) => last.push(*element),
        }
    }
    all
}

fn curve_of(contour: &BezPath, tolerance: f64) -> Option<Curve> {
    let mut vertices = Vec::new();
    let mut end = Point::ZERO;
    let mut start = None;
    for segment in contour.segments() {
        start.get_or_insert(segment.start());
        end = segment.end();
        match segment {
            PathSeg::Line(line) => {
                if (line.p1 - line.p0).hypot() > 1e-12 {
                    vertices.push((line.p0, 0.0));
                }
            }
            PathSeg::Quad(quad) => biarc::fit(&Bezier(quad.raise()), 0.0, 1.0, tolerance, &mut vertices),
            PathSeg::Cubic(cubic) => biarc::fit(&Bezier(cubic), 0.0, 1.0, tolerance, &mut vertices),
        }
    }
    // A contour that was left open is closed by a straight line.
    if start.is_some_and(|start| (start - end).hypot() > 1e-9) {
        vertices.push((end, 0.0));
    }
    let curve = (vertices.len() > 1).then(|| Curve::from_bulges(vertices))?;
    (curve.area().abs() > 0.0).then_some(curve)
}

fn any_cross(curves: &[Curve]) -> bool {
    let edges: Vec<Edges> = curves.iter().map(Edges::of_curve).collect();
    (0..edges.len()).any(|i| (i + 1..edges.len()).any(|j| edges[i].nearest_under(&edges[j], 1e-7).is_some()))
}

struct Bezier(CubicBez);

impl Smooth for Bezier {
    fn point(&self, t: f64) -> Point {
        self.0.eval(t)
    }

    fn tangent(&self, t: f64) -> Vec2 {
        let along = self.0.deriv().eval(t).to_vec2();
        if along.hypot() > 1e-12 {
            return unit(along);
        }
        // A control point that lies on its end: look a little way along.
        let near = if t < 0.5 { t + 1e-4 } else { t - 1e-4 };
        unit(self.0.deriv().eval(near).to_vec2())
    }
}
