//! The perspective map between the card and its picture.

use kurbo::Point;

use crate::solve::least_squares;

/// A homography: where each point of one plane lies in the picture of it.
#[derive(Clone, Copy, Debug, PartialEq)]
pub(crate) struct Plane {
    rows: [[f64; 3]; 3],
}

impl Plane {
    /// The map that takes each first point nearest to its second, from at least four pairs: the direct linear transform
    /// with both sets normalised (Hartley & Zisserman, Multiple View Geometry, 2nd ed., Algorithm 4.2). The last element
    /// is set to 1 after normalising: it is zero only when the middle of the points lies on the horizon, which no camera
    /// sees.
    pub(crate) fn through(pairs: &[(Point, Point)]) -> Option<Plane> {
        let from = Frame::around(pairs.iter().map(|pair| pair.0))?;
        let to = Frame::around(pairs.iter().map(|pair| pair.1))?;
        let rows = pairs.iter().flat_map(|(a, b)| {
            let (a, b) = (from.inward(*a), to.inward(*b));
            [
                ([a.x, a.y, 1.0, 0.0, 0.0, 0.0, -b.x * a.x, -b.x * a.y], b.x),
                ([0.0, 0.0, 0.0, a.x, a.y, 1.0, -b.y * a.x, -b.y * a.y], b.y),
            ]
        });
        let h = least_squares(rows)?;
        let middle = [[h[0], h[1], h[2]], [h[3], h[4], h[5]], [h[6], h[7], 1.0]];
        let inward = [
            [from.scale, 0.0, -from.scale * from.centre.x],
            [0.0, from.scale, -from.scale * from.centre.y],
            [0.0, 0.0, 1.0],
        ];
        let outward = [[1.0 / to.scale, 0.0, to.centre.x], [0.0, 1.0 / to.scale, to.centre.y], [0.0, 0.0, 1.0]];
        Some(Plane { rows: product(outward, product(middle, inward)) })
    }

    /// Where a point lies; not a number for one on the horizon.
    pub(crate) fn map(&self, p: Point) -> Point {
        let [x, y, w] = self.rows.map(|row| row[0] * p.x + row[1] * p.y + row[2]);
        // The last coordinate is 1 in the middle of the points; where it is negative lies behind the camera.
        if w > 0.0 { Point::new(x / w, y / w) } else { Point::new(f64::NAN, f64::NAN) }
    }

    /// How a small step along x and one along y are mapped at a point, by differences.
    pub(crate) fn steps(&self, p: Point) -> [kurbo::Vec2; 2] {
        let h = 0.01;
        let step = |dx: f64, dy: f64| {
            (self.map(Point::new(p.x + dx, p.y + dy)) - self.map(Point::new(p.x - dx, p.y - dy))) / (2.0 * h)
        };
        [step(h, 0.0), step(0.0, h)]
    }
}

/// The similarity that moves the middle of points to the origin and their mean distance to the square root of 2.
struct Frame {
    centre: Point,
    scale: f64,
}

impl Frame {
    fn around(points: impl Iterator<Item = Point> + Clone) -> Option<Frame> {
        let count = points.clone().count() as f64;
        let centre = (points.clone().map(Point::to_vec2).sum::<kurbo::Vec2>() / count).to_point();
        let mean = points.map(|p| p.distance(centre)).sum::<f64>() / count;
        (mean > 0.0 && mean.is_finite()).then(|| Frame { centre, scale: std::f64::consts::SQRT_2 / mean })
    }

    fn inward(&self, p: Point) -> Point {
        ((p - self.centre) * self.scale).to_point()
    }
}

fn product(a: [[f64; 3]; 3], b: [[f64; 3]; 3]) -> [[f64; 3]; 3] {
    a.map(|row| [0, 1, 2].map(|j| (0..3).map(|k| row[k] * b[k][j]).sum()))
}

#[cfg(test)]
mod tests {
    use super::*;

    const SQUARE: [(f64, f64); 4] = [(0.0, 0.0), (1.0, 0.0), (1.0, 1.0), (0.0, 1.0)];

    fn through(to: [(f64, f64); 4]) -> Option<Plane> {
        Plane::through(&[0, 1, 2, 3].map(|i| (SQUARE[i].into(), to[i].into())))
    }

    /// Worked by hand: (x, y) -> (2x, y) / (1 + x) takes the unit square's corners to (0, 0), (1, 0), (1, 1/2), (0, 1).
    #[test]
    fn a_map_worked_by_hand() {
        let plane = through([(0.0, 0.0), (1.0, 0.0), (1.0, 0.5), (0.0, 1.0)]).expect("a map");
        for (x, y) in [(0.5, 0.5), (0.25, 0.75), (3.0, -2.0)] {
            let (there, by_hand) = (plane.map(Point::new(x, y)), Point::new(2.0 * x / (1.0 + x), y / (1.0 + x)));
            assert!(there.distance(by_hand) < 1e-12, "{there} {by_hand}");
        }
        let [dx, dy] = plane.steps(Point::new(0.0, 0.5));
        assert!((dx.x - 2.0).abs() < 1e-3 && (dx.y + 0.5).abs() < 1e-3 && (dy.y - 1.0).abs() < 1e-3, "{dx} {dy}");
        assert!(plane.map(Point::new(-1.5, 0.0)).x.is_nan(), "behind the camera");
    }

    #[test]
    fn three_corners_in_a_line_give_no_map() {
        assert_eq!(through([(0.0, 0.0), (1.0, 0.0), (2.0, 0.0), (3.0, 0.0)]), None);
        assert_eq!(through([(1.0, 1.0); 4]), None);
    }
}
