//! From corner marks to the place of the whole card in the photo.

use kurbo::{Point, Rect, Vec2};

use crate::edge::{sharpened, widths};
use crate::find::{Seen, decode, find};
use crate::photo::Photo;
use crate::plan::{CardPlan, corners};
use crate::plane::Plane;
use crate::read::{LEAST_SCALE, MOST_BLUR, MOST_TILT};
use crate::reading::Outlines;
use crate::refused::{Place, Refused, Why};

/// How far the corner marks may be off a plane, root mean square in mm: ten times what noise does, and more than a phone's
/// lens bends.
const MOST_OFF: f64 = 0.5;

/// How far from an edge its profile is looked at, in mm: the white round a corner mark is little wider.
const EDGE_REACH: f64 = 1.8;

/// The card in the photo.
pub(crate) struct Located {
    /// From card coordinates in mm to photo pixels.
    pub(crate) plane: Plane,
    /// Pixels to a mm where they are fewest.
    pub(crate) scale: f64,
    /// Angle between the line of sight and the card's normal, in degrees.
    pub(crate) tilt: f64,
    /// Corners of the tags as found, in pixels, in the order of the plan.
    pub(crate) tags: Vec<[Point; 4]>,
}

impl Located {
    /// Corners of a rectangle of the card in the photo.
    pub(crate) fn quad(&self, rect: Rect) -> [Point; 4] {
        corners(rect).map(|p| self.plane.map(p))
    }

    /// Width of the widest edge of the slanted squares from 10 to 90 % of its height, in mm on the card.
    pub(crate) fn sharpness(&self, photo: &Photo, plan: &CardPlan) -> f64 {
        widest(photo, &self.plane, &plan.sharp)
    }
}

/// Finds the card, coarsely first, then finer than a pixel.
pub(crate) fn locate(photo: &Photo, plan: &CardPlan) -> Result<Located, Refused> {
    let mut seen = find(photo);
    for tag in &mut seen {
        // Twice: the second time from nearer.
        for _ in 0..2 {
            tag.quad = sharpened(photo, &tag.quad, 1.0).unwrap_or(tag.quad);
        }
    }
    let mut plane = through(&seen, plan).ok_or_else(|| Why::NoCard.at_once())?;
    // A blurred mark may be misplaced, and its neighbour not read at all: that is not what to tell.
    let edge = widest(photo, &plane, &seen.iter().map(|tag| plan.tags[tag.corner].corners()).collect::<Vec<_>>());
    let blurred = |why| if edge > MOST_BLUR { Why::Blurred { edge } } else { why };
    for corner in 0..4 {
        if seen.iter().any(|tag| tag.corner == corner) {
            continue;
        }
        let expected = plan.tags[corner].corners().map(|p| plane.map(p));
        // One tag alone tells its own place well and the far corners badly, but on which side of the picture they lie.
        if !expected.iter().all(|p| photo.holds(*p, 0.0)) {
            return Err(Refused { why: blurred(Why::NotWhole(Place::corner(corner))), found: partly(&seen) });
        }
        let quad = sharpened(photo, &expected, 1.6).and_then(|quad| confirmed(photo, quad, corner));
        let Some(quad) = quad else {
            return Err(Refused { why: blurred(Why::CornerHidden(Place::corner(corner))), found: partly(&seen) });
        };
        seen.push(Seen { corner, quad });
        plane = through(&seen, plan).ok_or_else(|| Why::NoCard.at_once())?;
    }
    seen.sort_by_key(|tag| tag.corner);
    let located = Located {
        plane,
        scale: scales(&plane, plan).0,
        tilt: scales(&plane, plan).1,
        tags: seen.iter().map(|tag| tag.quad).collect(),
    };
    let refuse = |why| Err(Refused { why: blurred(why), found: Box::new(Outlines::of(&located, plan, Vec2::ZERO)) });
    let card = located.quad(Rect::from_origin_size(Point::ORIGIN, plan.size));
    if let Some(corner) = (0..4).find(|i| !photo.holds(card[*i], 0.0)) {
        return refuse(Why::NotWhole(Place::corner(corner)));
    }
    let off = off_plane(&seen, &plane, plan);
    if off > MOST_OFF || !off.is_finite() {
        return refuse(Why::NotFlat { off });
    }
    if located.tilt > MOST_TILT {
        return refuse(Why::TooSteep { degrees: located.tilt });
    }
    if located.scale < LEAST_SCALE {
        return refuse(Why::TooSmall { px_per_mm: located.scale });
    }
    Ok(located)
}

