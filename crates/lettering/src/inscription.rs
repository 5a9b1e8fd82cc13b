//! Text as one outline to engrave.

use crate::{Lettering, TwinMark};
use outline::{Curve, Motion, Point, Rect, Shape, Vec2};
use std::fmt;

/// Why a text cannot be engraved.
#[derive(Clone, Debug, PartialEq, Eq)]
pub enum LetteringError {
    /// The font does not have this character.
    Missing {
        /// The character.
        character: char,
    },
    /// There is nothing to engrave.
    Empty,
}

impl fmt::Display for LetteringError {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        match self {
            LetteringError::Missing { character } => write!(f, "the font has no “{character}”"),
            LetteringError::Empty => write!(f, "there is nothing to engrave"),
        }
    }
}

impl std::error::Error for LetteringError {}

impl Lettering {
    /// The outline of a text whose figures and capitals are `height` mm high. Figures stand in cells of equal
    /// width; between any two characters is at least one stroke (NUREG-0700 rev. 3, 11.4.1.5-7). The origin is the middle
    /// of the ink's width, at half the height of a figure, so that all marks of a wheel share a base line.
    ///
    /// # Errors
    /// A character that the font does not have, or nothing but blanks.
    pub fn inscription(
        &self,
        text: &str,
        height: f64,
        twin: TwinMark,
    ) -> Result<Shape, LetteringError> {
        let line = self.line(text)?;
        let ink = line.bounds();
        if line.is_empty() {
            return Err(LetteringError::Empty);
        }
        let mut all = vec![line];
        all.extend(self.told_apart(&ink, twin));
        let middle = Vec2::new(ink.center().x, 0.5);
        Ok(Shape::joined(&all)
            .moved(&Motion::shift(-middle))
            .scaled(Point::ZERO, height))
    }

    /// The characters side by side on the base line, at a height of 1 mm.
    fn line(&self, text: &str) -> Result<Shape, LetteringError> {
        let stroke = self.stroke(1.0);
        let mut shapes = Vec::new();
        let mut pen = 0.0;
        let mut ink_end = f64::NEG_INFINITY;
        for character in text.chars() {
            let glyph = self
                .glyph(character)
                .ok_or(LetteringError::Missing { character })?;
            let (mut at, advance) = if character.is_ascii_digit() {
                let cell = self.cell();
                (pen + cell / 2.0 - glyph.ink.center().x, cell)
            } else {
                (pen, glyph.advance)
            };
            if !glyph.shape.is_empty() {
                // Where the font sets closer than one stroke, move on.
                let closer = (ink_end + stroke - (at + glyph.ink.x0)).max(0.0);
                at += closer;
                pen += closer;
                ink_end = at + glyph.ink.x1;
                shapes.push(glyph.shape.moved(&Motion::shift(Vec2::new(at, 0.0))));
            }
            pen += advance;
        }
        Ok(Shape::joined(&shapes))
    }

    /// The bar or the dot, one stroke below or beside the ink, one stroke thick.
    fn told_apart(&self, ink: &Rect, twin: TwinMark) -> Option<Shape> {
        let stroke = self.stroke(1.0);
        let half = stroke / 2.0;
        match twin {
            TwinMark::None => None,
            TwinMark::Bar => {
                let below = ink.y0.min(0.0) - stroke - half;
                let bar = Curve::rounded_rectangle(
                    Point::new(ink.center().x, below),
                    ink.width(),
                    stroke,
                    0.0,
                );
                Some(Shape::from(bar))
            }
            TwinMark::Dot => {
                // Somewhat larger than a stroke, or it is lost in the grain.
                let radius = 0.65 * stroke;
                Some(Shape::from(Curve::circle(
                    Point::new(ink.x1 + stroke + radius, radius),
                    radius,
                )))
            }
        }
    }
}
