//! The paper as another library reads it.

mod accessible;
mod book;
mod figures;
mod read;
mod true_size;
