//! Intervals: all that a size may come to be between its limits.

use std::ops::{Add, Neg, Sub};

/// All values from `low` to `high`, both included. Sums and differences are worst case: every contributor at its own limit,
/// independent of the others (Moore, Kearfott & Cloud, Introduction to Interval Analysis, 2009, section 2.2, from memory).
#[derive(Clone, Copy, Debug, Default, PartialEq)]
pub struct Interval {
    /// The least value.
    pub low: f64,
    /// The greatest value.
    pub high: f64,
}

impl Interval {
    /// From one value to another, whichever is the lower.
    pub fn between(a: f64, b: f64) -> Interval {
        Interval { low: a.min(b), high: a.max(b) }
    }

    /// One value, known exactly.
    pub fn exactly(value: f64) -> Interval {
        Interval::between(value, value)
    }

    /// Every value multiplied by a factor; a negative one swaps the limits.
    pub fn scale(self, factor: f64) -> Interval {
        Interval::between(self.low * factor, self.high * factor)
    }

    /// Whether a value lies within, or on a limit.
    pub fn contains(self, value: f64) -> bool {
        (self.low..=self.high).contains(&value)
    }
}

impl Add for Interval {
    type Output = Interval;

    fn add(self, other: Interval) -> Interval {
        Interval { low: self.low + other.low, high: self.high + other.high }
    }
}

impl Neg for Interval {
    type Output = Interval;

    fn neg(self) -> Interval {
        self.scale(-1.0)
    }
}

impl Sub for Interval {
    type Output = Interval;

    fn sub(self, other: Interval) -> Interval {
        self + -other
    }
}

impl std::iter::Sum for Interval {
    fn sum<I: Iterator<Item = Interval>>(all: I) -> Interval {
        all.fold(Interval::default(), Add::add)
    }
}

#[cfg(test)]
mod tests {
    use super::Interval;
    use proptest::prelude::*;

    /// A difference is widest when one is at its upper limit and the other at its lower one.
    #[test]
    fn a_difference_takes_opposite_limits() {
        let hole = Interval::between(6.1, 6.2);
        let disc = Interval::between(5.9, 6.0);
        let play = hole - disc;
        assert!((play.low - 0.1).abs() < 1e-12 && (play.high - 0.3).abs() < 1e-12);
        assert_eq!(hole.scale(-1.0), Interval::between(-6.1, -6.2));
        assert!(!hole.contains(6.3) && !hole.contains(f64::NAN));
    }

    proptest! {
        /// Whatever two sizes come to be within their limits, what is computed from them lies within the computed limits.
        #[test]
        fn limits_hold_whatever_comes(
            (a, b, c, d) in (-50.0..50.0, -50.0..50.0, -50.0..50.0, -50.0..50.0),
            (s, t) in (0.0..=1.0, 0.0..=1.0),
            factor in -3.0..3.0,
        ) {
            let (one, two) = (Interval::between(a, b), Interval::between(c, d));
            let (x, y) = (one.low + s * (one.high - one.low), two.low + t * (two.high - two.low));
            // A hair for the rounding of the sums themselves.
            let holds = |limits: Interval, value: f64| {
                Interval { low: limits.low - 1e-9, high: limits.high + 1e-9 }.contains(value)
            };
            prop_assert!(holds(one + two, x + y));
            prop_assert!(holds(one - two, x - y));
            prop_assert!(holds(one.scale(factor), x * factor));
        }
    }
}
