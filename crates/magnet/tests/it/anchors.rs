//! Hand-picked values, each found on at least two ways (published closed form at 40 digits, Bessel
//! integrals, angle integral) before this crate was written.

use magnet::Pair;

use crate::table::{agree, disc};

fn close_pair() -> Pair {
    Pair::twins(disc(7.0, 2.5, 1.25))
}

fn uneven_pair() -> Pair {
    Pair { first: disc(7.0, 2.5, 1.25), second: disc(9.0, 1.5, 1.35) }
}

#[test]
fn pull() {
    let twins = close_pair();
    agree("gap 0.4", twins.pull(0.4), 8.079_876_321_708_6, 2e-14);
    agree("contact", twins.pull(0.0), 12.156_818_299_067, 2e-14);
    agree("far", twins.pull(30.0), 0.004_697_380_345_787_7, 2e-14);
    let near = Pair { second: disc(7.001, 2.5, 1.25), ..twins };
    agree("nearly equal", near.pull(0.4), 8.080_713_544_257_7, 2e-14);
    agree("uneven", uneven_pair().pull(0.15), 5.981_477_171_573, 1e-13);
}

#[test]
fn aside() {
    let forces = close_pair().forces(0.4, 0.8);
    agree("axial", forces.axial, 7.060_080_899_162, 1e-12);
    agree("lateral", forces.lateral, -2.007_956_310_086, 1e-12);
    let forces = close_pair().forces(0.4, 10.0);
    agree("pushed off, axial", forces.axial, -0.269_323_775_182_5, 1e-12);
    agree("pushed off, lateral", forces.lateral, 0.120_400_605_097_4, 1e-12);
    let forces = uneven_pair().forces(0.15, 3.0);
    agree("uneven, axial", forces.axial, 3.244_549_447_211, 1e-12);
    agree("uneven, lateral", forces.lateral, -3.145_357_218_472, 1e-12);
}

#[test]
fn stiffness() {
    agree("twins", close_pair().stiffness(0.4), 3.115_131_948_88, 1e-11);
    assert_eq!(close_pair().stiffness(0.0), f64::INFINITY);
    assert!(uneven_pair().stiffness(0.0).is_finite());
}

#[test]
fn field() {
    let disc = disc(7.0, 2.5, 1.25);
    agree("axis", disc.field(0.0, 1.65).along, 0.327_794_545_993_5, 2e-13);
    let rim = disc.field(3.5, 1.65);
    agree("over the rim, away", rim.away, 0.348_042_127_435_3, 2e-13);
    agree("over the rim, along", rim.along, 0.134_474_077_294_3, 2e-13);
    let beside = disc.field(5.0, 0.5);
    agree("beside, away", beside.away, 0.044_316_094_794_18, 1e-12);
    agree("beside, along", beside.along, -0.112_479_697_542_2, 1e-12);
}

/// Two endless cylinders in contact pull with π r² J² / (2 mu_0): the "B² A / (2 mu_0)" of
/// textbooks, which is twice too much for a thin disc.
#[test]
fn tall_cylinders_reach_the_textbook_value() {
    let limit = std::f64::consts::PI * 9.0 * 1.69e-6 / (2.0 * 1.256_637_061_27e-6);
    let tall = disc(6.0, 1000.0, 1.3).pull_on_twin();
    assert!(tall < limit && tall > 0.9999 * limit, "{tall} against {limit}");
    let thin = disc(6.0, 2.0, 1.3).pull_on_twin();
    agree("6x2", thin, 9.20, 1e-3);
}
