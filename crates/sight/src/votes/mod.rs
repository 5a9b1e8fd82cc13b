//! What people picked, turned into strengths with an error each.
//!
//! Every vote is a choice of one thing out of a few laid side by side: out of two (one against one), or step by step
//! down a ranking. The model is that of Bradley and Terry for two, and of Plackett and Luce for more: each thing has
//! a strength w, and is picked out of a set with probability w over the sum of the set's strengths.
//!
//! - E. Zermelo, Die Berechnung der Turnier-Ergebnisse als ein Maximumproblem der Wahrscheinlichkeitsrechnung,
//!   Mathematische Zeitschrift 29 (1929) 436-460; R. A. Bradley, M. E. Terry, Rank analysis of incomplete block designs
//!   I, Biometrika 39 (1952) 324-345.
//! - L. R. Ford, Solution of a ranking problem from binary comparisons, American Mathematical Monthly 64 (1957) 28-33:
//!   when the best strengths exist.
//! - D. R. Hunter, MM algorithms for generalized Bradley-Terry models, Annals of Statistics 32 (2004) 384-406:
//!   rankings, section 5.
//!
//! The errors hold for votes that do not hang together. Ten votes of one person are worth less than one of each of ten.

mod ballot;
mod favourite;
mod fit;
mod graph;
mod likelihood;
mod strengths;

pub use ballot::{VoteError, Votes};
pub use favourite::{Favourite, Lead};
pub use fit::FitError;
pub use strengths::{Difference, Strengths};
