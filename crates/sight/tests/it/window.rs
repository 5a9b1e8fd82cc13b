//! What a reader sees through a window, against rays traced through it.

use std::f64::consts::{PI, TAU};

use proptest::prelude::*;
use sight::{Seat, View};

/// The eye in the frame of the mark.
fn eye(view: View) -> [f64; 3] {
    let [vx, vy] = view.direction();
    [-vx * view.seat().away(), -vy * view.seat().away(), view.seat().eye()]
}

/// Where the ray from the eye to a point crosses the height z.
fn crossing(eye: [f64; 3], point: [f64; 3], z: f64) -> [f64; 2] {
    let share = (z - eye[2]) / (point[2] - eye[2]);
    [0, 1].map(|axis| eye[axis] + share * (point[axis] - eye[axis]))
}

fn dot(a: [f64; 3], b: [f64; 3]) -> f64 {
    a.iter().zip(b).map(|(a, b)| a * b).sum()
}

/// A point on the picture plane, step by step: the ray to it meets the plane through the origin that is square to the
/// line of sight; the reader's up is the vertical without its part along the sight.
fn pictured(view: View, point: [f64; 3]) -> [f64; 2] {
    let eye = eye(view);
    let distance = dot(eye, eye).sqrt();
    let towards = eye.map(|part| part / distance);
    let ray = [0, 1, 2].map(|axis| point[axis] - eye[axis]);
    let share = -distance / dot(ray, towards);
    let hit = [0, 1, 2].map(|axis| eye[axis] + share * ray[axis]);
    let flat = [0.0 - towards[2] * towards[0], 0.0 - towards[2] * towards[1], 1.0 - towards[2] * towards[2]];
    let up = flat.map(|part| part / dot(flat, flat).sqrt());
    // Up times towards-the-reader is to the right.
    let right = [
        up[1] * towards[2] - up[2] * towards[1],
        up[2] * towards[0] - up[0] * towards[2],
        up[0] * towards[1] - up[1] * towards[0],
    ];
    [dot(hit, right), dot(hit, up)]
}

/// By hand: from 300 mm away and 400 mm up, distance 500, so sine 0.8 and cosine 0.6. A point 10 mm further goes to
/// 8 mm up, drawn in by 1 / (1 + 6/500); one 10 mm to the right stays.
#[test]
fn worked_by_hand() {
    let view = View::upright(Seat::new(300.0, 400.0).expect("a seat"));
    let seen = view.seen(0.0).expect("a map");
    let at = |point| seen.apply(point).expect("before the eye");
    assert!((at([0.0, 10.0])[1] - 8.0 / 1.012).abs() < 1e-12);
    assert!((at([10.0, 0.0])[0] - 10.0).abs() < 1e-12);
    assert_eq!(at([0.0, 0.0]), [0.0, 0.0]);
    assert_eq!(view.hides(4.0), 3.0);
    assert_eq!(view.shift(4.0), [0.0, 3.0]);
    // The one across sees the far side as near, and left as right.
    let across = View::new(view.seat(), PI).seen(0.0).expect("a map").apply([10.0, 10.0]).expect("before the eye");
    assert!(across[0] < -9.0 && across[1] < -7.0);
}

/// A plane level with the eye is a line.
#[test]
fn edge_on_there_is_no_picture() {
    let view = View::upright(Seat::OWNER);
    let error = view.seen(-Seat::OWNER.eye()).expect_err("edge-on").to_string();
    assert!(error.contains("edge-on"), "{error}");
}

prop_compose! {
    fn any_view()(away in 1.0..3000.0, eye in 100.0..1500.0, azimuth in -TAU..TAU) -> View {
        View::new(Seat::new(away, eye).expect("a seat"), azimuth)
    }
}

proptest! {
    #[test]
    fn the_picture_is_that_of_rays(view in any_view(), x in -40.0..40.0, y in -40.0..40.0, depth in -5.0..12.0) {
        let found = view.seen(depth).expect("a map").apply([x, y]);
        let [vx, vy] = view.direction();
        // Only what lies before the eye.
        prop_assume!(view.seat().away() + vx * x + vy * y > 5.0);
        let found = found.expect("before the eye");
        let expected = pictured(view, [x, y, -depth]);
        prop_assert!((found[0] - expected[0]).hypot(found[1] - expected[1]) < 1e-9, "{found:?} {expected:?}");
    }

    /// What an upper edge lets through onto a plane below is shifted as told: exactly in the middle, and nearly
    /// beside it.
    #[test]
    fn the_shift_is_that_of_rays(view in any_view(), x in -20.0..20.0, y in -20.0..20.0, depth in 0.5..12.0) {
        let [dx, dy] = view.shift(depth);
        let middle = crossing(eye(view), [0.0; 3], -depth);
        prop_assert!((middle[0] - dx).hypot(middle[1] - dy) < 1e-9);
        let beside = crossing(eye(view), [x, y, 0.0], -depth);
        let off = (beside[0] - x - dx).hypot(beside[1] - y - dy);
        prop_assert!(off <= x.hypot(y) * depth / view.seat().eye() + 1e-9, "{off}");
        prop_assert!((dx.hypot(dy) - view.hides(depth)).abs() < 1e-9);
    }

    /// A point of the wheel is seen where it lies in the opening shifted by both edges: against a ray that must pass
    /// the opening at every height of the cover. Points nearer to an edge than the neglected growth of the opening
    /// are left out.
    #[test]
    fn what_is_seen_through_a_window(
        view in any_view(), x in -12.0..12.0, y in -12.0..12.0, half in prop::array::uniform2(3.0..9.0f64),
        thickness in 1.0..6.0f64, gap in 0.0..2.0f64,
    ) {
        let deep = thickness + gap;
        let inside = |[x, y]: [f64; 2]| (half[0] - f64::abs(x)).min(half[1] - f64::abs(y));
        let shifted = |[dx, dy]: [f64; 2]| inside([x - dx, y - dy]);
        let told = shifted(view.shift(deep)).min(shifted(view.shift(gap)));
        prop_assume!(told.abs() > 20.0 * deep / view.seat().eye());
        let wheel = [x, y, -deep];
        let passes = (0..=40).all(|step| {
            inside(crossing(eye(view), wheel, -thickness * f64::from(step) / 40.0)) >= 0.0
        });
        prop_assert_eq!(told > 0.0, passes);
    }
}
