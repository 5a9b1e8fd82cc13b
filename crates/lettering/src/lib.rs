//! Numerals, words and symbols as outlines to engrave, from the shipped font and our own symbols.
//!
//! The font is Atkinson Hyperlegible Next (SIL Open Font License 1.1), chosen because its 6 and 9 differ by more than
//! half a turn. Its zero is slashed; on a wheel of figures alone there is no letter O to tell it from, and the slash halves the
//! standing island, so that [`Lettering`] draws the plain oval inside the font's own outline instead.
//!
//! Knows no dial. Lengths are in mm, y up.

mod face;
mod fine;
mod inscription;
mod symbol;
mod twins;
mod weight;

pub use face::Lettering;
pub use inscription::LetteringError;
pub use symbol::Symbol;
pub use twins::{TWIN_LIMIT, Twin, TwinMark, reads_upside_down, upside_down_twins};
pub use weight::Weight;
