//! The turn test's results as findings: one for each kind of fault of each wheel, and the dial's slack.

use super::{Bench, Finding, Part, Quantity, Remedy, Severity, remedy};
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
    remedies: fn(&Bench, usize, &Stop) -> Vec<Remedy>,
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
        remedies: |_, i, _| left(i, &[SIZE, PLACE, ALL]),
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
        remedies: |_, i, _| left(i, &[SIZE, PLACE, ALL, &["wheel.radius"]]),
        worst: |stop| stop.other_distance,
    },
    Kind {
        matches: |fault| matches!(fault, Fault::OutOfOrder),
        severity: Severity::Refuse,
        says: |_, _, stop| (format!("after “{}” the next mark comes from the wrong side", stop.words), None, None),
        mend: "set `running` for this counter as you want the numbers to run",
        key: "running",
        remedies: |_, i, _| {
            let path = format!("counter[{i}].running");
            let set = ["alike", "alike reversed"].map(|way| Remedy::set(path.clone(), way));
            std::iter::once(Remedy { values: vec![(path, None)] }).chain(set).collect()
        },
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
        remedies: |bench, i, stop| {
            let less = Remedy::set(format!("counter[{i}].mark.margin"), remedy::at_most(bench, stop.margin));
            left(i, &[SIZE, PLACE, ALL]).into_iter().chain((stop.margin >= LEAST).then_some(less)).collect()
        },
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
        remedies: |bench, i, stop| {
            let less = Remedy::set(format!("counter[{i}].mark.clear"), remedy::at_most(bench, stop.other_distance));
            let all = left(i, &[SIZE, PLACE, ALL, &["wheel.radius"]]);
            all.into_iter().chain((stop.other_distance >= LEAST).then_some(less)).collect()
        },
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
        remedies: |_, i, _| left(i, &[&["window.angle"], PLACE, ALL]),
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
        remedies: |_, i, _| {
            let alone = Remedy::set(format!("counter[{i}].window.shows"), "one mark");
            left(i, &[SIZE, ALL]).into_iter().chain([alone]).collect()
        },
        worst: |_| 0.0,
    },
];

/// Values of a window that the layout derives so that its marks stand whole and alone in it.
const SIZE: &[&str] = &["window.width", "window.height"];
const PLACE: &[&str] = &["window.distance", "window.angle"];
const ALL: &[&str] = &["window.width", "window.height", "window.distance", "window.angle"];
/// Less room than this cannot be asked for, in mm.
const LEAST: f64 = 0.1;

fn left(wheel: usize, each: &[&[&str]]) -> Vec<Remedy> {
    each.iter().map(|paths| Remedy::leave(wheel, paths)).collect()
}

/// As much more margin and clear room as is missing.
fn more_room(bench: &Bench, forgives: f64) -> Vec<Remedy> {
    let missing = DRIFT - forgives;
    let asked = |of: fn(&crate::assembled::Asked) -> f64| {
        bench.dial.wheels.iter().map(|wheel| of(&wheel.asked)).fold(0.0, f64::max) + missing
    };
    let wheels: Vec<usize> = (0..bench.dial.wheels.len()).collect();
    let more = |path, mm| Remedy::of_wheels(bench, &wheels, path, &remedy::at_least(bench, mm));
    let (margin, clear) = (more("mark.margin", asked(|one| one.margin)), more("mark.clear", asked(|one| one.clear)));
    vec![margin.clone(), clear.clone(), margin.also(clear)]
}

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
            remedies: (kind.remedies)(bench, i, worst),
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
        remedies: if little { more_room(bench, slack.drift.min(travel)) } else { Vec::new() },
        keys: vec!["mark.margin".into(), "mark.clear".into()],
    })
}
