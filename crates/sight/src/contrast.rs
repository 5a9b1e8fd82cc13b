//! Contrast of a mark against its ground, by luminance.

use std::error::Error;
use std::fmt;

use crate::Srgb;

/// The light that every eye gets from elsewhere, relative to white (WCAG 2.2, “contrast ratio”).
const FLARE: f64 = 0.05;
/// Rounding of the last digits, far below any threshold: it must not turn black on white, 21, into 20.99.
const ROUNDING: f64 = 1e-11;

/// A mark of one luminance on a ground of another, both relative to white, 0 to 1.
///
/// ```
/// use sight::{Contrast, Level, Polarity, Srgb};
///
/// let grey: Srgb = "#777777".parse()?;
/// let white: Srgb = "#ffffff".parse()?;
/// let contrast = Contrast::between(grey, white);
/// assert_eq!(contrast.shown(), "4.47");                // 4.478: never rounded up
/// assert!(!contrast.passes(Level::Text));
/// assert!(contrast.passes(Level::Graphics));
/// assert_eq!(contrast.polarity(), Polarity::DarkOnLight);
/// # Ok::<(), sight::SrgbError>(())
/// ```
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Contrast {
    mark: f64,
    ground: f64,
}

/// Which of mark and ground is the darker one.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
pub enum Polarity {
    /// A dark mark on a light ground.
    DarkOnLight,
    /// A light mark on a dark ground. Light strokes bloom, so they may be thinner (DOD-HDBK-791(AM) 6-5.3.2.3).
    LightOnDark,
    /// Mark and ground are equally light.
    Even,
}

/// A level of contrast that WCAG 2.x asks for.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
pub enum Level {
    /// Text, 4.5.
    Text,
    /// Large text (from 18 points, or 14 bold), 3.
    LargeText,
    /// Text at the enhanced level, 7.
    TextEnhanced,
    /// Large text at the enhanced level, 4.5.
    LargeTextEnhanced,
    /// Lines and shapes that carry a meaning, 3.
    Graphics,
}

/// A luminance that cannot be; the text speaks to the maker.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct ContrastError {
    what: &'static str,
    luminance: f64,
}

impl Contrast {
    /// Contrast of a mark's colour on the ground's.
    #[must_use]
    pub fn between(mark: Srgb, ground: Srgb) -> Contrast {
        Contrast { mark: mark.luminance(), ground: ground.luminance() }
    }

    /// Contrast of measured luminances (or reflectances), relative to white, 0 to 1.
    ///
    /// # Errors
    /// [`ContrastError`] where one is no number from 0 to 1.
    pub fn of(mark: f64, ground: f64) -> Result<Contrast, ContrastError> {
        for (what, luminance) in [("the mark", mark), ("the ground", ground)] {
            if !(0.0..=1.0).contains(&luminance) {
                return Err(ContrastError { what, luminance });
            }
        }
        Ok(Contrast { mark, ground })
    }

    /// Contrast ratio, 1 to 21 (WCAG 2.2, “contrast ratio”): the lighter over the darker, 0.05 added to each for the
    /// light that falls into the eye from elsewhere.
    #[must_use]
    pub fn ratio(self) -> f64 {
        (self.mark.max(self.ground) + FLARE) / (self.mark.min(self.ground) + FLARE)
    }

    /// The ratio with two digits behind the point, the rest cut off: what is shown never passes where the contrast
    /// fails (WCAG 2.2, Understanding 1.4.3: 4.499 does not meet 4.5).
    #[must_use]
    pub fn shown(self) -> String {
        format!("{:.2}", ((self.ratio() + ROUNDING) * 100.0).floor() / 100.0)
    }

    /// Whether the ratio meets a level.
    #[must_use]
    pub fn passes(self, level: Level) -> bool {
        self.ratio() + ROUNDING >= level.least()
    }

    /// The levels that the ratio meets, in the order of [`Level::ALL`].
    pub fn levels(self) -> impl Iterator<Item = Level> {
        Level::ALL.into_iter().filter(move |level| self.passes(*level))
    }

    /// Michelson contrast, 0 to 1: difference over sum, without flare. 0 where both are black.
    #[must_use]
    pub fn michelson(self) -> f64 {
        let sum = self.mark + self.ground;
        if sum > 0.0 { (self.mark - self.ground).abs() / sum } else { 0.0 }
    }

    /// Weber contrast: difference of mark and ground over the ground, without flare; -1 for a black mark, positive
    /// for a lighter one. None on a black ground, where it has no value.
    #[must_use]
    pub fn weber(self) -> Option<f64> {
        (self.ground > 0.0).then(|| (self.mark - self.ground) / self.ground)
    }

    /// Which of the two is the darker one.
    #[must_use]
    pub fn polarity(self) -> Polarity {
        if self.mark < self.ground {
            Polarity::DarkOnLight
        } else if self.mark > self.ground {
            Polarity::LightOnDark
        } else {
            Polarity::Even
        }
    }

    /// Luminance of the mark, relative to white.
    #[must_use]
    pub fn mark(self) -> f64 {
        self.mark
    }

    /// Luminance of the ground, relative to white.
    #[must_use]
    pub fn ground(self) -> f64 {
        self.ground
    }
}

impl Level {
    /// Every level, in the order of the criteria's numbers.
    pub const ALL: [Level; 5] =
        [Level::Text, Level::LargeText, Level::TextEnhanced, Level::LargeTextEnhanced, Level::Graphics];

    /// The least ratio (WCAG 2.2; unchanged since 2.0 for text and 2.1 for graphics).
    #[must_use]
    pub fn least(self) -> f64 {
        match self {
            Level::Text | Level::LargeTextEnhanced => 4.5,
            Level::LargeText | Level::Graphics => 3.0,
            Level::TextEnhanced => 7.0,
        }
    }

    /// Number of the success criterion.
    #[must_use]
    pub fn criterion(self) -> &'static str {
        match self {
            Level::Text | Level::LargeText => "1.4.3",
            Level::TextEnhanced | Level::LargeTextEnhanced => "1.4.6",
            Level::Graphics => "1.4.11",
        }
    }
}

impl fmt::Display for Level {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        f.write_str(match self {
            Level::Text => "text",
            Level::LargeText => "large text",
            Level::TextEnhanced => "enhanced text",
            Level::LargeTextEnhanced => "enhanced large text",
            Level::Graphics => "lines and shapes",
        })
    }
}

impl fmt::Display for Polarity {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        f.write_str(match self {
            Polarity::DarkOnLight => "dark on light",
            Polarity::LightOnDark => "light on dark",
            Polarity::Even => "equally light",
        })
    }
}

impl fmt::Display for ContrastError {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        let ContrastError { what, luminance } = self;
        write!(f, "{what} cannot have a luminance of {luminance}: give it relative to white, from 0 to 1")
    }
}

impl Error for ContrastError {}
