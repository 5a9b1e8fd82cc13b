//! The finest places of a text: its thinnest stroke and its smallest standing island.

use crate::Lettering;
use crate::face::Fine;
use outline::{Shape, inscribed_circle, narrowest_stroke};

/// Curves are followed this closely, in figure heights, while strokes are measured: a hundredth of a light stroke.
const FOLLOWED: f64 = 1e-3;
/// Islands are measured this closely, in figure heights.
const CLOSELY: f64 = 1e-3;

impl Lettering {
    /// Width of the thinnest stroke of a text whose figures are `height` high, in mm: the shortest way across
    /// between edges that face each other, where a bowl joins its stem as well. `None` for a text without ink.
    pub fn thinnest_stroke(&self, text: &str, height: f64) -> Option<f64> {
        self.least(text, |fine| fine.stroke).map(|width| width * height)
    }

    /// The smallest standing island of a text (the inside of 0, 4, 6, 8, 9, A, B ...) whose figures are
    /// `height` high: the diameter of the largest circle that fits it, in mm. `None` for a text without islands.
    pub fn smallest_island(&self, text: &str, height: f64) -> Option<f64> {
        self.least(text, |fine| fine.island).map(|across| across * height)
    }

    fn least(&self, text: &str, measure: impl Fn(Fine) -> Option<f64>) -> Option<f64> {
        text.chars().filter_map(|c| measure(self.fine_of(c))).reduce(f64::min)
    }

    /// At a figure height of 1 mm; measured once.
    fn fine_of(&self, character: char) -> Fine {
        self.fine.get_or(character, || {
            let Some((path, _)) = self.path(character) else {
                return Fine::default();
            };
            let shape = Shape::from_path(&path, FOLLOWED);
            let islands =
                shape.holes().into_iter().filter_map(|hole| inscribed_circle(&Shape::from(hole.reversed()), CLOSELY));
            Fine {
                stroke: narrowest_stroke(&shape).map(|neck| neck.width),
                island: islands.map(|(_, radius)| 2.0 * radius).reduce(f64::min),
            }
        })
    }
}
