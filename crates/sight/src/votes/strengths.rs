//! Strengths of things, each with its error.

use nalgebra::{DMatrix, DVector};

/// Strengths of all things, on a logarithmic scale whose mean is 0, and how sure they are.
///
/// Maximum likelihood by Newton's method, which on this concave likelihood meets one summit; errors from the curvature
/// there (the observed Fisher information), under the condition that the log-strengths sum to 0.
///
/// Where some were never picked over the rest, the votes set no bound to how much better the rest are. Only then the
/// fit has a weak prior that draws all log-strengths to 0, and [`Strengths::bounded_by_votes`] says so.
#[derive(Clone, Debug, PartialEq)]
pub struct Strengths {
    pub(super) logs: DVector<f64>,
    pub(super) covariance: DMatrix<f64>,
    pub(super) laid_out: Vec<u64>,
    pub(super) cast: u64,
    pub(super) bounded: bool,
}

/// A difference of two log-strengths.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Difference {
    /// Positive where the first one is stronger. The odds of the first against the second are its exponential.
    pub value: f64,
    /// Its standard error.
    pub error: f64,
}

impl Strengths {
    /// Log-strength of a thing; 0 is the mean of all.
    ///
    /// # Panics
    /// As all methods here that are given a thing, where its number is not below that of the things.
    #[must_use]
    pub fn log(&self, thing: usize) -> f64 {
        self.logs[thing]
    }

    /// Standard error of a log-strength against the mean of all. For two things against each other see
    /// [`Strengths::difference`]: their errors hang together.
    #[must_use]
    pub fn error(&self, thing: usize) -> f64 {
        self.covariance(thing, thing).max(0.0).sqrt()
    }

    /// Covariance of two log-strengths; the rows sum to 0.
    #[must_use]
    pub fn covariance(&self, one: usize, other: usize) -> f64 {
        self.covariance[(one, other)]
    }

    /// By how much one is stronger than the other, with its standard error.
    #[must_use]
    pub fn difference(&self, one: usize, other: usize) -> Difference {
        let variance = self.covariance(one, one) + self.covariance(other, other) - 2.0 * self.covariance(one, other);
        Difference { value: self.logs[one] - self.logs[other], error: variance.max(0.0).sqrt() }
    }

    /// Probability that one is picked when laid beside the other.
    #[must_use]
    pub fn chance(&self, one: usize, other: usize) -> f64 {
        1.0 / (1.0 + (self.logs[other] - self.logs[one]).exp())
    }

    /// Strength of a thing, all summing to 1: the probability that it is picked out of all.
    #[must_use]
    pub fn share(&self, thing: usize) -> f64 {
        let highest = self.logs.max();
        let all: f64 = self.logs.iter().map(|log| (log - highest).exp()).sum();
        (self.logs[thing] - highest).exp() / all
    }

    /// All things, strongest first; of equals the one with the lower number first.
    #[must_use]
    pub fn order(&self) -> Vec<usize> {
        let mut order: Vec<usize> = (0..self.logs.len()).collect();
        order.sort_by(|one, other| self.logs[*other].total_cmp(&self.logs[*one]));
        order
    }

    /// In how many choices a thing was laid out.
    #[must_use]
    pub fn laid_out(&self, thing: usize) -> u64 {
        self.laid_out[thing]
    }

    /// How many choices the strengths rest on.
    #[must_use]
    pub fn cast(&self) -> u64 {
        self.cast
    }

    /// Whether the votes alone bound the strengths. If not, some were never picked over the rest, and the sizes of the
    /// strengths (though hardly their order) come from the weak prior.
    #[must_use]
    pub fn bounded_by_votes(&self) -> bool {
        self.bounded
    }
}
