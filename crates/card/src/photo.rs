//! A photo in memory: decoded within limits, turned the right way up.

use std::io::Cursor;

use image::{DynamicImage, ImageDecoder, ImageError, ImageReader, Limits, RgbImage};
use kurbo::Point;

use crate::refused::{Refused, Why};

/// Pixels that are read at most: three bytes each, and as much again while it is turned.
pub(crate) const MOST_PIXELS: u64 = 64_000_000;

/// A photo, upright, three bytes for each pixel in sRGB.
#[derive(Clone, Debug)]
pub struct Photo {
    pixels: RgbImage,
}

impl Photo {
    /// Decodes a JPEG or PNG and turns it as its EXIF orientation says. Memory is bounded by the largest picture that is read.
    pub fn decode(bytes: &[u8]) -> Result<Photo, Refused> {
        let no = |error: ImageError| Why::NotAPicture(error.to_string()).at_once();
        if bytes.starts_with(&[0xff, 0xd8]) && !jpeg_ends(bytes) {
            return Err(Why::CutShort.at_once());
        }
        let mut reader =
            ImageReader::new(Cursor::new(bytes)).with_guessed_format().map_err(|error| no(error.into()))?;
        let mut limits = Limits::default();
        limits.max_alloc = Some(8 * MOST_PIXELS);
        reader.limits(limits);
        let mut decoder = reader.into_decoder().map_err(no)?;
        let (width, height) = decoder.dimensions();
        let pixels = u64::from(width) * u64::from(height);
        if pixels > MOST_PIXELS {
            return Err(Why::TooLarge { megapixels: pixels as f64 / 1e6 }.at_once());
        }
        let orientation = decoder.orientation().map_err(no)?;
        let mut picture = DynamicImage::from_decoder(decoder).map_err(no)?;
        picture.apply_orientation(orientation);
        Ok(Photo { pixels: picture.into_rgb8() })
    }

    /// A photo from its pixels, row by row from the top, red, green and blue; nothing when their number does not fit.
    pub fn from_pixels(width: u32, height: u32, rgb: Vec<u8>) -> Option<Photo> {
        RgbImage::from_raw(width, height, rgb).map(|pixels| Photo { pixels })
    }

    /// Width in pixels.
    pub fn width(&self) -> usize {
        self.pixels.width() as usize
    }

    /// Height in pixels.
    pub fn height(&self) -> usize {
        self.pixels.height() as usize
    }

    /// Whether a place lies in the picture and at least `margin` pixels from its edge.
    pub(crate) fn holds(&self, p: Point, margin: f64) -> bool {
        let within = |x: f64, size: usize| x >= margin && x <= size as f64 - margin;
        within(p.x, self.width()) && within(p.y, self.height())
    }

    /// The codes of a pixel.
    pub(crate) fn codes(&self, x: usize, y: usize) -> [u8; 3] {
        let at = 3 * (y * self.width() + x);
        let raw = self.pixels.as_raw();
        [raw[at], raw[at + 1], raw[at + 2]]
    }

    /// One row's bytes.
    pub(crate) fn row(&self, y: usize) -> &[u8] {
        let length = 3 * self.width();
        &self.pixels.as_raw()[y * length..(y + 1) * length]
    }
}

/// A picture of one channel of which values between pixels can be asked. The middle of the first pixel is (0.5, 0.5).
pub(crate) trait Grey {
    fn size(&self) -> (usize, usize);
    fn at(&self, x: usize, y: usize) -> f64;

    /// The value at a place, linear between the middles of pixels; the edge goes on outside.
    fn between(&self, p: Point) -> f64 {
        let (width, height) = self.size();
        let place = |x: f64, size: usize| {
            let x = (x - 0.5).clamp(0.0, (size - 1) as f64);
            let low = (x as usize).min(size.saturating_sub(2));
            (low, (low + 1).min(size - 1), x - low as f64)
        };
        let ((x0, x1, fx), (y0, y1, fy)) = (place(p.x, width), place(p.y, height));
        let along = |y: usize| self.at(x0, y) * (1.0 - fx) + self.at(x1, y) * fx;
        along(y0) * (1.0 - fy) + along(y1) * fy
    }
}

/// Rough brightness of codes, 0 to 255: for edges, not for measuring.
fn brightness(rgb: &[u8]) -> u32 {
    (u32::from(rgb[0]) + 2 * u32::from(rgb[1]) + u32::from(rgb[2])) / 4
}

impl Grey for Photo {
    fn size(&self) -> (usize, usize) {
        (self.width(), self.height())
    }

    fn at(&self, x: usize, y: usize) -> f64 {
        f64::from(brightness(&self.codes(x, y)))
    }
}

/// The brightness of a photo, each pixel the mean of a square block of it.
pub(crate) struct Small {
    pub(crate) width: usize,
    pub(crate) height: usize,
    /// Pixels of the photo along a pixel of this.
    pub(crate) factor: usize,
    pub(crate) values: Vec<u8>,
}

impl Small {
    /// Of a photo, with its longer side at most `longest` pixels.
    pub(crate) fn of(photo: &Photo, longest: usize) -> Small {
        let factor = photo.width().max(photo.height()).div_ceil(longest).max(1);
        let (width, height) = (photo.width() / factor, photo.height() / factor);
        let mut values = Vec::with_capacity(width * height);
        let mut sums = vec![0u32; width];
        for y in 0..height {
            sums.fill(0);
            for row in y * factor..(y + 1) * factor {
                let blocks = photo.row(row).chunks_exact(3 * factor);
                for (sum, block) in sums.iter_mut().zip(blocks) {
                    *sum += block.chunks_exact(3).map(brightness).sum::<u32>();
                }
            }
            let count = (factor * factor) as u32;
            values.extend(sums.iter().map(|sum| (sum / count) as u8));
        }
        Small { width, height, factor, values }
    }
}

impl Grey for Small {
    fn size(&self) -> (usize, usize) {
        (self.width, self.height)
    }

    fn at(&self, x: usize, y: usize) -> f64 {
        f64::from(self.values[y * self.width + x])
    }
}

/// Whether a JPEG goes on to its end-of-image marker (ITU-T T.81, B.1.1 and B.2). Decoders fill up what a broken copy lacks
/// with grey; a reading must not come from that.
fn jpeg_ends(bytes: &[u8]) -> bool {
    let mut at = 2;
    loop {
        // To the next marker: entropy-coded data has no 0xff but those followed by 0, or by a restart marker.
        while let Some(&[first, second]) = bytes.get(at..at + 2).and_then(|pair| <&[u8; 2]>::try_from(pair).ok()) {
            if first == 0xff && !matches!(second, 0x00 | 0xff | 0x01 | 0xd0..=0xd7) {
                break;
            }
            at += 1;
        }
        match bytes.get(at + 1) {
            None => return false,
            Some(0xd9) => return true,
            Some(_) => {}
        }
        let Some(&[high, low]) = bytes.get(at + 2..at + 4).and_then(|pair| <&[u8; 2]>::try_from(pair).ok()) else {
            return false;
        };
        at += 2 + usize::from(high) * 256 + usize::from(low);
    }
}
