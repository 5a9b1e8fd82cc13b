//! Votes given on the command line.

use serde_json::Value;
use std::fs;
use std::process::{Command, Output};

fn dialwright(folder: &std::path::Path, args: &[&str]) -> Output {
    Command::new(env!("CARGO_BIN_EXE_dialwright")).current_dir(folder).args(args).output().expect("runs")
}

/// A vote is written beside the workshop file if there is one, else beside the dial; the ranking that is told has it in it already.
#[test]
fn a_vote_is_written_down_and_counted() {
    let temp = tempfile::tempdir().expect("a folder");
    let run = |args: &[&str]| dialwright(temp.path(), args);
    assert!(run(&["new", "harbour", "--counter", "provisions 0..24"]).status.success());
    let (one, other) = ("bamboo 3 mm / maple 3 mm", "maple 3 mm / maple 3 mm");
    let vote = |a: &str, b: &str| run(&["looks", "harbour/dial.toml", "--vote", a, b, "--json"]);
    let told = |output: &Output| -> Value {
        assert!(output.status.success(), "{}", String::from_utf8_lossy(&output.stderr));
        serde_json::from_slice(&output.stdout).expect("JSON")
    };
    assert_eq!(told(&vote(one, other))["picked"]["choices"], 1);
    let file = temp.path().join("harbour/votes.toml");
    let text = fs::read_to_string(&file).expect("written");
    fs::write(&file, format!("{text}# Ada and Ben\n")).expect("written");
    let picked = told(&vote(other, one))["picked"].clone();
    assert_eq!(picked["choices"], 2);
    assert!(picked["verdict"].as_str().expect("words").starts_with("too few votes"), "{picked}");
    assert!(fs::read_to_string(&file).expect("there").contains("# Ada and Ben"));

    // What is no pairing is told, and nothing is written.
    let before = fs::read_to_string(&file).expect("there");
    let unknown = vote("moon rock / maple 3 mm", other);
    let said = String::from_utf8_lossy(&unknown.stderr).into_owned();
    assert!(!unknown.status.success() && said.contains("moon rock") && said.contains("cover first"), "{said}");
    assert_eq!(fs::read_to_string(&file).expect("there"), before);

    // Beside the workshop file, where there is one and no votes yet.
    fs::remove_file(&file).expect("gone");
    fs::write(temp.path().join("workshop.toml"), "").expect("written");
    told(&vote(one, other));
    assert!(temp.path().join("votes.toml").is_file() && !file.exists());
    // Votes that cannot be read are shown with their place, and left alone.
    fs::write(temp.path().join("votes.toml"), "[[vote]]\nbest_first = 3\n").expect("written");
    let broken = vote(one, other);
    assert!(!broken.status.success() && String::from_utf8_lossy(&broken.stderr).contains("votes.toml"));
}
