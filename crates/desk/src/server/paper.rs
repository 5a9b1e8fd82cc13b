//! What leaves the house on paper or to the client, without making a job folder: each document of the workbook, the turning
//! page, and the code that comes back from it.

use super::Desk;
use super::answer::{Sorry, aside};
use super::job::{planned, seen};
use crate::store::Change;
use axum::Json;
use axum::extract::{Query, State};
use axum::http::header;
use axum::response::{IntoResponse, Response};
use press::{Wardrobe, turning_page};
use serde::Deserialize;
use serde_json::{Value, json};
use std::sync::Arc;

/// A page that was made for the client carries its own script; it runs in a room of its own, from which nothing of the desk
/// can be reached.
pub(super) const CLIENTS_PAGE: &str = "sandbox allow-scripts allow-modals; default-src 'none'; script-src 'unsafe-inline'; style-src 'unsafe-inline'; img-src data:; base-uri 'none'; form-action 'none'; frame-ancestors 'none'";
/// The browser's own viewer shows a PDF: it brings styles of its own.
pub(super) const PDF: &str = "script-src 'none'; base-uri 'none'; form-action 'none'; frame-ancestors 'none'";

/// Which dial, and which document.
#[derive(Deserialize)]
pub(super) struct Which {
    dial: String,
    #[serde(default)]
    document: String,
}

/// Which documents there are.
pub(super) async fn papers(State(desk): State<Arc<Desk>>) -> Json<Value> {
    let all = (desk.house.documents)();
    Json(json!(all.iter().map(|(word, title)| json!({ "word": word, "title": title })).collect::<Vec<_>>()))
}

/// The workbook, or one document of it, as a PDF.
pub(super) async fn paper(State(desk): State<Arc<Desk>>, Query(which): Query<Which>) -> Result<Response, Sorry> {
    let one = Some(which.document.as_str()).filter(|word| !word.is_empty()).map(str::to_owned);
    let bytes = aside(move || {
        if (desk.house.documents)().is_empty() {
            return Err(Sorry::unfit(
                "this program was built without the workbook",
                "build it with its usual features; tickets and pictures are in the job folder",
            ));
        }
        let look = desk.look(&which.dial)?;
        let seen = seen(&look)?;
        if dial::findings::refuses(&seen.findings) {
            return Err(Sorry::unfit(
                "nothing is printed of a dial that cannot be made",
                "mend what is to be refused first",
            ));
        }
        (desk.house.paper)(&seen.looked, &look.workshop, &planned(&look)?, one.as_deref())
            .map_err(|what| Sorry::unfit(what, "see `dialwright workbook --help` for the documents there are"))
    })
    .await?;
    Ok(([(header::CONTENT_TYPE, "application/pdf"), (header::CONTENT_SECURITY_POLICY, PDF)], bytes).into_response())
}

/// The turning page, as a client gets it.
pub(super) async fn turning(State(desk): State<Arc<Desk>>, Query(which): Query<Which>) -> Result<Response, Sorry> {
    let page = aside(move || {
        let look = desk.look(&which.dial)?;
        let dial = &seen(&look)?.laid.dial;
        Ok(turning_page(dial, &Wardrobe::of(dial, look.ranked())))
    })
    .await?;
    let headers = [(header::CONTENT_TYPE, "text/html; charset=utf-8"), (header::CONTENT_SECURITY_POLICY, CLIENTS_PAGE)];
    Ok((headers, page).into_response())
}

/// A code that a client read out.
#[derive(Deserialize)]
pub(super) struct Code {
    dial: String,
    code: String,
}

/// The pairing of a code, and the changes that put it on: as `dialwright choice` tells it.
pub(super) async fn choice(State(desk): State<Arc<Desk>>, Json(told): Json<Code>) -> Result<Json<Value>, Sorry> {
    aside(move || {
        let look = desk.look(&told.dial)?;
        let design = &seen(&look)?.design;
        let shelf = look.workshop.stocks.iter().map(|stock| stock.name.as_str());
        let names: Vec<&str> =
            shelf.chain([design.cover.stock.name.as_str(), design.wheel_stock.name.as_str()]).collect();
        let (cover, wheel) = press::chosen(&told.code, &names).map_err(|what| Sorry::unfit(what, ""))?;
        Ok(Json(json!({ "cover": cover, "wheel": wheel, "changes": worn(cover, wheel) })))
    })
    .await
}

/// One stock for both, or one for each.
fn worn(cover: &str, wheel: &str) -> Vec<Change> {
    let set = |path: &str, name: &str| Change::Set { path: path.into(), value: name.into() };
    let leave = |path: &str| Change::Leave { path: path.into() };
    if cover == wheel {
        vec![set("stock", cover), leave("cover.stock"), leave("wheel.stock")]
    } else {
        vec![set("cover.stock", cover), set("wheel.stock", wheel), leave("stock")]
    }
}
