//! How far a shape is from its own mirror image.

use crate::edges::Edges;
use crate::motion::{Axis, Motion};
use crate::{Segment, Shape};
use kurbo::Point;

/// The largest distance between two outlines, and where on the first.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Mismatch {
    /// Distance in mm.
    pub distance: f64,
    /// The point of the shape that is farthest from its mirror image.
    pub at: Point,
}

/// Refinement stops when it can change the distance by no more than this, in mm.
const FINE: f64 = 1e-3;
/// Pieces this close at both ends and in the middle are the same piece, in mm.
const SAME: f64 = 1e-6;

/// The Hausdorff distance between a shape's outline and its mirror image, within a micron. A mirror is its own
/// inverse, so one direction is enough: what is far from the image is mirrored into what of the image is far.
pub fn mirror_mismatch(shape: &Shape, axis: &Axis) -> Mismatch {
    let mirrored = shape.moved(&Motion::mirror(axis));
    let pieces: Vec<Segment> = mirrored.loops().iter().flat_map(|one| one.segments()).collect();
    let image = Edges::of(&mirrored);
    let mut worst = Mismatch { distance: 0.0, at: shape.bounds().center() };
    for segment in shape.loops().iter().flat_map(|one| one.segments()) {
        // In a symmetric outline every piece lies on one of the image's, which settles it.
        if !pieces.iter().any(|piece| same(&segment, piece)) {
            farthest(&segment, 0.0, 1.0, &image, &mut worst);
        }
    }
    worst
}

fn same(a: &Segment, b: &Segment) -> bool {
    let near = |s: f64, t: f64| (a.point_at(s) - b.point_at(t)).hypot() < SAME;
    near(0.5, 0.5) && (near(0.0, 0.0) && near(1.0, 1.0) || near(0.0, 1.0) && near(1.0, 0.0))
}

/// Looks at the middle of a stretch; halves it while it may hold a farther point. Distance to a set changes no faster than one moves.
fn farthest(segment: &Segment, from: f64, to: f64, image: &Edges, worst: &mut Mismatch) {
    let middle = 0.5 * (from + to);
    let p = segment.point_at(middle);
    let distance = image.distance_to(p);
    if distance > worst.distance {
        *worst = Mismatch { distance, at: p };
    }
    let half = segment.length() * (to - from) / 2.0;
    if distance + half > worst.distance + FINE {
        farthest(segment, from, middle, image, worst);
        farthest(segment, middle, to, image, worst);
    }
}
