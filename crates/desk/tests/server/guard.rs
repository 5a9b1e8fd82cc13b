//! Every defence: the key of the link, the host's name, other pages' origins, policy, paths, bodies.

use crate::open::{HARBOUR, HOST, Open, send};
use axum::body::Body;
use axum::http::{Request, StatusCode, header};
use serde_json::json;
use std::fs;

#[tokio::test]
async fn without_the_key_of_the_link_there_is_no_answer() {
    let desk = Open::new().await;
    for path in ["/", "/page/main.js", "/desk", "/look?dial=harbour/dial.toml", "/events?dial=harbour/dial.toml"] {
        let bare = Request::get(path).header(header::HOST, HOST);
        assert_eq!(
            send(&desk.app, bare.body(Body::empty()).expect("sound")).await.status,
            StatusCode::FORBIDDEN,
            "{path}"
        );
        // Another last digit than the right one: with the right key the stream of events would not end.
        let (all_but_last, last) = desk.cookie.split_at(desk.cookie.len() - 1);
        let wrong = format!("{all_but_last}{}", if last == "0" { "1" } else { "0" });
        let other = Request::get(path).header(header::HOST, HOST).header(header::COOKIE, wrong);
        let status = send(&desk.app, other.body(Body::empty()).expect("sound")).await.status;
        assert_eq!(status, StatusCode::FORBIDDEN, "{path}");
    }
    let wrong = Request::get("/open?key=guess").header(header::HOST, HOST).body(Body::empty()).expect("sound");
    assert_eq!(send(&desk.app, wrong).await.status, StatusCode::FORBIDDEN);
}

#[tokio::test]
async fn a_foreign_name_for_this_machine_is_refused() {
    let desk = Open::new().await;
    for host in ["evil.example", "evil.example:4567", "127.0.0.1", "127.0.0.1:80", ""] {
        let request = Request::get("/desk").header(header::HOST, host).header(header::COOKIE, &desk.cookie);
        assert_eq!(
            send(&desk.app, request.body(Body::empty()).expect("sound")).await.status,
            StatusCode::FORBIDDEN,
            "{host}"
        );
    }
    let none = Request::get("/desk").header(header::COOKIE, &desk.cookie).body(Body::empty()).expect("sound");
    assert_eq!(send(&desk.app, none).await.status, StatusCode::FORBIDDEN);
}

#[tokio::test]
async fn other_pages_change_nothing_and_read_nothing() {
    let desk = Open::new().await;
    let body = json!({ "dial": "harbour/dial.toml", "on": desk.version().await, "changes": [] }).to_string();
    for origin in
        [Some("http://evil.example"), Some("null"), Some("http://127.0.0.1:80"), Some("http://localhost:4567"), None]
    {
        let mut request = Request::post("/edit")
            .header(header::HOST, HOST)
            .header(header::COOKIE, &desk.cookie)
            .header(header::CONTENT_TYPE, "application/json");
        if let Some(origin) = origin {
            request = request.header(header::ORIGIN, origin);
        }
        let answer = send(&desk.app, request.body(Body::from(body.clone())).expect("sound")).await;
        assert_eq!(answer.status, StatusCode::FORBIDDEN, "{origin:?}");
    }
    let read = Request::get("/desk")
        .header(header::HOST, HOST)
        .header(header::COOKIE, &desk.cookie)
        .header(header::ORIGIN, "http://evil.example");
    let answer = send(&desk.app, read.body(Body::empty()).expect("sound")).await;
    assert_eq!(answer.status, StatusCode::FORBIDDEN);
    assert!(answer.headers.keys().all(|name| !name.as_str().starts_with("access-control")), "no CORS");
}

#[tokio::test]
async fn the_page_may_run_and_show_our_own_files_alone() {
    let desk = Open::new().await;
    for path in ["/", "/desk", "/look?dial=nothing.toml"] {
        let answer = desk.get(path).await;
        let policy = answer.headers[header::CONTENT_SECURITY_POLICY].to_str().expect("text").to_owned();
        assert!(policy.contains("default-src 'none'") && policy.contains("script-src 'self';"), "{policy}");
        assert!(!policy.contains("unsafe"), "{policy}");
        assert_eq!(answer.headers[header::X_CONTENT_TYPE_OPTIONS], "nosniff");
    }
    let page = desk.get("/").await.text;
    assert!(!page.contains("style=") && !page.contains(" on"), "nothing in line: {page}");
}

#[tokio::test]
async fn no_path_leads_out_of_the_folder() {
    let desk = Open::new().await;
    let outside = tempfile::tempdir().expect("a folder");
    fs::write(outside.path().join("dial.toml"), HARBOUR).expect("written");
    #[cfg(unix)]
    std::os::unix::fs::symlink(outside.path().join("dial.toml"), desk.folder.path().join("link.toml")).expect("linked");
    for name in [
        "../dial.toml",
        "/etc/hostname",
        "%2Fetc%2Fhostname",
        "harbour/../../x.toml",
        "link.toml",
        ".dialwright/x.toml",
    ] {
        let answer = desk.get(&format!("/look?dial={name}")).await;
        assert!(answer.status.is_client_error(), "{name}: {}", answer.status);
    }
    for name in ["../page.rs", "..%2f..%2fCargo.toml", "%2e%2e/Cargo.toml", "index.html%00.js"] {
        let answer = desk.get(&format!("/page/{name}")).await;
        assert!(answer.status.is_client_error(), "{name}: {}", answer.status);
    }
    let answer = desk.get("/made?dial=harbour/dial.toml&path=../dial.toml").await;
    assert!(answer.status.is_client_error(), "{}", answer.text);
}

#[tokio::test]
async fn bodies_are_bounded() {
    let desk = Open::new().await;
    let body = json!({ "dial": "harbour/dial.toml", "on": desk.version().await, "text": "#".repeat(2 << 20) });
    assert_eq!(desk.post("/text", &body).await.status, StatusCode::PAYLOAD_TOO_LARGE);
    assert_eq!(desk.file(), HARBOUR);
}
