//! The documents of the book.

use std::fmt;
use std::str::FromStr;

/// One document; each can be made alone.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Document {
    /// What it will be: pictures, figures, findings.
    Dial,
    /// To cut out of paper and turn by hand before any wood is cut.
    Proof,
    /// Every stop of every wheel in its window.
    TurnTest,
    /// How each pairing of materials reads.
    Pairings,
    /// Pockets, poles, order of gluing.
    Magnets,
    /// One page for each setup, beside the machine.
    Tickets,
    /// Putting together, and checks at the bench.
    Assembly,
    /// What goes along to whoever gets it.
    HandOver,
    /// What it takes.
    Materials,
}

impl Document {
    /// All, in the order of the book.
    pub const ALL: [Document; 9] = [
        Document::Dial,
        Document::Proof,
        Document::TurnTest,
        Document::Pairings,
        Document::Magnets,
        Document::Tickets,
        Document::Assembly,
        Document::HandOver,
        Document::Materials,
    ];

    /// Its word on the command line and in file names.
    pub fn word(self) -> &'static str {
        match self {
            Document::Dial => "dial",
            Document::Proof => "paper-proof",
            Document::TurnTest => "turn-test",
            Document::Pairings => "pairings",
            Document::Magnets => "magnets",
            Document::Tickets => "tickets",
            Document::Assembly => "assembly",
            Document::HandOver => "hand-over",
            Document::Materials => "materials",
        }
    }

    /// Its title in the book.
    pub fn title(self) -> &'static str {
        match self {
            Document::Dial => "The dial",
            Document::Proof => "Paper proof",
            Document::TurnTest => "Turn test",
            Document::Pairings => "Pairings",
            Document::Magnets => "Magnets",
            Document::Tickets => "Tickets",
            Document::Assembly => "Assembly and inspection",
            Document::HandOver => "Hand-over",
            Document::Materials => "Bill of materials",
        }
    }
}

impl fmt::Display for Document {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        f.write_str(self.word())
    }
}

impl FromStr for Document {
    type Err = String;

    fn from_str(word: &str) -> Result<Document, String> {
        let known = Document::ALL.into_iter().find(|one| one.word() == word);
        known.ok_or_else(|| {
            let all: Vec<&str> = Document::ALL.iter().map(|one| one.word()).collect();
            format!("no document is called “{word}”; there are {}", all.join(", "))
        })
    }
}
