//! The reference card: printed, its sample cut, a photo of both read.

use super::Desk;
use super::answer::{Sorry, aside};
use crate::house::Taken;
use crate::store::{DialFile, NotHere, Version};
use ::card::{CardPlan, Outlines, Paper, Photo, Point, Reading, Refused};
use axum::Json;
use axum::body::Bytes;
use axum::extract::{Query, State};
use axum::http::header;
use axum::response::{IntoResponse, Response};
use serde::Deserialize;
use serde_json::{Value, json};
use std::collections::VecDeque;
use std::fs;
use std::path::{Path, PathBuf};
use std::sync::{Arc, Mutex, PoisonError};

/// No photo of a phone is larger; everything else that is sent to the desk is far smaller.
pub(super) const LARGEST_PHOTO: usize = 40 << 20;

/// Which card.
#[derive(Deserialize)]
pub(super) struct Which {
    #[serde(default)]
    paper: String,
    steps: usize,
    /// Reflectance of the maker's own paper and print, where it was measured.
    #[serde(default)]
    paper_white: Option<f64>,
    #[serde(default)]
    ink_black: Option<f64>,
}

impl Which {
    fn plan(&self) -> Result<CardPlan, Sorry> {
        let paper = if self.paper == "letter" { Paper::Letter } else { Paper::A4 };
        CardPlan::new(paper, self.steps).map_err(|error| Sorry::unfit(error.to_string(), ""))
    }
}

/// The card to be printed.
pub(super) async fn page(Query(which): Query<Which>) -> Result<Response, Sorry> {
    let svg = aside(move || Ok(press::card_page(&which.plan()?))).await?;
    Ok(([(header::CONTENT_TYPE, "image/svg+xml")], svg).into_response())
}

/// The sample of a stock.
#[derive(Deserialize)]
pub(super) struct OfStock {
    dial: String,
    #[serde(default)]
    stock: String,
    #[serde(default)]
    paper: String,
    steps: usize,
}

/// The sample's cut file, with this dial's own marks; of its wheels' stock unless another is named.
pub(super) async fn sample(State(desk): State<Arc<Desk>>, Query(of): Query<OfStock>) -> Result<Response, Sorry> {
    let svg = aside(move || {
        let plan = Which { paper: of.paper, steps: of.steps, paper_white: None, ink_black: None }.plan()?;
        let look = desk.look(&of.dial)?;
        let seen = look.outcome.as_ref().map_err(|mistakes| Sorry::mistakes(mistakes, &look.text))?;
        let own = [&seen.laid.dial.cover.stock, &seen.design.wheel_stock];
        let stock = match of.stock.as_str() {
            "" => Some(own[1]),
            name => own.into_iter().chain(&look.workshop.stocks).find(|stock| stock.name == name),
        };
        let stock = stock.ok_or_else(|| Sorry::unfit("there is no such stock", ""))?;
        press::card_sample(&plan, &seen.laid.dial, stock).map_err(|what| Sorry::unfit(what, ""))
    })
    .await?;
    Ok(([(header::CONTENT_TYPE, "image/svg+xml")], svg).into_response())
}

/// Reads a photo. What is no photo of a card is an answer too: refused, with the reason, and what was found all the same.
pub(super) async fn read(
    State(desk): State<Arc<Desk>>,
    Query(which): Query<Which>,
    photo: Bytes,
) -> Result<Json<Value>, Sorry> {
    // One at a time: a photo takes a second of one core, and some hundred megabytes.
    let turn = desk.photos.clone().acquire_owned().await;
    aside(move || {
        let _turn = turn;
        let plan = which.plan()?;
        let print = (desk.house.print)(which.paper_white, which.ink_black);
        let photo = match Photo::decode(&photo) {
            Ok(photo) => photo,
            Err(refused) => return Ok(Json(refusal(&refused))),
        };
        let mut answer = match ::card::read_photo(&photo, &plan, &print) {
            Ok(reading) => {
                let mut answer = (desk.house.card_figures)(&reading);
                answer["outlines"] = outlines(&reading.outlines);
                answer["reading"] = json!(desk.readings.keep(reading));
                answer
            }
            Err(refused) => refusal(&refused),
        };
        answer["width"] = json!(photo.width());
        answer["height"] = json!(photo.height());
        Ok(Json(answer))
    })
    .await
}

fn refusal(refused: &Refused) -> Value {
    json!({ "refused": refused.to_string(), "outlines": outlines(&refused.found) })
}

/// Corners in pixels of the upright photo.
fn outlines(found: &Outlines) -> Value {
    let ring = |points: &[Point]| points.iter().map(|p| [round(p.x), round(p.y)]).collect::<Vec<_>>();
    let rings = |all: &[[Point; 4]]| all.iter().map(|one| ring(one)).collect::<Vec<_>>();
    json!({
        "card": ring(&found.card),
        "tags": rings(&found.tags),
        "whites": rings(&found.whites),
        "blacks": rings(&found.blacks),
        "steps": found.steps.iter().map(|[face, engraved]| [ring(face), ring(engraved)]).collect::<Vec<_>>(),
    })
}

/// A tenth of a pixel is finer than anybody sees.
fn round(pixels: f64) -> f64 {
    (pixels * 10.0).round() / 10.0
}

