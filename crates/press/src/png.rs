//! Our own pictures as PNG.

use ::png::{BitDepth, ColorType, Encoder, Filter};
use resvg::tiny_skia::{Pixmap, Transform};
use resvg::usvg::{Options, Tree};
use std::fmt;

/// Pixels for each mm, as long as the picture stays below `LARGEST`.
const DENSITY: f32 = 7.0;
/// Longest side in pixels.
const LARGEST: f32 = 1800.0;

/// Why a picture cannot be rastered.
#[derive(Debug)]
pub struct PngError(String);

impl fmt::Display for PngError {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        write!(f, "a picture could not be rastered ({}): this is a fault of the program, please report it", self.0)
    }
}

impl std::error::Error for PngError {}

/// Rasters one of our pictures.
///
/// # Errors
/// A fault in our own SVG.
pub fn png(svg: &str) -> Result<Vec<u8>, PngError> {
    let tree = Tree::from_str(svg, &Options::default()).map_err(|error| PngError(error.to_string()))?;
    let size = tree.size();
    // Sizes in mm are read at 96 pixels an inch.
    let mm = 25.4 / 96.0;
    let scale = (DENSITY * mm).min(LARGEST / size.width().max(size.height()));
    // Whole pixels: one that the picture covers in part would shine through at its edge.
    let (width, height) = ((size.width() * scale).floor() as u32, (size.height() * scale).floor() as u32);
    let mut pixels = Pixmap::new(width.max(1), height.max(1)).ok_or_else(|| PngError("no room for it".into()))?;
    resvg::render(&tree, Transform::from_scale(scale, scale), &mut pixels.as_mut());
    encoded(pixels).map_err(|error| PngError(error.to_string()))
}

/// Packed as it lies and, where all of it is opaque, without the channel of transparency: pictures of flat colours come out smaller, and
/// sooner, than with the filters that photos want.
fn encoded(pixels: Pixmap) -> Result<Vec<u8>, ::png::EncodingError> {
    let (width, height) = (pixels.width(), pixels.height());
    let opaque = pixels.pixels().iter().all(|pixel| pixel.alpha() == u8::MAX);
    let (colour, data) = if opaque {
        (ColorType::Rgb, pixels.data().as_chunks::<4>().0.iter().flat_map(|&[r, g, b, _]| [r, g, b]).collect())
    } else {
        (ColorType::Rgba, pixels.take_demultiplied())
    };
    let mut file = Vec::new();
    let mut encoder = Encoder::new(&mut file, width, height);
    encoder.set_color(colour);
    encoder.set_depth(BitDepth::Eight);
    encoder.set_filter(Filter::NoFilter);
    let mut writer = encoder.write_header()?;
    writer.write_image_data(&data)?;
    writer.finish()?;
    Ok(file)
}
