//! Curves of known form.

use crate::curve::unit;
use crate::{Curve, OutlineError, Segment};
use kurbo::{Point, Vec2};
use std::f64::consts::{FRAC_PI_2, PI, TAU};

/// Bulge of a quarter circle: tan(90 degrees / 4).
const QUARTER: f64 = std::f64::consts::SQRT_2 - 1.0;

impl Curve {
    /// A circle, as two half circles.
    pub fn circle(centre: Point, radius: f64) -> Curve {
        let right = Vec2::new(radius, 0.0);
        Curve::from_bulges([(centre + right, 1.0), (centre - right, 1.0)])
    }

    /// An upright rectangle about its centre, its corners rounded as far as they fit.
    pub fn rounded_rectangle(centre: Point, width: f64, height: f64, corner: f64) -> Curve {
        let (w, h) = (width / 2.0, height / 2.0);
        let r = corner.clamp(0.0, w.min(h));
        let at = |x: f64, y: f64| centre + Vec2::new(x, y);
        if r <= 0.0 {
            return Curve::from_bulges([(at(-w, -h), 0.0), (at(w, -h), 0.0), (at(w, h), 0.0), (at(-w, h), 0.0)]);
        }
        let corners = [
            (at(-w + r, -h), 0.0, w > r),
            (at(w - r, -h), QUARTER, true),
            (at(w, -h + r), 0.0, h > r),
            (at(w, h - r), QUARTER, true),
            (at(w - r, h), 0.0, w > r),
            (at(-w + r, h), QUARTER, true),
            (at(-w, h - r), 0.0, h > r),
            (at(-w, -h + r), QUARTER, true),
        ];
        // A side that is all corner has no length: its start is the corner's own.
        Curve::from_bulges(corners.into_iter().filter(|c| c.2).map(|c| (c.0, c.1)))
    }

    /// A rectangle whose short sides are half circles.
    pub fn stadium(centre: Point, width: f64, height: f64) -> Curve {
        Curve::rounded_rectangle(centre, width, height, width.min(height) / 2.0)
    }

    /// A regular polygon with one side at the bottom; `inradius` is half the distance across its flats.
    /// Its corners are rounded as far as they fit.
    pub fn regular_polygon(centre: Point, sides: usize, inradius: f64, corner: f64) -> Curve {
        let half = PI / sides.max(3) as f64;
        let outer = inradius / half.cos();
        let first = -FRAC_PI_2 - half;
        let points: Vec<Point> =
            (0..sides.max(3)).map(|k| centre + outer * Vec2::from_angle(first + 2.0 * half * k as f64)).collect();
        rounded(&points, corner.clamp(0.0, 0.999 * inradius))
    }

    /// A free polygon, its corners in order round it either way, each rounded.
    ///
    /// # Errors
    /// Fewer than three corners, sides that cross, corners that do not fit, numbers that are not finite.
    pub fn polygon(points: &[Point], corner: f64) -> Result<Curve, OutlineError> {
        let n = points.len();
        if n < 3 {
            return Err(OutlineError::TooFewCorners(n));
        }
        if !corner.is_finite() || points.iter().any(|p| !p.is_finite()) {
            return Err(OutlineError::NotFinite);
        }
        for i in 0..n {
            for j in i + 2..n {
                let neighbours = i == 0 && j == n - 1;
                if !neighbours && cross(points[i], points[i + 1], points[j], points[(j + 1) % n]) {
                    return Err(OutlineError::SidesCross(i + 1, j + 1));
                }
            }
        }
        let area: f64 = (0..n).map(|i| points[i].to_vec2().cross(points[(i + 1) % n].to_vec2())).sum::<f64>() / 2.0;
        if area.abs() < 1e-9 {
            return Err(OutlineError::Vanished);
        }
        let mut points = points.to_vec();
        if area < 0.0 {
            points.reverse();
        }
        if corner > 0.0 {
            let trim = |i: usize| corner * (turn_at(&points, i).abs() / 2.0).tan();
            for i in 0..n {
                let length = (points[(i + 1) % n] - points[i]).hypot();
                let taken = trim(i) + trim((i + 1) % n);
                if taken > length + 1e-9 {
                    let number = if area < 0.0 { n - i } else { i + 1 };
                    return Err(OutlineError::CornerDoesNotFit {
                        corner: number,
                        asked: corner,
                        fits: corner * length / taken,
                    });
                }
            }
        }
        Ok(rounded(&points, corner))
    }

