//! The folder that was opened, and the dials in it. Nothing outside it can be reached.

use std::fs;
use std::io;
use std::path::{Component, Path, PathBuf};

/// How deep a folder is looked through for dials, and how many are listed.
const DEEP: usize = 3;
const MOST: usize = 300;

/// The opened folder.
#[derive(Clone, Debug)]
pub struct Shelf {
    root: PathBuf,
}

/// Why a name leads to no dial.
#[derive(Debug, PartialEq, Eq)]
pub enum NotHere {
    /// It would lead out of the opened folder, by itself or by a link.
    Outside,
    /// There is nothing of that name.
    Missing,
}

impl Shelf {
    /// Opens a folder.
    ///
    /// # Errors
    /// What the system said.
    pub fn open(folder: &Path) -> io::Result<Shelf> {
        let root = fs::canonicalize(folder)?;
        if root.is_dir() { Ok(Shelf { root }) } else { Err(io::ErrorKind::NotADirectory.into()) }
    }

    /// The folder.
    pub fn root(&self) -> &Path {
        &self.root
    }

    /// The file of a dial, by its path within the folder with `/` between its parts.
    ///
    /// # Errors
    /// Names that lead out of the folder, through links too, and names of nothing.
    pub fn file(&self, name: &str) -> Result<PathBuf, NotHere> {
        let path = self.inside(name)?;
        if path.extension().is_none_or(|end| end != "toml") {
            return Err(NotHere::Outside);
        }
        let real = fs::canonicalize(&path).map_err(|_| NotHere::Missing)?;
        // A link anywhere on the way would make the two differ.
        if real != path {
            return Err(NotHere::Outside);
        }
        if real.is_file() { Ok(real) } else { Err(NotHere::Missing) }
    }

    /// A place for something new, by its path within the folder.
    ///
    /// # Errors
    /// Names that lead out of the folder, through links too.
    pub fn place(&self, name: &str) -> Result<PathBuf, NotHere> {
        let path = self.inside(name)?;
        let there = path.ancestors().find(|one| one.exists()).unwrap_or(&self.root);
        let real = fs::canonicalize(there).map_err(|_| NotHere::Missing)?;
        if real == there { Ok(path) } else { Err(NotHere::Outside) }
    }

    /// The name of a file within the folder.
    pub fn name_of(&self, path: &Path) -> Option<String> {
        let real = fs::canonicalize(path).ok()?;
        let inner = real.strip_prefix(&self.root).ok()?;
        let parts: Vec<String> = inner.iter().map(|part| part.to_string_lossy().into_owned()).collect();
        Some(parts.join("/"))
    }

    fn inside(&self, name: &str) -> Result<PathBuf, NotHere> {
        let path = Path::new(name);
        let plain = !name.is_empty()
            && !name.contains(['\\', '\0', ':'])
            && path
                .components()
                .all(|part| matches!(part, Component::Normal(name) if !name.to_string_lossy().starts_with('.')));
        if plain { Ok(self.root.join(path)) } else { Err(NotHere::Outside) }
    }

    /// The dials in the folder, by name: TOML files with a counter in them. Hidden folders, job folders and links
    /// are not looked into.
    pub fn dials(&self) -> Vec<String> {
        let mut found = Vec::new();
        self.look_into(&self.root, DEEP, &mut found);
        found.sort();
        found.truncate(MOST);
        found
    }

    fn look_into(&self, folder: &Path, deep: usize, found: &mut Vec<String>) {
        let Ok(entries) = fs::read_dir(folder) else { return };
        for entry in entries.flatten() {
            let name = entry.file_name().to_string_lossy().into_owned();
            let Ok(kind) = entry.file_type() else { continue };
            if name.starts_with('.') || found.len() >= MOST {
                continue;
            }
            let path = entry.path();
            if kind.is_dir() && deep > 0 && !name.contains("-job") && name != "target" && name != "node_modules" {
                self.look_into(&path, deep - 1, found);
            } else if kind.is_file() && name.ends_with(".toml") && is_dial(&path, &name) {
                found.extend(self.name_of(&path));
            }
        }
    }
}

/// A broken file may have lost its counter: what is called `dial.toml` is always one.
fn is_dial(path: &Path, name: &str) -> bool {
    let small = fs::metadata(path).is_ok_and(|about| about.len() < 1 << 20);
    name == "dial.toml" || small && fs::read_to_string(path).is_ok_and(|text| text.contains("[[counter]]"))
}
