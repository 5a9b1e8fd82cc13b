//! A dial looked at, tried, changed, undone.

use super::Desk;
use super::answer::{Sorry, aside, of_state};
use super::asks::{Edit, Settle, Step, Text, Which};
use crate::look::Look;
use crate::pieces;
use crate::store::{Refused, State as FileState, apply};
use axum::Json;
use axum::extract::{Query, State};
use dial::Mistake;
use outline::Nearest;
use serde::Deserialize;
use serde_json::{Value, json};
use std::sync::Arc;

type Answer = Result<Json<Value>, Sorry>;

/// What the dial looks like now.
pub(super) async fn look(State(desk): State<Arc<Desk>>, Query(which): Query<Which>) -> Answer {
    aside(move || {
        let look = desk.look(&which.dial)?;
        Ok(Json(look.since(desk.looks.remembered(&which.have).as_deref())))
    })
    .await
}

/// What the file holds and where it stands among its steps; opening a dial asks for it, so it is remembered here.
pub(super) async fn state(State(desk): State<Arc<Desk>>, Query(which): Query<Which>) -> Answer {
    aside(move || {
        let file = desk.file(&which.dial)?;
        let state = file.state()?;
        desk.recent.remember(file.path());
        Ok(Json(of_state(&state)))
    })
    .await
}

/// What the dial would look like with changes, while one drags: nothing is written.
pub(super) async fn attempt(State(desk): State<Arc<Desk>>, Json(edit): Json<Edit>) -> Answer {
    aside(move || {
        let file = desk.file(&edit.dial)?;
        let had = desk.looks.remembered(&edit.have);
        let (text, version) = file.read()?;
        if version != edit.on {
            return Err(Sorry::conflict(None));
        }
        let text = apply(&text, &edit.changes).map_err(|unfit| Sorry::unfit(unfit.what, unfit.help))?;
        let look = desk.looks.at(file.path(), &text);
        match &look.outcome {
            Ok(_) => Ok(Json(look.since(had.as_deref()))),
            Err(mistakes) => Err(Sorry::mistakes(mistakes, &text)),
        }
    })
    .await
}

/// Changes values; answers when they are on disk.
pub(super) async fn edit(State(desk): State<Arc<Desk>>, Json(edit): Json<Edit>) -> Answer {
    aside(move || {
        let file = desk.file(&edit.dial)?;
        let had = desk.looks.remembered(&edit.have);
        let check = |text: &str| -> Vec<Mistake> {
            desk.looks.at(file.path(), text).outcome.as_ref().err().cloned().unwrap_or_default()
        };
        let done = file.edit(&edit.on, &edit.changes, &edit.words, &check);
        changed(&desk, &edit.dial, done, had.as_deref())
    })
    .await
}

/// Writes the file as the maker wrote it in the page, with its mistakes if it has any.
pub(super) async fn text(State(desk): State<Arc<Desk>>, Json(text): Json<Text>) -> Answer {
    aside(move || {
        let had = desk.looks.remembered(&text.have);
        let done = desk.file(&text.dial)?.write(&text.on, &text.text, &text.words);
        changed(&desk, &text.dial, done, had.as_deref())
    })
    .await
}

/// Takes the last step back.
pub(super) async fn undo(State(desk): State<Arc<Desk>>, Json(step): Json<Step>) -> Answer {
    aside(move || {
        let had = desk.looks.remembered(&step.have);
        let done = desk.file(&step.dial)?.undo(&step.on);
        changed(&desk, &step.dial, done, had.as_deref())
    })
    .await
}

/// Does the step again that was taken back.
pub(super) async fn redo(State(desk): State<Arc<Desk>>, Json(step): Json<Step>) -> Answer {
    aside(move || {
        let had = desk.looks.remembered(&step.have);
        let done = desk.file(&step.dial)?.redo(&step.on);
        changed(&desk, &step.dial, done, had.as_deref())
    })
    .await
}

/// Takes a version that was set aside, or lets it go.
pub(super) async fn settle(State(desk): State<Arc<Desk>>, Json(kept): Json<Settle>) -> Answer {
    aside(move || {
        let had = desk.looks.remembered(&kept.have);
        let done = desk.file(&kept.dial)?.settle(&kept.on, &kept.kept, kept.take);
        changed(&desk, &kept.dial, done, had.as_deref())
    })
    .await
}

/// Tells all pages of a change that is on disk, and this one what came of it.
fn changed(desk: &Desk, name: &str, done: Result<FileState, Refused>, had: Option<&Look>) -> Answer {
    let state = done?;
    desk.bell.ring(name, &state.version);
    let look = desk.looks.at(&desk.path(name)?, &state.text);
    let mut answer = look.since(had);
    answer["state"] = of_state(&state);
    Ok(Json(answer))
}

/// The mends that are known for the findings of a look, by their order.
pub(super) async fn mends(State(desk): State<Arc<Desk>>, Query(which): Query<Which>) -> Answer {
    aside(move || {
        let look = desk.looks.remembered(&which.have).ok_or_else(|| Sorry::conflict(None))?;
        Ok(Json(json!(look.mends())))
    })
    .await
}

/// Two features of a dial.
#[derive(Deserialize)]
pub(super) struct Two {
    have: String,
    from: String,
    to: String,
}

/// The least distance between two features, and where it is.
pub(super) async fn measure(State(desk): State<Arc<Desk>>, Query(two): Query<Two>) -> Answer {
    aside(move || {
        let look = desk.looks.remembered(&two.have).ok_or_else(|| Sorry::conflict(None))?;
        let Ok(seen) = &look.outcome else { return Err(Sorry::conflict(None)) };
        let dial = &seen.laid.dial;
        let feature = |name: &str| {
            pieces::feature(dial, name).ok_or_else(|| Sorry::unfit("there is no such place on the dial", ""))
        };
        let (from, to) = (feature(&two.from)?, feature(&two.to)?);
        let Nearest { distance, on_self, on_other } = from.edges.nearest(&to.edges);
        Ok(Json(json!({
            "distance": measure::show(distance, dial.show),
            "distance_mm": distance,
            "from": from.words,
            "to": to.words,
            "line": pieces::line(on_self, on_other),
        })))
    })
    .await
}
