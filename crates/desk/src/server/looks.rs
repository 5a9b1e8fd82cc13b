//! How a dial looks: stocks by their picture, every pairing of them, what is seen from a seat, two colours against each other.

use super::Desk;
use super::answer::{Sorry, aside};
use crate::look::{Look, Seen};
use crate::pieces;
use axum::Json;
use axum::extract::{Query, State};
use axum::http::header;
use axum::response::{IntoResponse, Response};
use dial::findings::Quantity;
use dial::looks::{Pairing, Reader, name_of};
use measure::{parse_angle, parse_length, show};
use process::{Side, Stock, Workshop};
use serde::Deserialize;
use serde_json::{Value, json};
use sight::{Acuity, HeightLimit, Seat, View};
use std::sync::Arc;

type Answer = Result<Json<Value>, Sorry>;

/// Which dial.
#[derive(Deserialize)]
pub(super) struct Which {
    dial: String,
}

/// A dial that is there, or one that would be begun.
fn there_or_begun(desk: &Desk, dial: &str, brief: Option<&str>) -> Result<Arc<Look>, Sorry> {
    brief.map_or_else(|| desk.look(dial), |counters| Ok(desk.sketch(counters)))
}

pub(super) fn seen(look: &Look) -> Result<&Seen, Sorry> {
    look.outcome
        .as_ref()
        .map_err(|_| Sorry::unfit("the file has mistakes", "mend them in writing; then it can be seen how it looks"))
}

/// What cover and wheels are cut from.
pub(super) fn worn(seen: &Seen) -> [&Stock; 2] {
    [&seen.laid.dial.cover.stock, &seen.design.wheel_stock]
}

/// Which pairings, and how many of them.
#[derive(Deserialize)]
pub(super) struct Asked {
    dial: String,
    #[serde(default)]
    cover: String,
    #[serde(default)]
    wheel: String,
    /// `does`, `fails`, or all.
    #[serde(default)]
    show: String,
    #[serde(default)]
    count: usize,
}

/// All figures of what can be read, and the first of the pairings that are asked for, best first, as the command line tells them; and
/// how to wear each.
pub(super) async fn looks(State(desk): State<Arc<Desk>>, Query(asked): Query<Asked>) -> Answer {
    aside(move || {
        let look = desk.look(&asked.dial)?;
        let seen = seen(&look)?;
        let all = look.ranked();
        let wanted = |one: &Pairing| {
            let of = |name: &str, stock: &Stock| name.is_empty() || name == stock.name;
            let shown = match asked.show.as_str() {
                "does" => one.does(),
                "fails" => !one.does(),
                _ => true,
            };
            shown && of(&asked.cover, &one.cover) && of(&asked.wheel, &one.wheel)
        };
        let found: Vec<(usize, &Pairing)> = all.iter().enumerate().filter(|(_, one)| wanted(one)).collect();
        let rows: Vec<Pairing> = found.iter().take(asked.count).map(|(_, one)| (*one).clone()).collect();
        // A file of votes that cannot be read is told where one votes; the board can do without.
        let votes = super::votes::of(&desk, &asked.dial).unwrap_or_default();
        let workshop = Workshop { votes, ..look.workshop.clone() };
        let mut report = press::looks_report(&seen.looked, &workshop, &rows);
        let list = report["pairings"].as_array_mut().into_iter().flatten();
        for ((row, one), (rank, _)) in list.zip(&rows).zip(&found) {
            more(row, one, *rank + 1, seen);
        }
        let [cover, wheel] = worn(seen);
        report["worn"] = json!(name_of(&cover.name, &wheel.name));
        report["does"] = json!(all.iter().filter(|one| one.does()).count());
        report["all"] = json!(all.len());
        report["matching"] = json!(found.len());
        Ok(Json(report))
    })
    .await
}

