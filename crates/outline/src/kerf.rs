//! The path of the beam's middle that leaves a part, or a hole, as it is drawn.
//!
//! The beam removes what its spot touches: a disc, or an upright ellipse on a machine whose kerf differs between the
//! axes. In coordinates stretched along x until the ellipse is a disc, that is a plain offset; its arcs, brought back, are arcs of
//! upright ellipses, exactly.

use crate::biarc::{self, Smooth};
use crate::curve::unit;
use crate::{Curve, OutlineError, Segment, Shape};
use kurbo::{BezPath, Point, Rect, Vec2};

/// Which side of the cut is kept.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum KerfSide {
    /// A part: the path runs outside it.
    KeepInside,
    /// A hole: the path runs inside it.
    KeepOutside,
}

/// A closed curve of lines and arcs of upright ellipses.
#[derive(Clone, Debug, PartialEq)]
pub struct EllipticCurve {
    pieces: Vec<EllipticPiece>,
}

/// A line, or an arc of an upright ellipse.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum EllipticPiece {
    /// A straight line.
    Line {
        /// Where it starts.
        from: Point,
        /// Where it ends.
        to: Point,
    },
    /// The points centre + (rx cos a, ry sin a), a from `start` through `sweep`.
    Arc {
        /// Middle of the ellipse.
        centre: Point,
        /// Half its width.
        rx: f64,
        /// Half its height.
        ry: f64,
        /// Parameter of its start, in radians.
        start: f64,
        /// Parameter it sweeps, counter-clockwise positive.
        sweep: f64,
    },
}

/// Stretched outlines are refitted by arcs this close, in mm: a tenth of what a sheet promises.
const REFIT: f64 = 0.0005;

/// The paths that the beam's middle must follow so that `shape` comes out as drawn, for a kerf of twice `half_x` and twice `half_y`.
///
/// # Errors
/// An offset that does not close. An empty result means that the beam is wider than the opening.
pub fn compensated(
    shape: &Shape,
    side: KerfSide,
    half_x: f64,
    half_y: f64,
) -> Result<Vec<EllipticCurve>, OutlineError> {
    if !half_x.is_finite() || !half_y.is_finite() || half_x < 0.0 || half_y < 0.0 {
        return Err(OutlineError::NotFinite);
    }
    let offset = |shape: &Shape, d: f64| match side {
        KerfSide::KeepInside => shape.grown(d),
        KerfSide::KeepOutside => shape.shrunk(d),
    };
    if half_x == half_y {
        return Ok(offset(shape, half_y)?.loops().iter().map(|one| EllipticCurve::of(one, 1.0)).collect());
    }
    // A spot without width would stretch the plane without end.
    let stretch = half_y.max(1e-3) / half_x.max(1e-3);
    let stretched = Shape { loops: shape.loops().iter().map(|one| stretched(one, stretch)).collect() };
    let path = offset(&stretched, half_y.max(1e-3))?;
    Ok(path.loops().iter().map(|one| EllipticCurve::of(one, 1.0 / stretch)).collect())
}

/// A curve stretched along x; its arcs become arcs of ellipses, and these chains of arcs again.
fn stretched(curve: &Curve, stretch: f64) -> Curve {
    let tolerance = REFIT * stretch.min(1.0);
    let mut vertices = Vec::new();
    for segment in curve.segments() {
        match segment {
            Segment::Line { from, .. } => vertices.push((Point::new(stretch * from.x, from.y), 0.0)),
            Segment::Arc { centre, radius, start, sweep } => {
                let arc = Stretched {
                    centre: Point::new(stretch * centre.x, centre.y),
                    rx: stretch * radius,
                    ry: radius,
                    start,
                    sweep,
                };
                biarc::fit(&arc, 0.0, 1.0, tolerance, &mut vertices);
            }
        }
    }
    Curve::from_bulges(vertices)
}

struct Stretched {
    centre: Point,
    rx: f64,
    ry: f64,
    start: f64,
    sweep: f64,
}

impl Smooth for Stretched {
    fn point(&self, t: f64) -> Point {
        let (sin, cos) = (self.start + t * self.sweep).sin_cos();
        self.centre + Vec2::new(self.rx * cos, self.ry * sin)
    }

    fn tangent(&self, t: f64) -> Vec2 {
        let (sin, cos) = (self.start + t * self.sweep).sin_cos();
        unit(self.sweep.signum() * Vec2::new(-self.rx * sin, self.ry * cos))
    }
}

impl EllipticCurve {
    /// A curve brought back from stretched coordinates.
    fn of(curve: &Curve, back: f64) -> EllipticCurve {
        let place = |p: Point| Point::new(back * p.x, p.y);
        let pieces = curve.segments().into_iter().map(|segment| match segment {
            Segment::Line { from, to } => EllipticPiece::Line { from: place(from), to: place(to) },
            Segment::Arc { centre, radius, start, sweep } => {
                EllipticPiece::Arc { centre: place(centre), rx: back * radius, ry: radius, start, sweep }
            }
        });
        EllipticCurve { pieces: pieces.collect() }
    }

    /// Its pieces, in order.
    pub fn pieces(&self) -> &[EllipticPiece] {
        &self.pieces
    }

    /// The box around it.
    pub fn bounds(&self) -> Rect {
        self.pieces.iter().map(EllipticPiece::bounds).reduce(|all, one| all.union(one)).unwrap_or_default()
    }

    /// As cubic Beziers within `tolerance` mm.
    pub fn to_bez_path(&self, tolerance: f64) -> BezPath {
        let mut path = BezPath::new();
        for (i, piece) in self.pieces.iter().enumerate() {
            if i == 0 {
                path.move_to(piece.from());
            }
            match *piece {
                EllipticPiece::Line { to, .. } => path.line_to(to),
                EllipticPiece::Arc { centre, rx, ry, start, sweep } => {
                    let arc = kurbo::Arc::new(centre, (rx, ry), start, sweep, 0.0);
                    path.extend(arc.append_iter(tolerance));
                }
            }
        }
        path.close_path();
        path
    }
}

impl EllipticPiece {
    /// Where it starts.
    pub fn from(&self) -> Point {
        self.point_at(0.0)
    }

    /// Where it ends.
    pub fn to(&self) -> Point {
        self.point_at(1.0)
    }

    /// The point at a share of its parameter.
    pub fn point_at(&self, t: f64) -> Point {
        match *self {
            EllipticPiece::Line { from, to } => from.lerp(to, t),
            EllipticPiece::Arc { centre, rx, ry, start, sweep } => {
                let (sin, cos) = (start + t * sweep).sin_cos();
                centre + Vec2::new(rx * cos, ry * sin)
            }
        }
    }

    fn bounds(&self) -> Rect {
        match *self {
            EllipticPiece::Line { from, to } => Rect::from_points(from, to),
            EllipticPiece::Arc { centre, rx, ry, start, sweep } => {
                let unit = Segment::Arc { centre: Point::ZERO, radius: 1.0, start, sweep }.bounds();
                Rect::new(
                    centre.x + rx * unit.x0,
                    centre.y + ry * unit.y0,
                    centre.x + rx * unit.x1,
                    centre.y + ry * unit.y1,
                )
            }
        }
    }
}
