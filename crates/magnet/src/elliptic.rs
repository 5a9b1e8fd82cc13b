//! Complete elliptic integrals, all from one: Bulirsch's `cel`.
//!
//! Everything takes the complementary modulus `kc` = sqrt(1 - k²) itself. Near k = 1, where magnets
//! touch, forming 1 - k² from k² would already have lost the digits that matter.

use std::f64::consts::{FRAC_PI_2, PI};

/// Convergence is quadratic: two neighbours equal to 1e-8 are equal to 1e-16 one step on.
const STEP: f64 = 1e-8;

/// Bulirsch's general complete elliptic integral
///
/// ```text
/// cel(kc, p, a, b) = ∫ (a cos² + b sin²) / ((cos² + p sin²) sqrt(cos² + kc² sin²)) dφ,  0 to π/2
/// ```
///
/// For `p` < 0 its Cauchy principal value. Infinite at `kc` = 0 unless `b` = 0, when it is not
/// computed either and comes back as NaN; NaN at `p` = 0 and for arguments that are not finite.
///
/// Source: R. Bulirsch, Numerical calculation of elliptic integrals and elliptic functions III,
/// Numer. Math. 13 (1969) 305-315; definition also DLMF 19.2.11.
#[must_use]
pub fn cel(kc: f64, p: f64, a: f64, b: f64) -> f64 {
    if p > 0.0 {
        return cel_root(kc, p.sqrt(), a, b);
    }
    if p == 0.0 {
        return f64::NAN;
    }
    // Bulirsch's change of variable to a positive parameter.
    let f = kc * kc - p;
    let g = 1.0 - p;
    let root = (f / g).sqrt();
    let a1 = (a - b) / g;
    let b1 = -(1.0 - kc * kc) * (b - a * p) / (g * g * root) + a1 * root;
    cel_steps(kc, root, a1, b1)
}

/// [`cel`] with the square root of a positive `p`: the magnet formulas know the root, and a tiny
/// root does not underflow as its square would.
#[must_use]
pub(crate) fn cel_root(kc: f64, root: f64, a: f64, b: f64) -> f64 {
    cel_steps(kc, root, a, b / root)
}

/// The descending Landen steps. `b` is already divided by the root of p.
fn cel_steps(kc: f64, mut p: f64, mut a: f64, mut b: f64) -> f64 {
    let kc = kc.abs();
    if kc == 0.0 {
        return if b == 0.0 { f64::NAN } else { b * f64::INFINITY };
    }
    let (mut k, mut product, mut mean) = (kc, kc, 1.0);
    loop {
        let a0 = a;
        a += b / p;
        let g = product / p;
        b = 2.0 * (b + a0 * g);
        p += g;
        let last = mean;
        mean += k;
        // Written so that a NaN ends the loop as well.
        if (last - k).abs() > last * STEP {
            k = 2.0 * product.sqrt();
            product = k * mean;
        } else {
            return FRAC_PI_2 * (b + a * mean) / (mean * (mean + p));
        }
    }
}

/// Complete integral of the first kind, K = `cel(kc, 1, 1, 1)` (DLMF 19.2.8 with 19.2.11).
#[must_use]
pub fn first(kc: f64) -> f64 {
    cel(kc, 1.0, 1.0, 1.0)
}

/// Complete integral of the second kind, E = `cel(kc, 1, 1, kc²)`; 1 at `kc` = 0.
#[must_use]
pub fn second(kc: f64) -> f64 {
    if kc == 0.0 { 1.0 } else { cel(kc, 1.0, 1.0, kc * kc) }
}

/// Complete integral of the third kind, Π(n) = `cel(kc, 1 - n, 1, 1)`, where
/// Π = ∫ dφ / ((1 - n sin²) sqrt(cos² + kc² sin²)). Principal value for n > 1.
#[must_use]
pub fn third(n: f64, kc: f64) -> f64 {
    cel(kc, 1.0 - n, 1.0, 1.0)
}

/// Maxwell's combination of two coaxial loops, [(2 - m) K - 2 E] / m = `cel(kc, 1, -1, 1)`.
///
/// `m` = 1 - kc² is given too. K and E nearly cancel when `m` is small; the arithmetic-geometric
/// mean does not: E = K (1 - Σ 2^(n-1) c_n²) from n = 0 with c_0² = m (DLMF 19.8.6), so the
/// bracket is K Σ 2^n c_n² from n = 1, a sum of squares that keeps every digit.
#[must_use]
pub(crate) fn maxwell(kc: f64, m: f64) -> f64 {
    let kc = kc.abs();
    if kc == 0.0 {
        return f64::INFINITY;
    }
    let (mut a, mut b) = (1.0, kc);
    // c_1 = (1 - kc) / 2; its square over m is written without the division by m.
    let mut c = 0.5 * m / (1.0 + kc);
    let mut sum = c / (1.0 + kc);
    let mut weight = 2.0;
    // Written so that a NaN ends the loop as well.
    while c > a * STEP {
        (a, b) = (0.5 * (a + b), (a * b).sqrt());
        c = 0.25 * c * c / (0.5 * (a + b));
        weight *= 2.0;
        sum += weight * c * c / m;
    }
    PI / (a + b) * sum
}
