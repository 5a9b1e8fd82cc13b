//! Turning a part over: the one place where assembled coordinates become those of a part that lies face down.

use crate::assembled::Dial;
use outline::{Axis, Motion, Point};

/// The motion of everything on a part that is turned over in its hole at `at`, and the axis on the sheet.
pub(super) fn turned_over(dial: &Dial, at: Point) -> (Motion, Axis) {
    let axis = Axis { point: dial.turn_axis.point + at.to_vec2(), direction: dial.turn_axis.direction };
    (Motion::mirror(&axis), axis)
}
