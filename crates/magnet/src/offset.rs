//! Two discs beside one axis: pull and lateral force at any offset.
//!
//! D. Vokoun, M. Beleggia, L. Heller, P. Sittner, Magnetostatic interactions and forces between
//! cylindrical permanent magnets, J. Magn. Magn. Mater. 321 (2009) 3758-3763, give both as
//! integrals over Bessel functions J1(k r1) J1(k r2) J0(k d). Graf's addition theorem
//! (DLMF 10.23.7) turns J1 J1 into an integral of J1(k w) over the distance w between two points of
//! the rims, and the k-integral is then complete elliptic (worked out here; J. T. Conway, Forces
//! between thin coils with parallel axes using Bessel functions, IEEE Trans. Magn. 49 (2013),
//! reduces coils in the same way). With ψ the angle between the two points:
//!
//! ```text
//! w² = D² + 4 r1 r2 sin²(ψ/2),  s² = (w+d)² + z²,  kc² = ((w-d)² + z²) / s²,  γ = (w-d) / (w+d)
//! P(z) = 2 z / (π (w+d) s) cel(kc, γ², 1, γ) - [w > d] / w
//! Q(z) = 2 / (π s) [(2 - m) K - 2 E] / m
//! F = J1 J2 r1² r2² / mu_0  ∫ sin² ψ / w  Σ ± (P, Q)  dψ
//! ```
//!
//! [w > d] is 1 there and 0 elsewhere. It falls out of the four terms together, but each of them
//! would jump at w = d without it, and the quadrature lives on their smoothness.
//!
//! Nothing here diverges in contact: P is then the bare step, and Q logarithmic at w = d, which
//! the quadrature takes in its stride.

use std::f64::consts::FRAC_2_PI;

use crate::coaxial::{faces, pressure};
use crate::elliptic::{cel_root, maxwell};
use crate::quadrature::half_turn;
use crate::{Disc, Forces, multipole};

/// Forces at a positive `offset`.
pub(crate) fn forces(one: &Disc, two: &Disc, gap: f64, offset: f64) -> Forces {
    if let Some(far) = multipole::force(one, two, gap, offset) {
        return Forces { axial: far.along, lateral: far.away_by_distance * offset };
    }
    let rims = Rims {
        sum: one.radius() + two.radius(),
        difference: one.radius() - two.radius(),
        product: one.radius() * two.radius(),
        offset,
    };
    let (mut axial, mut lateral) = (0.0, 0.0);
    for (sign, z) in faces(one, two, gap) {
        let [p, q] = rims.integral(z);
        axial += sign * p;
        lateral += sign * q;
    }
    let scale = pressure(one, two) * rims.product * rims.product;
    Forces { axial: scale * axial, lateral: scale * lateral }
}

/// The two rims, seen along the axis.
struct Rims {
    sum: f64,
    difference: f64,
    product: f64,
    offset: f64,
}

impl Rims {
    /// ∫ sin² ψ / w (P, Q) dψ, 0 to π, in planes `z` apart.
    fn integral(&self, z: f64) -> [f64; 2] {
        let (centre, depth) = self.singularity(z);
        half_turn(centre, depth, |psi| {
            let half = (0.5 * psi).sin();
            let w = (self.difference.powi(2) + 4.0 * self.product * half * half).sqrt();
            if w == 0.0 {
                return [0.0; 2];
            }
            // sin² ψ / w, keeping the zero at ψ = π exact enough.
            let sine = 2.0 * half * (0.5 * psi).cos();
            let weight = sine * sine / w;
            let (p, q) = kernels(w, self.offset, z);
            [weight * p, weight * q]
        })
    }

    /// The integrand is singular where w = ± d ± i z: at ψ = centre ± i depth with
    /// cos ψ = x + i y, 2 r1 r2 (1 - cos ψ) = (d + i z)² - D².
    fn singularity(&self, z: f64) -> (f64, f64) {
        let (d, twice) = (self.offset, 2.0 * self.product);
        let below = ((d - self.difference) * (d + self.difference) - z * z) / twice;
        let above = ((self.sum - d) * (self.sum + d) + z * z) / twice;
        // 1 - x and 1 + x are exact as products; x² - 1 from them keeps small depths.
        let x = if below < 1.0 { 1.0 - below } else { above - 1.0 };
        let y = d * z / self.product;
        let inside = below * above - y * y;
        let root = inside.hypot(2.0 * y);
        // sinh² depth is the positive root q of q² + (1 - x² - y²) q - y² = 0.
        let q = if inside > 0.0 { 2.0 * y * y / (inside + root) } else { 0.5 * (root - inside) };
        let sinh = q.sqrt();
        // cos ψ = cos centre cosh depth - i sin centre sinh depth.
        let sine = if sinh > 0.0 { (y / sinh).min(1.0) } else { inside.max(0.0).sqrt() };
        (sine.atan2(x / (1.0 + q).sqrt()), sinh.asinh())
    }
}

/// P and Q above.
fn kernels(w: f64, d: f64, z: f64) -> (f64, f64) {
    let (sum, difference) = (w + d, w - d);
    let s = (sum * sum + z * z).sqrt();
    // Rounding never lets the difference vanish but when it does, kc and γ stay in proportion.
    let kc = (difference * difference + z * z).sqrt().max(1e-150 * s) / s;
    let ratio = difference / sum;
    // At γ = 0 the cel takes the mean of both sides, which any tiny root gives.
    let root = ratio.abs().max(1e-150);
    let mut axial = if z == 0.0 { 0.0 } else { FRAC_2_PI * z / (sum * s) * cel_root(kc, root, 1.0, ratio) };
    if difference > 0.0 {
        axial -= 1.0 / w;
    } else if difference == 0.0 {
        axial -= 0.5 / w;
    }
    let lateral = FRAC_2_PI / s * maxwell(kc, 4.0 * w * d / (s * s));
    (axial, lateral)
}
