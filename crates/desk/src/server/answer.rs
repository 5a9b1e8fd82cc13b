//! What the page is told when something could not be done.

use crate::pieces;
use crate::store::{NotHere, Refused, State, Version};
use axum::Json;
use axum::http::StatusCode;
use axum::response::{IntoResponse, Response};
use serde_json::{Value, json};

/// Why a request was not fulfilled, in words for the maker.
#[derive(Debug)]
pub(super) struct Sorry {
    status: StatusCode,
    body: Value,
}

impl Sorry {
    /// With a status, what is wrong, and what to do.
    pub(super) fn new(status: StatusCode, what: impl Into<String>, help: impl Into<String>) -> Sorry {
        Sorry { status, body: json!({ "what": what.into(), "help": help.into() }) }
    }

    /// Something that the maker asked for cannot be.
    pub(super) fn unfit(what: impl Into<String>, help: impl Into<String>) -> Sorry {
        Sorry::new(StatusCode::UNPROCESSABLE_ENTITY, what, help)
    }

    /// The text that was to be written has mistakes.
    pub(super) fn mistakes(mistakes: &[dial::Mistake], text: &str) -> Sorry {
        let list: Vec<Value> = mistakes.iter().map(|one| pieces::mistake(one, text)).collect();
        let first = mistakes.first();
        let at = first.and_then(|one| one.at.as_ref()).map(|at| format!(": {}", at.words)).unwrap_or_default();
        let mut sorry = Sorry::unfit(
            first.map(|one| format!("{}{at}", one.what)).unwrap_or_default(),
            first.map(|one| one.help.clone()).unwrap_or_default(),
        );
        sorry.body["mistakes"] = json!(list);
        sorry
    }

    /// The file has changed meanwhile; `kept` is where the page's version was set aside.
    pub(super) fn conflict(kept: Option<&Version>) -> Sorry {
        let mut sorry = Sorry::new(
            StatusCode::CONFLICT,
            "the file has changed meanwhile",
            "look at what it holds now; nothing of yours is lost",
        );
        sorry.body["kept"] = json!(kept);
        sorry
    }

    /// As the last line of an answer that has begun already.
    pub(super) fn into_line(self) -> Value {
        json!({ "sorry": self.body })
    }
}

impl IntoResponse for Sorry {
    fn into_response(self) -> Response {
        (self.status, Json(self.body)).into_response()
    }
}

impl From<NotHere> for Sorry {
    fn from(why: NotHere) -> Sorry {
        match why {
            NotHere::Outside => Sorry::new(
                StatusCode::FORBIDDEN,
                "this lies outside the opened folder, or a link leads out of it",
                "open the desk on the folder itself",
            ),
            NotHere::Missing => {
                Sorry::new(StatusCode::NOT_FOUND, "there is no such dial here any more", "choose another on the shelf")
            }
        }
    }
}

impl From<std::io::Error> for Sorry {
    fn from(error: std::io::Error) -> Sorry {
        Sorry::new(
            StatusCode::INTERNAL_SERVER_ERROR,
            format!("the file could not be read or written: {error}"),
            "see whether the folder may be written and has room; the file is as it was",
        )
    }
}

impl From<Refused> for Sorry {
    fn from(why: Refused) -> Sorry {
        match why {
            Refused::Both(version) => Sorry::conflict(Some(&version)),
            Refused::Stale => Sorry::conflict(None),
            Refused::NoStep => Sorry::unfit("there is no further step", ""),
            Refused::Unfit(unfit) => Sorry::unfit(unfit.what, unfit.help),
            Refused::Mistakes { text, mistakes } => Sorry::mistakes(&mistakes, &text),
            Refused::Io(error) => error.into(),
        }
    }
}

/// What a file holds and where it stands among its steps.
pub(super) fn of_state(state: &State) -> Value {
    let kept = state.kept.iter().map(|one| json!({ "version": one.version, "words": one.words, "text": one.text }));
    json!({
        "version": state.version,
        "text": state.text,
        "undo": state.undo,
        "redo": state.redo,
        "kept": kept.collect::<Vec<_>>(),
    })
}

/// Runs work that computes or waits for the disk beside the server's own threads.
pub(super) async fn aside<T: Send + 'static>(
    work: impl FnOnce() -> Result<T, Sorry> + Send + 'static,
) -> Result<T, Sorry> {
    match tokio::task::spawn_blocking(work).await {
        Ok(done) => done,
        Err(_) => Err(Sorry::new(
            StatusCode::INTERNAL_SERVER_ERROR,
            "this is a fault of the program, not of your dial",
            "nothing was changed; please report it, with the dial file",
        )),
    }
}
