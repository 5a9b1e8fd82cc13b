//! What people picked.

/// One vote on pairings of stocks.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Vote {
    /// Names of pairings, best first: two laid side by side, or a ranking.
    pub best_first: Vec<String>,
    /// How many people said so.
    pub times: u32,
}
