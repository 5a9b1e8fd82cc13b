//! Text as one outline to engrave.

use crate::closeness::Closeness;
use crate::face::Glyph;
use crate::{Lettering, TwinMark};
use outline::{Curve, Motion, Point, Rect, Shape, Vec2};
use std::fmt;

/// Why a text cannot be engraved.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum LetteringError {
    /// The font does not have this character.
    Missing {
        /// The character.
        character: char,
    },
    /// There is nothing to engrave.
    Empty,
    /// The height is not a length above 0.
    Height {
        /// The height that was asked for, in mm.
        height: f64,
    },
}

impl fmt::Display for LetteringError {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        match *self {
            LetteringError::Missing { character } => {
                let code = u32::from(character);
                match character {
                    '\u{300}'..='\u{36f}' => write!(
                        f,
                        "an accent (U+{code:04X}) stands apart from its letter: type the accented letter as one character"
                    ),
                    _ if character.is_control() => write!(
                        f,
                        "U+{code:04X} is no character but a command to a printer: write it on one line, with blanks only"
                    ),
                    _ => write!(
                        f,
                        "the font has no “{character}” (U+{code:04X}): write it with letters and figures, or use a symbol"
                    ),
                }
            }
            LetteringError::Empty => {
                write!(f, "there is nothing to engrave: give it at least one character that leaves ink")
            }
            LetteringError::Height { height } => {
                write!(f, "figures {height} mm high cannot be engraved: give a height above 0")
            }
        }
    }
}

impl std::error::Error for LetteringError {}

/// Steps after which two characters are as far apart as they get.
const STEPS: usize = 40;
/// Gaps are set this closely, in figure heights.
const NEAR_ENOUGH: f64 = 1e-4;

impl Lettering {
    /// The outline of a text whose figures and capitals are `height` mm high.
    ///
    /// Figures stand in the middle of cells of equal width; other characters are set as the font sets them, kerning
    /// included; between any two is at least one stroke (NUREG-0700 rev. 3, 11.4.1.5-7). The origin is the middle of
    /// the text's width, at half the height of a figure, so that all marks of a wheel share a base line; a bar or a dot
    /// does not move it. Arcs follow the font's curves within 0.0005 mm.
    ///
    /// # Errors
    /// A character that the font does not have, nothing but blanks, a height that is not above 0.
    pub fn inscription(&self, text: &str, height: f64, twin: TwinMark) -> Result<Shape, LetteringError> {
        if !(height > 0.0 && height.is_finite()) {
            return Err(LetteringError::Height { height });
        }
        let line = self.line(text, Closeness::at(height))?;
        if line.is_empty() {
            return Err(LetteringError::Empty);
        }
        let ink = line.bounds();
        let mut all = vec![line];
        all.extend(self.told_apart(&ink, twin));
        let middle = Vec2::new(ink.center().x, 0.5);
        Ok(Shape::joined(&all).moved(&Motion::shift(-middle)).scaled(Point::ZERO, height))
    }

    /// The characters side by side on the base line, at a height of 1 mm.
    fn line(&self, text: &str, closeness: Closeness) -> Result<Shape, LetteringError> {
        let mut shapes = Vec::new();
        let mut pen = 0.0;
        let mut before: Option<char> = None;
        // The last character that left ink, and where.
        let mut last: Option<(std::sync::Arc<Glyph>, f64)> = None;
        for character in text.chars() {
            let glyph = self.glyph(character, closeness).ok_or(LetteringError::Missing { character })?;
            let figure = character.is_ascii_digit();
            let (lead, advance) = if figure {
                let cell = self.cell();
                (cell / 2.0 - glyph.ink.center().x, cell)
            } else {
                let kern = before.map_or(0.0, |before| self.kern(before, character));
                pen += kern;
                (0.0, glyph.advance)
            };
            if !glyph.shape.is_empty() {
                if let Some((last, at)) = &last {
                    pen += self.short_of_a_stroke(last, &glyph, pen + lead - at);
                }
                let at = pen + lead;
                shapes.push(glyph.shape.moved(&Motion::shift(Vec2::new(at, 0.0))));
                last = Some((glyph, at));
            }
            pen += advance;
            // Figures keep to their cells: the font's kerning is not for them.
            before = (!figure).then_some(character);
        }
        Ok(Shape::joined(&shapes))
    }

    /// How much farther than `apart` two glyphs must stand for one stroke to fit between them.
    fn short_of_a_stroke(&self, left: &Glyph, right: &Glyph, apart: f64) -> f64 {
        let stroke = self.stroke(1.0);
        if apart + right.ink.x0 - left.ink.x1 >= stroke {
            return 0.0;
        }
        // The distance grows by no more than the shift, so that each step is safe, and the last steps are small.
        let mut more = 0.0;
        for _ in 0..STEPS {
            let shift = Motion::shift(Vec2::new(apart + more, 0.0));
            let near = left.edges.nearest_under(&right.edges.moved(&shift), stroke);
            match near {
                Some(near) if stroke - near.distance > NEAR_ENOUGH => {
                    more += stroke - near.distance;
                }
                _ => return more,
            }
        }
        more
    }

    /// The bar or the dot, one stroke below or beside the ink, one stroke thick.
    fn told_apart(&self, ink: &Rect, twin: TwinMark) -> Option<Shape> {
        let stroke = self.stroke(1.0);
        let half = stroke / 2.0;
        match twin {
            TwinMark::None => None,
            TwinMark::Bar => {
                let below = ink.y0.min(0.0) - stroke - half;
                let bar = Curve::rounded_rectangle(Point::new(ink.center().x, below), ink.width(), stroke, 0.0);
                Some(Shape::from(bar))
            }
            TwinMark::Dot => {
                // Somewhat larger than a stroke, or it is lost in the grain.
                let radius = 0.65 * stroke;
                Some(Shape::from(Curve::circle(Point::new(ink.x1 + stroke + radius, radius), radius)))
            }
        }
    }
}
