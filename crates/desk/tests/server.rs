//! The server called without a socket: every defence, and that the page is told the truth.

use axum::Router;
use axum::body::Body;
use axum::http::{Request, StatusCode, header};
use desk::store::Recent;
use desk::{Desk, House, router};
use http_body_util::BodyExt;
use serde_json::{Value, json};
use std::fs;
use std::path::Path;
use std::sync::Arc;
use tower::ServiceExt;

const HARBOUR: &str = include_str!("../../../examples/harbour/dial.toml");
const PORT: u16 = 4567;
const HOST: &str = "127.0.0.1:4567";
const ORIGIN: &str = "http://127.0.0.1:4567";

const HOUSE: House = House {
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
struct Open {
    folder: tempfile::TempDir,
    app: Router,
    cookie: String,
}

struct Answer {
    status: StatusCode,
    headers: axum::http::HeaderMap,
    text: String,
}

impl Answer {
    fn json(&self) -> Value {
        serde_json::from_str(&self.text).unwrap_or_else(|error| panic!("{error}: {}", self.text))
    }
}

async fn send(app: &Router, request: Request<Body>) -> Answer {
    let answer = app.clone().oneshot(request).await.expect("answers");
    let (status, headers) = (answer.status(), answer.headers().clone());
    let bytes = answer.into_body().collect().await.expect("a body").to_bytes();
    Answer { status, headers, text: String::from_utf8_lossy(&bytes).into_owned() }
}

impl Open {
    async fn new() -> Open {
        let folder = tempfile::tempdir().expect("a folder");
        fs::create_dir(folder.path().join("harbour")).expect("made");
        fs::write(folder.path().join("harbour/dial.toml"), HARBOUR).expect("written");
        Open::on(folder).await
    }

    async fn on(folder: tempfile::TempDir) -> Open {
        Open::with(folder, HOUSE).await
    }

    async fn with(folder: tempfile::TempDir, house: House) -> Open {
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

    async fn get(&self, path: &str) -> Answer {
        let request = Request::get(path).header(header::HOST, HOST).header(header::COOKIE, &self.cookie);
        send(&self.app, request.body(Body::empty()).expect("sound")).await
    }

    async fn post(&self, path: &str, body: &Value) -> Answer {
        let request = Request::post(path)
            .header(header::HOST, HOST)
            .header(header::ORIGIN, ORIGIN)
            .header(header::COOKIE, &self.cookie)
            .header(header::CONTENT_TYPE, "application/json");
        send(&self.app, request.body(Body::from(body.to_string())).expect("sound")).await
    }

    fn file(&self) -> String {
        fs::read_to_string(self.folder.path().join("harbour/dial.toml")).expect("reads")
    }

    async fn version(&self) -> Value {
        self.get("/state?dial=harbour/dial.toml").await.json()["version"].clone()
    }
}

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

/// What is asked of looks and seats and cannot be is told in words.
#[tokio::test]
async fn looks_that_cannot_be_are_told() {
    let desk = Open::new().await;
    for (path, words) in [
        ("/seat?dial=harbour/dial.toml&wheel=9", "no such wheel"),
        ("/seat?dial=harbour/dial.toml&wheel=0&away=far", "how far away"),
        ("/seat?dial=harbour/dial.toml&wheel=0&eye=0.1+mm", "the eye's height"),
        ("/seat?dial=harbour/dial.toml&wheel=0&side=left", "where round the table"),
        ("/swatch?dial=harbour/dial.toml&stock=moon+rock", "no such stock"),
        ("/pairing?dial=harbour/dial.toml&cover=moon+rock&wheel=maple+3+mm", "no such pairing"),
    ] {
        let answer = desk.get(path).await;
        assert_eq!(answer.status, StatusCode::UNPROCESSABLE_ENTITY, "{path}: {}", answer.text);
        assert!(answer.text.contains(words), "{path}: {}", answer.text);
    }
}

/// A stock that the dial file describes itself is drawn and may be chosen like those on the shelf.
#[tokio::test]
async fn stocks_of_the_file_itself_are_shown() {
    let desk = Open::new().await;
    let own = "\n[stocks.\"my board\"]\nlayers = [{ material = \"maple\", thickness = \"2.8 mm\" }]\nkerf_x = \"0.1 mm\"\nkerf_y = \"0.1 mm\"\n";
    fs::write(desk.folder.path().join("harbour/dial.toml"), HARBOUR.to_owned() + own).expect("written");
    let all = desk.get("/stocks?dial=harbour/dial.toml&path=stock").await.json();
    let row =
        |name: &str| all.as_array().expect("a list").iter().find(|one| one["name"] == name).expect("there").clone();
    assert_eq!((&row("my board")["own"], &row("my board")["thickness"]), (&json!(true), &json!("2.8 mm")));
    assert_eq!((&row("maple 3 mm")["own"], &row("maple 3 mm")["does"]), (&json!(false), &json!(true)));
    let drawn = desk.get("/swatch?dial=harbour/dial.toml&stock=my+board").await;
    assert!(drawn.status == StatusCode::OK && drawn.text.starts_with("<svg"), "{}", drawn.text);
    let shape = "/stocks?dial=harbour/dial.toml&path=magnet.ring_stock";
    assert!(desk.get(shape).await.json()[0]["does"].is_null(), "rings are not looked at");
}

/// Votes go into the opened folder and nowhere else.
#[cfg(unix)]
#[tokio::test]
async fn votes_do_not_follow_links() {
    let desk = Open::new().await;
    let outside = tempfile::tempdir().expect("a folder");
    let target = outside.path().join("votes.toml");
    fs::write(&target, "# not yours\n").expect("written");
    std::os::unix::fs::symlink(&target, desk.folder.path().join("harbour/votes.toml")).expect("linked");
    let vote = json!({ "dial": "harbour/dial.toml", "best_first": ["a / b", "c / d"] });
    let answer = desk.post("/votes", &vote).await;
    assert_eq!(answer.status, StatusCode::FORBIDDEN, "{}", answer.text);
    assert_eq!(fs::read_to_string(&target).expect("there"), "# not yours\n");
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

#[tokio::test]
async fn a_change_is_on_disk_when_the_page_is_told_and_only_what_changed_is_sent() {
    let desk = Open::new().await;
    let first = desk.get("/look?dial=harbour/dial.toml").await.json();
    assert!(first["changed"]["marks/1"].is_array(), "all of it at first");
    let edit = json!({
        "dial": "harbour/dial.toml", "on": desk.version().await, "have": first["look"], "words": "corner",
        "changes": [{ "do": "set", "path": "cover.corner", "value": "4 mm" }],
    });
    // Tried, nothing is written.
    let tried = desk.post("/try", &edit).await.json();
    assert!(tried["changed"]["cover"].is_object(), "{tried}");
    assert_eq!(desk.file(), HARBOUR);
    let done = desk.post("/edit", &edit).await.json();
    assert!(desk.file().contains("corner = \"4 mm\""));
    assert_eq!(done["state"]["undo"], "corner");
    for same in ["wheel/0", "marks/0", "stops/0", "marks/1", "stocks"] {
        assert!(done["changed"].get(same).is_none(), "{same} was sent again");
        assert!(done["all"].as_array().expect("names").contains(&json!(same)));
    }
    let step = json!({ "dial": "harbour/dial.toml", "on": done["version"], "have": done["look"] });
    let undone = desk.post("/undo", &step).await.json();
    assert_eq!(desk.file(), HARBOUR);
    assert_eq!(undone["look"], first["look"]);
}

#[tokio::test]
async fn the_page_shows_the_figures_of_the_report() {
    let desk = Open::new().await;
    let look = desk.get("/look?dial=harbour/dial.toml").await.json();
    let seen = desk::Seen::of(HARBOUR, &workshop::starter(), &[]).expect("reads");
    let report = press::report(&seen.looked);
    for i in 0..2 {
        let (page, wheel) = (&look["changed"][format!("wheel/{i}")], &report["wheels"][i]);
        assert_eq!(page["radius"], wheel["radius_mm"]);
        assert_eq!(page["window"]["width"], wheel["window"]["width_mm"]);
        let stops = look["changed"][format!("stops/{i}")].as_array().expect("stops");
        assert_eq!(stops.len(), seen.turns.wheels[i].stops.len());
    }
    let found: Vec<&Value> = report["findings"].as_array().expect("list").iter().map(|one| &one["what"]).collect();
    let shown: Vec<&Value> =
        look["changed"]["findings"].as_array().expect("list").iter().map(|one| &one["what"]).collect();
    assert_eq!(found, shown);
}

#[tokio::test]
async fn a_mistake_is_told_with_its_place_and_is_not_written_by_a_change() {
    let desk = Open::new().await;
    let edit = |value: &str, on: Value| json!({ "dial": "harbour/dial.toml", "on": on, "changes": [{ "do": "set", "path": "mark.height", "value": value }] });
    let answer = desk.post("/edit", &edit("tall", desk.version().await)).await;
    assert_eq!(answer.status, StatusCode::UNPROCESSABLE_ENTITY);
    assert!(answer.json()["mistakes"][0]["help"].as_str().expect("help").contains("write"), "{}", answer.text);
    assert_eq!(desk.file(), HARBOUR);
    // In writing anything may be kept; it is shown with its places.
    let broken = HARBOUR.replace("values = \"0..24\"", "values = 0..24");
    let text = json!({ "dial": "harbour/dial.toml", "on": desk.version().await, "text": broken });
    let answer = desk.post("/text", &text).await.json();
    let at = &answer["changed"]["mistakes"]["dial_file"][0]["at"];
    assert_eq!(at["line"], 11, "{answer}");
    assert_eq!(answer["all"], json!(["mistakes"]));
}

#[tokio::test]
async fn both_sides_are_kept_when_both_changed_the_same_place() {
    let desk = Open::new().await;
    let on = desk.version().await;
    let outside = HARBOUR.replace("0..24", "0..30");
    fs::write(desk.folder.path().join("harbour/dial.toml"), &outside).expect("written");
    let edit = json!({
        "dial": "harbour/dial.toml", "on": on,
        "changes": [{ "do": "set", "path": "counter[0].values", "value": "0..9" }],
    });
    let answer = desk.post("/edit", &edit).await;
    assert_eq!(answer.status, StatusCode::CONFLICT);
    let state = desk.get("/state?dial=harbour/dial.toml").await.json();
    assert_eq!(state["text"], outside);
    assert!(state["kept"][0]["text"].as_str().expect("kept").contains("0..9"));
    assert_eq!(answer.json()["kept"], state["kept"][0]["version"]);
}

#[tokio::test]
async fn a_mend_that_is_offered_has_been_tried() {
    let folder = tempfile::tempdir().expect("a folder");
    fs::create_dir(folder.path().join("harbour")).expect("made");
    let failing = HARBOUR.replace("[notch]\n", "[window]\nwidth = \"5 mm\"\n\n[notch]\n");
    fs::write(folder.path().join("harbour/dial.toml"), failing).expect("written");
    let desk = Open::on(folder).await;
    let look = desk.get("/look?dial=harbour/dial.toml").await.json();
    assert!(look["changed"]["dial"]["refuse"].as_u64().expect("count") > 0, "{}", look["changed"]["findings"]);
    let have = look["look"].as_str().expect("name");
    let mends = desk.get(&format!("/mends?dial=harbour/dial.toml&have={have}")).await.json();
    let mend = &mends[0];
    assert_eq!(mend["changes"], json!([{ "do": "leave", "path": "window.width" }]));
    assert_eq!((&mend["by"], &mend["before"], &mend["then"]["refuse"]), (&json!("rule"), &json!(["5 mm"]), &json!(0)));
    let edit = json!({ "dial": "harbour/dial.toml", "on": look["version"], "changes": mend["changes"], "have": have });
    let done = desk.post("/edit", &edit).await.json();
    assert_eq!(done["changed"]["dial"]["refuse"], 0);
}

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

/// A dial is held against its standard as `check` does it; a standard outside the opened folder is not read, and that is said.
#[tokio::test]
async fn a_standard_is_held_against() {
    let around = tempfile::tempdir().expect("a folder");
    let write = |name: &str, text: &str| {
        let path = around.path().join(name);
        fs::create_dir_all(path.parent().expect("a folder")).expect("made");
        fs::write(path, text).expect("written");
    };
    let other = HARBOUR.replace("[notch]\n", "[magnet]\npoles = \"cover pushes\"\n\n[notch]\n");
    let follows = |standard: &str| format!("standard = \"{standard}\"\n{HARBOUR}");
    write("far/dial.toml", HARBOUR);
    write("open/near/dial.toml", &other);
    write("open/one/dial.toml", &follows("../near/dial.toml"));
    write("open/two/dial.toml", &follows("../../far/dial.toml"));
    let folder = tempfile::tempdir_in(around.path()).expect("a folder");
    fs::remove_dir(folder.path()).expect("empty");
    fs::rename(around.path().join("open"), folder.path()).expect("moved");
    let desk = Open::on(folder).await;
    let findings = |look: &Value| look["changed"]["findings"].as_array().expect("list").clone();
    let look = desk.get("/look?dial=one/dial.toml").await.json();
    let family: Vec<Value> = findings(&look).into_iter().filter(|one| one["rule"] == "family").collect();
    assert_eq!((family.len(), &family[0]["severity"]), (1, &json!("mend")), "{look}");
    assert!(family[0]["what"].as_str().expect("text").contains("the other way round"), "{family:?}");
    assert_eq!(look["changed"]["mistakes"]["standard"], Value::Null);
    let look = desk.get("/look?dial=two/dial.toml").await.json();
    assert!(findings(&look).iter().all(|one| one["rule"] != "family"));
    let told = look["changed"]["mistakes"]["standard"]["what"].as_str().expect("told");
    assert!(told.contains("outside the opened folder"), "{told}");
    // One with mistakes is told with its file, their lines, and what to do.
    fs::create_dir(desk.folder.path().join("three")).expect("made");
    fs::write(desk.folder.path().join("three/dial.toml"), follows("../near/dial.toml")).expect("written");
    let near = desk.folder.path().join("near/dial.toml");
    fs::write(&near, other.replace("stock = \"birch plywood 3 mm\"", "stock = 3")).expect("written");
    let look = desk.get("/look?dial=three/dial.toml").await.json();
    let told = &look["changed"]["mistakes"]["standard"];
    assert_eq!(
        (&told["file"], &told["what"]),
        (&json!("near/dial.toml"), &json!("the standard ../near/dial.toml has 1 mistake"))
    );
    let line = HARBOUR.lines().position(|line| line.starts_with("stock")).expect("there") + 1;
    assert_eq!(told["mistakes"][0]["at"]["line"], line, "{told}");
    assert!(
        !told["mistakes"][0]["help"].as_str().expect("help").is_empty()
            && !told["help"].as_str().expect("help").is_empty()
    );
    fs::write(&near, b"\xff\xfe").expect("written");
    let look = desk.get("/look?dial=three/dial.toml").await.json();
    let what = look["changed"]["mistakes"]["standard"]["what"].as_str().expect("told").to_owned();
    assert!(what.contains("not text in UTF-8"), "{what}");
    fs::write(&near, &other).expect("written");
    // Another standard is another look.
    let before = desk.get("/look?dial=one/dial.toml").await.json()["look"].clone();
    fs::write(desk.folder.path().join("near/dial.toml"), HARBOUR).expect("written");
    let after = desk.get("/look?dial=one/dial.toml").await.json();
    assert_ne!(after["look"], before);
    let family: Vec<Value> = findings(&after).into_iter().filter(|one| one["rule"] == "family").collect();
    assert!(!family[0]["what"].as_str().expect("text").contains("the other way round"), "{family:?}");
}

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

const WITH_WORKSHOP: House = House {
    workshop_file: |dial| {
        let real = fs::canonicalize(dial).ok()?;
        Some(real.with_file_name("workshop.toml")).filter(|path| path.is_file())
    },
    ..HOUSE
};

/// Values of the workshop file are changed one at a time, on the version that was seen, and whole or not at all.
#[tokio::test]
async fn the_workshops_values_are_changed_in_place() {
    let folder = tempfile::tempdir().expect("a folder");
    fs::write(folder.path().join("dial.toml"), HARBOUR).expect("written");
    let desk = Open::with(folder, WITH_WORKSHOP).await;
    let path = desk.folder.path().join("workshop.toml");
    let set = |on: &Value, place: &str, value: Value| json!({ "dial": "dial.toml", "on": on, "words": place, "changes": [{ "do": "set", "path": place, "value": value }] });

    // Where there is none, a value that does not fit begins none; one that does begins one.
    let none = desk.get("/workshop?dial=dial.toml").await.json();
    assert_eq!((&none["file"], &none["order"]["machine.bed_width"]["from"]), (&Value::Null, &json!("usual")));
    for (place, value) in
        [("machine.bed_width", json!("wide")), ("machine.bed_width", json!("9 mm")), ("mark.height", json!("5 mm"))]
    {
        for route in ["/workshop/try", "/workshop/edit"] {
            let answer = desk.post(route, &set(&none["version"], place, value.clone())).await;
            assert_eq!(answer.status, StatusCode::UNPROCESSABLE_ENTITY, "{route} {place} {value}: {}", answer.text);
        }
        assert!(!path.exists(), "{place} {value}");
    }
    let begun = desk.post("/workshop/edit", &set(&none["version"], "machine.bed_width", json!("300 mm"))).await.json();
    assert_eq!(
        (&begun["undo"], &begun["order"]["machine.bed_width"]["written"]),
        (&json!("machine.bed_width"), &json!("300 mm"))
    );

    let text = fs::read_to_string(&path).expect("there");
    assert!(text.starts_with("# The workshop") && text.ends_with("\n\n[machine]\nbed_width = \"300 mm\"\n"), "{text}");

    // Comments and order stay.
    let mine = "# mine\n[feel]\nshake = \"20 g\"   # it is carried about\n\n[machine]\n# the long one\nbed_height = \"20 in\"\nbed_width = \"300 mm\"\n";
    fs::write(&path, mine).expect("written");
    let on = desk.get("/workshop?dial=dial.toml").await.json()["version"].clone();
    let wide = desk.post("/workshop/edit", &set(&on, "machine.bed_width", json!("310 mm"))).await.json();
    assert_eq!(fs::read_to_string(&path).expect("there"), mine.replace("300 mm", "310 mm"));

    // Begun on what another window changed meanwhile: at another place both hold, at the same one neither is lost.
    let high = desk.post("/workshop/edit", &set(&on, "feel.finger", json!(0.7))).await;
    assert_eq!(high.status, StatusCode::OK, "{}", high.text);
    let text = fs::read_to_string(&path).expect("there");
    assert!(text.contains("310 mm") && text.contains("finger = 0.7"), "{text}");
    let same = desk.post("/workshop/edit", &set(&on, "machine.bed_width", json!("320 mm"))).await;
    assert_eq!(same.status, StatusCode::CONFLICT, "{}", same.text);
    assert_eq!(fs::read_to_string(&path).expect("there"), text);
    let now = desk.get("/workshop?dial=dial.toml").await.json();
    assert!(now["kept"][0]["text"].as_str().expect("kept").contains("320 mm"), "{now}");
    let settle = json!({ "dial": "dial.toml", "on": now["version"], "kept": now["kept"][0]["version"], "take": true });
    let taken = desk.post("/workshop/settle", &settle).await.json();
    assert_eq!((&taken["order"]["machine.bed_width"]["shown"], &taken["kept"]), (&json!("320 mm"), &json!([])));

    // Step by step back to what was written outside.
    let mut on = taken["version"].clone();
    for _ in 0..3 {
        on = desk.post("/workshop/undo", &json!({ "dial": "dial.toml", "on": on })).await.json()["version"].clone();
    }
    assert_eq!(fs::read_to_string(&path).expect("there"), mine);
    let forth = desk.post("/workshop/redo", &json!({ "dial": "dial.toml", "on": on })).await.json();
    assert_eq!(forth["version"], wide["version"]);
}

/// A workshop file is written where it lies, beside its dial; one that a link leads to is refused.
#[cfg(unix)]
#[tokio::test]
async fn a_workshop_file_that_is_a_link_is_refused() {
    let around = tempfile::tempdir().expect("a folder");
    fs::write(around.path().join("secret.toml"), "secret = 1\n").expect("written");
    let folder = tempfile::tempdir().expect("a folder");
    fs::write(folder.path().join("dial.toml"), HARBOUR).expect("written");
    let link = folder.path().join("workshop.toml");
    let desk = Open::with(folder, WITH_WORKSHOP).await;
    assert_eq!(desk.get("/workshop?dial=dial.toml").await.json()["file"], Value::Null);
    let begun = desk.post("/workshop/new", &json!({ "dial": "dial.toml" })).await.json();
    assert_eq!(begun["ours"], true, "{begun}");
    let edit = json!({ "dial": "dial.toml", "on": begun["version"], "text": "[machine]\nname = \"B\"\n" });
    assert_eq!(desk.post("/workshop/text", &edit).await.json()["has"]["machine"], "B");
    assert_eq!(desk.post("/workshop/text", &edit).await.status, StatusCode::CONFLICT, "on an old version");
    fs::remove_file(&link).expect("there");
    std::os::unix::fs::symlink(around.path().join("secret.toml"), &link).expect("linked");
    let answer = desk.get("/workshop?dial=dial.toml").await;
    assert_eq!(answer.status, StatusCode::FORBIDDEN);
    assert!(!answer.text.contains("secret"), "{}", answer.text);
}