/// The last photos that were read: what is stored in a stock is what the desk has read, and not what a page says.
#[derive(Default)]
pub(super) struct Readings(Mutex<(u64, VecDeque<(u64, Reading)>)>);

/// How many readings are remembered.
const REMEMBERED: usize = 8;

impl Readings {
    fn keep(&self, reading: Reading) -> u64 {
        let mut kept = self.0.lock().unwrap_or_else(PoisonError::into_inner);
        kept.0 += 1;
        let name = kept.0;
        kept.1.push_back((name, reading));
        if kept.1.len() > REMEMBERED {
            kept.1.pop_front();
        }
        name
    }

    fn get(&self, name: u64) -> Option<Reading> {
        let kept = self.0.lock().unwrap_or_else(PoisonError::into_inner);
        kept.1.iter().find(|(one, _)| *one == name).map(|(_, reading)| reading.clone())
    }
}

/// A reading that is to be kept, and of which stock it is.
#[derive(Deserialize)]
pub(super) struct Keep {
    dial: String,
    reading: u64,
    stock: String,
    #[serde(default)]
    step: Option<usize>,
    depth: String,
    #[serde(default)]
    power: String,
    photo: String,
}

/// Keeps a reading in its stock, and answers when it is on disk: in the workshop file, unless the dial file describes the stock itself;
/// then the answer is what the page is to write.
pub(super) async fn store(State(desk): State<Arc<Desk>>, Json(keep): Json<Keep>) -> Result<Json<Value>, Sorry> {
    aside(move || {
        let gone = || Sorry::unfit("the desk does not remember this photo any more", "read it once more");
        let reading = desk.readings.get(keep.reading).ok_or_else(gone)?;
        let depth = measure::parse_length(&keep.depth)
            .map_err(|error| Sorry::unfit(format!("depth: {error}"), "write it as 0.3 mm"))?;
        let power = Some(keep.power.trim().to_owned()).filter(|power| !power.is_empty());
        let taken = Taken { step: keep.step, depth, power, photo: keep.photo };
        let look = (desk.house.measured)(&reading, &taken).map_err(|what| Sorry::unfit(what, ""))?;
        let dial = desk.path(&keep.dial)?;
        let of_dial = describes(&DialFile::at(&dial).read()?.0, &keep.stock);
        let path = if of_dial { dial } else { workshop_place(&desk, &dial)? };
        let file = DialFile::at(&path);
        let text = if path.exists() { file.read()?.0 } else { String::new() };
        let stored =
            workshop::store_look(&text, &keep.stock, &look).map_err(|error| Sorry::unfit(error.to_string(), ""))?;
        let mistakes = if of_dial {
            dial::design::read(&stored, &desk.house.shop(&path).workshop).err()
        } else {
            workshop::read(&stored).err()
        };
        if let Some(mistakes) = mistakes {
            return Err(Sorry::mistakes(&mistakes, &stored));
        }
        let mut answer = json!({
            "file": desk.shelf.name_of(&path),
            "of_dial": of_dial,
            "looks": format!("measured here on {}: {}", look.on, look.how),
        });
        if of_dial {
            // The page writes its own file, by the way of all its changes: so it knows of it, and undo is one.
            answer["text"] = json!(stored);
            answer["on"] = json!(Version::of(&text));
            return Ok(Json(answer));
        }
        if !path.exists() {
            fs::OpenOptions::new().write(true).create_new(true).open(&path)?.sync_all()?;
            answer["file"] = json!(desk.shelf.name_of(&path));
        }
        let state = file.write(&Version::of(&text), &stored, &format!("{}: as measured", keep.stock))?;
        answer["version"] = json!(state.version);
        Ok(Json(answer))
    })
    .await
}

/// Which version of the workshop file the last step is taken back from.
#[derive(Deserialize)]
pub(super) struct Unstore {
    dial: String,
    on: Version,
}

/// Takes the last step of the workshop file back, as long as nobody has changed it since.
pub(super) async fn unstore(State(desk): State<Arc<Desk>>, Json(back): Json<Unstore>) -> Result<Json<Value>, Sorry> {
    aside(move || {
        let path = workshop_place(&desk, &desk.path(&back.dial)?)?;
        let state = DialFile::at(&path).undo(&back.on)?;
        Ok(Json(json!({ "version": state.version })))
    })
    .await
}

/// Whether a file describes a stock of that name.
fn describes(text: &str, stock: &str) -> bool {
    let read: Option<toml_edit::DocumentMut> = text.parse().ok();
    read.is_some_and(|document| document.get("stocks").and_then(|stocks| stocks.get(stock)).is_some())
}

/// The workshop file of a dial; where there is none it is begun in the opened folder. One outside the folder is not written to.
fn workshop_place(desk: &Desk, dial: &Path) -> Result<PathBuf, Sorry> {
    let Some(path) = (desk.house.workshop_file)(dial) else {
        return Ok(desk.shelf.root().join("workshop.toml"));
    };
    let folder = path.parent().and_then(|folder| desk.shelf.name_of(folder));
    if folder.is_none() {
        return Err(Sorry::unfit(
            format!("the stock would be written into {}, outside the opened folder", path.display()),
            "open the desk on that folder",
        ));
    }
    // A link could lead anywhere.
    if fs::canonicalize(&path)? == path { Ok(path) } else { Err(NotHere::Outside.into()) }
}
