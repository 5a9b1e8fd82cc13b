//! The notch: the finger cut-out at the cover's edge that bares a wheel's rim.

use super::places::{self, Place};
use crate::assembled::Notch;
use crate::design::{Design, NotchDesign};
use crate::spans::{Label, Mistake};
use outline::{Curve, Motion, Point, Segment, Vec2};

/// How near to the asked length of rim a derived depth is brought.
const NEAR: f64 = 1e-6;

/// The notches of all wheels.
pub(super) fn all(design: &Design, outline: &Curve, places: &[Place]) -> Result<Vec<Notch>, Vec<Mistake>> {
    let mut mistakes = Vec::new();
    let mut notches = Vec::new();
    for (i, (counter, place)) in design.counters.iter().zip(places).enumerate() {
        let outwards = Vec2::from_angle(place.notch_angle);
        let Some(reach) = first_hit(outline, place.centre, outwards) else {
            mistakes.push(outside(design, i, &counter.name));
            continue;
        };
        let sense = places::sense(counter.running, place.window_angle);
        let depth = counter.notch.depth.unwrap_or_else(|| shallowest(&counter.notch, place.rim_radius, reach));
        notches.push(Notch {
            angle: place.notch_angle,
            width: counter.notch.width,
            depth,
            bares: counter.notch.bares,
            cutter: cutter(&counter.notch, place.centre, place.notch_angle, reach, depth),
            mouth: place.centre + reach * outwards,
            push_up: sense.sign() * Vec2::new(-outwards.y, outwards.x),
        });
    }
    if mistakes.is_empty() { Ok(notches) } else { Err(mistakes) }
}

fn outside(design: &Design, index: usize, name: &str) -> Mistake {
    let key = format!("counter[{index}].at");
    Mistake {
        what: format!("the wheel of “{name}” has its middle outside the cover"),
        at: design.spans.get(&key).map(|span| Label { span, words: "this place is outside".into() }),
        also: ["cover.points", "cover.width", "cover.height"]
            .iter()
            .filter_map(|key| design.spans.get(key))
            .map(|span| Label { span, words: "of the cover asked for here".into() })
            .collect(),
        help: "move the wheel into the cover (0, 0 is the cover's middle), or make the cover larger".into(),
    }
}

/// A scoop: part of a circle through the two ends of the mouth. Deeper than half its width it becomes
/// a slot with a half-round end.
fn cutter(notch: &NotchDesign, wheel: Point, angle: f64, reach: f64, depth: f64) -> Curve {
    let outwards = Vec2::from_angle(angle);
    let half = notch.width / 2.0;
    if depth <= half {
        let radius = scoop_radius(half, depth);
        Curve::circle(wheel + (reach - depth + radius) * outwards, radius)
    } else {
        // Out past the edge by a whole width, so that a slanting edge is cut through as well.
        let length = depth + 2.0 * notch.width;
        let middle = wheel + (reach - depth + length / 2.0) * outwards;
        Curve::stadium(middle, length, notch.width).moved(&Motion::turn(middle, angle))
    }
}

/// Radius of a circle with a chord of twice `half` and this sagitta.
fn scoop_radius(half: f64, depth: f64) -> f64 {
    (half * half + depth * depth) / (2.0 * depth)
}

/// The shallowest notch that bares the asked length of rim; the deepest that helps if none does.
fn shallowest(notch: &NotchDesign, radius: f64, reach: f64) -> f64 {
    let half = notch.width / 2.0;
    let bared = |depth: f64| {
        // Circle against circle: the rim inside the scoop spans an angle either side of the notch's middle.
        let (scoop, middle) = if depth <= half {
            let scoop = scoop_radius(half, depth);
            (scoop, reach - depth + scoop)
        } else {
            (half, reach - depth + half)
        };
        let cos = (radius * radius + middle * middle - scoop * scoop) / (2.0 * radius * middle);
        2.0 * radius * cos.clamp(-1.0, 1.0).acos()
    };
    // The rim is bared most when the widest part of a half-round end lies on it.
    let deepest = half + (reach - radius).max(0.0) + half * half / (2.0 * radius);
    if bared(deepest) < notch.bares {
        return deepest;
    }
    let (mut low, mut high) = ((reach - radius).max(NEAR), deepest);
    while high - low > NEAR {
        let middle = (low + high) / 2.0;
        if bared(middle) < notch.bares { low = middle } else { high = middle }
    }
    high
}

/// Distance from a point inside a curve to the curve, along a unit direction.
pub(super) fn first_hit(curve: &Curve, from: Point, direction: Vec2) -> Option<f64> {
    if !curve.contains(from) {
        return None;
    }
    let mut nearest: Option<f64> = None;
    let mut hit = |t: f64| {
        if t > 0.0 && nearest.is_none_or(|best| t < best) {
            nearest = Some(t);
        }
    };
    for piece in curve.segments() {
        match piece {
            Segment::Line { from: a, to: b } => {
                let (along, to) = (b - a, a - from);
                let turn = direction.cross(along);
                if turn.abs() > 1e-12 {
                    let on_line = to.cross(direction) / turn;
                    if (-1e-9..=1.0 + 1e-9).contains(&on_line) {
                        hit(to.cross(along) / turn);
                    }
                }
            }
            Segment::Arc { centre, radius, start, sweep } => {
                let to = centre - from;
                let middle = direction.dot(to);
                let off = middle * middle - to.hypot2() + radius * radius;
                if off >= 0.0 {
                    for t in [middle - off.sqrt(), middle + off.sqrt()] {
                        let angle = (from + t * direction - centre).atan2();
                        let past = (sweep.signum() * (angle - start)).rem_euclid(std::f64::consts::TAU);
                        if past <= sweep.abs() + 1e-9 || past >= std::f64::consts::TAU - 1e-9 {
                            hit(t);
                        }
                    }
                }
            }
        }
    }
    nearest
}
