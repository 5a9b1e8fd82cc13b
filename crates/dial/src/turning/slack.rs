//! How far a wheel may be turned off a stop before something fails.

use super::look::{LEAN, Turned, circle_distance, unwanted};
use outline::{Edges, Motion, Turn};

/// The largest angle, either way, that stop `k` forgives: until its mark touches the window's edge, another
/// mark comes into the window, or it leans too much. Pocket and rim do not change as the wheel turns.
pub(super) fn angle(turned: &Turned, k: usize, motion: &Motion, here: &Edges, lean: f64) -> f64 {
    let centre = turned.wheel.centre;
    let mut forgiven = LEAN - lean;
    for way in [Turn::Anticlockwise, Turn::Clockwise] {
        if let Some(touch) = here.first_touch_turning(centre, &turned.window, way, forgiven) {
            forgiven = touch.angle;
        }
    }
    for j in unwanted(turned, k) {
        let mark = &turned.marks[j];
        let middle = motion.apply(mark.middle);
        // No point of the mark travels farther than its distance from the middle allows.
        let farthest = (middle - centre).hypot() + mark.reach;
        if circle_distance(turned, middle, mark.reach) >= forgiven * farthest {
            continue;
        }
        let there = mark.edges.moved(motion);
        for way in [Turn::Anticlockwise, Turn::Clockwise] {
            if let Some(touch) = there.first_touch_turning(centre, &turned.window, way, forgiven) {
                forgiven = touch.angle;
            }
        }
    }
    forgiven
}
