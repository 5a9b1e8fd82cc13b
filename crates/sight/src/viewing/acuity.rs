//! How fine a reader's eye is.

use std::error::Error;
use std::fmt;

use super::{ARCMIN, size_at};

/// How much coarser an older reader sees, or anybody in a dim room: common practice for readers over 60, no figure of a
/// standard. (ISO 24509:2019 has a full method by age, luminance and contrast; it is not built in.)
pub const OLDER_READER: f64 = 1.5;

/// Standard deviation of the blur of a normal eye, in minutes of arc. Blur added to fine lines begins to tell once it
/// exceeds 0.5' (D. M. Levi, S. A. Klein, Equivalent intrinsic blur in spatial vision, Vision Research 30 (1990)
/// 1971-1993, abstract).
const NORMAL_BLUR: f64 = 0.5;

/// Snellen acuity: 20/S. Such a reader tells apart at 20 feet what a normal eye does at S feet.
///
/// ```
/// use sight::{Acuity, arcmin, critical_stroke};
///
/// let weak = Acuity::snellen(40.0)?;
/// assert!((critical_stroke(1000.0, weak) - 0.58).abs() < 0.005); // mm
/// assert_eq!(weak.older().to_string(), "20/60");
/// # Ok::<(), sight::AcuityError>(())
/// ```
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Acuity {
    /// S over 20: how many minutes of arc the finest stroke spans.
    minutes: f64,
}

/// What is no acuity; the text speaks to the maker.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct AcuityError(f64);

impl Acuity {
    /// 20/20: strokes of 1' and letters of 5' (Snellen).
    pub const NORMAL: Acuity = Acuity { minutes: 1.0 };
    /// 20/40.
    pub const WEAK: Acuity = Acuity { minutes: 2.0 };
    /// 20/70, where low vision begins (practice under US Section 508: sizes times 3.5).
    pub const LOW: Acuity = Acuity { minutes: 3.5 };

    /// Acuity of 20 over this.
    ///
    /// # Errors
    /// [`AcuityError`] outside 5 to 400: sharper than any eye, or next to blind.
    pub fn snellen(over: f64) -> Result<Acuity, AcuityError> {
        if (5.0..=400.0).contains(&over) { Ok(Acuity { minutes: over / 20.0 }) } else { Err(AcuityError(over)) }
    }

    /// The same reader's acuity when older or in a dim room, see [`OLDER_READER`].
    #[must_use]
    pub fn older(self) -> Acuity {
        Acuity { minutes: self.minutes * OLDER_READER }
    }

    /// The finest stroke, as a visual angle in radians: S/20 minutes of arc.
    #[must_use]
    pub fn resolves(self) -> f64 {
        self.minutes * ARCMIN
    }

    /// The S of 20/S.
    #[must_use]
    pub fn over(self) -> f64 {
        self.minutes * 20.0
    }
}

/// The thinnest stroke in mm that this reader can make out at a distance in mm, square to the line of sight and at full
/// contrast: distance · S/20 · tan 1' (method of G. L. Howett, Size of letters required for visibility as a function of
/// viewing distance and observer visual acuity, NBS Technical Note 1180 (1983); the constant is computed here).
///
/// The height of a numeral follows from its ratio of stroke to height. For one that lies flat see
/// [`View::critical_stroke`](crate::View::critical_stroke).
#[must_use]
pub fn critical_stroke(distance: f64, acuity: Acuity) -> f64 {
    size_at(acuity.resolves(), distance)
}

/// Standard deviation, in radians, of the Gaussian that blurs a picture to what this reader sees: S/20 times 0.5'.
///
/// The 0.5' of a normal eye are measured (Levi and Klein 1990); that it grows in proportion to S is our own proposal,
/// for pictures and not for verdicts. Measured, it grows somewhat slower (J. J. McAnany and others, Object frequency
/// characteristics of visual acuity, Investigative Ophthalmology & Visual Science 52 (2011) 9534-9538, abstract), so
/// the picture of a weak eye errs on the blurred side. Bars as wide as the finest stroke keep 29 % of their contrast.
///
/// ```
/// use sight::{Acuity, arcmin, blur};
/// assert!((arcmin(blur(Acuity::WEAK)) - 1.0).abs() < 1e-12);
/// ```
#[must_use]
pub fn blur(acuity: Acuity) -> f64 {
    NORMAL_BLUR * acuity.resolves()
}

impl fmt::Display for Acuity {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        write!(f, "20/{}", (self.over() * 10.0).round() / 10.0)
    }
}

impl fmt::Display for AcuityError {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        write!(f, "no reader has an acuity of 20/{}: give a number from 5 to 400, 20 for a normal eye", self.0)
    }
}

impl Error for AcuityError {}
