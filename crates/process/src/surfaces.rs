//! What is seen and felt of a stock: its faces, its cut edge, the floor of an engraving.

use crate::look::UNKNOWN;
use crate::{Finish, Grain, Layer, Look, Material, Side, Stock, Texture};
use measure::Interval;
use sight::Srgb;

/// How a stock looks and feels, where that is not as usual for its materials.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct Surfaces {
    /// Colour of its face.
    pub face: Option<Srgb>,
    /// Colour of its back.
    pub back: Option<Srgb>,
    /// Colour of the floor of an engraving, in the layer in which one of `engraved_at` ends.
    pub engraved: Option<Srgb>,
    /// Depth of the engraving whose colour that is.
    pub engraved_at: f64,
    /// Colour of its cut edge.
    pub edge: Option<Srgb>,
    /// Finish of its face.
    pub finish: Option<Finish>,
    /// Finish of its back.
    pub back_finish: Option<Finish>,
    /// Which way the grain of its face runs.
    pub grain: Option<Grain>,
    /// Where its colours come from: “typical”, or “measured here on ...”.
    pub source: String,
    /// File of the photo they were measured in.
    pub photo: Option<String>,
    /// Where the contrast of face and engraving lies, as measured: a ratio, 1 to 21.
    pub contrast: Option<Interval>,
}

impl Surfaces {
    /// What is said of colours that nobody has measured.
    pub const TYPICAL: &str = "typical";

    /// Whether its colours were measured rather than taken as typical.
    pub fn measured(&self) -> bool {
        self.source.starts_with("measured")
    }
}

/// Price of a sheet, in the maker's own money, and its size.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Price {
    /// Of one sheet.
    pub sheet: f64,
    /// Its width.
    pub width: f64,
    /// Its height.
    pub height: f64,
}

/// What the floor of an engraving shows.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Shown {
    /// Which layer, counted from the face.
    pub layer: usize,
    /// Its colour there.
    pub colour: Srgb,
}

/// Depths closer than this are the same, in mm.
const SAME: f64 = 1e-6;
/// How far a depth is off the wanted one within a sheet: 10 to 20 % (common practice).
const SCATTER: f64 = 0.15;

impl Layer {
    /// How its material looks.
    pub fn look(&self) -> &'static Look {
        self.material.map_or(&UNKNOWN, Material::look)
    }
}

