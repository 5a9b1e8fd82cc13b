//! Lengths and angles as the maker writes and reads them. Inside the code a length is an `f64` in
//! mm and an angle an `f64` in radians; this room turns words into those numbers and back.
//!
//! Knows no dial.

mod angle;
mod interval;
mod length;
mod unreadable;

pub use angle::parse_angle;
pub use interval::Interval;
pub use length::{INCH, Units, parse_length, show};
pub use unreadable::Unreadable;
