//! Magnets on the shelf.

use measure::Interval;

/// One kind of disc magnet that the maker has or can buy.
#[derive(Clone, Debug, PartialEq)]
pub struct ShelfMagnet {
    /// What the maker calls it.
    pub name: String,
    /// Diameter in mm.
    pub diameter: f64,
    /// Thickness in mm.
    pub thickness: f64,
    /// Remanence in T: what its grade promises.
    pub remanence: Interval,
    /// Price of one, in the maker's own money.
    pub price: Option<f64>,
    /// Where its figures come from.
    pub source: String,
}
