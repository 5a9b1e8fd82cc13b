//! What people picked: votes written, taken back, and ranked with how sure that is.

use super::Desk;
use super::answer::{Sorry, aside};
use super::looks;
use crate::store::{NoVote, NotHere, VotesFile};
use axum::Json;
use axum::extract::{Query, State};
use dial::looks::{name_of, picks};
use process::Vote;
use serde::Deserialize;
use serde_json::{Value, json};
use std::path::{Path, PathBuf};
use std::sync::Arc;

/// How many of the best may be voted on besides those that were.
const BEST: usize = 6;

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

/// The votes and what they say, and which pairings one may ask for.
pub(super) async fn votes(State(desk): State<Arc<Desk>>, Query(which): Query<Which>) -> Answer {
    aside(move || {
        let path = place(&desk, &which.dial)?;
        told(&desk, &which.dial, &path, &VotesFile::at(&path).votes()?)
    })
    .await
}

/// Adds a vote; answers when it is on disk.
pub(super) async fn vote(State(desk): State<Arc<Desk>>, Json(ballot): Json<Ballot>) -> Answer {
    aside(move || {
        let path = place(&desk, &ballot.dial)?;
        told(&desk, &ballot.dial, &path, &VotesFile::at(&path).add(&ballot.best_first)?)
    })
    .await
}

/// Takes the last such vote back.
pub(super) async fn back(State(desk): State<Arc<Desk>>, Json(ballot): Json<Ballot>) -> Answer {
    aside(move || {
        let path = place(&desk, &ballot.dial)?;
        told(&desk, &ballot.dial, &path, &VotesFile::at(&path).take_back(&ballot.best_first)?)
    })
    .await
}

/// The votes on a dial's pairings.
pub(super) fn of(desk: &Desk, dial: &str) -> Result<Vec<Vote>, Sorry> {
    Ok(VotesFile::at(&place(desk, dial)?).votes()?)
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

fn told(desk: &Desk, dial: &str, path: &Path, votes: &[Vote]) -> Answer {
    let found = picks(votes);
    let look = desk.look(dial)?;
    let seen = looks::seen(&look)?;
    let named = |name: &str| votes.iter().any(|vote| vote.best_first.iter().any(|one| one == name));
    let [cover, wheel] = looks::worn(seen);
    let worn = name_of(&cover.name, &wheel.name);
    let mut candidates = Vec::new();
    for (k, one) in look.ranked().iter().enumerate() {
        let name = one.name();
        if (k < BEST && one.does()) || name == worn || named(&name) {
            let report = press::looks_report(&seen.looked, &look.workshop, std::slice::from_ref(one));
            let mut row = report["pairings"][0].clone();
            looks::more(&mut row, one, k + 1, seen);
            candidates.push(row);
        }
    }
    let folder = path.parent().and_then(|folder| desk.shelf.name_of(folder)).unwrap_or_default();
    let name = path.file_name().unwrap_or_default().to_string_lossy();
    Ok(Json(json!({
        "file": if folder.is_empty() { name.into_owned() } else { format!("{folder}/{name}") },
        "picked": found.as_ref().map(press::picked_report),
        "last": votes.last().map(|vote| &vote.best_first),
        "candidates": candidates,
    })))
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
