//! Finds the corner marks in a reduced picture: dark spots of four straight sides with a known pattern inside.

use kurbo::Point;

use crate::edge::sharpened;
use crate::photo::{Grey, Photo, Small};
use crate::plane::Plane;
use crate::tag::{INNER, MODULES, known};

/// Longer side of the reduced picture, in pixels, at the first look and at the second.
const LOOKS: [usize; 2] = [1100, 2200];
/// Sides of a tag in the reduced picture, in pixels: below, its modules run together.
const LEAST_SIDE: f64 = 14.0;
/// Dark is below this share of the mean brightness (coded) round about.
const DARK: f64 = 0.82;

/// A corner mark in the photo.
#[derive(Clone, Copy, Debug)]
pub(crate) struct Seen {
    /// Which corner of the card.
    pub(crate) corner: usize,
    /// Its corners in the photo, in the order of [`crate::Tag::corners`].
    pub(crate) quad: [Point; 4],
}

/// The corner marks of the card in a photo, each at most once; empty when there are none.
pub(crate) fn find(photo: &Photo) -> Vec<Seen> {
    let mut best = Vec::new();
    for longest in LOOKS {
        let small = Small::of(photo, longest);
        // First in windows of about one tag of a card that fills the picture, then in larger ones.
        for share in [24, 12] {
            let seen = look(&small, (small.width.max(small.height) / share).max(4));
            if seen.len() > best.len() {
                best = seen;
            }
            if best.len() == 4 {
                return best;
            }
        }
        if small.factor == 1 {
            break;
        }
    }
    best
}

fn look(small: &Small, window: usize) -> Vec<Seen> {
    let mut seen: Vec<(Seen, f64)> = Vec::new();
    for spot in spots(small, window) {
        let Some(quad) = four_corners(&hull(spot)).filter(plausible) else { continue };
        let Some(quad) = sharpened(small, &quad, 1.0).or(Some(quad)).filter(plausible) else { continue };
        let Some((corner, quad, contrast)) = decode(small, quad) else { continue };
        let seen_now = Seen { corner, quad: quad.map(|p| (p.to_vec2() * small.factor as f64).to_point()) };
        match seen.iter_mut().find(|(other, _)| other.corner == corner) {
            // The same pattern twice: the clearer one.
            Some(other) if other.1 < contrast => *other = (seen_now, contrast),
            Some(_) => {}
            None => seen.push((seen_now, contrast)),
        }
    }
    seen.into_iter().map(|(seen, _)| seen).collect()
}

/// The dark spots, each as the ends of its runs in every row.
fn spots(small: &Small, window: usize) -> Vec<Vec<Point>> {
    let (width, height) = (small.width, small.height);
    let sums = sums(small);
    let mut runs: Vec<Run> = Vec::new();
    let mut above = 0..0;
    for y in 0..height {
        let (y0, y1) = (y.saturating_sub(window), (y + window + 1).min(height));
        let row = &small.values[y * width..(y + 1) * width];
        let dark = |x: usize| {
            let (x0, x1) = (x.saturating_sub(window), (x + window + 1).min(width));
            let at = |x: usize, y: usize| u64::from(sums[y * (width + 1) + x]);
            let sum = at(x1, y1) + at(x0, y0) - at(x0, y1) - at(x1, y0);
            f64::from(row[x]) * ((x1 - x0) * (y1 - y0)) as f64 <= DARK * sum as f64 - 1.0
        };
        let first = runs.len();
        let mut x = 0;
        let mut up = above.start;
        while x < width {
            if !dark(x) {
                x += 1;
                continue;
            }
            let from = x;
            while x < width && dark(x) {
                x += 1;
            }
            let this = runs.len();
            runs.push(Run { y, from, to: x, spot: this });
            // Joined with every run above that it touches.
            while up < above.end && runs[up].to <= from {
                up += 1;
            }
            let mut touching = up;
            while touching < above.end && runs[touching].from < x {
                join(&mut runs, touching, this);
                touching += 1;
            }
        }
        above = first..runs.len();
    }
    gather(runs, width, height)
}

