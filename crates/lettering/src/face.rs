//! The shipped font at one weight: glyph outlines, read once, at a figure height of 1 mm.

use crate::Weight;
use kurbo::{Affine, BezPath};
use outline::{Point, Rect, Shape};
use skrifa::instance::{LocationRef, Size};
use skrifa::outline::{DrawSettings, OutlinePen};
use skrifa::{FontRef, GlyphId, MetadataProvider};
use std::collections::HashMap;
use std::sync::{Arc, OnceLock, PoisonError, RwLock};

/// Arcs lie this close to the font's own curves at a figure height of 1 mm: half a micron at 5 mm, 2 microns at 20 mm.
const TOLERANCE: f64 = 1e-4;
/// Radius, in figure heights, with which the two halves of the slashed zero's island are closed to one oval.
const CLOSING: f64 = 2.0;

/// The shipped font at one weight.
pub struct Lettering {
    font: Option<FontRef<'static>>,
    /// Font units to mm at a figure height of 1 mm.
    scale: f64,
    glyphs: RwLock<HashMap<char, Option<Arc<Glyph>>>>,
    cell: OnceLock<f64>,
}

/// One glyph at a figure height of 1 mm, its origin on the base line.
#[derive(Debug)]
pub(crate) struct Glyph {
    pub(crate) shape: Shape,
    pub(crate) ink: Rect,
    pub(crate) advance: f64,
    pub(crate) fine: OnceLock<(Option<f64>, Option<f64>)>,
}

impl Lettering {
    /// The font at a weight.
    pub fn shipped(weight: Weight) -> &'static Lettering {
        static ALL: [OnceLock<Lettering>; 4] = [const { OnceLock::new() }; 4];
        ALL[weight as usize].get_or_init(|| Lettering::read(weight.font()))
    }

    fn read(data: &'static [u8]) -> Lettering {
        let font = FontRef::new(data).ok();
        let mut all = Lettering {
            font,
            scale: 1.0,
            glyphs: RwLock::default(),
            cell: OnceLock::new(),
        };
        // H stands on the base line and is as high as the figures, which round ones overshoot.
        let capital = all
            .raw('H')
            .map_or(1.0, |(path, _)| kurbo::Shape::bounding_box(&path).y1);
        all.scale = 1.0 / capital;
        all
    }

    /// A glyph's path and advance in font units.
    fn raw(&self, character: char) -> Option<(BezPath, f64)> {
        let font = self.font.as_ref()?;
        let id = font.charmap().map(character)?;
        let mut pen = Pen(BezPath::new());
        let settings = DrawSettings::unhinted(Size::unscaled(), LocationRef::default());
        font.outline_glyphs()
            .get(id)?
            .draw(settings, &mut pen)
            .ok()?;
        Some((pen.0, advance(font, id)))
    }

    /// A glyph, cached.
    pub(crate) fn glyph(&self, character: char) -> Option<Arc<Glyph>> {
        let known = self
            .glyphs
            .read()
            .unwrap_or_else(PoisonError::into_inner)
            .get(&character)
            .cloned();
        known.unwrap_or_else(|| {
            let made = self.make(character).map(Arc::new);
            self.glyphs
                .write()
                .unwrap_or_else(PoisonError::into_inner)
                .insert(character, made.clone());
            made
        })
    }

    fn make(&self, character: char) -> Option<Glyph> {
        let (path, advance) = self.raw(character)?;
        let mut shape = Shape::from_path(&(Affine::scale(self.scale) * path), TOLERANCE);
        if character == '0' {
            shape = plain_zero(shape);
        }
        let ink = shape.bounds();
        Some(Glyph {
            shape,
            ink,
            advance: advance * self.scale,
            fine: OnceLock::new(),
        })
    }

    /// Width of the cell that every figure is centred in: the widest figure and one stroke, at a height of 1 mm.
    pub(crate) fn cell(&self) -> f64 {
        *self.cell.get_or_init(|| {
            let widest = ('0'..='9')
                .filter_map(|c| self.glyph(c))
                .map(|glyph| glyph.ink.width())
                .fold(0.0, f64::max);
            widest + self.stroke(1.0)
        })
    }

    /// Typical width of a stroke at a figure height in mm: that of the letter H.
    pub fn stroke(&self, height: f64) -> f64 {
        self.glyph('H')
            .and_then(|glyph| glyph.fine().0)
            .unwrap_or(0.15)
            * height
    }
}

/// The zero without its slash: the two halves of the island closed to one oval, which is convex, so that a
/// closing with a radius much larger than the figure brings back all of it.
fn plain_zero(slashed: Shape) -> Shape {
    let (outers, holes) = (slashed.outers(), slashed.holes());
    let [outer] = outers[..] else { return slashed };
    if holes.len() < 2 {
        return slashed;
    }
    let halves = Shape::from_loops(holes.iter().map(|hole| hole.reversed()).collect());
    match halves.concave_corners_rounded(CLOSING) {
        Ok(oval) if oval.loops().len() == 1 => {
            Shape::new(outer.clone(), vec![oval.loops()[0].clone()])
        }
        _ => slashed,
    }
}

fn advance(font: &FontRef, id: GlyphId) -> f64 {
    let metrics = font.glyph_metrics(Size::unscaled(), LocationRef::default());
    f64::from(metrics.advance_width(id).unwrap_or(0.0))
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
