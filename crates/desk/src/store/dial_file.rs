//! One file of the maker, a dial file or a workshop file: read, changed, undone, and taken in again when somebody else changed it.

use super::disk::{self, Settle, Version};
use super::edit::{self, Change, Unfit};
use super::history::{History, Step};
use super::path;
use dial::Mistake;
use dial::design::parameters::{DIAL_FILE, WORKSHOP_FILE};
use dial::design::table::Groups;
use std::fs::File;
use std::io;
use std::path::{Path, PathBuf};

/// A dial file on disk, or a workshop file. Every change is made under a lock that all desks on the folder respect, and only if the
/// file still holds the version that the change was made on.
#[derive(Clone, Debug)]
pub struct DialFile {
    path: PathBuf,
    groups: Groups,
}

/// What a file holds, and where it stands among its steps.
#[derive(Clone, Debug, PartialEq)]
pub struct State {
    /// Its text.
    pub text: String,
    /// Its version.
    pub version: Version,
    /// What undo would take back.
    pub undo: Option<String>,
    /// What redo would do again.
    pub redo: Option<String>,
    /// Versions set aside.
    pub kept: Vec<Kept>,
}

/// A version that was set aside because the file had changed meanwhile.
#[derive(Clone, Debug, PartialEq)]
pub struct Kept {
    /// Its version.
    pub version: Version,
    /// What was done to come to it.
    pub words: String,
    /// Its text.
    pub text: String,
}

/// Why a change was not made. The file is as it was.
#[derive(Debug)]
pub enum Refused {
    /// The file has changed since; what was to be written is kept beside it under this version.
    Both(Version),
    /// The file has changed since, and there was nothing to keep.
    Stale,
    /// There is no step to take back or to do again.
    NoStep,
    /// The value does not fit its place.
    Unfit(Unfit),
    /// The file could not be read with the change in it.
    Mistakes {
        /// The text that would have been.
        text: String,
        /// What is wrong with it.
        mistakes: Vec<Mistake>,
    },
    /// The system refused.
    Io(io::Error),
}

impl From<io::Error> for Refused {
    fn from(error: io::Error) -> Refused {
        Refused::Io(error)
    }
}

/// Says what is wrong with a text before it is written; nothing if it may be.
pub type Check<'a> = &'a dyn Fn(&str) -> Vec<Mistake>;

impl DialFile {
    /// The dial file at a path.
    pub fn at(path: &Path) -> DialFile {
        DialFile { path: path.to_owned(), groups: DIAL_FILE }
    }

    /// The workshop file at a path.
    pub fn of_workshop(path: &Path) -> DialFile {
        DialFile { path: path.to_owned(), groups: WORKSHOP_FILE }
    }

    /// Its path.
    pub fn path(&self) -> &Path {
        &self.path
    }

    /// Its text and version, without a look at its steps.
    ///
    /// # Errors
    /// What the system said.
    pub fn read(&self) -> io::Result<(String, Version)> {
        let text = disk::text(&self.path)?;
        let version = Version::of(&text);
        Ok((text, version))
    }

    /// What it holds now; a change made outside becomes a step that can be undone like any other.
    ///
    /// # Errors
    /// What the system said. A folder that cannot be written to can still be looked at.
    pub fn state(&self) -> io::Result<State> {
        match self.lock() {
            Ok(_lock) => {
                let (text, mut history) = self.taken_in()?;
                history.save().ok();
                Ok(state(text, &mut history))
            }
            Err(_) => {
                let (text, version) = self.read()?;
                Ok(State { text, version, undo: None, redo: None, kept: Vec::new() })
            }
        }
    }

    /// Writes a whole text. If the file has changed since `on`, the text is kept beside it instead.
    ///
    /// # Errors
    /// Why it was not written.
    pub fn write(&self, on: &Version, text: &str, words: &str) -> Result<State, Refused> {
        let _lock = self.lock()?;
        let (now, mut history) = self.taken_in()?;
        if Version::of(&now) != *on {
            return Err(set_aside(&mut history, text, words)?);
        }
        self.place(&mut history, text, words)
    }

    /// Makes changes at places of the file. If the file has changed since `on`, but not at these places, they are
    /// made on what it holds now; otherwise the text they would have made is kept beside it.
    ///
    /// # Errors
    /// Why it was not written.
    pub fn edit(&self, on: &Version, changes: &[Change], words: &str, check: Check) -> Result<State, Refused> {
        let _lock = self.lock()?;
        let (now, mut history) = self.taken_in()?;
        if Version::of(&now) != *on {
            let base = history.text(on).ok_or(Refused::Stale)?;
            let mine = edit::apply_to(self.groups, &base, changes).map_err(Refused::Unfit)?;
            if changes.iter().any(|change| !same_there(change, &base, &now)) {
                return Err(set_aside(&mut history, &mine, words)?);
            }
        }
        let text = edit::apply_to(self.groups, &now, changes).map_err(Refused::Unfit)?;
        let mistakes = check(&text);
        if !mistakes.is_empty() && check(&now).len() < mistakes.len() {
            return Err(Refused::Mistakes { text, mistakes });
        }
        self.place(&mut history, &text, words)
    }

