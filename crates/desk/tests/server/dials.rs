//! A dial looked at, tried, changed, undone.

use crate::open::{HARBOUR, Open};
use axum::http::StatusCode;
use serde_json::{Value, json};
use std::fs;

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
