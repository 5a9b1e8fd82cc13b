//! Far away: the exterior multipole series, which has no cancellation.
//!
//! The closed forms take second differences of numbers as large as the face of the disc, and the
//! far force is a difference of almost nothing. A body of revolution seen from outside is a sum of
//! axial multipoles, and two such bodies with parallel axes act as one sum over the vector between
//! their centres. Worked out for this crate from the addition theorem of solid harmonics
//! (E. W. Hobson, The Theory of Spherical and Ellipsoidal Harmonics, 1931, chapter IV); the tests
//! hold it against values that do not use it.

use std::f64::consts::PI;

use crate::{Disc, MU_0};

/// The series is used from this many times the summed reach on: each order is then worth a
/// factor 0.4, and [`TERMS`] even orders reach 1e-17.
const FAR: f64 = 2.5;
const TERMS: usize = 22;
/// Relative size of the first term left out.
const LAST: f64 = 1e-17;

/// What a harmonic series yields at a place: its derivative along the axis, and away from it.
#[derive(Clone, Copy, Debug)]
pub(crate) struct Gradient {
    pub along: f64,
    /// Divided by the distance from the axis, so that it has a value on the axis.
    pub away_by_distance: f64,
}

/// Axial force in N and lateral force divided by the offset in N/mm (signs as in [`crate::Forces`]), if the pair is
/// far apart.
pub(crate) fn force(one: &Disc, two: &Disc, gap: f64, offset: f64) -> Option<Gradient> {
    let along = gap + one.thickness() / 2.0 + two.thickness() / 2.0;
    let place = Place::beyond(one.reach() + two.reach(), along, offset)?;
    let u = moments(one, &place);
    let v = moments(two, &place);
    // Order n = 2 j + 2 of the pair gathers orders l and n - l of the discs:
    // A_n = 4 π / mu_0 Σ C(n, l) Q_l Q_(n-l); the factorials of C(n, l) sit in u and v, and n!.
    let mut factorial = 1.0;
    let mut orders = [0.0; TERMS];
    for j in 0..place.terms {
        let n = (2 * j + 2) as f64;
        factorial *= n * (n - 1.0);
        orders[j] = factorial * (0..=j).map(|i| u[i] * v[j - i]).sum::<f64>();
    }
    // N = T² mm² 1e-6 / mu_0, and each gradient of P_n / R^(n+1) brings 1 / R².
    let scale = 4.0 * PI * 1e-6 / MU_0 * strength(one) * strength(two) / place.distance / place.distance;
    // The potential energy is -Σ A_n P_n / R^(n+1); attraction counts as positive.
    Some(place.gradient(&orders, 2, scale))
}

/// The flux density in T of one disc at height `z` over its centre and `rho` off its axis,
/// the part off the axis divided by `rho` (T/mm), if the place is far away.
pub(crate) fn field(disc: &Disc, rho: f64, z: f64) -> Option<Gradient> {
    let place = Place::beyond(disc.reach(), z, rho)?;
    let mut orders = moments(disc, &place);
    let mut factorial = 1.0;
    for (j, q) in orders.iter_mut().enumerate() {
        let l = (2 * j + 1) as f64;
        factorial *= l * (l - 1.0).max(1.0);
        *q *= factorial;
    }
    let scale = strength(disc) / place.distance / place.distance;
    let out = place.gradient(&orders, 1, scale);
    // Φ falls outwards and B = -grad Φ points outwards with it.
    Some(Gradient { along: out.along, away_by_distance: -out.away_by_distance })
}

fn strength(disc: &Disc) -> f64 {
    disc.remanence() * disc.radius().powi(2)
}

/// Where the series is summed.
struct Place {
    distance: f64,
    /// Cosine of the angle to the axis.
    cosine: f64,
    terms: usize,
}

impl Place {
    fn beyond(reach: f64, along: f64, away: f64) -> Option<Place> {
        let distance = along.hypot(away);
        if distance < FAR * reach {
            return None;
        }
        let ratio = reach / distance;
        let terms = (LAST.ln() / (2.0 * ratio.ln())).ceil();
        Some(Place {
            distance,
            cosine: along / distance,
            // A ratio of zero gives zero terms; the dipole always stays.
            terms: (terms as usize).clamp(1, TERMS),
        })
    }

    /// Sums -grad of Σ orders_j P_n / R^(n+1) / `scale`, n = `first`, `first` + 2, ... with the
    /// powers of R already inside, from
    /// -d/dz (P_n / R^(n+1)) = (n + 1) P_(n+1) / R^(n+2) and
    /// -d/dρ (P_n / R^(n+1)) = sin θ P'_(n+1) / R^(n+2)  (Hobson 1931, chapter III);
    /// the second one is returned with the opposite sign, as the pull back on the axis.
    fn gradient(&self, orders: &[f64; TERMS], first: usize, scale: f64) -> Gradient {
        let mut legendre = Legendre::at(self.cosine);
        let (mut along, mut away) = (0.0, 0.0);
        for (j, order) in orders.iter().take(self.terms).enumerate() {
            let next = first + 2 * j + 1;
            legendre.advance_to(next);
            along += order * next as f64 * legendre.value;
            away -= order * legendre.slope;
        }
        Gradient { along: scale * along, away_by_distance: scale * away / self.distance }
    }
}

/// Moments of the charge on the two faces, of odd order l = 2 j + 1, divided by l! R^l and by
/// [`strength`]:
///
/// Q_l = J r² a^l P'_(l+1)(h / a) / ((l + 1)(l + 2)), h half the thickness, a² = r² + h².
fn moments(disc: &Disc, place: &Place) -> [f64; TERMS] {
    let a = disc.reach();
    let ratio = a / place.distance;
    let mut legendre = Legendre::at(disc.thickness() / 2.0 / a);
    let mut power = ratio;
    let mut out = [0.0; TERMS];
    for (j, q) in out.iter_mut().take(place.terms).enumerate() {
        let l = 2 * j + 1;
        legendre.advance_to(l + 1);
        let l = l as f64;
        *q = power * legendre.slope / ((l + 1.0) * (l + 2.0));
        power *= ratio * ratio / ((l + 1.0) * (l + 2.0));
    }
    out
}

/// Legendre polynomial and its derivative, order by order (DLMF 18.9.1 and 14.10.3-5).
struct Legendre {
    x: f64,
    order: usize,
    value: f64,
    before: f64,
    slope: f64,
    slope_before: f64,
}

impl Legendre {
    fn at(x: f64) -> Legendre {
        Legendre { x, order: 0, value: 1.0, before: 0.0, slope: 0.0, slope_before: 0.0 }
    }

    fn advance_to(&mut self, order: usize) {
        while self.order < order {
            let n = self.order as f64;
            let value = ((2.0 * n + 1.0) * self.x * self.value - n * self.before) / (n + 1.0);
            // P'_(n+1) = P'_(n-1) + (2 n + 1) P_n
            let slope = self.slope_before + (2.0 * n + 1.0) * self.value;
            (self.before, self.value) = (self.value, value);
            (self.slope_before, self.slope) = (self.slope, slope);
            self.order += 1;
        }
    }
}