/// Dark pixels side by side in a row; `spot` leads to the first run of the spot it belongs to.
struct Run {
    y: usize,
    from: usize,
    to: usize,
    spot: usize,
}

fn root(runs: &mut [Run], mut i: usize) -> usize {
    while runs[i].spot != i {
        runs[i].spot = runs[runs[i].spot].spot;
        i = runs[i].spot;
    }
    i
}

fn join(runs: &mut [Run], a: usize, b: usize) {
    let (a, b) = (root(runs, a), root(runs, b));
    runs[a.max(b)].spot = a.min(b);
}

/// Corners of the runs of each spot that can be a tag by its size.
fn gather(mut runs: Vec<Run>, width: usize, height: usize) -> Vec<Vec<Point>> {
    let mut ends: Vec<Vec<Point>> = Vec::new();
    let mut place = vec![usize::MAX; runs.len()];
    for i in 0..runs.len() {
        let first = root(&mut runs, i);
        if place[first] == usize::MAX {
            place[first] = ends.len();
            ends.push(Vec::new());
        }
        let run = &runs[i];
        let (x0, x1, y) = (run.from as f64, run.to as f64, run.y as f64);
        ends[place[first]].extend([(x0, y), (x0, y + 1.0), (x1, y), (x1, y + 1.0)].map(Point::from));
    }
    let longest = 0.4 * width.max(height) as f64;
    ends.retain(|ends| {
        let side = |f: fn(&Point) -> f64| {
            let (low, high) = ends.iter().map(f).fold((f64::MAX, f64::MIN), |(l, h), v| (l.min(v), h.max(v)));
            high - low
        };
        let (w, h) = (side(|p| p.x), side(|p| p.y));
        w.min(h) >= LEAST_SIDE * 0.7 && w.max(h) >= LEAST_SIDE && w.max(h) <= longest
    });
    ends
}

/// Sums of all pixels left of and above each corner of a pixel.
fn sums(small: &Small) -> Vec<u32> {
    let wide = small.width + 1;
    let mut sums = vec![0u32; wide * (small.height + 1)];
    for y in 0..small.height {
        let mut row = 0u32;
        for x in 0..small.width {
            row += u32::from(small.values[y * small.width + x]);
            sums[(y + 1) * wide + x + 1] = sums[y * wide + x + 1] + row;
        }
    }
    sums
}

/// The convex hull, by Andrew's monotone chain (A. M. Andrew, Inf. Process. Lett. 9 (1979) 216-219).
fn hull(mut points: Vec<Point>) -> Vec<Point> {
    points.sort_by(|a, b| a.x.total_cmp(&b.x).then(a.y.total_cmp(&b.y)));
    let mut hull: Vec<Point> = Vec::new();
    let half = |points: &mut dyn Iterator<Item = Point>, hull: &mut Vec<Point>| {
        let start = hull.len();
        for p in points {
            while hull.len() >= start + 2 && cross(hull[hull.len() - 2], hull[hull.len() - 1], p) <= 0.0 {
                hull.pop();
            }
            hull.push(p);
        }
        hull.pop();
    };
    half(&mut points.iter().copied(), &mut hull);
    half(&mut points.iter().rev().copied(), &mut hull);
    hull
}

fn cross(a: Point, b: Point, c: Point) -> f64 {
    (b - a).cross(c - a)
}

