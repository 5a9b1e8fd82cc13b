//! From the light on the sensor to a file: lens, noise, tones, JPEG.

use super::{Camera, Chance};

/// What lens and camera do.
#[derive(Clone, Debug)]
pub struct Development {
    /// Standard deviation of the defocus in pixels.
    pub blur: f64,
    /// Exposure: linear value that the brightest paper comes to; 1 is where the camera clips.
    pub white: f64,
    /// Variance of the noise for each unit of light.
    pub noise: f64,
    /// Fall of light towards the corners, as a share of the fourth power of the cosine.
    pub vignette: f64,
    /// Amplitude of an S-shaped tone curve, in coded values from 0 to 1.
    pub tone: f64,
    /// JPEG quality.
    pub quality: u8,
}

/// A developed picture, upright, red, green and blue.
pub struct Picture {
    pub width: usize,
    pub height: usize,
    pub rgb: Vec<u8>,
}

impl Development {
    /// What the lens leaves of the light at a place in the picture.
    pub fn vignette_at(&self, camera: &Camera, [u, v]: [f64; 2]) -> f64 {
        1.0 - self.vignette * (1.0 - camera.off_axis(u, v).powi(4))
    }

    /// Codes of linear light that is multiplied by `gain` and by the exposure.
    pub fn develop(&self, camera: &Camera, mut linear: Vec<[f32; 3]>, gain: f64, seed: u64) -> Picture {
        let (width, height) = (camera.width, camera.height);
        defocus(&mut linear, width, height, self.blur);
        let mut chance = Chance::new(seed ^ 0x5e45_0e15);
        let mut rgb = Vec::with_capacity(3 * linear.len());
        let codes = self.codes();
        for (i, light) in linear.iter().enumerate() {
            let at = [(i % width) as f64 + 0.5, (i / width) as f64 + 0.5];
            let factor = self.white * gain * self.vignette_at(camera, at);
            for c in light {
                let exact = f64::from(*c) * factor;
                let noisy = exact + (self.noise * exact + 1e-6).sqrt() * chance.normal();
                rgb.push(codes[(noisy.clamp(0.0, 1.0) * 16_383.0 + 0.5) as usize]);
            }
        }
        Picture { width, height, rgb }
    }

    /// Codes of 16384 steps of linear light: the curve of sRGB, then the phone's own.
    fn codes(&self) -> Vec<u8> {
        (0..16_384)
            .map(|i| {
                let light = f64::from(i) / 16_383.0;
                let coded = if light < 0.003_130_8 { light * 12.92 } else { 1.055 * light.powf(1.0 / 2.4) - 0.055 };
                let toned = coded - self.tone * (coded * std::f64::consts::TAU).sin();
                (toned * 255.0).round().clamp(0.0, 255.0) as u8
            })
            .collect()
    }
}

/// Two boxes one after the other, along rows and columns: a soft disc with the standard deviation asked for.
fn defocus(linear: &mut Vec<[f32; 3]>, width: usize, height: usize, sigma: f64) {
    if sigma < 0.3 {
        return;
    }
    for pass in 0..4 {
        // Fractional boxes: the two nearest whole ones, mixed. A box of 2 r + 1 has variance r (r + 1) / 3.
        let r = (-1.0 + (1.0 + 6.0 * sigma * sigma).sqrt()) / 2.0;
        let (low, part) = (r.floor() as usize, r.fract() as f32);
        let mut next = vec![[0.0; 3]; linear.len()];
        // Rows become columns: two passes turn the picture back.
        let (w, h) = if pass % 2 == 0 { (width, height) } else { (height, width) };
        for y in 0..h {
            let row = &linear[y * w..(y + 1) * w];
            for c in 0..3 {
                let at = |x: isize| row[x.clamp(0, w as isize - 1) as usize][c];
                let low = low as isize;
                let mut inner: f32 = (-low..=low).map(at).sum();
                for x in 0..w {
                    let i = x as isize;
                    let outer = inner + at(i - low - 1) + at(i + low + 1);
                    let (a, b) = (inner / (2 * low + 1) as f32, outer / (2 * low + 3) as f32);
                    next[x * h + y][c] = a * (1.0 - part) + b * part;
                    inner += at(i + low + 1) - at(i - low);
                }
            }
        }
        *linear = next;
    }
}

impl Picture {
    /// As a JPEG file.
    pub fn jpeg(&self, quality: u8) -> Vec<u8> {
        let mut file = Vec::new();
        image::codecs::jpeg::JpegEncoder::new_with_quality(&mut file, quality)
            .encode(&self.rgb, self.width as u32, self.height as u32, image::ExtendedColorType::Rgb8)
            .expect("a picture of this size can be coded");
        file
    }
}
