//! A page of words: what it says, block by block, and the same as plain text, wrapped.

use crate::svg::plain;

/// Columns of a page.
pub(crate) const COLUMNS: usize = 78;

/// One block of a page, for whoever sets it: the words are the same on every dress of the page.
#[derive(Clone, Debug, PartialEq)]
pub enum Block {
    /// What the page is.
    Title(String),
    /// Heads what follows.
    Heading(String),
    /// A fact at the head of the page.
    Fact {
        /// What it tells.
        name: String,
        /// What it is.
        words: String,
    },
    /// A figure or a property, by its name.
    Item {
        /// What it tells.
        name: String,
        /// What it is.
        words: String,
    },
    /// A paragraph.
    Text(String),
    /// One of several.
    Bullet(String),
    /// One of a sequence, to be ticked.
    Tick {
        /// Its number.
        number: usize,
        /// What is to be done.
        words: String,
    },
    /// What belongs to the tick before.
    Detail(String),
    /// Something ends here.
    Gap,
}

/// A page in the making.
#[derive(Default)]
pub(crate) struct Page(Vec<Block>);

impl Page {
    /// Its blocks.
    pub(crate) fn blocks(self) -> Vec<Block> {
        self.0
    }

    /// The page as plain text of at most so many columns.
    pub(crate) fn finish(self) -> String {
        let mut text = Text(String::new());
        for block in &self.0 {
            text.block(block);
        }
        text.0
    }

    pub(crate) fn title(&mut self, words: &str) {
        self.0.push(Block::Title(words.into()));
    }

    pub(crate) fn heading(&mut self, words: &str) {
        self.0.push(Block::Heading(words.into()));
    }

    pub(crate) fn blank(&mut self) {
        self.0.push(Block::Gap);
    }

    pub(crate) fn fact(&mut self, name: &str, words: &str) {
        self.0.push(Block::Fact { name: name.into(), words: words.into() });
    }

    pub(crate) fn item(&mut self, name: &str, words: &str) {
        self.0.push(Block::Item { name: name.into(), words: words.into() });
    }

    pub(crate) fn text(&mut self, words: &str) {
        self.0.push(Block::Text(words.into()));
    }

    pub(crate) fn bullet(&mut self, words: &str) {
        self.0.push(Block::Bullet(words.into()));
    }

    pub(crate) fn numbered(&mut self, number: usize, words: &str) {
        self.0.push(Block::Tick { number, words: words.into() });
    }

    pub(crate) fn detail(&mut self, words: &str) {
        self.0.push(Block::Detail(words.into()));
    }
}

/// Plain text in the making.
struct Text(String);

impl Text {
    fn block(&mut self, block: &Block) {
        match block {
            Block::Title(words) => {
                self.wrapped(words, "", "");
                self.line(&"=".repeat(COLUMNS));
                self.line("");
            }
            Block::Heading(words) => self.line(words),
            Block::Fact { name, words } => self.wrapped(words, &format!("{name:<9}"), &" ".repeat(9)),
            Block::Item { name, words } => self.wrapped(words, &format!("  {name:<17}"), &" ".repeat(19)),
            Block::Text(words) => self.wrapped(words, "  ", "  "),
            Block::Bullet(words) => self.wrapped(words, "- ", "  "),
            Block::Tick { number, words } => self.wrapped(words, &format!("  [ ] {number}. "), "         "),
            Block::Detail(words) => self.wrapped(words, "         ", "         "),
            Block::Gap => self.line(""),
        }
    }

    fn line(&mut self, words: &str) {
        self.0 += words;
        self.0.push('\n');
    }

    fn wrapped(&mut self, words: &str, first: &str, rest: &str) {
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