/// The four corners of a hull that is nearly a quadrangle: the two points farthest apart, and the farthest on each side.
fn four_corners(hull: &[Point]) -> Option<[Point; 4]> {
    let pairs = hull.iter().enumerate().flat_map(|(i, a)| hull[i + 1..].iter().map(move |b| (*a, *b)));
    let (a, c) = pairs.max_by(|p, q| p.0.distance_squared(p.1).total_cmp(&q.0.distance_squared(q.1)))?;
    let b = *hull.iter().min_by(|p, q| cross(a, c, **p).total_cmp(&cross(a, c, **q)))?;
    let d = *hull.iter().max_by(|p, q| cross(a, c, **p).total_cmp(&cross(a, c, **q)))?;
    let quad = [a, b, c, d];
    let whole = area(hull);
    // A disc fills 1.57 times its square; the stairs of pixels add a little to a small tag.
    (area(&quad) > 0.75 * whole && area(&quad) > 0.5 * LEAST_SIDE * LEAST_SIDE).then_some(quad)
}

fn area(ring: &[Point]) -> f64 {
    let next = ring.iter().cycle().skip(1);
    ring.iter().zip(next).map(|(a, b)| a.to_vec2().cross(b.to_vec2())).sum::<f64>() / 2.0
}

/// Whether four corners can be a square seen by a camera.
fn plausible(quad: &[Point; 4]) -> bool {
    let side = |i: usize| quad[i].distance(quad[(i + 1) % 4]);
    let (least, most) = [0, 1, 2, 3].map(side).into_iter().fold((f64::MAX, 0.0_f64), |(l, m), s| (l.min(s), m.max(s)));
    let convex = (0..4).all(|i| cross(quad[i], quad[(i + 1) % 4], quad[(i + 2) % 4]) > 0.0);
    convex && least > 0.5 * LEAST_SIDE && most < 3.0 * least
}

/// Reads the pattern inside four corners: which corner of the card it is, its corners in the order of the card, and the
/// share of black in white as contrast.
pub(crate) fn decode(grey: &impl Grey, quad: [Point; 4]) -> Option<(usize, [Point; 4], f64)> {
    let n = MODULES as f64;
    // Rows go down and columns to the right in the picture when the first corner is the upper left.
    let unit = [(0.0, 0.0), (n, 0.0), (n, n), (0.0, n)].map(Point::from);
    let plane = Plane::through(&[0, 1, 2, 3].map(|i| (unit[i], quad[i])))?;
    let module = |row: f64, column: f64| {
        let near = [(0.35, 0.35), (0.65, 0.35), (0.5, 0.5), (0.35, 0.65), (0.65, 0.65)];
        near.iter().map(|(x, y)| grey.between(plane.map(Point::new(column + x, row + y)))).sum::<f64>() / 5.0
    };
    let rim = |at: f64, far: f64| {
        (0..MODULES).flat_map(move |i| {
            let i = i as f64;
            [(at, i), (far, i), (i, at), (i, far)]
        })
    };
    let mean = |at: f64, far: f64| rim(at, far).map(|(r, c)| module(r, c)).sum::<f64>() / (4.0 * n);
    let (black, white) = (mean(0.0, n - 1.0), mean(-0.85, n - 0.15));
    if black > 0.75 * white {
        return None;
    }
    let middle = (black + white) / 2.0;
    let bits = (0..INNER * INNER).fold(0u16, |bits, i| {
        let value = module((1 + i / INNER) as f64, (1 + i % INNER) as f64);
        bits | u16::from(value < middle) << i
    });
    let (corner, turns) = known(bits)?;
    // The printed upper left corner after so many quarter turns clockwise; the card counts from its lower left, up.
    let upper_left = turns;
    let quad = [3, 2, 1, 0].map(|k| quad[(upper_left + k) % 4]);
    Some((corner, quad, 1.0 - black / white))
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_hull_leaves_out_what_lies_within() {
        let points = [(0.0, 0.0), (2.0, 0.0), (1.0, 1.0), (1.0, 0.0), (2.0, 2.0), (0.0, 2.0)].map(Point::from);
        let hull = hull(points.to_vec());
        assert_eq!(hull, [(0.0, 0.0), (2.0, 0.0), (2.0, 2.0), (0.0, 2.0)].map(Point::from));
        assert_eq!(area(&hull), 4.0);
    }
}
