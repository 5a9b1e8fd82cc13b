//! The heart: from the dial file to the assembled dial, its findings, and the job that makes it.
//! Pure: no files, no clock, no network.

pub mod design;
mod spans;

pub use spans::{Label, Mistake, Spans};
