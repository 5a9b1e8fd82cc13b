//! Laws that hold for every pair.

use std::f64::consts::PI;

use magnet::{Disc, Pair};
use proptest::prelude::*;

fn discs() -> impl Strategy<Value = Disc> {
    (1.0..20.0_f64, 0.3..10.0_f64, 0.2..1.5_f64).prop_map(|(d, t, br)| Disc::new(d, t, br).expect("a disc"))
}

/// Any two discs; equal, some roundings apart, or nearly equal in diameter in part of the cases.
fn pairs() -> impl Strategy<Value = Pair> {
    let apart = prop_oneof![Just(0.0), 1e-16..1e-15_f64, 1e-12..1e-3_f64, 0.05..2.0_f64];
    (discs(), discs(), apart).prop_map(|(first, second, apart)| {
        let diameter = if apart < 0.05 { first.diameter() * (1.0 + apart) } else { second.diameter() };
        let second = Disc::new(diameter, second.thickness(), second.remanence()).expect("a disc");
        Pair { first, second }
    })
}

/// From contact to far away.
fn gaps() -> impl Strategy<Value = f64> {
    prop_oneof![Just(0.0), (-6.0..2.3_f64).prop_map(|e| 10.0_f64.powf(e))]
}

/// Also a rim exactly over a rim.
fn offset(pair: &Pair, share: f64, kind: u8) -> f64 {
    let (r1, r2) = (pair.first.radius(), pair.second.radius());
    match kind {
        0 => r1 + r2,
        1 => (r1 - r2).abs(),
        _ => share * (r1 + r2),
    }
}

fn close(a: f64, b: f64, relative: f64, floor: f64) -> bool {
    (a - b).abs() <= relative * a.abs().max(b.abs()) + floor
}

