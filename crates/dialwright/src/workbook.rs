//! `dialwright workbook`: the paper of a dial, or one document of it, as a PDF of its own.

use crate::Outcome;
use crate::args::WorkbookArgs;
use crate::check::{Looked, look};
use crate::talk::Talk;
use dial::findings;
use dial::job::{self, Job};
use std::fs;
use std::path::{Path, PathBuf};
use workbook::{Document, Make, Paper, Workbook};

/// Runs the command.
pub fn run(args: &WorkbookArgs) -> Result<Outcome, Talk> {
    let looked = look(&args.on, &[])?;
    if findings::refuses(&looked.dial.findings) {
        eprint!("{}", looked.words());
        eprintln!("nothing was made: mend what is to be refused first");
        return Ok(Outcome::Refused);
    }
    let job = job::plan(&looked.dial.laid.dial, &looked.loaded.workshop)
        .map_err(|errors| Talk::Plain(errors.iter().map(ToString::to_string).collect::<Vec<_>>().join("\n")))?;
    let made = set(&looked.dial, &looked.loaded.workshop, &job, args.document, args.paper).map_err(Talk::Plain)?;
    let target = args.to.clone().unwrap_or_else(|| beside(&looked, args.document));
    write(&target, &made.pdf)?;
    if args.on.json {
        let lacking: Vec<_> = made
            .not_covered
            .iter()
            .map(|one| serde_json::json!({ "words": one.words, "characters": one.code_points() }))
            .collect();
        println!("{:#}", serde_json::json!({ "file": target, "pages": made.pages, "not_covered": lacking }));
        return Ok(Outcome::Well);
    }
    tell(&made);
    println!("made {} ({} pages)", target.display(), made.pages);
    Ok(Outcome::Well)
}

/// Sets the book, or one document.
///
/// # Errors
/// A fault of our own, in words.
pub fn set(
    looked: &dial::Looked,
    workshop: &process::Workshop,
    job: &Job,
    which: Option<Document>,
    paper: Option<Paper>,
) -> Result<Workbook, String> {
    let asked = which.is_none_or(|which| which == Document::Pairings);
    let ranked = asked.then(|| dial::looks::pairings(looked, workshop));
    let paper = paper.unwrap_or_else(|| paper_of(looked));
    let make = Make { looked, job, workshop, paper, pairings: ranked.as_deref() };
    let made = match which {
        None => workbook::workbook(&make),
        Some(which) => workbook::document(&make, which),
    };
    made.map_err(|error| error.to_string())
}

/// Says what the font could not show.
pub fn tell(made: &Workbook) {
    for one in &made.not_covered {
        eprintln!(
            "note: the workbook's font lacks {} of “{}”; [?] stands there, and the first page says so",
            one.code_points(),
            one.words
        );
    }
}

/// Who thinks in inches prints on Letter, unless told otherwise.
fn paper_of(looked: &dial::Looked) -> Paper {
    match looked.laid.dial.show {
        measure::Units::Millimetres => Paper::A4,
        measure::Units::Inches => Paper::Letter,
    }
}

fn beside(looked: &Looked, which: Option<Document>) -> PathBuf {
    let folder = looked.loaded.file.parent().unwrap_or(Path::new(""));
    let what = which.map_or("workbook", Document::word);
    folder.join(format!("{}-{what}.pdf", press::slug(&looked.dial.laid.dial.name)))
}

/// Writes a file whole, or leaves what is there as it is.
fn write(target: &Path, bytes: &[u8]) -> Result<(), Talk> {
    let failed = |error: std::io::Error| {
        Talk::Plain(format!(
            "writing {} did not work: {error}; nothing was changed; see whether the place exists, may be written, and has room",
            target.display()
        ))
    };
    if fs::read(target).is_ok_and(|there| there == bytes) {
        return Ok(());
    }
    if target.exists() {
        return Err(Talk::Plain(format!(
            "{} is there already and is not the same: name another place with --to, or move it away",
            target.display()
        )));
    }
    let name = target.file_name().map(|name| name.to_string_lossy().into_owned()).unwrap_or_default();
    let draft = target.with_file_name(format!(".{name}.draft"));
    let done = fs::write(&draft, bytes).and_then(|()| fs::rename(&draft, target));
    done.map_err(|error| {
        let _ = fs::remove_file(&draft);
        failed(error)
    })
}
