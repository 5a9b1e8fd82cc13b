//! `dialwright check`: what drives the size, and every finding.

use crate::Outcome;
use crate::args::{Check, On};
use crate::load::{Loaded, family, load};
use crate::talk::{self, Talk};
use desk::{Kin, Mend, Seen};
use dial::family::Member;
use dial::findings;
use serde_json::json;
use std::path::PathBuf;

/// A dial looked over.
pub struct Looked {
    /// The files.
    pub loaded: Loaded,
    /// All that is known of it.
    pub dial: dial::Looked,
    /// Others that it was held against.
    pub family: Vec<Member>,
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
    Ok(Looked { loaded, dial, family })
}

impl Looked {
    /// The report that all outputs share.
    pub fn report(&self) -> serde_json::Value {
        press::report(&self.dial)
    }

    /// What is printed about it.
    pub fn words(&self) -> String {
        self.words_with(&[])
    }

    fn words_with(&self, mends: &[Option<Mend>]) -> String {
        let laid = &self.dial.laid;
        talk::sizes(&laid.dial, &laid.sizing)
            + &talk::findings(&laid.dial, &self.dial.findings, mends, &self.loaded.text, &self.loaded.design)
    }

    /// For each finding the mend that was tried and helps, if there is one: the same that the desk offers.
    fn mends(&self) -> Vec<Option<Mend>> {
        let seen = Seen { design: self.loaded.design.clone(), looked: self.dial.clone() };
        desk::mends(&seen, &self.loaded.text, &self.loaded.workshop, &Kin::of(self.family.clone()))
    }

    /// Whether it may be made.
    pub fn outcome(&self) -> Outcome {
        if findings::refuses(&self.dial.findings) { Outcome::Refused } else { Outcome::Well }
    }
}

/// Runs the command.
pub fn run(args: &Check) -> Result<Outcome, Talk> {
    let looked = look(&args.on, &args.set)?;
    let mends = looked.mends();
    if args.on.json {
        let mut report = looked.report();
        for (n, mend) in mends.iter().enumerate() {
            if let Some(mend) = mend {
                report["findings"][n]["tried"] = json!(mend);
            }
        }
        println!("{report:#}");
    } else {
        print!("{}", looked.words_with(&mends));
    }
    Ok(looked.outcome())
}
