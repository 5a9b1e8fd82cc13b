//! Whether points lie so that they fix a map, and the frame in which they are reckoned.

use nalgebra::Matrix3;

use super::error::{HomographyError, Side};

/// What counts as the same place, and as on a line, as a share of how far the points are spread. A guess: at a
/// thousandth an error of reading comes out a thousandfold in the map.
const NEAR: f64 = 1e-3;

/// Moves the middle of the points to the origin, and scales them to a mean distance of sqrt 2 (Hartley and Zisserman,
/// Multiple View Geometry, 2nd edition, section 4.4.4). Points in one place stay there.
pub(super) fn normalise(points: &[[f64; 2]]) -> Matrix3<f64> {
    let [x, y] = middle(points);
    let spread = spread(points);
    let scale = if spread > 0.0 { std::f64::consts::SQRT_2 / spread } else { 1.0 };
    Matrix3::new(scale, 0.0, -scale * x, 0.0, scale, -scale * y, 0.0, 0.0, 1.0)
}

/// Refuses points of which no four lie so that no three are in line. That is so where fewer than four places are
/// left, and else exactly where all but at most one lie on a line.
pub(super) fn check(points: &[[f64; 2]], side: Side) -> Result<(), HomographyError> {
    let near = NEAR * spread(points);
    let mut apart: Vec<[f64; 2]> = Vec::with_capacity(points.len());
    let mut twins = None;
    for (at, point) in points.iter().enumerate() {
        match points[..at].iter().position(|other| length(between(*point, *other)) <= near) {
            Some(first) => twins = twins.or(Some([first, at])),
            None => apart.push(*point),
        }
    }
    if let (Some(pairs), true) = (twins, apart.len() < 4) {
        return Err(HomographyError::SamePlace { side, pairs });
    }
    // Where at most one point is off the line, two of the first three are on it.
    let on_a_line = [[0, 1], [0, 2], [1, 2]].iter().any(|[one, other]| {
        let along = between(apart[*one], apart[*other]);
        let off = |point: &&[f64; 2]| {
            let to = between(apart[*one], **point);
            (along[0] * to[1] - along[1] * to[0]).abs() > near * length(along)
        };
        apart.iter().filter(off).count() <= 1
    });
    if on_a_line { Err(HomographyError::OnALine { side }) } else { Ok(()) }
}

fn middle(points: &[[f64; 2]]) -> [f64; 2] {
    let count = points.len() as f64;
    [0, 1].map(|axis| points.iter().map(|point| point[axis]).sum::<f64>() / count)
}

/// Mean distance from the middle.
fn spread(points: &[[f64; 2]]) -> f64 {
    let middle = middle(points);
    points.iter().map(|point| length(between(middle, *point))).sum::<f64>() / points.len() as f64
}

fn between(from: [f64; 2], to: [f64; 2]) -> [f64; 2] {
    [to[0] - from[0], to[1] - from[1]]
}

fn length([x, y]: [f64; 2]) -> f64 {
    x.hypot(y)
}