proptest! {
    #![proptest_config(ProptestConfig::with_cases(200))]

    #[test]
    fn the_other_way_round_is_the_same(pair in pairs(), gap in gaps(), share in 0.0..3.0_f64, kind in 0..8_u8) {
        let swapped = Pair { first: pair.second, second: pair.first };
        let d = offset(&pair, share, kind);
        let (a, b) = (pair.forces(gap, d), swapped.forces(gap, d));
        let size = a.magnitude();
        prop_assert!(close(a.axial, b.axial, 0.0, 1e-10 * size), "{a:?} {b:?}");
        prop_assert!(close(a.lateral, b.lateral, 0.0, 1e-10 * size), "{a:?} {b:?}");
        prop_assert!(close(pair.pull(gap), swapped.pull(gap), 1e-10, 0.0));
        prop_assert!(close(pair.stiffness(gap), swapped.stiffness(gap), 1e-9, 0.0) || gap == 0.0);
        // The other side of the axis is its mirror.
        let mirrored = pair.forces(gap, -d);
        prop_assert_eq!(mirrored.axial, a.axial);
        prop_assert_eq!(mirrored.lateral, -a.lateral);
    }

    #[test]
    fn forces_grow_with_the_square_of_the_size(
        pair in pairs(), gap in gaps(), share in 0.0..3.0_f64, kind in 0..8_u8, scale in 0.3..3.0_f64,
    ) {
        let grown = |d: Disc| Disc::new(d.diameter() * scale, d.thickness() * scale, d.remanence()).expect("a disc");
        let larger = Pair { first: grown(pair.first), second: grown(pair.second) };
        let d = offset(&pair, share, kind);
        let (a, b) = (pair.forces(gap, d), larger.forces(gap * scale, d * scale));
        let size = b.magnitude();
        prop_assert!(close(a.axial * scale * scale, b.axial, 0.0, 1e-9 * size), "{a:?} {b:?}");
        prop_assert!(close(a.lateral * scale * scale, b.lateral, 0.0, 1e-9 * size), "{a:?} {b:?}");
    }

    /// Off the axis the forces go over into the closed form on it.
    #[test]
    fn near_the_axis_both_forms_meet(pair in pairs(), power in -3.0..2.3_f64) {
        let gap = 10.0_f64.powf(power);
        // Both differ from the axis by the square of the offset over the gap.
        let d = 1e-7 * gap;
        let forces = pair.forces(gap, d);
        prop_assert!(close(forces.axial, pair.pull(gap), 1e-9, 0.0), "{} {}", forces.axial, pair.pull(gap));
        let kappa = pair.stiffness(gap);
        prop_assert!(close(-forces.lateral / d, kappa, 1e-8, 1e-9 * pair.pull(gap)), "{} {kappa}", -forces.lateral / d);
    }

    /// S. Earnshaw: no force field of fixed magnets is stiff in all directions; with the symmetry
    /// of the axis, stiffness = -1/2 dF/dg.
    #[test]
    fn earnshaw(pair in pairs(), gap in 0.05..40.0_f64) {
        // Five points: the error is of fourth order.
        let h = 0.02 * gap;
        let f = |k: f64| pair.pull(gap + k * h);
        let slope = (f(-2.0) - 8.0 * f(-1.0) + 8.0 * f(1.0) - f(2.0)) / (12.0 * h);
        let kappa = pair.stiffness(gap);
        prop_assert!(close(-0.5 * slope, kappa, 1e-4, 1e-6 * pair.pull(gap) / gap), "{} {kappa}", -0.5 * slope);
    }

    /// Off the axis as well the forces have a potential; the pull counts against the gap, so
    /// dF_axial/dd = -dF_lateral/dg.
    #[test]
    fn forces_have_a_potential(pair in pairs(), gap in 0.2..20.0_f64, share in 0.05..3.0_f64) {
        let d = offset(&pair, share, 9);
        let (h, k) = (0.01 * gap, 0.01 * gap.min(d));
        let by = |f: &dyn Fn(f64) -> f64, h: f64| (f(-2.0) - 8.0 * f(-1.0) + 8.0 * f(1.0) - f(2.0)) / (12.0 * h);
        let across = by(&|i| pair.forces(gap, d + i * k).axial, k);
        let along = by(&|i| pair.forces(gap + i * h, d).lateral, h);
        let size = pair.forces(gap, d).magnitude() / gap;
        prop_assert!(close(across, -along, 1e-4, 1e-5 * size), "{across} {along}");
    }

    /// F = 3 mu_0 m1 m2 / (2 π z⁴) (textbook), to the square of size over distance.
    #[test]
    fn far_away_a_disc_is_a_dipole(pair in pairs(), z in 500.0..5000.0_f64) {
        let moment = |d: Disc| d.remanence() * d.face() * d.thickness();
        let between = z + 0.5 * (pair.first.thickness() + pair.second.thickness());
        let dipoles = 3e-6 * moment(pair.first) * moment(pair.second)
            / (2.0 * PI * 1.256_637_061_27e-6 * between.powi(4));
        let ratio = pair.pull(z) / dipoles;
        prop_assert!((ratio - 1.0).abs() < 10.0 * (20.0 / z).powi(2), "{ratio}");
    }

    /// Across the change to the multipole series nothing jumps.
    #[test]
    fn near_and_far_form_meet(pair in pairs(), share in 0.0..1.0_f64) {
        let (a, b) = (pair.first, pair.second);
        let reach = a.radius().hypot(a.thickness() / 2.0) + b.radius().hypot(b.thickness() / 2.0);
        let half = 0.5 * (a.thickness() + b.thickness());
        // Any direction that leaves a gap.
        let angle = share * (half / (2.49 * reach)).acos();
        let at = |r: f64| pair.forces(r * angle.cos() - half, r * angle.sin());
        let (near, far) = (at(2.5 * reach * (1.0 - 1e-13)), at(2.5 * reach * (1.0 + 1e-13)));
        let size = far.magnitude();
        prop_assert!(close(near.axial, far.axial, 0.0, 1e-9 * size), "{near:?} {far:?}");
        prop_assert!(close(near.lateral, far.lateral, 0.0, 1e-9 * size), "{near:?} {far:?}");
    }

    #[test]
    fn equal_discs_pull_less_and_less(disc in discs(), gap in gaps(), more in 1e-6..1.0_f64) {
        let pair = Pair::twins(disc);
        prop_assert!(pair.pull(gap * (1.0 + more) + 1e-9) < pair.pull(gap));
        prop_assert!(pair.pull(gap) > 0.0 && pair.stiffness(gap) > 0.0);
    }

    #[test]
    fn finite_input_never_panics(pair in pairs(), gap in any::<f64>(), offset in any::<f64>()) {
        let _ = (pair.pull(gap), pair.stiffness(gap), pair.forces(gap, offset));
        let _ = (pair.forces(gap.abs() % 1.0, offset), pair.forces(gap, offset % 10.0));
        let _ = pair.first.field(gap, offset);
        let pull = pair.pull(gap);
        let possible = gap.is_finite() && gap >= 0.0;
        prop_assert!(pull.is_nan() != possible, "{gap}: {pull}");
    }
}

/// The searches end for every finite input too; fewer cases, each is many evaluations.
#[test]
fn searches_end() {
    let disc = |d, t| Disc::new(d, t, 1.3).expect("a disc");
    for (a, b) in [((0.1, 0.01), (1000.0, 1000.0)), ((1000.0, 0.01), (1000.0, 0.01)), ((0.1, 1000.0), (0.1, 0.01))] {
        let pair = Pair { first: disc(a.0, a.1), second: disc(b.0, b.1) };
        for gap in [0.0, 1e-300, 1e-12, 0.1, 1e5, 1e300] {
            let largest = pair.largest_restoring(gap);
            assert!(largest.force >= 0.0 && largest.offset >= 0.0, "{pair:?} {gap}: {largest:?}");
            let _ = (pair.centres(gap), pair.offset_for_side_force(gap, 1e-3));
        }
        assert!(pair.first.flux_index().index >= 0.0);
    }
}
