//! Where cover and wheel touch: that alone decides how hard a wheel turns, since a disc that turns about its own axis changes no
//! magnetic energy.

/// The ring on which two parts touch.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Contact {
    /// What touches.
    pub touch: Touch,
    /// Inner radius.
    pub inner: f64,
    /// Outer radius.
    pub outer: f64,
}

/// What touches.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
#[expect(missing_docs, reason = "the names say it")]
pub enum Touch {
    WholeFace,
    Ring,
    Magnets,
}

impl Contact {
    /// Radius at which the friction of new flat faces acts, uniform pressure: (2/3)(Ro³ - Ri³)/(Ro² - Ri²) (pivot friction, any
    /// text on clutches; Shigley's, from memory).
    pub fn new_faces(&self) -> f64 {
        let (i, o) = (self.inner, self.outer);
        2.0 / 3.0 * (o * o + o * i + i * i) / (o + i)
    }

    /// The same of faces that are run in, uniform wear: (Ro + Ri)/2 (same source).
    pub fn run_in(&self) -> f64 {
        (self.inner + self.outer) / 2.0
    }

    /// Friction holds a disc that spins at ω against a slow drift v only with μF·v/(ω·this): averaged over a ring with uniform
    /// pressure, where each place slides almost along its circle, ⟨v/(2ωr)⟩ = v/(ω(Ro + Ri)).
    pub fn drift_arm(&self) -> f64 {
        self.inner + self.outer
    }
}

impl Touch {
    /// What touches, in words.
    pub fn words(self) -> &'static str {
        match self {
            Touch::WholeFace => "the whole face",
            Touch::Ring => "the ring",
            Touch::Magnets => "the magnets' faces",
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use proptest::prelude::*;
    use std::f64::consts::TAU;

    fn ring(inner: f64, outer: f64) -> Contact {
        Contact { touch: Touch::Ring, inner, outer }
    }

    /// Force along the drift and torque of a spinning ring under unit load and friction, by brute force over its area.
    fn brute(ring: &Contact, drift_over_turning: f64) -> (f64, f64) {
        let (steps_r, steps_a) = (400, 400);
        let (mut force, mut torque, mut area) = (0.0, 0.0, 0.0);
        for i in 0..steps_r {
            let r = ring.inner + (ring.outer - ring.inner) * (i as f64 + 0.5) / steps_r as f64;
            for k in 0..steps_a {
                let a = TAU * (k as f64 + 0.5) / steps_a as f64;
                let (vx, vy) = (drift_over_turning - r * a.sin(), r * a.cos());
                let speed = vx.hypot(vy);
                force += vx / speed * r;
                torque += (r * a.cos() * vy - r * a.sin() * vx) / speed * r;
                area += r;
            }
        }
        (force / area, torque / area)
    }

    proptest! {
        #![proptest_config(ProptestConfig { cases: 12, ..ProptestConfig::default() })]
        /// Both formulas against the sum over a fine grid of little faces.
        #[test]
        fn friction_of_a_ring_is_the_sum_of_its_parts(inner in 1.0..6.0f64, width in 2.0..20.0f64) {
            let ring = ring(inner, inner + width);
            let drift = 0.02 * inner;
            let (force, torque) = brute(&ring, drift);
            prop_assert!((torque / ring.new_faces() - 1.0).abs() < 2e-3, "{torque}");
            prop_assert!((force / (drift / ring.drift_arm()) - 1.0).abs() < 1e-2, "{force}");
        }
    }

    /// A full disc: 2/3 of its radius new, a half run in (statics texts); magnets face on face, 6 mm: 2.0 mm; a boss ring from 3 to 8 mm:
    /// 5.9 mm.
    #[test]
    fn radii_are_those_of_the_texts() {
        assert!((ring(0.0, 20.0).new_faces() - 13.333).abs() < 1e-3 && ring(0.0, 20.0).run_in() == 10.0);
        assert!((ring(0.0, 3.0).new_faces() - 2.0).abs() < 1e-9);
        assert!((ring(3.0, 8.0).new_faces() - 5.88).abs() < 5e-3);
    }
}
