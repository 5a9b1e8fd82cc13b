//! `dialwright desk`: the page in the browser.

use crate::Outcome;
use crate::args::Desk;
use crate::measured::{self, Wish};
use crate::talk::{self, Talk};
use crate::{brief, card, contrast, load, make};
use desk::{House, Taken};
use dial::Looked;
use dial::job::Job;
use process::Workshop;

/// What page and command line share.
const HOUSE: House = House {
    workshop_file: load::find,
    sizes: talk::sizes,
    words: |dial, sizing, found, text, design| {
        talk::sizes(dial, sizing) + &talk::findings(dial, found, &[], text, design)
    },
    brief: brief::split,
    job_files: |made| make::files(made, None),
    documents,
    paper,
    votes_place: |dial| load::votes_place(None, dial),
    contrast: contrast::of,
    print: card::print,
    card_figures: card::figures,
    measured: |reading, taken| {
        let Taken { step, depth, power, photo } = taken.clone();
        measured::look(reading, &Wish { stock: String::new(), step, depth, power, photo })
    },
};

/// Runs the command.
pub fn run(args: &Desk) -> Result<Outcome, Talk> {
    let opened = |link: &str| {
        println!("the desk is open at {link}");
        if !args.no_open && !desk::open_browser(link) {
            eprintln!("no browser could be opened: open the link yourself");
        }
        eprintln!("stop it with Ctrl-C; every change is on disk");
    };
    desk::run(&args.place, HOUSE, opened).map_err(|error| Talk::Plain(error.to_string()))?;
    Ok(Outcome::Well)
}

#[cfg(feature = "workbook")]
fn documents() -> Vec<(&'static str, &'static str)> {
    // The board of pairings is asked for on its own: it takes long.
    let all = workbook::Document::ALL.into_iter().filter(|one| *one != workbook::Document::Pairings);
    all.map(|one| (one.word(), one.title())).collect()
}

#[cfg(not(feature = "workbook"))]
fn documents() -> Vec<(&'static str, &'static str)> {
    Vec::new()
}

#[cfg(feature = "workbook")]
fn paper(looked: &Looked, workshop: &Workshop, job: &Job, which: Option<&str>) -> Result<Vec<u8>, String> {
    let known = |word: &str| {
        let found = workbook::Document::ALL.into_iter().find(|one| one.word() == word);
        found.ok_or_else(|| format!("there is no document \u{201c}{word}\u{201d} in the workbook"))
    };
    let made = crate::workbook::set(looked, workshop, job, which.map(known).transpose()?, None)?;
    crate::workbook::tell(&made);
    Ok(made.pdf)
}

#[cfg(not(feature = "workbook"))]
fn paper(_: &Looked, _: &Workshop, _: &Job, _: Option<&str>) -> Result<Vec<u8>, String> {
    Err("this program was built without the workbook".into())
}
