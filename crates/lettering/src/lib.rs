//! Numerals, words and symbols as outlines to engrave, from the shipped font and our own symbols.
//!
//! - [`Lettering`]: the shipped font at one [`Weight`], with a plain or a slashed [`Zero`]: texts as outlines, and their finest places.
//! - [`Symbol`]: the built-in drawings.
//! - [`upside_down_twins`], [`reads_upside_down`]: marks that can be taken for another one when read upside down.
//!
//! The font is Atkinson Hyperlegible Next 2.001 (SIL Open Font License 1.1, beside it in `fonts/`), chosen because its 6 and
//! 9 differ by more than half a turn.
//!
//! Knows no dial. Lengths are in mm, y up.

mod closeness;
mod face;
mod fine;
mod inscription;
mod kern;
mod raster;
mod symbol;
mod twins;
mod weight;
mod zero;

pub use face::Lettering;
pub use inscription::LetteringError;
pub use symbol::Symbol;
pub use twins::{TWIN_LIMIT, Twin, TwinMark, reads_upside_down, upside_down_twins};
pub use weight::Weight;
pub use zero::Zero;
