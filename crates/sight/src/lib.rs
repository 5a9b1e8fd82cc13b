//! What an eye can tell, and from where: colour, contrast, visual angle, the view through a window, and which of
//! several looks people like best. Knows no dial.
//!
//! - [`Srgb`], [`Lab`], [`ciede2000`]: colours, and how different two of them look.
//! - [`Contrast`]: whether a mark stands out from its ground, by the levels of WCAG 2.x.
//! - [`Seat`], [`View`], [`Acuity`]: how large a mark on the table looks, what a cover hides of it, the thinnest
//!   stroke.
//! - [`Homography`]: from one plane to another as a camera or an eye sees it.
//! - [`Votes`], [`Strengths`]: preferences, ranked with their uncertainty.
//!
//! ```
//! use sight::{Acuity, Contrast, HeightLimit, Level, Seat, View};
//!
//! // Char on maple, from across the table, through a cover 3 mm thick.
//! let contrast = Contrast::of(0.054, 0.64)?;
//! assert!(contrast.passes(Level::Text));
//! assert_eq!(contrast.shown(), "6.63");
//! let view = View::upright(Seat::ACROSS);
//! assert!(view.angular_height(10.0) < HeightLimit::LEAST.angle); // 10 mm are not enough ...
//! assert!(view.height_for(HeightLimit::LEAST.angle) < 11.2);     // ... 11.2 mm are,
//! assert!(view.hides(3.0) > 6.0);                                // if 6 mm of the window stay free below them,
//! assert!(view.critical_stroke(Acuity::WEAK) < 1.4);             // in strokes of 1.4 mm for a weak eye
//! # Ok::<(), sight::ContrastError>(())
//! ```
//!
//! # Units
//! Lengths in mm, angles in radians ([`ARCMIN`] makes minutes of arc), luminances relative to white.
//!
//! # Meaningless numbers
//! Seats, acuities, luminances and points are checked where they come in. A size or a depth that is no number gives
//! NaN; nothing panics, but for things, numbered from 0, that are not there.

mod ciede2000;
mod contrast;
mod homography;
mod lab;
mod srgb;
mod viewing;
mod votes;

pub use ciede2000::ciede2000;
pub use contrast::{Contrast, ContrastError, Level, Polarity};
pub use homography::{Axes, Fitted, Homography, HomographyError, Side};
pub use lab::Lab;
pub use srgb::{Srgb, SrgbError, decode, encode, lightness};
pub use viewing::{
    ARCMIN, Acuity, AcuityError, Apparent, HEIGHTS, HeightLimit, OLDER_READER, Seat, SeatError, View, angle_of, arcmin,
    blur, critical_stroke, size_at,
};
pub use votes::{Difference, Favourite, FitError, Lead, Strengths, VoteError, Votes};
