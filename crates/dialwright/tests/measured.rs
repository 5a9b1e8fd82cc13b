//! A photo of the reference card, read and kept in a stock. The photos are rendered by the scenes that try the card's reader.

#[expect(dead_code, reason = "these scenes are made for the card's own tests; only some are needed here")]
#[path = "../../card/tests/scene/mod.rs"]
mod scene;

use card::{CardPlan, Paper};
use scene::{Chance, Scene};
use serde_json::Value;
use std::fs;
use std::path::Path;
use std::process::{Command, Output};

fn dialwright(folder: &Path, args: &[&str]) -> Output {
    Command::new(env!("CARGO_BIN_EXE_dialwright")).current_dir(folder).args(args).output().expect("runs")
}

fn err(output: &Output) -> String {
    String::from_utf8_lossy(&output.stderr).into_owned()
}

/// A photo as a maker would take it, with what is true of it; and the same with an edge of shadow.
fn photos(folder: &Path) -> Scene {
    let plan = CardPlan::new(Paper::A4, 6).expect("it is allowed");
    let mut chance = Chance::new(7);
    let scene = Scene::clean(&mut chance, &plan, 1280);
    fs::write(folder.join("maple.jpg"), scene.jpeg(&plan)).expect("writes");
    fs::write(folder.join("shadow.jpg"), scene.clone().shadowed(&mut chance).jpeg(&plan)).expect("writes");
    scene
}

/// What was measured stands in the workshop's file, and the next look at a dial goes by it; a photo that is refused leaves
/// everything as it was.
#[test]
fn a_reading_is_kept_in_its_stock() {
    let temp = tempfile::tempdir().expect("a folder");
    let truth = photos(temp.path());
    let run = |args: &[&str]| dialwright(temp.path(), args);
    let mine = "[machine]\nname = \"the long one\" # mine\n";
    let file = temp.path().join("workshop.toml");
    fs::write(&file, mine).expect("writes");

    let refused = run(&["card", "read", "shadow.jpg", "--store", "maple 3 mm"]);
    assert_eq!(refused.status.code(), Some(1), "{}", err(&refused));
    assert_eq!(fs::read_to_string(&file).expect("there"), mine);

    let args = ["card", "read", "maple.jpg", "--store", "maple 3 mm", "--step", "5", "--power", "22 %", "--json"];
    let kept = run(&args);
    assert!(kept.status.success(), "{}", err(&kept));
    let figures: Value = serde_json::from_slice(&kept.stdout).expect("JSON");
    let contrast = figures["steps"][4]["contrast_ratio"]["value"].as_f64().expect("a number");
    assert!((contrast / truth.contrast(4) - 1.0).abs() < 0.1, "{contrast} of {}", truth.contrast(4));
    assert!(fs::read_to_string(&file).expect("there").starts_with(mine));

    let shelf = run(&["list", "stocks", "--json"]);
    let shelf: Value = serde_json::from_slice(&shelf.stdout).expect("JSON");
    let maple = shelf.as_array().expect("a list").iter().find(|one| one["name"] == "maple 3 mm").expect("on the shelf");
    let step = &figures["steps"][4];
    assert_eq!((&maple["face"]["colour"], &maple["engraved"]), (&step["face"]["colour"], &step["engraved"]["colour"]));
    let looks = maple["looks"].as_str().expect("words");
    let today = jiff::Zoned::now().date().to_string();
    assert_eq!(looks, format!("measured here on {today}: step 5 of 6, 22 %"));
    assert_eq!(maple["photo"], "maple.jpg");
}

#[test]
fn what_cannot_be_kept_is_said_and_nothing_is_written() {
    let temp = tempfile::tempdir().expect("a folder");
    photos(temp.path());
    let run = |args: &[&str]| {
        let all: Vec<&str> = ["card", "read", "maple.jpg"].iter().chain(args).copied().collect();
        let done = dialwright(temp.path(), &all);
        assert!(!done.status.success());
        err(&done)
    };
    assert!(run(&["--store", "moon rock"]).contains("moon rock"));
    assert!(run(&["--store", "maple 3 mm", "--step", "9"]).contains("steps 1 to 6"));
    assert!(run(&["--store", "maple 3 mm", "--depth", "3 parsec"]).contains("--depth"));
    fs::write(temp.path().join("broken.toml"), "[stocks\n").expect("writes");
    assert!(run(&["--store", "maple 3 mm", "--into", "broken.toml"]).contains("broken.toml"));
    assert!(!temp.path().join("workshop.toml").exists());
    assert_eq!(fs::read_to_string(temp.path().join("broken.toml")).expect("there"), "[stocks\n");
}
