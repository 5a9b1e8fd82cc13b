//! The built-in symbols: plain drawings of our own, made to be engraved.

use crate::closeness::Closeness;
use kurbo::BezPath;
use outline::{Motion, Point, Shape, Vec2};
use std::sync::OnceLock;

/// One of the built-in symbols.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
pub struct Symbol(usize);

struct Drawing {
    name: &'static str,
    words: &'static str,
    svg: &'static str,
}

macro_rules! drawings {
    ($($name:literal: $words:literal,)*) => {
        &[$(Drawing { name: $name, words: $words, svg: include_str!(concat!("../symbols/", $name, ".svg")) },)*]
    };
}

const DRAWINGS: &[Drawing] = drawings![
    "anchor": "an anchor with its ring",
    "bolt": "a bolt of lightning",
    "coin": "a coin with a rim",
    "crown": "a crown with three points",
    "drop": "a drop of water",
    "fish": "a fish, swimming to the left",
    "flame": "a flame with a lighter heart",
    "gem": "a cut stone",
    "hammer": "a hammer",
    "heart": "a heart",
    "key": "a key",
    "leaf": "a leaf with its veins",
    "moon": "a crescent moon",
    "sail": "a boat under sail",
    "shell": "a scallop shell",
    "shield": "a shield",
    "star": "a star with five points",
    "sun": "the sun with its rays",
    "tower": "a tower with battlements",
    "wheat": "an ear of wheat",
];

impl Symbol {
    /// All symbols, by name.
    pub fn all() -> impl Iterator<Item = Symbol> {
        (0..DRAWINGS.len()).map(Symbol)
    }

    /// The symbol of that name.
    pub fn named(name: &str) -> Option<Symbol> {
        Symbol::all().find(|symbol| symbol.name() == name)
    }

    /// Its name.
    pub fn name(&self) -> &'static str {
        DRAWINGS[self.0].name
    }

    /// What it shows.
    pub fn words(&self) -> &'static str {
        DRAWINGS[self.0].words
    }

    /// The symbols that an unknown name may mean, likeliest first, at most three: of a similar spelling (Jaro-Winkler
    /// similarity of 0.75 or more), or with the name among the words that tell what they show.
    pub fn nearest(name: &str) -> Vec<Symbol> {
        let name = name.trim().to_lowercase();
        let similar = |symbol: Symbol| {
            let shown = symbol.words().split([' ', ',']).any(|word| word == name);
            let spelt = strsim::jaro_winkler(&name, symbol.name());
            if shown { spelt.max(0.95) } else { spelt }
        };
        let mut near: Vec<(f64, Symbol)> =
            Symbol::all().map(|symbol| (similar(symbol), symbol)).filter(|(similar, _)| *similar >= 0.75).collect();
        near.sort_by(|a, b| b.0.total_cmp(&a.0));
        near.into_iter().take(3).map(|(_, symbol)| symbol).collect()
    }

    /// Width of its thinnest stroke and diameter of its smallest standing island at a height, in mm; measured once.
    pub fn finest(&self, height: f64) -> (Option<f64>, Option<f64>) {
        static UNITS: [OnceLock<(Option<f64>, Option<f64>)>; DRAWINGS.len()] =
            [const { OnceLock::new() }; DRAWINGS.len()];
        let (stroke, island) = UNITS[self.0].get_or_init(|| {
            let unit = self.outline(1.0);
            let islands = unit.holes().into_iter().filter_map(|hole| {
                outline::inscribed_circle(&Shape::from(hole.clone()), 1e-3).map(|(_, radius)| 2.0 * radius)
            });
            (outline::narrowest_stroke(&unit).map(|neck| neck.width), islands.reduce(f64::min))
        });
        (stroke.map(|width| width * height), island.map(|across| across * height))
    }

    /// Its outline, `height` mm high (or wide, if it is wider than high), about the middle of its box; arcs follow the
    /// drawing within 0.0005 mm.
    pub fn outline(&self, height: f64) -> Shape {
        static UNITS: [[OnceLock<Shape>; Closeness::COUNT]; DRAWINGS.len()] =
            [const { [const { OnceLock::new() }; Closeness::COUNT] }; DRAWINGS.len()];
        let closeness = Closeness::at(height);
        UNITS[self.0][closeness.index()]
            .get_or_init(|| unit(DRAWINGS[self.0].svg, closeness.tolerance()))
            .scaled(Point::ZERO, height)
    }
}

/// A drawing with its larger side 1 mm, y up.
fn unit(svg: &str, tolerance: f64) -> Shape {
    let data = svg.split(" d=\"").nth(1).and_then(|rest| rest.split('"').next()).unwrap_or_default();
    let mut path = BezPath::from_svg(data).unwrap_or_default();
    let bounds = kurbo::Shape::bounding_box(&path);
    let size = bounds.width().max(bounds.height()).max(1e-9);
    let middle = bounds.center().to_vec2();
    path.apply_affine(kurbo::Affine::scale_non_uniform(1.0 / size, -1.0 / size) * kurbo::Affine::translate(-middle));
    let shape = Shape::from_path(&path, tolerance);
    let off = shape.bounds().center().to_vec2();
    shape.moved(&Motion::shift(Vec2::ZERO - off))
}
