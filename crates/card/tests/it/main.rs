//! The reader against photographs with known truth, and against what is no photograph of a card.

mod accuracy;
mod bad;
mod geometry;
mod plan;
#[path = "../scene/mod.rs"]
#[allow(dead_code, reason = "the example draws more of the scenes than the tests do")]
mod scene;
#[allow(dead_code, reason = "the example prints more of the trials than the tests do")]
mod trial;
