//! Circles in and around shapes.

use crate::edges::Edges;
use crate::{Curve, Shape};
use kurbo::Point;
use std::cmp::Ordering;
use std::collections::BinaryHeap;

/// Radius of the circle about `centre` that encloses all shapes; exact.
pub fn enclosing_radius(shapes: &[&Shape], centre: Point) -> f64 {
    shapes.iter().flat_map(|shape| shape.loops()).map(|one| one.farthest_from(centre)).fold(0.0, f64::max)
}

/// The largest circle that fits into a shape: middle and radius, the radius within `tolerance` of the largest.
///
/// A square cell whose middle lies d inside the edge holds no point deeper than d plus half its diagonal; cells are
/// split in the order of that promise (Garcia-Castellanos & Lombardo 2007, "Poles of inaccessibility", for the problem).
pub fn inscribed_circle(shape: &Shape, tolerance: f64) -> Option<(Point, f64)> {
    let bounds = shape.bounds();
    let edges = Edges::of(shape);
    let depth = |p: Point| {
        let distance = edges.distance_to(p);
        if shape.loops().iter().map(|one: &Curve| one.contains(p)).filter(|inside| *inside).count() % 2 == 1 {
            distance
        } else {
            -distance
        }
    };
    let cell = |middle: Point, half: f64| {
        let depth = depth(middle);
        Cell { middle, half, depth, promise: depth + half * std::f64::consts::SQRT_2 }
    };
    let half = bounds.width().max(bounds.height()) / 2.0;
    if half <= 0.0 {
        return None;
    }
    let mut cells = BinaryHeap::from([cell(bounds.center(), half)]);
    let mut best = (bounds.center(), 0.0);
    while let Some(one) = cells.pop() {
        if one.depth > best.1 {
            best = (one.middle, one.depth);
        }
        if one.promise <= best.1 + tolerance {
            break;
        }
        let half = one.half / 2.0;
        for (dx, dy) in [(-half, -half), (half, -half), (-half, half), (half, half)] {
            let quarter = cell(Point::new(one.middle.x + dx, one.middle.y + dy), half);
            if quarter.promise > best.1 + tolerance {
                cells.push(quarter);
            }
        }
    }
    (best.1 > 0.0).then_some(best)
}

struct Cell {
    middle: Point,
    half: f64,
    depth: f64,
    promise: f64,
}

impl PartialEq for Cell {
    fn eq(&self, other: &Cell) -> bool {
        self.cmp(other) == Ordering::Equal
    }
}

impl Eq for Cell {}

impl PartialOrd for Cell {
    fn partial_cmp(&self, other: &Cell) -> Option<Ordering> {
        Some(self.cmp(other))
    }
}

impl Ord for Cell {
    fn cmp(&self, other: &Cell) -> Ordering {
        self.promise.total_cmp(&other.promise)
    }
}
