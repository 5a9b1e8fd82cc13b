//! The page's own files, served as they were written.

use axum::extract::Path;
use axum::http::{StatusCode, header};
use axum::response::{IntoResponse, Response};
use rust_embed::RustEmbed;

#[derive(RustEmbed)]
#[folder = "page"]
struct Files;

/// The page.
pub(super) async fn index() -> Response {
    give("index.html")
}

/// A file of the page.
pub(super) async fn file(Path(name): Path<String>) -> Response {
    give(&name)
}

fn give(name: &str) -> Response {
    let kind = match name.rsplit('.').next() {
        Some("html") => "text/html; charset=utf-8",
        Some("js") => "text/javascript; charset=utf-8",
        Some("css") => "text/css; charset=utf-8",
        Some("svg") => "image/svg+xml",
        _ => return StatusCode::NOT_FOUND.into_response(),
    };
    match Files::get(name) {
        Some(file) => ([(header::CONTENT_TYPE, kind)], file.data.into_owned()).into_response(),
        None => StatusCode::NOT_FOUND.into_response(),
    }
}
