//! Where each value stands in the maker's file, and mistakes that point there.

use std::collections::BTreeMap;
use std::ops::Range;

/// Byte ranges of the values of a file, by path: `mark.height`, `counter[1].window.angle`.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct Spans(BTreeMap<String, Range<usize>>);

impl Spans {
    /// Remembers where the value of `path` stands.
    pub fn put(&mut self, path: impl Into<String>, span: Range<usize>) {
        self.0.insert(path.into(), span);
    }

    /// Where the value of `path` stands, if the maker wrote it.
    pub fn get(&self, path: &str) -> Option<Range<usize>> {
        self.0.get(path).cloned()
    }

    /// All paths that begin so, in order.
    pub fn under(&self, start: &str) -> Vec<String> {
        self.0.keys().filter(|path| path.starts_with(start)).cloned().collect()
    }
}

/// A place in the file, with what to say about it.
#[derive(Clone, Debug, PartialEq)]
pub struct Label {
    /// Bytes of the file.
    pub span: Range<usize>,
    /// What is there, or why it matters.
    pub words: String,
}

/// Something the maker must mend in a file before anything can be computed from it.
#[derive(Clone, Debug, PartialEq)]
pub struct Mistake {
    /// What is wrong, in a lower-case phrase.
    pub what: String,
    /// The place itself; `None` when something is missing altogether.
    pub at: Option<Label>,
    /// Other places that clash with it.
    pub also: Vec<Label>,
    /// What to write instead.
    pub help: String,
}
