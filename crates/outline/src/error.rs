//! What cannot be done with an outline, in words for a maker.

use std::fmt;

/// Why an outline cannot be made.
#[derive(Clone, Debug, PartialEq)]
pub enum OutlineError {
    /// Fewer than three corners.
    TooFewCorners(usize),
    /// A coordinate or size is not a finite number.
    NotFinite,
    /// Two sides cross; counted from 1.
    SidesCross(usize, usize),
    /// A corner's rounding does not fit between its neighbours; counted from 1.
    CornerDoesNotFit {
        /// The corner.
        corner: usize,
        /// Radius asked for, in mm.
        asked: f64,
        /// Largest radius that fits, in mm.
        fits: f64,
    },
    /// Nothing encloses an area.
    Vanished,
    /// An offset came back with an open piece.
    OpenOffset,
}

impl fmt::Display for OutlineError {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        match self {
            OutlineError::TooFewCorners(n) => write!(f, "an outline needs at least three corners, this one has {n}"),
            OutlineError::NotFinite => write!(f, "a coordinate is not a finite number"),
            OutlineError::SidesCross(a, b) => write!(f, "side {a} crosses side {b}"),
            OutlineError::CornerDoesNotFit { corner, asked, fits } => {
                write!(f, "corner {corner} cannot be rounded with {asked:.2} mm, {fits:.2} mm fits")
            }
            OutlineError::Vanished => write!(f, "nothing is left of it"),
            OutlineError::OpenOffset => write!(f, "its offset does not close"),
        }
    }
}

impl std::error::Error for OutlineError {}
