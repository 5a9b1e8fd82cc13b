//! The standard that a dial file names: read so that the desk judges the dial as `check` does.

use crate::store::Version;
use dial::Mistake;
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
    /// Why the standard could not be had.
    pub wrong: Option<Trouble>,
    /// Tells these from all others.
    pub(crate) id: String,
}

/// Why a standard could not be had, in words for the maker, and what to do.
#[derive(Debug, Default)]
pub struct Trouble {
    /// What is wrong.
    pub what: String,
    /// What to do.
    pub help: String,
    /// The standard's name within the opened folder, if it lies there.
    pub file: Option<String>,
    /// Its text, and what is wrong with that.
    pub text: String,
    /// All mistakes in the text.
    pub mistakes: Vec<Mistake>,
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

    fn wrong(trouble: Trouble) -> Kin {
        Kin { id: trouble.what.clone(), wrong: Some(trouble), members: Vec::new() }
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
        let wrong = |what: String, help: &str, file| {
            Arc::new(Kin::wrong(Trouble { what, help: help.into(), file, ..Trouble::default() }))
        };
        let Ok(path) = fs::canonicalize(file.with_file_name("").join(&standard)) else {
            return wrong(
                format!("the standard {standard} is not there"),
                "see whether its path holds, from this file's folder",
                None,
            );
        };
        if root.is_some_and(|root| !path.starts_with(root)) {
            return wrong(
                format!(
                    "the standard {standard} lies outside the opened folder, so the desk does not hold the dial against it"
                ),
                "open the desk on a folder that holds both",
                None,
            );
        }
        let within = root.and_then(|root| path.strip_prefix(root).ok());
        let name = within.map(|path| path.iter().map(|part| part.to_string_lossy()).collect::<Vec<_>>().join("/"));
        let read = match fs::read(&path).map(String::from_utf8) {
            Ok(Ok(read)) => read,
            Ok(Err(_)) => {
                let what = format!("the standard {standard} is not text in UTF-8");
                return wrong(what, "save it as UTF-8 from your editor, or name another file", None);
            }
            Err(error) => {
                let what = format!("the standard {standard} cannot be read: {error}");
                return wrong(what, "name a dial file, and see whether it may be read", None);
            }
        };
        let id = Version::of(&format!("{}\0{read}\0{shop}", path.display())).as_str().to_owned();
        let mut last = self.last.lock().unwrap_or_else(PoisonError::into_inner);
        if last.id != id {
            *last = Arc::new(member(&standard, read, name, workshop, id));
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

fn member(standard: &str, text: String, file: Option<String>, workshop: &Workshop, id: String) -> Kin {
    let laid =
        design::read(&text, workshop).and_then(|design| Ok((design.name.clone(), dial::layout::assemble(&design)?)));
    match laid {
        Ok((name, laid)) => Kin { members: vec![Member { name, dial: laid.dial, standard: true }], wrong: None, id },
        Err(mistakes) => {
            let n = mistakes.len();
            let what = format!("the standard {standard} has {n} mistake{}", if n == 1 { "" } else { "s" });
            let help = "mend it first, or leave `standard` out; until then this dial is not held against it".into();
            Kin { id, ..Kin::wrong(Trouble { what, help, file, text, mistakes }) }
        }
    }
}
