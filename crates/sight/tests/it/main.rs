//! The room against the world: published tables and examples, other libraries, and laws that must hold.

mod colours;
mod contrast;
mod homography;
mod table;
mod viewing;
mod votes;
mod window;
