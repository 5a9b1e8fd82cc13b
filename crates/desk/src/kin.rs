//! The standard that a dial file names: read so that the desk judges the dial as `check` does.

use crate::store::Version;
use dial::design;
use dial::family::Member;
use process::Workshop;
use std::fs;
use std::path::Path;
use std::sync::{Arc, Mutex, PoisonError};

/// Others of its family that a dial is held against.
#[derive(Debug, Default)]
pub struct Kin {
    /// They.
    pub members: Vec<Member>,
    /// Why the standard could not be had, in words for the maker, and what to do.
    pub wrong: Option<(String, String)>,
    /// Tells these from all others.
    pub(crate) id: String,
}

impl Kin {
    /// Nobody.
    pub fn none() -> Kin {
        Kin::default()
    }

    /// These.
    pub fn of(members: Vec<Member>) -> Kin {
        Kin { members, ..Kin::default() }
    }

    fn wrong(what: String, help: &str) -> Kin {
        Kin { id: what.clone(), wrong: Some((what, help.to_owned())), members: Vec::new() }
    }
}

/// Reads standards, and remembers the last: it is the same while one drags.
#[derive(Default)]
pub(crate) struct Kinship {
    last: Mutex<Arc<Kin>>,
}

impl Kinship {
    /// The kin of a dial file. A standard outside `root` is not read.
    pub(crate) fn of(&self, file: &Path, text: &str, root: Option<&Path>, workshop: &Workshop, shop: &str) -> Arc<Kin> {
        let Some(standard) = named(text) else { return Arc::default() };
        let wrong = |what: String, help| Arc::new(Kin::wrong(what, help));
        let Ok(path) = fs::canonicalize(file.with_file_name("").join(&standard)) else {
            return wrong(
                format!("the standard {standard} is not there"),
                "see whether its path holds, from this file's folder",
            );
        };
        if root.is_some_and(|root| !path.starts_with(root)) {
            return wrong(
                format!(
                    "the standard {standard} lies outside the opened folder, so the desk does not hold the dial against it"
                ),
                "open the desk on a folder that holds both",
            );
        }
        let Ok(read) = fs::read_to_string(&path) else {
            return wrong(format!("the standard {standard} cannot be read"), "see whether it is a dial file");
        };
        let id = Version::of(&format!("{}\0{read}\0{shop}", path.display())).as_str().to_owned();
        let mut last = self.last.lock().unwrap_or_else(PoisonError::into_inner);
        if last.id != id {
            *last = Arc::new(member(&standard, &read, workshop, id));
        }
        last.clone()
    }
}

/// The standard's path as the file writes it.
pub(crate) fn named(text: &str) -> Option<String> {
    if !text.contains("standard") {
        return None;
    }
    let document: toml_edit::DocumentMut = text.parse().ok()?;
    document.get("standard")?.as_str().map(str::to_owned)
}

fn member(standard: &str, text: &str, workshop: &Workshop, id: String) -> Kin {
    let laid =
        design::read(text, workshop).and_then(|design| Ok((design.name.clone(), dial::layout::assemble(&design)?)));
    match laid {
        Ok((name, laid)) => Kin { members: vec![Member { name, dial: laid.dial, standard: true }], wrong: None, id },
        Err(mistakes) => {
            let first = mistakes.first().map(|one| one.what.clone()).unwrap_or_default();
            Kin {
                id,
                ..Kin::wrong(
                    format!("the standard {standard} has mistakes: {first}"),
                    "mend it first, or leave `standard` out",
                )
            }
        }
    }
}
