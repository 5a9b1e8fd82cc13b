//! What can be read, and from where: how far the engraving stands out, how high each mark looks, what the cover's thickness hides
//! of it, how thick its strokes must be; and which pairing of stocks is the one. What an eye can tell is the room `sight`'s; here
//! it meets this dial's windows and stocks.
//!
//! Lengths in mm, angles in radians.

mod alike;
mod engraving;
mod pairings;
mod price;
mod reader;
mod seen;
mod votes;

pub use alike::{alike, figures_of};
pub use engraving::{Engraving, level};
pub use pairings::{Pairing, Reason, name_of, pairings};
pub use reader::{Reader, Reading};
pub use seen::{Seen, SeenStop, gap};
pub use votes::{Picked, Picks, picks};

use crate::assembled::{Art, Dial, Wheel};
use crate::design::Motif;
use lettering::{Lettering, Symbol, Weight};

/// What can be read of a dial.
#[derive(Clone, Debug)]
pub struct Looks {
    /// One for each wheel.
    pub wheels: Vec<WheelLook>,
    /// How the cover's art stands out; `None` where it goes through.
    pub cover: Option<Engraving>,
    /// One for each piece of art on the cover.
    pub art: Vec<ArtLook>,
}

/// What can be read of one wheel.
#[derive(Clone, Debug)]
pub struct WheelLook {
    /// How its marks stand out; `None` where they go through.
    pub engraving: Option<Engraving>,
    /// Whether its marks are letters and figures, of which weight; symbols otherwise.
    pub weight: Option<Weight>,
    /// Width of its thinnest stroke: of text as the font is drawn, of symbols where they are thinnest.
    pub stroke: Option<f64>,
    /// One for each reader.
    pub seen: Vec<Seen>,
}

/// What can be read of one piece of art.
#[derive(Clone, Copy, Debug)]
pub struct ArtLook {
    /// Width of its thinnest stroke.
    pub stroke: Option<f64>,
    /// How high it looks to each reader.
    pub first_angle: Option<f64>,
}

/// Looks at every wheel through its window, and at the cover, from every reader's seat.
pub fn look_at(dial: &Dial) -> Looks {
    let readers = &dial.reading.readers;
    let wheel = |wheel: &Wheel| WheelLook {
        engraving: Engraving::of(&wheel.stock, wheel.mark_depth),
        weight: is_text(wheel).then_some(wheel.weight),
        stroke: stroke_of_wheel(wheel),
        seen: readers.iter().map(|reader| Seen::of(wheel, dial.cover.stock.thickness(), reader)).collect(),
    };
    let art = |art: &Art| ArtLook {
        stroke: stroke_of_art(art),
        first_angle: readers.first().map(|reader| reader.angle_of_art(art)),
    };
    Looks {
        wheels: dial.wheels.iter().map(wheel).collect(),
        cover: Engraving::of(&dial.cover.stock, dial.cover.engrave_depth),
        art: dial.cover.art.iter().map(art).collect(),
    }
}

/// Whether a wheel's marks are letters and figures.
fn is_text(wheel: &Wheel) -> bool {
    wheel.marks.iter().any(|mark| matches!(mark.motif, Motif::Text(_)))
}

fn stroke_of_wheel(wheel: &Wheel) -> Option<f64> {
    let height = wheel.asked.height;
    let one = |motif: &Motif| match motif {
        Motif::Text(_) => Some(Lettering::shipped(wheel.weight).stroke(height)),
        Motif::Symbol(symbol) => symbol.finest(height).0,
    };
    wheel.marks.iter().filter_map(|mark| one(&mark.motif)).reduce(f64::min)
}

fn stroke_of_art(art: &Art) -> Option<f64> {
    match art.weight {
        Some(weight) => Some(Lettering::shipped(weight).stroke(art.height)),
        None => Symbol::named(&art.what)?.finest(art.height).0,
    }
}
