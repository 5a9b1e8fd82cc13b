//! Who may ask: this machine, by its own name, from our own page, with the key of the opening link.

use super::Desk;
use axum::body::Body;
use axum::extract::{Query, Request, State};
use axum::http::header::{self, HeaderMap, HeaderName, HeaderValue};
use axum::http::{Method, StatusCode};
use axum::middleware::Next;
use axum::response::{IntoResponse, Response};
use serde::Deserialize;
use std::sync::Arc;

/// Nothing but our own files, no script or style in line, no frame round the page, nothing sent elsewhere.
const POLICY: &str = "default-src 'none'; script-src 'self'; style-src 'self'; img-src 'self'; connect-src 'self'; font-src 'self'; base-uri 'none'; form-action 'none'; frame-ancestors 'none'";

const HEADERS: [(&str, &str); 6] = [
    ("content-security-policy", POLICY),
    ("x-content-type-options", "nosniff"),
    ("referrer-policy", "no-referrer"),
    ("cache-control", "no-store"),
    ("cross-origin-resource-policy", "same-origin"),
    ("cross-origin-opener-policy", "same-origin"),
];

/// Lets a request through, or refuses it.
pub(super) async fn guard(State(desk): State<Arc<Desk>>, request: Request, next: Next) -> Response {
    let refused = refusal(&desk, &request);
    let mut response = match refused {
        Some(words) => (StatusCode::FORBIDDEN, words).into_response(),
        None => next.run(request).await,
    };
    for (name, value) in HEADERS {
        // A paper for the client brings a stricter or another policy of its own.
        response.headers_mut().entry(HeaderName::from_static(name)).or_insert(HeaderValue::from_static(value));
    }
    response
}

fn refusal(desk: &Desk, request: &Request) -> Option<&'static str> {
    let headers = request.headers();
    let names = [format!("127.0.0.1:{}", desk.port), format!("localhost:{}", desk.port)];
    let host = headers.get(header::HOST).and_then(|host| host.to_str().ok()).unwrap_or_default();
    // A foreign name that leads to this machine is not ours (DNS rebinding).
    if !names.iter().any(|name| name == host) {
        return Some("this desk answers on this machine only");
    }
    let own = format!("http://{host}");
    let origin = headers.get(header::ORIGIN).map(|origin| origin.to_str().unwrap_or("?"));
    // What changes something must say where it comes from; browsers do.
    let says_so = request.method() == Method::GET || origin.is_some();
    if !says_so || origin.is_some_and(|origin| origin != own) {
        return Some("this desk answers its own page only");
    }
    if request.uri().path() != "/open" && !has_key(desk, headers) {
        return Some("open the desk by the link that `dialwright desk` printed");
    }
    None
}

/// The cookie's name tells desks on several ports apart: browsers share cookies between ports.
fn cookie_name(desk: &Desk) -> String {
    format!("dialwright-{}", desk.port)
}

fn has_key(desk: &Desk, headers: &HeaderMap) -> bool {
    let name = cookie_name(desk);
    headers
        .get_all(header::COOKIE)
        .iter()
        .filter_map(|value| value.to_str().ok())
        .flat_map(|line| line.split(';'))
        .filter_map(|pair| pair.trim().split_once('='))
        .any(|(key, value)| key == name && same(value, &desk.secret))
}

/// Compares without telling by its time where two texts differ.
fn same(a: &str, b: &str) -> bool {
    a.len() == b.len() && a.bytes().zip(b.bytes()).fold(0, |all, (x, y)| all | (x ^ y)) == 0
}

/// The opening link's secret.
#[derive(Deserialize)]
pub(super) struct Key {
    #[serde(default)]
    key: String,
}

/// Exchanges the secret of the link for a cookie that no script can read and no other site can send.
pub(super) async fn open(State(desk): State<Arc<Desk>>, Query(Key { key }): Query<Key>) -> Response {
    if !same(&key, &desk.secret) {
        return (
            StatusCode::FORBIDDEN,
            "this link is not this desk's: copy the whole line that `dialwright desk` printed",
        )
            .into_response();
    }
    let cookie = format!("{}={}; HttpOnly; SameSite=Strict; Path=/", cookie_name(&desk), desk.secret);
    Response::builder()
        .status(StatusCode::SEE_OTHER)
        .header(header::SET_COOKIE, cookie)
        .header(header::LOCATION, "/")
        .body(Body::empty())
        .unwrap_or_else(|_| StatusCode::INTERNAL_SERVER_ERROR.into_response())
}
