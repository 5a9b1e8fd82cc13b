//! The desk as a maker uses it, in a real browser.

mod browser;
mod desk;
mod look;
