//! magnet
