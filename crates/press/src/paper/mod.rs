//! Drawings for paper: on white, without words of their own. Whoever sets the page puts the words, so that they can be read, searched
//! and spoken; a drawing says where they belong.

mod faces;
mod layers;
mod lying;
mod pairings;
mod pockets;
mod proof;
mod stop;

use crate::picture::{Pen, Picture};
pub use faces::{dial_back, dial_face};
pub use layers::taken_apart;
pub use lying::{cover_lying, wheel_lying};
use outline::{Point, Rect, Vec2};
pub use pairings::{pairing_card, pairings_grid};
pub use pockets::{pair_section, pole_drawing};
pub use proof::{Proof, cover_proof, wheel_proof};
pub use stop::stop_in_window;

/// A drawing with its true size and the places of its words.
#[derive(Clone, Debug, PartialEq)]
pub struct Drawing {
    /// The picture.
    pub svg: String,
    /// Its width in mm.
    pub width: f64,
    /// Its height in mm.
    pub height: f64,
    /// What it shows, for those who cannot see it.
    pub alt: String,
    /// Words and where they stand.
    pub labels: Vec<Label>,
}

/// Words at a place of a drawing.
#[derive(Clone, Debug, PartialEq)]
pub struct Label {
    /// From the left edge, in mm.
    pub x: f64,
    /// From the upper edge, in mm.
    pub y: f64,
    /// The words.
    pub words: String,
    /// Which point of the words stands there.
    pub anchor: Anchor,
}

/// Which point of a label stands at its place, half way up.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
#[expect(missing_docs, reason = "the names say it")]
pub enum Anchor {
    Start,
    Middle,
    End,
}

/// A drawing in the making: a picture on white with labels in our coordinates.
struct Sketch {
    picture: Picture,
    area: Rect,
    alt: String,
    labels: Vec<Label>,
}

impl Sketch {
    fn new(alt: &str, area: Rect) -> Sketch {
        Sketch { picture: Picture::new(alt, area), area, alt: alt.to_owned(), labels: Vec::new() }
    }

    /// Words at a place in the picture's own coordinates, y up.
    fn label(&mut self, at: Point, anchor: Anchor, words: impl Into<String>) {
        let (x, y) = (at.x - self.area.x0, self.area.y1 - at.y);
        self.labels.push(Label { x, y, words: words.into(), anchor });
    }

    fn finish(self) -> Drawing {
        let (width, height) = (self.area.width(), self.area.height());
        Drawing { svg: self.picture.finish_on_white(), width, height, alt: self.alt, labels: self.labels }
    }
}

/// A small cross where a middle lies.
fn cross(picture: &mut Picture, at: Point, half: f64, with: Pen) {
    for arm in [Vec2::new(half, 0.0), Vec2::new(0.0, half)] {
        picture.straight(at - arm, at + arm, with);
    }
}
