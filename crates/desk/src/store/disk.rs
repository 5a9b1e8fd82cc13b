//! Files on disk: whole or absent, and known by their content.

use sha2::{Digest, Sha256};
use std::fmt::Write as _;
use std::{fs, io, path::Path};
pub(super) use workshop::{Settle, put};

/// Which text a file holds: the first 16 hexadecimal digits of its SHA-256 (FIPS 180-4).
#[derive(Clone, Debug, PartialEq, Eq, Hash, PartialOrd, Ord, serde::Serialize, serde::Deserialize)]
pub struct Version(String);

impl Version {
    /// The version of a text.
    pub fn of(text: &str) -> Version {
        let digest = Sha256::digest(text.as_bytes());
        let mut name = String::new();
        for byte in &digest[..8] {
            let _ = write!(name, "{byte:02x}");
        }
        Version(name)
    }

    /// Its digits.
    pub fn as_str(&self) -> &str {
        &self.0
    }

    /// Whether this is what `of` makes; anything else must not become part of a path.
    pub(super) fn is_sound(&self) -> bool {
        self.0.len() == 16 && self.0.bytes().all(|byte| byte.is_ascii_hexdigit())
    }
}

/// The text of a file.
///
/// # Errors
/// What the system said, or that it is not UTF-8.
pub(super) fn text(path: &Path) -> io::Result<String> {
    let bytes = fs::read(path)?;
    String::from_utf8(bytes)
        .map_err(|_| io::Error::new(io::ErrorKind::InvalidData, "it is not text in UTF-8: save it as UTF-8"))
}
