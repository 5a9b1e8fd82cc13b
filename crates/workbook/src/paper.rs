//! Sheets of paper.

use std::str::FromStr;

/// What the book is printed on.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
pub enum Paper {
    /// ISO 216 A4: 210 by 297 mm.
    #[default]
    A4,
    /// ANSI/ASME Y14.1 A, "Letter": 8.5 by 11 in.
    Letter,
}

impl Paper {
    /// Width and height in mm.
    pub fn size(self) -> (f64, f64) {
        match self {
            Paper::A4 => (210.0, 297.0),
            Paper::Letter => (8.5 * measure::INCH, 11.0 * measure::INCH),
        }
    }

    /// Width and height inside the margins that the templates set, in mm: what a drawing at true size may take.
    pub(crate) fn room(self) -> (f64, f64) {
        let (width, height) = self.size();
        (width - 2.0 * SIDE, height - TOP - BOTTOM)
    }
}

/// Margins of every page, in mm.
pub(crate) const SIDE: f64 = 18.0;
pub(crate) const TOP: f64 = 24.0;
pub(crate) const BOTTOM: f64 = 18.0;

impl FromStr for Paper {
    type Err = String;

    fn from_str(word: &str) -> Result<Paper, String> {
        match word.to_lowercase().as_str() {
            "a4" => Ok(Paper::A4),
            "letter" | "us-letter" => Ok(Paper::Letter),
            _ => Err(format!("“{word}” is no paper known here: a4 or letter")),
        }
    }
}
