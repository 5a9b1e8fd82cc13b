//! The cover's outline round all wheels, and the plate that is left when the notches are taken out.

use super::places::Place;
use crate::assembled::Notch;
use crate::design::{Design, Half, OutlineKind};
use crate::spans::{Label, Mistake};
use outline::{Axis, Curve, Edges, OutlineError, Point, Shape, Side};
use std::f64::consts::{PI, TAU};

/// The kind of outline: asked for, or a circle for one wheel and a rounded rectangle for more.
pub(super) fn kind(design: &Design) -> OutlineKind {
    design.cover.outline.unwrap_or(if design.counters.len() == 1 {
        OutlineKind::Circle
    } else {
        OutlineKind::RoundedRectangle
    })
}

/// The smallest outline of its kind that keeps every rim the asked distance from its edge; about the
/// origin, since the cover is turned over about an axis through its middle.
pub(super) fn outline(design: &Design, kind: OutlineKind, places: &[Place]) -> Result<Curve, Vec<Mistake>> {
    let cover = &design.cover;
    let reach = |place: &Place| place.radius + cover.edge;
    let most = |measure: &dyn Fn(&Place) -> f64| places.iter().map(measure).fold(0.0, f64::max);
    let half_height = most(&|p| p.centre.y.abs() + reach(p));
    let centre = Point::ZERO;
    Ok(match kind {
        OutlineKind::RoundedRectangle => {
            let width = cover.width.unwrap_or(2.0 * most(&|p| p.centre.x.abs() + reach(p)));
            let height = cover.height.unwrap_or(2.0 * half_height);
            let corner = cover.corner.min(width / 2.0).min(height / 2.0);
            Curve::rounded_rectangle(centre, width, height, corner)
        }
        OutlineKind::Circle => {
            let radius = most(&|p| p.centre.to_vec2().hypot() + reach(p));
            Curve::circle(centre, cover.width.map_or(radius, |width| width / 2.0))
        }
        OutlineKind::Stadium => {
            let height = cover.height.unwrap_or(2.0 * half_height);
            let cap = height / 2.0;
            // A wheel's grown circle lies in the cap when its middle is within cap - reach of the cap's own middle.
            let straight = most(&|p| {
                let free = (cap - reach(p)).powi(2) - p.centre.y * p.centre.y;
                p.centre.x.abs() - free.max(0.0).sqrt()
            });
            let width = cover.width.unwrap_or(2.0 * (straight.max(0.0) + cap)).max(height);
            Curve::stadium(centre, width, height)
        }
        OutlineKind::RegularPolygon => {
            // Normals of the sides; one side lies at the bottom.
            let normal = |k: usize| outline::Vec2::from_angle(-PI / 2.0 + TAU * k as f64 / cover.sides as f64);
            let inradius =
                most(&|p| (0..cover.sides).map(|k| normal(k).dot(p.centre.to_vec2())).fold(0.0, f64::max) + reach(p));
            let inradius = cover.width.map_or(inradius, |across| across / 2.0);
            let longest = inradius * (PI / cover.sides as f64).cos();
            Curve::regular_polygon(centre, cover.sides, inradius, cover.corner.min(0.9 * longest))
        }
        OutlineKind::Polygon => {
            Curve::polygon(&cover.points, cover.corner).map_err(|error| vec![polygon_mistake(design, &error)])?
        }
    })
}

fn polygon_mistake(design: &Design, error: &OutlineError) -> Mistake {
    Mistake {
        what: format!("the cover's outline cannot be drawn: {error}"),
        at: design.spans.get("cover.points").map(|span| Label { span, words: "this outline".into() }),
        also: design
            .spans
            .get("cover.corner")
            .map(|span| Label { span, words: "with corners of this radius".into() })
            .into_iter()
            .collect(),
        help: "give the corners in order round the cover, without crossings, and a corner radius that fits the shortest side".into(),
    }
}

/// The outline without the notches, the corners where they meet it rounded for the finger; one half
/// mirrored onto the other if the maker made it the master.
pub(super) fn plate(design: &Design, outline: &Curve, notches: &[Notch]) -> Shape {
    let mut plate = Shape::from(outline.clone());
    let edge = Edges::of_curve(outline);
    for (counter, notch) in design.counters.iter().zip(notches) {
        plate = plate.minus(&Shape::from(notch.cutter.clone()));
        let scoop = Edges::of_curve(&notch.cutter);
        let where_they_meet = |p| edge.distance_to(p) < MEET && scoop.distance_to(p) < MEET;
        plate = plate.corners_rounded_where(counter.notch.corner, where_they_meet);
    }
    match design.symmetry {
        Some(half) => mirrored_half(&plate, half),
        None => plate,
    }
}

/// A corner within this of both curves is where they meet, in mm.
const MEET: f64 = 1e-5;

/// The plate whose one half is the exact mirror image of the other.
fn mirrored_half(plate: &Shape, half: Half) -> Shape {
    // Seen along +y, x below 0 is on the left; seen along +x, y above 0 is on the left.
    let (axis, side) = match half {
        Half::Left => (Axis::vertical(0.0), Side::Left),
        Half::Right => (Axis::vertical(0.0), Side::Right),
        Half::Top => (Axis::horizontal(0.0), Side::Left),
        Half::Bottom => (Axis::horizontal(0.0), Side::Right),
    };
    plate.mirrored_from(&axis, side)
}
