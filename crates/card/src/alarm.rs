//! What no smooth field of light can mend: edges of shadow, spots of light, reflections.

use kurbo::{Point, Rect};

use crate::light::{Field, rms};
use crate::patch::{Decoded, Patch, luminance};
use crate::photo::Photo;
use crate::plan::{CardPlan, Lane};
use crate::plane::Plane;
use crate::refused::{Place, Why};

/// Change of light on the way across an edge that is still taken for an even light, as a share.
const MOST_STEP: f64 = 0.06;
/// How far a white may lie off the smooth light, as a share.
const MOST_WHITE_OFF: f64 = 0.07;
/// Root mean square of the same.
const MOST_WHITE_RMS: f64 = 0.027;
/// How much brighter or darker a black may be than its neighbours let expect, as a share of white.
const MOST_BLACK_OFF: f64 = 0.02;
/// Stray light over the whole card that still lets dark engraving be told from black, as a share of white.
const MOST_STRAY: f64 = 0.2;
/// How much lighter one quarter of a patch of the sample may be than another, as a share of white ...
const MOST_RAMP: f64 = 0.02;
/// ... and of its own light: the grain of wood alone does some percent.
const MOST_RAMP_SHARE: f64 = 0.15;
/// Places along a lane, in mm from one to the next.
const ALONG: f64 = 1.0;
/// Edges of shadow looked for: half the width of what lies between the two sides, and the length of the sides, in mm.
const EDGES: [(usize, usize); 2] = [(1, 5), (5, 8)];

/// Looks for the strongest sign that the light is not what the field says.
pub(crate) fn look(
    photo: &Photo,
    decoded: &Decoded,
    plane: &Plane,
    plan: &CardPlan,
    field: &Field,
    [whites, blacks]: [&[(Point, Patch)]; 2],
) -> Result<(), Why> {
    // Every sign as a multiple of its limit, so that the strongest names the reason.
    let (at, step) = plan
        .lanes
        .iter()
        .map(|lane| steepest(photo, decoded, plane, field, lane))
        .max_by(|a, b| a.1.total_cmp(&b.1))
        .unwrap_or_default();
    let (white, off) = farthest(&field.white_off);
    let (black, stray) = farthest(&field.black_off);
    let shadow = (step / MOST_STEP).max(off / MOST_WHITE_OFF).max(rms(&field.white_off) / MOST_WHITE_RMS);
    let glare = stray / MOST_BLACK_OFF;
    // Under a shadow black darkens by its own small share of what white does; a reflection adds the same to both.
    if glare > 1.0 && stray > 0.3 * step.max(off) {
        return Err(Why::Glare(Place::of(blacks[black].0, plan.size)));
    }
    if shadow > 1.0 {
        let place = if step >= off { at } else { whites[white].0 };
        // Changes are those of a logarithm.
        let percent = 100.0 * (1.0 - (-step.max(off)).exp());
        return Err(Why::Shadow { place: Place::of(place, plan.size), percent });
    }
    let middle = Rect::from_origin_size(Point::ORIGIN, plan.size).center();
    if luminance(field.stray(middle)) > MOST_STRAY {
        return Err(Why::Glare(Place::Sample));
    }
    Ok(())
}

/// Whether each patch of the sample is as light on one side as on the other: a reflection on the sample alone, a shadow of its
/// own, or a sample that lies askew. Patches as they are sampled, face and engraved of every step.
pub(crate) fn look_at_sample(
    photo: &Photo,
    decoded: &Decoded,
    plane: &Plane,
    field: &Field,
    patches: &[[Rect; 2]],
) -> Result<(), Why> {
    for (i, both) in patches.iter().enumerate() {
        for (patch, engraved) in both.iter().zip([false, true]) {
            let light = quarters(*patch)
                .map(|part| decoded.patch(photo, plane, part).luminance() / luminance(field.white(part.center())));
            let (least, most) = light.iter().fold((f64::MAX, 0.0_f64), |(l, m), v| (l.min(*v), m.max(*v)));
            let share = (most - least) / most.max(0.01);
            if most - least > MOST_RAMP && share > MOST_RAMP_SHARE {
                return Err(Why::UnevenPatch { step: i + 1, engraved, percent: 100.0 * share });
            }
        }
    }
    Ok(())
}

fn quarters(rect: Rect) -> [Rect; 4] {
    let middle = rect.center();
    crate::plan::corners(rect).map(|corner| Rect::from_points(corner, middle))
}

/// The value farthest from zero: which, and how far.
fn farthest(values: &[f64]) -> (usize, f64) {
    let far = values.iter().map(|v| v.abs()).enumerate().max_by(|a, b| a.1.total_cmp(&b.1));
    far.unwrap_or((0, 0.0))
}

/// The largest change of light within a short way along a lane, beyond that of the smooth field: where, and what share.
fn steepest(photo: &Photo, decoded: &Decoded, plane: &Plane, field: &Field, lane: &Lane) -> (Point, f64) {
    let count = (lane.from.distance(lane.to) / ALONG).floor() as usize;
    let place = |i: usize| lane.from.lerp(lane.to, (i as f64 + 0.5) / count as f64);
    let values: Vec<f64> = (0..count)
        .map(|i| {
            // A little square of the lane, as wide as the paper certainly is.
            let spot = Rect::from_center_size(place(i), (lane.width - 0.6, lane.width - 0.6));
            let seen = decoded.patch(photo, plane, spot).luminance();
            (seen.max(1e-6) / luminance(field.white(place(i)))).ln()
        })
        .collect();
    let mut worst = (place(0), 0.0);
    for (gap, side) in EDGES {
        let reach = gap + side;
        for i in reach..count.saturating_sub(reach) {
            let mean = |from: usize| values[from..from + side].iter().sum::<f64>() / side as f64;
            let change = (mean(i + gap) - mean(i - reach)).abs();
            if change > worst.1 {
                worst = (place(i), change);
            }
        }
    }
    worst
}
