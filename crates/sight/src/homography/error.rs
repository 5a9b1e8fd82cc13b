//! Why there is no map, in the maker's words.

use std::error::Error;
use std::fmt;

/// The plane in which something is wrong.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Side {
    /// The plane that is mapped.
    Source,
    /// The plane it is mapped to.
    Target,
}

/// Why a map cannot be had from these points. Points are counted from 0, as in the slice that was given.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum HomographyError {
    /// Fewer than four pairs.
    TooFew {
        /// How many were given.
        given: usize,
    },
    /// A coordinate that is no number, or beyond 1e9.
    NoPlace {
        /// Which pair.
        pair: usize,
    },
    /// Four different points are needed on each side, and so many lie in one place that fewer are left.
    SamePlace {
        /// On which side.
        side: Side,
        /// The first two that coincide.
        pairs: [usize; 2],
    },
    /// All points but at most one lie on one line (of four points, three).
    OnALine {
        /// On which side.
        side: Side,
    },
    /// The points go round the other way than the axes say: seen in a mirror, or two of them swapped.
    TurnedOver,
    /// The points do not come in the same order on both sides: some would lie behind the eye.
    Crossed,
    /// The map squeezes the plane into a line.
    Flat,
}

impl fmt::Display for Side {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        f.write_str(match self {
            Side::Source => "in the plane that is mapped",
            Side::Target => "in the plane it is mapped to",
        })
    }
}

impl fmt::Display for HomographyError {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        match self {
            HomographyError::TooFew { given } => {
                write!(f, "only {given} points are known in both planes, and a view needs four: find more marks")
            }
            HomographyError::NoPlace { pair } => {
                write!(f, "point {} has no place: its coordinates must be numbers within a thousand million", pair + 1)
            }
            HomographyError::SamePlace { side, pairs: [one, other] } => write!(
                f,
                "points {} and {} lie in the same place {side}, and fewer than four are left: use four that lie apart",
                one + 1,
                other + 1
            ),
            HomographyError::OnALine { side } => write!(
                f,
                "all points but one lie on a line {side}, which leaves the tilt open: use four of which no three are in line"
            ),
            HomographyError::TurnedOver => f.write_str(
                "the points go round the other way: the plane is seen in a mirror, or two points are swapped; \
                 look at their order",
            ),
            HomographyError::Crossed => f.write_str(
                "the points do not come in the same order round both planes, as no view can have it: \
                 two of them are swapped; look at their order",
            ),
            HomographyError::Flat => f.write_str(
                "this map squeezes the plane into a line, as if it were seen edge-on: look at it from further above",
            ),
        }
    }
}

impl Error for HomographyError {}
