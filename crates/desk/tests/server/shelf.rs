//! Dials begun, copied and made.

use crate::open::Open;
use axum::http::{StatusCode, header};
use serde_json::{Value, json};
use std::path::Path;

#[tokio::test]
async fn a_dial_is_begun_copied_and_made() {
    let desk = Open::on(tempfile::tempdir().expect("a folder")).await;
    let brief = json!({ "name": "Mill Race", "counters": ["grain 0..12"], "stock": "birch plywood 3 mm" });
    assert_eq!(desk.post("/new", &brief).await.json()["dial"], "mill-race/dial.toml");
    assert_eq!(desk.post("/new", &brief).await.status, StatusCode::UNPROCESSABLE_ENTITY);
    let copy = json!({ "dial": "mill-race/dial.toml", "name": "Mill Pond" });
    assert_eq!(desk.post("/duplicate", &copy).await.json()["dial"], "mill-pond/dial.toml");
    let listed = desk.get("/desk").await.json();
    assert_eq!(listed["dials"], json!(["mill-pond/dial.toml", "mill-race/dial.toml"]));
    let lines = desk.post("/make", &json!({ "dial": "mill-pond/dial.toml" })).await.text;
    let last: Value = serde_json::from_str(lines.lines().last().expect("lines")).expect("JSON");
    assert_eq!((&last["made"], &last["folder"]), (&json!("new"), &json!("mill-pond-job")), "{lines}");
    assert!(Path::new(last["path"].as_str().expect("path")).join("READ-ME-FIRST.txt").is_file());
    let picture = desk.get("/made?dial=mill-pond/dial.toml&path=pictures/dial.png").await;
    assert_eq!(picture.headers[header::CONTENT_TYPE], "image/png");
    let sheets = desk.get("/sheets?dial=mill-pond/dial.toml").await.json();
    assert_eq!(sheets["setups"], 2);
    assert!(sheets["sheets"][0]["setups"][0]["svg"].as_str().expect("SVG").contains("step-1-"));
}
