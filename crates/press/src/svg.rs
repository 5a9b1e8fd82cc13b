//! SVG path data and a picture's bare bones. The one place where y changes from up to down.

use lettering::{Lettering, TwinMark, Weight};
use outline::{
    BezPath, Curve, EllipticCurve, EllipticPiece, Motion, PathEl, Point, Segment, Shape, Vec2,
};
use std::fmt::Write;

/// Maps our coordinates, y up, to those of a drawing, y down.
#[derive(Clone, Copy, Debug)]
pub(crate) struct Frame {
    /// What becomes the upper left corner.
    pub(crate) corner: Point,
}

impl Frame {
    /// A frame for a drawing `height` high whose lower left corner is our origin.
    pub(crate) fn of_height(height: f64) -> Frame {
        Frame {
            corner: Point::new(0.0, height),
        }
    }

    fn place(self, p: Point) -> (f64, f64) {
        (p.x - self.corner.x, self.corner.y - p.y)
    }

    /// Path data of a curve: lines and arcs as they are, closed.
    pub(crate) fn curve(self, curve: &Curve) -> String {
        let mut data = String::new();
        for (i, segment) in curve.segments().iter().enumerate() {
            if i == 0 {
                self.start(&mut data, segment.from());
            }
            match *segment {
                Segment::Line { to, .. } => self.line(&mut data, to),
                Segment::Arc { radius, sweep, .. } => {
                    for t in parts(sweep) {
                        self.arc(&mut data, radius, radius, sweep, segment.point_at(t));
                    }
                }
            }
        }
        data + "Z"
    }

    /// Path data of a beam's path.
    pub(crate) fn elliptic(self, curve: &EllipticCurve) -> String {
        let mut data = String::new();
        for (i, piece) in curve.pieces().iter().enumerate() {
            if i == 0 {
                self.start(&mut data, piece.from());
            }
            match *piece {
                EllipticPiece::Line { to, .. } => self.line(&mut data, to),
                EllipticPiece::Arc { rx, ry, sweep, .. } => {
                    for t in parts(sweep) {
                        self.arc(&mut data, rx, ry, sweep, piece.point_at(t));
                    }
                }
            }
        }
        data + "Z"
    }

    /// Path data of all curves of a shape.
    pub(crate) fn shape(self, shape: &Shape) -> String {
        shape
            .loops()
            .iter()
            .map(|one| self.curve(one))
            .collect::<Vec<_>>()
            .join(" ")
    }

    fn start(self, data: &mut String, p: Point) {
        let (x, y) = self.place(p);
        let _ = write!(data, "M{} {} ", number(x), number(y));
    }

    fn line(self, data: &mut String, p: Point) {
        let (x, y) = self.place(p);
        let _ = write!(data, "L{} {} ", number(x), number(y));
    }

    /// An arc of at most a quarter turn. Ours run counter-clockwise for a positive sweep; with y down that is the drawing's sweep flag 0.
    fn arc(self, data: &mut String, rx: f64, ry: f64, sweep: f64, to: Point) {
        let (x, y) = self.place(to);
        let flag = u8::from(sweep < 0.0);
        let _ = write!(
            data,
            "A{} {} 0 0 {flag} {} {} ",
            number(rx),
            number(ry),
            number(x),
            number(y)
        );
    }
}

/// Shares of an arc at which it is divided: a reader finds the middle of its circle from its ends, and of nearly half a
/// circle a rounded digit moves that middle by a hundredth of a millimetre; of a quarter by no more than the digit.
fn parts(sweep: f64) -> impl Iterator<Item = f64> {
    let parts = (sweep.abs() / (std::f64::consts::FRAC_PI_2 + 1e-6))
        .ceil()
        .max(1.0);
    (1..=parts as usize).map(move |k| k as f64 / parts)
}

/// A number to a tenth of a micron, without a minus before zero.
pub(crate) fn number(value: f64) -> String {
    let text = format!("{value:.4}");
    let text = text.trim_end_matches('0').trim_end_matches('.');
    if text == "-0" {
        "0".into()
    } else {
        text.into()
    }
}

/// Text made safe to stand in a document.
pub(crate) fn escaped(text: &str) -> String {
    text.replace('&', "&amp;")
        .replace('<', "&lt;")
        .replace('>', "&gt;")
        .replace('"', "&quot;")
}

/// A picture in mm, drawn with our coordinates.
pub(crate) struct Picture {
    frame: Frame,
    width: f64,
    height: f64,
    title: String,
    body: String,
}

/// Paper, ink and wood of our pictures.
pub(crate) mod tone {
    pub(crate) const PAPER: &str = "#f7f3ea";
    pub(crate) const INK: &str = "#2b2622";
    pub(crate) const QUIET: &str = "#8a8074";
    pub(crate) const COVER: &str = "#d9b98a";
    pub(crate) const WHEEL: &str = "#efdcb8";
    pub(crate) const BURNT: &str = "#4a3020";
    pub(crate) const PALE: &str = "#cdbfa8";
    pub(crate) const FAIL: &str = "#b3261e";
}

