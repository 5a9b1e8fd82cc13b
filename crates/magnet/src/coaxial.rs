//! Two discs on one axis: pull and centring stiffness in closed form.
//!
//! W. Robertson, B. Cazzolato, A. Zander, A simplified force equation for coaxial cylindrical
//! magnets and thin coils, IEEE Trans. Magn. 47 (2011) 2045-2049, reduce the pull to one function T
//! at four distances, F = J1 J2 / (2 mu_0) [T(g+t1) + T(g+t2) - T(g) - T(g+t1+t2)]. Their T divides
//! by the difference of the radii and loses digits when the radii nearly agree. Written in `cel`
//! (worked out here) it is the same function without that weakness.

use crate::elliptic::{cel, cel_root, maxwell};
use crate::{Disc, MU_0, multipole};

/// The four distances between the faces, with their signs in the force.
pub(crate) fn faces(one: &Disc, two: &Disc, gap: f64) -> [(f64, f64); 4] {
    let (t1, t2) = (one.thickness(), two.thickness());
    [(-1.0, gap), (1.0, gap + t1), (1.0, gap + t2), (-1.0, gap + t1 + t2)]
}

/// J1 J2 / mu_0 in N/mm².
pub(crate) fn pressure(one: &Disc, two: &Disc) -> f64 {
    one.remanence() * two.remanence() * 1e-6 / MU_0
}

/// Pull in N; positive attracts.
pub(crate) fn pull(one: &Disc, two: &Disc, gap: f64) -> f64 {
    if let Some(far) = multipole::force(one, two, gap, 0.0) {
        return far.along;
    }
    let (r1, r2) = (one.radius(), two.radius());
    let (sum, difference) = (r1 + r2, (r1 - r2).abs());
    let terms = faces(one, two, gap).map(|(sign, z)| sign * term(sum, difference, r1 * r2, z));
    0.5 * pressure(one, two) * terms.iter().sum::<f64>()
}

/// T(z) = 4 r1 r2 z / s [cel(kc, 1, 0, 1) - cel(kc, (kc S / D)², 1, 0)], with
/// s² = S² + z², kc² = (D² + z²) / s², S and D sum and difference of the radii; T(0) = 0, and the
/// second part is 0 at D = 0.
fn term(sum: f64, difference: f64, product: f64, z: f64) -> f64 {
    let s = sum.hypot(z);
    let kc = difference.hypot(z) / s;
    // Where kc vanishes the integral grows as its logarithm only, so z wins.
    if z <= f64::MIN_POSITIVE * s {
        return 0.0;
    }
    let mut bracket = cel(kc, 1.0, 0.0, 1.0);
    if difference > 0.0 {
        bracket -= cel_root(kc, kc * sum / difference, 1.0, 0.0);
    }
    4.0 * product * z / s * bracket
}

/// Centring stiffness in N/mm, the force back per offset for small offsets.
///
/// By Laplace's equation it is -1/2 dF/dg exactly (S. Earnshaw, 1842). Here from the small-offset
/// limit of the lateral force, κ = π J1 J2 r1 r2 / (2 mu_0) Σ ± L(z) with
/// L = 2 / (π s) [(2 - m) K - 2 E] / m. Infinite for equal radii in contact.
pub(crate) fn stiffness(one: &Disc, two: &Disc, gap: f64) -> f64 {
    if let Some(far) = multipole::force(one, two, gap, 0.0) {
        return -far.away_by_distance;
    }
    let (r1, r2) = (one.radius(), two.radius());
    let (sum, difference) = (r1 + r2, r1 - r2);
    let terms = faces(one, two, gap).map(|(sign, z)| {
        let s = sum.hypot(z);
        let kc = difference.hypot(z) / s;
        let m = 4.0 * r1 * r2 / (s * s);
        -sign * maxwell(kc, m) / s
    });
    pressure(one, two) * r1 * r2 * terms.iter().sum::<f64>()
}
