//! What the desk takes from the room above it, so that page and command line say the same.

use card::{Print, Reading};
use dial::design::Design;
use dial::findings::Finding;
use dial::job::Job;
use dial::layout::Sizing;
use dial::{Dial, Looked, Mistake};
use process::Workshop;
use serde_json::Value;
use std::path::{Path, PathBuf};
use workshop::MeasuredLook;

/// Files of a job folder, by their path in it.
pub type JobFiles = Vec<(PathBuf, Vec<u8>)>;

/// A PDF, or what went wrong.
pub type Paper = Result<Vec<u8>, String>;

/// What the command line knows and the desk uses.
#[derive(Clone, Copy)]
pub struct House {
    /// The workshop file of a dial file, if there is one.
    pub workshop_file: fn(&Path) -> Option<PathBuf>,
    /// What drove the size of each wheel, in words.
    pub sizes: fn(&Dial, &[Sizing]) -> String,
    /// What `check` prints, given the dial file's text.
    pub words: fn(&Dial, &[Sizing], &[Finding], &str, &Design) -> String,
    /// All files of a job folder; or what went wrong.
    pub job_files: fn(&press::Make) -> Result<JobFiles, String>,
    /// Documents of the workbook, each with its word and its title; none if this program was built without it.
    pub documents: fn() -> Vec<(&'static str, &'static str)>,
    /// The workbook as a PDF, or one document of it by its word; or what went wrong.
    pub paper: fn(&Looked, &Workshop, &Job, Option<&str>) -> Paper,
    /// A counter's name and values, from a brief such as "provisions 0..24"; or what is missing.
    pub brief: fn(&str) -> Result<(String, String), String>,
    /// Where the votes on a dial's pairings are, or would be begun.
    pub votes_place: fn(&Path) -> PathBuf,
    /// What `contrast` tells of a mark's colour on a ground's; or which is no colour.
    pub contrast: fn(&str, &str) -> Result<Value, String>,
    /// What a printer's paper and black send back, given what was measured of them.
    pub print: fn(Option<f64>, Option<f64>) -> Print,
    /// The figures of a photo of the card.
    pub card_figures: fn(&Reading) -> Value,
    /// What is kept of a reading, today; or which step the card does not have.
    pub measured: fn(&Reading, &Taken) -> Result<MeasuredLook, String>,
}

/// What the maker says of a photo that was read.
#[derive(Clone, Debug)]
pub struct Taken {
    /// The step that will be engraved with, counted from 1; without it the gentlest that reads as well as the best.
    pub step: Option<usize>,
    /// Depth of the engraving at that step, in mm.
    pub depth: f64,
    /// Power and speed of that step, in the maker's words.
    pub power: Option<String>,
    /// The photo's name.
    pub photo: String,
}

/// The workshop a dial is made in, and the text of its file.
pub(crate) struct Shop {
    pub(crate) workshop: Workshop,
    pub(crate) text: String,
    pub(crate) mistakes: Vec<Mistake>,
}

impl House {
    /// The workshop of a dial file. A workshop file with mistakes gives the starter workshop, and its mistakes.
    pub(crate) fn shop(&self, dial: &Path) -> Shop {
        let text = (self.workshop_file)(dial).and_then(|file| std::fs::read_to_string(file).ok()).unwrap_or_default();
        if text.is_empty() {
            return Shop { workshop: workshop::starter(), text, mistakes: Vec::new() };
        }
        match workshop::read(&text) {
            Ok(workshop) => Shop { workshop, text, mistakes: Vec::new() },
            Err(mistakes) => Shop { workshop: workshop::starter(), text, mistakes },
        }
    }
}
