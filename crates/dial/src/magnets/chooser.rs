//! The chooser: which of the workshop's magnets do the job for this dial, best first, and why the others do not.

use super::held::{Likely, hardest};
use super::{Build, Verdict};
use crate::Looked;
use crate::assembled::{Dial, Disc, Wheel};
use crate::findings::FLOOR;
use crate::layout::{WINDOW_TO_POCKET, free_radius};
use process::{Feel, ShelfMagnet, Workshop};

/// Rim forces that are comfortable (our own proposal), in N.
const COMFORTABLE: (f64, f64) = (0.3, 1.5);
/// How far from the wanted distance the tolerance band is looked for, and how finely.
const BAND: (f64, f64) = (0.8, 0.1);

/// A pair from the shelf, tried in this dial's seat.
#[derive(Clone, Debug)]
pub struct Candidate {
    /// The cover's magnet.
    pub cover: ShelfMagnet,
    /// The wheel's magnet.
    pub wheel: ShelfMagnet,
    /// Depths of the pockets in cover and wheel that its seat needs.
    pub depths: (f64, f64),
    /// What is likely.
    pub likely: Likely,
    /// How much nearer and how much farther apart the magnets may come before it is no longer easy and keeping.
    pub band: (f64, f64),
    /// Price of one pair, in the maker's own money.
    pub price: Option<f64>,
    /// Whether it does the job.
    pub choice: Choice,
}

/// Whether a pair does the job.
#[derive(Clone, Debug, PartialEq)]
pub enum Choice {
    /// It does.
    Does,
    /// It does not: why.
    Fails(String),
}

/// What the workshop's shelf offers for the wheel that is hardest to hold; best first.
pub fn choose(looked: &Looked, workshop: &Workshop) -> Vec<Candidate> {
    let Some((wheel, held)) = hardest(&looked.held).and_then(|i| Some((i, looked.held[i].as_ref()?))) else {
        return Vec::new();
    };
    let dial = &looked.laid.dial;
    candidates(dial, &dial.wheels[wheel], &workshop.magnets, &workshop.feel, held.forgives)
}

/// All equal pairs from the shelf, and the unequal ones that differ by one size, tried for the wheel that is hardest to hold; best first.
pub fn candidates(dial: &Dial, wheel: &Wheel, shelf: &[ShelfMagnet], feel: &Feel, forgives: f64) -> Vec<Candidate> {
    let bench = Bench {
        dial,
        wheel,
        build: Build::of(wheel),
        room: free_radius(wheel).min(wheel.window.edge.nearest_to(wheel.centre) - WINDOW_TO_POCKET),
        feel,
        forgives,
    };
    let mut all: Vec<Candidate> = shelf.iter().filter_map(|one| bench.tried(one, one)).collect();
    let unequal = shelf.iter().flat_map(|cover| shelf.iter().map(move |wheel| (cover, wheel)));
    // The larger in the cover, where a deep pocket hurts less; of one grade, since nobody mixes those on purpose.
    let unequal =
        unequal.filter(|(cover, wheel)| cover.diameter > wheel.diameter && cover.remanence == wheel.remanence);
    all.extend(unequal.filter_map(|(cover, wheel)| bench.tried(cover, wheel)));
    all.sort_by(|a, b| rank(a, &bench).partial_cmp(&rank(b, &bench)).unwrap_or(std::cmp::Ordering::Equal));
    all
}

struct Bench<'a> {
    dial: &'a Dial,
    wheel: &'a Wheel,
    build: Build,
    room: f64,
    feel: &'a Feel,
    forgives: f64,
}

