//! The shipped font at one weight: glyph outlines, read once, at a figure height of 1 mm.

use crate::closeness::Closeness;
use crate::{Weight, Zero, kern, zero};
use kurbo::{Affine, BezPath};
use outline::{Curve, Edges, Point, Rect, Shape};
use skrifa::instance::{LocationRef, Size};
use skrifa::outline::{DrawSettings, OutlinePen};
use skrifa::{FontRef, GlyphId, MetadataProvider};
use std::collections::HashMap;
use std::fmt;
use std::hash::Hash;
use std::sync::{Arc, OnceLock, PoisonError, RwLock};

/// The shipped font at one weight, with one of its zeros.
pub struct Lettering {
    font: Option<FontRef<'static>>,
    zero: Zero,
    /// Font units to mm at a figure height of 1 mm.
    scale: f64,
    glyphs: Known<(char, Closeness), Option<Arc<Glyph>>>,
    kerns: Known<(char, char), f64>,
    pub(crate) fine: Known<char, Fine>,
    cell: OnceLock<f64>,
    stroke: OnceLock<f64>,
}

/// One glyph at a figure height of 1 mm, its origin on the base line.
pub(crate) struct Glyph {
    pub(crate) shape: Shape,
    pub(crate) edges: Edges,
    pub(crate) ink: Rect,
    pub(crate) advance: f64,
}

/// The finest places of a glyph at a figure height of 1 mm.
#[derive(Clone, Copy, Debug, Default)]
pub(crate) struct Fine {
    pub(crate) stroke: Option<f64>,
    pub(crate) island: Option<f64>,
}

/// Where the width of the typical stroke is measured on the figure 1: between its foot and its flag, in figure heights.
const STEM: (f64, f64) = (0.4, 0.5);

impl Lettering {
    /// The font at a weight, with the plain zero.
    pub fn shipped(weight: Weight) -> &'static Lettering {
        Lettering::with_zero(weight, Zero::default())
    }

    /// The font at a weight, with the zero of your choice.
    pub fn with_zero(weight: Weight, zero: Zero) -> &'static Lettering {
        static ALL: [[OnceLock<Lettering>; 2]; 4] = [const { [const { OnceLock::new() }; 2] }; 4];
        ALL[weight as usize][zero as usize].get_or_init(|| Lettering::read(weight.font(), zero))
    }

    fn read(data: &'static [u8], zero: Zero) -> Lettering {
        let font = FontRef::new(data).ok();
        let mut all = Lettering {
            font,
            zero,
            scale: 1.0,
            glyphs: Known::default(),
            kerns: Known::default(),
            fine: Known::default(),
            cell: OnceLock::new(),
            stroke: OnceLock::new(),
        };
        // H stands on the base line and is as high as the figures, which round ones overshoot.
        let capital = all.raw('H').map_or(1.0, |(path, _)| kurbo::Shape::bounding_box(&path).y1);
        all.scale = 1.0 / capital;
        all
    }

    fn id(&self, character: char) -> Option<GlyphId> {
        // An accent that stands alone belongs on the letter before it, which needs more than outlines side by side.
        let accent = matches!(character, '\u{300}'..='\u{36f}');
        self.font.as_ref()?.charmap().map(character).filter(|_| !accent)
    }

    /// A glyph's path and advance in font units.
    fn raw(&self, character: char) -> Option<(BezPath, f64)> {
        let font = self.font.as_ref()?;
        let id = self.id(character)?;
        let mut pen = Pen(BezPath::new());
        let settings = DrawSettings::unhinted(Size::unscaled(), LocationRef::default());
        font.outline_glyphs().get(id)?.draw(settings, &mut pen).ok()?;
        let metrics = font.glyph_metrics(Size::unscaled(), LocationRef::default());
        Some((pen.0, metrics.advance_width(id).unwrap_or(0.0).into()))
    }

    /// A glyph's path at a figure height of 1 mm, with the zero that was asked for, and its advance.
    pub(crate) fn path(&self, character: char) -> Option<(BezPath, f64)> {
        let (mut path, advance) = self.raw(character)?;
        if character == '0' && self.zero == Zero::Plain {
            path = zero::without_slash(&path).unwrap_or(path);
        }
        Some((Affine::scale(self.scale) * path, advance * self.scale))
    }

    /// A glyph, cached.
    pub(crate) fn glyph(&self, character: char, closeness: Closeness) -> Option<Arc<Glyph>> {
        self.glyphs.get_or((character, closeness), || {
            let (path, advance) = self.path(character)?;
            let shape = Shape::from_path(&path, closeness.tolerance());
            Some(Arc::new(Glyph { edges: Edges::of(&shape), ink: shape.bounds(), shape, advance }))
        })
    }

    /// What the font adds to the gap between two characters, in figure heights; mostly less than 0.
    pub(crate) fn kern(&self, first: char, second: char) -> f64 {
        self.kerns.get_or((first, second), || match (&self.font, self.id(first), self.id(second)) {
            (Some(font), Some(first), Some(second)) => kern::between(font, first, second) * self.scale,
            _ => 0.0,
        })
    }

    /// Width of the cell that every figure is centred in: the widest figure and one stroke, in figure heights.
    pub(crate) fn cell(&self) -> f64 {
        *self.cell.get_or_init(|| {
            let widest = ('0'..='9')
                .filter_map(|c| self.path(c))
                .map(|(path, _)| kurbo::Shape::bounding_box(&path).width())
                .fold(0.0, f64::max);
            widest + self.stroke(1.0)
        })
    }

    /// Typical width of a stroke at a figure height, both in mm: that of the upright of the figure 1.
    pub fn stroke(&self, height: f64) -> f64 {
        let unit = *self.stroke.get_or_init(|| {
            let Some(one) = self.glyph('1', Closeness::COARSE) else {
                return 0.15;
            };
            let (low, high) = STEM;
            let middle = Point::new(one.ink.center().x, (low + high) / 2.0);
            let band = Curve::rounded_rectangle(middle, 2.0, high - low, 0.0);
            one.shape.common(&Shape::from(band)).bounds().width()
        });
        unit * height
    }
}

