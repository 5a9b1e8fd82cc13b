//! Colour and contrast as an eye sees them. Knows no dial.

mod ciede2000;
mod contrast;
mod homography;
mod lab;
mod srgb;
mod viewing;

pub use ciede2000::ciede2000;
pub use contrast::{Contrast, ContrastError, Level, Polarity};
pub use homography::{Axes, Fitted, Homography, HomographyError, Side};
pub use lab::Lab;
pub use srgb::{Srgb, SrgbError, decode, encode, lightness};
pub use viewing::{
    ARCMIN, Acuity, AcuityError, Apparent, HEIGHTS, HeightLimit, OLDER_READER, Seat, SeatError, View, angle_of, arcmin,
    blur, critical_stroke, size_at,
};
