//! One piece of a curve: a straight line or a circular arc.

use kurbo::{Point, Rect, Vec2};

/// A straight line or a circular arc.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum Segment {
    /// A straight line.
    Line {
        /// Where it starts.
        from: Point,
        /// Where it ends.
        to: Point,
    },
    /// A circular arc.
    Arc {
        /// Middle of its circle.
        centre: Point,
        /// Radius.
        radius: f64,
        /// Angle of its start, in radians.
        start: f64,
        /// Angle it sweeps, in radians, counter-clockwise positive.
        sweep: f64,
    },
}

impl Segment {
    /// Where it starts.
    pub fn from(&self) -> Point {
        self.point_at(0.0)
    }

    /// Where it ends.
    pub fn to(&self) -> Point {
        self.point_at(1.0)
    }

    /// Its length.
    pub fn length(&self) -> f64 {
        match self {
            Segment::Line { from, to } => (*to - *from).hypot(),
            Segment::Arc { radius, sweep, .. } => radius * sweep.abs(),
        }
    }

    /// The point at a share of its length, 0 to 1.
    pub fn point_at(&self, t: f64) -> Point {
        match self {
            Segment::Line { from, to } => from.lerp(*to, t),
            Segment::Arc { centre, radius, start, sweep } => *centre + *radius * Vec2::from_angle(start + t * sweep),
        }
    }

    /// The box around it.
    pub fn bounds(&self) -> Rect {
        let ends = Rect::from_points(self.from(), self.to());
        match self {
            Segment::Line { .. } => ends,
            Segment::Arc { centre, radius, start, sweep } => {
                let (low, high) = if *sweep < 0.0 { (start + sweep, *start) } else { (*start, start + sweep) };
                let quarter = std::f64::consts::FRAC_PI_2;
                let first = (low / quarter).ceil() as i64;
                let last = (high / quarter).floor() as i64;
                (first..=last)
                    .take(4)
                    .fold(ends, |all, k| all.union_pt(*centre + *radius * Vec2::from_angle(k as f64 * quarter)))
            }
        }
    }
}
