//! Magnets: how the wheels are held, the map, the shelf's pairs as changes, the pole plan.

use super::Desk;
use super::answer::{Sorry, aside};
use crate::pair;
use axum::Json;
use axum::extract::{Query, State};
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