/// What a page shows of a pairing besides its figures.
pub(super) fn more(row: &mut Value, one: &Pairing, rank: usize, seen: &Seen) {
    let units = seen.laid.dial.show;
    let [cover, wheel] = worn(seen);
    row["rank"] = json!(rank);
    row["worn"] = json!(one.cover.name == cover.name && one.wheel.name == wheel.name);
    row["cover"]["thickness"] = json!(show(one.cover.thickness(), units));
    row["wheel"]["thickness"] = json!(show(one.wheel.thickness(), units));
    row["marks_shown"] = json!(one.marks.as_ref().map(|marks| marks.contrast.shown()));
    row["art_shown"] = json!(one.art.as_ref().map(|art| art.contrast.shown()));
    row["changes"] = wear(&one.cover.name, &one.wheel.name);
}

/// Every pairing on one sheet, as the command line draws it.
pub(super) async fn sheet(State(desk): State<Arc<Desk>>, Query(which): Query<Which>) -> Result<Response, Sorry> {
    let svg = aside(move || {
        let look = desk.look(&which.dial)?;
        let votes = super::votes::of(&desk, &which.dial).unwrap_or_default();
        let workshop = Workshop { votes, ..look.workshop.clone() };
        Ok(press::pairings_board(&seen(&look)?.looked, &workshop, look.ranked()))
    })
    .await?;
    Ok(svg_of(svg))
}

/// The changes of the dial file that make it wear a pairing.
fn wear(cover: &str, wheel: &str) -> Value {
    let set = |path: &str, name: &str| json!({ "do": "set", "path": path, "value": name });
    let leave = |path: &str| json!({ "do": "leave", "path": path });
    if cover == wheel {
        json!([set("stock", cover), leave("cover.stock"), leave("wheel.stock")])
    } else {
        // A stock that no part is cut from would be a mistake.
        json!([set("cover.stock", cover), set("wheel.stock", wheel), leave("stock")])
    }
}

/// For which value of the file a stock is chosen.
#[derive(Deserialize)]
pub(super) struct For {
    #[serde(default)]
    dial: String,
    path: String,
    /// The counters of a dial that is not begun yet, a line each, in place of one that is there.
    #[serde(default)]
    brief: Option<String>,
}

/// Every stock that may be chosen for a value, and whether the dial could be read then, and why not.
pub(super) async fn stocks(State(desk): State<Arc<Desk>>, Query(which): Query<For>) -> Answer {
    aside(move || {
        let look = there_or_begun(&desk, &which.dial, which.brief.as_deref())?;
        let seen = seen(&look)?;
        let units = seen.laid.dial.show;
        let [cover, wheel] = worn(seen);
        // What the file says of one alone holds whatever `stock` becomes.
        let written = |path: &str| crate::store::written(&look.text, path).is_some();
        let pair = |name: &str| match which.path.as_str() {
            "cover.stock" => Some(name_of(name, &wheel.name)),
            "wheel.stock" => Some(name_of(&cover.name, name)),
            "stock" => {
                let kept = |path: &str, own: &Stock| if written(path) { own.name.clone() } else { name.to_owned() };
                Some(name_of(&kept("cover.stock", cover), &kept("wheel.stock", wheel)))
            }
            _ => None,
        };
        let described = own_stocks(&look.text);
        let own = |stock: &Stock| described.iter().any(|one| one.name == stock.name);
        // A stock of the file takes the place of one of that name on the shelf.
        let shelf = look.workshop.stocks.iter().filter(|stock| !own(stock)).chain(&described);
        let row = |stock: &Stock| {
            let name = pair(&stock.name);
            let pairing = look.ranked().iter().find(|one| Some(one.name()) == name);
            json!({
                "name": stock.name,
                "thickness": show(stock.thickness(), units),
                "finish": stock.finish(Side::Face).word(),
                "back_finish": stock.finish(Side::Back).word(),
                "laser": stock.laser,
                "looks": stock.surfaces.source,
                "measured": stock.surfaces.measured(),
                "own": own(stock),
                "does": pairing.map(Pairing::does),
                "why_not": pairing.map(|one| one.reasons.iter().map(|reason| reason.words()).collect::<Vec<_>>()),
                "ratio": pairing.and_then(|one| {
                    let engraving = if which.path == "cover.stock" { &one.art } else { &one.marks };
                    engraving.as_ref().map(|one| one.contrast.shown())
                }),
                "price": pairing.and_then(|one| one.price).map(|price| (price * 100.0).round() / 100.0),
            })
        };
        Ok(Json(json!(shelf.map(row).collect::<Vec<_>>())))
    })
    .await
}