impl Stock {
    fn outermost_look(&self, side: Side) -> &'static Look {
        self.outermost(side).map_or(&UNKNOWN, Layer::look)
    }

    /// Colour of one of its faces.
    pub fn colour(&self, side: Side) -> Srgb {
        let said = match side {
            Side::Face => self.surfaces.face,
            Side::Back => self.surfaces.back,
        };
        let layer = self.outermost(side);
        said.or(layer.and_then(|layer| layer.colour)).unwrap_or_else(|| self.outermost_look(side).face)
    }

    /// What one of its faces is like.
    pub fn texture(&self, side: Side) -> Texture {
        self.outermost_look(side).texture
    }

    /// How one of its faces is finished.
    pub fn finish(&self, side: Side) -> Finish {
        let said = match side {
            Side::Face => self.surfaces.finish,
            Side::Back => self.surfaces.back_finish,
        };
        said.unwrap_or(self.outermost_look(side).finish)
    }

    /// Which way the grain of its face runs.
    pub fn grain(&self) -> Grain {
        self.surfaces.grain.unwrap_or(self.texture(Side::Face).grain())
    }

    /// Colour of its cut edge: that of its thickest layer, unless it is known better.
    pub fn edge(&self) -> Srgb {
        let thickest = self.layers.iter().max_by(|a, b| a.thickness.total_cmp(&b.thickness));
        self.surfaces.edge.unwrap_or_else(|| thickest.map_or(&UNKNOWN, Layer::look).edge)
    }

    /// The layer in which an engraving of a depth ends, every layer as thick as it should be; `None` where it goes through.
    pub fn layer_at(&self, depth: f64) -> Option<usize> {
        let mut bottom = 0.0;
        self.layers.iter().position(|layer| {
            bottom += layer.thickness;
            depth < bottom - SAME
        })
    }

    /// What the floor of an engraving of a depth shows: first the layer in which it should end, then those in which it may
    /// end too, since neither depths nor layers come out as wanted. Empty where it goes through.
    pub fn engraved_at(&self, depth: f64) -> Vec<Shown> {
        let Some(wanted) = self.layer_at(depth) else {
            return Vec::new();
        };
        let (shallow, deep) = (depth * (1.0 - SCATTER), depth * (1.0 + SCATTER));
        let mut layers = vec![wanted];
        let mut top = Interval::default();
        for (i, layer) in self.layers.iter().enumerate() {
            let bottom = top + layer.limits();
            if i != wanted && top.low + SAME < deep && shallow < bottom.high - SAME {
                layers.push(i);
            }
            top = bottom;
        }
        layers.into_iter().map(|layer| self.floor_in(layer)).collect()
    }

    fn floor_in(&self, layer: usize) -> Shown {
        let here = &self.layers[layer];
        let known = self.surfaces.engraved.filter(|_| self.layer_at(self.surfaces.engraved_at) == Some(layer));
        Shown { layer, colour: known.or(here.engraved).unwrap_or(here.look().engraved) }
    }

    /// Price of so many mm² of it.
    pub fn price_of(&self, area: f64) -> Option<f64> {
        self.price.map(|price| price.sheet * area / (price.width * price.height))
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::Kerf;

    fn layer(name: &str, thickness: f64, off: f64) -> Layer {
        let material = Material::named(name);
        Layer { named: name.into(), material, thickness, thinner: off, thicker: off, colour: None, engraved: None }
    }

    fn sandwich() -> Stock {
        Stock {
            name: "sandwich".into(),
            layers: vec![layer("maple veneer", 0.6, 0.05), layer("wood glue", 0.05, 0.0), layer("MDF", 2.5, 0.2)],
            kerf: Kerf { x: 0.2, y: 0.2 },
            friction: None,
            surfaces: Surfaces { engraved_at: 0.3, ..Surfaces::default() },
            laser: String::new(),
            price: Some(Price { sheet: 9.0, width: 600.0, height: 300.0 }),
            source: String::new(),
        }
    }

    fn layers(stock: &Stock, depth: f64) -> Vec<usize> {
        stock.engraved_at(depth).iter().map(|shown| shown.layer).collect()
    }

    /// Within the veneer, near its bottom, below the glue, and through.
    #[test]
    fn a_deeper_engraving_shows_the_next_layer() {
        let stock = sandwich();
        assert_eq!(layers(&stock, 0.3), [0]);
        assert_eq!(layers(&stock, 0.55), [0, 1, 2], "15 % deeper, under veneer that came thin: all three");
        assert_eq!(layers(&stock, 1.0), [2]);
        assert!(layers(&stock, 3.2).is_empty());
        let [veneer, core] = [0.3, 1.0].map(|depth| stock.engraved_at(depth)[0].colour);
        assert_eq!([veneer, core], ["maple", "MDF"].map(|name| Material::named(name).expect("known").look().engraved));
    }

    /// A measured colour holds for the layer it was measured in, and the back is that of the last one.
    #[test]
    fn what_was_measured_takes_the_place_of_what_is_typical() {
        let measured = "#101820".parse().expect("a colour");
        let mut stock = sandwich();
        stock.surfaces.engraved = Some(measured);
        assert_eq!(stock.engraved_at(0.3)[0].colour, measured);
        assert_ne!(stock.engraved_at(1.0)[0].colour, measured);
        assert_eq!(stock.colour(Side::Back), Material::named("MDF").expect("known").look().face);
        assert_eq!(stock.price_of(18_000.0), Some(0.9));
    }
}
