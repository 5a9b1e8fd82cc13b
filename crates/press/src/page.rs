//! A page of plain text, wrapped.

use crate::svg::plain;

/// Columns of a page.
pub(crate) const COLUMNS: usize = 78;

/// A page of at most so many columns.
#[derive(Default)]
pub(crate) struct Page(String);

impl Page {
    /// The page as it stands.
    pub(crate) fn finish(self) -> String {
        self.0
    }

    pub(crate) fn line(&mut self, words: &str) {
        self.0 += words;
        self.0.push('\n');
    }

    pub(crate) fn blank(&mut self) {
        self.0.push('\n');
    }

    pub(crate) fn item(&mut self, name: &str, words: &str) {
        self.wrapped(words, &format!("{name:<9}"), &" ".repeat(9));
    }

    pub(crate) fn text(&mut self, words: &str) {
        self.wrapped(words, "  ", "  ");
    }

    pub(crate) fn bullet(&mut self, words: &str) {
        self.wrapped(words, "- ", "  ");
    }

    pub(crate) fn numbered(&mut self, number: usize, words: &str) {
        self.wrapped(words, &format!("  [ ] {number}. "), "         ");
    }

    pub(crate) fn detail(&mut self, words: &str) {
        self.wrapped(words, "         ", "         ");
    }

    pub(crate) fn wrapped(&mut self, words: &str, first: &str, rest: &str) {
        let mut line = first.to_owned();
        let mut begun = false;
        for word in plain(words).split_whitespace() {
            if begun && line.chars().count() + 1 + word.chars().count() > COLUMNS {
                self.line(line.trim_end());
                line = rest.to_owned();
                begun = false;
            }
            if begun {
                line.push(' ');
            }
            line += word;
            begun = true;
        }
        self.line(line.trim_end());
    }
}
