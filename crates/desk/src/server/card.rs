//! The reference card: printed, its sample cut, a photo of both read.

use super::Desk;
use super::answer::{Sorry, aside};
use ::card::{CardPlan, Outlines, Paper, Photo, Point, Refused};
use axum::Json;
use axum::body::Bytes;
use axum::extract::{Query, State};
use axum::http::header;
use axum::response::{IntoResponse, Response};
use serde::Deserialize;
use serde_json::{Value, json};
use std::sync::Arc;

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
