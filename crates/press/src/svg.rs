//! SVG path data. The one place where y changes from up to down, and where numbers are rounded.

use outline::{BezPath, EllipticCurve, EllipticPiece, PathEl, Point, Segment, Shape};
use std::fmt::{self, Write};

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

    /// Path data of a closed chain of lines and arcs, as they are.
    pub(crate) fn chain(self, pieces: &[Segment]) -> String {
        let mut data = String::new();
        for (i, segment) in pieces.iter().enumerate() {
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
        shape.loops().iter().map(|one| self.chain(&one.segments())).collect::<Vec<_>>().join(" ")
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

/// A number to a tenth of a micron, without trailing zeros and without a minus before zero.
pub(crate) fn number(value: f64) -> Tenths {
    Tenths((value * 1e4).round() as i64)
}

/// A length in tenths of a micron, written in mm.
pub(crate) struct Tenths(i64);

impl fmt::Display for Tenths {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        let sign = if self.0 < 0 { "-" } else { "" };
        let (whole, mut part) = (self.0.unsigned_abs() / 10_000, self.0.unsigned_abs() % 10_000);
        if part == 0 {
            return write!(f, "{sign}{whole}");
        }
        let mut places = 4;
        while part % 10 == 0 {
            (part, places) = (part / 10, places - 1);
        }
        write!(f, "{sign}{whole}.{part:0places$}")
    }
}

/// Text made safe to stand in a document.
pub(crate) fn escaped(text: &str) -> String {
    plain(text).replace('&', "&amp;").replace('<', "&lt;").replace('>', "&gt;").replace('"', "&quot;")
}

/// Text in one line that every reader takes: white space becomes a blank, and what XML 1.0 (section 2.2) forbids or a terminal
/// would obey a question mark.
pub(crate) fn plain(text: &str) -> String {
    let one = |c: char| match c {
        c if c.is_whitespace() => ' ',
        c if c.is_control() || matches!(c, '\u{fffe}' | '\u{ffff}') => '?',
        c => c,
    };
    text.chars().map(one).collect()
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn numbers_are_short_and_exact() {
        let cases = [
            (0.0, "0"),
            (-0.00004, "0"),
            (12.0, "12"),
            (-0.5, "-0.5"),
            (3.07504, "3.075"),
            (3.00006, "3.0001"),
            (-1234.0001, "-1234.0001"),
            (100.01, "100.01"),
        ];
        for (value, text) in cases {
            assert_eq!(number(value).to_string(), text);
        }
    }

    #[test]
    fn what_breaks_a_document_is_left_out() {
        assert_eq!(escaped("a\u{1}b\n<&>\""), "a?b &lt;&amp;&gt;&quot;");
    }
}
