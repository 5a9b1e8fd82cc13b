//! The maker's files. The dial file on disk is the single source: the desk reads it, changes it at one place, and
//! never holds a version of its own.
//!
//! Beside each dial file lies a hidden folder `.dialwright` with the texts that the file has had and the list of
//! steps between them. It lies there, and not in some folder of the system, so that two desks on one folder share it
//! and undo goes with the folder when it is moved or copied.

mod dial_file;
mod disk;
mod edit;
mod history;
mod path;
mod recent;
mod shelf;
mod votes;

pub use dial_file::{DialFile, Kept, Refused, State};
pub use disk::Version;
pub(crate) use edit::apply_to;
pub use edit::{Change, Unfit, apply};
pub(crate) use path::{count_at, value_at};
pub use path::{param, written};
pub use recent::Recent;
pub use shelf::{NotHere, Shelf};
pub use votes::{NoVote, VotesFile};
