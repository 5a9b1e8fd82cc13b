//! The room against the world: published tables, arbitrary precision, another field library, and
//! the laws of physics.

mod anchors;
mod clicks;
mod door;
mod elliptic;
mod fields;
mod flux;
mod laws;
mod pairs;
mod peer;
mod rest;
mod table;
