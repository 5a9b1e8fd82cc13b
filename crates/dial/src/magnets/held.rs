//! How one wheel is held: pull, turning, keeping, drift and rest, each as what is likely and between what it may come out.

use super::build::{Build, Closed};
use crate::assembled::Dial;
use crate::turning::TurnTest;
use process::Feel;

/// Standard gravity in m/s².
const G: f64 = 9.80665;
/// A wheel this near to its middle counts as centred.
const CENTRED: f64 = 0.05;

/// A figure with what it may come out as.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Range {
    /// The least.
    pub low: f64,
    /// What is likely: pockets as wanted, grade and bow in the middle, friction in the geometric middle.
    pub likely: f64,
    /// The most; infinite where it is pushed off.
    pub high: f64,
}

/// What a wheel does, in a word.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
#[expect(missing_docs, reason = "the names say it")]
pub enum Verdict {
    EasyAndKeeps,
    SlipsByItself,
    Stiff,
    WillNotTurn,
    DoesNotCentre,
}

/// What is likely of a pair in its seat.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Likely {
    /// Pull in N.
    pub pull: f64,
    /// Force at the rim that turns it, in N.
    pub effort: f64,
    /// Where one finger pushes it to while it turns; `None` where it is pushed off.
    pub drift: Option<f64>,
    /// Acceleration along the face that throws it off its seat, in multiples of gravity.
    pub thrown_at: f64,
    /// In a word.
    pub verdict: Verdict,
}

/// How one wheel is held.
#[derive(Clone, Debug, PartialEq)]
pub struct Held {
    /// The pair in its seat.
    pub build: Build,
    /// What is likely.
    pub likely: Likely,
    /// What touches, most likely.
    pub contact: super::Contact,
    /// Friction of what touches.
    pub friction: measure::Interval,
    /// Distance between the magnets' faces.
    pub gap: Range,
    /// Pull in N.
    pub pull: Range,
    /// Force at the rim that turns it, in N.
    pub effort: Range,
    /// Where one finger pushes it to while it turns; two opposite fingers push it nowhere.
    pub drift: Range,
    /// How far off centre friction lets it rest after a knock.
    pub rest: Range,
    /// Angle of turning that centres it again from there.
    pub centred_by: Range,
    /// Centring stiffness in N/mm.
    pub stiffness: f64,
    /// Where it comes to rest without friction, if the pair is unequal and not on its axis.
    pub rests_aside: Option<f64>,
    /// Acceleration along the face at which it begins to slip aside, in multiples of gravity; it is drawn back by the next turn.
    pub slips_at: f64,
    /// Acceleration away from the cover at which it lifts off, in multiples of gravity.
    pub lifts_at: f64,
    /// Height in m from which it may fall on its edge before it is knocked off its seat.
    pub drop: f64,
    /// How hard a finger must press on the rim to turn it, in N.
    pub press: f64,
    /// How hard it may press in the notch, away from the cover, before the wheel tips.
    pub tips_outwards: f64,
    /// How hard the rim may be pressed against the cover before the wheel tips; never where the whole face touches.
    pub tips_inwards: Option<f64>,
    /// Sideways drift that the wheel's windows forgive.
    pub forgives: f64,
}

/// The geometric middle of an interval of friction.
fn middle(friction: measure::Interval) -> f64 {
    (friction.low * friction.high).sqrt()
}

impl Build {
    /// What is likely, against the limits of a hand and what the windows forgive of drift.
    pub fn likely(&self, feel: &Feel, forgives: f64) -> Option<Likely> {
        self.likely_at(self.clear(), feel, forgives)
    }

    pub(super) fn likely_at(&self, clear: f64, feel: &Feel, forgives: f64) -> Option<Likely> {
        let closed = self.closed(clear, self.flatness / 2.0, 0.5)?;
        let friction = middle(closed.friction);
        let pull = closed.pull();
        let effort = self.effort(&closed, friction, closed.contact.new_faces());
        let drift = closed.pushed_to(effort);
        let thrown_at = closed.barrier(friction).1 / (self.mass * 1e-3 * G);
        let on_axis = closed.pair.stiffness(closed.gap) > 0.0;
        let verdict = verdict(feel, on_axis, effort, drift, thrown_at, forgives);
        Some(Likely { pull, effort, drift, thrown_at, verdict })
    }

    fn effort(&self, closed: &Closed, friction: f64, arm: f64) -> f64 {
        friction * closed.pull() * arm / self.rim
    }
}

fn verdict(feel: &Feel, on_axis: bool, effort: f64, drift: Option<f64>, thrown_at: f64, forgives: f64) -> Verdict {
    match drift {
        _ if !on_axis => Verdict::DoesNotCentre,
        None => Verdict::WillNotTurn,
        _ if effort > feel.turn_most => Verdict::WillNotTurn,
        _ if effort > feel.turn_stiff => Verdict::Stiff,
        _ if effort < feel.turn_least || thrown_at < feel.shake => Verdict::SlipsByItself,
        Some(drift) if drift > forgives => Verdict::DoesNotCentre,
        _ => Verdict::EasyAndKeeps,
    }
}

