//! Where the wheels lie in the cover, and to which side each window and notch looks.

use super::marks::{self, Inscribed};
use super::wheel::{self, Fitted};
use crate::assembled::Sense;
use crate::design::{Design, Half, OutlineKind, Running};
use outline::{Point, Vec2};
use std::f64::consts::{FRAC_PI_2, PI, TAU};

/// Angles of one wheel's window and notch, from its middle.
#[derive(Clone, Copy, Debug, PartialEq)]
pub(super) struct Direction {
    pub(super) window: f64,
    pub(super) notch: f64,
}

/// Place of one wheel.
#[derive(Clone, Copy, Debug, PartialEq)]
pub(super) struct Place {
    pub(super) centre: Point,
    pub(super) window_angle: f64,
    pub(super) notch_angle: f64,
    pub(super) radius: f64,
    /// Radius of the rim's lowest place: what a finger reaches for sure.
    pub(super) rim_radius: f64,
}

const UP: f64 = FRAC_PI_2;
const DOWN: f64 = -FRAC_PI_2;
const RIGHT: f64 = 0.0;
const LEFT: f64 = PI;

/// How the wheels of a dial are set out.
#[derive(Clone, Debug, PartialEq)]
enum Setting {
    /// Rows from the top, with so many wheels each.
    Rows(Vec<usize>),
    /// On a ring, clockwise from the top.
    Ring(usize),
}

impl Setting {
    fn of(wheels: usize, kind: OutlineKind) -> Setting {
        let round = matches!(kind, OutlineKind::Circle | OutlineKind::RegularPolygon);
        match wheels {
            n if n >= 3 && round => Setting::Ring(n),
            n if n <= 3 => Setting::Rows(vec![n]),
            4 => Setting::Rows(vec![2, 2]),
            5 => Setting::Rows(vec![3, 2]),
            _ => Setting::Rows(vec![2, 2, 2]),
        }
    }

    /// Notches look to the cover's nearest edge. Windows look where the marks travel along their shorter side, since that makes
    /// the smaller wheel: to the side for marks that are wider than high (`wide`), else to the cover's middle.
    fn direction(&self, index: usize, wide: bool) -> Direction {
        match self {
            Setting::Ring(n) => {
                let out = UP - TAU * index as f64 / *n as f64;
                Direction { window: out + PI, notch: out }
            }
            Setting::Rows(rows) => {
                let (row, column) = seat(rows, index);
                if rows.iter().all(|&wheels| wheels == 2) {
                    // Two columns face each other across the middle.
                    let (window, notch) = if column == 0 { (RIGHT, LEFT) } else { (LEFT, RIGHT) };
                    return Direction { window, notch };
                }
                let (inwards, notch) = if row == 0 && rows.len() == 2 { (DOWN, UP) } else { (UP, DOWN) };
                // 12 and 9 o'clock are the handbook's places (MIL-STD-1472E 5.2.3.3.3).
                Direction { window: if wide { LEFT } else { inwards }, notch }
            }
        }
    }

    /// The wheel that is this one's mirror image in the other half.
    fn partner(&self, index: usize, half: Half) -> usize {
        let sideways = matches!(half, Half::Left | Half::Right);
        match self {
            Setting::Ring(n) => {
                let turned = if sideways { n - index } else { n / 2 + n - index };
                turned % n
            }
            Setting::Rows(rows) => {
                let (row, column) = seat(rows, index);
                let (row, column) =
                    if sideways { (row, rows[row] - 1 - column) } else { (rows.len() - 1 - row, column) };
                rows[..row].iter().sum::<usize>() + column.min(rows[row] - 1)
            }
        }
    }

    fn centres(&self, fitted: &[Fitted], gap: f64) -> Vec<Point> {
        match self {
            Setting::Rows(rows) => rows_of(rows, fitted, gap),
            Setting::Ring(n) => {
                let largest = fitted.iter().map(|fit| fit.radius).fold(0.0, f64::max);
                // Neighbours on the ring are a chord of two radii and the gap apart.
                let ring = (largest + gap / 2.0) / (PI / *n as f64).sin();
                (0..*n).map(|i| Point::ZERO + ring * exact(UP - TAU * i as f64 / *n as f64)).collect()
            }
        }
    }
}

/// A direction whose small rounding errors are taken out, so that what should be symmetric is.
fn exact(angle: f64) -> Vec2 {
    let clean = |v: f64| if v.abs() < 1e-12 { 0.0 } else { v };
    let unit = Vec2::from_angle(angle);
    Vec2::new(clean(unit.x), clean(unit.y))
}

fn seat(rows: &[usize], index: usize) -> (usize, usize) {
    let mut before = 0;
    for (row, &wheels) in rows.iter().enumerate() {
        if index < before + wheels {
            return (row, index - before);
        }
        before += wheels;
    }
    (rows.len() - 1, 0)
}

fn rows_of(rows: &[usize], fitted: &[Fitted], gap: f64) -> Vec<Point> {
    let mut centres = Vec::new();
    let mut first = 0;
    for (row, &wheels) in rows.iter().enumerate() {
        let radii: Vec<f64> = fitted[first..first + wheels].iter().map(|fit| fit.radius).collect();
        let tallest = radii.iter().copied().fold(0.0, f64::max);
        let pitch = 2.0 * tallest + gap;
        let y = pitch * ((rows.len() - 1) as f64 / 2.0 - row as f64);
        let width = 2.0 * radii.iter().sum::<f64>() + gap * (wheels - 1) as f64;
        let mut x = -width / 2.0;
        for radius in radii {
            centres.push(Point::new(x + radius, y));
            x += 2.0 * radius + gap;
        }
        first += wheels;
    }
    centres
}

