//! The pole plan: every pocket is told by what it does to the marked face of one master magnet. Testers disagree about the names of
//! poles; what counts is that all agree with the master (common practice).

use crate::assembled::{Dial, Disc, Pocket, Poles};

/// A pocket with its pole.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct PocketPole {
    /// Which part it is in.
    pub part: Where,
    /// Index of the wheel that it belongs to.
    pub wheel: usize,
    /// The pocket, in assembled coordinates.
    pub pocket: Pocket,
    /// Whether it is one of the small ones that click.
    pub clicks: bool,
    /// What it does to the marked face of the master magnet held over it.
    pub poles: Poles,
}

/// The part a pocket is in.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
#[expect(missing_docs, reason = "the names say it")]
pub enum Where {
    CoverBack,
    WheelFace,
}

/// The plan of a dial: one rule for every cover, the other way round for every wheel.
pub fn plan(dial: &Dial) -> Vec<PocketPole> {
    let mut plan = Vec::new();
    for (i, wheel) in dial.wheels.iter().enumerate() {
        let mut put = |part: Where, pocket: &Pocket, clicks: bool| {
            let poles = marked_face(part, wheel.seat.poles);
            plan.push(PocketPole { part, wheel: i, pocket: *pocket, clicks, poles });
        };
        put(Where::CoverBack, &wheel.cover_pocket, false);
        put(Where::WheelFace, &wheel.pocket, false);
        if let Some(ring) = &wheel.clicks {
            ring.cover.iter().for_each(|pocket| put(Where::CoverBack, pocket, true));
            ring.wheel.iter().for_each(|pocket| put(Where::WheelFace, pocket, true));
        }
    }
    plan
}

/// What a pocket of a part does to the marked face, where every cover does `covers`.
pub fn marked_face(part: Where, covers: Poles) -> Poles {
    match part {
        Where::CoverBack => covers,
        Where::WheelFace => covers.reversed(),
    }
}

/// How many magnets of each kind a dial takes: glued in, the master, spares.
pub fn count(dial: &Dial) -> Vec<(Disc, Count)> {
    let mut all: Vec<(Disc, Count)> = Vec::new();
    let mut add = |disc: &Disc, n: usize| match all.iter_mut().find(|one| one.0 == *disc) {
        Some(one) => one.1.glued += n,
        None => all.push((*disc, Count { glued: n, master: 0, spares: 0 })),
    };
    for wheel in &dial.wheels {
        add(&wheel.seat.cover, 1);
        add(&wheel.seat.wheel, 1);
        if let Some(ring) = &wheel.clicks {
            add(&ring.disc, ring.wheel.len() + ring.cover.len());
        }
    }
    for (k, (_, count)) in all.iter_mut().enumerate() {
        count.master = usize::from(k == 0);
        count.spares = dial.spares.unwrap_or(count.glued.div_ceil(10).max(2));
    }
    all
}

/// Magnets of one kind.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Count {
    /// Glued into pockets.
    pub glued: usize,
    /// In the pole gauge.
    pub master: usize,
    /// To have at hand: they chip, roll away and go in the wrong way round.
    pub spares: usize,
}

impl Count {
    /// All of them.
    pub fn all(&self) -> usize {
        self.glued + self.master + self.spares
    }
}

impl Where {
    /// The place in words.
    pub fn words(self) -> &'static str {
        match self {
            Where::CoverBack => "cover's back",
            Where::WheelFace => "wheel's face",
        }
    }
}