/// The stocks that a dial file describes itself, as the reader of workshop files reads them.
fn own_stocks(text: &str) -> Vec<Stock> {
    let read = || {
        let mut file: toml_edit::DocumentMut = text.parse().ok()?;
        let stocks = file.remove("stocks")?;
        let names: Vec<String> = stocks.as_table_like()?.iter().map(|(name, _)| name.to_owned()).collect();
        let mut alone = toml_edit::DocumentMut::new();
        alone.insert("stocks", stocks);
        let all = workshop::read(&alone.to_string()).ok()?.stocks;
        Some(all.into_iter().filter(|stock| names.contains(&stock.name)).collect())
    };
    read().unwrap_or_default()
}

/// A stock, as part of a dial.
#[derive(Deserialize)]
pub(super) struct Swatch {
    #[serde(default)]
    dial: String,
    stock: String,
    #[serde(default)]
    path: String,
    #[serde(default)]
    brief: Option<String>,
}

/// A stock's picture: engraved as deep as this dial's cover or its wheels are.
pub(super) async fn swatch(State(desk): State<Arc<Desk>>, Query(which): Query<Swatch>) -> Result<Response, Sorry> {
    let svg = aside(move || {
        let look = there_or_begun(&desk, &which.dial, which.brief.as_deref())?;
        let seen = seen(&look)?;
        let dial = &seen.laid.dial;
        let deep = dial.wheels.iter().map(|wheel| wheel.mark_depth).fold(0.0, f64::max);
        let depth = if which.path == "cover.stock" { dial.cover.engrave_depth } else { deep };
        let described = own_stocks(&look.text);
        let stock = described.iter().chain(&look.workshop.stocks).find(|stock| stock.name == which.stock);
        let stock = stock.ok_or_else(|| Sorry::unfit("there is no such stock", ""))?;
        Ok(press::swatch(&seen.looked, stock, depth))
    })
    .await?;
    Ok(svg_of(svg))
}

/// Two stocks.
#[derive(Deserialize)]
pub(super) struct Two {
    dial: String,
    cover: String,
    wheel: String,
}

/// A pairing's picture.
pub(super) async fn pairing(State(desk): State<Arc<Desk>>, Query(two): Query<Two>) -> Result<Response, Sorry> {
    let svg = aside(move || {
        let look = desk.look(&two.dial)?;
        let seen = seen(&look)?;
        let found = look.ranked().iter().find(|one| one.cover.name == two.cover && one.wheel.name == two.wheel);
        let found = found.ok_or_else(|| Sorry::unfit("there is no such pairing on the shelf", ""))?;
        Ok(press::pairing_picture(&seen.looked, found))
    })
    .await?;
    Ok(svg_of(svg))
}

/// The dial as it would look in a pairing.
pub(super) async fn dressed(State(desk): State<Arc<Desk>>, Query(two): Query<Two>) -> Result<Response, Sorry> {
    let svg = aside(move || {
        let look = desk.look(&two.dial)?;
        let seen = seen(&look)?;
        let found = look.ranked().iter().find(|one| one.cover.name == two.cover && one.wheel.name == two.wheel);
        let found = found.ok_or_else(|| Sorry::unfit("there is no such pairing on the shelf", ""))?;
        Ok(press::dressed(&seen.laid.dial, &found.cover, &found.wheel))
    })
    .await?;
    Ok(svg_of(svg))
}

fn svg_of(svg: String) -> Response {
    ([(header::CONTENT_TYPE, "image/svg+xml")], svg).into_response()
}

