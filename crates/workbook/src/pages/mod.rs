//! What each document says, as data for its template.

mod assembly;
mod dial_page;
mod hand_over;
mod magnets;
mod materials;
mod pairings;
mod proof;
mod tickets;
mod turns;
mod words;

use crate::book::Book;
use crate::{Document, Make};
use serde_json::{Value, json};

/// The data of one document.
pub(crate) fn page(which: Document, make: &Make, book: &mut Book) -> Value {
    let mut data = match which {
        Document::Dial => dial_page::data(make, book),
        Document::Proof => proof::data(make, book),
        Document::TurnTest => turns::data(make, book),
        Document::Pairings => pairings::data(make, book, make.pairings.unwrap_or_default()),
        Document::Magnets => magnets::data(make, book),
        Document::Tickets => tickets::data(make, book),
        Document::Assembly => assembly::data(make, book),
        Document::HandOver => hand_over::data(make, book),
        Document::Materials => materials::data(make),
    };
    data["kind"] = json!(which.word());
    data["title"] = json!(which.title());
    data
}
