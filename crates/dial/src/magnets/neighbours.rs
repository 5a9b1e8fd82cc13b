//! What magnets do to other magnets near by: neighbouring wheels in use, spares on the bench.

use super::Build;
use crate::assembled::{Dial, Disc};
use std::f64::consts::PI;

/// Magnetic constant in T·m/A (CODATA 2022).
const MU_0: f64 = 1.256_637_061_27e-6;
/// Standard gravity in m/s².
const G: f64 = 9.80665;
/// Density of sintered NdFeB in g/mm³ (makers' tables).
const DENSITY: f64 = 7.5e-3;
/// Friction of a loose magnet on a bench: a smooth one (general tables: metal on wood from 0.2).
const BENCH: f64 = 0.2;

/// What the pair of one wheel does to another wheel.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Neighbour {
    /// The wheel that feels it.
    pub wheel: usize,
    /// The wheel whose pair does it.
    pub other: usize,
    /// Between their middles.
    pub apart: f64,
    /// Side force, in N.
    pub force: f64,
    /// How far that pushes the wheel from its middle.
    pub shift: f64,
}

/// Magnetic moment in A·m².
fn moment(disc: &Disc) -> f64 {
    let volume = PI / 4.0 * disc.diameter * disc.diameter * disc.thickness * 1e-9;
    (disc.remanence.low + disc.remanence.high) / 2.0 * volume / MU_0
}

/// Side force between parallel moments side by side, in N; within 3 % for discs of a dial from 20 mm on (two dipoles: any text).
fn side_by_side(one: f64, other: f64, apart: f64) -> f64 {
    3.0 * MU_0 * one * other / (4.0 * PI * (apart * 1e-3).powi(4))
}

/// The strongest neighbour of every wheel.
pub fn neighbours(dial: &Dial) -> Vec<Neighbour> {
    let felt = |i: usize, j: usize| {
        let (wheel, other) = (&dial.wheels[i], &dial.wheels[j]);
        let apart = (wheel.centre - other.centre).hypot();
        let both = moment(&other.seat.cover) + moment(&other.seat.wheel);
        let force = side_by_side(moment(&wheel.seat.wheel), both, apart);
        let build = Build::of(wheel);
        let closed = build.closed(build.clear(), build.flatness / 2.0, 0.5);
        let stiffness = closed.map_or(f64::NAN, |closed| closed.pair.stiffness(closed.gap));
        Neighbour { wheel: i, other: j, apart, force, shift: force / stiffness }
    };
    let count = dial.wheels.len();
    (0..count)
        .filter_map(|i| {
            let others = (0..count).filter(|&j| j != i).map(|j| felt(i, j));
            others.max_by(|a, b| a.force.total_cmp(&b.force))
        })
        .collect()
}

/// How far apart loose magnets must lie on the bench so that they do not slide together, in mm, rounded up to 5 mm.
pub fn spares_apart(disc: &Disc) -> f64 {
    let mass = DENSITY * PI / 4.0 * disc.diameter * disc.diameter * disc.thickness * 1e-3;
    // End on, the pull is twice that of side by side.
    let m = moment(disc);
    let metres = (2.0 * 3.0 * MU_0 * m * m / (4.0 * PI * BENCH * mass * G)).powf(0.25);
    (metres * 1e3 / 5.0).ceil() * 5.0
}

#[cfg(test)]
mod tests {
    use super::*;
    use measure::Interval;

    /// Force of a closed pair of 6 x 2 mm discs, N42, on such a disc, by a general field library (magpylib): 13, 2.6, 0.81 and 0.16 mN
    /// at 20, 30, 40 and 60 mm; of 8 x 3 mm, N52: 113, 22, 7.0, 1.4 mN.
    #[test]
    fn dipoles_are_near_enough() {
        for (diameter, thickness, br, forces) in
            [(6.0, 2.0, 1.30, [13.0, 2.6, 0.81, 0.16]), (8.0, 3.0, 1.45, [113.0, 22.0, 7.0, 1.4])]
        {
            let m = moment(&Disc { diameter, thickness, remanence: Interval::exactly(br) });
            for (apart, force) in [20.0, 30.0, 40.0, 60.0].into_iter().zip(forces) {
                let computed = 1e3 * side_by_side(m, 2.0 * m, apart);
                assert!((computed / force - 1.0).abs() < 0.06, "{apart} mm: {computed} mN, {force}");
            }
        }
    }
}
