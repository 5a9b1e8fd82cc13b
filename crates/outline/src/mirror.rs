//! How far a shape is from its own mirror image.

use crate::Shape;
use crate::edges::Edges;
use crate::motion::{Axis, Motion};
use kurbo::Point;

/// The largest distance between two outlines, and where on the first.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Mismatch {
    /// Distance in mm.
    pub distance: f64,
    /// The point of the shape that is farthest from its mirror image.
    pub at: Point,
}

/// Outlines are looked at every so often, in mm; between two looks the distance to another curve changes by half of that at most.
const STEP: f64 = 0.25;
/// Refinement stops when it can change the distance by no more than this, in mm.
const FINE: f64 = 1e-4;

/// The Hausdorff distance between a shape's outline and its mirror image, within 1e-4 mm. A mirror is its own
/// inverse, so one direction is enough: what is far from the image is mirrored into what of the image is far.
pub fn mirror_mismatch(shape: &Shape, axis: &Axis) -> Mismatch {
    let image = Edges::of(&shape.moved(&Motion::mirror(axis)));
    let mut worst = Mismatch {
        distance: 0.0,
        at: shape.bounds().center(),
    };
    for segment in shape.loops().iter().flat_map(|one| one.segments()) {
        let steps = (segment.length() / STEP).ceil().max(1.0);
        for k in 0..steps as usize {
            farthest(
                &segment,
                k as f64 / steps,
                (k as f64 + 1.0) / steps,
                &image,
                &mut worst,
            );
        }
    }
    worst
}

/// Looks at the middle of a stretch; halves it while it may hold a farther point. Distance to a set changes no faster than one moves.
fn farthest(segment: &crate::Segment, from: f64, to: f64, image: &Edges, worst: &mut Mismatch) {
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
