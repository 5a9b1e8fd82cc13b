//! `dialwright check`: what drives the size, and every finding.

use crate::Outcome;
use crate::args::On;
use crate::load::{Loaded, load};
use crate::talk::{self, Talk};
use dial::findings::{self, Bench, Finding};
use dial::layout::{self, Laid};
use dial::turning::{self, TurnTest};

/// A dial looked over.
pub struct Looked {
    /// The files.
    pub loaded: Loaded,
    /// The assembled dial.
    pub laid: Laid,
    /// Its turn test.
    pub turns: TurnTest,
    /// Its findings.
    pub findings: Vec<Finding>,
}

/// Reads, lays out, turns and checks a dial.
pub fn look(on: &On) -> Result<Looked, Talk> {
    let loaded = load(on)?;
    let laid = layout::assemble(&loaded.design).map_err(|mistakes| Talk::Mistakes {
        file: loaded.file.clone(),
        text: loaded.text.clone(),
        mistakes,
    })?;
    let turns = turning::turn(&laid.dial);
    let findings = findings::check(&Bench { dial: &laid.dial, turns: &turns, workshop: &loaded.workshop });
    Ok(Looked { loaded, laid, turns, findings })
}

impl Looked {
    /// The report that all outputs share.
    pub fn report(&self) -> serde_json::Value {
        press::report(&self.laid, &self.turns, &self.findings)
    }

    /// What is printed about it.
    pub fn words(&self) -> String {
        talk::sizes(&self.laid.dial, &self.laid.sizing)
            + &talk::findings(&self.laid.dial, &self.findings, &self.loaded.text, &self.loaded.design)
    }

    /// Whether it may be made.
    pub fn outcome(&self) -> Outcome {
        if findings::refuses(&self.findings) { Outcome::Refused } else { Outcome::Well }
    }
}

/// Runs the command.
pub fn run(on: &On) -> Result<Outcome, Talk> {
    let looked = look(on)?;
    if on.json {
        println!("{:#}", looked.report());
    } else {
        print!("{}", looked.words());
    }
    Ok(looked.outcome())
}
