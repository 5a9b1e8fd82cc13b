//! Rings of small magnets: the torque that makes a click.
//!
//! A disc turned about its own axis feels nothing, so detents need magnets off the centre. With rigid
//! magnetisation the forces of all pairs simply add up.

use crate::Pair;

/// Magnets on one ring radius in two parts that face each other across a gap; one part turns.
#[derive(Clone, Debug, PartialEq)]
pub struct Clicks {
    /// One magnet of the part that stays (first) and one of the part that turns (second).
    pub pair: Pair,
    /// Gap in mm between the faces.
    pub gap: f64,
    /// Ring radius in mm, of both parts.
    pub ring: f64,
    /// The magnets of the part that stays.
    pub fixed: Vec<Seat>,
    /// The magnets of the part that turns.
    pub turning: Vec<Seat>,
}

/// One magnet on its ring.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Seat {
    /// Where on the ring, in radians.
    pub angle: f64,
    /// Which way round.
    pub poles: Poles,
}

/// Which way round a magnet is glued. What counts is whether two that meet are alike: as in
/// [`Pair`], a fixed and a turning magnet both `Plain` attract.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Poles {
    /// As the pair is described.
    Plain,
    /// Turned over.
    Turned,
}

/// What the turning part feels.
#[derive(Clone, Copy, Debug, Default, PartialEq)]
pub struct Load {
    /// About the centre of the ring, in N·mm; positive turns it on, negative back.
    pub torque: f64,
    /// Pull between the parts, in N; positive attracts.
    pub pull: f64,
    /// Side force in N, as x and y with angle 0 along x. Rings that are not evenly filled have one.
    pub side: [f64; 2],
}

impl Seat {
    /// `count` magnets evenly around the ring, all the same way round, the first at angle 0.
    #[must_use]
    pub fn evenly(count: usize) -> Vec<Seat> {
        (0..count)
            .map(|i| Seat { angle: std::f64::consts::TAU * i as f64 / count as f64, poles: Poles::Plain })
            .collect()
    }
}

impl Clicks {
    /// What the turning part feels when it is turned by `angle` (radians).
    ///
    /// Each fixed magnet acts on each turning one: with θ between them they are
    /// d = 2 b sin(θ/2) apart on the ring radius b, the lateral force lies along the chord, and the
    /// torque is its size times b cos(θ/2). (Superposition for couplings: E. P. Furlani, Formulas
    /// for the force and torque of axial couplings, IEEE Trans. Magn. 29 (1993) 2295-2301.)
    ///
    /// ```
    /// use magnet::{Clicks, Pair, Seat};
    /// let clicks = Clicks {
    ///     pair: Pair::twins("3x1:N42".parse()?),
    ///     gap: 0.6,
    ///     ring: 15.0,
    ///     fixed: Seat::evenly(1),
    ///     turning: Seat::evenly(10),
    /// };
    /// let stop = clicks.at(0.0);
    /// assert!(stop.torque.abs() < 1e-12 && stop.pull > 0.3);
    /// assert!(clicks.at(5.3_f64.to_radians()).torque < -5.0); // N·mm, back to the stop
    /// # Ok::<(), magnet::DiscError>(())
    /// ```
    #[must_use]
    pub fn at(&self, angle: f64) -> Load {
        let mut load = Load::default();
        for fixed in &self.fixed {
            for turning in &self.turning {
                let there = turning.angle + angle;
                let half = 0.5 * (there - fixed.angle);
                // A chord with a sign: half a turn of `half` is the same chord from the other side.
                let (chord, arm) = (2.0 * self.ring * half.sin(), self.ring * half.cos());
                let mut forces = self.pair.forces(self.gap, chord);
                if fixed.poles != turning.poles {
                    forces = -forces;
                }
                load.pull += forces.axial;
                load.torque += forces.lateral * arm;
                // The chord points across the middle of the two angles.
                let (sin, cos) = (0.5 * (there + fixed.angle)).sin_cos();
                load.side[0] -= forces.lateral * sin;
                load.side[1] += forces.lateral * cos;
            }
        }
        load
    }

    /// Torque in N·mm at `angle`, see [`at`](Clicks::at).
    #[must_use]
    pub fn torque(&self, angle: f64) -> f64 {
        self.at(angle).torque
    }

    /// Pull in N at `angle`, see [`at`](Clicks::at).
    #[must_use]
    pub fn pull(&self, angle: f64) -> f64 {
        self.at(angle).pull
    }
}