    /// Part of a ring: between two arcs about `centre` and two sides that point to it, its four corners
    /// rounded as far as they fit.
    pub fn ring_sector(
        centre: Point,
        inner: f64,
        outer: f64,
        middle_angle: f64,
        half_angle: f64,
        corner: f64,
    ) -> Curve {
        let fits = ((outer - inner) / 2.0).min(outer * half_angle.sin() / (1.0 + half_angle.sin())).min(
            if half_angle < FRAC_PI_2 {
                inner * half_angle.sin() / (1.0 - half_angle.sin()).max(1e-12)
            } else {
                f64::INFINITY
            },
        );
        let r = corner.clamp(0.0, 0.999 * fits);
        let at = |radius: f64, angle: f64| centre + radius * Vec2::from_angle(middle_angle + angle);
        let arc = |radius: f64, from: f64, to: f64| Segment::Arc {
            centre,
            radius,
            start: middle_angle + from,
            sweep: to - from,
        };
        if r <= 0.0 {
            let pieces = [
                arc(outer, -half_angle, half_angle),
                Segment::Line { from: at(outer, half_angle), to: at(inner, half_angle) },
                arc(inner, half_angle, -half_angle),
                Segment::Line { from: at(inner, -half_angle), to: at(outer, -half_angle) },
            ];
            return Curve::from_segments(&pieces).unwrap_or_else(|_| Curve::circle(centre, outer));
        }
        // A corner's circle touches the side at distance r from it, and the arc from within (outer) or without (inner).
        let out = ((r / (outer - r)).min(1.0)).asin();
        let inn = ((r / (inner + r)).min(1.0)).asin();
        let along_out = ((outer - r).powi(2) - r * r).sqrt();
        let along_in = ((inner + r).powi(2) - r * r).sqrt();
        let turn = |centre: Point, start: f64, sweep: f64| Segment::Arc {
            centre,
            radius: r,
            start: middle_angle + start,
            sweep,
        };
        let (a, o, i) = (half_angle, half_angle - out, half_angle - inn);
        let pieces = [
            arc(outer, -o, o),
            turn(at(outer - r, o), o, FRAC_PI_2 + out),
            Segment::Line { from: at(along_out, a), to: at(along_in, a) },
            turn(at(inner + r, i), a + FRAC_PI_2, FRAC_PI_2 - inn),
            arc(inner, i, -i),
            turn(at(inner + r, -i), PI - i, FRAC_PI_2 - inn),
            Segment::Line { from: at(along_in, -a), to: at(along_out, -a) },
            turn(at(outer - r, -o), -a - FRAC_PI_2, FRAC_PI_2 + out),
        ];
        Curve::from_segments(&pieces).unwrap_or_else(|_| Curve::circle(centre, outer))
    }

    /// A wheel's rim with `count` shallow scoops for grip: crests on `outer_radius`, scoops `depth` deep.
    /// A crest takes a third of each pitch.
    pub fn scalloped(centre: Point, outer_radius: f64, count: usize, depth: f64) -> Curve {
        let pitch = TAU / count.max(3) as f64;
        let half = pitch / 3.0;
        let at = |angle: f64| centre + outer_radius * Vec2::from_angle(angle);
        // A chord between two crests lies below the circle already; the scoop bulges inwards from it to the asked depth.
        let chord = 2.0 * outer_radius * half.sin();
        let sagitta = (depth - outer_radius * (1.0 - half.cos())).max(0.0);
        let bulge = (-2.0 * sagitta / chord).max(-1.0);
        let crest = ((pitch - 2.0 * half) / 4.0).tan();
        Curve::from_bulges((0..count.max(3)).flat_map(|k| {
            let middle = FRAC_PI_2 + pitch * k as f64;
            [(at(middle - half), bulge), (at(middle + half), crest)]
        }))
    }
}

/// Angle by which a polygon turns at corner `i`.
fn turn_at(points: &[Point], i: usize) -> f64 {
    let n = points.len();
    let (before, after) = (points[i] - points[(i + n - 1) % n], points[(i + 1) % n] - points[i]);
    before.cross(after).atan2(before.dot(after))
}

/// A polygon whose corners become arcs.
fn rounded(points: &[Point], corner: f64) -> Curve {
    let n = points.len();
    let mut vertices = Vec::with_capacity(2 * n);
    for i in 0..n {
        let turn = turn_at(points, i);
        let trim = corner * (turn.abs() / 2.0).tan();
        if trim <= 1e-12 {
            vertices.push((points[i], 0.0));
            continue;
        }
        let back = unit(points[(i + n - 1) % n] - points[i]);
        let on = unit(points[(i + 1) % n] - points[i]);
        vertices.push((points[i] + trim * back, (turn / 4.0).tan()));
        vertices.push((points[i] + trim * on, 0.0));
    }
    Curve::from_bulges(vertices)
}

fn cross(a: Point, b: Point, c: Point, d: Point) -> bool {
    let side = |p: Point, q: Point, r: Point| (q - p).cross(r - p);
    let (one, two) = (side(a, b, c) * side(a, b, d), side(c, d, a) * side(c, d, b));
    one <= 0.0 && two <= 0.0 && !(one == 0.0 && two == 0.0 && !boxes_meet(a, b, c, d))
}

fn boxes_meet(a: Point, b: Point, c: Point, d: Point) -> bool {
    let (one, two) = (kurbo::Rect::from_points(a, b), kurbo::Rect::from_points(c, d));
    one.x0 <= two.x1 && two.x0 <= one.x1 && one.y0 <= two.y1 && two.y0 <= one.y1
}
