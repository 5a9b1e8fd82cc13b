//! The workshop file: its values changed in place, or read and written like the dial file with its places; and what
//! stands on its shelf.

use super::Desk;
use super::answer::{Sorry, aside, of_state};
use super::asks::{Edit, Settle, Step, Text, Which};
use crate::pieces;
use crate::store::{DialFile, Refused, State as FileState, Version, apply_to};
use axum::Json;
use axum::extract::{Query, State};
use dial::Mistake;
use dial::design::parameters::WORKSHOP_FILE;
use process::Workshop;
use serde_json::{Value, json};
use std::fs;
use std::path::PathBuf;
use std::sync::Arc;

type Answer = Result<Json<Value>, Sorry>;

/// The name of a workshop file that is begun on the desk.
const NAME: &str = "workshop.toml";
const BEGUN: &str =
    "# The workshop: its machine, stocks and magnets. What is not said here is as in the starter workshop.\n";

/// The workshop's file, if there is one, with its mistakes and values; and what the workshop has. Where there is none, a
/// value that is changed begins one: on the version that is told here.
pub(super) async fn workshop(State(desk): State<Arc<Desk>>, Query(which): Query<Which>) -> Answer {
    aside(move || {
        let Some(path) = file_of(&desk, &which.dial)? else {
            let mut none = told(&desk, &which.dial, String::new(), true, &bare(BEGUN.into()));
            none["file"] = Value::Null;
            return Ok(Json(none));
        };
        // One that lies above the opened folder is read, as the command line reads it, but not written.
        let Some(name) = inside(&desk, &path) else {
            let state = bare(fs::read_to_string(&path)?);
            return Ok(Json(told(&desk, &which.dial, path.display().to_string(), false, &state)));
        };
        let state = DialFile::of_workshop(&path).state()?;
        Ok(Json(told(&desk, &which.dial, name, true, &state)))
    })
    .await
}

/// A text without steps.
fn bare(text: String) -> FileState {
    FileState { version: Version::of(&text), text, undo: None, redo: None, kept: Vec::new() }
}

/// Says whether changes could be made: nothing is written.
pub(super) async fn attempt(State(desk): State<Arc<Desk>>, Json(edit): Json<Edit>) -> Answer {
    aside(move || {
        let text = match file_of(&desk, &edit.dial)? {
            Some(path) => DialFile::of_workshop(&path).read()?.0,
            None => BEGUN.to_owned(),
        };
        fits(&text, &edit)?;
        Ok(Json(json!({})))
    })
    .await
}

/// Changes values; answers when they are on disk. Where there is no file yet, one is begun, with the changes in it.
pub(super) async fn edit(State(desk): State<Arc<Desk>>, Json(edit): Json<Edit>) -> Answer {
    aside(move || {
        if file_of(&desk, &edit.dial)?.is_none() {
            if edit.on != Version::of(BEGUN) {
                return Err(Sorry::conflict(None));
            }
            fits(BEGUN, &edit)?;
            begin(&desk)?;
        }
        let (path, name) = own(&desk, &edit.dial)?;
        let done = DialFile::of_workshop(&path).edit(&edit.on, &edit.changes, &edit.words, &mistakes);
        changed(&desk, &edit.dial, name, done)
    })
    .await
}

fn mistakes(text: &str) -> Vec<Mistake> {
    ::workshop::read(text).err().unwrap_or_default()
}

/// Whether a text with changes reads no worse than without.
fn fits(text: &str, edit: &Edit) -> Result<(), Sorry> {
    let then = apply_to(WORKSHOP_FILE, text, &edit.changes).map_err(|unfit| Sorry::unfit(unfit.what, unfit.help))?;
    let wrong = mistakes(&then);
    if wrong.len() > mistakes(text).len() { Err(Sorry::mistakes(&wrong, &then)) } else { Ok(()) }
}

/// Writes the workshop file as the maker wrote it in the page, with its mistakes if it has any.
pub(super) async fn text(State(desk): State<Arc<Desk>>, Json(text): Json<Text>) -> Answer {
    aside(move || {
        let (path, name) = own(&desk, &text.dial)?;
        let done = DialFile::of_workshop(&path).write(&text.on, &text.text, &text.words);
        changed(&desk, &text.dial, name, done)
    })
    .await
}

/// Takes the last step of the workshop file back.
pub(super) async fn undo(State(desk): State<Arc<Desk>>, Json(step): Json<Step>) -> Answer {
    aside(move || {
        let (path, name) = own(&desk, &step.dial)?;
        changed(&desk, &step.dial, name, DialFile::of_workshop(&path).undo(&step.on))
    })
    .await
}

/// Does the step again that was taken back.
pub(super) async fn redo(State(desk): State<Arc<Desk>>, Json(step): Json<Step>) -> Answer {
    aside(move || {
        let (path, name) = own(&desk, &step.dial)?;
        changed(&desk, &step.dial, name, DialFile::of_workshop(&path).redo(&step.on))
    })
    .await
}