impl Bench<'_> {
    fn tried(&self, cover: &ShelfMagnet, wheel: &ShelfMagnet) -> Option<Candidate> {
        let disc =
            |one: &ShelfMagnet| Disc { diameter: one.diameter, thickness: one.thickness, remanence: one.remanence };
        let build = self.build.with(disc(cover), disc(wheel));
        let likely = build.likely(self.feel, self.forgives)?;
        let glue = self.wheel.seat.glue;
        let depths = (cover.thickness + glue + build.under.0, wheel.thickness + glue + build.under.1);
        let why = self.why_not(&build, depths, &likely);
        let choice = why.map_or(Choice::Does, Choice::Fails);
        let band = if choice == Choice::Does { self.band(&build) } else { (0.0, 0.0) };
        let price = cover.price.zip(wheel.price).map(|(cover, wheel)| cover + wheel);
        Some(Candidate { cover: cover.clone(), wheel: wheel.clone(), depths, likely, band, price, choice })
    }

    fn why_not(&self, build: &Build, depths: (f64, f64), likely: &Likely) -> Option<String> {
        let mm = |length: f64| measure::show(length, self.dial.show);
        if !build.centres() {
            return Some("does not centre: the smaller is drawn to the rim of the larger".into());
        }
        let pocket = (build.cover.diameter.max(build.wheel.diameter) - self.build.cover.diameter) / 2.0
            + self.wheel.cover_pocket.reach();
        if pocket > self.room + 1e-9 {
            return Some(format!("a pocket of {} comes too near the marks or the window", mm(2.0 * pocket)));
        }
        for (depth, stock, part) in
            [(depths.0, &self.dial.cover.stock, "cover"), (depths.1, &self.wheel.stock, "wheel")]
        {
            let floor = stock.thinnest() - depth;
            if floor < FLOOR {
                let words = if floor <= 0.0 { "goes through the" } else { "shows through the" };
                return Some(format!(
                    "a pocket of {} {words} {part} when it comes {} thick",
                    mm(depth),
                    mm(stock.thinnest())
                ));
            }
        }
        let newtons = |force: f64| format!("{force:.2} N");
        match likely.verdict {
            Verdict::EasyAndKeeps => None,
            Verdict::Stiff => {
                Some(format!("stiff: {} at the rim, {} at most", newtons(likely.effort), newtons(self.feel.turn_stiff)))
            }
            Verdict::WillNotTurn => Some(match likely.drift {
                Some(_) => format!(
                    "will not turn: {} at the rim, {} at most",
                    newtons(likely.effort),
                    newtons(self.feel.turn_most)
                ),
                None => "will not turn: one finger pushes it off its place first".into(),
            }),
            Verdict::SlipsByItself if likely.effort < self.feel.turn_least => Some(format!(
                "slips by itself: {} at the rim, {} at least",
                newtons(likely.effort),
                newtons(self.feel.turn_least)
            )),
            Verdict::SlipsByItself => Some(format!(
                "slips by itself: thrown off when shaken with {:.0} g, {:.0} g at least",
                likely.thrown_at, self.feel.shake
            )),
            Verdict::DoesNotCentre => Some(format!(
                "one finger pushes it {} off centre, the windows forgive {}",
                mm(likely.drift.unwrap_or(f64::INFINITY)),
                mm(self.forgives)
            )),
        }
    }

    /// How far the magnets may come nearer or farther apart and still do.
    fn band(&self, build: &Build) -> (f64, f64) {
        let (most, step) = BAND;
        let does = |off: f64| {
            let likely = build.likely_at(build.clear() + off, self.feel, self.forgives);
            likely.is_some_and(|likely| likely.verdict == Verdict::EasyAndKeeps)
        };
        let reach = |way: f64| {
            let steps = (1..=(most / step).round() as usize).take_while(|k| does(way * step * *k as f64));
            steps.count() as f64 * step
        };
        (reach(-1.0), reach(1.0))
    }
}

/// What decides between two: whether they do, whether they are equal discs, which centre best and cannot be mixed up, whether they still do when both pockets come out wrong, comfort, price.
fn rank(one: &Candidate, bench: &Bench) -> (u8, u8, u8, f64, f64, f64) {
    let wander = 2.0 * bench.build.within;
    let holds = one.band.0.min(one.band.1) >= wander - 1e-9;
    let effort = one.likely.effort;
    let uncomfortable = (COMFORTABLE.0 / effort).max(effort / COMFORTABLE.1).max(1.0);
    (
        u8::from(one.choice != Choice::Does),
        u8::from(one.cover.diameter != one.wheel.diameter),
        u8::from(!holds),
        uncomfortable,
        one.price.unwrap_or(f64::INFINITY),
        one.likely.drift.unwrap_or(f64::INFINITY),
    )
}
