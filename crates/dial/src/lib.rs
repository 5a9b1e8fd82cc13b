//! dial
