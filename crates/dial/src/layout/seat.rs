//! Pockets and what sits in them: a pair for each wheel, its ring or caps, and its clicks.

use crate::assembled::{ClickRing, Ledge, Pocket, Ring, Seat};
use crate::design::{ClickDesign, Design, MagnetDesign};
use outline::{Point, Vec2};
use process::Side;
use std::f64::consts::{PI, TAU};

/// How much wider a cap is than its pocket, all round: what its glue holds on (our own proposal).
const LEDGE: f64 = 1.5;
/// From a pocket to the hole of a ring about it (our own proposal: it must not lie over the magnet's glue).
const RING_HOLE: f64 = 0.5;
/// Least wall between two small pockets (our own proposal).
const WALL: f64 = 1.0;

/// The pockets of one wheel at its middle: in the cover's back and in the wheel's face.
pub(super) fn pockets(design: &Design, centre: Point) -> (Pocket, Pocket) {
    let magnet = &design.magnet;
    let (cover, wheel) = magnet.depths();
    let ledge = |radius: f64| {
        magnet.cap.as_ref().map(|cap| Ledge { radius: radius + LEDGE, depth: cap.thickness() + magnet.glue })
    };
    let pocket = |diameter: f64, depth: f64| {
        let radius = (diameter + magnet.fit) / 2.0;
        Pocket { centre, radius, depth, ledge: ledge(radius) }
    };
    (pocket(magnet.cover.diameter, cover), pocket(magnet.wheel.diameter, wheel))
}

/// How the pair of every wheel sits.
pub(super) fn seat(design: &Design, pockets: &(Pocket, Pocket)) -> Seat {
    let magnet = &design.magnet;
    let ring = magnet.ring.as_ref().map(|ring| {
        let inner = pockets.0.reach().max(pockets.1.reach()) + RING_HOLE;
        Ring {
            inner,
            outer: (ring.diameter / 2.0).max(inner + RING_HOLE),
            height: ring.washer.as_ref().map_or(ring.height, |stock| stock.thickness()),
            washer: ring.washer.clone(),
        }
    });
    // A washer slides on the cover's back with its own face; it is cut from a sheet that lay face up.
    let wheel_face = match ring.as_ref().and_then(|ring| ring.washer.as_ref()) {
        Some(washer) => washer.friction(Side::Face),
        None => design.wheel_stock.friction(Side::Face),
    };
    let cover_face = design.cover.stock.friction(Side::Back);
    let either =
        measure::Interval { low: wheel_face.low.min(cover_face.low), high: wheel_face.high.max(cover_face.high) };
    Seat {
        cover: magnet.cover,
        wheel: magnet.wheel,
        glue: magnet.glue,
        depth_within: magnet.depth_within,
        flatness: magnet.flatness,
        friction: magnet.friction.unwrap_or(either),
        ring,
        cap: magnet.cap.clone(),
        poles: magnet.poles,
    }
}

/// Radius about a wheel's middle that all this takes up, for a wheel of so many stops.
pub(super) fn hub(design: &Design, stops: usize) -> Hub {
    let pockets = pockets(design, Point::ZERO);
    let washer = seat(design, &pockets).ring.filter(|ring| ring.washer.is_some()).map_or(0.0, |ring| ring.outer);
    let middle = pockets.0.reach().max(pockets.1.reach()).max(washer);
    let clicks = design.magnet.click.map_or(0.0, |click| {
        let reach = (click.disc.diameter + design.magnet.fit) / 2.0;
        click.ring.unwrap_or(ring_radius(&design.magnet, &click, middle, split(stops).0)) + reach
    });
    Hub { middle, marks: middle.max(clicks) }
}

/// Radii about a wheel's middle that are taken up.
#[derive(Clone, Copy, Debug)]
pub(super) struct Hub {
    /// By pocket, cap and washer.
    pub(super) middle: f64,
    /// By the clicks too: what marks keep clear of, and no window shows.
    pub(super) marks: f64,
}

/// How many small magnets stand in the wheel and in the cover for so many stops: their least common multiple is the number of
/// stops, and their sum as small as can be with all the cover's pulling at once.
pub(crate) fn split(stops: usize) -> (usize, usize) {
    // With one in the cover every stop needs its own in the wheel; p in the cover, p a divisor of n, all pull at every stop
    // and need no fewer, so what saves magnets is coprime factors: n = a·b, a in the wheel and b in the cover, one pair at a time.
    let coprime = |a: usize, b: usize| gcd(a, b) == 1;
    (1..=stops)
        .filter(|a| stops.is_multiple_of(*a) && coprime(*a, stops / a))
        .map(|a| (a, stops / a))
        .filter(|(a, b)| a >= b)
        .min_by_key(|(a, b)| a + b)
        .unwrap_or((stops, 1))
}

fn gcd(a: usize, b: usize) -> usize {
    if b == 0 { a } else { gcd(b, a % b) }
}

/// The smallest ring on which so many have a wall between them, and the middle one too.
fn ring_radius(magnet: &MagnetDesign, click: &ClickDesign, middle: f64, count: usize) -> f64 {
    let pocket = click.disc.diameter + magnet.fit;
    let side_by_side = (pocket + WALL) / 2.0 / (PI / count.max(2) as f64).sin();
    side_by_side.max(middle + WALL + pocket / 2.0)
}

/// The ring of small magnets of a wheel whose marks and window leave free a circle of this radius: as wide as it can be, since the
/// torque of a click grows with its ring. The first of each part stands a quarter turn from the window, clear of window and notch.
pub(super) fn clicks(design: &Design, centre: Point, window_angle: f64, stops: usize, free: f64) -> Option<ClickRing> {
    let click = design.magnet.click?;
    let (in_wheel, in_cover) = split(stops);
    let middle = hub(design, stops).middle;
    let widest = free - (click.disc.diameter + design.magnet.fit) / 2.0;
    let radius = click.ring.unwrap_or(ring_radius(&design.magnet, &click, middle, in_wheel).max(widest));
    let around = |count: usize| {
        let place = |k: usize| {
            let angle = window_angle + PI / 2.0 + TAU * k as f64 / count as f64;
            Pocket {
                centre: centre + radius * Vec2::from_angle(angle),
                radius: (click.disc.diameter + design.magnet.fit) / 2.0,
                depth: click.disc.thickness + design.magnet.glue + design.magnet.recess,
                ledge: None,
            }
        };
        (0..count).map(place).collect()
    };
    Some(ClickRing { disc: click.disc, radius, wheel: around(in_wheel), cover: around(in_cover) })
}

#[cfg(test)]
mod tests {
    use super::*;

    /// Every stop has its own place, and no two the same: the pattern repeats 360/lcm(a, b).
    #[test]
    fn a_ring_has_as_many_places_as_the_wheel_has_stops() {
        for stops in 2..=100 {
            let (a, b) = split(stops);
            assert_eq!(a * b / gcd(a, b), stops);
        }
        assert_eq!(split(24), (8, 3));
        assert_eq!(split(13), (13, 1));
    }
}
