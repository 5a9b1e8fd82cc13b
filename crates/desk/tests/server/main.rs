//! The server called without a socket: every defence, and that the page is told the truth. A file for each group of routes.

mod card;
mod dials;
mod events;
mod family;
mod guard;
mod looks;
mod open;
mod paper;
mod shelf;
mod workshop;
