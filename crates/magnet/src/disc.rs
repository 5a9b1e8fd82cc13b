//! One disc magnet, checked at the door, and the maker's way of writing it.

use std::error::Error;
use std::f64::consts::PI;
use std::fmt;
use std::str::FromStr;

use crate::Grade;

/// A disc magnetised along its axis: one pole on each flat face.
///
/// The model is a rigid, uniform magnetisation with nothing else magnetic near. Sintered NdFeB
/// comes close (recoil permeability about 1.05, makers' tables); expect a few percent.
///
/// ```
/// use magnet::Disc;
/// let disc: Disc = "6x2:N42".parse()?;
/// assert_eq!(disc, Disc::new(6.0, 2.0, 1.30)?);
/// assert_eq!(disc.to_string(), "6x2:1.3T");
/// # Ok::<(), magnet::DiscError>(())
/// ```
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Disc {
    diameter: f64,
    thickness: f64,
    remanence: f64,
}

/// How thick the usual nickel-copper-nickel plating is on each face, in mm, `[least, most]`
/// (common practice, from memory).
///
/// The nominal size of a magnet includes its plating, which is only weakly magnetic: two magnets that touch
/// still have some 0.03 mm between their poles, and a bare glue film adds to that.
pub const PLATING: [f64; 2] = [0.010, 0.025];

/// Density of sintered NdFeB in g/mm³ (7.5 g/cm³, makers' tables).
const DENSITY: f64 = 7.5e-3;

/// What the door lets in: mm, mm, tesla. Wide enough for any magnet on sale, narrow enough that no
/// later product leaves the range of the numbers; and a slip of the unit is caught here.
const DIAMETER: [f64; 2] = [0.1, 1000.0];
const THICKNESS: [f64; 2] = [0.01, 1000.0];
const REMANENCE: [f64; 2] = [0.01, 2.0];

impl Disc {
    /// A disc of this diameter (mm), thickness (mm) and remanence (T).
    ///
    /// # Errors
    /// [`DiscError::OutOfRange`] where a number is not finite, not positive, or no magnet's:
    /// diameter 0.1 to 1000 mm, thickness 0.01 to 1000 mm, remanence 0.01 to 2 T.
    pub fn new(diameter: f64, thickness: f64, remanence: f64) -> Result<Disc, DiscError> {
        check("diameter", diameter, DIAMETER, "mm")?;
        check("thickness", thickness, THICKNESS, "mm")?;
        check("remanence", remanence, REMANENCE, "T")?;
        Ok(Disc { diameter, thickness, remanence })
    }

    /// Diameter in mm.
    #[must_use]
    pub fn diameter(&self) -> f64 {
        self.diameter
    }

    /// Radius in mm.
    #[must_use]
    pub fn radius(&self) -> f64 {
        self.diameter / 2.0
    }

    /// Thickness in mm, along the axis.
    #[must_use]
    pub fn thickness(&self) -> f64 {
        self.thickness
    }

    /// Remanence in tesla.
    #[must_use]
    pub fn remanence(&self) -> f64 {
        self.remanence
    }

    /// Area of one pole face in mm².
    #[must_use]
    pub fn face(&self) -> f64 {
        PI * self.radius().powi(2)
    }

    /// Mass in grams, as sintered NdFeB of 7.5 g/cm³.
    #[must_use]
    pub fn mass(&self) -> f64 {
        DENSITY * self.face() * self.thickness
    }

    /// Pull in newtons between this disc and its twin, pole faces touching: what the trade
    /// quotes for "magnet to magnet". Plating keeps real ones a little apart, see [`PLATING`].
    #[must_use]
    pub fn pull_on_twin(&self) -> f64 {
        crate::Pair::twins(*self).pull(0.0)
    }

    /// Distance in mm from the centre to the rim of a face: outside this sphere the disc is a
    /// sum of multipoles.
    pub(crate) fn reach(&self) -> f64 {
        self.radius().hypot(self.thickness / 2.0)
    }
}

