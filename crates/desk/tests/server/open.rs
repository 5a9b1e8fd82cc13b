//! A desk without a socket, and what is asked of it.

use axum::Router;
use axum::body::Body;
use axum::http::{HeaderMap, Request, StatusCode, header};
use desk::store::Recent;
use desk::{Desk, House, router};
use http_body_util::BodyExt;
use serde_json::{Value, json};
use std::fs;
use std::sync::Arc;
use tower::ServiceExt;

pub const HARBOUR: &str = include_str!("../../../../examples/harbour/dial.toml");
const PORT: u16 = 4567;
pub const HOST: &str = "127.0.0.1:4567";
pub const ORIGIN: &str = "http://127.0.0.1:4567";

/// As little of the command line as the server needs.
pub const HOUSE: House = House {
    workshop_file: |_| None,
    sizes: |dial, _| dial.name.clone(),
    words: |_, _, _, _, _| String::new(),
    job_files: |make| press::job_files(make).map_err(|error| error.to_string()),
    documents: || vec![("dial", "The dial")],
    paper: |_, _, _, which| Ok(format!("%PDF of {}", which.unwrap_or("all")).into_bytes()),
    votes_place: |dial| dial.with_file_name("votes.toml"),
    contrast: |_, _| Err("not here".into()),
    print: |_, _| card::Print::default(),
    card_figures: |reading| json!({ "best_step": reading.best + 1 }),
    measured: |_, _| Err(String::new()),
    brief: |text| text.split_once(' ').map(|(a, b)| (a.into(), b.into())).ok_or("say a name and a range".into()),
};

/// A desk on a folder with the harbour example, and its cookie.
pub struct Open {
    pub folder: tempfile::TempDir,
    pub app: Router,
    pub cookie: String,
}

/// What came back, its body as text.
pub struct Answer {
    pub status: StatusCode,
    pub headers: HeaderMap,
    pub text: String,
}

impl Answer {
    pub fn json(&self) -> Value {
        serde_json::from_str(&self.text).unwrap_or_else(|error| panic!("{error}: {}", self.text))
    }
}

/// Asks as the request says, without a cookie of its own.
pub async fn send(app: &Router, request: Request<Body>) -> Answer {
    let answer = app.clone().oneshot(request).await.expect("answers");
    let (status, headers) = (answer.status(), answer.headers().clone());
    let bytes = answer.into_body().collect().await.expect("a body").to_bytes();
    Answer { status, headers, text: String::from_utf8_lossy(&bytes).into_owned() }
}

impl Open {
    pub async fn new() -> Open {
        let folder = tempfile::tempdir().expect("a folder");
        fs::create_dir(folder.path().join("harbour")).expect("made");
        fs::write(folder.path().join("harbour/dial.toml"), HARBOUR).expect("written");
        Open::on(folder).await
    }

    pub async fn on(folder: tempfile::TempDir) -> Open {
        Open::with(folder, HOUSE).await
    }

    pub async fn with(folder: tempfile::TempDir, house: House) -> Open {
        let desk = Arc::new(Desk::on(folder.path(), house, Recent::none(), PORT).expect("opens"));
        let link = desk.link();
        let app = router(desk);
        let path = link.strip_prefix(ORIGIN).expect("the link begins with our own name");
        let answer =
            send(&app, Request::get(path).header(header::HOST, HOST).body(Body::empty()).expect("sound")).await;
        assert_eq!(answer.status, StatusCode::SEE_OTHER);
        let cookie = answer.headers[header::SET_COOKIE].to_str().expect("text").to_owned();
        assert!(cookie.contains("HttpOnly") && cookie.contains("SameSite=Strict"), "{cookie}");
        let cookie = cookie.split(';').next().expect("a pair").to_owned();
        Open { folder, app, cookie }
    }

    pub async fn get(&self, path: &str) -> Answer {
        let request = Request::get(path).header(header::HOST, HOST).header(header::COOKIE, &self.cookie);
        send(&self.app, request.body(Body::empty()).expect("sound")).await
    }

    pub async fn post(&self, path: &str, body: &Value) -> Answer {
        let request = Request::post(path)
            .header(header::HOST, HOST)
            .header(header::ORIGIN, ORIGIN)
            .header(header::COOKIE, &self.cookie)
            .header(header::CONTENT_TYPE, "application/json");
        send(&self.app, request.body(Body::from(body.to_string())).expect("sound")).await
    }

    pub fn file(&self) -> String {
        fs::read_to_string(self.folder.path().join("harbour/dial.toml")).expect("reads")
    }

    pub async fn version(&self) -> Value {
        self.get("/state?dial=harbour/dial.toml").await.json()["version"].clone()
    }
}
