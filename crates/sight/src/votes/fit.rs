//! The strengths that make the votes most likely.

use std::error::Error;
use std::fmt;

use nalgebra::{DMatrix, DVector};

use super::{Votes, graph};

/// Standard deviation of the log-strengths of a weak prior, used only where the votes alone set no bound. Our own choice: two
/// things drawn from it differ by odds of 17 to 1 or less in two cases of three.
const PRIOR: f64 = 2.0;
/// Steps of Newton's method; some ten suffice.
const STEPS: usize = 200;
/// The last step moves no log-strength by more than this.
const SETTLED: f64 = 1e-11;

/// Strengths of all things, on a logarithmic scale whose mean is 0, and how sure they are.
///
/// Maximum likelihood by Newton's method, which on this concave likelihood meets one summit; errors from the curvature
/// there (the observed Fisher information), under the condition that the log-strengths sum to 0.
///
/// Where some were never picked over the rest, the votes set no bound to how much better the rest are. Only then the fit
/// has a weak prior that draws all log-strengths to 0, and [`Strengths::bounded_by_votes`] says so.
#[derive(Clone, Debug, PartialEq)]
pub struct Strengths {
    logs: DVector<f64>,
    covariance: DMatrix<f64>,
    laid_out: Vec<u64>,
    cast: u64,
    bounded: bool,
}

/// A difference of two log-strengths.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Difference {
    /// Positive where the first one is stronger. The odds of the first against the second are its exponential.
    pub value: f64,
    /// Its standard error.
    pub error: f64,
}

/// Why there are no strengths.
#[derive(Clone, Debug, PartialEq, Eq)]
pub enum FitError {
    /// Fewer than two things, or no vote.
    Nothing,
    /// Groups between which nobody compared anything (Ford 1957): how they stand to each other is open. Numbers from 0.
    Apart {
        /// The groups.
        groups: Vec<Vec<usize>>,
    },
    /// The votes are so lopsided that the numbers fail.
    Unsettled,
}

impl Votes {
    /// The strengths that make these votes most likely.
    ///
    /// # Errors
    /// [`FitError`] where there are no votes, or things that nobody compared with the others.
    pub fn fit(&self) -> Result<Strengths, FitError> {
        if self.things() < 2 || self.cast() == 0 {
            return Err(FitError::Nothing);
        }
        let groups = graph::groups(self);
        if groups.len() > 1 {
            return Err(FitError::Apart { groups });
        }
        let bounded = graph::all_beat_all(self);
        let weight = if bounded { 0.0 } else { PRIOR.powi(-2) };
        let mut logs = DVector::zeros(self.things());
        for _ in 0..STEPS {
            let slope = self.slope(&logs, weight);
            let step = self.curvature(&logs, weight).cholesky().ok_or(FitError::Unsettled)?.solve(&slope);
            let moved = self.climb(&logs, &step, weight).ok_or(FitError::Unsettled)?;
            let settled = (&moved - &logs).amax() < SETTLED;
            logs = moved;
            if settled {
                let covariance = self.curvature(&logs, weight).cholesky().ok_or(FitError::Unsettled)?.inverse();
                return Ok(Strengths {
                    logs,
                    covariance: about_the_mean(covariance),
                    laid_out: self.laid_out(),
                    cast: self.cast(),
                    bounded,
                });
            }
        }
        Err(FitError::Unsettled)
    }

    /// Half the step again and again until it leads upwards, or nowhere.
    fn climb(&self, logs: &DVector<f64>, step: &DVector<f64>, weight: f64) -> Option<DVector<f64>> {
        let here = self.log_likelihood(logs, weight);
        let rounding = 1e-13 * (1.0 + here.abs());
        let shares = std::iter::successors(Some(1.0), |share| Some(share / 2.0)).take(60);
        shares.map(|share| logs + step * share).find(|moved| self.log_likelihood(moved, weight) >= here - rounding)
    }

    fn log_likelihood(&self, logs: &DVector<f64>, weight: f64) -> f64 {
        let votes: f64 = self
            .choices
            .iter()
            .map(|choice| {
                f64::from(choice.times) * chances(&choice.set, logs).first().map_or(0.0, |chance| chance.ln())
            })
            .sum();
        votes - weight * logs.norm_squared() / 2.0
    }

    fn slope(&self, logs: &DVector<f64>, weight: f64) -> DVector<f64> {
        let mut slope = -weight * logs;
        for choice in &self.choices {
            let times = f64::from(choice.times);
            slope[choice.picked()] += times;
            for (thing, chance) in choice.set.iter().zip(chances(&choice.set, logs)) {
                slope[*thing] -= times * chance;
            }
        }
        slope
    }

    /// The negative second derivatives, and 1/n everywhere: that closes the one direction in which the likelihood is level,
    /// all log-strengths together, and touches no other.
    fn curvature(&self, logs: &DVector<f64>, weight: f64) -> DMatrix<f64> {
        let things = self.things();
        let mut curvature = DMatrix::from_element(things, things, 1.0 / things as f64);
        for thing in 0..things {
            curvature[(thing, thing)] += weight;
        }
        for choice in &self.choices {
            let times = f64::from(choice.times);
            let chances = chances(&choice.set, logs);
            for (thing, chance) in choice.set.iter().zip(&chances) {
                curvature[(*thing, *thing)] += times * chance;
                for (other, other_chance) in choice.set.iter().zip(&chances) {
                    curvature[(*thing, *other)] -= times * chance * other_chance;
                }
            }
        }
        curvature
    }
}

/// The probability of each of a set to be picked.
fn chances(set: &[usize], logs: &DVector<f64>) -> Vec<f64> {
    let highest = set.iter().fold(f64::NEG_INFINITY, |highest, thing| logs[*thing].max(highest));
    let weights: Vec<f64> = set.iter().map(|thing| (logs[*thing] - highest).exp()).collect();
    let sum: f64 = weights.iter().sum();
    weights.into_iter().map(|weight| weight / sum).collect()
}

/// Takes the closed direction out again: all together is an eigenvector, so its share is the same everywhere.
fn about_the_mean(covariance: DMatrix<f64>) -> DMatrix<f64> {
    let mean = covariance.mean();
    covariance.map(|entry| entry - mean)
}

impl Strengths {
    /// Log-strength of a thing; 0 is the mean of all.
    ///
    /// # Panics
    /// As all methods here, where the number is not below that of the things.
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
        let all: Vec<usize> = (0..self.logs.len()).collect();
        chances(&all, &self.logs)[thing]
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

impl fmt::Display for FitError {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        match self {
            FitError::Nothing => f.write_str("no votes yet: nothing can be ranked"),
            FitError::Apart { groups } => {
                f.write_str("nobody has compared any of ")?;
                for (at, group) in groups.iter().enumerate() {
                    if at > 0 {
                        f.write_str(if at + 1 == groups.len() { " with any of " } else { ", of " })?;
                    }
                    let numbers: Vec<String> = group.iter().map(|thing| (thing + 1).to_string()).collect();
                    write!(f, "{{{}}}", numbers.join(", "))?;
                }
                f.write_str(", so no order holds for all: ask for votes that join them, or rank each group by itself")
            }
            FitError::Unsettled => f.write_str("the votes are too lopsided to be turned into strengths"),
        }
    }
}

impl Error for FitError {}
