//! What the beam does to stock: materials and what must never be cut, stocks as build-ups of
//! layers with their thickness and tolerance, kerf, and the machine.
//!
//! Knows no dial. Lengths are in mm.

mod machine;
mod material;
mod stock;
mod tolerance;

pub use machine::{Machine, StepColours};
pub use material::{Cutting, MATERIALS, Material};
pub use stock::{Kerf, Layer, Stock};
pub use tolerance::Panel;

/// What a workshop has: one machine and its stocks.
#[derive(Clone, Debug, PartialEq)]
pub struct Workshop {
    /// The machine that cuts.
    pub machine: Machine,
    /// The stocks on the shelf, by name.
    pub stocks: Vec<Stock>,
}
