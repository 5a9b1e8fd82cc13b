//! Magnets: how the wheels are held, the map, the shelf's pairs as changes, the pole plan; and what fits what in the folder.

use super::Desk;
use super::answer::{Sorry, aside};
use crate::pair;
use axum::Json;
use axum::extract::{Query, State};
use dial::Dial;
use dial::family::{self, Fit};
use dial::magnets::{self, Choice};
use serde::Deserialize;
use serde_json::{Value, json};
use std::sync::Arc;

type Answer = Result<Json<Value>, Sorry>;

/// Which dial.
#[derive(Deserialize)]
pub(super) struct Which {
    dial: String,
}

/// All about the magnets of a dial.
pub(super) async fn magnets(State(desk): State<Arc<Desk>>, Query(which): Query<Which>) -> Answer {
    aside(move || {
        let look = desk.look(&which.dial)?;
        let Ok(seen) = &look.outcome else {
            return Err(Sorry::unfit(
                "the file has mistakes",
                "mend them in writing; then its magnets can be computed",
            ));
        };
        let (looked, workshop) = (&seen.looked, &look.workshop);
        let all = magnets::choose(looked, workshop);
        let mut chooser = press::chooser_report(looked, workshop);
        for (row, one) in chooser.as_array_mut().into_iter().flatten().zip(&all) {
            row["changes"] = match one.choice {
                Choice::Does => json!(pair::takes(&one.cover, &one.wheel)),
                Choice::Fails(_) => Value::Null,
            };
        }
        Ok(Json(json!({
            "figures": press::report(looked)["magnets"],
            "map": press::map_report(looked, workshop),
            "chooser": chooser,
            "pole_plan": press::pole_plan(&looked.laid.dial),
            "page": press::magnets_page(looked, workshop),
        })))
    })
    .await
}

/// Which wheel of which dial of the folder fits which place; dials with mistakes are named apart.
pub(super) async fn fits(State(desk): State<Arc<Desk>>) -> Answer {
    aside(move || {
        let names = desk.shelf.dials();
        let looks: Vec<_> = names.into_iter().filter_map(|name| Some((desk.look(&name).ok()?, name))).collect();
        let sound = looks.iter().filter_map(|(look, name)| Some((look.outcome.as_ref().ok()?, look, name)));
        let sound: Vec<_> = sound.take(MOST).collect();
        let dials: Vec<&Dial> = sound.iter().map(|(seen, _, _)| &seen.laid.dial).collect();
        let feel = sound.first().map_or(process::Feel::USUAL, |(_, look, _)| look.workshop.feel);
        let fit = |fit: &Fit| json!({ "wheel": fit.wheel, "place": fit.place, "why_not": fit.why_not });
        let wheels = |dial: &Dial| dial.wheels.iter().map(|wheel| wheel.name.clone()).collect::<Vec<_>>();
        Ok(Json(json!({
            "dials": sound.iter().map(|(seen, _, name)| json!({
                "file": name, "name": seen.laid.dial.name, "wheels": wheels(&seen.laid.dial),
            })).collect::<Vec<_>>(),
            "left_out": looks.len() - sound.len(),
            "fits": family::fits(&dials, &feel).iter().map(fit).collect::<Vec<_>>(),
        })))
    })
    .await
}

/// More dials than this are no family that one looks at side by side.
const MOST: usize = 8;
