//! Where a reader sits.

use std::error::Error;
use std::fmt;

/// Where a reader's eye is, told from the mark: how far away along the table, and how high above it, in mm.
///
/// ```
/// use sight::Seat;
///
/// let across = Seat::ACROSS;
/// assert_eq!(across.distance().round(), 1060.0);
/// assert_eq!(across.elevation().to_degrees().round(), 26.0);
/// ```
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Seat {
    away: f64,
    eye: f64,
}

/// What is no seat; the text speaks to the maker.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct SeatError {
    what: &'static str,
    value: f64,
    least: f64,
}

/// A reader further off than this, or an eye higher up, in mm, reads no dial: a slip of the unit.
const FURTHEST: f64 = 10_000.0;
/// An eye lower than this over the table, in mm, looks along it and sees no mark that lies there.
const LOWEST: f64 = 10.0;

/// An eye 1.20 m above the floor, over a table of 0.73 m (table heights 71 to 76 cm: furniture guides; seated eye
/// height: from anthropometric tables, from memory).
const SEATED_EYE: f64 = 470.0;

impl Seat {
    /// The owner, at the dial before them. No figure for tabletop games is published that we know of: the three
    /// distances are our own, for a table 0.95 m deep and 0.6 m of its edge for each (furniture guides).
    pub const OWNER: Seat = Seat { away: 350.0, eye: SEATED_EYE };
    /// The neighbour.
    pub const NEIGHBOUR: Seat = Seat { away: 600.0, eye: SEATED_EYE };
    /// The one across the table.
    pub const ACROSS: Seat = Seat { away: 950.0, eye: SEATED_EYE };

    /// A seat whose eye is `away` along the table and `eye` above it, in mm.
    ///
    /// # Errors
    /// [`SeatError`] where a number is none: `away` 0 to 10 m, `eye` 10 mm to 10 m.
    pub fn new(away: f64, eye: f64) -> Result<Seat, SeatError> {
        for (what, value, least) in [("the reader's distance", away, 0.0), ("the eye's height", eye, LOWEST)] {
            if !(least..=FURTHEST).contains(&value) {
                return Err(SeatError { what, value, least });
            }
        }
        Ok(Seat { away, eye })
    }

    /// How far away along the table, in mm.
    #[must_use]
    pub fn away(self) -> f64 {
        self.away
    }

    /// How high the eye is above the table, in mm.
    #[must_use]
    pub fn eye(self) -> f64 {
        self.eye
    }

    /// Slant distance from the eye to the mark, in mm.
    #[must_use]
    pub fn distance(self) -> f64 {
        self.away.hypot(self.eye)
    }

    /// How steeply the reader looks down, in radians: 0 along the table, a quarter turn from straight above.
    #[must_use]
    pub fn elevation(self) -> f64 {
        self.eye.atan2(self.away)
    }
}

impl fmt::Display for SeatError {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        let SeatError { what, value, least } = self;
        write!(f, "{what} cannot be {value} mm: measure it from the mark, {least} mm to {FURTHEST} mm")
    }
}

impl Error for SeatError {}
