//! Dials for tests.
#![allow(dead_code, reason = "each test file uses some of these")]

use dial::findings::Finding;
use dial::layout::Laid;
use dial::magnets::Held;
use dial::turning::TurnTest;
use dial::{Mistake, design};

/// A dial laid out and looked over.
pub struct Looked {
    pub design: design::Design,
    pub laid: Laid,
    pub turns: TurnTest,
    pub held: Vec<Option<Held>>,
    pub looks: dial::looks::Looks,
    pub findings: Vec<Finding>,
}

pub fn try_look(text: &str) -> Result<Looked, Vec<Mistake>> {
    let workshop = workshop::starter();
    let design = design::read(text, &workshop)?;
    let dial::Looked { laid, turns, held, findings, looks } = dial::look(&design, &workshop, &[])?;
    Ok(Looked { design, laid, turns, held, looks, findings })
}

pub fn look(text: &str) -> Looked {
    try_look(text).unwrap_or_else(|mistakes| panic!("{}", design::render_mistakes("dial.toml", text, &mistakes, false)))
}

/// A dial of some counters, each with its values and maybe more.
pub fn dial(more: &str, counters: &[(&str, &str)]) -> String {
    let counters: String = counters
        .iter()
        .enumerate()
        .map(|(i, (values, more))| format!("[[counter]]\nname = \"c{i}\"\n{values}\n{more}\n"))
        .collect();
    format!("name = \"Test\"\nstock = \"birch plywood 3 mm\"\n{more}\n{counters}")
}

/// The example dials: name and text.
pub fn examples() -> Vec<(String, String)> {
    let folder = concat!(env!("CARGO_MANIFEST_DIR"), "/../../examples");
    let mut all: Vec<(String, String)> = std::fs::read_dir(folder)
        .expect("examples")
        .map(|entry| entry.expect("an entry").path())
        .filter(|path| path.join("dial.toml").is_file())
        .map(|path| {
            (
                path.file_name().expect("a name").to_string_lossy().into_owned(),
                std::fs::read_to_string(path.join("dial.toml")).expect("reads"),
            )
        })
        .collect();
    all.sort();
    all
}
