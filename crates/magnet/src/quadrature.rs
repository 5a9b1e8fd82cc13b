//! Integrals over half a turn of functions that are smooth but for a pair of complex singularities.
//!
//! Both rules here are exponential: their error falls by a fixed factor a node, set by how far
//! `depth` the nearest singularity `centre` ± i `depth` lies off the real axis.

use std::f64::consts::PI;

/// Below this depth the nodes are drawn together around the singularity; above, evenly spaced
/// nodes are fewer.
const SHALLOW: f64 = 0.4;
/// Even nodes a unit of 1 / depth: the error of the midpoint rule is about exp(-2 · 16) = 1e-14.
const NODES: f64 = 16.0;
/// Where a singularity lies on the axis itself it is spread over this much; being logarithmic it
/// costs about as much error.
const TOUCHING: f64 = 1e-13;
/// Length of a panel after the substitution. With 16 nodes and the singularities at π/2 off the
/// axis the error is about 1e-13.
const PANEL: f64 = 2.75;

/// Integrals of `f` over ψ from 0 to π, where `f` is even about both ends and its singularity next to
/// the real axis lies at `centre` ± i `depth`.
pub(crate) fn half_turn<const N: usize>(centre: f64, depth: f64, f: impl Fn(f64) -> [f64; N]) -> [f64; N] {
    if depth >= SHALLOW { even(depth, f) } else { drawn_together(centre, depth.max(TOUCHING), f) }
}

/// The midpoint rule, which converges exponentially on a full period (L. N. Trefethen,
/// J. A. C. Weideman, The exponentially convergent trapezoidal rule, SIAM Review 56 (2014)
/// 385-458, theorem 3.2).
fn even<const N: usize>(depth: f64, f: impl Fn(f64) -> [f64; N]) -> [f64; N] {
    let count = (NODES / depth).ceil() + 4.0;
    let step = PI / count;
    let mut sum = [0.0; N];
    for j in 0..count as usize {
        add(&mut sum, step, f((j as f64 + 0.5) * step));
    }
    sum
}

/// ψ = centre + depth sinh u moves the singularities to u = ± i π/2 whatever the depth; then
/// Gauss-Legendre on equal panels. (The sinh transformation: P. R. Johnston, D. Elliott, A sinh
/// transformation for evaluating nearly singular boundary element integrals, Int. J. Numer.
/// Methods Eng. 62 (2005) 564-578.)
fn drawn_together<const N: usize>(centre: f64, depth: f64, f: impl Fn(f64) -> [f64; N]) -> [f64; N] {
    let start = -(centre / depth).asinh();
    let end = ((PI - centre) / depth).asinh();
    let panels = ((end - start) / PANEL).ceil();
    let half = 0.5 * (end - start) / panels;
    let mut sum = [0.0; N];
    for panel in 0..panels as usize {
        let middle = start + (2.0 * panel as f64 + 1.0) * half;
        for (node, weight) in GAUSS {
            for u in [middle - half * node, middle + half * node] {
                let e = u.exp();
                let sinh = if u.abs() < 0.5 { u.sinh() } else { 0.5 * (e - 1.0 / e) };
                let stretch = depth * 0.5 * (e + 1.0 / e);
                // The last node may overstep an end by a rounding.
                let psi = (centre + depth * sinh).clamp(0.0, PI);
                add(&mut sum, weight * half * stretch, f(psi));
            }
        }
    }
    sum
}

fn add<const N: usize>(sum: &mut [f64; N], weight: f64, values: [f64; N]) {
    for (total, value) in sum.iter_mut().zip(values) {
        *total += weight * value;
    }
}

/// Gauss-Legendre nodes and weights on -1..1, 16 points, the positive half (Abramowitz and
/// Stegun, Handbook of Mathematical Functions, table 25.4; digits made again by mpmath).
const GAUSS: [(f64, f64); 8] = [
    (0.09501250983763744, 0.1894506104550685),
    (0.2816035507792589, 0.18260341504492358),
    (0.45801677765722737, 0.16915651939500254),
    (0.6178762444026438, 0.14959598881657674),
    (0.755404408355003, 0.12462897125553388),
    (0.8656312023878318, 0.09515851168249279),
    (0.9445750230732326, 0.062253523938647894),
    (0.9894009349916499, 0.027152459411754096),
];

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn gauss_is_exact_to_degree_31() {
        for degree in (0..=30).step_by(2) {
            let sum: f64 = GAUSS.iter().map(|(x, w)| 2.0 * w * x.powi(degree)).sum();
            let exact = 2.0 / f64::from(degree + 1);
            assert!((sum - exact).abs() < 4e-16, "x^{degree}: {sum} against {exact}");
        }
    }

    /// Poisson's kernel: the mean of (1 - q²) / (1 - 2 q cos ψ + q²) is 1, and its poles lie at
    /// ψ = ± i ln(1/q).
    #[test]
    fn both_rules_find_the_poisson_kernel() {
        for depth in [1e-9, 1e-6, 1e-3, 0.05, 0.2, 0.39, 0.41, 1.0, 3.0] {
            let q = f64::exp(-depth);
            let gap = -f64::exp_m1(-depth);
            let [sum] = half_turn(0.0, depth, |psi| {
                let half = (0.5 * psi).sin();
                [gap * (1.0 + q) / (gap * gap + 4.0 * q * half * half)]
            });
            assert!((sum / PI - 1.0).abs() < 3e-13, "depth {depth}: {}", sum / PI - 1.0);
        }
    }

    /// ∫ ln|cos ψ - cos c| over 0..π is -π ln 2 for every real c (Chebyshev's potential).
    #[test]
    fn a_logarithm_on_the_axis_is_found() {
        for centre in [0.3_f64, 1.0, 2.5] {
            let [sum] = half_turn(centre, 0.0, |psi| {
                let (s, d) = ((0.5 * (psi + centre)).sin(), (0.5 * (psi - centre)).sin());
                [(2.0 * s * d).abs().max(1e-300).ln()]
            });
            let exact = -PI * std::f64::consts::LN_2;
            assert!((sum - exact).abs() < 3e-11, "centre {centre}: {}", sum - exact);
        }
    }
}
