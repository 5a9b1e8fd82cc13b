//! What all documents of a book share: its data, and its pictures.

use crate::Make;
use crate::ink::{self, NotCovered, short};
use crate::paper::{BOTTOM, SIDE, TOP};
use press::paper::{Anchor, Drawing};
use serde_json::{Value, json};

/// Letters of a name in the running head, and in narrow places.
const HEAD: usize = 56;
pub(crate) const NARROW: usize = 28;
/// Letters of a name in a list of names.
pub(crate) const NAMES: usize = 44;

/// Pictures by the names under which the templates find them.
pub(crate) type Pictures = Vec<(String, Vec<u8>)>;

/// A book in the making.
#[derive(Default)]
pub(crate) struct Book {
    /// Its pictures.
    pub(crate) pictures: Pictures,
}

impl Book {
    /// Takes a picture in; returns its name.
    pub(crate) fn picture(&mut self, svg: &str) -> String {
        if let Some((name, _)) = self.pictures.iter().find(|one| one.1 == svg.as_bytes()) {
            return name.clone();
        }
        let name = format!("{}.svg", self.pictures.len() + 1);
        self.pictures.push((name.clone(), svg.as_bytes().to_vec()));
        name
    }

    /// Takes a drawing in; returns what a template needs to place it.
    pub(crate) fn drawing(&mut self, drawing: &Drawing) -> Value {
        self.drawing_with(drawing, NARROW)
    }

    /// The same, where there is room for labels of so many letters.
    pub(crate) fn drawing_with(&mut self, drawing: &Drawing, letters: usize) -> Value {
        let labels = drawing.labels.iter().map(|label| {
            let anchor = match label.anchor {
                Anchor::Start => "start",
                Anchor::Middle => "middle",
                Anchor::End => "end",
            };
            json!({ "x": label.x, "y": label.y, "words": short(&label.words, letters), "anchor": anchor })
        });
        json!({
            "file": self.picture(&drawing.svg),
            "w": drawing.width,
            "h": drawing.height,
            "alt": short(&drawing.alt, 200),
            "labels": labels.collect::<Vec<_>>(),
        })
    }

    /// The book's data with all words mended, and what the font does not cover.
    pub(crate) fn data(&self, make: &Make, documents: Vec<Value>) -> (Value, Vec<NotCovered>) {
        let dial = &make.looked.laid.dial;
        let (width, height) = make.paper.size();
        let mut data = json!({
            "name": dial.name,
            "short": short(&dial.name, HEAD),
            "paper": { "w": width, "h": height, "side": SIDE, "top": TOP, "bottom": BOTTOM },
            "documents": documents,
        });
        let mut found = Vec::new();
        // The maker's own words first: what is said of them is told as they stand in the dial file.
        let marks = dial.wheels.iter().flat_map(|wheel| wheel.marks.iter().map(|mark| &mark.words));
        for words in std::iter::once(&dial.name).chain(dial.wheels.iter().map(|wheel| &wheel.name)).chain(marks) {
            ink::mend(&mut json!(words), &mut found);
        }
        ink::mend(&mut data, &mut found);
        data["not_covered"] = found.iter().map(NotCovered::code_points).collect();
        // What a reader's window shows as the title has fonts of its own.
        let name = ink::one_line(&dial.name);
        let name = if name.is_empty() { "Dial without a name" } else { &name };
        data["title"] = match data["documents"].as_array().map(Vec::as_slice) {
            Some([alone]) => json!(format!("{name}: {}", alone["title"].as_str().unwrap_or_default())),
            _ => json!(name),
        };
        (data, found)
    }
}
