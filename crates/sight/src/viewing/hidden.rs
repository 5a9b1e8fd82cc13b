//! What the edge of an opening hides of a plane below it.

use super::View;

impl View {
    /// How far, in mm, the near edge of an opening hides a plane that lies `depth` mm below it: depth / tan(elevation).
    ///
    /// ```
    /// use sight::{Seat, View};
    /// // A cover 3 mm thick, right over the wheel, seen from across the table: 6 mm of the mark's foot are gone.
    /// assert!((View::upright(Seat::ACROSS).hides(3.0) - 6.06).abs() < 0.01);
    /// ```
    #[must_use]
    pub fn hides(self, depth: f64) -> f64 {
        depth * self.seat().away() / self.seat().eye()
    }

    /// By how much, in mm along x and y, the sight through an edge is shifted on a plane `depth` mm below it: away
    /// from the reader, as seen in plan.
    ///
    /// What is seen of a wheel through a cover with upright walls is the opening shifted by that of its upper edge
    /// (depth: thickness of the cover and the gap under it), as far as that meets the opening shifted by that of its
    /// lower edge (depth: the gap alone). Edges half-way down add nothing where the opening is convex.
    ///
    /// For an eye that is not infinitely far the shifted opening is also larger by depth / height of the eye, 0.6 %
    /// for 3 mm and a seated reader; that is left out here, and exact in [`View::seen`].
    ///
    /// ```
    /// use sight::{Seat, View};
    /// let [x, y] = View::upright(Seat::OWNER).shift(3.0);
    /// assert_eq!(x, 0.0);
    /// assert!((y - 2.23).abs() < 0.01); // the foot of the mark, nearest to the reader, is hidden
    /// ```
    #[must_use]
    pub fn shift(self, depth: f64) -> [f64; 2] {
        let hidden = self.hides(depth);
        // A shift of -0 would show as such.
        self.direction().map(|part| part * hidden + 0.0)
    }
}
