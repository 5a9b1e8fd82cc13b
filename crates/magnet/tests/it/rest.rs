//! Where pairs rest, and how far they are pushed.
//!
//! The expected figures were worked out beforehand from the Bessel integrals of Vokoun et al. 2009.

use magnet::Pair;

use crate::table::{agree, disc};

fn pair(d1: f64, t1: f64, d2: f64, t2: f64) -> Pair {
    Pair { first: disc(d1, t1, 1.3), second: disc(d2, t2, 1.3) }
}

#[test]
fn unequal_discs_rest_off_the_axis() {
    for (sizes, kappa) in [
        ([6.0, 2.0, 6.0, 2.0], 3.70),
        ([5.0, 2.0, 6.0, 2.0], 1.65),
        ([4.0, 2.0, 6.0, 2.0], 0.635),
        ([4.0, 2.0, 8.0, 2.0], 0.10),
        ([4.0, 1.0, 8.0, 2.0], -0.03),
        ([3.0, 1.0, 8.0, 1.0], -0.05),
    ] {
        let [d1, t1, d2, t2] = sizes;
        let centring = pair(d1, t1, d2, t2).centres(0.2);
        assert!((centring.stiffness - kappa).abs() < 0.005, "{sizes:?}: {centring:?}");
        assert_eq!(centring.on_axis(), kappa > 0.0, "{sizes:?}");
    }
    let rest = pair(4.0, 1.0, 8.0, 2.0).centres(0.2).rest.expect("a place");
    assert!((rest - 0.89).abs() < 0.005, "{rest}");
    let rest = pair(3.0, 1.0, 8.0, 1.0).centres(0.2).rest.expect("a place");
    assert!((rest - 2.1).abs() < 0.05, "{rest}");
}

/// A place of rest is one: no lateral force there, and it pulls back on both sides.
#[test]
fn a_place_of_rest_holds() {
    for sizes in [[4.0, 1.0, 8.0, 2.0], [3.0, 1.0, 8.0, 1.0], [3.0, 1.0, 20.0, 2.0]] {
        let [d1, t1, d2, t2] = sizes;
        let pair = pair(d1, t1, d2, t2);
        let rest = pair.centres(0.2).rest.expect("a place");
        assert!(pair.forces(0.2, rest).lateral.abs() < 1e-9, "{sizes:?}");
        assert!(pair.forces(0.2, rest - 0.02).lateral > 0.0, "{sizes:?}");
        assert!(pair.forces(0.2, rest + 0.02).lateral < 0.0, "{sizes:?}");
    }
}

#[test]
fn largest_restoring_force() {
    let pair = pair(6.0, 2.0, 6.0, 2.0);
    for (gap, force, offset) in [
        (0.0, 3.0, 1.9),
        (0.1, 2.83, 2.06),
        (0.2, 2.65, 2.17),
        (0.3, 2.49, 2.26),
        (0.5, 2.21, 2.41),
        (0.8, 1.85, 2.58),
        (1.0, 1.65, 2.67),
        (1.5, 1.24, 2.84),
        (2.0, 0.94, 2.98),
        (3.0, 0.56, 3.23),
    ] {
        let found = pair.largest_restoring(gap);
        let unit = if gap == 0.0 { 0.1 } else { 0.01 };
        assert!((found.force - force).abs() <= 0.51 * unit, "gap {gap}: {found:?}");
        assert!((found.offset - offset).abs() <= 1.01 * unit, "gap {gap}: {found:?}");
        for i in 1..200 {
            let d = f64::from(i) * 0.1;
            assert!(-pair.forces(gap, d).lateral <= found.force * (1.0 + 1e-12), "{gap}, {d}");
        }
    }
}

#[test]
fn offset_for_a_side_force() {
    let pair = pair(6.0, 2.0, 6.0, 2.0);
    let largest = pair.largest_restoring(0.3);
    for force in [1e-6, 0.1, 0.56, 1.26, 2.4, 0.999_999 * largest.force] {
        let offset = pair.offset_for_side_force(0.3, force).expect("within reach");
        agree(&format!("{force}"), -pair.forces(0.3, offset).lateral, force, 1e-9);
        assert!(offset < largest.offset);
    }
    agree("small", pair.offset_for_side_force(0.3, 1e-6).expect("small"), 1e-6 / pair.stiffness(0.3), 1e-6);
    assert_eq!(pair.offset_for_side_force(0.3, 0.0), Some(0.0));
    assert_eq!(pair.offset_for_side_force(0.3, largest.force), Some(largest.offset));
    assert_eq!(pair.offset_for_side_force(0.3, largest.force * 1.01), None);
    assert_eq!(pair.offset_for_side_force(0.3, -1.0), None);
    assert_eq!(pair.offset_for_side_force(0.3, f64::NAN), None);
    assert_eq!(pair.offset_for_side_force(-0.1, 1.0), None);
    // In contact the stiffness is infinite, and still every force has its offset.
    let offset = pair.offset_for_side_force(0.0, 0.5).expect("contact");
    agree("contact", -pair.forces(0.0, offset).lateral, 0.5, 1e-9);
    // A pair that rests off the axis is shifted from there.
    let uneven = Pair { first: disc(3.0, 1.0, 1.3), second: disc(8.0, 1.0, 1.3) };
    let rest = uneven.centres(0.2).rest.expect("a place");
    assert!(uneven.offset_for_side_force(0.2, 0.05).expect("within reach") > rest);
}

#[test]
fn nonsense_gives_nan() {
    let pair = pair(6.0, 2.0, 6.0, 2.0);
    for gap in [-1e-9, f64::NAN, f64::INFINITY] {
        assert!(pair.pull(gap).is_nan() && pair.stiffness(gap).is_nan());
        assert!(pair.forces(gap, 1.0).axial.is_nan());
        assert!(pair.largest_restoring(gap).force.is_nan());
        assert_eq!(pair.centres(gap).rest, None);
    }
    assert!(pair.forces(0.1, f64::NAN).lateral.is_nan());
}

/// On a dense grid no smaller offset pulls back as hard, also with rims that nearly meet.
#[test]
fn the_offset_is_the_smallest() {
    for (sizes, gap) in [
        ([6.0, 2.0, 6.0, 2.0], 0.3),
        ([6.0, 2.0, 6.2, 2.0], 0.02),
        ([6.0, 2.0, 6.05, 2.0], 0.0),
        ([4.0, 2.0, 8.0, 2.0], 0.1),
        ([4.0, 1.0, 8.0, 2.0], 0.2),
        ([2.0, 1.0, 20.0, 2.0], 0.05),
    ] {
        let [d1, t1, d2, t2] = sizes;
        let pair = pair(d1, t1, d2, t2);
        let largest = pair.largest_restoring(gap);
        for share in [0.02, 0.1, 0.5, 0.9] {
            let force = share * largest.force;
            let found = pair.offset_for_side_force(gap, force).expect("within reach");
            let dense = (1..).map(|i| 0.005 * f64::from(i)).find(|d| -pair.forces(gap, *d).lateral >= force);
            let dense = dense.expect("within reach");
            assert!(found <= dense && found > dense - 0.005, "{sizes:?} {gap} {share}: {found} {dense}");
        }
    }
}
