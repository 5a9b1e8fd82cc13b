//! The desk: a page in the maker's browser where the dial is seen, turned by hand and mended, and its server.
//!
//! - [`store`]: the dial file on disk, the single source, with undo beside it
//! - [`Looks`]: from a text to what the page shows, by the same calls as the command line's
//! - [`router`], [`run`]: the server, on this machine alone
//! - `page/`: the page itself, served as written

mod house;
mod kin;
mod look;
mod mend;
mod pair;
mod pieces;
mod server;
pub mod store;

pub use house::{House, JobFiles, Paper, Taken};
pub use kin::{Kin, Trouble};
pub use look::{Look, Looks, Seen};
pub use mend::{By, Mend, Then, mends};
pub use pieces::Piece;
pub use server::{Desk, NoDesk, open_browser, router, run, serve};
