//! All files of a job folder.

use crate::svg::plain;
use crate::{
    PngError, Wardrobe, dial_front, findings_picture, job_report, looks_page, magnet_map, magnets_page, pairings_board,
    png, pole_plan, report, sheet, strip, symmetry, ticket, ticket_picture, turning_page, wheel_face, window_seen,
};
use dial::Looked;
use dial::job::{Job, Setup, Sheet};
use dial::looks::{Pairing, pairings};
use process::Workshop;
use std::path::PathBuf;

/// What a job folder is made from.
pub struct Make<'a> {
    /// The dial, looked over.
    pub looked: &'a Looked,
    /// Its job.
    pub job: &'a Job,
    /// The workshop it is made in.
    pub workshop: &'a Workshop,
    /// The dial file, kept with the job.
    pub dial_file: &'a str,
    /// The findings in words.
    pub words: &'a str,
}

/// All files, by their path in the folder.
///
/// # Errors
/// A fault in one of our own pictures.
pub fn job_files(make: &Make) -> Result<Vec<(PathBuf, Vec<u8>)>, PngError> {
    let dial = &make.looked.laid.dial;
    let colours = &make.workshop.machine.colours;
    let mut files: Vec<(PathBuf, Vec<u8>)> = Vec::new();
    let mut put = |name: String, bytes: Vec<u8>| files.push((PathBuf::from(name), bytes));
    for one in &make.job.sheets {
        for setup in &one.setups {
            let name = sheet_name(one, setup);
            let stem = name.trim_end_matches(".svg").to_owned();
            put(format!("sheets/{name}"), sheet(&dial.name, one, setup, colours).into_bytes());
            put(format!("tickets/{stem}.txt"), ticket(dial, one, setup, make.workshop).into_bytes());
            put(format!("tickets/{stem}.png"), png(&ticket_picture(dial, one, setup, colours))?);
        }
    }
    let ranked = pairings(make.looked, make.workshop);
    for (name, svg) in pictures(make, &ranked) {
        put(format!("pictures/{name}.png"), png(&svg)?);
        put(format!("pictures/{name}.svg"), svg.into_bytes());
    }
    let figures = report(make.looked);
    put("report.json".into(), format!("{figures:#}\n").into_bytes());
    let steps = job_report(make.job);
    put("steps.json".into(), format!("{steps:#}\n").into_bytes());
    put("turn.html".into(), turning_page(dial, &Wardrobe::of(dial, &ranked)).into_bytes());
    put("magnets.txt".into(), magnets_page(make.looked, make.workshop).into_bytes());
    put("looks.txt".into(), looks_page(make.looked, make.workshop, &ranked).into_bytes());
    put("findings.txt".into(), make.words.as_bytes().to_vec());
    put("dial.toml".into(), make.dial_file.as_bytes().to_vec());
    put(FIRST.into(), first(make).into_bytes());
    Ok(files)
}

/// Adds a file that another room made, and names it first in the list of what to begin with.
pub fn add_file(files: &mut Vec<(PathBuf, Vec<u8>)>, name: &str, words: &str, bytes: Vec<u8>) {
    if let Some((_, first)) = files.iter_mut().find(|one| one.0.as_os_str() == FIRST) {
        let text = String::from_utf8_lossy(first).replacen(ITEMS, &format!("{}{ITEMS}", item_line(name, words)), 1);
        *first = text.into_bytes();
    }
    files.push((PathBuf::from(name), bytes));
}

/// What a maker reads first.
const FIRST: &str = "READ-ME-FIRST.txt";
/// How the list of files begins in it.
const ITEMS: &str = "  turn.html";

fn item_line(file: &str, words: &str) -> String {
    format!("  {file:<26}{words}\n")
}

/// All pictures of the dial, by their names.
fn pictures(make: &Make, ranked: &[Pairing]) -> Vec<(String, String)> {
    let dial = &make.looked.laid.dial;
    let mut all = vec![
        ("turn-test".into(), strip(dial, &make.looked.turns)),
        ("dial".into(), dial_front(dial)),
        ("turned-over".into(), symmetry(dial)),
        ("pole-plan".into(), pole_plan(dial)),
    ];
    all.push(("pairings".into(), pairings_board(make.looked, make.workshop, ranked)));
    all.extend(window_seen(make.looked).map(|svg| ("window-as-seen".into(), svg)));
    all.extend(magnet_map(make.looked, make.workshop).map(|svg| ("magnet-map".into(), svg)));
    all.extend(findings_picture(dial, &make.looked.findings).map(|svg| ("findings".into(), svg)));
    all.extend(
        dial.wheels
            .iter()
            .enumerate()
            .map(|(i, wheel)| (format!("wheel-{}-{}", i + 1, slug(&wheel.name)), wheel_face(wheel))),
    );
    all
}

/// Name of the file of one setup of a sheet.
pub(crate) fn sheet_name(sheet: &Sheet, setup: &Setup) -> String {
    let side = if setup.is_turned() { "turned-over" } else { "face-up" };
    format!("setup-{}-{}-{side}.svg", setup.number, slug(&sheet.stock.name))
}

/// A name as part of a file's name: letters and figures, everything else a hyphen.
pub fn slug(name: &str) -> String {
    let plain: String = name.to_lowercase().chars().map(|c| if c.is_alphanumeric() { c } else { '-' }).collect();
    let joined = plain.split('-').filter(|part| !part.is_empty()).collect::<Vec<_>>().join("-");
    if joined.is_empty() { "dial".into() } else { joined }
}

fn first(make: &Make) -> String {
    let dial = &make.looked.laid.dial;
    let mut text = format!(
        "{}\n\nRun the setups in this order; each has its ticket in the folder tickets: read it first.\n\n",
        plain(&dial.name)
    );
    for sheet in &make.job.sheets {
        for setup in &sheet.setups {
            text += &format!("  [ ] setup {}: sheets/{}\n", setup.number, sheet_name(sheet, setup));
        }
    }
    text += "\nAll sheets are in true millimetres; the kerf is taken into account.\n\n";
    let mut item = |file: &str, words: &str| text += &item_line(file, words);
    item("turn.html", "for the client: open it in a browser, turn the wheels, choose materials");
    item("pictures/turn-test.png", "every stop as it stands in its window");
    item("pictures/dial.png", "the dial from the front");
    if findings_picture(dial, &make.looked.findings).is_some() {
        item("pictures/findings.png", "where it should be mended");
    }
    item("pictures/turned-over.png", "the cover turned over in its hole");
    item("pictures/wheel-*.png", "each wheel's face");
    item("magnets.txt", "how the wheels turn and keep, which way round, order of gluing");
    item("pictures/pole-plan.png", "which way round each magnet goes");
    item("pictures/magnet-map.png", "what the pockets' depths do");
    if !dial.reading.readers.is_empty() {
        item("pictures/window-as-seen.png", "the worst window as each reader sees it");
    }
    item("pictures/pairings.png", "every cover stock with every wheel stock, best first");
    item("looks.txt", "what can be read from where, pairings, votes");
    item("findings.txt", "what was found, and how to mend it");
    item("report.json", "every figure of the dial");
    item("steps.json", "every setup and step of the job");
    item("dial.toml", "the dial file this was made from");
    text + "\n\
        Never leave the machine alone while it runs. Keep magnets from children: two that are\n\
        swallowed can kill. Keep them from pacemakers. This folder holds no age label: what may\n\
        be sold or given to whom is for local law and an accredited test to say.\n\
        Local rules and the machine's manual come first.\n"
}