/// Width of the widest edge of black squares, in mm on the card. All four sides are looked at, since a shaken photo is blurred
/// one way only.
fn widest(photo: &Photo, plane: &Plane, squares: &[[Point; 4]]) -> f64 {
    let mut widest = 0.0_f64;
    for square in squares {
        let quad = square.map(|p| plane.map(p));
        let [u, v] = plane.steps(Rect::from_points(square[0], square[2]).center());
        let area = u.cross(v).abs();
        for (side, width) in widths(photo, &quad, EDGE_REACH * area.sqrt()).into_iter().enumerate() {
            // Pixels to a mm across this side.
            let along = quad[side].distance(quad[(side + 1) % 4]) / square[side].distance(square[(side + 1) % 4]);
            // No edge at all is as blurred as can be.
            widest = widest.max(width.map_or(f64::MAX, |width| width * along / area));
        }
    }
    widest.min(2.0 * EDGE_REACH)
}

/// Whether the tag of a corner is what is seen there, and its corners in the order of the card.
fn confirmed(photo: &Photo, quad: [Point; 4], corner: usize) -> Option<[Point; 4]> {
    // Clockwise in the picture, as patterns are read.
    let [a, b, c, d] = quad;
    decode(photo, [d, c, b, a]).filter(|(read, ..)| *read == corner).map(|(_, quad, _)| quad)
}

fn through(seen: &[Seen], plan: &CardPlan) -> Option<Plane> {
    let pairs: Vec<(Point, Point)> =
        seen.iter().flat_map(|tag| plan.tags[tag.corner].corners().into_iter().zip(tag.quad)).collect();
    Plane::through(&pairs)
}

/// The tags alone, where the card as a whole is not known.
fn partly(seen: &[Seen]) -> Box<Outlines> {
    Box::new(Outlines { tags: seen.iter().map(|tag| tag.quad).collect(), ..Outlines::default() })
}

/// Pixels to a mm where they are fewest, and the tilt in degrees that squeezes the middle of the card as much as it is.
fn scales(plane: &Plane, plan: &CardPlan) -> (f64, f64) {
    // Longest and shortest image of a small circle: the singular values of the two steps.
    let stretch = |p: Point| {
        let [u, v] = plane.steps(p);
        let (sum, product) = (u.hypot2() + v.hypot2(), u.cross(v).abs());
        let (plus, minus) = ((sum + 2.0 * product).sqrt(), (sum - 2.0 * product).max(0.0).sqrt());
        ((plus + minus) / 2.0, (plus - minus) / 2.0)
    };
    let card = Rect::from_origin_size(Point::ORIGIN, plan.size);
    let least = corners(card).into_iter().map(|p| stretch(p).1).fold(f64::MAX, f64::min);
    let (most, fewest) = stretch(card.center());
    (least, (fewest / most).clamp(0.0, 1.0).acos().to_degrees())
}

/// Root mean square distance in mm between the tags' corners and where the plane has them.
fn off_plane(seen: &[Seen], plane: &Plane, plan: &CardPlan) -> f64 {
    let squares: Vec<f64> = seen
        .iter()
        .flat_map(|tag| plan.tags[tag.corner].corners().into_iter().zip(tag.quad))
        .map(|(card, photo)| {
            let [u, v] = plane.steps(card);
            plane.map(card).distance_squared(photo) / u.cross(v).abs()
        })
        .collect();
    (squares.iter().sum::<f64>() / squares.len() as f64).sqrt()
}
