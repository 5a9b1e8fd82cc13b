//! The job folder on disk: written whole or not at all, and never over what is there.

use serde_json::{Value, json};
use std::fmt;
use std::fs::{self, File};
use std::io::{self, Write};
use std::path::{Component, Path, PathBuf};

/// Name of the list of our own files in a job folder.
const MANIFEST: &str = "job.json";

/// What became of a job folder.
#[derive(Clone, Debug, PartialEq, Eq)]
pub enum Written {
    /// It is new.
    New,
    /// The same files were there already; nothing was touched.
    Unchanged,
    /// What was there is kept under this name.
    Kept {
        /// Where.
        kept: PathBuf,
        /// Whether it held files that are not ours, or that were changed.
        foreign: bool,
    },
}

/// Why a job folder could not be written. Nothing was changed.
#[derive(Debug)]
pub enum FolderError {
    /// The place is taken by something that is not a folder.
    NotAFolder(PathBuf),
    /// A name that leads out of the folder.
    Outside(PathBuf),
    /// The system refused.
    Io {
        /// What was being done.
        doing: &'static str,
        /// Where.
        path: PathBuf,
        /// What it said.
        error: io::Error,
    },
}

impl fmt::Display for FolderError {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        match self {
            FolderError::NotAFolder(path) => {
                write!(f, "{} is not a folder: name another place with --to, or move it away", path.display())
            }
            FolderError::Outside(path) => write!(
                f,
                "{} leads out of the job folder: this is a fault of the program, please report it",
                path.display()
            ),
            FolderError::Io { doing, path, error } => write!(
                f,
                "{doing} {} did not work: {error}; nothing was changed; see whether the place exists, may be written, and has room",
                path.display()
            ),
        }
    }
}

impl std::error::Error for FolderError {}

fn io_error<'a>(doing: &'static str, path: &'a Path) -> impl FnOnce(io::Error) -> FolderError + 'a {
    move |error| FolderError::Io { doing, path: path.to_owned(), error }
}

/// Writes the files of a job. Everything goes into a folder beside the target first; when all of it is on disk, what was at the
/// target is renamed, and the new folder takes its place.
///
/// # Errors
/// What went wrong and where; the target is as it was then.
pub fn write_job(target: &Path, files: &[(PathBuf, Vec<u8>)]) -> Result<Written, FolderError> {
    for (path, _) in files {
        if !path.components().all(|part| matches!(part, Component::Normal(_))) {
            return Err(FolderError::Outside(path.clone()));
        }
    }
    if target.exists() && !target.is_dir() {
        return Err(FolderError::NotAFolder(target.to_owned()));
    }
    // Names such as `.` or `..` cannot be renamed: the folder's own name can.
    let real = match target.file_name() {
        None => fs::canonicalize(target).map_err(io_error("finding", target))?,
        Some(_) => target.to_owned(),
    };
    let target = real.as_path();
    let manifest = manifest(files);
    if target.is_dir() && untouched(target, files, &manifest) {
        return Ok(Written::Unchanged);
    }
    let parent = target.parent().filter(|parent| !parent.as_os_str().is_empty()).unwrap_or(Path::new("."));
    fs::create_dir_all(parent).map_err(io_error("making the folder", parent))?;
    let name = target.file_name().map(|name| name.to_string_lossy().into_owned()).unwrap_or_default();
    let draft = free(parent, &format!(".{name}.draft"));
    let placed = write_draft(&draft, files, &manifest).and_then(|()| place(&draft, target, parent, &name));
    if placed.is_err() {
        // Only our own draft, made a moment ago, is removed.
        let _ = fs::remove_dir_all(&draft);
    }
    placed
}

fn write_draft(draft: &Path, files: &[(PathBuf, Vec<u8>)], manifest: &Value) -> Result<(), FolderError> {
    fs::create_dir(draft).map_err(io_error("making the folder", draft))?;
    let text = format!("{manifest:#}\n").into_bytes();
    let list = (PathBuf::from(MANIFEST), text);
    for (path, bytes) in files.iter().chain([&list]) {
        let path = draft.join(path);
        if let Some(folder) = path.parent() {
            fs::create_dir_all(folder).map_err(io_error("making the folder", folder))?;
        }
        let mut file = File::create(&path).map_err(io_error("writing", &path))?;
        file.write_all(bytes).and_then(|()| file.sync_all()).map_err(io_error("writing", &path))?;
    }
    let mut folders: Vec<PathBuf> =
        files.iter().filter_map(|(path, _)| path.parent()).map(|folder| draft.join(folder)).collect();
    folders.sort();
    folders.dedup();
    folders.iter().rev().for_each(|folder| settle(folder));
    settle(draft);
    Ok(())
}

