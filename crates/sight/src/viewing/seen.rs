//! The table as a picture in the reader's eye.

use nalgebra::Matrix3;

use super::View;
use crate::{Homography, HomographyError};

impl View {
    /// The map from a plane `depth` mm below the table's frame to what this reader sees: a picture plane through the
    /// origin, square to the line of sight, its x to the reader's right and its y up, in mm at the distance of the
    /// mark.
    ///
    /// With the depths of a cover's upper edge (0), its lower edge and the wheel's face, a window can be drawn as it is
    /// seen: what the edges hide comes out right in all places. `depth` may be negative, for what stands above.
    ///
    /// ```
    /// use sight::{Seat, View};
    /// let seen = View::upright(Seat::ACROSS).seen(0.0)?;
    /// let [_, top] = seen.apply([0.0, 5.0]).expect("before the eye");
    /// assert!((top - 5.0 * 0.4434).abs() < 0.02); // sine of the elevation, and perspective
    /// # Ok::<(), sight::HomographyError>(())
    /// ```
    ///
    /// # Errors
    /// [`HomographyError::Flat`] where the plane is level with the eye.
    pub fn seen(self, depth: f64) -> Result<Homography, HomographyError> {
        let [vx, vy] = self.direction();
        let (sin, cos) = self.seat().elevation().sin_cos();
        let distance = self.seat().distance();
        // A point's place along the reader's right, along the reader's up, and beyond the picture plane; the last
        // over the distance, so that the origin has W = 1.
        Homography::new(Matrix3::new(
            vy,
            -vx,
            0.0,
            vx * sin,
            vy * sin,
            -depth * cos,
            vx * cos / distance,
            vy * cos / distance,
            1.0 + depth * sin / distance,
        ))
    }
}