/// Takes a version that was set aside, or lets it go.
pub(super) async fn settle(State(desk): State<Arc<Desk>>, Json(kept): Json<Settle>) -> Answer {
    aside(move || {
        let (path, name) = own(&desk, &kept.dial)?;
        changed(&desk, &kept.dial, name, DialFile::of_workshop(&path).settle(&kept.on, &kept.kept, kept.take))
    })
    .await
}

/// Begins a workshop file in the opened folder.
pub(super) async fn new(State(desk): State<Arc<Desk>>, Json(which): Json<Which>) -> Answer {
    aside(move || {
        if file_of(&desk, &which.dial)?.is_some() {
            return Err(Sorry::unfit("there is a workshop file already", "it is shown here"));
        }
        let path = begin(&desk)?;
        Ok(Json(told(&desk, &which.dial, NAME.into(), true, &DialFile::of_workshop(&path).state()?)))
    })
    .await
}

fn begin(desk: &Desk) -> Result<PathBuf, Sorry> {
    let path = desk.shelf.place(NAME)?;
    let mut file = fs::OpenOptions::new().write(true).create_new(true).open(&path)?;
    std::io::Write::write_all(&mut file, BEGUN.as_bytes())?;
    file.sync_all()?;
    Ok(path)
}

/// The file, unless it is a link: the page shows what lies where it seems to lie.
fn file_of(desk: &Desk, dial: &str) -> Result<Option<PathBuf>, Sorry> {
    let Some(path) = (desk.house.workshop_file)(&desk.path(dial)?) else { return Ok(None) };
    if fs::canonicalize(&path)? != path {
        return Err(Sorry::from(crate::store::NotHere::Outside));
    }
    Ok(Some(path))
}

/// Its name within the opened folder, if no link leads out of it.
fn inside(desk: &Desk, path: &std::path::Path) -> Option<String> {
    let name = desk.shelf.name_of(path)?;
    desk.shelf.file(&name).ok().filter(|real| real == path).map(|_| name)
}

/// The file that may be written.
fn own(desk: &Desk, dial: &str) -> Result<(PathBuf, String), Sorry> {
    let path = file_of(desk, dial)?.ok_or_else(|| Sorry::from(crate::store::NotHere::Missing))?;
    let name = inside(desk, &path).ok_or_else(|| Sorry::from(crate::store::NotHere::Outside))?;
    Ok((path, name))
}

fn changed(desk: &Desk, dial: &str, name: String, done: Result<FileState, Refused>) -> Answer {
    let state = done?;
    // Pages with a dial on the mat look again: its workshop is another.
    if let Ok(look) = desk.look(dial) {
        desk.bell.ring(dial, &look.version);
    }
    Ok(Json(told(desk, dial, name, true, &state)))
}

fn told(desk: &Desk, dial: &str, name: String, ours: bool, state: &FileState) -> Value {
    let read = ::workshop::read(&state.text);
    let mistakes: Option<Vec<Value>> =
        read.as_ref().err().map(|all| all.iter().map(|one| pieces::mistake(one, &state.text)).collect());
    let starter = ::workshop::starter();
    let units = desk.units(dial);
    let mut all = of_state(state);
    all["file"] = json!(name);
    all["ours"] = json!(ours);
    all["mistakes"] = json!(mistakes.unwrap_or_default());
    all["order"] = pieces::workshop_order(&state.text, units);
    all["has"] = has(read.as_ref().unwrap_or(&starter), units);
    all
}

/// What stands on the shelf, in words.
fn has(shop: &Workshop, units: measure::Units) -> Value {
    let mm = |length: f64| measure::show(length, units);
    let stocks = shop.stocks.iter().map(|stock| {
        let layers = stock.layers.iter().map(|layer| format!("{} {}", layer.named, mm(layer.thickness)));
        json!({
            "name": stock.name,
            "layers": layers.collect::<Vec<_>>().join(" + "),
            "thickness": format!("{} ({} to {})", mm(stock.thickness()), mm(stock.thinnest()), mm(stock.thickest())),
            "kerf": mm(stock.kerf.x),
            "colour": stock.colour(process::Side::Face).to_string(),
            "source": stock.source,
        })
    });
    let magnets = shop.magnets.iter().map(|magnet| {
        json!({
            "name": magnet.name,
            "size": format!("{} x {}", mm(magnet.diameter), mm(magnet.thickness)),
            "remanence": format!("{} to {} T", magnet.remanence.low, magnet.remanence.high),
            "price": magnet.price,
            "source": magnet.source,
        })
    });
    json!({
        "machine": shop.machine.name,
        "bed": format!("{} x {}", mm(shop.machine.bed_width), mm(shop.machine.bed_height)),
        "stocks": stocks.collect::<Vec<_>>(),
        "magnets": magnets.collect::<Vec<_>>(),
    })
}