/// How every wheel of a dial is held. Wheels that are built alike are computed once.
pub fn hold_all(dial: &Dial, turns: &TurnTest, feel: &Feel) -> Vec<Option<Held>> {
    let mut known: Vec<(Build, f64, Option<Held>)> = Vec::new();
    let builds = dial.wheels.iter().zip(&turns.wheels);
    builds
        .map(|(wheel, turned)| {
            let build = Build::of(wheel);
            let forgives = turned.stops.iter().map(|stop| stop.slack_drift).fold(f64::INFINITY, f64::min);
            // To a tenth of a micron: below lies the noise of the layout, and alike wheels are alike.
            let forgives = (forgives * 1e4).round() / 1e4;
            let before = known.iter().find(|one| one.0 == build && one.1 == forgives);
            if let Some((_, _, held)) = before {
                return held.clone();
            }
            let held = hold(&build, feel, forgives);
            known.push((build, forgives, held.clone()));
            held
        })
        .collect()
}

/// How one wheel is held, against the limits of a hand and what its windows forgive of drift. `None` for magnets that cannot be.
pub fn hold(build: &Build, feel: &Feel, forgives: f64) -> Option<Held> {
    let likely = build.likely(feel, forgives)?;
    let clear = build.clear();
    let closed = build.closed(clear, build.flatness / 2.0, 0.5)?;
    let friction = middle(closed.friction);
    let rest = closed.rests_within(friction);
    let mut gap = Range::of(clear.max(0.0) + if clear >= 0.0 { build.flatness / 2.0 } else { 0.0 });
    let mut pull = Range::of(likely.pull);
    let mut effort = Range::of(likely.effort);
    let mut drift = Range::of(likely.drift.unwrap_or(f64::INFINITY));
    let mut rests = Range::of(rest);
    let mut centred_by = Range::of(closed.centred_by(friction, rest, CENTRED));
    for clear in build.may_come(clear) {
        // The easiest comes of flat faces that are run in and slippery, the hardest of sticky ones that are bowed and touch at their
        // edge alone.
        for (bow, sticky) in [(0.0, false), (build.flatness, true)] {
            for strength in [0.0, 1.0] {
                let Some(case) = build.closed(clear, bow, strength) else { continue };
                gap.take(if clear >= 0.0 { clear + bow } else { 0.0 });
                pull.take(case.pull());
                let bowed = case.contact.touch != super::Touch::Magnets && bow > 0.0;
                let (friction, arm) = match (sticky, bowed) {
                    (false, _) => (case.friction.low, case.contact.run_in()),
                    (true, false) => (case.friction.high, case.contact.new_faces()),
                    (true, true) => (case.friction.high, case.contact.outer),
                };
                effort.take(build.effort(&case, friction, arm));
                // Drift, rest and centring go with ratios of forces: the grade falls out.
                if strength == 0.0 {
                    drift.take(case.pushed_to(build.effort(&case, friction, arm)).unwrap_or(f64::INFINITY));
                    let rest = case.rests_within(friction);
                    rests.take(rest);
                    centred_by.take(case.centred_by(friction, rest, CENTRED));
                }
            }
        }
        // Of flat faces the pull is greatest where they are sticky, too.
        if let Some(case) = build.closed(clear, 0.0, 1.0) {
            effort.take(build.effort(&case, case.friction.high, case.contact.new_faces()));
        }
    }
    let (contact, weight) = (closed.contact, build.mass * 1e-3 * G);
    let near_edge = build.rim - contact.outer;
    let centring = closed.pair.centres(closed.gap);
    Some(Held {
        likely,
        contact,
        friction: closed.friction,
        gap,
        pull,
        effort,
        drift,
        rest: rests,
        centred_by,
        stiffness: centring.stiffness,
        rests_aside: centring.rest.filter(|rest| *rest > 0.0),
        slips_at: friction * likely.pull / weight,
        lifts_at: likely.pull / weight,
        drop: closed.barrier(friction).0 * 1e-3 / weight,
        press: likely.effort / feel.finger,
        // About the far edge of what touches, and about the near one.
        tips_outwards: likely.pull * contact.outer / (build.rim + contact.outer),
        tips_inwards: (near_edge > 1e-6).then(|| likely.pull * contact.outer / near_edge),
        forgives,
        build: build.clone(),
    })
}

/// The wheel that is hardest to hold: whose drift is the largest share of what its windows forgive.
pub fn hardest(held: &[Option<Held>]) -> Option<usize> {
    let share = |held: &Held| held.likely.drift.map_or(f64::INFINITY, |drift| drift / held.forgives.max(1e-9));
    let known = held.iter().enumerate().filter_map(|(i, held)| held.as_ref().map(|held| (i, share(held))));
    // Of all but equals the first.
    known.reduce(|worst, one| if one.1 > 1.001 * worst.1 { one } else { worst }).map(|(i, _)| i)
}

impl Build {
    /// Distances between the magnets' faces that may come out: both pockets too shallow, both too deep, and, where the magnets might
    /// touch, just not touching: there the pull on the faces is greatest.
    fn may_come(&self, clear: f64) -> Vec<f64> {
        let (low, high) = (clear - 2.0 * self.within, clear + 2.0 * self.within);
        let mut all = vec![low, high];
        if low < 0.0 && high > 0.0 {
            all.push(0.0);
        }
        all
    }
}

impl Range {
    fn of(value: f64) -> Range {
        Range { low: value, likely: value, high: value }
    }

    fn take(&mut self, value: f64) {
        self.low = self.low.min(value);
        self.high = self.high.max(value);
    }
}

impl Verdict {
    /// The verdict in words.
    pub fn words(self) -> &'static str {
        match self {
            Verdict::EasyAndKeeps => "easy and keeps",
            Verdict::SlipsByItself => "slips by itself",
            Verdict::Stiff => "stiff",
            Verdict::WillNotTurn => "will not turn",
            Verdict::DoesNotCentre => "does not centre",
        }
    }
}