/// Brings the names in a folder to disk, on systems where a folder can be opened for that; elsewhere the system does it in its own time.
fn settle(folder: &Path) {
    if let Ok(open) = File::open(folder) {
        let _ = open.sync_all();
    }
}

/// Renames what is there, then the draft; if the second fails the first is undone.
fn place(draft: &Path, target: &Path, parent: &Path, name: &str) -> Result<Written, FolderError> {
    // A folder that was made for the job and is still empty need not be kept: only an empty one can be removed like this.
    if !target.exists() || fs::remove_dir(target).is_ok() {
        fs::rename(draft, target).map_err(io_error("naming", target))?;
        settle(parent);
        return Ok(Written::New);
    }
    let foreign = holds_foreign(target);
    let kept = (1..).map(|n| parent.join(format!("{name}.kept-{n}"))).find(|path| !path.exists()).unwrap_or_default();
    fs::rename(target, &kept).map_err(io_error("keeping aside", target))?;
    if let Err(error) = fs::rename(draft, target) {
        let _ = fs::rename(&kept, target);
        return Err(io_error("naming", target)(error));
    }
    settle(parent);
    Ok(Written::Kept { kept, foreign })
}

/// A name that is not taken.
fn free(parent: &Path, name: &str) -> PathBuf {
    let first = parent.join(name);
    if !first.exists() {
        return first;
    }
    (1..).map(|n| parent.join(format!("{name}-{n}"))).find(|path| !path.exists()).unwrap_or(first)
}

/// The list of our own files: name, size, and a checksum that tells a changed file (not a signature).
fn manifest(files: &[(PathBuf, Vec<u8>)]) -> Value {
    let list: Vec<Value> = files.iter().map(|(path, bytes)| json!({ "path": path.to_string_lossy(), "bytes": bytes.len(), "checksum": checksum(bytes) })).collect();
    json!({ "made_by": "dialwright", "files": list })
}

/// FNV-1a, 64 bits (Fowler, Noll & Vo 1991): the same on every machine and in every release.
fn checksum(bytes: &[u8]) -> String {
    let hash = bytes
        .iter()
        .fold(0xcbf2_9ce4_8422_2325_u64, |hash, byte| (hash ^ u64::from(*byte)).wrapping_mul(0x0000_0100_0000_01b3));
    format!("{hash:016x}")
}

/// Whether the folder holds these very files already, and its list says so.
fn untouched(target: &Path, files: &[(PathBuf, Vec<u8>)], manifest: &Value) -> bool {
    let listed = fs::read(target.join(MANIFEST)).ok().and_then(|text| serde_json::from_slice::<Value>(&text).ok());
    listed.as_ref() == Some(manifest)
        && files.iter().all(|(path, bytes)| fs::read(target.join(path)).ok().as_ref() == Some(bytes))
}

/// Whether a folder holds files that its list does not name, or that have changed since.
fn holds_foreign(target: &Path) -> bool {
    let listed = fs::read(target.join(MANIFEST)).ok().and_then(|text| serde_json::from_slice::<Value>(&text).ok());
    let Some(Value::Array(list)) = listed.map(|mut list| list["files"].take()) else {
        return true;
    };
    let known = |path: &Path| {
        let name = path.to_string_lossy();
        name == MANIFEST
            || list.iter().any(|one| {
                one["path"] == *name
                    && fs::read(target.join(path)).is_ok_and(|bytes| one["checksum"] == checksum(&bytes))
            })
    };
    let mut folders = vec![PathBuf::new()];
    while let Some(folder) = folders.pop() {
        let Ok(entries) = fs::read_dir(target.join(&folder)) else {
            return true;
        };
        for entry in entries.flatten() {
            let path = folder.join(entry.file_name());
            if entry.file_type().is_ok_and(|kind| kind.is_dir()) {
                folders.push(path);
            } else if !known(&path) {
                return true;
            }
        }
    }
    false
}
