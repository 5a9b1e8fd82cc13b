//! The workshop file: read and written in the page like the dial file, with its places; and what stands on its shelf.

use super::Desk;
use super::answer::{Sorry, aside};
use crate::pieces;
use crate::store::{DialFile, Refused, State as FileState, Version};
use axum::Json;
use axum::extract::{Query, State};
use process::Workshop;
use serde::Deserialize;
use serde_json::{Value, json};
use std::fs;
use std::path::PathBuf;
use std::sync::Arc;

type Answer = Result<Json<Value>, Sorry>;

/// The name of a workshop file that is begun on the desk.
const NAME: &str = "workshop.toml";
const BEGUN: &str =
    "# The workshop: its machine, stocks and magnets. What is not said here is as in the starter workshop.\n";

/// Of which dial.
#[derive(Deserialize)]
pub(super) struct Which {
    dial: String,
}

/// The workshop's file, if there is one, with its mistakes; and what the workshop has.
pub(super) async fn workshop(State(desk): State<Arc<Desk>>, Query(which): Query<Which>) -> Answer {
    aside(move || {
        let Some(path) = file_of(&desk, &which.dial)? else {
            return Ok(Json(json!({ "file": null, "has": has(&::workshop::starter(), desk.units(&which.dial)) })));
        };
        // One that lies above the opened folder is read, as the command line reads it, but not written.
        let Some(name) = inside(&desk, &path) else {
            let text = fs::read_to_string(&path)?;
            let state = FileState { version: Version::of(&text), text, undo: None, redo: None, kept: Vec::new() };
            return Ok(Json(told(&desk, &which.dial, path.display().to_string(), false, &state)));
        };
        let state = DialFile::at(&path).state()?;
        Ok(Json(told(&desk, &which.dial, name, true, &state)))
    })
    .await
}

/// The text that the file shall hold, and the version it was begun on.
#[derive(Deserialize)]
pub(super) struct Text {
    dial: String,
    on: Version,
    text: String,
}

/// Writes the workshop file as the maker wrote it in the page, with its mistakes if it has any.
pub(super) async fn write(State(desk): State<Arc<Desk>>, Json(text): Json<Text>) -> Answer {
    aside(move || {
        let (path, name) = own(&desk, &text.dial)?;
        let done = DialFile::at(&path).write(&text.on, &text.text, "the workshop, in writing");
        changed(&desk, &text.dial, name, done)
    })
    .await
}

/// A step back or forth.
#[derive(Deserialize)]
pub(super) struct Step {
    dial: String,
    on: Version,
    forth: bool,
}

/// Takes the last step of the workshop file back, or does it again.
pub(super) async fn step(State(desk): State<Arc<Desk>>, Json(step): Json<Step>) -> Answer {
    aside(move || {
        let (path, name) = own(&desk, &step.dial)?;
        let file = DialFile::at(&path);
        let done = if step.forth { file.redo(&step.on) } else { file.undo(&step.on) };
        changed(&desk, &step.dial, name, done)
    })
    .await
}

/// Begins a workshop file in the opened folder.
pub(super) async fn new(State(desk): State<Arc<Desk>>, Json(which): Json<Which>) -> Answer {
    aside(move || {
        if file_of(&desk, &which.dial)?.is_some() {
            return Err(Sorry::unfit("there is a workshop file already", "it is shown here"));
        }
        let path = desk.shelf.place(NAME)?;
        let mut file = fs::OpenOptions::new().write(true).create_new(true).open(&path)?;
        std::io::Write::write_all(&mut file, BEGUN.as_bytes())?;
        file.sync_all()?;
        Ok(Json(told(&desk, &which.dial, NAME.into(), true, &DialFile::at(&path).state()?)))
    })
    .await
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
    json!({
        "file": name,
        "ours": ours,
        "text": state.text,
        "version": state.version,
        "undo": state.undo,
        "redo": state.redo,
        "mistakes": mistakes.unwrap_or_default(),
        "has": has(read.as_ref().unwrap_or(&starter), desk.units(dial)),
    })
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
