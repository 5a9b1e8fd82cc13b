//! The desk: a page in the maker's browser where the dial is seen, turned by hand and mended, and its server.

pub mod store;
