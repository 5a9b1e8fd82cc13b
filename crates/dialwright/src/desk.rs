//! `dialwright desk`: the page in the browser.

use crate::Outcome;
use crate::args::Desk;
use crate::measured::{self, Wish};
use crate::talk::{self, Talk};
use crate::{brief, card, contrast, load, make};
use desk::{House, Taken};

/// What page and command line share.
const HOUSE: House = House {
    workshop_file: load::find,
    sizes: talk::sizes,
    words: |dial, sizing, found, text, design| talk::sizes(dial, sizing) + &talk::findings(dial, found, text, design),
    brief: brief::split,
    job_files: |made| make::files(made, None),
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
