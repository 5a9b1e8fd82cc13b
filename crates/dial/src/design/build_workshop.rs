//! From what a workshop file says to a workshop: what it does not say is as usual, what has a usual one's name takes its place.

use super::build::{Scope, stocks};
use super::reader::{Reading, Value};
use process::{Feel, Machine, ShelfMagnet, StepColours, Vote, Workshop};

/// The workshop of a file.
pub(crate) fn workshop(reading: &Reading, usual: &Workshop) -> Workshop {
    let machine = Scope { reading, bases: vec!["machine.".into()] };
    let text = |key: &str, usual: &str| machine.text(key).unwrap_or(usual).to_owned();
    let was = &usual.machine;
    Workshop {
        machine: Machine {
            name: text("name", &was.name),
            bed_width: machine.number("bed_width").unwrap_or(was.bed_width),
            bed_height: machine.number("bed_height").unwrap_or(was.bed_height),
            colours: StepColours {
                engrave: text("engrave", &was.colours.engrave),
                pocket: text("pocket", &was.colours.pocket),
                cut_inside: text("cut_inside", &was.colours.cut_inside),
                cut_outside: text("cut_outside", &was.colours.cut_outside),
            },
        },
        stocks: instead(&usual.stocks, stocks(reading), |stock| &stock.name),
        magnets: instead(&usual.magnets, magnets(reading), |magnet| &magnet.name),
        feel: feel(reading, &usual.feel),
        votes: usual.votes.clone(),
    }
}

/// The votes of a file.
pub(crate) fn votes(reading: &Reading) -> Vec<Vote> {
    let file = Scope { reading, bases: vec![String::new()] };
    let one = |i: usize| {
        let here = Scope { reading, bases: vec![format!("vote[{i}].")] };
        let Some(Value::Words(best_first)) = here.value("best_first") else {
            return None;
        };
        Some(Vote { best_first: best_first.clone(), times: here.count("times").unwrap_or(1) as u32 })
    };
    (0..file.tables("vote")).filter_map(one).collect()
}

/// The usual ones, and the file's own, which take the place of those of their name.
fn instead<T: Clone>(usual: &[T], own: Vec<T>, name: impl Fn(&T) -> &str) -> Vec<T> {
    let kept = usual.iter().filter(|one| !own.iter().any(|mine| name(mine) == name(one)));
    kept.cloned().chain(own.iter().cloned()).collect()
}

fn magnets(reading: &Reading) -> Vec<ShelfMagnet> {
    let Some(Value::Names(names)) = reading.values.get("magnets") else {
        return Vec::new();
    };
    let one = |name: &String| {
        let here = Scope { reading, bases: vec![format!("magnets.{name}.")] };
        ShelfMagnet {
            name: name.clone(),
            diameter: here.number("diameter").unwrap_or_default(),
            thickness: here.number("thickness").unwrap_or_default(),
            remanence: here.interval("grade").unwrap_or_default(),
            price: here.number("price"),
            source: here.text("source").unwrap_or("as written in the file").to_owned(),
        }
    };
    names.iter().map(one).collect()
}

fn feel(reading: &Reading, usual: &Feel) -> Feel {
    let here = Scope { reading, bases: vec!["feel.".into()] };
    Feel {
        turn_least: here.number("turn_least").unwrap_or(usual.turn_least),
        turn_stiff: here.number("turn_stiff").unwrap_or(usual.turn_stiff),
        turn_most: here.number("turn_most").unwrap_or(usual.turn_most),
        shake: here.number("shake").unwrap_or(usual.shake),
        finger: here.number("finger").unwrap_or(usual.finger),
    }
}
