//! Maps from one plane to another as a camera or an eye makes them: straight lines stay straight.

mod error;
mod fit;
mod place;

pub use error::{HomographyError, Side};
pub use fit::{Axes, Fitted};

use nalgebra::{Matrix3, Vector3};

/// A projective map from one plane to another.
///
/// ```
/// use sight::{Axes, Homography};
///
/// // A square card, and its four corners in a picture taken from one side; y runs down in both.
/// let pairs = [
///     ([0.0, 0.0], [10.0, 10.0]),
///     ([100.0, 0.0], [110.0, 20.0]),
///     ([100.0, 100.0], [110.0, 90.0]),
///     ([0.0, 100.0], [10.0, 110.0]),
/// ];
/// let fitted = Homography::fit(&pairs, Axes::Alike)?;
/// assert!(fitted.worst() < 1e-9); // four points fit exactly, however wrong one may be
/// let middle = fitted.homography.apply([50.0, 50.0]).expect("a point in sight");
/// let back = fitted.homography.inverse().apply(middle).expect("a point in sight");
/// assert!((back[0] - 50.0).abs() < 1e-9 && (back[1] - 50.0).abs() < 1e-9);
/// # Ok::<(), sight::HomographyError>(())
/// ```
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Homography {
    forth: Matrix3<f64>,
    back: Matrix3<f64>,
}

impl Homography {
    /// The map of a matrix, rows first: (x, y) goes to (X / W, Y / W) where (X, Y, W) is the matrix times (x, y, 1). W
    /// must be positive on the side that is seen.
    ///
    /// # Errors
    /// [`HomographyError::Flat`] where the matrix is singular or holds what is no number.
    pub fn from_matrix(rows: [[f64; 3]; 3]) -> Result<Homography, HomographyError> {
        Homography::new(Matrix3::from_fn(|row, column| rows[row][column]))
    }

    pub(crate) fn new(forth: Matrix3<f64>) -> Result<Homography, HomographyError> {
        let back = forth.try_inverse().ok_or(HomographyError::Flat)?;
        let finite = forth.iter().chain(back.iter()).all(|number| number.is_finite());
        if finite { Ok(Homography { forth, back }) } else { Err(HomographyError::Flat) }
    }

    /// The matrix, rows first.
    #[must_use]
    pub fn matrix(&self) -> [[f64; 3]; 3] {
        std::array::from_fn(|row| std::array::from_fn(|column| self.forth[(row, column)]))
    }

    /// Where a point goes. None where it lies on the horizon or behind the eye.
    #[must_use]
    pub fn apply(&self, point: [f64; 2]) -> Option<[f64; 2]> {
        let moved = self.forth * Vector3::new(point[0], point[1], 1.0);
        (moved.z > 0.0).then(|| [moved.x / moved.z, moved.y / moved.z])
    }

    /// The map back.
    #[must_use]
    pub fn inverse(&self) -> Homography {
        Homography { forth: self.back, back: self.forth }
    }

    /// This map, and another after it.
    #[must_use]
    pub fn then(&self, next: &Homography) -> Homography {
        Homography { forth: next.forth * self.forth, back: self.back * next.back }
    }

    /// Whether the map turns a plane over: a counter-clockwise loop in sight becomes a clockwise one.
    #[must_use]
    pub fn turns_over(&self) -> bool {
        self.forth.determinant() < 0.0
    }
}
