//! The server of the page: for this machine alone, for whoever has the opening link.

mod answer;
mod asks;
mod card;
mod dials;
mod events;
mod family;
mod guard;
mod job;
mod looks;
mod magnets;
mod page;
mod paper;
mod shelf;
mod votes;
mod workshop;

use crate::house::House;
use crate::look::{Look, Looks};
use crate::store::{DialFile, Recent, Shelf};
use answer::Sorry;
use axum::Router;
use axum::extract::DefaultBodyLimit;
use axum::middleware;
use axum::routing::{get, post};
use events::Bell;
use std::path::{Path, PathBuf};
use std::sync::Arc;
use tokio::net::TcpListener;
use tokio::sync::Semaphore;

/// No request of the page is larger: a dial file of this size could not be read in any case.
const LARGEST_BODY: usize = 1 << 20;

/// A desk: one opened folder, and whoever looks at it.
pub struct Desk {
    shelf: Shelf,
    first: Option<String>,
    house: House,
    looks: Looks,
    recent: Recent,
    bell: Bell,
    /// One photo is read at a time.
    photos: Arc<Semaphore>,
    readings: card::Readings,
    secret: String,
    port: u16,
}

/// Why no desk can be opened.
#[derive(Debug)]
pub struct NoDesk(String);

impl std::fmt::Display for NoDesk {
    fn fmt(&self, f: &mut std::fmt::Formatter<'_>) -> std::fmt::Result {
        f.write_str(&self.0)
    }
}

impl std::error::Error for NoDesk {}

impl Desk {
    /// A desk on a folder, or on the folder of a dial file with that dial on the mat. `port` is where it will be served.
    ///
    /// # Errors
    /// A place that is not there.
    pub fn on(place: &Path, house: House, recent: Recent, port: u16) -> Result<Desk, NoDesk> {
        let cannot = |error: std::io::Error| NoDesk(format!("{} cannot be opened: {error}", place.display()));
        let real = std::fs::canonicalize(place).map_err(cannot)?;
        let folder = if real.is_dir() { real.as_path() } else { real.parent().unwrap_or(Path::new("/")) };
        let shelf = Shelf::open(folder).map_err(cannot)?;
        let first = if real.is_dir() {
            shelf.dials().into_iter().find(|name| name == "dial.toml")
        } else if real.extension().is_some_and(|end| end == "toml") {
            shelf.name_of(&real)
        } else {
            return Err(NoDesk(format!("{} is not a dial file: its name ends in .toml", place.display())));
        };
        let mut bytes = [0_u8; 24];
        getrandom::fill(&mut bytes).map_err(|error| NoDesk(format!("the system gave no random bytes: {error}")))?;
        let secret = bytes.iter().map(|byte| format!("{byte:02x}")).collect();
        let looks = Looks::new(house, Some(shelf.root().to_owned()));
        Ok(Desk {
            shelf,
            first,
            house,
            looks,
            recent,
            bell: Bell::new(),
            photos: Arc::new(Semaphore::new(1)),
            readings: card::Readings::default(),
            secret,
            port,
        })
    }

    /// The link that opens the page. Whoever has it can work at this desk.
    pub fn link(&self) -> String {
        format!("http://127.0.0.1:{}/open?key={}", self.port, self.secret)
    }

    /// The dial file of a name.
    fn file(&self, name: &str) -> Result<DialFile, Sorry> {
        Ok(DialFile::at(&self.path(name)?))
    }

    fn path(&self, name: &str) -> Result<PathBuf, Sorry> {
        self.shelf.file(name).map_err(Sorry::from)
    }

    /// In which units a dial's maker reads.
    fn units(&self, name: &str) -> measure::Units {
        let look = self.look(name).ok();
        look.and_then(|look| Some(look.outcome.as_ref().ok()?.laid.dial.show)).unwrap_or_default()
    }

    /// What a dial file looks like now.
    fn look(&self, name: &str) -> Result<Arc<Look>, Sorry> {
        let file = self.file(name)?;
        let (text, _) = file.read()?;
        Ok(self.looks.at(file.path(), &text))
    }
}

