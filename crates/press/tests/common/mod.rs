//! Dials for tests.
#![allow(dead_code, reason = "each test file uses some of these")]

use dial::Looked;
use dial::job::{self, Job};
use process::Workshop;
use std::fs;
use std::path::Path;

/// A dial made ready for the press.
pub struct Ready {
    pub text: String,
    pub looked: Looked,
    pub job: Job,
    pub workshop: Workshop,
}

pub fn ready(text: &str) -> Ready {
    ready_in(text, workshop::starter())
}

pub fn ready_in(text: &str, workshop: Workshop) -> Ready {
    let design = dial::design::read(text, &workshop).expect("reads");
    let looked = dial::look(&design, &workshop, &[]).expect("can be drawn");
    let job = job::plan(&looked.laid.dial, &workshop).expect("fits");
    Ready { text: text.into(), looked, job, workshop }
}

/// A small dial with little to draw.
pub const SMALL: &str = "name = \"Small\"\nstock = \"birch plywood 3 mm\"\n[[counter]]\nname = \"sign\"\nlabel = \"\"\nsymbols = [\"star\", \"coin\", \"bolt\"]\n";

pub fn examples() -> Vec<(String, String)> {
    let folder = concat!(env!("CARGO_MANIFEST_DIR"), "/../../examples");
    let mut all: Vec<(String, String)> = fs::read_dir(folder)
        .expect("examples")
        .map(|entry| entry.expect("an entry").path())
        .filter(|path| path.join("dial.toml").is_file())
        .map(|path| {
            (
                path.file_name().expect("a name").to_string_lossy().into_owned(),
                fs::read_to_string(path.join("dial.toml")).expect("reads"),
            )
        })
        .collect();
    all.sort();
    all
}

/// Holds a text against a golden file; `DIALWRIGHT_WRITE=1` writes it anew.
pub fn golden(name: &str, text: &str) {
    let path = Path::new(env!("CARGO_MANIFEST_DIR")).join("tests/golden").join(name);
    if std::env::var_os("DIALWRIGHT_WRITE").is_some() {
        fs::write(&path, text).expect("writes");
    }
    let was = fs::read_to_string(&path).unwrap_or_default();
    assert!(was == text, "{} has changed; look at it with DIALWRIGHT_WRITE=1 and git diff", path.display());
}
