//! process
