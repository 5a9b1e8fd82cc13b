//! What the magnets mean for a dial: whether each wheel turns easily and keeps its number, which pairs would do, which way round
//! each magnet goes, and what a loose one can do. The physics is the room `magnet`'s; here it meets wood, fingers and windows.
//!
//! Forces in N, lengths in mm, angles in radians, masses in g.

mod build;
mod chooser;
mod clicks;
mod contact;
mod held;
mod map;
mod neighbours;
mod poles;
mod safety;
mod search;

pub use build::Build;
pub use chooser::{Candidate, Choice, candidates, choose};
pub use clicks::{Clicking, clicking};
pub use contact::{Contact, Touch};
pub use held::{Held, Likely, Range, Verdict, hardest, hold, hold_all};
pub use map::{Bands, Map, map, map_of_hardest};
pub use neighbours::{Neighbour, neighbours, spares_apart};
pub use poles::{PocketPole, Where, count, marked_face, plan};
pub use safety::{Loose, age_label, loose};
