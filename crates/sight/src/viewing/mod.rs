//! A reader at a table, and a mark that lies on it.
//!
//! # Frame
//! The middle of the mark is the origin; x runs to the mark's right, y to its own “up”, both in the plane of the
//! table, mm. The azimuth is the angle, counter-clockwise, from the mark's up to the direction in which the reader
//! looks over the table: 0 for the one before whom the mark stands upright, half a turn for the one across who sees
//! it upside down.

mod acuity;
mod angle;
mod hidden;
mod limits;
mod seat;
mod seen;
mod view;

pub use acuity::{Acuity, AcuityError, OLDER_READER, blur, critical_stroke};
pub use angle::{ARCMIN, angle_of, arcmin, size_at};
pub use limits::{HEIGHTS, HeightLimit};
pub use seat::{Seat, SeatError};
pub use view::{Apparent, View};
