//! Where a pair comes to rest, and how hard it can be pushed aside.

use crate::search::{crossing, peak};
use crate::{Pair, coaxial};

/// How a pair behaves sideways, with the gap held.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Centring {
    /// Stiffness on the axis in N/mm, see [`Pair::stiffness`].
    pub stiffness: f64,
    /// Offset in mm nearest to the axis where the second disc rests: 0 if it centres; `None` if no
    /// place within reach holds it.
    pub rest: Option<f64>,
}

impl Centring {
    /// Whether the pair centres itself. Treat a small stiffness as a warning as well: friction
    /// then keeps the second disc wherever it was left.
    #[must_use]
    pub fn on_axis(&self) -> bool {
        self.rest == Some(0.0)
    }
}

/// The largest force back on the axis, at a given gap.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Restoring {
    /// The force in N, positive; a side force above it pushes the second disc off.
    pub force: f64,
    /// Where it is reached, in mm off the axis.
    pub offset: f64,
}

impl Pair {
    /// Whether the discs rest on one axis at this gap, and where they rest otherwise.
    ///
    /// Close discs of unequal diameter may rest off the axis: a small disc is drawn to the rim of
    /// a large one, where the field is strongest. Discs of one diameter always centre.
    ///
    /// ```
    /// use magnet::Pair;
    /// let pair = Pair { first: "4x1:1.3T".parse()?, second: "8x2:1.3T".parse()? };
    /// let rest = pair.centres(0.2).rest.ok_or("nowhere")?;
    /// assert!((rest - 0.89).abs() < 0.01);
    /// # Ok::<(), Box<dyn std::error::Error>>(())
    /// ```
    #[must_use]
    pub fn centres(&self, gap: f64) -> Centring {
        let stiffness = self.stiffness(gap);
        // NaN is nowhere at rest.
        let rest = if stiffness > 0.0 {
            Some(0.0)
        } else if stiffness.is_nan() {
            None
        } else {
            self.first_crossing(gap, 0.0, self.largest_restoring(gap))
        };
        Centring { stiffness, rest }
    }

    /// The largest force back on the axis, and its offset. Zero at zero where nothing pulls back;
    /// NaN for a negative gap.
    #[must_use]
    pub fn largest_restoring(&self, gap: f64) -> Restoring {
        if self.pull(gap).is_nan() {
            return Restoring { force: f64::NAN, offset: f64::NAN };
        }
        let (offset, force) = peak(0.0, self.reach(gap), self.steps(gap), |d| self.back(gap, d));
        Restoring { force, offset }
    }

    /// The smallest offset in mm where the pair pulls back with `force` N: how far a side force
    /// shifts the second disc. `None` if the pair never pulls as hard, or the force is negative
    /// or not a number.
    #[must_use]
    pub fn offset_for_side_force(&self, gap: f64, force: f64) -> Option<f64> {
        let largest = self.largest_restoring(gap);
        if force == largest.force {
            return Some(largest.offset);
        }
        // Also false for NaN.
        if force >= 0.0 && force < largest.force {
            if force == 0.0 {
                return self.centres(gap).rest;
            }
            return self.first_crossing(gap, force, largest);
        }
        None
    }

    /// The force back on the axis in N.
    fn back(&self, gap: f64, offset: f64) -> f64 {
        -self.forces(gap, offset).lateral
    }

    /// The smallest offset where the force back grows through `force`.
    fn first_crossing(&self, gap: f64, force: f64, largest: Restoring) -> Option<f64> {
        let steps = self.steps(gap);
        let step = self.reach(gap) / steps as f64;
        let beyond = |d: f64| self.back(gap, d) - force;
        // On the axis itself there is no force; next to it, that of the stiffness.
        let mut low = if force > 0.0 { 0.0 } else { 1e-6 * step };
        for i in 1..=steps {
            let high = step * i as f64;
            if beyond(high) > 0.0 {
                return Some(crossing(low, high, beyond));
            }
            if largest.offset <= high {
                break;
            }
            low = high;
        }
        // The peak alone stands out, between two steps.
        (largest.force > force).then(|| crossing(low, largest.offset, beyond))
    }

    /// Offset beyond which the force back no longer has its largest value: past the rims, and
    /// with tall discs or wide gaps as far as the centres are apart.
    fn reach(&self, gap: f64) -> f64 {
        let [_, (_, a), (_, b), _] = coaxial::faces(&self.first, &self.second, gap);
        self.first.radius() + self.second.radius() + 0.5 * (a + b)
    }

    /// Enough samples to see every hump: none is narrower than the smaller disc, or the gap.
    fn steps(&self, gap: f64) -> usize {
        let width = self.first.radius().min(self.second.radius()) + gap;
        (6.0 * self.reach(gap) / width).ceil().clamp(24.0, 600.0) as usize
    }
}
