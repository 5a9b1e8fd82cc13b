//! How likely the votes are under given log-strengths, and how that bends.
//!
//! All is reckoned from the chances of what was passed over: where a favourite is picked nearly always, its own
//! chance is nearly 1 and would swallow the digits that count.

use nalgebra::{DMatrix, DVector};

use super::Votes;
use super::ballot::Choice;

impl Votes {
    /// Logarithm of the likelihood, less the prior's part: `weight` is its reciprocal variance, 0 for none.
    pub(super) fn log_likelihood(&self, logs: &DVector<f64>, weight: f64) -> f64 {
        let one = |choice: &Choice| -f64::from(choice.times) * odds(choice, logs).iter().sum::<f64>().ln_1p();
        self.choices.iter().map(one).sum::<f64>() - weight * logs.norm_squared() / 2.0
    }

    /// First derivatives of it.
    pub(super) fn slope(&self, logs: &DVector<f64>, weight: f64) -> DVector<f64> {
        let mut slope = -weight * logs;
        for choice in &self.choices {
            let chances = chances(choice, logs);
            for (thing, chance) in choice.passed_over().iter().zip(&chances[1..]) {
                slope[*thing] -= f64::from(choice.times) * chance;
                slope[choice.picked()] += f64::from(choice.times) * chance;
            }
        }
        slope
    }

    /// The negative second derivatives, and 1/n everywhere: that closes the one direction in which the likelihood is
    /// level, all log-strengths together, and touches no other.
    pub(super) fn curvature(&self, logs: &DVector<f64>, weight: f64) -> DMatrix<f64> {
        let things = self.things();
        let mut curvature = DMatrix::from_element(things, things, 1.0 / things as f64);
        for thing in 0..things {
            curvature[(thing, thing)] += weight;
        }
        for choice in &self.choices {
            let chances = chances(choice, logs);
            for (at, (one, chance)) in choice.set.iter().zip(&chances).enumerate() {
                for (other, other_chance) in choice.set.iter().zip(&chances).skip(at + 1) {
                    let bend = f64::from(choice.times) * chance * other_chance;
                    curvature[(*one, *one)] += bend;
                    curvature[(*other, *other)] += bend;
                    curvature[(*one, *other)] -= bend;
                    curvature[(*other, *one)] -= bend;
                }
            }
        }
        curvature
    }
}

/// Odds of each thing that was passed over, against the one that was picked.
fn odds(choice: &Choice, logs: &DVector<f64>) -> Vec<f64> {
    choice.passed_over().iter().map(|thing| (logs[*thing] - logs[choice.picked()]).exp()).collect()
}

/// Probability of each of the set to be picked, in its order.
fn chances(choice: &Choice, logs: &DVector<f64>) -> Vec<f64> {
    let odds = odds(choice, logs);
    let all = 1.0 + odds.iter().sum::<f64>();
    std::iter::once(1.0).chain(odds).map(|odds| odds / all).collect()
}
