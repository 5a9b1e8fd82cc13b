//! Lengths and angles as the maker writes and reads them. Inside the code a length is an `f64` in
//! mm and an angle an `f64` in radians; this room turns words into those numbers and back.
//!
//! Knows no dial.

/// Units in which lengths are shown.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
pub enum Units {
    /// Millimetres.
    #[default]
    Millimetres,
    /// Inches, in the fractions of a tape where they fit.
    Inches,
}
