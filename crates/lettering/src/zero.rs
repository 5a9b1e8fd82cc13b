//! The zero without its slash.
//!
//! The font draws its zero as an oval ring with a bar across the inside: two standing islands, each a stretch of the
//! inner oval closed by the straight edge of the bar. The plain zero keeps the two stretches as they are and bridges
//! the gaps that the bar leaves between them, so that only the bar is gone.

use kurbo::{BezPath, CubicBez, ParamCurve, ParamCurveArclen, PathSeg, Point, Shape as _, Vec2};

/// Which zero is engraved.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq, Hash)]
pub enum Zero {
    /// An oval ring. On a wheel of figures there is no letter O to be told from, and the one island that is left
    /// standing is about twice as wide as each of the two halves (in Medium 0.48 and 0.25 of the height).
    #[default]
    Plain,
    /// As the font draws it, with a bar from top left to bottom right.
    Slashed,
}

impl Zero {
    /// Both.
    pub const ALL: [Zero; 2] = [Zero::Plain, Zero::Slashed];

    /// What a maker calls it.
    pub fn name(self) -> &'static str {
        match self {
            Zero::Plain => "plain",
            Zero::Slashed => "slashed",
        }
    }

    /// The zero of that name.
    pub fn named(name: &str) -> Option<Zero> {
        Zero::ALL.into_iter().find(|zero| zero.name() == name)
    }
}

/// A slashed zero's path without the slash; `None` if it is not drawn as an oval and two halves of an inner one.
pub(crate) fn without_slash(slashed: &BezPath) -> Option<BezPath> {
    let mut contours: Vec<Vec<PathSeg>> = slashed
        .elements()
        .split_inclusive(|element| matches!(element, kurbo::PathEl::ClosePath))
        .map(|contour| BezPath::from_vec(contour.to_vec()).segments().collect())
        .collect();
    // The ring's own edge is the largest contour.
    contours.sort_by(|a, b| size(b).total_cmp(&size(a)));
    let [ring, one, other] = &contours[..] else {
        return None;
    };
    let (one, other) = (without_longest_line(one)?, without_longest_line(other)?);
    let inner = [
        one.clone(),
        vec![bridge(one.last()?, other.first()?)],
        other.clone(),
        vec![bridge(other.last()?, one.first()?)],
    ];
    let mut plain = BezPath::from_path_segments(ring.iter().copied());
    plain.close_path();
    let mut inner = BezPath::from_path_segments(inner.into_iter().flatten());
    inner.close_path();
    plain.extend(inner);
    Some(plain)
}

fn size(contour: &[PathSeg]) -> f64 {
    contour
        .iter()
        .map(|segment| segment.bounding_box())
        .reduce(|all, one| all.union(one))
        .map_or(0.0, |around| around.area())
}

/// What follows a contour's longest straight side, round to where that side starts.
fn without_longest_line(contour: &[PathSeg]) -> Option<Vec<PathSeg>> {
    let (longest, _) = contour
        .iter()
        .enumerate()
        .filter(|(_, segment)| matches!(segment, PathSeg::Line(_)))
        .max_by(|a, b| a.1.arclen(1e-3).total_cmp(&b.1.arclen(1e-3)))?;
    let after = contour[longest + 1..].iter();
    Some(after.chain(&contour[..longest]).copied().collect())
}

/// A curve from the end of one segment to the start of the next, leaving and arriving in their directions; where both
/// lie on one circle it is that circle's arc (handles of 4/3 tan(turn / 4) radii, Goldapp 1991).
fn bridge(from: &PathSeg, to: &PathSeg) -> PathSeg {
    let (start, end) = (from.end(), to.start());
    let (leave, arrive) = (direction(from.reverse(), -1.0), direction(*to, 1.0));
    let turn = leave.cross(arrive).atan2(leave.dot(arrive));
    let chord = (end - start).hypot();
    let handle = if turn.abs() > 1e-6 {
        chord * 4.0 / 3.0 * (turn / 4.0).tan() / (2.0 * (turn / 2.0).sin())
    } else {
        chord / 3.0
    };
    PathSeg::Cubic(CubicBez::new(start, start + handle * leave, end - handle * arrive, end))
}

/// The unit direction in which a segment starts, times `sign`.
fn direction(segment: PathSeg, sign: f64) -> Vec2 {
    let start = segment.start();
    let cubic = segment.to_cubic();
    let along = [cubic.p1, cubic.p2, cubic.p3]
        .into_iter()
        .map(|p: Point| p - start)
        .find(|v| v.hypot() > 1e-9)
        .unwrap_or(Vec2::new(1.0, 0.0));
    sign * along / along.hypot()
}
