//! The heart: from the dial file to the assembled dial, its findings, and the job that makes it.
//! Pure: no files, no clock, no network.
//!
//! The way through: [`design::read`] a file, [`layout::assemble`] the dial, [`turning::turn`] every
//! wheel through its window, [`magnets::hold_all`] wheels in their seats, [`looks::look_at`] what can be read, [`findings::check`] it all ([`look`] does these), and [`job::plan`] the sheets.

pub mod assembled;
pub mod design;
pub mod family;
pub mod findings;
pub mod job;
pub mod layout;
mod looked;
pub mod looks;
pub mod magnets;
mod spans;
pub mod turning;

pub use assembled::Dial;
pub use looked::{Looked, look, look_from};
pub use spans::{Label, Mistake, Spans};
