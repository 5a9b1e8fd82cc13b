//! Papers, the client's page and the code read back.

use crate::open::Open;
use axum::http::{StatusCode, header};
use serde_json::json;
use std::fs;

#[tokio::test]
async fn papers_and_the_clients_page_come_alone() {
    let desk = Open::new().await;
    assert_eq!(desk.get("/papers").await.json()[0]["word"], "dial");
    let whole = desk.get("/paper?dial=harbour/dial.toml").await;
    assert_eq!(
        (whole.text.as_str(), &whole.headers[header::CONTENT_TYPE]),
        ("%PDF of all", &"application/pdf".parse().expect("sound"))
    );
    assert_eq!(desk.get("/paper?dial=harbour/dial.toml&document=dial").await.text, "%PDF of dial");
    let page = desk.get("/turning?dial=harbour/dial.toml").await;
    let policy = page.headers[header::CONTENT_SECURITY_POLICY].to_str().expect("text");
    // Its script runs, but as nobody: without the desk's origin, and with nowhere to send to.
    assert!(policy.contains("sandbox allow-scripts") && !policy.contains("allow-same-origin"), "{policy}");
    assert!(policy.contains("default-src 'none'") && !policy.contains("connect-src"), "{policy}");
    assert!(page.text.contains("<script"));
}

#[tokio::test]
async fn a_choice_code_is_read_back() {
    let desk = Open::new().await;
    let (cover, wheel) = ("bamboo 3 mm", "walnut plywood 3 mm");
    let ask = |code: String| json!({ "dial": "harbour/dial.toml", "code": code });
    let told = desk.post("/choice", &ask(press::code(cover, wheel))).await.json();
    assert_eq!((&told["cover"], &told["wheel"]), (&json!(cover), &json!(wheel)));
    let version = desk.get("/state?dial=harbour/dial.toml").await.json()["version"].clone();
    let edit = json!({ "dial": "harbour/dial.toml", "on": version, "changes": told["changes"] });
    let done = desk.post("/edit", &edit).await;
    assert_eq!(done.status, StatusCode::OK, "{}", done.text);
    let text = fs::read_to_string(desk.folder.path().join("harbour/dial.toml")).expect("reads");
    let read = dial::design::read(&text, &workshop::starter()).expect("reads");
    assert_eq!((read.cover.stock.name.as_str(), read.wheel_stock.name.as_str()), (cover, wheel), "{text}");
    assert_eq!(desk.post("/choice", &ask("7KQ-2M4".into())).await.status, StatusCode::UNPROCESSABLE_ENTITY);
}
