//! The strengths that make the votes most likely.

use std::error::Error;
use std::fmt;

use nalgebra::{DMatrix, DVector};

use super::{Strengths, Votes, graph};

/// Standard deviation of the log-strengths of a weak prior, used only where the votes alone set no bound. Our own
/// choice: two things drawn from it differ by odds of 17 to 1 or less in two cases of three.
const PRIOR: f64 = 2.0;
/// Steps of Newton's method; some ten suffice.
const STEPS: usize = 200;
/// The fit is done when a step is shorter than this share of a standard error; the next would be shorter by as much
/// again.
const SETTLED: f64 = 1e-7;

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
            logs = self.climb(&logs, &step, weight).ok_or(FitError::Unsettled)?;
            // Slope times step is the square of the step's length, measured in standard errors.
            if slope.dot(&step) < SETTLED.powi(2) {
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
}

/// Takes the closed direction out again: all together is an eigenvector, so its share is the same everywhere.
fn about_the_mean(covariance: DMatrix<f64>) -> DMatrix<f64> {
    let mean = covariance.mean();
    covariance.map(|entry| entry - mean)
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
