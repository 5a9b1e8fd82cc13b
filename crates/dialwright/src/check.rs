//! `dialwright check`: what drives the size, and every finding.

use crate::Outcome;
use crate::args::{Check, On};
use crate::load::{Loaded, family, load};
use crate::talk::{self, Talk};
use dial::findings;
use std::path::PathBuf;

/// A dial looked over.
pub struct Looked {
    /// The files.
    pub loaded: Loaded,
    /// All that is known of it.
    pub dial: dial::Looked,
}

/// Reads, lays out, turns and checks a dial, also against its family's standard and the others of a set.
pub fn look(on: &On, set: &[PathBuf]) -> Result<Looked, Talk> {
    let loaded = load(on)?;
    let family = family(&loaded, set)?;
    let dial = dial::look(&loaded.design, &loaded.workshop, &family).map_err(|mistakes| Talk::Mistakes {
        file: loaded.file.clone(),
        text: loaded.text.clone(),
        mistakes,
    })?;
    Ok(Looked { loaded, dial })
}

impl Looked {
    /// The report that all outputs share.
    pub fn report(&self) -> serde_json::Value {
        press::report(&self.dial)
    }

    /// What is printed about it.
    pub fn words(&self) -> String {
        let laid = &self.dial.laid;
        talk::sizes(&laid.dial, &laid.sizing)
            + &talk::findings(&laid.dial, &self.dial.findings, &self.loaded.text, &self.loaded.design)
    }

    /// Whether it may be made.
    pub fn outcome(&self) -> Outcome {
        if findings::refuses(&self.dial.findings) { Outcome::Refused } else { Outcome::Well }
    }
}

/// Runs the command.
pub fn run(args: &Check) -> Result<Outcome, Talk> {
    let looked = look(&args.on, &args.set)?;
    if args.on.json {
        println!("{:#}", looked.report());
    } else {
        print!("{}", looked.words());
    }
    Ok(looked.outcome())
}
