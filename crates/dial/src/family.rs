//! A family of dials: which wheel fits which place of which cover, and why not.

use crate::assembled::{Dial, Wheel};
use crate::magnets::{Build, Verdict};
use crate::turning;
use outline::Motion;
use process::Feel;

/// Another dial of the family.
#[derive(Clone, Debug)]
pub struct Member {
    /// What it is called: its name, or its file's.
    pub name: String,
    /// The dial.
    pub dial: Dial,
    /// Whether it is the standard that the others must fit.
    pub standard: bool,
}

/// A wheel in a place.
#[derive(Clone, Debug)]
pub struct Fit {
    /// The dial whose wheel it is, and which; by index.
    pub wheel: (usize, usize),
    /// The dial whose cover it is, and which place; by index.
    pub place: (usize, usize),
    /// Why it does not fit; empty when it does.
    pub why_not: Vec<String>,
}

/// Sizes that differ by less are alike: what the beam scatters (common practice for laser-cut wood: 0.1 mm).
const ALIKE: f64 = 0.1;
/// Wheels whose thickness differs by more stand out or in at the back (our own proposal).
const THICKNESS: f64 = 0.35;

/// Every wheel of every dial tried in every place of every cover.
pub fn fits(dials: &[&Dial], feel: &Feel) -> Vec<Fit> {
    let each = |d: usize| (0..dials[d].wheels.len()).map(move |i| (d, i));
    let all: Vec<(usize, usize)> = (0..dials.len()).flat_map(each).collect();
    let pairs = all.iter().flat_map(|wheel| all.iter().map(move |place| (*wheel, *place)));
    pairs
        .map(|(wheel, place)| {
            let why_not = if wheel == place {
                Vec::new()
            } else {
                why_not(&dials[wheel.0].wheels[wheel.1], dials[place.0], place.1, feel)
            };
            Fit { wheel, place, why_not }
        })
        .collect()
}

/// Why a wheel does not fit a place of a cover: poles, pocket, seat, thickness, rim, window.
pub fn why_not(wheel: &Wheel, cover: &Dial, place: usize, feel: &Feel) -> Vec<String> {
    let own = &cover.wheels[place];
    let mm = |length: f64| measure::show(length, cover.show);
    let mut why = Vec::new();
    if wheel.seat.poles != own.seat.poles {
        why.push("its magnet is the other way round: the cover would push it off".into());
    }
    let differ = |what: &str, a: f64, b: f64, by: f64| {
        ((a - b).abs() > by).then(|| format!("{what}: {} against {} there", mm(a), mm(b)))
    };
    let (mine, theirs) = (Build::of(wheel), Build::of(own));
    why.extend(differ("another magnet across", wheel.seat.wheel.diameter, own.seat.wheel.diameter, ALIKE));
    why.extend(differ("another seat, its magnet lies under the face by", mine.under.1, theirs.under.1, ALIKE));
    why.extend(differ("another thickness", wheel.stock.thickness(), own.stock.thickness(), THICKNESS));
    why.extend(differ(
        "another radius, so that its rim stands otherwise in the notch",
        wheel.radius,
        own.radius,
        ALIKE,
    ));
    match (&wheel.clicks, &own.clicks) {
        (None, None) => {}
        (Some(a), Some(b)) if (a.radius - b.radius).abs() <= ALIKE && a.wheel.len() == b.wheel.len() => {}
        _ => why.push("its clicks are not those of the place".into()),
    }
    let there = placed(wheel, own);
    why.extend(in_the_window(&there));
    let held = Build::of(&there).likely(feel, f64::INFINITY);
    if let Some(verdict) = held.map(|held| held.verdict).filter(|verdict| *verdict != Verdict::EasyAndKeeps) {
        why.push(format!("there it is or does: {}", verdict.words()));
    }
    why
}

/// The wheel as it lies in another place: its own marks and magnet, the place's window, notch and cover pocket.
fn placed(wheel: &Wheel, own: &Wheel) -> Wheel {
    let turn = Motion::turn(own.centre, own.window.angle - wheel.window.angle);
    let lay = Motion::shift(own.centre - wheel.centre).then(&turn);
    let mut there = wheel.clone();
    for mark in &mut there.marks {
        mark.shape = mark.shape.moved(&lay);
        mark.up = lay.apply_vec(mark.up);
    }
    there.rim = wheel.rim.moved(&lay);
    there.centre = own.centre;
    there.pocket.centre = own.centre;
    there.window = own.window.clone();
    there.notch = own.notch.clone();
    there.cover_pocket = own.cover_pocket;
    there.seat.cover = own.seat.cover;
    there
}

/// What the turn test says of a wheel in another's window, its gravest fault.
fn in_the_window(there: &Wheel) -> Option<String> {
    use turning::Fault;
    let turns = turning::turn_wheel(there);
    let failing = |matches: fn(&Fault) -> bool| {
        let stops = turns.stops.iter().filter(|stop| stop.faults.iter().any(matches));
        let words: Vec<&str> = stops.map(|stop| stop.words.as_str()).collect();
        (!words.is_empty()).then(|| (words[0].to_owned(), words.len()))
    };
    let of = turns.stops.len();
    let lean = turns.stops.iter().map(|stop| stop.lean.to_degrees()).fold(0.0, f64::max);
    if failing(|fault| matches!(fault, Fault::Leans)).is_some() {
        return Some(format!("its marks would stand turned by {lean:.0}\u{b0} in that window"));
    }
    if let Some((first, n)) = failing(|fault| matches!(fault, Fault::NotWhole)) {
        return Some(format!("in that window “{first}” is not whole ({n} of {of} stops)"));
    }
    failing(|fault| matches!(fault, Fault::NotAlone(_)))
        .map(|(first, n)| format!("in that window “{first}” is not alone ({n} of {of} stops)"))
}
