//! What is said to the maker: figures and findings to standard output, complaints to standard error.

use desk::store::Change;
use desk::{By, Mend};
use dial::design;
use dial::findings::{Finding, Severity};
use dial::layout::{Driver, Sizing};
use dial::{Dial, Mistake};
use measure::show;
use std::io::IsTerminal;
use std::path::{Path, PathBuf};

/// Why a command could not do its work.
pub enum Talk {
    /// Mistakes in a file, shown in the maker's own text.
    Mistakes {
        /// The file.
        file: PathBuf,
        /// Its text.
        text: String,
        /// All that is wrong with it.
        mistakes: Vec<Mistake>,
    },
    /// Anything else, in plain words.
    Plain(String),
}

/// Says it on standard error.
pub fn complain(talk: &Talk) {
    match talk {
        Talk::Mistakes { file, text, mistakes } => {
            let colour = std::io::stderr().is_terminal();
            eprint!("{}", design::render_mistakes(&file.display().to_string(), text, mistakes, colour));
            let n = mistakes.len();
            eprintln!("{n} mistake{} in {}: nothing was made", if n == 1 { "" } else { "s" }, file.display());
        }
        Talk::Plain(words) => eprintln!("{words}"),
    }
}

/// Writes a picture as its ending says.
pub fn write_picture(path: &Path, svg: String) -> Result<(), Talk> {
    let bytes = match path.extension().and_then(|end| end.to_str()) {
        Some("svg") => svg.into_bytes(),
        Some("png") => press::png(&svg).map_err(|error| Talk::Plain(error.to_string()))?,
        _ => {
            return Err(Talk::Plain(format!("{}: a picture ends in .svg or .png", path.display())));
        }
    };
    std::fs::write(path, bytes).map_err(|error| Talk::Plain(format!("{} cannot be written: {error}", path.display())))
}

/// The dial in a few lines: its sizes and what drove them.
pub fn sizes(dial: &Dial, sizing: &[Sizing]) -> String {
    let mm = |length: f64| show(length, dial.show);
    let plate = dial.cover.plate.bounds();
    let mut lines = vec![format!(
        "{}: cover {} x {}, {} wheel{}",
        dial.name,
        mm(plate.width()),
        mm(plate.height()),
        dial.wheels.len(),
        if dial.wheels.len() == 1 { "" } else { "s" }
    )];
    for size in sizing {
        let wheel = &dial.wheels[size.wheel];
        lines.push(format!("  {}: {}", wheel.name, why(dial, size, sizing)));
    }
    lines.join("\n") + "\n"
}

fn why(dial: &Dial, size: &Sizing, all: &[Sizing]) -> String {
    let mm = |length: f64| show(length, dial.show);
    let wheel = mm(size.diameter);
    let marks = format!("{} stops of {} marks", size.stops, mm(size.mark_height));
    let or = match size.smaller {
        Some(small) if small.diameter < size.diameter - 0.05 => {
            format!("; {} marks would need {}", mm(small.height), mm(small.diameter))
        }
        _ => String::new(),
    };
    match size.driver {
        Driver::Neighbours { mark, shown } => {
            let words = |k: usize| &dial.wheels[size.wheel].marks[k].words;
            format!(
                "wheel {wheel} because {marks} need it (“{}” must stay out of the window of “{}”){or}",
                words(mark),
                words(shown)
            )
        }
        Driver::Pocket => {
            format!("wheel {wheel} because its marks must stay clear of the magnet's pocket{or}")
        }
        Driver::WindowPocket => {
            format!("wheel {wheel} because its window must stay clear of the magnet's pocket{or}")
        }
        Driver::Asked => format!("wheel {wheel}, as the dial file asks"),
        Driver::SameSize(other) => {
            let name =
                all.iter().find(|one| one.wheel == other).map_or("another", |one| dial.wheels[one.wheel].name.as_str());
            format!("wheel {wheel}, the same size as {name}")
        }
    }
}

/// Findings as text, the gravest first, with the mends that were tried for them, if any were.
pub fn findings(dial: &Dial, found: &[Finding], mends: &[Option<Mend>], text: &str, design: &design::Design) -> String {
    let mut out = String::new();
    for (n, finding) in found.iter().enumerate() {
        out += &format!("{}: {} [{}]\n", finding.severity.word(), finding.what, finding.rule);
        if !finding.mend.is_empty() {
            out += &format!("    mend: {}\n", finding.mend);
        }
        if let Some(Some(mend)) = mends.get(n) {
            out += &format!("    {}\n", tried(dial, mend));
        }
        if finding.severity != Severity::Note {
            out += &format!(
                "    at {}{}; source: {}\n",
                finding.part.words(dial),
                line(finding, text, design),
                finding.source
            );
        }
    }
    let count = |severity| found.iter().filter(|finding| finding.severity == severity).count();
    let (refuse, mend, note) = (count(Severity::Refuse), count(Severity::Mend), count(Severity::Note));
    out + &format!("{refuse} to refuse, {mend} to mend, {note} to note\n")
}

/// The line of the dial file that matters, if the maker wrote it.
fn line(finding: &Finding, text: &str, design: &design::Design) -> String {
    finding
        .keys
        .iter()
        .find_map(|key| design.spans.get(key))
        .and_then(|span| text.get(..span.start))
        .map(|before| format!(" (line {} of the dial file)", before.matches('\n').count() + 1))
        .unwrap_or_default()
}

/// A mend as the lines of the dial file that it changes, and what comes of it.
fn tried(dial: &Dial, mend: &Mend) -> String {
    let changes: Vec<String> = mend.changes.iter().map(|change| in_words(dial, change)).collect();
    let by = match mend.by {
        By::Rule => "tried",
        By::Trying => "found by trying",
    };
    let then = &mend.then;
    format!(
        "{} ({by}: this finding goes; then {} to refuse, {} to mend, cover {})",
        changes.join(", "),
        then.refuse,
        then.mend,
        then.size
    )
}

fn in_words(dial: &Dial, change: &Change) -> String {
    let (key, whose) = called(dial, change.place());
    match change {
        Change::Set { value, .. } => format!("set {key} = {value}{whose}"),
        _ => format!("take {key} out{whose}"),
    }
}

/// A key, and whose it is: `counter[0].mark.height` is `mark.height` of the first counter.
fn called(dial: &Dial, path: &str) -> (String, String) {
    let of = path.strip_prefix("counter[").and_then(|rest| rest.split_once("]."));
    let named = of.and_then(|(i, key)| Some((key, &dial.wheels.get(i.parse::<usize>().ok()?)?.name)));
    match named {
        Some((key, name)) => (key.to_owned(), format!(" for {name}")),
        None => (path.to_owned(), String::new()),
    }
}
