//! The same outline in fewer arcs, for pictures alone: a letter's outline has an arc or two for each piece of the font's
//! own curves, far finer than an eye or a screen can tell. Sheets keep every one.

use outline::{Curve, Point, Segment, Vec2};
use std::f64::consts::{FRAC_PI_2, PI};

/// How far a picture's line may be from the outline, in mm: a twelfth of a pixel of our rasters.
const NEAR: f64 = 0.01;

/// The pieces of a curve, runs of them replaced by one arc or line that stays near them all.
pub(crate) fn light(curve: &Curve) -> Vec<Segment> {
    let pieces = curve.segments();
    let mut fewer = Vec::new();
    let mut first = 0;
    while first < pieces.len() {
        let (mut next, mut piece) = (first + 1, pieces[first]);
        while next < pieces.len() {
            let Some(longer) = one_for(&pieces[first..=next]) else {
                break;
            };
            (next, piece) = (next + 1, longer);
        }
        fewer.push(piece);
        first = next;
    }
    fewer
}

/// The arc of at most a quarter turn, or the line, that stands for a run of pieces.
fn one_for(run: &[Segment]) -> Option<Segment> {
    let (first, last) = (run.first()?, run.last()?);
    let piece = through(first.from(), run.get(run.len() / 2)?.from(), last.to());
    let looked_at = run.iter().flat_map(|one| [0.25, 0.5, 0.75, 1.0].map(|t| one.point_at(t)));
    let near = match piece {
        Segment::Line { from, to } => {
            let along = (to - from) / (to - from).hypot();
            let length = (to - from).hypot();
            let mut looked_at = looked_at;
            looked_at.all(|p| {
                let there = along.dot(p - from);
                along.cross(p - from).abs() <= NEAR && (-NEAR..=length + NEAR).contains(&there)
            })
        }
        Segment::Arc { centre, radius, sweep, .. } => {
            let middle = (piece.point_at(0.5) - centre) / radius;
            let mut looked_at = looked_at;
            // Within the sector, and no farther from the arc.
            let within = (sweep.abs() / 2.0 + NEAR / radius).min(PI).cos();
            sweep.abs() <= FRAC_PI_2
                && looked_at.all(|p| {
                    let out = p - centre;
                    let far = out.hypot();
                    (far - radius).abs() <= NEAR && middle.dot(out) >= within * far
                })
        }
    };
    near.then_some(piece)
}

/// The arc from `a` through `b` to `c`; a line where they lie on one.
fn through(a: Point, b: Point, c: Point) -> Segment {
    let (u, v) = (b - a, c - a);
    let cross = u.cross(v);
    // The height of `b` over the chord.
    if cross.abs() < NEAR / 4.0 * v.hypot() {
        return Segment::Line { from: a, to: c };
    }
    let perpendicular = |w: Vec2| Vec2::new(-w.y, w.x);
    let to_centre = (perpendicular(v) * u.hypot2() - perpendicular(u) * v.hypot2()) / (-2.0 * cross);
    let centre = a + to_centre;
    let (from, to) = (a - centre, c - centre);
    let turn = from.cross(to).atan2(from.dot(to));
    // `b` lies left of the chord when the arc runs clockwise; of more than half a turn the angle is the other way round.
    let sweep = if (turn > 0.0) == (cross > 0.0) { turn } else { turn - std::f64::consts::TAU.copysign(turn) };
    Segment::Arc { centre, radius: to_centre.hypot(), start: from.y.atan2(from.x), sweep }
}

#[cfg(test)]
mod tests {
    use super::*;
    use lettering::{Lettering, TwinMark, Weight};
    use outline::{Edges, Shape};

    /// Both ways, each outline looked at densely.
    fn apart(curve: &Curve, pieces: &[Segment]) -> f64 {
        let drawn = Curve::from_segments(pieces).expect("a curve");
        let farthest = |from: &[Segment], to: &Curve| {
            let to = Edges::of(&Shape::from(to.clone()));
            let points = from.iter().flat_map(|piece| (0..16).map(|k| piece.point_at(f64::from(k) / 16.0)));
            points.map(|p| to.distance_to(p)).fold(0.0, f64::max)
        };
        farthest(&curve.segments(), &drawn).max(farthest(pieces, curve))
    }

    #[test]
    fn letters_get_light_and_stay_where_they_are() {
        let lettering = Lettering::shipped(Weight::SemiBold);
        let words = lettering.inscription("Ag0123456789&?s", 5.0, TwinMark::None).expect("known");
        let (mut before, mut after) = (0, 0);
        for curve in words.loops() {
            let fewer = light(curve);
            before += curve.segments().len();
            after += fewer.len();
            let apart = apart(curve, &fewer);
            assert!(apart <= 1.5 * NEAR, "{apart}");
        }
        assert!(3 * after < before, "{before} pieces, {after} drawn");
    }

    #[test]
    fn what_is_plain_stays_as_it_is() {
        let plate = Curve::rounded_rectangle(Point::ZERO, 40.0, 30.0, 4.0);
        assert_eq!(light(&plate), plate.segments());
        let disc = Curve::circle(Point::new(1.0, 2.0), 3.0);
        assert_eq!(light(&disc), disc.segments());
    }
}
