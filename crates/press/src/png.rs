//! Our own pictures as PNG.

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
    let (width, height) = ((size.width() * scale).ceil() as u32, (size.height() * scale).ceil() as u32);
    let mut pixels = Pixmap::new(width.max(1), height.max(1)).ok_or_else(|| PngError("no room for it".into()))?;
    resvg::render(&tree, Transform::from_scale(scale, scale), &mut pixels.as_mut());
    pixels.encode_png().map_err(|error| PngError(error.to_string()))
}
