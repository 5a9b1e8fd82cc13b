//! Where the edges of a dark quadrangle lie, finer than a pixel, and how sharp they are.

use kurbo::{Point, Vec2};

use crate::photo::Grey;

/// Places along each side at which its edge is looked for.
const PLACES: usize = 24;

/// A straight line through a point, along a unit direction.
#[derive(Clone, Copy)]
struct Line {
    at: Point,
    along: Vec2,
}

/// The corners of a dark quadrangle, found anew as the crossings of lines laid through its edges. `reach` is how far from
/// each side its edge may lie, in units of a twelfth of the side. Nothing when a side shows no edge.
pub(crate) fn sharpened(grey: &impl Grey, quad: &[Point; 4], reach: f64) -> Option<[Point; 4]> {
    let lines = [0, 1, 2, 3].map(|i| fitted(grey, quad, i, reach));
    let [Some(a), Some(b), Some(c), Some(d)] = lines else { return None };
    let corners = [crossing(d, a), crossing(a, b), crossing(b, c), crossing(c, d)];
    let [Some(a), Some(b), Some(c), Some(d)] = corners else { return None };
    Some([a, b, c, d])
}

/// The line along the edge of one side: places of half height across the side, lines fitted twice, the second time without
/// what lies off.
fn fitted(grey: &impl Grey, quad: &[Point; 4], side: usize, reach: f64) -> Option<Line> {
    let (from, to) = (quad[side], quad[(side + 1) % 4]);
    let half = reach * from.distance(to) / 12.0;
    let outward = outward(quad, side)?;
    let found: Vec<Point> = (0..PLACES)
        .filter_map(|k| {
            let middle = from.lerp(to, 0.08 + 0.84 * (k as f64 + 0.5) / PLACES as f64);
            half_height(grey, middle, outward, half).map(|off| middle + outward * off)
        })
        .collect();
    if found.len() < PLACES / 2 {
        return None;
    }
    let line = through(&found)?;
    let off = |p: &Point| (*p - line.at).cross(line.along).abs();
    let mut offs: Vec<f64> = found.iter().map(off).collect();
    offs.sort_by(f64::total_cmp);
    let limit = 3.0 * offs[offs.len() / 2] + 0.1;
    let kept: Vec<Point> = found.into_iter().filter(|p| off(p) <= limit).collect();
    through(&kept)
}

/// The unit vector across a side, away from the middle of the quadrangle.
fn outward(quad: &[Point; 4], side: usize) -> Option<Vec2> {
    let (from, to) = (quad[side], quad[(side + 1) % 4]);
    let middle = quad.iter().map(|p| p.to_vec2()).sum::<Vec2>() / 4.0;
    let along = to - from;
    let across = Vec2::new(along.y, -along.x) / along.hypot();
    let across = if across.dot(from.to_vec2() - middle) < 0.0 { -across } else { across };
    across.is_finite().then_some(across)
}

/// How far along `outward` from a point within `half` of it the brightness passes from dark to half way to light; nothing
/// where there is no clear rise.
fn half_height(grey: &impl Grey, middle: Point, outward: Vec2, half: f64) -> Option<f64> {
    let steps = (2.0 * half / 0.5).ceil().clamp(6.0, 120.0) as usize;
    let place = |i: usize| -half + 2.0 * half * i as f64 / steps as f64;
    let values: Vec<f64> = (0..=steps).map(|i| grey.between(middle + outward * place(i))).collect();
    let (dark, light) = values.iter().fold((f64::MAX, f64::MIN), |(d, l), v| (d.min(*v), l.max(*v)));
    if light - dark < 12.0 {
        return None;
    }
    let level = (dark + light) / 2.0;
    // The steepest rise through the level, so that a spot of dirt is not taken for the edge.
    let rises = values.windows(2).enumerate().filter(|(_, pair)| pair[0] < level && pair[1] >= level);
    let (i, pair) = rises.max_by(|a, b| (a.1[1] - a.1[0]).total_cmp(&(b.1[1] - b.1[0])))?;
    let share = (level - pair[0]) / (pair[1] - pair[0]);
    Some(place(i) + share * 2.0 * half / steps as f64)
}

/// The line with the least squares of distances from points.
fn through(points: &[Point]) -> Option<Line> {
    let at = (points.iter().map(|p| p.to_vec2()).sum::<Vec2>() / points.len() as f64).to_point();
    let (mut xx, mut xy, mut yy) = (0.0, 0.0, 0.0);
    for d in points.iter().map(|p| *p - at) {
        (xx, xy, yy) = (xx + d.x * d.x, xy + d.x * d.y, yy + d.y * d.y);
    }
    let along = Vec2::from_angle(0.5 * (2.0 * xy).atan2(xx - yy));
    (points.len() >= 2 && at.is_finite() && along.is_finite()).then_some(Line { at, along })
}

fn crossing(a: Line, b: Line) -> Option<Point> {
    let turn = a.along.cross(b.along);
    let p = a.at + a.along * ((b.at - a.at).cross(b.along) / turn);
    (turn.abs() > 0.05 && p.is_finite()).then_some(p)
}

/// Width of the edges of a dark quadrangle from 10 to 90 % of their height, in pixels, for each side: the mean over
/// places along the side, each of a profile that reaches `reach` pixels to both sides; nothing for a side without an edge.
pub(crate) fn widths(grey: &impl Grey, quad: &[Point; 4], reach: f64) -> [Option<f64>; 4] {
    [0, 1, 2, 3].map(|side| {
        let outward = outward(quad, side)?;
        let profile = profile(grey, quad, side, outward, reach);
        let ends = profile.len() / 8;
        let mean = |part: &[f64]| part.iter().sum::<f64>() / part.len() as f64;
        let (dark, light) = (mean(&profile[..ends]), mean(&profile[profile.len() - ends..]));
        if light - dark < 12.0 {
            return None;
        }
        let passes = |share: f64| {
            let level = dark + share * (light - dark);
            let i = profile.windows(2).position(|pair| pair[0] < level && pair[1] >= level)?;
            Some(i as f64 + (level - profile[i]) / (profile[i + 1] - profile[i]))
        };
        Some((passes(0.9)? - passes(0.1)?) * 2.0 * reach / (profile.len() - 1) as f64)
    })
}

/// The mean profile across a side, from inside to outside.
fn profile(grey: &impl Grey, quad: &[Point; 4], side: usize, outward: Vec2, reach: f64) -> Vec<f64> {
    let steps = (reach / 0.125).ceil().clamp(16.0, 400.0) as usize;
    let mut sums = vec![0.0; steps + 1];
    for k in 0..PLACES {
        // Away from the corners by the width of the profile and more.
        let middle = quad[side].lerp(quad[(side + 1) % 4], 0.25 + 0.5 * (k as f64 + 0.5) / PLACES as f64);
        for (i, sum) in sums.iter_mut().enumerate() {
            let off = reach * (2.0 * i as f64 / steps as f64 - 1.0);
            *sum += grey.between(middle + outward * off) / PLACES as f64;
        }
    }
    sums
}
