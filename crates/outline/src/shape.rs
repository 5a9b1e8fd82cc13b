//! A flat region: outer curves and the holes in them.

use crate::Curve;
use crate::motion::{Axis, Motion, Side};
use kurbo::{Point, Rect, Vec2};

/// A flat region: outer curves counter-clockwise, holes clockwise, none crossing another.
#[derive(Clone, Debug, Default)]
pub struct Shape {
    pub(crate) loops: Vec<Curve>,
}

impl From<Curve> for Shape {
    fn from(curve: Curve) -> Shape {
        Shape { loops: vec![curve.anticlockwise()] }
    }
}

impl Shape {
    /// Nothing.
    pub fn empty() -> Shape {
        Shape::default()
    }

    /// One outer curve with holes.
    pub fn new(outer: Curve, holes: Vec<Curve>) -> Shape {
        let holes = holes.into_iter().map(|hole| hole.anticlockwise().reversed());
        Shape { loops: std::iter::once(outer.anticlockwise()).chain(holes).collect() }
    }

    /// Curves that do not cross each other, oriented by how deep they nest: outermost ones are outer
    /// curves, those inside one of them holes, and so on.
    pub fn from_loops(loops: Vec<Curve>) -> Shape {
        let depth = |i: usize| {
            let Some(p) = loops[i].a_point() else {
                return 0;
            };
            let around = loops[i].bounds();
            let inside =
                |(j, other): (usize, &Curve)| j != i && contains_box(&other.bounds(), &around) && other.contains(p);
            loops.iter().enumerate().filter(|pair| inside(*pair)).count()
        };
        let depths: Vec<usize> = (0..loops.len()).map(depth).collect();
        let oriented = loops.into_iter().zip(depths).map(|(one, depth)| {
            let one = one.anticlockwise();
            if depth % 2 == 0 { one } else { one.reversed() }
        });
        Shape { loops: oriented.collect() }
    }

    /// Shapes that do not touch each other, taken as one.
    pub fn joined(shapes: &[Shape]) -> Shape {
        Shape { loops: shapes.iter().flat_map(|shape| shape.loops.iter().cloned()).collect() }
    }

    /// All curves.
    pub fn loops(&self) -> &[Curve] {
        &self.loops
    }

    /// The outer curves.
    pub fn outers(&self) -> Vec<&Curve> {
        self.loops.iter().filter(|one| !one.is_clockwise()).collect()
    }

    /// The holes.
    pub fn holes(&self) -> Vec<&Curve> {
        self.loops.iter().filter(|one| one.is_clockwise()).collect()
    }

    /// One shape for each outer curve, with its own holes.
    pub fn pieces(&self) -> Vec<Shape> {
        let outers = self.outers();
        let mut pieces: Vec<Shape> = outers.iter().map(|outer| Shape { loops: vec![(*outer).clone()] }).collect();
        for hole in self.holes() {
            let Some(p) = hole.a_point() else { continue };
            // The smallest outer curve around it: an island's own, not that of the land around the lake.
            let home = (0..outers.len())
                .filter(|&i| outers[i].contains(p))
                .min_by(|&a, &b| outers[a].area().total_cmp(&outers[b].area()));
            if let Some(i) = home {
                pieces[i].loops.push(hole.clone());
            }
        }
        pieces
    }

    /// Area of the outer curves less that of the holes.
    pub fn area(&self) -> f64 {
        self.loops.iter().map(Curve::area).sum()
    }

    /// Length of all curves.
    pub fn perimeter(&self) -> f64 {
        self.loops.iter().map(Curve::perimeter).sum()
    }

    /// The box around it; a point at the origin when it is empty.
    pub fn bounds(&self) -> Rect {
        self.loops.iter().map(Curve::bounds).reduce(|all, one| all.union(one)).unwrap_or_default()
    }

    /// Whether a point lies in it.
    pub fn contains(&self, p: Point) -> bool {
        self.loops.iter().filter(|one| one.contains(p)).count() % 2 == 1
    }

    /// Whether there is nothing.
    pub fn is_empty(&self) -> bool {
        self.loops.is_empty()
    }

    /// Moved.
    pub fn moved(&self, motion: &Motion) -> Shape {
        Shape { loops: self.loops.iter().map(|one| one.moved(motion)).collect() }
    }

    /// Scaled about a point by a positive factor.
    pub fn scaled(&self, about: Point, factor: f64) -> Shape {
        Shape { loops: self.loops.iter().map(|one| one.scaled(about, factor)).collect() }
    }

    /// The part on one side of an axis, seen along its direction.
    pub fn clipped_to_half(&self, axis: &Axis, side: Side) -> Shape {
        self.common(&half_plane(self, axis, side, 0.0))
    }

    /// One side of an axis with its exact mirror image on the other: the two are joined a hair's breadth beyond the
    /// axis, so that no seam is left.
    pub fn mirrored_from(&self, axis: &Axis, side: Side) -> Shape {
        /// Overlap at the axis, in mm: above the kernel's tolerance, far below what a beam can place.
        const OVERLAP: f64 = 1e-4;
        let half = self.common(&half_plane(self, axis, side, OVERLAP));
        half.united(&half.moved(&Motion::mirror(axis)))
    }
}

/// A rectangle that covers everything of `shape` on one side of an axis, and `beyond` of the other side.
fn half_plane(shape: &Shape, axis: &Axis, side: Side, beyond: f64) -> Shape {
    let along = axis.direction / axis.direction.hypot();
    let left = Vec2::new(-along.y, along.x);
    let out = if side == Side::Left { left } else { -left };
    let bounds = shape.bounds();
    let far = 2.0 * ((bounds.center() - axis.point).hypot() + bounds.size().to_vec2().hypot()) + 1.0;
    let middle = axis.point + along * along.dot(bounds.center() - axis.point);
    let corners = [
        middle - far * along - beyond * out,
        middle + far * along - beyond * out,
        middle + far * along + far * out,
        middle - far * along + far * out,
    ];
    Shape::from(Curve::from_bulges(corners.map(|p| (p, 0.0))))
}

fn contains_box(outer: &Rect, inner: &Rect) -> bool {
    outer.x0 <= inner.x0 && outer.y0 <= inner.y0 && outer.x1 >= inner.x1 && outer.y1 >= inner.y1
}

/// Area that two shapes share, over the area that either covers: 1 for the same shape, 0 for disjoint ones.
pub fn overlap(a: &Shape, b: &Shape) -> f64 {
    let common = a.common(b).area();
    let either = a.area() + b.area() - common;
    if either > 0.0 { common / either } else { 0.0 }
}

/// Whether two shapes overlap by at least this share; quick where their areas or boxes alone forbid it.
pub fn overlap_reaches(a: &Shape, b: &Shape, share: f64) -> bool {
    let (area_a, area_b) = (a.area(), b.area());
    let boxes = a.bounds().intersect(b.bounds());
    let most = area_a.min(area_b).min(boxes.width().max(0.0) * boxes.height().max(0.0));
    // What is common cannot be more than this, nor what either covers less.
    most >= share * (area_a + area_b - most) && overlap(a, b) >= share
}