    /// Takes the last step back.
    ///
    /// # Errors
    /// Why it was not.
    pub fn undo(&self, on: &Version) -> Result<State, Refused> {
        self.step(on, |history| history.at.checked_sub(1))
    }

    /// Does the step again that was taken back.
    ///
    /// # Errors
    /// Why it was not.
    pub fn redo(&self, on: &Version) -> Result<State, Refused> {
        self.step(on, |history| Some(history.at + 1).filter(|&next| next < history.steps.len()))
    }

    /// Lets go of a version that was set aside; its text stays on disk. `take` makes it the file's text first.
    ///
    /// # Errors
    /// Why it was not.
    pub fn settle(&self, on: &Version, kept: &Version, take: bool) -> Result<State, Refused> {
        let _lock = self.lock()?;
        let (now, mut history) = self.taken_in()?;
        if Version::of(&now) != *on {
            return Err(Refused::Stale);
        }
        let text = history.kept.iter().find(|one| one.version == *kept).and_then(|one| history.text(&one.version));
        let text = text.ok_or(Refused::NoStep)?;
        history.kept.retain(|one| one.version != *kept);
        if take && text != now {
            return self.place(&mut history, &text, "the version that was set aside");
        }
        history.save()?;
        Ok(state(now, &mut history))
    }

    fn step(&self, on: &Version, to: impl Fn(&History) -> Option<usize>) -> Result<State, Refused> {
        let _lock = self.lock()?;
        let (now, mut history) = self.taken_in()?;
        if Version::of(&now) != *on {
            history.save()?;
            return Err(Refused::Stale);
        }
        let next = to(&history).ok_or(Refused::NoStep)?;
        let text = history.text(&history.steps[next].version).ok_or(Refused::NoStep)?;
        disk::put(&self.path, &text, Settle::Now)?;
        history.at = next;
        history.save()?;
        Ok(state(text, &mut history))
    }

    /// Writes a text and the step to it.
    fn place(&self, history: &mut History, text: &str, words: &str) -> Result<State, Refused> {
        let version = history.keep(text)?;
        if history.now() != Some(&version) {
            // An editor that knows nothing of our lock may have written a moment ago: look once more, last of all.
            let expected = history.now().cloned();
            let (now, here) = self.read()?;
            if expected != Some(here) {
                history.keep(&now)?;
                return Err(set_aside(history, text, words)?);
            }
            disk::put(&self.path, text, Settle::Now)?;
            history.push(version, words);
        }
        history.save()?;
        Ok(state(text.to_owned(), history))
    }

    /// Reads the file and its history; a text that the history does not stand at is taken in as a step.
    fn taken_in(&self) -> io::Result<(String, History)> {
        let mut history = History::open(&self.beside());
        let (text, version) = self.read()?;
        if history.now() != Some(&version) {
            history.keep(&text)?;
            let words = if history.steps.is_empty() { "as it was opened" } else { "changed outside the desk" };
            history.push(version, words);
        }
        Ok((text, history))
    }

    fn beside(&self) -> PathBuf {
        disk::beside(&self.path)
    }

    fn lock(&self) -> io::Result<File> {
        disk::lock(&self.path)
    }
}

fn set_aside(history: &mut History, text: &str, words: &str) -> Result<Refused, Refused> {
    let version = history.keep(text)?;
    if !history.kept.iter().any(|one| one.version == version) && history.now() != Some(&version) {
        history.kept.push(Step { version: version.clone(), words: words.to_owned() });
    }
    history.save()?;
    Ok(Refused::Both(version))
}

fn same_there(change: &Change, base: &str, now: &str) -> bool {
    path::written(base, change.place()) == path::written(now, change.place())
}

fn state(text: String, history: &mut History) -> State {
    let words = |step: Option<&Step>| step.map(|step| step.words.clone());
    let kept = history.kept.iter().filter_map(|one| {
        Some(Kept { version: one.version.clone(), words: one.words.clone(), text: history.text(&one.version)? })
    });
    State {
        version: Version::of(&text),
        undo: (history.at > 0).then(|| words(history.steps.get(history.at))).flatten(),
        redo: words(history.steps.get(history.at + 1)),
        kept: kept.collect(),
        text,
    }
}
