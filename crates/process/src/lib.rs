//! What the beam does to stock: materials and what must never be cut, stocks as build-ups of
//! layers with their thickness, tolerance, friction and looks, kerf, the machine, magnets on the shelf, and what a hand finds easy.
//!
//! Knows no dial. Lengths are in mm.

mod feel;
mod look;
mod machine;
mod material;
mod shelf;
mod stock;
mod surfaces;
mod tolerance;
mod vote;

pub use feel::Feel;
pub use look::{Finish, Grain, Look, Texture};
pub use machine::{Machine, StepColours};
pub use material::{Cutting, MATERIALS, Material, ON_NICKEL};
pub use shelf::ShelfMagnet;
pub use stock::{Kerf, Layer, Side, Stock};
pub use surfaces::{Price, Shown, Surfaces};
pub use tolerance::Panel;
pub use vote::Vote;

/// What a workshop has: one machine, its stocks and magnets, and what its hands find easy.
#[derive(Clone, Debug, PartialEq)]
pub struct Workshop {
    /// The machine that cuts.
    pub machine: Machine,
    /// The stocks on the shelf, by name.
    pub stocks: Vec<Stock>,
    /// The magnets on the shelf, by name.
    pub magnets: Vec<ShelfMagnet>,
    /// What is easy to turn and what keeps.
    pub feel: Feel,
    /// Which pairings of stocks people picked.
    pub votes: Vec<Vote>,
}
