//! SVG path data. The one place where y changes from up to down, and where numbers are rounded.

use outline::{BezPath, Curve, EllipticCurve, EllipticPiece, PathEl, Point, Segment, Shape};
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
        Frame { corner: Point::new(0.0, height) }
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
        shape.loops().iter().map(|one| self.curve(one)).collect::<Vec<_>>().join(" ")
    }

    /// Path data of a Bezier path as it is, closed or not.
    pub(crate) fn bezier(self, path: &BezPath) -> String {
        let mut data = String::new();
        let mut put = |command: char, points: &[Point]| {
            data.push(command);
            for p in points {
                let (x, y) = self.place(*p);
                let _ = write!(data, "{} {} ", number(x), number(y));
            }
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
        data.trim_end().to_owned()
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
        let _ = write!(data, "A{} {} 0 0 {flag} {} {} ", number(rx), number(ry), number(x), number(y));
    }
}

/// Shares of an arc at which it is divided: a reader finds the middle of its circle from its ends, and of nearly half a
/// circle a rounded digit moves that middle by a hundredth of a millimetre; of a quarter by no more than the digit.
fn parts(sweep: f64) -> impl Iterator<Item = f64> {
    let parts = (sweep.abs() / (std::f64::consts::FRAC_PI_2 + 1e-6)).ceil().max(1.0);
    (1..=parts as usize).map(move |k| k as f64 / parts)
}

/// A number to a tenth of a micron, without a minus before zero.
pub(crate) fn number(value: f64) -> String {
    let text = format!("{value:.4}");
    let text = text.trim_end_matches('0').trim_end_matches('.');
    if text == "-0" { "0".into() } else { text.into() }
}

/// Text made safe to stand in a document: what XML 1.0 (section 2.2) does not allow becomes a question mark, white space
/// a blank.
pub(crate) fn escaped(text: &str) -> String {
    let mut safe = String::with_capacity(text.len());
    for c in text.chars() {
        match c {
            '&' => safe.push_str("&amp;"),
            '<' => safe.push_str("&lt;"),
            '>' => safe.push_str("&gt;"),
            '"' => safe.push_str("&quot;"),
            c if c.is_whitespace() => safe.push(' '),
            c if c.is_control() || matches!(c, '\u{fffe}' | '\u{ffff}') => safe.push('?'),
            c => safe.push(c),
        }
    }
    safe
}
