//! One wheel's pair as it is really built: how far apart the magnets are, what touches, what it weighs.

use super::contact::{Contact, Touch};
use super::search::first_positive;
use crate::assembled::{Disc, Wheel};
use magnet::{PLATING, Pair};
use measure::Interval;
use outline::Shape;
use process::ON_NICKEL;

/// A pair in its seat.
#[derive(Clone, Debug, PartialEq)]
pub struct Build {
    /// The cover's magnet.
    pub cover: Disc,
    /// The wheel's magnet.
    pub wheel: Disc,
    /// How far each magnet's face lies under the face it is sunk into, cover's first; negative where it stands out.
    pub under: (f64, f64),
    /// What keeps the two faces apart: the height of a washer.
    pub apart: f64,
    /// How near a magnet's face comes to where it is wanted.
    pub within: f64,
    /// How far the two faces together may be from flat.
    pub flatness: f64,
    /// Friction of the faces.
    pub friction: Interval,
    /// Where the faces touch, when it is they that touch.
    pub faces: Contact,
    /// Radius of the rim, where the finger pushes.
    pub rim: f64,
    /// How much wider a pocket is than its magnet.
    pub fit: f64,
    /// Mass of the wheel with its magnet, in g.
    pub mass: f64,
}

/// Half of the plating on each face; the same on the rim.
pub(super) const COAT: f64 = (PLATING[0] + PLATING[1]) / 2.0;

/// A magnet that stands out less does not guide: its edge is round (our own proposal).
pub(super) const PIN: f64 = 0.2;

/// A pair at one distance.
#[derive(Clone, Copy, Debug)]
pub(super) struct Closed {
    pub(super) pair: Pair,
    pub(super) contact: Contact,
    pub(super) friction: Interval,
    /// Between the magnetic bodies, plating included.
    pub(super) gap: f64,
    /// How far the wheel can be pushed aside at all.
    pub(super) stop: Option<f64>,
    smaller: f64,
}

impl Build {
    /// As a wheel of an assembled dial is built.
    pub fn of(wheel: &Wheel) -> Build {
        let seat = &wheel.seat;
        let under = |depth: f64, disc: &Disc| depth - seat.glue - disc.thickness;
        let ring = seat.ring.as_ref();
        let faces = match ring {
            Some(ring) => Contact { touch: Touch::Ring, inner: ring.inner, outer: ring.outer.min(wheel.radius) },
            None => {
                let inner = wheel.pocket.reach().max(wheel.cover_pocket.reach());
                Contact { touch: Touch::WholeFace, inner, outer: wheel.radius }
            }
        };
        let disc_mass = magnetic(&seat.wheel, 0.5).map_or(0.0, |disc| disc.mass());
        Build {
            cover: seat.cover,
            wheel: seat.wheel,
            under: (under(wheel.cover_pocket.depth, &seat.cover), under(wheel.pocket.depth, &seat.wheel)),
            apart: ring.filter(|ring| ring.washer.is_some()).map_or(0.0, |ring| ring.height),
            within: seat.depth_within,
            flatness: seat.flatness,
            friction: seat.friction,
            faces,
            rim: wheel.radius,
            fit: 2.0 * wheel.cover_pocket.radius - seat.cover.diameter,
            mass: Shape::from(wheel.rim.clone()).area() * wheel.stock.mass_per_area() + disc_mass,
        }
    }

    /// Distance between the magnets' faces when the parts' faces touch; negative where the magnets touch before.
    pub fn clear(&self) -> f64 {
        self.under.0 + self.under.1 + self.apart
    }

    /// Whether the pair rests on its own axis; unequal discs close together do not.
    pub fn centres(&self) -> bool {
        let closed = self.closed(self.clear(), self.flatness / 2.0, 0.5);
        closed.is_some_and(|closed| closed.pair.stiffness(closed.gap) > 0.0)
    }

    /// Distance between the parts' faces: a washer, and what magnets that stand out add.
    pub(super) fn faces_apart(&self) -> f64 {
        self.apart + (-self.clear()).max(0.0)
    }

    /// Room all round the magnet that stands out in the other's pocket; negative where it does not go in.
    pub fn play(&self) -> f64 {
        let (socket, pin) =
            if self.under.1 < self.under.0 { (self.cover, self.wheel) } else { (self.wheel, self.cover) };
        (socket.diameter + self.fit - pin.diameter) / 2.0
    }

    /// The same pair in pockets that bring the magnets' faces so far under the parts' faces.
    pub fn seated(&self, under: (f64, f64)) -> Build {
        Build { under, ..self.clone() }
    }

