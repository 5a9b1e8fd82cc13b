//! Where the sample really lies: a hand puts it a little aside, and a plate of some thickness seen from the side is shifted.

use kurbo::{Point, Rect, Vec2};

use crate::photo::{Grey, Photo};
use crate::plan::CardPlan;
use crate::plane::Plane;

/// Pixels to a mm in the flattened picture of the sample.
const FINE: f64 = 2.0;
/// How far the sample may lie aside, in mm: 3 mm of wood seen at 35 degrees, and the hand.
const REACH: f64 = 3.0;
/// Left out of each patch at its edges, in mm: the width of a soft edge.
const RIM: f64 = 0.5;

/// The shift in mm that makes every patch of the sample most uniform in itself.
pub(crate) fn shift(photo: &Photo, plane: &Plane, plan: &CardPlan) -> Vec2 {
    let patches: Vec<Rect> = plan.sample.steps.iter().flat_map(|step| [step.face, step.engraved]).collect();
    let Some(all) = patches.iter().copied().reduce(|a, b| a.union(b)) else { return Vec2::ZERO };
    let flat = Flat::of(photo, plane, all.inset(REACH + 1.0));
    let steps = (REACH * FINE) as i32;
    let mut best = (f64::MAX, Vec2::ZERO);
    for i in -steps..=steps {
        for k in -steps..=steps {
            let shift = Vec2::new(f64::from(i), f64::from(k)) / FINE;
            let unrest: f64 = patches.iter().map(|patch| flat.variance(patch.inset(-RIM) + shift)).sum();
            // Far places must be better by more: the grain of wood alone is no reason to move.
            let unrest = (unrest / patches.len() as f64 + 4.0) * (1.0 + 0.02 * shift.hypot2());
            if unrest < best.0 {
                best = (unrest, shift);
            }
        }
    }
    best.1
}

/// A flattened part of the card, as sums over all pixels left of and below each place.
struct Flat {
    from: Point,
    wide: usize,
    sums: Vec<[f64; 2]>,
}

impl Flat {
    fn of(photo: &Photo, plane: &Plane, part: Rect) -> Flat {
        let (width, height) = ((part.width() * FINE) as usize, (part.height() * FINE) as usize);
        let wide = width + 1;
        let mut sums = vec![[0.0; 2]; wide * (height + 1)];
        for y in 0..height {
            let mut row = [0.0; 2];
            for x in 0..width {
                let offset = Vec2::new(x as f64 + 0.5, y as f64 + 0.5) / FINE;
                let value = photo.between(plane.map(part.origin() + offset));
                row = [row[0] + value, row[1] + value * value];
                let below = sums[y * wide + x + 1];
                sums[(y + 1) * wide + x + 1] = [below[0] + row[0], below[1] + row[1]];
            }
        }
        Flat { from: part.origin(), wide, sums }
    }

    /// Variance of the brightness (coded) in a rectangle.
    fn variance(&self, rect: Rect) -> f64 {
        let at = |v: f64| (v * FINE).round().max(0.0) as usize;
        let (x0, x1) = (at(rect.x0 - self.from.x), at(rect.x1 - self.from.x));
        let (y0, y1) = (at(rect.y0 - self.from.y), at(rect.y1 - self.from.y));
        let corner = |x: usize, y: usize| self.sums.get(y * self.wide + x).copied().unwrap_or_default();
        let [sum, squares] =
            [0, 1].map(|k| corner(x1, y1)[k] + corner(x0, y0)[k] - corner(x0, y1)[k] - corner(x1, y0)[k]);
        let count = ((x1 - x0) * (y1 - y0)).max(1) as f64;
        (squares / count - (sum / count).powi(2)).max(0.0)
    }
}
