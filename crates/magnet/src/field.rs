//! Flux density of one disc, inside and out.

use std::f64::consts::PI;

use crate::elliptic::{cel_root, first, maxwell};
use crate::{Disc, multipole};

/// Flux density in tesla at a place, in the disc's own directions.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Field {
    /// Away from the axis.
    pub away: f64,
    /// Along the magnetisation.
    pub along: f64,
}

impl Field {
    /// Magnitude in T.
    #[must_use]
    pub fn magnitude(&self) -> f64 {
        self.away.hypot(self.along)
    }
}

impl Disc {
    /// Flux density at `rho` mm from the axis and `z` mm from the middle of the disc, counted
    /// along the magnetisation; B, not H, also inside.
    ///
    /// On the side wall itself the part along the axis jumps by the remanence, and the mean of
    /// both sides is given. On the rims the part away from the axis is infinite. NaN for places
    /// that are not finite numbers.
    ///
    /// Source: N. Derby, S. Olbert, Cylindrical magnets and ideal solenoids, Am. J. Phys. 78
    /// (2010) 229-235, their B_ρ and B_z with B_0 = J / π; the first one in the form that has no
    /// cancellation near the axis, and a multipole series far away.
    ///
    /// ```
    /// let disc: magnet::Disc = "7x2.5:1.25T".parse()?;
    /// let over_the_middle = disc.field(0.0, 1.65);
    /// assert!((over_the_middle.along - 0.3277945459935).abs() < 1e-12);
    /// # Ok::<(), magnet::DiscError>(())
    /// ```
    #[must_use]
    pub fn field(&self, rho: f64, z: f64) -> Field {
        if let Some(far) = multipole::field(self, rho, z) {
            return Field { away: far.away_by_distance * rho, along: far.along };
        }
        let half = self.thickness() / 2.0;
        let (upper, lower) = (self.end(rho, z + half), self.end(rho, z - half));
        Field { away: upper.away - lower.away, along: upper.along - lower.along }
    }

    /// What one end of the equivalent solenoid adds, `u` mm above it.
    fn end(&self, rho: f64, u: f64) -> Field {
        let (radius, distance) = (self.radius(), rho.abs());
        let (sum, difference) = (radius + distance, radius - distance);
        let s = sum.hypot(u);
        let kc = difference.hypot(u) / s;
        let b = self.remanence() / PI;
        let along = if u == 0.0 {
            0.0
        } else if difference == 0.0 {
            // γ = 0: the mean of both sides of the wall.
            first(kc)
        } else {
            let ratio = difference / sum;
            cel_root(kc, ratio.abs(), 1.0, ratio)
        };
        // cel(kc, 1, 1, -1) with the sign turned is Maxwell's combination.
        let away = -maxwell(kc, 4.0 * radius * distance / (s * s));
        Field { away: b * radius / s * away * rho.signum(), along: b * radius / sum * u / s * along }
    }
}