/// The routes of a desk, behind its guard.
pub fn router(desk: Arc<Desk>) -> Router {
    Router::new()
        .route("/open", get(guard::open))
        .route("/", get(page::index))
        .route("/page/{*name}", get(page::file))
        .route("/desk", get(shelf::desk))
        .route("/parameters", get(shelf::parameters))
        .route("/new", post(shelf::new))
        .route("/duplicate", post(shelf::duplicate))
        .route("/picture", get(shelf::picture))
        .route("/look", get(dials::look))
        .route("/state", get(dials::state))
        .route("/try", post(dials::attempt))
        .route("/edit", post(dials::edit))
        .route("/text", post(dials::text))
        .route("/undo", post(dials::undo))
        .route("/redo", post(dials::redo))
        .route("/settle", post(dials::settle))
        .route("/mends", get(dials::mends))
        .route("/measure", get(dials::measure))
        .route("/magnets", get(magnets::magnets))
        .route("/fits", get(family::fits))
        .route("/looks", get(looks::looks))
        .route("/board", get(looks::sheet))
        .route("/stocks", get(looks::stocks))
        .route("/swatch", get(looks::swatch))
        .route("/pairing", get(looks::pairing))
        .route("/dressed", get(looks::dressed))
        .route("/seat", get(looks::seat))
        .route("/contrast", get(looks::contrast))
        .route("/votes", get(votes::votes).post(votes::vote))
        .route("/votes/back", post(votes::back))
        .route("/card/page", get(card::page))
        .route("/card/sample", get(card::sample))
        .route("/card/read", post(card::read).layer(DefaultBodyLimit::max(card::LARGEST_PHOTO)))
        .route("/card/store", post(card::store))
        .route("/card/unstore", post(card::unstore))
        .route("/sheets", get(job::sheets))
        .route("/make", post(job::make))
        .route("/made", get(job::made))
        .route("/papers", get(paper::papers))
        .route("/paper", get(paper::paper))
        .route("/turning", get(paper::turning))
        .route("/choice", post(paper::choice))
        .route("/workshop", get(workshop::workshop))
        .route("/workshop/try", post(workshop::attempt))
        .route("/workshop/edit", post(workshop::edit))
        .route("/workshop/text", post(workshop::text))
        .route("/workshop/undo", post(workshop::undo))
        .route("/workshop/redo", post(workshop::redo))
        .route("/workshop/settle", post(workshop::settle))
        .route("/workshop/new", post(workshop::new))
        .route("/events", get(events::events))
        .layer(DefaultBodyLimit::max(LARGEST_BODY))
        .layer(middleware::from_fn_with_state(desk.clone(), guard::guard))
        .with_state(desk)
}

/// Serves a desk until the program is stopped.
///
/// # Errors
/// What the system said.
pub async fn serve(desk: Arc<Desk>, listener: TcpListener) -> std::io::Result<()> {
    axum::serve(listener, router(desk)).await
}

/// Opens a desk on a place, calls `opened` with its link, and serves it until the program is interrupted.
///
/// # Errors
/// A place that is not there, or no free port.
pub fn run(place: &Path, house: House, opened: impl FnOnce(&str)) -> Result<(), NoDesk> {
    let failed = |error: std::io::Error| NoDesk(format!("the desk cannot be served: {error}"));
    let runtime = tokio::runtime::Builder::new_multi_thread().worker_threads(2).enable_all().build().map_err(failed)?;
    runtime.block_on(async {
        let listener = TcpListener::bind(("127.0.0.1", 0)).await.map_err(failed)?;
        let port = listener.local_addr().map_err(failed)?.port();
        let desk = Arc::new(Desk::on(place, house, Recent::own(), port)?);
        opened(&desk.link());
        tokio::select! {
            served = serve(desk, listener) => served.map_err(failed),
            _ = tokio::signal::ctrl_c() => Ok(()),
        }
    })
}

/// Opens a link in the maker's browser; `false` if there is none that can be opened.
pub fn open_browser(link: &str) -> bool {
    webbrowser::open(link).is_ok()
}
