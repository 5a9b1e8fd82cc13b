//! Whether the dial's wheels and covers fit those of its family.

use super::{Bench, Finding, Part, Remedy, Severity};
use crate::assembled::Poles;
use crate::family::{Member, why_not};

pub(super) fn check(bench: &Bench) -> Vec<Finding> {
    bench.family.iter().map(|member| {
        let feel = &bench.workshop.feel;
        let mut misfits: Vec<String> = Vec::new();
        let mut tried = 0;
        for (whose, wheels, cover) in [("", bench.dial, &member.dial), ("its ", &member.dial, bench.dial)] {
            for wheel in &wheels.wheels {
                for (place, own) in cover.wheels.iter().enumerate() {
                    tried += 1;
                    let why = why_not(wheel, cover, place, feel);
                    if !why.is_empty() {
                        misfits.push(format!("{whose}wheel {} in the place of {}: {}", wheel.name, own.name, why.join("; ")));
                    }
                }
            }
        }
        let of_poles = bench.dial.wheels.first().zip(member.dial.wheels.first()).is_some_and(|(a, b)| a.seat.poles != b.seat.poles);
        let what = match misfits.first() {
            None => format!("{}: every wheel fits every place of both covers, {tried} pairs tried", member.name),
            Some(first) => format!("{}: {} of {tried} wheels do not fit a place: {first}{}", member.name, misfits.len(), if misfits.len() > 1 { "; `dialwright fits` shows them all" } else { "" }),
        };
        // A standard is kept on purpose; poles are never mixed on purpose.
        let grave = !misfits.is_empty() && (member.standard || of_poles);
        Finding {
            rule: "family",
            severity: if grave { Severity::Mend } else { Severity::Note },
            what,
            measured: None,
            limit: None,
            part: Part::Dial,
            place: None,
            source: "our own proposal: one pole plan, one seat, one thickness, one kind of window for all that shall fit",
            mend: if grave { "take magnets, seat, poles, stock and windows from the standard, or leave `standard` out".into() } else { String::new() },
            remedies: if of_poles { vec![poles_of(member)] } else { Vec::new() },
            keys: vec!["standard".into(), "magnet.poles".into(), "magnet.seat".into()],
        }
    }).collect()
}

/// The other dial's poles.
fn poles_of(member: &Member) -> Remedy {
    let pushes = member.dial.wheels.first().is_some_and(|wheel| wheel.seat.poles == Poles::Pushes);
    Remedy::set("magnet.poles", if pushes { "cover pushes" } else { "cover pulls" })
}
