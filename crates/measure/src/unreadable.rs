//! Why a length or an angle cannot be read.

use std::fmt;

/// Why a text is no length or no angle, and what to write instead.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Unreadable {
    /// What is wrong, in a lower-case phrase.
    pub what: String,
    /// What to write instead.
    pub help: String,
}

impl Unreadable {
    pub(crate) fn new(what: impl Into<String>, help: impl Into<String>) -> Unreadable {
        Unreadable { what: what.into(), help: help.into() }
    }
}

impl fmt::Display for Unreadable {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        write!(f, "{}: {}", self.what, self.help)
    }
}

impl std::error::Error for Unreadable {}
