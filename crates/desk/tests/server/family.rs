//! A dial held against its standard.

use crate::open::{HARBOUR, Open};
use serde_json::{Value, json};
use std::fs;

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
