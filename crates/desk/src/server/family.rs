//! The dials of the opened folder side by side: which wheel fits which place, and what is found of them as one set.

use super::Desk;
use super::answer::{Sorry, aside};
use crate::kin;
use crate::look::{Look, Seen};
use crate::pieces;
use axum::Json;
use axum::extract::State;
use dial::Dial;
use dial::design;
use dial::family::{self, Fit, Member};
use dial::findings::{self, Bench, Severity};
use process::Workshop;
use serde_json::{Value, json};
use std::sync::Arc;

/// More dials than this are no family that one looks at side by side.
const MOST: usize = 8;

/// A dial of the folder that can be drawn.
struct One<'a> {
    file: &'a str,
    look: &'a Look,
    seen: &'a Seen,
    /// The file that it names as its standard, if that lies in the folder.
    standard: Option<String>,
}

/// Which wheel of which dial of the folder fits which place, and the findings of all as one set.
pub(super) async fn fits(State(desk): State<Arc<Desk>>) -> Result<Json<Value>, Sorry> {
    aside(move || {
        let names = desk.shelf.dials();
        let looks: Vec<_> = names.iter().filter_map(|name| Some((desk.look(name).ok()?, name.as_str()))).collect();
        let sound = looks.iter().filter_map(|(look, file)| {
            let seen = look.outcome.as_ref().ok()?;
            Some(One { file, look, seen, standard: standard_of(&desk, file, &look.text) })
        });
        let sound: Vec<One> = sound.take(MOST).collect();
        let left_out = names.iter().filter(|name| sound.iter().all(|one| one.file != *name));
        let dials: Vec<&Dial> = sound.iter().map(|one| &one.seen.laid.dial).collect();
        let feel = sound.first().map_or(process::Feel::USUAL, |one| one.look.workshop.feel);
        let fit = |fit: &Fit| json!({ "wheel": fit.wheel, "place": fit.place, "why_not": fit.why_not });
        let wheels = |dial: &Dial| dial.wheels.iter().map(|wheel| wheel.name.clone()).collect::<Vec<_>>();
        Ok(Json(json!({
            "dials": sound.iter().map(|one| json!({
                "file": one.file, "name": one.seen.laid.dial.name, "wheels": wheels(&one.seen.laid.dial),
            })).collect::<Vec<_>>(),
            "left_out": left_out.collect::<Vec<_>>(),
            "fits": family::fits(&dials, &feel).iter().map(fit).collect::<Vec<_>>(),
            "set": set(&sound),
        })))
    })
    .await
}

fn standard_of(desk: &Desk, file: &str, text: &str) -> Option<String> {
    let standard = desk.path(file).ok()?.with_file_name("").join(kin::named(text)?);
    desk.shelf.name_of(&standard)
}

/// What `check --set` finds of each two dials, the gravest first. Whatever does not fit is told by both alike, so one of them
/// tells it: the one that names the other as its standard, else the first.
fn set(all: &[One]) -> Value {
    let pairs = (0..all.len()).flat_map(|a| (a + 1..all.len()).map(move |b| (a, b)));
    let mut told: Vec<(Severity, Value)> = pairs
        .map(|(a, b)| {
            let (one, other) = (&all[a], &all[b]);
            if other.standard.as_deref() == Some(one.file) { of_two(other, one) } else { of_two(one, other) }
        })
        .collect();
    told.sort_by_key(|(severity, _)| std::cmp::Reverse(*severity));
    told.into_iter().map(|(_, finding)| finding).collect()
}

fn of_two(one: &One, other: &One) -> (Severity, Value) {
    let name = &other.seen.laid.dial.name;
    let standard = one.standard.as_deref() == Some(other.file);
    let found = in_workshop(other, &one.look.workshop).map(|dial| {
        let family = [Member { name: name.clone(), dial, standard }];
        let (seen, workshop) = (one.seen, &one.look.workshop);
        findings::check_family(&Bench {
            dial: &seen.laid.dial,
            turns: &seen.turns,
            held: &seen.held,
            looks: &seen.looks,
            workshop,
            family: &family,
        })
    });
    let (severity, mut told) = match found.as_deref().map(<[_]>::split_first) {
        Some(Some((finding, _))) => {
            let told = pieces::findings(std::slice::from_ref(finding), one.seen, &one.look.text);
            (finding.severity, told[0].clone())
        }
        _ => {
            let what = format!("{name} cannot be read in the workshop of {}", one.seen.laid.dial.name);
            (Severity::Mend, json!({ "severity": Severity::Mend.word(), "what": what, "mend": "", "source": "" }))
        }
    };
    told["of"] = json!(one.file);
    told["about"] = json!(other.file);
    (severity, told)
}

/// A dial as it is in another's workshop, as the command line reads a set.
fn in_workshop(one: &One, workshop: &Workshop) -> Option<Dial> {
    if one.look.workshop == *workshop {
        return Some(one.seen.laid.dial.clone());
    }
    let design = design::read(&one.look.text, workshop).ok()?;
    Some(dial::layout::assemble(&design).ok()?.dial)
}
