//! Numerals, words and symbols as outlines to engrave, from the shipped font and our own symbols.
//!
//! Knows no dial. Lengths are in mm, y up.

/// Weight of the strokes.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash, PartialOrd, Ord)]
#[expect(missing_docs, reason = "the names say it")]
pub enum Weight {
    Regular,
    Medium,
    SemiBold,
    Bold,
}

/// What tells a figure that can be read upside down from its twin.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
pub enum TwinMark {
    /// Nothing.
    None,
    /// A bar under the mark.
    Bar,
    /// A dot after the mark.
    Dot,
}

/// One of the built-in symbols.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
pub struct Symbol(usize);
