//! What a page asks of a dial or of its workshop file. Whatever changes a file names the version that it was begun on.

use crate::store::{Change, Version};
use serde::Deserialize;

/// Which dial, and which look at it the page has already.
#[derive(Deserialize)]
pub(super) struct Which {
    pub(super) dial: String,
    #[serde(default)]
    pub(super) have: String,
}

/// Changes of some values.
#[derive(Deserialize)]
pub(super) struct Edit {
    pub(super) dial: String,
    pub(super) on: Version,
    pub(super) changes: Vec<Change>,
    /// What is done, for undo.
    #[serde(default)]
    pub(super) words: String,
    #[serde(default)]
    pub(super) have: String,
}

/// A whole text.
#[derive(Deserialize)]
pub(super) struct Text {
    pub(super) dial: String,
    pub(super) on: Version,
    pub(super) text: String,
    #[serde(default)]
    pub(super) words: String,
    #[serde(default)]
    pub(super) have: String,
}

/// A step back or forth.
#[derive(Deserialize)]
pub(super) struct Step {
    pub(super) dial: String,
    pub(super) on: Version,
    #[serde(default)]
    pub(super) have: String,
}

/// A version that was set aside, to be taken or let go.
#[derive(Deserialize)]
pub(super) struct Settle {
    pub(super) dial: String,
    pub(super) on: Version,
    pub(super) kept: Version,
    pub(super) take: bool,
    #[serde(default)]
    pub(super) have: String,
}
