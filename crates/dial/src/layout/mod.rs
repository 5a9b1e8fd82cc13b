//! Layout.
