//! Who reads the dial, and from where.

use crate::assembled::Art;
use measure::{Units, show};
use sight::{Acuity, Seat, SeatError, View};

/// Who must read a dial.
#[derive(Clone, Debug, PartialEq)]
pub struct Reading {
    /// The readers; the first one reads the cover's art too.
    pub readers: Vec<Reader>,
    /// How fine their eyes are.
    pub acuity: Acuity,
}

/// One who reads a dial that lies flat on the table.
#[derive(Clone, Debug, PartialEq)]
pub struct Reader {
    /// Who it is.
    pub name: String,
    /// The view of an upright mark.
    pub view: View,
}

impl Reader {
    /// One at a seat of the maker's own: how far along the table and how high the eye is, in mm, and where round the dial, in radians
    /// anticlockwise from before it.
    ///
    /// # Errors
    /// A place where nobody can sit.
    pub fn at(away: f64, eye: f64, side: f64) -> Result<Reader, SeatError> {
        let name = format!("reader at {}", show(away, Units::Millimetres));
        Ok(Reader { name, view: View::new(Seat::new(away, eye)?, side) })
    }

    /// Who it is, within a sentence.
    pub fn words(&self) -> String {
        match self.name.as_str() {
            "owner" => "the owner".into(),
            "neighbour" => "the neighbour".into(),
            "across" => "the one across".into(),
            other => format!("the {other}"),
        }
    }

    /// Visual angle of a piece of art, taken as upright.
    pub(super) fn angle_of_art(&self, art: &Art) -> f64 {
        self.view.angular_height(art.height)
    }
}