    /// The same seat with other magnets.
    pub fn with(&self, cover: Disc, wheel: Disc) -> Build {
        // A pocket is as much wider as its magnet is.
        let wider = (cover.diameter - self.cover.diameter).max(wheel.diameter - self.wheel.diameter) / 2.0;
        let faces = match self.faces.touch {
            Touch::WholeFace => Contact { inner: (self.faces.inner + wider).min(self.faces.outer), ..self.faces },
            _ => self.faces,
        };
        Build { cover, wheel, faces, ..self.clone() }
    }

    /// What touches where at a distance between the magnets' faces, with the remanences at this share of what their grades leave open.
    pub(super) fn closed(&self, clear: f64, bow: f64, strength: f64) -> Option<Closed> {
        let (cover, wheel) = (magnetic(&self.cover, strength)?, magnetic(&self.wheel, strength)?);
        let smaller = self.cover.diameter.min(self.wheel.diameter) / 2.0;
        let touching = Contact { touch: Touch::Magnets, inner: 0.0, outer: smaller };
        let (contact, friction, gap) =
            if clear >= 0.0 { (self.faces, self.friction, clear + bow) } else { (touching, ON_NICKEL, 0.0) };
        let pin = clear >= 0.0 && self.under.0.min(self.under.1) + self.apart <= -PIN;
        Some(Closed {
            pair: Pair { first: cover, second: wheel },
            contact,
            friction,
            gap: gap + 2.0 * COAT,
            stop: pin.then_some(self.play().max(0.0)),
            smaller,
        })
    }
}

/// The magnetic body within the plating, of a remanence between the least (0) and the most (1) that its grade promises.
pub(super) fn magnetic(disc: &Disc, strength: f64) -> Option<magnet::Disc> {
    let remanence = disc.remanence.low + strength * (disc.remanence.high - disc.remanence.low);
    magnet::Disc::new(disc.diameter - 2.0 * COAT, disc.thickness - 2.0 * COAT, remanence).ok()
}

impl Closed {
    /// Pull, in N.
    pub(super) fn pull(&self) -> f64 {
        self.pair.pull(self.gap)
    }

    /// Where a side force of so many N pushes the wheel; `None` if it pushes it off.
    pub(super) fn pushed_to(&self, force: f64) -> Option<f64> {
        let found = self.first(|forces| -forces.lateral - force);
        match (found, self.stop) {
            (Some(found), Some(stop)) => Some(found.min(stop)),
            (found, stop) => found.or(stop),
        }
    }

    /// How far off centre friction lets it rest: up to where the pair pulls back harder than friction holds.
    pub(super) fn rests_within(&self, friction: f64) -> f64 {
        let found = self.first(|forces| -forces.lateral - friction * forces.axial).unwrap_or(self.reach());
        self.stop.map_or(found, |stop| found.min(stop))
    }

    /// Angle of turning that brings it from one distance off centre to another: it goes as exp(-κ·arm·θ/(μF)) (from the drag of a
    /// spinning ring, see `Contact::drift_arm`).
    pub(super) fn centred_by(&self, friction: f64, from: f64, to: f64) -> f64 {
        let stiffness = self.pair.stiffness(self.gap);
        if from <= to {
            return 0.0;
        }
        if stiffness <= 0.0 {
            return f64::INFINITY;
        }
        friction * self.pull() / (stiffness * self.contact.drift_arm()) * (from / to).ln()
    }

    /// What a push along the face must overcome to throw the wheel off its seat, friction and the pair's own pull back together: the work
    /// in mJ until the pair no longer pulls it back, and the largest force in N on the way.
    pub(super) fn barrier(&self, friction: f64) -> (f64, f64) {
        let steps = 10;
        let step = self.reach() / f64::from(steps);
        let (mut work, mut strongest) = (0.0, 0.0f64);
        for i in 0..steps {
            let forces = self.pair.forces(self.gap, step * (f64::from(i) + 0.5));
            if i > 0 && forces.lateral >= 0.0 {
                break;
            }
            let force = friction * forces.axial.max(0.0) - forces.lateral;
            work += force * step;
            strongest = strongest.max(force);
        }
        (work, strongest)
    }

    fn reach(&self) -> f64 {
        self.pair.first.radius() + self.pair.second.radius()
    }

    fn first(&self, f: impl Fn(magnet::Forces) -> f64) -> Option<f64> {
        first_positive(self.smaller / 8.0, self.reach(), |d| f(self.pair.forces(self.gap, d)))
    }
}
