//! The turn test's results as findings: one for each kind of fault of each wheel, and the dial's slack.

use super::{Bench, Finding, Part, Quantity, Severity};
use crate::turning::{Fault, Other, Stop, WheelTurns};

/// Sideways play that a centred magnet pair leaves a wheel in use (our own proposal: a flush pair of 6 x 2 mm discs
/// is pushed about half a millimetre off centre by one finger).
const DRIFT: f64 = 0.3;
pub(super) fn check(bench: &Bench) -> Vec<Finding> {
    let mut findings = Vec::new();
    for (i, wheel) in bench.turns.wheels.iter().enumerate() {
        findings.extend(faults(bench, i, wheel));
    }
    findings.extend(slack(bench));
    findings
}

/// Words, measured value and limit.
type Says = (String, Option<Quantity>, Option<Quantity>);

/// Faults of one kind, gathered over the stops of a wheel.
struct Kind {
    matches: fn(&Fault) -> bool,
    severity: Severity,
    says: fn(&Bench, usize, &Stop) -> Says,
    mend: &'static str,
    key: &'static str,
    worst: fn(&Stop) -> f64,
}

const KINDS: &[Kind] = &[
    Kind {
        matches: |fault| matches!(fault, Fault::NotWhole),
        severity: Severity::Refuse,
        says: |_, _, stop| {
            let seen = Quantity::Share(stop.seen);
            (
                format!("only {} of “{}” is seen", seen.show(Default::default()), stop.words),
                Some(seen),
                Some(Quantity::Share(1.0)),
            )
        },
        mend: "make the window larger, the marks smaller, or leave the window's size and distance to the layout",
        key: "window",
        worst: |stop| stop.seen,
    },
    Kind {
        matches: |fault| matches!(fault, Fault::NotAlone(_)),
        severity: Severity::Refuse,
        says: |bench, i, stop| {
            let what = other_words(bench, i, &stop.other);
            (format!("{what} is seen beside “{}”", stop.words), None, None)
        },
        mend: "make the wheel larger, the marks smaller, or the window narrower",
        key: "window",
        worst: |stop| stop.other_distance,
    },
    Kind {
        matches: |fault| matches!(fault, Fault::OutOfOrder),
        severity: Severity::Refuse,
        says: |_, _, stop| (format!("after “{}” the next mark comes from the wrong side", stop.words), None, None),
        mend: "set `running` for this counter as you want the numbers to run",
        key: "running",
        worst: |_| 0.0,
    },
    Kind {
        matches: |fault| matches!(fault, Fault::Tight),
        severity: Severity::Mend,
        says: |bench, i, stop| {
            let asked = bench.dial.wheels[i].asked.margin;
            let what = format!(
                "“{}” stands {} from the window's edge, {} asked",
                stop.words,
                bench.show(stop.margin),
                bench.show(asked)
            );
            (what, Some(Quantity::Length(stop.margin)), Some(Quantity::Length(asked)))
        },
        mend: "make the window larger, the marks smaller, or ask for less `mark.margin`",
        key: "mark.margin",
        worst: |stop| stop.margin,
    },
    Kind {
        matches: |fault| matches!(fault, Fault::Close(_)),
        severity: Severity::Mend,
        says: |bench, i, stop| {
            let asked = bench.dial.wheels[i].asked.clear;
            let what = other_words(bench, i, &stop.other);
            let says = format!(
                "{what} comes within {} of the window when “{}” is shown, {} asked",
                bench.show(stop.other_distance),
                stop.words,
                bench.show(asked)
            );
            (says, Some(Quantity::Length(stop.other_distance)), Some(Quantity::Length(asked)))
        },
        mend: "make the wheel larger, the marks smaller, or ask for less `mark.clear`",
        key: "mark.clear",
        worst: |stop| stop.other_distance,
    },
    Kind {
        matches: |fault| matches!(fault, Fault::Leans),
        severity: Severity::Mend,
        says: |_, _, stop| {
            let lean = Quantity::Angle(stop.lean);
            (format!("“{}” leans {}", stop.words, lean.show(Default::default())), Some(lean), None)
        },
        mend: "leave the window's angle to the layout",
        key: "window.angle",
        worst: |stop| -stop.lean,
    },
    Kind {
        matches: |fault| matches!(fault, Fault::NeighbourHidden),
        severity: Severity::Mend,
        says: |_, _, stop| {
            (format!("too little of the neighbours of “{}” is seen for setting by eye", stop.words), None, None)
        },
        mend: "leave the window's width to the layout, or ask for less `window.neighbour_share`",
        key: "window.neighbour_share",
        worst: |_| 0.0,
    },
];

fn faults(bench: &Bench, i: usize, wheel: &WheelTurns) -> Vec<Finding> {
    let mut findings = Vec::new();
    for kind in KINDS {
        let failing: Vec<&Stop> = wheel.stops.iter().filter(|stop| stop.faults.iter().any(kind.matches)).collect();
        let Some(worst) = failing.iter().min_by(|a, b| (kind.worst)(a).total_cmp(&(kind.worst)(b))) else {
            continue;
        };
        let (says, measured, limit) = (kind.says)(bench, i, worst);
        let also = match failing.len() {
            1 => String::new(),
            n => format!("; {n} of {} stops fail so, this is the worst", wheel.stops.len()),
        };
        findings.push(Finding {
            rule: "turn test",
            severity: kind.severity,
            what: format!("{}: {says}{also}", wheel.name),
            measured,
            limit,
            part: Part::Window(i),
            place: Some(worst.margin_at),
            source: "the dial file's own margins; every number whole, upright and alone is what the dial is for",
            mend: kind.mend.into(),
            keys: vec![format!("counter[{i}].{}", kind.key), kind.key.into()],
        });
    }
    findings
}

fn other_words(bench: &Bench, i: usize, other: &Other) -> String {
    match other {
        Other::Mark(j) => format!("“{}”", bench.dial.wheels[i].marks[*j].words),
        Other::Rim => "the wheel's rim".into(),
        Other::Pocket => "the magnet's pocket".into(),
    }
}

fn slack(bench: &Bench) -> Option<Finding> {
    if !bench.turns.passes() {
        return None;
    }
    let slack = bench.turns.slack();
    let (w, k) = slack.angle_at;
    let (dw, dk) = slack.drift_at;
    let at =
        |w: usize, k: usize| format!("“{}” of {}", bench.turns.wheels[w].stops[k].words, bench.turns.wheels[w].name);
    // Setting by eye is as good at every radius: what counts is how far the mark moves.
    let travel = slack.angle * bench.dial.wheels[w].window.distance;
    let little = slack.drift < DRIFT || travel < DRIFT;
    Some(Finding {
        rule: "slack",
        severity: if little { Severity::Mend } else { Severity::Note },
        what: format!(
            "every stop passes; the dial forgives {} of turning ({} at the mark; least at {}) and {} of sideways drift (least at {})",
            Quantity::Angle(slack.angle).show(bench.dial.show),
            bench.show(travel),
            at(w, k),
            bench.show(slack.drift),
            at(dw, dk)
        ),
        measured: Some(Quantity::Length(slack.drift)),
        limit: Some(Quantity::Length(DRIFT)),
        part: Part::Window(dw),
        place: Some(bench.turns.wheels[dw].stops[dk].margin_at),
        source: "our own proposal: 0.3 mm of drift, and as much of setting by eye",
        mend: if little { "ask for more `mark.margin` and `mark.clear`".into() } else { String::new() },
        keys: vec!["mark.margin".into(), "mark.clear".into()],
    })
}
