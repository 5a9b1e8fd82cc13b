//! Stock: a sheet as bought, a build-up of layers.

use crate::{Material, Price, Surfaces};
use measure::Interval;
use sight::Srgb;

/// One sheet material as bought.
#[derive(Clone, Debug, PartialEq)]
pub struct Stock {
    /// What the maker calls it.
    pub name: String,
    /// Layers from the face to the back.
    pub layers: Vec<Layer>,
    /// Width that the beam removes in it.
    pub kerf: Kerf,
    /// Coefficient of friction of its faces, if it was measured; else that of the material of each face.
    pub friction: Option<Interval>,
    /// How its faces look and feel, where that is not as usual for their materials.
    pub surfaces: Surfaces,
    /// How the beam takes it, in the maker's words.
    pub laser: String,
    /// What a sheet costs.
    pub price: Option<Price>,
    /// Where the figures come from.
    pub source: String,
}

/// One layer of a stock.
#[derive(Clone, Debug, PartialEq)]
pub struct Layer {
    /// The material's name as the maker wrote it.
    pub named: String,
    /// The material, if it is a known one.
    pub material: Option<&'static Material>,
    /// Thickness.
    pub thickness: f64,
    /// How much thinner it may be.
    pub thinner: f64,
    /// How much thicker it may be.
    pub thicker: f64,
    /// Its colour, where that is not the usual one of its material.
    pub colour: Option<Srgb>,
    /// Colour of the floor of an engraving in it, where that is not the usual one of its material.
    pub engraved: Option<Srgb>,
}

/// Full width of the slot that the beam leaves, for cuts that run along y (removes width in x) and along x.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Kerf {
    /// Width measured along x.
    pub x: f64,
    /// Width measured along y.
    pub y: f64,
}

impl Layer {
    /// All thicknesses that it may come in.
    pub fn limits(&self) -> Interval {
        Interval::between(self.thickness - self.thinner, self.thickness + self.thicker)
    }
}

/// A face of a stock.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
#[expect(missing_docs, reason = "the names say it")]
pub enum Side {
    Face,
    Back,
}

/// Friction of a material that the house does not know: that of wood, and of what grips.
const UNKNOWN: Interval = Interval { low: 0.2, high: 0.7 };

impl Stock {
    /// Coefficient of friction of one of its faces.
    pub fn friction(&self, side: Side) -> Interval {
        let of_material =
            || self.outermost(side).and_then(|layer| layer.material).map_or(UNKNOWN, |material| material.friction);
        self.friction.unwrap_or_else(of_material)
    }

    /// The layer of one of its faces.
    pub fn outermost(&self, side: Side) -> Option<&Layer> {
        match side {
            Side::Face => self.layers.first(),
            Side::Back => self.layers.last(),
        }
    }

    /// Mass of each mm² of it, in g; a layer of unknown material counts as wood.
    pub fn mass_per_area(&self) -> f64 {
        let density = |layer: &Layer| layer.material.map_or(0.65, |material| material.density);
        self.layers.iter().map(|layer| layer.thickness * density(layer) * 1e-3).sum()
    }

    /// Nominal thickness: the sum of the layers.
    pub fn thickness(&self) -> f64 {
        self.layers.iter().map(|layer| layer.thickness).sum()
    }

    /// All thicknesses that it may come in, worst case: every layer at the same end of its limits.
    pub fn limits(&self) -> Interval {
        self.layers.iter().map(Layer::limits).sum()
    }

    /// The thinnest this stock may come: every layer at its lower limit.
    pub fn thinnest(&self) -> f64 {
        self.limits().low
    }

    /// The thickest this stock may come: every layer at its upper limit.
    pub fn thickest(&self) -> f64 {
        self.limits().high
    }
}
