//! Dials that were opened lately, newest first. The list belongs to the person, not to a folder, and lies where the
//! system keeps such things.

use super::disk::{self, Settle};
use std::fs;
use std::path::{Path, PathBuf};

/// How many are remembered.
const MOST: usize = 12;

/// The list of recent dials.
#[derive(Clone, Debug)]
pub struct Recent {
    file: Option<PathBuf>,
}

impl Recent {
    /// The person's own list; without such a place nothing is remembered.
    pub fn own() -> Recent {
        let folder = dirs::state_dir().or_else(dirs::data_local_dir);
        Recent { file: folder.map(|folder| folder.join("dialwright").join("recent.json")) }
    }

    /// A list in this file.
    pub fn in_file(file: &Path) -> Recent {
        Recent { file: Some(file.to_owned()) }
    }

    /// No list.
    pub fn none() -> Recent {
        Recent { file: None }
    }

    /// The dial files, newest first; those that are gone are left out.
    pub fn list(&self) -> Vec<PathBuf> {
        let text = self.file.as_ref().and_then(|file| disk::text(file).ok());
        let list: Vec<PathBuf> = text.and_then(|text| serde_json::from_str(&text).ok()).unwrap_or_default();
        list.into_iter().filter(|path| path.is_file()).take(MOST).collect()
    }

    /// Remembers a dial file as the newest. What goes wrong here is not worth a word.
    pub fn remember(&self, path: &Path) {
        let Some(file) = &self.file else { return };
        let mut list = self.list();
        if list.first().is_some_and(|first| first == path) {
            return;
        }
        list.retain(|one| one != path);
        list.insert(0, path.to_owned());
        list.truncate(MOST);
        if let Some(folder) = file.parent() {
            let _ = fs::create_dir_all(folder);
        }
        if let Ok(text) = serde_json::to_string_pretty(&list) {
            let _ = disk::put(file, &text, Settle::Later);
        }
    }
}
