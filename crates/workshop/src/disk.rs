//! A maker's file on disk: whole or as it was.

use std::fs::{self, File};
use std::io::{self, Write};
use std::path::Path;
use std::sync::atomic::{AtomicU64, Ordering};

/// Whether a write must have reached the disk before it returns.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Settle {
    /// Yes: the maker is told that it is kept.
    Now,
    /// In the system's own time.
    Later,
}

/// Puts a text where a file is or will be: into a file beside it first, which then takes its name. After a failure
/// the old text is there, untouched.
///
/// # Errors
/// What the system said.
pub fn put(path: &Path, text: &str, settle: Settle) -> io::Result<()> {
    static NEXT: AtomicU64 = AtomicU64::new(0);
    let folder = path.parent().filter(|folder| *folder != Path::new("")).unwrap_or(Path::new("."));
    let name = path.file_name().map(|name| name.to_string_lossy().into_owned()).unwrap_or_default();
    let draft = folder.join(format!(".{name}.{}-{}.draft", std::process::id(), NEXT.fetch_add(1, Ordering::Relaxed)));
    let placed = (|| {
        let mut file = File::create_new(&draft)?;
        file.write_all(text.as_bytes())?;
        if let Ok(old) = fs::metadata(path) {
            file.set_permissions(old.permissions())?;
        }
        if settle == Settle::Now {
            file.sync_all()?;
        }
        drop(file);
        fs::rename(&draft, path)?;
        if settle == Settle::Now
            && let Ok(open) = File::open(folder)
        {
            // The new name too; some systems cannot open a folder for that, and do it in their own time.
            let _ = open.sync_all();
        }
        Ok(())
    })();
    if placed.is_err() {
        let _ = fs::remove_file(&draft);
    }
    placed
}
