//! The light of a patch of the card in the photo.

use kurbo::{Point, Rect};

use crate::photo::Photo;
use crate::plane::Plane;

/// Codes from which on a pixel may be brighter than it says.
const BRIGHT: u8 = 250;
/// Codes down from which a pixel may be darker than it says.
const DARK: u8 = 3;
/// Pixels looked at in one patch at most: more would not make the mean better than the rest of the chain.
const ENOUGH: f64 = 2000.0;
/// Share left out at either end: dirt, dust, hot pixels.
const TRIM: f64 = 0.1;

/// What a camera saw of a patch.
#[derive(Clone, Copy, Debug, Default)]
pub(crate) struct Patch {
    /// Linear light of red, green and blue, 0 to 1: trimmed means, clipped pixels left out.
    pub(crate) light: [f64; 3],
    /// Standard deviation of the pixels' light, the mean over channels relative to the light.
    pub(crate) spread: f64,
    /// Pixels looked at.
    pub(crate) count: usize,
    /// Share of pixels too bright in any channel.
    pub(crate) bright: f64,
    /// Share of pixels too dark in any channel.
    pub(crate) dark: f64,
}

impl Patch {
    /// Luminance of the light (weights of IEC 61966-2-1, as in WCAG 2.2).
    pub(crate) fn luminance(&self) -> f64 {
        luminance(self.light)
    }
}

/// Luminance of linear sRGB.
pub(crate) fn luminance([red, green, blue]: [f64; 3]) -> f64 {
    0.2126 * red + 0.7152 * green + 0.0722 * blue
}

/// Linear light of every code.
pub(crate) struct Decoded([f64; 256]);

impl Decoded {
    pub(crate) fn new() -> Decoded {
        Decoded(std::array::from_fn(|code| sight::decode(code as f64 / 255.0)))
    }

    /// Looks at a rectangle of the card, given in mm.
    pub(crate) fn patch(&self, photo: &Photo, plane: &Plane, rect: Rect) -> Patch {
        let mut histogram = [[0u32; 256]; 3];
        let (mut count, mut bright, mut dark) = (0u32, 0u32, 0u32);
        each_pixel(photo, crate::plan::corners(rect).map(|p| plane.map(p)), |codes| {
            count += 1;
            let too_bright = codes.iter().any(|code| *code >= BRIGHT);
            let too_dark = codes.iter().any(|code| *code <= DARK);
            bright += u32::from(too_bright);
            dark += u32::from(too_dark);
            if !too_bright && !too_dark {
                codes.iter().zip(&mut histogram).for_each(|(code, histogram)| histogram[usize::from(*code)] += 1);
            }
        });
        let channels = histogram.map(|histogram| self.trimmed(&histogram));
        let share = |part: u32| f64::from(part) / f64::from(count.max(1));
        Patch {
            light: channels.map(|(mean, _)| mean),
            spread: channels.iter().map(|(mean, spread)| spread / mean.max(1e-4)).sum::<f64>() / 3.0,
            count: count as usize,
            bright: share(bright),
            dark: share(dark),
        }
    }

    /// Mean without the ends, and standard deviation with them.
    fn trimmed(&self, histogram: &[u32; 256]) -> (f64, f64) {
        let total = histogram.iter().map(|n| f64::from(*n)).sum::<f64>();
        let (low, high) = (TRIM * total, (1.0 - TRIM) * total);
        let (mut passed, mut kept, mut sum, mut squares) = (0.0, 0.0, 0.0, 0.0);
        for (n, light) in histogram.iter().map(|n| f64::from(*n)).zip(self.0) {
            let part = (passed + n).min(high) - passed.max(low);
            if part > 0.0 {
                kept += part;
                sum += part * light;
            }
            squares += n * light * light;
            passed += n;
        }
        if total == 0.0 || kept == 0.0 {
            return (0.0, 0.0);
        }
        let mean = sum / kept;
        (mean, (squares / total - mean * mean).max(0.0).sqrt())
    }
}

/// Calls for the pixels whose middles lie in a convex quadrangle, evenly thinned when there are more than enough.
fn each_pixel(photo: &Photo, quad: [Point; 4], mut see: impl FnMut([u8; 3])) {
    if quad.iter().any(|p| !p.is_finite()) {
        return;
    }
    let range = |f: fn(&Point) -> f64, size: usize| {
        let (low, high) = quad.iter().map(f).fold((f64::MAX, f64::MIN), |(l, h), v| (l.min(v), h.max(v)));
        (low.max(0.0), high.min(size as f64))
    };
    let ((x0, x1), (y0, y1)) = (range(|p| p.x, photo.width()), range(|p| p.y, photo.height()));
    let turn = (quad[2] - quad[0]).cross(quad[3] - quad[1]);
    let stride = (turn.abs() / 2.0 / ENOUGH).sqrt().max(1.0) as usize;
    let inside = |p: Point| (0..4).all(|i| (quad[(i + 1) % 4] - quad[i]).cross(p - quad[i]) * turn >= 0.0);
    for y in (y0 as usize..y1.ceil() as usize).step_by(stride) {
        for x in (x0 as usize..x1.ceil() as usize).step_by(stride) {
            if inside(Point::new(x as f64 + 0.5, y as f64 + 0.5)) {
                see(photo.codes(x, y));
            }
        }
    }
}
