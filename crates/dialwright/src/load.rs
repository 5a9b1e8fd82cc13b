//! Reads a dial file and its workshop from disk.

use crate::args::On;
use crate::talk::Talk;
use dial::design::{self, Design};
use dial::family::Member;
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
/// Name of a file of votes beside the workshop file, or beside the dial or above it.
const VOTES: &str = "votes.toml";

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

/// The family of a dial: its standard, if the file names one, and the others of a set.
pub fn family(loaded: &Loaded, set: &[PathBuf]) -> Result<Vec<Member>, Talk> {
    let beside = loaded.file.parent().unwrap_or(Path::new(""));
    let standard = loaded.design.standard.iter().map(|path| (beside.join(path), true));
    let others = set.iter().map(|path| (path.clone(), false));
    standard.chain(others).map(|(path, standard)| member(&path, &loaded.workshop, standard)).collect()
}

/// One dial of a family.
pub fn member(path: &Path, workshop: &Workshop, standard: bool) -> Result<Member, Talk> {
    let text = read(path)?;
    let told = |mistakes| Talk::Mistakes { file: path.to_owned(), text: text.clone(), mistakes };
    let design = design::read(&text, workshop).map_err(told)?;
    let laid = dial::layout::assemble(&design).map_err(told)?;
    Ok(Member { name: design.name, dial: laid.dial, standard })
}

/// The workshop that was named, or the one found beside the dial or above it, or the starter.
pub fn workshop(named: Option<&Path>, beside: Option<&Path>) -> Result<Workshop, Talk> {
    let found = match named {
        Some(path) => Some(path.to_owned()),
        None => beside.and_then(find),
    };
    let voted = match (named, beside) {
        (Some(path), _) => Some(path.with_file_name(VOTES)).filter(|path| path.is_file()),
        (None, beside) => beside.and_then(|dial| above(dial, VOTES)),
    };
    let whole = match found {
        None => workshop::starter(),
        Some(path) => {
            let text = read(&path)?;
            workshop::read(&text).map_err(|mistakes| Talk::Mistakes { file: path, text, mistakes })?
        }
    };
    let votes = match voted {
        None => Vec::new(),
        Some(path) => {
            let text = read(&path)?;
            workshop::read_votes(&text).map_err(|mistakes| Talk::Mistakes { file: path, text, mistakes })?
        }
    };
    Ok(Workshop { votes, ..whole })
}

/// The file of votes of a dial; where there is none, where it is begun: beside the workshop file, else beside the dial.
pub fn votes_place(named: Option<&Path>, dial: &Path) -> PathBuf {
    let there = if named.is_some() { None } else { above(dial, VOTES) };
    let workshop = || named.map(Path::to_owned).or_else(|| find(dial)).unwrap_or_else(|| dial.to_owned());
    there.unwrap_or_else(|| workshop().with_file_name(VOTES))
}

/// The workshop file beside the dial or in the folders above it.
pub fn find(dial: &Path) -> Option<PathBuf> {
    above(dial, WORKSHOP)
}

/// The workshop file that a measure taken in a folder belongs to: there or in the folders above it, else a new one there.
pub fn workshop_of(folder: &Path) -> PathBuf {
    let real = fs::canonicalize(folder).unwrap_or_else(|_| folder.to_owned());
    let there = real.ancestors().map(|above| above.join(WORKSHOP)).find(|path| path.is_file());
    there.unwrap_or_else(|| folder.join(WORKSHOP))
}

/// A file of that name beside the dial or in the folders above it. A dial that is not there yet has what lies where it will be.
fn above(dial: &Path, name: &str) -> Option<PathBuf> {
    let real = |path: &Path| fs::canonicalize(if path.as_os_str().is_empty() { Path::new(".") } else { path }).ok();
    let folder = match real(dial) {
        Some(file) => file.parent()?.to_owned(),
        None => dial.ancestors().skip(1).find_map(real)?,
    };
    folder.ancestors().map(|above| above.join(name)).find(|path| path.is_file())
}

pub fn read(path: &Path) -> Result<String, Talk> {
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
