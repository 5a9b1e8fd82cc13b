//! The texts a file has had, and the steps between them, on disk.

use super::disk::{self, Settle, Version};
use serde::{Deserialize, Serialize};
use std::fs;
use std::io;
use std::path::{Path, PathBuf};

/// Steps that are kept; older ones are let go.
const MOST: usize = 1000;

/// One step: what was done, and the text that it left.
#[derive(Clone, Debug, Serialize, Deserialize)]
pub(super) struct Step {
    pub(super) version: Version,
    pub(super) words: String,
}

/// All steps of one file, and which of them the file stands at.
#[derive(Debug, Default, Serialize, Deserialize)]
pub(super) struct History {
    pub(super) at: usize,
    pub(super) steps: Vec<Step>,
    /// Versions that were set aside because the file had changed meanwhile.
    #[serde(default)]
    pub(super) kept: Vec<Step>,
    #[serde(skip)]
    folder: PathBuf,
}

impl History {
    /// Reads the history in a folder; one that cannot be read begins anew, its texts stay.
    pub(super) fn open(folder: &Path) -> History {
        let read = disk::text(&folder.join("steps.json")).ok();
        let mut history: History = read.and_then(|text| serde_json::from_str(&text).ok()).unwrap_or_default();
        history.steps.retain(|step| step.version.is_sound());
        history.kept.retain(|step| step.version.is_sound());
        history.at = history.at.min(history.steps.len().saturating_sub(1));
        history.folder = folder.to_owned();
        history
    }

    fn text_path(&self, version: &Version) -> PathBuf {
        self.folder.join("texts").join(format!("{}.toml", version.as_str()))
    }

    /// The text of a version, if it is here and whole.
    pub(super) fn text(&self, version: &Version) -> Option<String> {
        let text = disk::text(&self.text_path(version)).ok()?;
        (Version::of(&text) == *version).then_some(text)
    }

    /// Keeps a text; a text that is here already is not written again.
    pub(super) fn keep(&self, text: &str) -> io::Result<Version> {
        let version = Version::of(text);
        if self.text(&version).is_none() {
            let path = self.text_path(&version);
            if let Some(folder) = path.parent() {
                fs::create_dir_all(folder)?;
            }
            disk::put(&path, text, Settle::Later)?;
        }
        Ok(version)
    }

    /// Adds a step after the present one; what was undone before it can no longer be done again, but its texts stay.
    pub(super) fn push(&mut self, version: Version, words: &str) {
        self.steps.truncate(self.at + 1);
        self.steps.push(Step { version, words: words.to_owned() });
        if self.steps.len() > MOST {
            let surplus = self.steps.len() - MOST;
            let gone: Vec<Step> = self.steps.drain(..surplus).collect();
            for step in gone {
                if !self.steps.iter().chain(&self.kept).any(|one| one.version == step.version) {
                    let _ = fs::remove_file(self.text_path(&step.version));
                }
            }
        }
        self.at = self.steps.len() - 1;
    }

    /// The version that the history believes the file to have.
    pub(super) fn now(&self) -> Option<&Version> {
        self.steps.get(self.at).map(|step| &step.version)
    }

    /// Writes the list of steps. It need not reach the disk at once: a step that is missing after a power cut is
    /// taken in again as a change from outside.
    pub(super) fn save(&self) -> io::Result<()> {
        let text = serde_json::to_string_pretty(self).map_err(io::Error::other)?;
        disk::put(&self.folder.join("steps.json"), &text, Settle::Later)
    }
}
