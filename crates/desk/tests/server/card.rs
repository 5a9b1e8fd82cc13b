//! Photos of the card.

use crate::open::{HOST, ORIGIN, Open, send};
use axum::body::Body;
use axum::http::{Request, StatusCode, header};
use serde_json::json;

/// A photo may be as large as a phone makes it; nothing else may, and nothing larger. What is no photo is an answer, not an error.
#[tokio::test]
async fn photos_have_a_bound_of_their_own() {
    let desk = Open::new().await;
    let photo = async |size: usize| {
        let request = Request::post("/card/read?paper=a4&steps=6")
            .header(header::HOST, HOST)
            .header(header::ORIGIN, ORIGIN)
            .header(header::COOKIE, &desk.cookie)
            .header(header::CONTENT_TYPE, "application/octet-stream");
        send(&desk.app, request.body(Body::from(vec![7; size])).expect("sound")).await
    };
    let read = photo(5 << 20).await;
    assert_eq!(read.status, StatusCode::OK, "{}", read.text);
    assert!(read.json()["refused"].as_str().expect("words").contains("JPEG or PNG"));
    assert_eq!(photo((40 << 20) + 1).await.status, StatusCode::PAYLOAD_TOO_LARGE);
    let long = json!({ "dial": "harbour/dial.toml", "best_first": ["a", "b".repeat(2 << 20)] });
    assert_eq!(desk.post("/votes", &long).await.status, StatusCode::PAYLOAD_TOO_LARGE);
    let never = json!({ "dial": "harbour/dial.toml", "reading": 3, "stock": "maple 3 mm", "depth": "0.3 mm", "photo": "a.jpg" });
    let kept = desk.post("/card/store", &never).await;
    assert!(
        kept.status == StatusCode::UNPROCESSABLE_ENTITY && kept.text.contains("does not remember"),
        "{}",
        kept.text
    );
    for steps in ["4", "9"] {
        let card = desk.get(&format!("/card/page?steps={steps}")).await;
        assert_eq!(card.status, StatusCode::UNPROCESSABLE_ENTITY, "{}", card.text);
    }
}