/// Angles of all windows and notches: asked for, mirrored from the master half, or by the setting.
pub(super) fn directions(design: &Design, kind: OutlineKind, inscribed: &[Vec<Inscribed>]) -> Vec<Direction> {
    let setting = Setting::of(design.counters.len(), kind);
    (0..design.counters.len())
        .map(|i| {
            let around = marks::around(&inscribed[i]);
            let usual = setting.direction(i, around.width() > around.height());
            let window = |k: usize| design.counters[k].window.angle;
            let notch = |k: usize| design.counters[k].notch.angle;
            Direction {
                window: asked_or_mirrored(design, &setting, i, window, mirrored_angle).unwrap_or(usual.window),
                notch: asked_or_mirrored(design, &setting, i, notch, mirrored_angle).unwrap_or(usual.notch),
            }
        })
        .collect()
}

/// Places of all wheels.
pub(super) fn place(design: &Design, kind: OutlineKind, directions: &[Direction], fitted: &[Fitted]) -> Vec<Place> {
    let setting = Setting::of(design.counters.len(), kind);
    let usual = setting.centres(fitted, design.wheel_gap);
    (0..fitted.len())
        .map(|i| {
            let at = |k: usize| design.counters[k].at;
            Place {
                centre: asked_or_mirrored(design, &setting, i, at, mirrored_point).unwrap_or(usual[i]),
                window_angle: directions[i].window,
                notch_angle: directions[i].notch,
                radius: fitted[i].radius,
                rim_radius: fitted[i].radius - wheel::scoop_depth(fitted[i].rim),
            }
        })
        .collect()
}

/// What was asked for this wheel, or the mirror image of what was asked for its partner when one half is the master.
fn asked_or_mirrored<T>(
    design: &Design,
    setting: &Setting,
    index: usize,
    asked: impl Fn(usize) -> Option<T>,
    mirror: impl Fn(T, Half) -> T,
) -> Option<T> {
    asked(index).or_else(|| {
        let half = design.symmetry?;
        let partner = setting.partner(index, half);
        (partner != index).then(|| asked(partner))?.map(|value| mirror(value, half))
    })
}

fn mirrored_angle(angle: f64, half: Half) -> f64 {
    match half {
        Half::Left | Half::Right => PI - angle,
        Half::Top | Half::Bottom => -angle,
    }
}

fn mirrored_point(point: Point, half: Half) -> Point {
    match half {
        Half::Left | Half::Right => Point::new(-point.x, point.y),
        Half::Top | Half::Bottom => Point::new(point.x, -point.y),
    }
}

/// Marks that travel within this angle of the level count as moving sideways.
const SIDEWAYS: f64 = 20.0 * PI / 180.0;

/// The side the next higher mark comes from when all windows are to run alike: from above, or from the
/// right where the marks move sideways.
pub(crate) fn next_from(window_angle: f64) -> Vec2 {
    let travel = Vec2::from_angle(window_angle + FRAC_PI_2);
    if travel.y.abs() < SIDEWAYS.sin() { Vec2::new(1.0, 0.0) } else { Vec2::new(0.0, 1.0) }
}

/// Which way a wheel turns to count up, for a window in this direction from its middle.
pub(super) fn sense(running: Running, window_angle: f64) -> Sense {
    let alike = || {
        // The marks travel away from the side the next higher one comes from.
        let anticlockwise_travel = Vec2::from_angle(window_angle + FRAC_PI_2);
        if next_from(window_angle).dot(anticlockwise_travel) < 0.0 { Sense::Anticlockwise } else { Sense::Clockwise }
    };
    match running {
        Running::Alike => alike(),
        Running::AlikeReversed => alike().reversed(),
        Running::NumbersClockwise => Sense::Anticlockwise,
        Running::TurnClockwise => Sense::Clockwise,
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn windows_that_face_each_other_run_opposite_ways() {
        assert_eq!(sense(Running::Alike, RIGHT), Sense::Clockwise);
        assert_eq!(sense(Running::Alike, LEFT), Sense::Anticlockwise);
    }

    /// MIL-STD-1472E 5.2.3.3.1: numbers grow clockwise round a circular dial, which moves counter-clockwise
    /// for an increase; with the window at 12 o'clock (5.2.3.3.3) our usual running agrees.
    #[test]
    fn the_handbook_clause_holds_for_a_window_at_twelve() {
        assert_eq!(sense(Running::NumbersClockwise, UP), Sense::Anticlockwise);
        assert_eq!(sense(Running::Alike, UP), Sense::Anticlockwise);
    }

    #[test]
    fn partners_mirror() {
        let six = Setting::Rows(vec![3, 3]);
        assert_eq!((0..6).map(|i| six.partner(i, Half::Left)).collect::<Vec<_>>(), [2, 1, 0, 5, 4, 3]);
        assert_eq!((0..6).map(|i| six.partner(i, Half::Top)).collect::<Vec<_>>(), [3, 4, 5, 0, 1, 2]);
        let ring = Setting::Ring(5);
        assert_eq!((0..5).map(|i| ring.partner(i, Half::Left)).collect::<Vec<_>>(), [0, 4, 3, 2, 1]);
    }
}
