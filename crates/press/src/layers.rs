//! What pages draw themselves: outlines as path data about a point, and the colours of parts.

use crate::light::light;
use crate::svg::Frame;
use crate::swatch::floor_colour;
use outline::{Point, Shape};
use process::{Side, Stock};

/// Path data of a shape, in mm, y down, with `about` at the origin; in fewer arcs, as in all our pictures.
pub fn path_data(shape: &Shape, about: Point) -> String {
    let frame = Frame { corner: about };
    shape.loops().iter().map(|one| frame.chain(&light(one))).collect::<Vec<_>>().join(" ")
}

/// The colours of a part, as `#rrggbb`.
#[derive(Clone, Debug, PartialEq, Eq)]
pub(crate) struct Look {
    /// The side that is seen.
    pub(crate) face: String,
    /// An engraved place.
    pub(crate) burnt: String,
}

/// What a part looks like from its face, engraved so deep.
pub(crate) fn look(stock: &Stock, depth: f64) -> Look {
    Look { face: stock.colour(Side::Face).to_string(), burnt: floor_colour(stock, depth) }
}

/// What a part looks like from its back; its lines in the colour of its edge.
pub(crate) fn look_behind(stock: &Stock) -> Look {
    Look { face: stock.colour(Side::Back).to_string(), burnt: stock.edge().to_string() }
}
