//! The finest places of a text: its thinnest stroke and its smallest standing island.

use crate::Lettering;
use crate::face::Glyph;
use outline::{Shape, inscribed_circle, narrowest_stroke};

/// Islands are measured this closely, in figure heights.
const FINE: f64 = 2e-3;

impl Glyph {
    /// Thinnest stroke and smallest island at a figure height of 1 mm; measured once.
    pub(crate) fn fine(&self) -> (Option<f64>, Option<f64>) {
        *self.fine.get_or_init(|| {
            let stroke = narrowest_stroke(&self.shape).map(|neck| neck.width);
            let islands = self
                .shape
                .holes()
                .into_iter()
                .filter_map(|hole| inscribed_circle(&Shape::from(hole.clone()), FINE));
            (
                stroke,
                islands.map(|(_, radius)| 2.0 * radius).reduce(f64::min),
            )
        })
    }
}

impl Lettering {
    /// Width of the thinnest stroke of a text at a height, in mm.
    pub fn thinnest_stroke(&self, text: &str, height: f64) -> Option<f64> {
        self.least(text, |glyph| glyph.fine().0)
            .map(|width| width * height)
    }

    /// Diameter of the largest circle in the smallest standing island of a text (the inside of 0, 6, 8, A ...) at a height, in mm.
    pub fn smallest_island(&self, text: &str, height: f64) -> Option<f64> {
        self.least(text, |glyph| glyph.fine().1)
            .map(|across| across * height)
    }

    fn least(&self, text: &str, measure: impl Fn(&Glyph) -> Option<f64>) -> Option<f64> {
        text.chars()
            .filter_map(|c| self.glyph(c))
            .filter_map(|glyph| measure(&glyph))
            .reduce(f64::min)
    }
}
