//! Colour and contrast as an eye sees them. Knows no dial.

mod ciede2000;
mod contrast;
mod lab;
mod srgb;

pub use ciede2000::ciede2000;
pub use contrast::{Contrast, ContrastError, Level, Polarity};
pub use lab::Lab;
pub use srgb::{Srgb, SrgbError, decode, encode, lightness};
