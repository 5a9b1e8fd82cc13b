//! Pages hear of changes.

use crate::open::{HARBOUR, HOST, Open};
use axum::body::Body;
use axum::http::{Request, header};
use http_body_util::BodyExt;
use serde_json::json;
use std::fs;
use tower::ServiceExt;

/// The first event of a stream says what the file holds, the next that somebody changed it.
#[tokio::test(flavor = "multi_thread")]
async fn pages_hear_of_changes_whoever_makes_them() {
    let desk = Open::new().await;
    let request =
        Request::get("/events?dial=harbour/dial.toml").header(header::HOST, HOST).header(header::COOKIE, &desk.cookie);
    let answer = desk.app.clone().oneshot(request.body(Body::empty()).expect("sound")).await.expect("answers");
    assert_eq!(answer.headers()[header::CONTENT_TYPE], "text/event-stream");
    let mut body = answer.into_body();
    let mut next = async || {
        let frame = tokio::time::timeout(std::time::Duration::from_secs(5), body.frame()).await.expect("in time");
        String::from_utf8_lossy(&frame.expect("an event").expect("sound").into_data().expect("data")).into_owned()
    };
    let look = desk.get("/look?dial=harbour/dial.toml").await.json();
    assert!(next().await.contains(look["look"].as_str().expect("name")));
    let edit = json!({
        "dial": "harbour/dial.toml", "on": desk.version().await,
        "changes": [{ "do": "set", "path": "cover.corner", "value": "4 mm" }],
    });
    let done = desk.post("/edit", &edit).await.json();
    assert!(next().await.contains(done["look"].as_str().expect("name")), "by another page");
    fs::write(desk.folder.path().join("harbour/dial.toml"), HARBOUR.replace("0..24", "0..30")).expect("written");
    let event = next().await;
    assert!(!event.contains(done["look"].as_str().expect("name")), "from outside: {event}");
    fs::remove_file(desk.folder.path().join("harbour/dial.toml")).expect("removed");
    assert!(next().await.contains("gone"));
}
