//! Two discs face to face, unlike poles towards each other.

use std::ops::{Add, Neg};

use crate::{Disc, coaxial, offset};

/// Two discs whose axes are parallel and whose unlike poles face each other, so that they attract.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Pair {
    /// The disc that stays.
    pub first: Disc,
    /// The disc on which the forces act.
    pub second: Disc,
}

/// Force on the second disc, in N.
#[derive(Clone, Copy, Debug, Default, PartialEq)]
pub struct Forces {
    /// Positive attracts.
    pub axial: f64,
    /// Along the offset: negative pulls back on the axis, positive pushes away from it.
    pub lateral: f64,
}

impl Pair {
    /// Two equal discs.
    #[must_use]
    pub fn twins(disc: Disc) -> Pair {
        Pair { first: disc, second: disc }
    }

    /// Pull in N of the coaxial discs with `gap` mm between their faces; the value in contact
    /// (gap 0) is finite. Always positive. NaN for a negative gap.
    ///
    /// ```
    /// let pair = magnet::Pair::twins("7x2.5:1.25T".parse()?);
    /// assert!((pair.pull(0.4) / 8.0798763217086 - 1.0).abs() < 1e-12);
    /// # Ok::<(), magnet::DiscError>(())
    /// ```
    #[must_use]
    pub fn pull(&self, gap: f64) -> f64 {
        if possible(gap) { coaxial::pull(&self.first, &self.second, gap) } else { f64::NAN }
    }

    /// Forces in N with `gap` mm between the planes of the faces and the axes `offset` mm apart.
    ///
    /// The limit of contact (gap 0) exists at every offset, and is given. A negative offset is the
    /// other side: the lateral force changes its sign. Far aside the pull turns into a push, and
    /// the force back on the axis into one away from it. NaN for a negative gap.
    ///
    /// Off the axis a call takes some microseconds, twenty or so in contact; on it, as long as
    /// [`pull`](Pair::pull), a fraction of one.
    #[must_use]
    pub fn forces(&self, gap: f64, offset: f64) -> Forces {
        if !possible(gap) || !offset.is_finite() {
            return Forces { axial: f64::NAN, lateral: f64::NAN };
        }
        if offset == 0.0 {
            return Forces { axial: self.pull(gap), lateral: 0.0 };
        }
        let mut forces = offset::forces(&self.first, &self.second, gap, offset.abs());
        forces.lateral *= offset.signum();
        forces
    }

    /// Centring stiffness in N/mm: the force back on the axis is this times a small offset.
    ///
    /// Equal to -1/2 of the change of the pull with the gap. Negative where the pull grows with
    /// the gap, which close discs of unequal diameter do: the axis is then no place of rest, see
    /// [`centres`](Pair::centres). Infinite for equal diameters in contact. NaN for a negative gap.
    #[must_use]
    pub fn stiffness(&self, gap: f64) -> f64 {
        if possible(gap) { coaxial::stiffness(&self.first, &self.second, gap) } else { f64::NAN }
    }
}

fn possible(gap: f64) -> bool {
    gap.is_finite() && gap >= 0.0
}

impl Forces {
    /// Length of the force in N.
    #[must_use]
    pub fn magnitude(&self) -> f64 {
        self.axial.hypot(self.lateral)
    }
}

impl Add for Forces {
    type Output = Forces;

    fn add(self, other: Forces) -> Forces {
        Forces { axial: self.axial + other.axial, lateral: self.lateral + other.lateral }
    }
}

/// The same pair with one disc turned over: it repels.
impl Neg for Forces {
    type Output = Forces;

    fn neg(self) -> Forces {
        Forces { axial: -self.axial, lateral: -self.lateral }
    }
}