impl Picture {
    /// A picture of the area from `low` to `high`.
    pub(crate) fn new(title: &str, low: Point, high: Point) -> Picture {
        let (width, height) = (high.x - low.x, high.y - low.y);
        let frame = Frame {
            corner: Point::new(low.x, high.y),
        };
        Picture {
            frame,
            width,
            height,
            title: title.to_owned(),
            body: String::new(),
        }
    }

    pub(crate) fn fill(&mut self, shape: &Shape, colour: &str) {
        if !shape.is_empty() {
            let _ = writeln!(
                self.body,
                "<path fill=\"{colour}\" d=\"{}\"/>",
                self.frame.shape(shape)
            );
        }
    }

    pub(crate) fn line_round(&mut self, shape: &Shape, colour: &str, width: f64, dashes: &str) {
        if !shape.is_empty() {
            let dashes = if dashes.is_empty() {
                String::new()
            } else {
                format!(" stroke-dasharray=\"{dashes}\"")
            };
            let _ = writeln!(
                self.body,
                "<path fill=\"none\" stroke=\"{colour}\" stroke-width=\"{}\"{dashes} d=\"{}\"/>",
                number(width),
                self.frame.shape(shape)
            );
        }
    }

    /// A Bezier path as a line.
    pub(crate) fn path(&mut self, path: &BezPath, colour: &str, width: f64, dashes: &str) {
        let dashes = if dashes.is_empty() {
            String::new()
        } else {
            format!(" stroke-dasharray=\"{dashes}\"")
        };
        let mut data = String::new();
        let mut put = |command: char, points: &[Point]| {
            let places = points
                .iter()
                .map(|p| self.frame.place(*p))
                .map(|(x, y)| format!("{} {}", number(x), number(y)));
            let _ = write!(data, "{command}{} ", places.collect::<Vec<_>>().join(" "));
        };
        for element in path.elements() {
            match *element {
                PathEl::MoveTo(p) => put('M', &[p]),
                PathEl::LineTo(p) => put('L', &[p]),
                PathEl::QuadTo(a, p) => put('Q', &[a, p]),
                PathEl::CurveTo(a, b, p) => put('C', &[a, b, p]),
                PathEl::ClosePath => put('Z', &[]),
            }
        }
        let _ = writeln!(
            self.body,
            "<path fill=\"none\" stroke=\"{colour}\" stroke-width=\"{}\"{dashes} d=\"{}\"/>",
            number(width),
            data.trim_end()
        );
    }

    pub(crate) fn straight(
        &mut self,
        from: Point,
        to: Point,
        colour: &str,
        width: f64,
        dashes: &str,
    ) {
        let ((x1, y1), (x2, y2)) = (self.frame.place(from), self.frame.place(to));
        let dashes = if dashes.is_empty() {
            String::new()
        } else {
            format!(" stroke-dasharray=\"{dashes}\"")
        };
        let _ = writeln!(
            self.body,
            "<path fill=\"none\" stroke=\"{colour}\" stroke-width=\"{}\"{dashes} d=\"M{} {} L{} {}\"/>",
            number(width),
            number(x1),
            number(y1),
            number(x2),
            number(y2)
        );
    }

    /// Writes a text with its capitals `height` high, from `at`, half way up; returns its width. Characters that the
    /// font does not have become a question mark.
    pub(crate) fn text(&mut self, at: Point, height: f64, words: &str, colour: &str) -> f64 {
        let lettering = Lettering::shipped(Weight::Regular);
        let shape = lettering
            .inscription(words, height, TwinMark::None)
            .or_else(|_| {
                let known: String = words
                    .chars()
                    .map(|c| {
                        if lettering
                            .inscription(&c.to_string(), 1.0, TwinMark::None)
                            .is_ok()
                            || c == ' '
                        {
                            c
                        } else {
                            '?'
                        }
                    })
                    .collect();
                lettering.inscription(&known, height, TwinMark::None)
            });
        let Ok(shape) = shape else { return 0.0 };
        let width = shape.bounds().width();
        let shift = Vec2::new(width / 2.0, 0.0);
        self.fill(&shape.moved(&Motion::shift(at.to_vec2() + shift)), colour);
        width
    }

    pub(crate) fn finish(self) -> String {
        let (w, h) = (number(self.width), number(self.height));
        format!(
            "<svg xmlns=\"http://www.w3.org/2000/svg\" width=\"{w}mm\" height=\"{h}mm\" viewBox=\"0 0 {w} {h}\" role=\"img\">\n<title>{}</title>\n<rect width=\"{w}\" height=\"{h}\" fill=\"{}\"/>\n{}</svg>\n",
            escaped(&self.title),
            tone::PAPER,
            self.body
        )
    }
}
