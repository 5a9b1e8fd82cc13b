//! Reads a dial file and its workshop from disk.

use crate::args::On;
use crate::talk::Talk;
use dial::design::{self, Design};
use process::Workshop;
use std::fs;
use std::path::{Path, PathBuf};

/// A dial file that reads, with the workshop it is made in.
pub struct Loaded {
    /// Its text as the maker wrote it.
    pub text: String,
    /// Its path as the maker gave it.
    pub file: PathBuf,
    /// What it asks for.
    pub design: Design,
    /// Machine and stocks.
    pub workshop: Workshop,
}

/// Name of a workshop file beside the dial file or above it.
const WORKSHOP: &str = "workshop.toml";

/// Reads both files; a mistake in either is shown in the maker's own text.
pub fn load(on: &On) -> Result<Loaded, Talk> {
    let workshop = workshop(on.workshop.as_deref(), Some(&on.file))?;
    let text = read(&on.file)?;
    let design = design::read(&text, &workshop).map_err(|mistakes| Talk::Mistakes {
        file: on.file.clone(),
        text: text.clone(),
        mistakes,
    })?;
    Ok(Loaded { text, file: on.file.clone(), design, workshop })
}

/// The workshop that was named, or the one found beside the dial or above it, or the starter.
pub fn workshop(named: Option<&Path>, beside: Option<&Path>) -> Result<Workshop, Talk> {
    let found = match named {
        Some(path) => Some(path.to_owned()),
        None => beside.and_then(find),
    };
    let Some(path) = found else {
        return Ok(workshop::starter());
    };
    let text = read(&path)?;
    workshop::read(&text).map_err(|mistakes| Talk::Mistakes { file: path, text, mistakes })
}

/// The workshop file beside a dial file or in a folder above it.
pub fn find(dial: &Path) -> Option<PathBuf> {
    let folder = fs::canonicalize(dial).ok()?;
    folder.ancestors().skip(1).map(|above| above.join(WORKSHOP)).find(|path| path.is_file())
}

fn read(path: &Path) -> Result<String, Talk> {
    let bytes = fs::read(path).map_err(|error| {
        let help = if path.is_dir() {
            format!("this is a folder: name the file in it, as {}", path.join("dial.toml").display())
        } else {
            "check the path, or start a dial with `dialwright new`".into()
        };
        Talk::Plain(format!("{} cannot be read: {error}\n{help}", path.display()))
    })?;
    String::from_utf8(bytes).map_err(|error| {
        Talk::Plain(format!(
            "{} is not text in UTF-8 (byte {} is not): save it as UTF-8 from your editor",
            path.display(),
            error.utf8_error().valid_up_to()
        ))
    })
}
