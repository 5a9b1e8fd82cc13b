//! What the trade's grade names promise.

use std::fmt;
use std::str::FromStr;

use crate::DiscError;

/// A trade grade of sintered NdFeB, such as N42.
///
/// Grade names are trade names and belong to no standard; IEC 60404-8-1 names the same material
/// otherwise. Three makers' tables agree to about 2 %, so a [`Grade`] is an interval of remanence and
/// [`nominal`](Grade::nominal) its middle. Force goes with the product of two remanences: the
/// grade alone leaves it open by 3 to 5 %.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash, PartialOrd, Ord)]
#[expect(missing_docs, reason = "each variant is the trade's own name")]
pub enum Grade {
    N35,
    N38,
    N40,
    N42,
    N45,
    N48,
    N50,
    N52,
}

impl Grade {
    /// All grades, weakest first.
    pub const ALL: [Grade; 8] =
        [Grade::N35, Grade::N38, Grade::N40, Grade::N42, Grade::N45, Grade::N48, Grade::N50, Grade::N52];

    /// The trade name.
    #[must_use]
    pub fn name(self) -> &'static str {
        match self {
            Grade::N35 => "N35",
            Grade::N38 => "N38",
            Grade::N40 => "N40",
            Grade::N42 => "N42",
            Grade::N45 => "N45",
            Grade::N48 => "N48",
            Grade::N50 => "N50",
            Grade::N52 => "N52",
        }
    }

    /// Remanence in tesla at room temperature, `[least, most]`: the span over three makers'
    /// tables (en.shanghaimagnet.com, nblihe.com, magnetsim.com; secondary sources, read 2026).
    #[must_use]
    pub fn remanence(self) -> [f64; 2] {
        match self {
            Grade::N35 => [1.16, 1.22],
            Grade::N38 => [1.22, 1.28],
            Grade::N40 => [1.25, 1.29],
            Grade::N42 => [1.28, 1.32],
            Grade::N45 => [1.32, 1.38],
            Grade::N48 => [1.37, 1.43],
            Grade::N50 => [1.39, 1.45],
            Grade::N52 => [1.42, 1.48],
        }
    }

    /// The middle of [`remanence`](Grade::remanence), in tesla.
    ///
    /// ```
    /// assert_eq!(magnet::Grade::N42.nominal(), 1.30);
    /// ```
    #[must_use]
    pub fn nominal(self) -> f64 {
        let [least, most] = self.remanence();
        // Tables give hundredths; without the rounding the middle of N42 would not be 1.3.
        ((least + most) * 500.0).round() / 1000.0
    }
}

impl fmt::Display for Grade {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        f.write_str(self.name())
    }
}

/// Endings that only tell the temperature a grade stands (100, 120, 150, 180, 200 °C; makers'
/// tables). Without one it is 80 °C, less for thin free discs.
const ENDINGS: [&str; 6] = ["", "M", "H", "SH", "UH", "EH"];

impl FromStr for Grade {
    type Err = DiscError;

    /// Reads a grade in either case, with or without its temperature ending: "N42", "n42sh".
    fn from_str(text: &str) -> Result<Grade, DiscError> {
        let upper = text.trim().to_ascii_uppercase();
        Grade::ALL
            .into_iter()
            .find(|g| upper.strip_prefix(g.name()).is_some_and(|rest| ENDINGS.contains(&rest)))
            .ok_or_else(|| DiscError::UnknownGrade(text.trim().to_string()))
    }
}
