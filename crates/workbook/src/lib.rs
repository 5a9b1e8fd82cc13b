//! The workbook: one well-set PDF beside the machine, and for the client.
//!
//! [`workbook`] gathers what each document says as data (`pages/`), drawings as SVG from `press`, and sets both with typst in-process by
//! the templates in `set/`. The typesetter sees our own sources, our data and the shipped font; no system fonts, no network, no clock.
//! Names reach it as values, never as markup. The same dial gives the same bytes.

mod book;
mod document;
mod error;
mod ink;
#[cfg(test)]
mod overfull;
mod pages;
mod paper;
mod typeset;
mod world;

pub use document::Document;
pub use error::WorkbookError;
pub use ink::NotCovered;
pub use paper::Paper;

use dial::Looked;
use dial::job::Job;
use dial::looks::Pairing;
use process::Workshop;

/// What a workbook is made from.
#[derive(Clone, Copy)]
pub struct Make<'a> {
    /// The dial, looked over.
    pub looked: &'a Looked,
    /// Its job.
    pub job: &'a Job,
    /// The workshop it is made in.
    pub workshop: &'a Workshop,
    /// The paper it is printed on.
    pub paper: Paper,
    /// Every pairing of the shelf's stocks, best first; without them the book has no pairings board.
    pub pairings: Option<&'a [Pairing]>,
}

/// A workbook.
#[derive(Clone, Debug)]
pub struct Workbook {
    /// The document.
    pub pdf: Vec<u8>,
    /// How many pages it has.
    pub pages: usize,
    /// What the shipped font cannot show; on paper it is named, too.
    pub not_covered: Vec<NotCovered>,
}

/// All documents in one book.
///
/// # Errors
/// A fault in our own templates or pictures.
pub fn workbook(make: &Make) -> Result<Workbook, WorkbookError> {
    let all: Vec<Document> =
        Document::ALL.into_iter().filter(|one| *one != Document::Pairings || make.pairings.is_some()).collect();
    of(make, &all)
}

/// One document alone.
///
/// # Errors
/// No pairings board where one is asked for; a fault in our own templates or pictures.
pub fn document(make: &Make, which: Document) -> Result<Workbook, WorkbookError> {
    if which == Document::Pairings && make.pairings.is_none() {
        return Err(WorkbookError::NoBoard);
    }
    of(make, &[which])
}

fn of(make: &Make, documents: &[Document]) -> Result<Workbook, WorkbookError> {
    let (data, pictures, not_covered) = gathered(make, documents);
    let (pdf, pages) = typeset::typeset(world::BOOK_OF, &make.looked.laid.dial.name, &data, pictures)?;
    Ok(Workbook { pdf, pages, not_covered })
}

/// One drawing on a page of its own size in mm, true to size, with what it shows in words for those who cannot see it.
///
/// # Errors
/// A drawing that is no SVG.
pub fn drawing_alone(title: &str, alt: &str, svg: &str, (width, height): (f64, f64)) -> Result<Vec<u8>, WorkbookError> {
    let data = serde_json::json!({ "title": title, "alt": alt, "file": "1.svg", "w": width, "h": height });
    let pictures = vec![("1.svg".to_owned(), svg.as_bytes().to_vec())];
    Ok(typeset::typeset(world::PLAIN, title, &data, pictures)?.0)
}

/// What the documents say, their pictures, and what the font does not cover.
fn gathered(make: &Make, documents: &[Document]) -> (serde_json::Value, book::Pictures, Vec<NotCovered>) {
    let mut book = book::Book::default();
    let pages: Vec<_> = documents.iter().map(|one| pages::page(*one, make, &mut book)).collect();
    let (data, not_covered) = book.data(make, pages);
    (data, book.pictures, not_covered)
}
