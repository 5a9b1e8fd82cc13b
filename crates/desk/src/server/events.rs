//! Tells pages that a dial file has changed, whoever changed it. While no page listens, nothing is looked at.

use super::Desk;
use crate::kin;
use crate::store::Version;
use axum::extract::{Query, State};
use axum::response::sse::{Event, KeepAlive, Sse};
use futures_util::stream::{self, Stream};
use serde::Deserialize;
use serde_json::json;
use std::convert::Infallible;
use std::path::{Path, PathBuf};
use std::sync::Arc;
use std::time::{Duration, SystemTime};
use tokio::sync::broadcast::{self, error::RecvError};
use tokio::time::{Instant, sleep_until};

/// How often a file that a page shows is looked at: two questions to the system for its time and size, no reading.
const EVERY: Duration = Duration::from_millis(250);

/// Rings when a desk has written a dial.
pub(super) struct Bell(broadcast::Sender<(String, Version)>);

impl Bell {
    pub(super) fn new() -> Bell {
        Bell(broadcast::channel(64).0)
    }

    /// Tells all pages of a dial's new version.
    pub(super) fn ring(&self, dial: &str, version: &Version) {
        // Nobody listens: nobody need know.
        let _ = self.0.send((dial.to_owned(), version.clone()));
    }
}

/// Which dial a page shows.
#[derive(Deserialize)]
pub(super) struct Which {
    dial: String,
}

struct Watch {
    desk: Arc<Desk>,
    dial: String,
    bell: broadcast::Receiver<(String, Version)>,
    seen: Seen,
    /// Where the standard lies that the file named when it was last looked at.
    standard: Option<PathBuf>,
    told: Option<String>,
    next: Instant,
}

/// What tells that a file may have changed, without reading it: of the dial file, its workshop file, and its standard.
type Seen = [Option<(SystemTime, u64)>; 3];

fn touch(path: Option<&Path>) -> Option<(SystemTime, u64)> {
    let about = std::fs::metadata(path?).ok()?;
    Some((about.modified().ok()?, about.len()))
}

impl Watch {
    fn touches(&self) -> Seen {
        let file = self.desk.shelf.file(&self.dial).ok();
        let shop = file.as_deref().and_then(self.desk.house.workshop_file);
        [touch(file.as_deref()), touch(shop.as_deref()), touch(self.standard.as_deref())]
    }

    /// The name of the look that the file has now, if it is another than the page was told.
    fn news(&mut self) -> Option<Event> {
        let look = self.desk.look(&self.dial).ok();
        let id = look.as_ref().map_or_else(|| "gone".to_owned(), |look| look.id.clone());
        if self.told.as_ref() == Some(&id) {
            return None;
        }
        self.told = Some(id.clone());
        let named = look.as_ref().and_then(|look| kin::named(&look.text));
        let file = self.desk.shelf.file(&self.dial).ok();
        self.standard = file.zip(named).map(|(file, named)| file.with_file_name("").join(named));
        let version = look.map(|look| look.version.clone());
        let data = json!({ "dial": self.dial, "look": id, "version": version }).to_string();
        Some(Event::default().event("changed").data(data))
    }

    async fn next(mut self) -> Option<(Result<Event, Infallible>, Watch)> {
        loop {
            tokio::select! {
                rung = self.bell.recv() => match rung {
                    Ok((dial, _)) if dial == self.dial => self.seen = self.touches(),
                    Ok(_) | Err(RecvError::Lagged(_)) => continue,
                    Err(RecvError::Closed) => return None,
                },
                () = sleep_until(self.next) => {
                    self.next = Instant::now() + EVERY;
                    let seen = self.touches();
                    if seen == self.seen {
                        continue;
                    }
                    self.seen = seen;
                }
            }
            let (watch, event) = match tokio::task::spawn_blocking(move || {
                let event = self.news();
                (self, event)
            })
            .await
            {
                Ok(done) => done,
                Err(_) => return None,
            };
            self = watch;
            if let Some(event) = event {
                return Some((Ok(event), self));
            }
        }
    }
}

/// The stream of events of one page: first which look the dial has now, then every change of it.
pub(super) async fn events(
    State(desk): State<Arc<Desk>>,
    Query(which): Query<Which>,
) -> Sse<impl Stream<Item = Result<Event, Infallible>>> {
    let bell = desk.bell.0.subscribe();
    let watch =
        Watch { desk, dial: which.dial, bell, seen: [None; 3], standard: None, told: None, next: Instant::now() };
    Sse::new(stream::unfold(watch, Watch::next)).keep_alive(KeepAlive::new().interval(Duration::from_secs(20)))
}
