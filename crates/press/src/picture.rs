//! A picture for people, in mm: shapes, lines and words as outlines on warm paper.

use crate::light::light;
use crate::svg::{Frame, escaped, number};
use lettering::{Lettering, TwinMark, Weight};
use outline::{BezPath, Motion, Point, Rect, Shape, Vec2};
use std::fmt::Write;

/// Paper, ink and wood of our pictures.
pub(crate) mod tone {
    pub(crate) const PAPER: &str = "#f7f3ea";
    pub(crate) const INK: &str = "#2b2622";
    pub(crate) const QUIET: &str = "#7a7064";
    pub(crate) const COVER: &str = "#d9b98a";
    pub(crate) const WHEEL: &str = "#efdcb8";
    pub(crate) const BURNT: &str = "#4a3020";
    pub(crate) const PALE: &str = "#b59a6f";
    pub(crate) const THROUGH: &str = "#c8a673";
    pub(crate) const FAIL: &str = "#b3261e";
}

/// Dashes of lines, after the kinds of ISO 128-2 (from memory): hidden edges, and axes.
pub(crate) mod dashes {
    pub(crate) const NONE: &str = "";
    pub(crate) const HIDDEN: &str = "1.5 1";
    pub(crate) const AXIS: &str = "6 1.5 1 1.5";
}

/// From one line of text to the next, in heights of its capitals.
const LEADING: f64 = 2.0;
/// Width of a blank between words, in heights of their capitals.
const BLANK: f64 = 0.55;

/// A height at which words fit into a width, `height` at most; an estimate from the widths of our letters.
pub(crate) fn fitting(words: &str, height: f64, width: f64) -> f64 {
    let wanted = words.chars().count() as f64 * 0.78 * height;
    height * (width / wanted).min(1.0)
}

/// A picture in the making, drawn in our coordinates.
pub(crate) struct Picture {
    frame: Frame,
    area: Rect,
    title: String,
    body: String,
}

impl Picture {
    /// A picture of an area; it may grow downwards while it is drawn.
    pub(crate) fn new(title: &str, area: Rect) -> Picture {
        Picture {
            frame: Frame { corner: Point::new(area.x0, area.y1) },
            area,
            title: title.to_owned(),
            body: String::new(),
        }
    }

    /// The area shown.
    pub(crate) fn area(&self) -> Rect {
        self.area
    }

    /// Lets the picture end at `y`.
    pub(crate) fn end_at(&mut self, y: f64) {
        self.area.y0 = y;
    }

    /// Lets the picture reach as far right as `x`.
    pub(crate) fn widen_to(&mut self, x: f64) {
        self.area.x1 = self.area.x1.max(x);
    }

    /// A filled area.
    pub(crate) fn fill(&mut self, shape: &Shape, colour: &str) {
        if !shape.is_empty() {
            let data = self.data(shape);
            let _ = writeln!(self.body, "<path fill=\"{colour}\" d=\"{data}\"/>");
        }
    }

    /// A filled Bezier path.
    pub(crate) fn fill_path(&mut self, path: &BezPath, colour: &str) {
        let data = self.frame.bezier(path);
        let _ = writeln!(self.body, "<path fill=\"{colour}\" d=\"{data}\"/>");
    }

    /// A line round a shape.
    pub(crate) fn outline(&mut self, shape: &Shape, pen: Pen) {
        if !shape.is_empty() {
            let data = self.data(shape);
            self.stroke(&data, pen);
        }
    }

    /// A Bezier path as a line.
    pub(crate) fn line(&mut self, path: &BezPath, pen: Pen) {
        let data = self.frame.bezier(path);
        self.stroke(&data, pen);
    }

    /// A straight line.
    pub(crate) fn straight(&mut self, from: Point, to: Point, pen: Pen) {
        let mut path = BezPath::new();
        path.move_to(from);
        path.line_to(to);
        self.line(&path, pen);
    }

    fn data(&self, shape: &Shape) -> String {
        let loops = shape.loops().iter();
        let chains = loops.map(|one| self.frame.chain(&light(one)));
        chains.collect::<Vec<_>>().join(" ")
    }