fn check(what: &'static str, value: f64, [least, most]: [f64; 2], unit: &'static str) -> Result<(), DiscError> {
    if (least..=most).contains(&value) { Ok(()) } else { Err(DiscError::OutOfRange { what, value, least, most, unit }) }
}

/// As [`Disc::from_str`] reads it: diameter x thickness : remanence.
impl fmt::Display for Disc {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        write!(f, "{}x{}:{}T", self.diameter, self.thickness, self.remanence)
    }
}

impl FromStr for Disc {
    type Err = DiscError;

    /// Reads "6x2:N42" or "6x2:1.30T": diameter x thickness in mm, then a grade or the remanence
    /// in tesla. Spaces, "mm" after a number, and "×" are welcome.
    fn from_str(text: &str) -> Result<Disc, DiscError> {
        let malformed = || DiscError::Malformed(text.trim().to_string());
        let (size, strength) = text.split_once(':').ok_or_else(malformed)?;
        let (diameter, thickness) = size.split_once(['x', 'X', '×']).ok_or_else(malformed)?;
        let diameter = number("diameter", diameter, "mm")?;
        let thickness = number("thickness", thickness, "mm")?;
        let strength = strength.trim();
        let remanence = if strength.starts_with(['N', 'n']) {
            strength.parse::<Grade>()?.nominal()
        } else if strength.ends_with(['T', 't']) {
            number("remanence", &strength[..strength.len() - 1], "T")?
        } else {
            return Err(DiscError::NoUnit(strength.to_string()));
        };
        Disc::new(diameter, thickness, remanence)
    }
}

fn number(what: &'static str, text: &str, unit: &'static str) -> Result<f64, DiscError> {
    let text = text.trim();
    let digits = text.strip_suffix(unit).unwrap_or(text).trim_end();
    digits.parse().map_err(|_| DiscError::NotANumber { what, text: text.to_string() })
}

/// Why a disc was turned away. The text speaks to the maker; it starts in lower case and ends
/// without a stop, so that a caller can put the place before it.
#[derive(Clone, Debug, PartialEq)]
pub enum DiscError {
    /// Not of the form "6x2:N42".
    Malformed(String),
    /// A part that should be a number is none.
    NotANumber {
        /// Which measure.
        what: &'static str,
        /// What stands there.
        text: String,
    },
    /// The strength is neither a grade nor ends in T.
    NoUnit(String),
    /// A grade that the table does not know.
    UnknownGrade(String),
    /// A number that no disc magnet has.
    OutOfRange {
        /// Which measure.
        what: &'static str,
        /// The value given.
        value: f64,
        /// The smallest value allowed.
        least: f64,
        /// The largest value allowed.
        most: f64,
        /// The unit of all three.
        unit: &'static str,
    },
}

impl fmt::Display for DiscError {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        match self {
            DiscError::Malformed(text) => write!(
                f,
                "\"{text}\" is not a magnet: write diameter x thickness in mm, a colon, and the \
                 grade or the remanence, such as 6x2:N42 or 6x2:1.30T"
            ),
            DiscError::NotANumber { what, text } if text.contains(',') => write!(
                f,
                "the magnet's {what} \"{text}\" is not a number: use a point for decimals, \"{}\"",
                text.replace(',', ".")
            ),
            DiscError::NotANumber { what, text } => {
                write!(f, "the magnet's {what} \"{text}\" is not a number")
            }
            DiscError::NoUnit(text) => write!(
                f,
                "the magnet's strength \"{text}\" is neither a grade such as N42 nor a remanence \
                 in tesla such as 1.30T"
            ),
            DiscError::UnknownGrade(text) => {
                write!(f, "grade \"{text}\" is not in the table: choose one of ")?;
                for (i, grade) in Grade::ALL.into_iter().enumerate() {
                    write!(f, "{}{grade}", if i == 0 { "" } else { ", " })?;
                }
                f.write_str(", or give the remanence in tesla such as 1.30T")
            }
            DiscError::OutOfRange { what, value, least, most, unit } => write!(
                f,
                "a magnet's {what} of {value} {unit} cannot be: it lies between {least} and \
                 {most} {unit}"
            ),
        }
    }
}

impl Error for DiscError {}
