//! The workshop file.

use crate::open::{HARBOUR, HOUSE, Open};
use axum::http::StatusCode;
use desk::House;
use serde_json::{Value, json};
use std::fs;

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
