//! One closed curve of lines and arcs.

use crate::motion::Motion;
use crate::piece::Piece;
use crate::{OutlineError, Segment};
use cavalier_contours::core::math::Vector2;
use cavalier_contours::polyline::{PlineSource, PlineSourceMut, PlineVertex, Polyline};
use kurbo::{Point, Rect, Vec2};

/// One closed curve of lines and circular arcs, without self-crossings.
#[derive(Clone, Debug)]
pub struct Curve {
    /// Vertices with the bulge of the piece that follows: the tangent of a quarter of its sweep.
    pub(crate) pline: Polyline<f64>,
}

impl Curve {
    pub(crate) fn from_bulges(vertices: impl IntoIterator<Item = (Point, f64)>) -> Curve {
        let mut pline = Polyline::new_closed();
        for (p, bulge) in vertices {
            pline.add_vertex(PlineVertex::new(p.x, p.y, bulge));
        }
        Curve { pline }
    }

    /// A curve from pieces that follow each other and close.
    ///
    /// # Errors
    /// Pieces that do not enclose an area, or numbers that are not finite.
    pub fn from_segments(segments: &[Segment]) -> Result<Curve, OutlineError> {
        let mut vertices = Vec::with_capacity(segments.len());
        for segment in segments {
            match *segment {
                Segment::Line { from, .. } => vertices.push((from, 0.0)),
                Segment::Arc { sweep, .. } => {
                    // The kernel takes arcs up to a half circle.
                    let parts = (sweep.abs() / std::f64::consts::PI).ceil().max(1.0);
                    for part in 0..parts as usize {
                        vertices.push((segment.point_at(part as f64 / parts), (sweep / parts / 4.0).tan()));
                    }
                }
            }
        }
        if vertices.iter().any(|(p, bulge)| !p.is_finite() || !bulge.is_finite()) {
            return Err(OutlineError::NotFinite);
        }
        let curve = Curve::from_bulges(vertices);
        if curve.area().abs() > 0.0 { Ok(curve) } else { Err(OutlineError::Vanished) }
    }

    /// Its pieces, in order.
    pub fn segments(&self) -> Vec<Segment> {
        self.pieces().map(|piece| piece.segment()).collect()
    }

    pub(crate) fn pieces(&self) -> impl Iterator<Item = Piece> + '_ {
        self.pline.iter_segments().map(|(a, b)| Piece::of_bulge(Point::new(a.x, a.y), Point::new(b.x, b.y), a.bulge))
    }

    /// Its corners and ends of arcs, in order.
    pub fn points(&self) -> impl Iterator<Item = Point> + '_ {
        self.pline.iter_vertexes().map(|v| Point::new(v.x, v.y))
    }

    /// Its corners and ends of arcs, with points between such that no chord spans more than 45 degrees of an arc; without
    /// trigonometry where arcs are short, as those of letters are.
    pub fn chord_points(&self) -> Vec<Point> {
        /// Tangent of a quarter of 45 degrees.
        const SHORT: f64 = 0.199;
        let mut points = Vec::with_capacity(self.pline.vertex_count());
        for (a, b) in self.pline.iter_segments() {
            let piece = Piece::of_bulge(Point::new(a.x, a.y), Point::new(b.x, b.y), a.bulge);
            points.push(Point::new(a.x, a.y));
            if a.bulge.abs() > SHORT {
                let between = (a.bulge.atan().abs() * 4.0 / std::f64::consts::FRAC_PI_4).ceil();
                let segment = piece.segment();
                points.extend((1..between as usize).map(|k| segment.point_at(k as f64 / between)));
            }
        }
        points
    }

    /// The area inside, negative when the curve runs clockwise.
    pub fn area(&self) -> f64 {
        self.pline.area()
    }

    /// Its length.
    pub fn perimeter(&self) -> f64 {
        self.pline.path_length()
    }

    /// The box around it.
    pub fn bounds(&self) -> Rect {
        let mut boxes = self.pieces().map(|piece| piece.bounds());
        let first = boxes.next().unwrap_or_default();
        boxes.fold(first, |all, one| all.union(one))
    }

    /// Whether a point lies inside.
    pub fn contains(&self, p: Point) -> bool {
        self.pline.winding_number(Vector2::new(p.x, p.y)) != 0
    }

    /// Whether it runs clockwise.
    pub fn is_clockwise(&self) -> bool {
        self.area() < 0.0
    }

    /// The same curve the other way round.
    pub fn reversed(&self) -> Curve {
        let mut pline = self.pline.clone();
        pline.invert_direction_mut();
        Curve { pline }
    }

    /// Counter-clockwise, whichever way it ran.
    pub(crate) fn anticlockwise(self) -> Curve {
        if self.is_clockwise() { self.reversed() } else { self }
    }

    /// The largest distance of the curve from a point.
    pub fn farthest_from(&self, p: Point) -> f64 {
        self.pieces().map(|piece| piece.farthest_from(p)).fold(0.0, f64::max)
    }

    /// The least distance of the curve from a point.
    pub fn nearest_to(&self, p: Point) -> f64 {
        self.pieces().map(|piece| (piece.nearest_to(p) - p).hypot()).fold(f64::INFINITY, f64::min)
    }

    /// Moved. A mirror turns the way it runs; the way is turned back, so that areas keep their sign.
    pub fn moved(&self, motion: &Motion) -> Curve {
        let mirrored = motion.is_mirrored();
        let moved = Curve::from_bulges(
            self.pline
                .iter_vertexes()
                .map(|v| (motion.apply(Point::new(v.x, v.y)), if mirrored { -v.bulge } else { v.bulge })),
        );
        if mirrored { moved.reversed() } else { moved }
    }

    /// Scaled about a point by a positive factor.
    pub fn scaled(&self, about: Point, factor: f64) -> Curve {
        Curve::from_bulges(
            self.pline.iter_vertexes().map(|v| (about + factor * (Point::new(v.x, v.y) - about), v.bulge)),
        )
    }

    /// A point of the curve, to test where it lies.
    pub(crate) fn a_point(&self) -> Option<Point> {
        self.pline.get(0).map(|v| Point::new(v.x, v.y))
    }
}

/// The unit vector of a direction; zero stays zero.
pub(crate) fn unit(v: Vec2) -> Vec2 {
    let length = v.hypot();
    if length > 0.0 { v / length } else { v }
}
