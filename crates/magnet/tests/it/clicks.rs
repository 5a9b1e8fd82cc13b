//! Rings of small magnets.

use std::f64::consts::TAU;

use magnet::{Clicks, Pair, Poles, Seat};

use crate::table::{agree, disc};

fn clicks(d: f64, t: f64, fixed: usize, turning: usize) -> Clicks {
    Clicks {
        pair: Pair::twins(disc(d, t, 1.3)),
        gap: 0.6,
        ring: 15.0,
        fixed: Seat::evenly(fixed),
        turning: Seat::evenly(turning),
    }
}

/// By superposition of the Bessel integrals of Vokoun et al. 2009 with 30 digits: 5.5 N·mm at 5.3°
/// for 3x1, 16.961 N·mm at 7.15° for 4x2 (16.960 at 7.2°, 16.954 at 7.3°).
#[test]
fn peak_torque_of_one_pair() {
    for (d, t, peak, degrees) in [(3.0, 1.0, 5.5, 5.3), (4.0, 2.0, 16.96, 7.15)] {
        let clicks = clicks(d, t, 1, 1);
        let (mut torque, mut at) = (0.0, 0.0);
        for i in 0..400 {
            let angle = f64::from(i) * 0.05;
            let back = -clicks.torque(angle.to_radians());
            if back > torque {
                (torque, at) = (back, angle);
            }
        }
        agree("torque", torque, peak, 0.02);
        assert!((at - degrees).abs() < 0.1, "{d}x{t}: at {at}");
    }
}

/// n against p magnets repeat after 360° / lcm(n, p).
#[test]
fn the_pattern_repeats() {
    let clicks = clicks(3.0, 1.0, 2, 3);
    for angle in [0.03, 0.2, 0.31] {
        let (a, b) = (clicks.at(angle), clicks.at(angle + TAU / 6.0));
        agree("torque", b.torque, a.torque, 1e-9);
        agree("pull", b.pull, a.pull, 1e-9);
    }
}

/// Torque is the loss of energy with the angle, and the energy also falls with the gap:
/// dM/dg = dF/dθ with M the torque and F the pull, both derivatives of one energy, F counted
/// against the gap.
#[test]
fn torque_and_pull_have_one_energy() {
    let clicks = clicks(4.0, 1.0, 1, 5);
    for angle in [0.02, 0.1, 0.4, 1.0] {
        let e = 1e-4;
        let with_gap = |gap: f64| Clicks { gap, ..clicks.clone() }.torque(angle);
        let by_gap = (with_gap(0.6 + e) - with_gap(0.6 - e)) / (2.0 * e);
        let by_angle = (clicks.pull(angle + e) - clicks.pull(angle - e)) / (2.0 * e);
        assert!((by_gap + by_angle).abs() < 1e-5 * by_angle.abs(), "{angle}: {by_gap} {by_angle}");
    }
}

/// The side force and the torque agree when only one turning magnet is there: torque = r x F.
#[test]
fn side_force() {
    let clicks = clicks(4.0, 1.0, 1, 1);
    for angle in [-0.4_f64, -0.1, 0.1, 1.0, 3.0, 6.0] {
        let load = clicks.at(angle);
        let (y, x) = angle.sin_cos();
        let torque = 15.0 * (x * load.side[1] - y * load.side[0]);
        assert!((torque - load.torque).abs() < 1e-12 * (1.0 + torque.abs()), "{angle}");
    }
    // An evenly filled ring against an evenly filled ring has none.
    let even = Clicks { turning: Seat::evenly(4), fixed: Seat::evenly(2), ..clicks };
    let load = even.at(0.1);
    assert!(load.side[0].hypot(load.side[1]) < 1e-12 && load.torque < -1.0);
}

#[test]
fn turned_over_it_pushes() {
    let plain = clicks(3.0, 1.0, 1, 1);
    let mut turned = plain.clone();
    turned.fixed[0].poles = Poles::Turned;
    let (a, b) = (plain.at(0.1), turned.at(0.1));
    assert_eq!(a.torque, -b.torque);
    assert_eq!(a.pull, -b.pull);
    turned.turning[0].poles = Poles::Turned;
    assert_eq!(turned.at(0.1), a);
}
