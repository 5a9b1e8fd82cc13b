//! Rigid motions of the plane, and the axes and sides that go with mirrors.

use kurbo::{Point, Vec2};

/// A rigid motion: turn, shift, mirror, and what follows from doing them one after another.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Motion {
    /// First column of the rotation or mirror; the second follows from it.
    pub(crate) along: Vec2,
    pub(crate) mirrored: bool,
    pub(crate) shift: Vec2,
}

/// A line to mirror about; the direction need not be of unit length.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Axis {
    /// A point on it.
    pub point: Point,
    /// Its direction.
    pub direction: Vec2,
}

/// A side of an axis, seen along its direction.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
#[expect(missing_docs, reason = "the names say it")]
pub enum Side {
    Left,
    Right,
}

impl Axis {
    /// The line x = `x`, upwards.
    pub fn vertical(x: f64) -> Axis {
        Axis { point: Point::new(x, 0.0), direction: Vec2::new(0.0, 1.0) }
    }

    /// The line y = `y`, to the right.
    pub fn horizontal(y: f64) -> Axis {
        Axis { point: Point::new(0.0, y), direction: Vec2::new(1.0, 0.0) }
    }
}

impl Motion {
    /// Leaves everything where it is.
    pub const IDENTITY: Motion = Motion { along: Vec2::new(1.0, 0.0), mirrored: false, shift: Vec2::ZERO };

    /// Turns about a point, by an angle in radians, counter-clockwise positive.
    pub fn turn(about: Point, angle: f64) -> Motion {
        let turned = Motion { along: Vec2::from_angle(angle), ..Motion::IDENTITY };
        Motion { shift: about - turned.apply(about), ..turned }
    }

    /// Shifts.
    pub fn shift(by: Vec2) -> Motion {
        Motion { shift: by, ..Motion::IDENTITY }
    }

    /// Mirrors about an axis.
    pub fn mirror(axis: &Axis) -> Motion {
        let d = axis.direction / axis.direction.hypot();
        // The reflection matrix 2 d dT - 1.
        let along = Vec2::new(2.0 * d.x * d.x - 1.0, 2.0 * d.x * d.y);
        let mirror = Motion { along, mirrored: true, shift: Vec2::ZERO };
        Motion { shift: axis.point - mirror.apply(axis.point), ..mirror }
    }

    /// This motion, and then another.
    pub fn then(&self, next: &Motion) -> Motion {
        Motion {
            along: next.apply_vec(self.along),
            mirrored: self.mirrored != next.mirrored,
            shift: next.apply_vec(self.shift) + next.shift,
        }
    }

    /// The motion that undoes this one.
    pub fn inverse(&self) -> Motion {
        let a = self.along;
        // A mirror is its own inverse but for the shift; a turn goes back.
        let along = if self.mirrored { a } else { Vec2::new(a.x, -a.y) };
        let back = Motion { along, mirrored: self.mirrored, shift: Vec2::ZERO };
        Motion { shift: -back.apply_vec(self.shift), ..back }
    }

    /// Where a point goes.
    pub fn apply(&self, p: Point) -> Point {
        (self.apply_vec(p.to_vec2()) + self.shift).to_point()
    }

    /// Where a direction goes.
    pub fn apply_vec(&self, v: Vec2) -> Vec2 {
        let a = self.along;
        let up = if self.mirrored { Vec2::new(a.y, -a.x) } else { Vec2::new(-a.y, a.x) };
        v.x * a + v.y * up
    }

    /// Whether left and right change places.
    pub fn is_mirrored(&self) -> bool {
        self.mirrored
    }
}