impl fmt::Debug for Lettering {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        f.debug_struct("Lettering").field("zero", &self.zero).field("stroke", &self.stroke(1.0)).finish_non_exhaustive()
    }
}

/// What has been worked out so far.
pub(crate) struct Known<K, V>(RwLock<HashMap<K, V>>);

impl<K, V> Default for Known<K, V> {
    fn default() -> Self {
        Known(RwLock::default())
    }
}

impl<K: Eq + Hash, V: Clone> Known<K, V> {
    /// What is known of a key; worked out the first time. Two threads may both do that, and find the same.
    pub(crate) fn get_or(&self, key: K, make: impl FnOnce() -> V) -> V {
        let known = self.0.read().unwrap_or_else(PoisonError::into_inner);
        if let Some(value) = known.get(&key) {
            return value.clone();
        }
        drop(known);
        let value = make();
        let mut known = self.0.write().unwrap_or_else(PoisonError::into_inner);
        known.entry(key).or_insert(value).clone()
    }
}

struct Pen(BezPath);

fn at(x: f32, y: f32) -> Point {
    Point::new(f64::from(x), f64::from(y))
}

impl OutlinePen for Pen {
    fn move_to(&mut self, x: f32, y: f32) {
        self.0.move_to(at(x, y));
    }

    fn line_to(&mut self, x: f32, y: f32) {
        self.0.line_to(at(x, y));
    }

    fn quad_to(&mut self, cx: f32, cy: f32, x: f32, y: f32) {
        self.0.quad_to(at(cx, cy), at(x, y));
    }

    fn curve_to(&mut self, ax: f32, ay: f32, bx: f32, by: f32, x: f32, y: f32) {
        self.0.curve_to(at(ax, ay), at(bx, by), at(x, y));
    }

    fn close(&mut self) {
        self.0.close_path();
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::closeness::WITHIN;
    use kurbo::{ParamCurve, PathSeg};

    fn weight(name: &str) -> Weight {
        let names = ["Regular", "Medium", "SemiBold", "Bold"];
        let index = names.iter().position(|known| *known == name);
        Weight::ALL[index.expect("a weight")]
    }

    /// The rows of one of the oracle's tables.
    fn rows(table: &'static str) -> impl Iterator<Item = Vec<&'static str>> {
        let rows = table.lines().filter(|row| !row.starts_with('#'));
        rows.map(|row| row.split('\t').collect())
    }

    #[test]
    fn kerning_is_what_harfbuzz_makes_of_the_font() {
        let mut count = 0;
        for row in rows(include_str!("../tests/data/kerns.csv")) {
            let [first, second] = row[1].chars().collect::<Vec<_>>()[..] else {
                panic!("not a pair: {row:?}");
            };
            let lettering = Lettering::shipped(weight(row[0]));
            let ours = lettering.kern(first, second) / lettering.scale;
            let theirs: f64 = row[2].parse().expect("a number");
            assert!((ours - theirs).abs() < 1e-9, "{row:?}: {ours}");
            count += 1;
        }
        assert_eq!(count, 1280);
    }

    #[test]
    fn advances_are_those_that_fonttools_reads() {
        for row in rows(include_str!("../tests/data/glyphs.csv")) {
            let code = row[1].parse().expect("a code point");
            let character = char::from_u32(code).expect("a character");
            let lettering = Lettering::shipped(weight(row[0]));
            let (_, advance) = lettering.path(character).expect("a glyph");
            let theirs: f64 = row[2].parse().expect("a number");
            assert!((advance / lettering.scale - theirs).abs() < 1e-9, "{row:?}");
        }
    }

    #[test]
    fn arcs_keep_to_the_curves_of_the_font_at_every_height() {
        let lettering = Lettering::shipped(Weight::Medium);
        for height in [3.0, 5.0, 12.0, 20.0, 80.0] {
            for character in "0123456789ABGQSaegs&%".chars() {
                let closeness = Closeness::at(height);
                let glyph = lettering.glyph(character, closeness).expect("a glyph");
                let (path, _) = lettering.path(character).expect("a path");
                let segments: Vec<PathSeg> = path.segments().collect();
                let mut off: f64 = 0.0;
                for segment in &segments {
                    for k in 0..=20 {
                        let p = segment.eval(f64::from(k) / 20.0);
                        off = off.max(glyph.edges.distance_to(p));
                    }
                }
                // And from the arcs back to the curves.
                for arc in glyph.shape.loops().iter().flat_map(|one| one.segments()) {
                    let p = arc.point_at(0.5);
                    let near =
                        segments.iter().map(|segment| kurbo::ParamCurveNearest::nearest(segment, p, 1e-9).distance_sq);
                    off = off.max(near.fold(f64::INFINITY, f64::min).sqrt());
                }
                assert!(off * height <= WITHIN, "{character} at {height} mm: {} mm off", off * height);
            }
        }
    }
}