    fn stroke(&mut self, data: &str, pen: Pen) {
        let _ =
            write!(self.body, "<path fill=\"none\" stroke=\"{}\" stroke-width=\"{}\"", pen.colour, number(pen.width));
        if !pen.dashes.is_empty() {
            let _ = write!(self.body, " stroke-dasharray=\"{}\"", pen.dashes);
        }
        let _ = writeln!(self.body, " d=\"{data}\"/>");
    }

    /// Words with capitals `height` high, from `at`, half way up; returns their width.
    pub(crate) fn text(&mut self, at: Point, height: f64, words: &str, colour: &str) -> f64 {
        let shape = written(words, height);
        let width = shape.bounds().width();
        let shift = at.to_vec2() + Vec2::new(width / 2.0, 0.0);
        self.fill(&shape.moved(&Motion::shift(shift)), colour);
        width
    }

    /// Words broken into lines no wider than the area right of `at`, less `margin`; returns the height they take.
    pub(crate) fn paragraph(&mut self, at: Point, height: f64, words: &str, colour: &str, margin: f64) -> f64 {
        let room = (self.area.x1 - margin - at.x).max(height);
        let mut line = Vec::new();
        let (mut used, mut down) = (0.0, 0.0);
        for word in words.split_whitespace() {
            let width = written(word, height).bounds().width();
            if !line.is_empty() && used + BLANK * height + width > room {
                self.text(at - Vec2::new(0.0, down), height, &std::mem::take(&mut line).join(" "), colour);
                (used, down) = (0.0, down + LEADING * height);
            }
            used += width + if line.is_empty() { 0.0 } else { BLANK * height };
            line.push(word);
        }
        self.text(at - Vec2::new(0.0, down), height, &line.join(" "), colour);
        down + LEADING * height
    }

    /// Elements made elsewhere, as they are.
    pub(crate) fn raw(&mut self, elements: &str) {
        self.body += elements;
    }

    /// The document without paper under it, for a page that brings its own.
    pub(crate) fn finish_on_white(self) -> String {
        let (w, h) = (number(self.area.width()), number(self.area.height()));
        format!(
            "<svg xmlns=\"http://www.w3.org/2000/svg\" width=\"{w}mm\" height=\"{h}mm\" viewBox=\"0 0 {w} {h}\">\n{}</svg>\n",
            self.body
        )
    }

    /// What is drawn until the returned group is ended is blurred, by a Gaussian of this standard deviation in mm; light adds up linearly.
    pub(crate) fn begin_blur(&mut self, deviation: f64) {
        let name = format!("blur-{}", self.body.matches("<filter").count() + 1);
        let _ = writeln!(
            self.body,
            "<filter id=\"{name}\" color-interpolation-filters=\"linearRGB\"><feGaussianBlur stdDeviation=\"{}\"/></filter>\n<g filter=\"url(#{name})\">",
            number(deviation)
        );
    }

    /// Ends the group.
    pub(crate) fn end_blur(&mut self) {
        self.body.push_str("</g>\n");
    }

    /// The document.
    pub(crate) fn finish(self) -> String {
        let (w, h) = (number(self.area.width()), number(self.area.height()));
        format!(
            "<svg xmlns=\"http://www.w3.org/2000/svg\" width=\"{w}mm\" height=\"{h}mm\" viewBox=\"0 0 {w} {h}\" role=\"img\">\n<title>{}</title>\n<rect width=\"{w}\" height=\"{h}\" fill=\"{}\"/>\n{}</svg>\n",
            escaped(&self.title),
            tone::PAPER,
            self.body
        )
    }
}

/// How a line is drawn.
#[derive(Clone, Copy)]
pub(crate) struct Pen<'a> {
    colour: &'a str,
    width: f64,
    dashes: &'a str,
}

/// A pen; width in mm.
pub(crate) fn pen<'a>(colour: &'a str, width: f64, dashes: &'a str) -> Pen<'a> {
    Pen { colour, width, dashes }
}

/// Words as an outline about their middle. Characters that the font does not have become a question mark.
fn written(words: &str, height: f64) -> Shape {
    let lettering = Lettering::shipped(Weight::Regular);
    let inscribed = |words: &str| lettering.inscription(words, height, TwinMark::None);
    let known = |c: char| c == ' ' || inscribed(&c.to_string()).is_ok();
    inscribed(words)
        .or_else(|_| {
            let mended: String = words.chars().map(|c| if known(c) { c } else { '?' }).collect();
            inscribed(&mended)
        })
        .unwrap_or_default()
}
