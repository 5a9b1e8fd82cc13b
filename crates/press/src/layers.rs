//! What the desk draws: outlines as path data about a point, and the colours of stocks.

use crate::light::light;
use crate::picture::tone;
use crate::svg::Frame;
use outline::{Point, Shape};
use process::Stock;

/// Path data of a shape, in mm, y down, with `about` at the origin; in fewer arcs, as in all our pictures.
pub fn path_data(shape: &Shape, about: Point) -> String {
    let frame = Frame { corner: about };
    shape.loops().iter().map(|one| frame.chain(&light(one))).collect::<Vec<_>>().join(" ")
}

/// What a stock's face looks like, and what the beam leaves on it, as `#rrggbb`.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Look {
    /// Its face.
    pub face: &'static str,
    /// An engraved place.
    pub burnt: &'static str,
}

/// Words of materials and what they look like (our own proposal, by eye from common samples). The first that is found counts.
const LOOKS: &[(&str, &str, &str)] = &[
    ("walnut", "#8a664a", "#2e1d13"),
    ("cherry", "#c08a62", "#4a2615"),
    ("oak", "#c9a873", "#4a3220"),
    ("bamboo", "#dcc083", "#553a1c"),
    ("basswood", "#ead9b8", "#53371f"),
    ("poplar", "#e6dcbd", "#53391f"),
    ("maple", "#e8d2a8", "#553720"),
    ("beech", "#dcb68a", "#4f3019"),
    ("birch", "#e3c897", "#4a3020"),
    ("MDF", "#b8946a", "#3d2919"),
    ("hardboard", "#7d5c3f", "#2a1b10"),
    ("cardboard", "#c6a679", "#4a3320"),
    ("cork", "#c79a63", "#47301a"),
    ("paper", "#f0ead9", "#5a4632"),
    ("acrylic", "#dfe6e6", "#7f8c8d"),
    ("leather", "#8a5a3c", "#2a170c"),
    ("felt", "#6f7f6a", "#262d22"),
];

/// What a stock looks like from its face.
pub fn look(stock: &Stock) -> Look {
    let named = stock.layers.first().map(|layer| layer.named.as_str()).unwrap_or_default();
    let known = LOOKS.iter().find(|(word, _, _)| named.contains(word));
    known.map_or(Look { face: tone::COVER, burnt: tone::BURNT }, |&(_, face, burnt)| Look { face, burnt })
}
