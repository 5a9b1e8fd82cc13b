//! What people picked: votes written, taken back, and ranked with how sure that is.

use super::Desk;
use super::answer::{Sorry, aside};
use crate::store::{NoVote, NotHere, VotesFile};
use axum::Json;
use axum::extract::{Query, State};
use dial::looks::picks;
use process::Vote;
use serde::Deserialize;
use serde_json::{Value, json};
use std::path::PathBuf;
use std::sync::Arc;

type Answer = Result<Json<Value>, Sorry>;

/// Which dial.
#[derive(Deserialize)]
pub(super) struct Which {
    dial: String,
}

/// A vote on it.
#[derive(Deserialize)]
pub(super) struct Ballot {
    dial: String,
    best_first: Vec<String>,
}

/// The votes and what they say.
pub(super) async fn votes(State(desk): State<Arc<Desk>>, Query(which): Query<Which>) -> Answer {
    aside(move || {
        let path = place(&desk, &which.dial)?;
        Ok(ranked(&desk, &path, &VotesFile::at(&path).votes()?))
    })
    .await
}

/// Adds a vote; answers when it is on disk.
pub(super) async fn vote(State(desk): State<Arc<Desk>>, Json(ballot): Json<Ballot>) -> Answer {
    aside(move || {
        let path = place(&desk, &ballot.dial)?;
        Ok(ranked(&desk, &path, &VotesFile::at(&path).add(&ballot.best_first)?))
    })
    .await
}

/// Takes the last such vote back.
pub(super) async fn back(State(desk): State<Arc<Desk>>, Json(ballot): Json<Ballot>) -> Answer {
    aside(move || {
        let path = place(&desk, &ballot.dial)?;
        Ok(ranked(&desk, &path, &VotesFile::at(&path).take_back(&ballot.best_first)?))
    })
    .await
}

/// The file of votes that the command line reads too. One outside the opened folder is not written to; nor is one begun there.
fn place(desk: &Desk, dial: &str) -> Result<PathBuf, Sorry> {
    let dial = desk.path(dial)?;
    let path = (desk.house.votes_place)(&dial);
    let inside = path.parent().and_then(|folder| desk.shelf.name_of(folder)).is_some();
    match (path.exists(), inside) {
        (false, false) => Ok(dial.with_file_name(path.file_name().unwrap_or_default())),
        (true, true) if std::fs::canonicalize(&path)? != path => Err(NotHere::Outside.into()),
        (_, true) => Ok(path),
        (true, false) => Err(Sorry::unfit(
            format!("the votes are kept in {}, outside the opened folder", path.display()),
            "open the desk on that folder to vote",
        )),
    }
}

fn ranked(desk: &Desk, path: &std::path::Path, votes: &[Vote]) -> Json<Value> {
    let found = picks(votes);
    Json(json!({
        "file": path.parent().and_then(|folder| desk.shelf.name_of(folder)).map(|folder| {
            let name = path.file_name().unwrap_or_default().to_string_lossy();
            if folder.is_empty() { name.into_owned() } else { format!("{folder}/{name}") }
        }),
        "picked": found.as_ref().map(press::picked_report),
    }))
}

impl From<NoVote> for Sorry {
    fn from(why: NoVote) -> Sorry {
        match why {
            NoVote::Mistakes { text, mistakes } => Sorry::mistakes(&mistakes, &text),
            NoVote::NoSuch => Sorry::unfit("there is no such vote any more", "it was taken back already"),
            NoVote::Io(error) => error.into(),
        }
    }
}
