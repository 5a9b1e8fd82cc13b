//! The map that takes given points to given points.

use nalgebra::{DMatrix, Matrix3, Vector3};

use super::error::{HomographyError, Side};
use super::{Homography, place};

/// Beyond this no coordinate is one of a card, a table or a photograph.
const FAR: f64 = 1e9;

/// Whether the axes of both planes turn the same way.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Axes {
    /// y runs up in both, or down in both.
    Alike,
    /// y runs up in one and down in the other, as from a sheet to the rows of a photograph.
    Opposed,
}

/// A map, and how well it meets the points it was made from.
#[derive(Clone, Debug, PartialEq)]
pub struct Fitted {
    /// The map, from the first points of the pairs to the second.
    pub homography: Homography,
    /// For each pair, how far from its second point the first one lands, in units of the second plane. From four
    /// pairs these are all 0, and tell nothing: a point read wrongly fits as well. Use a fifth.
    pub residuals: Vec<f64>,
}

impl Fitted {
    /// The largest residual.
    #[must_use]
    pub fn worst(&self) -> f64 {
        self.residuals.iter().fold(0.0, |worst, residual| residual.max(worst))
    }

    /// Root mean square of the residuals.
    #[must_use]
    pub fn root_mean_square(&self) -> f64 {
        let sum: f64 = self.residuals.iter().map(|residual| residual.powi(2)).sum();
        (sum / self.residuals.len() as f64).sqrt()
    }
}

impl Homography {
    /// The map that takes the first point of each pair to the second: exactly for four pairs, by least squares for
    /// more.
    ///
    /// Normalised direct linear transform (R. Hartley, A. Zisserman, Multiple View Geometry, 2nd edition, algorithm
    /// 4.2). What is least is the algebraic distance, which in the normalised frames is nearly that of the points.
    ///
    /// # Errors
    /// [`HomographyError`] where the points fix no map, or none that an eye or a camera could see.
    pub fn fit(pairs: &[([f64; 2], [f64; 2])], axes: Axes) -> Result<Fitted, HomographyError> {
        if pairs.len() < 4 {
            return Err(HomographyError::TooFew { given: pairs.len() });
        }
        let no_place =
            |(from, to): &([f64; 2], [f64; 2])| from.iter().chain(to).any(|at| at.is_nan() || at.abs() > FAR);
        if let Some(pair) = pairs.iter().position(no_place) {
            return Err(HomographyError::NoPlace { pair });
        }
        let (from, to): (Vec<[f64; 2]>, Vec<[f64; 2]>) = pairs.iter().copied().unzip();
        place::check(&from, Side::Source)?;
        place::check(&to, Side::Target)?;

        let (from_frame, to_frame) = (place::normalise(&from), place::normalise(&to));
        let map = solve(&from, &to, &from_frame, &to_frame);
        let map = to_frame.try_inverse().ok_or(HomographyError::Flat)? * map * from_frame;
        let homography = Homography::new(facing(map, &from)?)?;
        if homography.turns_over() != (axes == Axes::Opposed) {
            return Err(HomographyError::TurnedOver);
        }
        let residual = |(from, to): &([f64; 2], [f64; 2])| {
            homography.apply(*from).map_or(f64::INFINITY, |at| (at[0] - to[0]).hypot(at[1] - to[1]))
        };
        Ok(Fitted { homography, residuals: pairs.iter().map(residual).collect() })
    }
}

/// The map between the normalised frames: the right singular vector of the smallest singular value.
fn solve(from: &[[f64; 2]], to: &[[f64; 2]], from_frame: &Matrix3<f64>, to_frame: &Matrix3<f64>) -> Matrix3<f64> {
    // At least nine rows, so that all nine right singular vectors come out; rows of zeros say nothing.
    let mut equations = DMatrix::<f64>::zeros((2 * from.len()).max(9), 9);
    for (pair, (from, to)) in from.iter().zip(to).enumerate() {
        let from = from_frame * Vector3::new(from[0], from[1], 1.0);
        let to = to_frame * Vector3::new(to[0], to[1], 1.0);
        for axis in 0..3 {
            equations[(2 * pair, axis)] = from[axis];
            equations[(2 * pair, 6 + axis)] = -to.x * from[axis];
            equations[(2 * pair + 1, 3 + axis)] = from[axis];
            equations[(2 * pair + 1, 6 + axis)] = -to.y * from[axis];
        }
    }
    let rows = equations.svd(false, true).v_t;
    // Asked for above, and sorted by falling singular value.
    rows.map_or_else(Matrix3::zeros, |rows| Matrix3::from_fn(|row, column| rows[(8, 3 * row + column)]))
}

/// The map with its free factor chosen so that all points are in front of the eye, the middle one at W = 1.
fn facing(map: Matrix3<f64>, from: &[[f64; 2]]) -> Result<Matrix3<f64>, HomographyError> {
    let depths = || from.iter().map(|point| map.m31 * point[0] + map.m32 * point[1] + map.m33);
    let mean = depths().sum::<f64>() / from.len() as f64;
    if depths().any(|depth| depth * mean.signum() <= 0.0) { Err(HomographyError::Crossed) } else { Ok(map / mean) }
}