/// A seat at the table, as the maker writes lengths and angles, that of the file's first reader where it is not told; and which wheel
/// is looked at.
#[derive(Deserialize)]
pub(super) struct At {
    dial: String,
    wheel: usize,
    #[serde(default)]
    away: String,
    #[serde(default)]
    eye: String,
    #[serde(default)]
    side: String,
}

impl At {
    fn reader(&self, seen: &Seen) -> Result<Reader, Sorry> {
        let first = seen.laid.dial.reading.readers.first().map_or(View::upright(Seat::OWNER), |reader| reader.view);
        let mm = |what: &str, text: &str, usual: f64| match text {
            "" => Ok(usual),
            text => parse_length(text)
                .map_err(|error| Sorry::unfit(format!("{what}: {error}"), "write it as 470 mm or 18 in")),
        };
        let away = mm("how far away", &self.away, first.seat().away())?;
        let eye = mm("height of the eye", &self.eye, first.seat().eye())?;
        let side = match self.side.as_str() {
            "" => first.azimuth(),
            text => parse_angle(text)
                .map_err(|error| Sorry::unfit(format!("where round the table: {error}"), "write it as 90 deg"))?,
        };
        Reader::at(away, eye, side).map_err(|error| Sorry::unfit(error.to_string(), ""))
    }
}

/// What is seen of a wheel from a seat: the figures, the findings from there, and the window of the worst stop as a picture.
pub(super) async fn seat(State(desk): State<Arc<Desk>>, Query(at): Query<At>) -> Answer {
    aside(move || {
        let look = desk.look(&at.dial)?;
        let seen = seen(&look)?;
        let reader = at.reader(seen)?;
        let file = press::looks_report(&seen.looked, &look.workshop, &[]);
        let from = dial::look_from(&seen.looked, reader, &look.workshop);
        let report = press::looks_report(&from, &look.workshop, &[]);
        let (Some(wheel), Some(one)) = (from.laid.dial.wheels.get(at.wheel), from.looks.wheels.get(at.wheel)) else {
            return Err(Sorry::unfit("there is no such wheel", "it may have been taken out meanwhile"));
        };
        let units = from.laid.dial.show;
        let there = &one.seen[0];
        let worst = there.at_worst();
        let need = |limit: HeightLimit| {
            let high = from.laid.dial.reading.readers[0].view.height_for(limit.angle);
            json!({ "arcmin": limit.arcmin(), "height": show((high * 10.0).ceil() / 10.0, units), "source": limit.source })
        };
        Ok(Json(json!({
            "reader": report["readers"][0],
            "readers": file["readers"],
            "seen": report["wheels"][at.wheel]["seen"][0],
            "ratio": one.engraving.as_ref().map(|one| one.contrast.shown()),
            "mark": wheel.marks[there.worst].words,
            "angle": Quantity::Sight(there.angle).show(units),
            "hidden": show(worst.hidden, units),
            "extent": show(worst.extent, units),
            "window_for_all": show((there.window_for_all * 10.0).ceil() / 10.0, units),
            "least": need(HeightLimit::LEAST),
            "preferred": need(HeightLimit::PREFERRED),
            "findings": pieces::findings(&from.findings, seen, &look.text),
            "svg": press::window_from(&from, at.wheel, there.worst, Acuity::NORMAL),
            "svg_weak": press::window_from(&from, at.wheel, there.worst, from.laid.dial.reading.acuity),
            "eyesight": from.laid.dial.reading.acuity.to_string(),
        })))
    })
    .await
}

/// Two colours.
#[derive(Deserialize)]
pub(super) struct Colours {
    mark: String,
    ground: String,
}

/// Two colours against each other, as `dialwright contrast` tells it.
pub(super) async fn contrast(State(desk): State<Arc<Desk>>, Query(of): Query<Colours>) -> Answer {
    (desk.house.contrast)(&of.mark, &of.ground).map(Json).map_err(|what| Sorry::unfit(what, ""))
}
