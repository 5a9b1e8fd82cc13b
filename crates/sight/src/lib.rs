//! Colour and contrast as an eye sees them. Knows no dial.

mod srgb;

pub use srgb::{Srgb, SrgbError, decode, encode, lightness};
