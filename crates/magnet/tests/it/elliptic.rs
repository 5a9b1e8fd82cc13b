//! The elliptic integrals against published values and mpmath.

use magnet::{cel, first, second, third};

use crate::table::{agree, rows};

/// tools/magnet_reference.py: kc from 1e-8 to 2, n from -1e8 to 5.
#[test]
fn mpmath() {
    for row in rows(include_str!("../data/elliptic.csv"), 5) {
        let [kc, n, k, e, pi] = row[..] else { unreachable!() };
        agree(&format!("K at {kc}"), first(kc), k, 2e-15);
        agree(&format!("E at {kc}"), second(kc), e, 2e-15);
        // Above n = 1 the principal value crosses zero and n itself is known to its rounding.
        let relative = if n > 1.0 { 1e-12 } else { 4e-15 };
        agree(&format!("Pi({n}) at {kc}"), third(n, kc), pi, relative);
    }
}

/// B. C. Carlson, Numerical computation of real or complex elliptic integrals, Numer. Algorithms
/// 10 (1995) 13-26, section 3 (values as quoted there): R_F(1,2,0), R_J(0,1,2,3), R_D(0,2,1).
/// cel(kc,p,a,b) = a R_F(0,kc²,1) + (b - p a)/3 R_J(0,kc²,1,p) (DLMF 19.25), and homogeneity
/// R_F(λx) = λ^-1/2 R_F, R_J(λx) = λ^-3/2 R_J bring his arguments to ours.
#[test]
fn carlson() {
    // R_F(0, 1/2, 1) = sqrt 2 R_F(0, 1, 2)
    let rf = cel(0.5_f64.sqrt(), 1.0, 1.0, 1.0) / 2.0_f64.sqrt();
    agree("R_F(1,2,0)", rf, 1.311_028_777_146_059_9, 1e-14);
    // R_J(0, 1/2, 1, 3/2) = 2^(3/2) R_J(0, 1, 2, 3): a = 0, b = 3
    let rj = cel(0.5_f64.sqrt(), 1.5, 0.0, 3.0) / 2.0_f64.powf(1.5);
    agree("R_J(0,1,2,3)", rj, 0.776_886_237_785_823_3, 1e-14);
    // R_D(0, 2, 1) = R_J(0, 2, 1, 1)
    let rd = cel(2.0_f64.sqrt(), 1.0, 0.0, 3.0);
    agree("R_D(0,2,1)", rd, 1.797_210_352_103_388_3, 1e-14);
}

/// R. Bulirsch's own kind of arguments, values by quadrature of the definition with 30 digits.
#[test]
fn cel_by_quadrature() {
    for (kc, p, a, b, value) in [
        (0.5, 1.0, 0.0, 1.0, 1.260_612_826_574_911_6),
        (0.5, 1.0, -1.0, 1.0, 0.364_710_005_650_179_99),
        (0.5, 0.25, 1.0, 0.5, 3.052_418_468_424_374_9),
        (0.5, 0.25, 1.0, -0.5, -0.531_192_815_274_551_6),
        (0.1, 4.0, 1.1, 1.2, 1.589_772_210_940_907_5),
        (0.1, 0.01, 1.0, 0.1, 12.595_975_284_765_558),
        (0.9, 100.0, 1.0, 0.0, 0.143_444_594_157_336_98),
    ] {
        agree(&format!("cel({kc}, {p}, {a}, {b})"), cel(kc, p, a, b), value, 3e-15);
    }
}

/// M. Abramowitz, I. Stegun, Handbook of Mathematical Functions, table 17.1 (from memory), digits
/// by mpmath: K and E of m.
#[test]
fn handbook() {
    for (m, k, e) in [
        (0.1_f64, 1.612_441_348_720_219_4, 1.530_757_636_897_763_2),
        (0.5, 1.854_074_677_301_371_9, 1.350_643_881_047_675_5),
        (0.9, 2.578_092_113_348_173, 1.104_774_732_704_073_3),
        (0.99, 3.695_637_362_989_874_7, 1.015_993_545_025_224),
    ] {
        let kc = (1.0 - m).sqrt();
        agree(&format!("K({m})"), first(kc), k, 3e-15);
        agree(&format!("E({m})"), second(kc), e, 3e-15);
    }
    agree("Pi(0.5|0.5)", third(0.5, 0.5_f64.sqrt()), 2.701_287_762_095_351, 2e-15);
    agree("Pi(-10|0.9)", third(-10.0, 0.1_f64.sqrt()), 0.590_843_050_058_134_6, 2e-15);
}

#[test]
fn where_there_is_no_value() {
    assert_eq!(first(0.0), f64::INFINITY);
    assert_eq!(second(0.0), 1.0);
    assert!(cel(0.5, 0.0, 1.0, 1.0).is_nan());
    assert!(cel(f64::NAN, 1.0, 1.0, 1.0).is_nan());
    // Finite arguments end, however extreme.
    for kc in [1e-300, 1e300] {
        for p in [1e-300, 1e300, -1e300] {
            let _: f64 = cel(kc, p, 1.0, 1.0);
        }
    }
}
