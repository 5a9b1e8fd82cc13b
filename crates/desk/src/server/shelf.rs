//! The dials of the opened folder: listed, begun, copied, seen small.

use super::Desk;
use super::answer::{Sorry, aside};
use crate::look::Look;
use crate::pieces;
use axum::Json;
use axum::extract::{Query, State};
use axum::http::header;
use axum::response::{IntoResponse, Response};
use dial::design;
use serde::Deserialize;
use serde_json::{Value, json};
use std::fs;
use std::path::Path;
use std::sync::Arc;

type Answer = Result<Json<Value>, Sorry>;

/// What a new dial is cut from, unless the brief says otherwise: every workshop has it.
const USUAL: &str = "birch plywood 3 mm";

/// The folder with its dials, those that were opened lately, and which one to begin with.
pub(super) async fn desk(State(desk): State<Arc<Desk>>) -> Answer {
    aside(move || {
        let dials = desk.shelf.dials();
        let recent: Vec<Value> = desk
            .recent
            .list()
            .iter()
            .map(|path| json!({ "dial": desk.shelf.name_of(path), "path": path.display().to_string() }))
            .collect();
        let folder = desk.shelf.root().file_name().map(|name| name.to_string_lossy().into_owned());
        Ok(Json(json!({
            "folder": folder,
            "first": desk.first.clone().or_else(|| dials.first().cloned()),
            "dials": dials,
            "recent": recent,
            "stock": USUAL,
        })))
    })
    .await
}

/// The one parameter table.
pub(super) async fn parameters() -> Json<Value> {
    Json(pieces::parameters())
}

/// A new dial's brief.
#[derive(Deserialize)]
pub(super) struct Brief {
    name: String,
    counters: Vec<String>,
    stock: String,
}

/// Begins a dial in a folder of its name.
pub(super) async fn new(State(desk): State<Arc<Desk>>, Json(brief): Json<Brief>) -> Answer {
    aside(move || {
        let title = brief.name.trim();
        if title.is_empty() {
            return Err(Sorry::unfit("the dial has no name yet", "write one; it also names the folder"));
        }
        let counters = brief
            .counters
            .iter()
            .map(|one| (desk.house.brief)(one))
            .collect::<Result<Vec<_>, String>>()
            .map_err(|what| Sorry::unfit(what, ""))?;
        if counters.is_empty() {
            return Err(Sorry::unfit("a dial has at least one counter", "write as: provisions 0..24"));
        }
        let text = design::new_file(title, &counters, &brief.stock);
        let name = format!("{}/dial.toml", press::slug(title));
        let path = desk.shelf.place(&name)?;
        // Nothing is made that does not read.
        if let Err(mistakes) = design::read(&text, &desk.house.shop(&path).workshop) {
            return Err(Sorry::mistakes(&mistakes, &text));
        }
        begin(&path, &text)?;
        Ok(Json(json!({ "dial": name })))
    })
    .await
}

impl Desk {
    /// What a dial would look like that was begun from a brief, its counters a line each; where nothing can be made of them,
    /// one that counts to twelve. Nothing is written.
    pub(super) fn sketch(&self, counters: &str) -> Arc<Look> {
        let of = |lines: &[(String, String)]| {
            self.looks.at(&self.shelf.root().join("dial.toml"), &design::new_file("A new dial", lines, USUAL))
        };
        let lines: Vec<(String, String)> =
            counters.lines().filter_map(|line| (self.house.brief)(line.trim()).ok()).collect();
        let asked = (!lines.is_empty()).then(|| of(&lines)).filter(|look| look.outcome.is_ok());
        asked.unwrap_or_else(|| of(&[("count".into(), "0..12".into())]))
    }
}

/// Which dial, and the copy's name.
#[derive(Deserialize)]
pub(super) struct Copy {
    dial: String,
    name: String,
}

/// Copies a dial file under another name into a folder of its own.
pub(super) async fn duplicate(State(desk): State<Arc<Desk>>, Json(copy): Json<Copy>) -> Answer {
    aside(move || {
        let title = copy.name.trim();
        if title.is_empty() {
            return Err(Sorry::unfit("the copy has no name yet", "write one; it also names the folder"));
        }
        let (text, _) = desk.file(&copy.dial)?.read()?;
        let named = crate::store::Change::Set { path: "name".into(), value: json!(title) };
        let text = crate::store::apply(&text, &[named]).map_err(|unfit| Sorry::unfit(unfit.what, unfit.help))?;
        let name = format!("{}/dial.toml", press::slug(title));
        begin(&desk.shelf.place(&name)?, &text)?;
        Ok(Json(json!({ "dial": name })))
    })
    .await
}

/// Writes a file that is not there yet.
fn begin(path: &Path, text: &str) -> Result<(), Sorry> {
    if path.exists() {
        return Err(Sorry::unfit("there is a dial of this name already", "choose another name"));
    }
    if let Some(folder) = path.parent() {
        fs::create_dir_all(folder)?;
    }
    let mut file = fs::OpenOptions::new().write(true).create_new(true).open(path)?;
    std::io::Write::write_all(&mut file, text.as_bytes())?;
    file.sync_all()?;
    Ok(())
}

/// Which dial.
#[derive(Deserialize)]
pub(super) struct Which {
    dial: String,
}

/// The dial from the front, small, for the shelf.
pub(super) async fn picture(State(desk): State<Arc<Desk>>, Query(which): Query<Which>) -> Result<Response, Sorry> {
    let svg = aside(move || {
        let look = desk.look(&which.dial)?;
        match &look.outcome {
            Ok(seen) => Ok(press::dial_front(&seen.laid.dial)),
            Err(mistakes) => Err(Sorry::mistakes(mistakes, &look.text)),
        }
    })
    .await?;
    Ok(([(header::CONTENT_TYPE, "image/svg+xml")], svg).into_response())
}
