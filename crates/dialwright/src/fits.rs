//! `dialwright fits`: which wheel fits which place of which cover.

use crate::Outcome;
use crate::args::Fits;
use crate::load;
use crate::talk::Talk;
use dial::Dial;
use dial::family::{Fit, Member, fits};
use serde_json::{Value, json};

/// Runs the command.
pub fn run(args: &Fits) -> Result<Outcome, Talk> {
    let workshop = load::workshop(args.workshop.as_deref(), args.files.first().map(AsRef::as_ref))?;
    let members: Vec<Member> =
        args.files.iter().map(|path| load::member(path, &workshop, false)).collect::<Result<_, _>>()?;
    let dials: Vec<&Dial> = members.iter().map(|member| &member.dial).collect();
    let all = fits(&dials, &workshop.feel);
    let named = |(d, i): (usize, usize)| (members[d].name.as_str(), dials[d].wheels[i].name.as_str());
    if args.json {
        let rows: Vec<Value> = all
            .iter()
            .map(|fit| {
                let (wheel, place) = (named(fit.wheel), named(fit.place));
                json!({
                    "wheel": { "dial": wheel.0, "name": wheel.1 },
                    "place": { "dial": place.0, "name": place.1 },
                    "fits": fit.why_not.is_empty(),
                    "why_not": fit.why_not,
                })
            })
            .collect();
        println!("{:#}", Value::from(rows));
    } else {
        print!("{}", table(&all, named));
    }
    Ok(if all.iter().all(|fit| fit.why_not.is_empty()) { Outcome::Well } else { Outcome::Refused })
}

/// A table with a number for each wheel and place, and below it why not.
fn table<'a>(all: &[Fit], named: impl Fn((usize, usize)) -> (&'a str, &'a str)) -> String {
    let mut places: Vec<(usize, usize)> = all.iter().map(|fit| fit.place).collect();
    places.dedup();
    places.sort_unstable();
    places.dedup();
    let mut out = String::from("wheels, down, in the places of the covers, across: + fits, - does not\n\n");
    let words = |at| format!("{}: {}", named(at).0, named(at).1);
    let widest = places.iter().map(|at| words(*at).chars().count()).max().unwrap_or(0);
    let number = |at: &(usize, usize)| places.iter().position(|one| one == at).map_or(0, |k| k + 1);
    let head: String = (1..=places.len()).map(|k| format!(" {k:>2}")).collect();
    out += &format!("     {:<widest$} {head}\n", "");
    for wheel in &places {
        let row: String = places
            .iter()
            .map(|place| {
                let fit = all.iter().find(|fit| fit.wheel == *wheel && fit.place == *place);
                if fit.is_some_and(|fit| fit.why_not.is_empty()) { "  +" } else { "  -" }
            })
            .collect();
        let name = words(*wheel);
        let pad = widest - name.chars().count();
        out += &format!("  {:>2} {name}{} {row}\n", number(wheel), " ".repeat(pad));
    }
    let misfits: Vec<&Fit> = all.iter().filter(|fit| !fit.why_not.is_empty()).collect();
    if misfits.is_empty() {
        return out + "\nevery wheel fits every place\n";
    }
    out += "\n";
    for fit in misfits {
        out += &format!("  {} in {}: {}\n", number(&fit.wheel), number(&fit.place), fit.why_not.join("; "));
    }
    out
}
