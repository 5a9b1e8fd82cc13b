//! Whether each wheel turns easily and keeps its number.

use super::{Bench, Finding, Part, Quantity, Severity};
use crate::magnets::{Held, Verdict};

/// Said of wheels that are held alike, once.
pub(super) fn check(bench: &Bench) -> Vec<Finding> {
    let mut groups: Vec<(&Held, Vec<usize>)> = Vec::new();
    for (i, held) in bench.held.iter().enumerate() {
        let Some(held) = held else { continue };
        match groups.iter_mut().find(|group| group.0 == held) {
            Some(group) => group.1.push(i),
            None => groups.push((held, vec![i])),
        }
    }
    let groups = groups.iter();
    groups
        .flat_map(|(held, wheels)| {
            [Some(verdict(bench, held, wheels)), tips(bench, held, wheels), pin(bench, held, wheels)]
        })
        .flatten()
        .collect()
}

fn names(bench: &Bench, wheels: &[usize]) -> String {
    wheels.iter().map(|i| bench.dial.wheels[*i].name.as_str()).collect::<Vec<_>>().join(", ")
}

fn verdict(bench: &Bench, held: &Held, wheels: &[usize]) -> Finding {
    let mm = |length: f64| if length.is_finite() { bench.show(length) } else { "off its seat".into() };
    let (likely, feel) = (&held.likely, &bench.workshop.feel);
    let drift = likely.drift.unwrap_or(f64::INFINITY);
    let figures = format!(
        "{:.1} N at the rim turn it ({:.1} to {:.1} N); the pair pulls with {:.1} N; one finger pushes it {} off centre while it turns ({} to {}), the windows forgive {}; friction lets it rest up to {} off, {}",
        likely.effort,
        held.effort.low,
        held.effort.high,
        likely.pull,
        mm(drift),
        mm(held.drift.low),
        mm(held.drift.high),
        mm(held.forgives),
        mm(held.rest.likely),
        centred_by(held),
    );
    let (limit, mend) = match likely.verdict {
        Verdict::EasyAndKeeps => (feel.turn_stiff, ""),
        Verdict::SlipsByItself => (
            feel.turn_least,
            "choose stronger magnets or shallower pockets, or let the whole face touch; `dialwright magnets` tries those on your shelf",
        ),
        Verdict::Stiff => (
            feel.turn_stiff,
            "choose weaker magnets or deeper pockets, or let a ring alone touch (`magnet.ring`); `dialwright magnets` tries those on your shelf",
        ),
        Verdict::WillNotTurn => (
            feel.turn_most,
            "let a ring alone touch (`magnet.ring`) or the magnets (`magnet.seat = \"proud\"`), or choose weaker ones; `dialwright magnets` tries those on your shelf",
        ),
        Verdict::DoesNotCentre => (
            feel.turn_stiff,
            "choose two equal magnets, nearer to each other, let a ring alone touch (`magnet.ring`), or ask for more `mark.margin` and `mark.clear`",
        ),
    };
    let why = if likely.verdict == Verdict::SlipsByItself && likely.effort >= feel.turn_least {
        format!(
            "shaken with {:.0} g it is thrown off its seat, {:.0} g asked ({:.0} g of wheel); ",
            likely.thrown_at, feel.shake, held.build.mass
        )
    } else {
        String::new()
    };
    Finding {
        rule: "turning and keeping",
        severity: if likely.verdict == Verdict::EasyAndKeeps { Severity::Note } else { Severity::Mend },
        what: format!("{}: {}: {why}{figures}", names(bench, wheels), likely.verdict.words()),
        measured: Some(Quantity::Force(likely.effort)),
        limit: Some(Quantity::Force(limit)),
        part: Part::Wheel(wheels[0]),
        place: Some(bench.dial.wheels[wheels[0]].centre),
        source: "rigid discs (Robertson et al. 2011, Vokoun et al. 2009), pivot friction; limits of the workshop file: our own proposal, MIL-STD-1472E figure 6",
        mend: mend.into(),
        remedies: Vec::new(),
        keys: vec!["magnet.diameter".into(), "magnet.seat".into()],
    }
}

fn centred_by(held: &Held) -> String {
    match held.centred_by.likely {
        angle if angle.is_finite() => format!("{:.0}\u{b0} of turning centre it again", angle.to_degrees()),
        _ => "and no turning centres it".into(),
    }
}

/// A finger that turns the wheel presses on it: not so hard that it tips away from the cover.
fn tips(bench: &Bench, held: &Held, wheels: &[usize]) -> Option<Finding> {
    (held.press > held.tips_outwards && held.likely.verdict != Verdict::WillNotTurn).then(|| Finding {
        rule: "tipping",
        severity: Severity::Mend,
        what: format!(
            "{}: to turn it a finger presses on its rim with {:.1} N (friction of the finger {}), {:.1} N tip it away from the cover, since only {} within {} of its middle touches",
            names(bench, wheels),
            held.press,
            bench.workshop.feel.finger,
            held.tips_outwards,
            held.contact.touch.words(),
            bench.show(held.contact.outer),
        ),
        measured: Some(Quantity::Force(held.press)),
        limit: Some(Quantity::Force(held.tips_outwards)),
        part: Part::Wheel(wheels[0]),
        place: Some(bench.dial.wheels[wheels[0]].notch.mouth),
        source: "balance of moments about the far edge of what touches; the finger's friction: Seo et al., Ergonomics 52 (2009)",
        mend: "let a wider ring touch, or the whole face; a wheel that lies on the table does not tip".into(),
        remedies: Vec::new(),
        keys: vec!["magnet.ring".into(), "magnet.seat".into()],
    })
}

/// A magnet that stands out must go into the pocket opposite.
fn pin(bench: &Bench, held: &Held, wheels: &[usize]) -> Option<Finding> {
    let stands = held.build.under.0.min(held.build.under.1) < 0.0 && held.build.clear() > 0.0;
    (stands && held.build.play() < 0.0).then(|| Finding {
        rule: "pin and socket",
        severity: Severity::Mend,
        what: format!(
            "{}: the magnet that stands out is {} too wide for the pocket opposite",
            names(bench, wheels),
            bench.show(-2.0 * held.build.play())
        ),
        measured: Some(Quantity::Length(held.build.play())),
        limit: Some(Quantity::Length(0.0)),
        part: Part::Wheel(wheels[0]),
        place: Some(bench.dial.wheels[wheels[0]].centre),
        source: "it cannot go in",
        mend: "choose magnets of one diameter, or let the smaller stand out".into(),
        remedies: Vec::new(),
        keys: vec!["magnet.wheel_diameter".into(), "magnet.diameter".into()],
    })
}
