//! From data and pictures to a PDF.

use crate::WorkbookError;
use crate::book::Pictures;
use crate::world::Desk;
use serde_json::Value;
use typst::diag::SourceDiagnostic;
use typst::foundations::Smart;
use typst_layout::PagedDocument;
use typst_pdf::{PdfOptions, PdfStandard, PdfStandards};

/// Sets a book, or what the template says; returns its bytes and how many pages it has.
pub(crate) fn typeset(
    template: &str,
    name: &str,
    data: &Value,
    pictures: Pictures,
) -> Result<(Vec<u8>, usize), WorkbookError> {
    let document = laid_out(template, data, pictures)?;
    let options = PdfOptions {
        standards: accessible()?,
        // The identifier must not hang on anything but the book.
        ident: Smart::Custom(format!("dialwright workbook: {name}")),
        creator: Smart::Custom(Some(concat!("dialwright ", env!("CARGO_PKG_VERSION")).to_owned())),
        timestamp: None,
        ..PdfOptions::default()
    };
    let pages = document.pages().len();
    let pdf = typst_pdf::pdf(&document, &options).map_err(|errors| fault(&errors))?;
    // What the typesetter remembers between two books is of no use here.
    typst::comemo::evict(0);
    Ok((pdf, pages))
}

/// PDF/UA-1 (ISO 14289-1:2014): tagged, titled, every picture told in words; what breaks it is a fault.
fn accessible() -> Result<PdfStandards, WorkbookError> {
    PdfStandards::new(&[PdfStandard::Ua_1]).map_err(|error| WorkbookError::Fault(error.message().to_string()))
}

/// The pages, with everything in its place.
pub(crate) fn laid_out(template: &str, data: &Value, pictures: Pictures) -> Result<PagedDocument, WorkbookError> {
    let mut files = pictures;
    files.push(("book.json".into(), data.to_string().into_bytes()));
    let desk = Desk::new(template, files).map_err(WorkbookError::Fault)?;
    let set = typst::compile::<PagedDocument>(&desk);
    let document = set.output.map_err(|errors| fault(&errors))?;
    // A warning of the typesetter is a fault of our templates: a font or a glyph that is not there, a layout that does not settle.
    if !set.warnings.is_empty() {
        return Err(fault(&set.warnings));
    }
    Ok(document)
}

fn fault(all: &[SourceDiagnostic]) -> WorkbookError {
    WorkbookError::Fault(all.iter().map(|one| one.message.to_string()).collect::<Vec<_>>().join("; "))
}
