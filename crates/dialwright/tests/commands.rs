//! The commands as a maker meets them.

use serde_json::Value;
use std::fs;
use std::path::Path;
use std::process::{Command, Output};

fn dialwright(folder: &Path, args: &[&str]) -> Output {
    Command::new(env!("CARGO_BIN_EXE_dialwright")).current_dir(folder).args(args).output().expect("runs")
}

fn out(output: &Output) -> String {
    String::from_utf8_lossy(&output.stdout).into_owned()
}

fn err(output: &Output) -> String {
    String::from_utf8_lossy(&output.stderr).into_owned()
}

fn json(output: &Output) -> Value {
    serde_json::from_str(&out(output)).unwrap_or_else(|error| panic!("{error}: {}", out(output)))
}

/// From an empty folder to a job folder.
#[test]
fn from_nothing_to_sheets() {
    let temp = tempfile::tempdir().expect("a folder");
    let run = |args: &[&str]| dialwright(temp.path(), args);
    let made = run(&["new", "harbour", "--counter", "provisions 0..24", "--counter", "lamp oil 0..15"]);
    assert!(made.status.success(), "{}", err(&made));
    let file = "harbour/dial.toml";
    for command in ["check", "turn", "make"] {
        let done = run(&[command, file]);
        assert!(done.status.success(), "{command}: {}{}", out(&done), err(&done));
        assert!(err(&done).is_empty(), "{command} talks only when something is wrong: {}", err(&done));
    }
    let job = temp.path().join("harbour/harbour-job");
    for path in [
        "READ-ME-FIRST.txt",
        "job.json",
        "report.json",
        "findings.txt",
        "dial.toml",
        "pictures/turn-test.png",
        "pictures/turn-test.svg",
        "pictures/dial.png",
        "pictures/turned-over.png",
        "sheets/setup-1-birch-plywood-3-mm-face-up.svg",
        "sheets/setup-2-birch-plywood-3-mm-turned-over.svg",
        "tickets/setup-1-birch-plywood-3-mm-face-up.txt",
        "tickets/setup-2-birch-plywood-3-mm-turned-over.png",
    ] {
        assert!(job.join(path).is_file(), "{path}");
    }
    // The same figures everywhere.
    let (check, made) = (json(&run(&["check", file, "--json"])), json(&run(&["make", file, "--json"])));
    let kept: Value = serde_json::from_slice(&fs::read(job.join("report.json")).expect("there")).expect("JSON");
    assert_eq!(check, kept);
    assert_eq!(check["turn_test"], json(&run(&["turn", file, "--json"])));
    assert_eq!((&made["wheels"], made["job"]["setups"].as_u64()), (&check["wheels"], Some(2)));
    assert_eq!(check["turn_test"]["wheels"][0]["stops"].as_array().map(Vec::len), Some(25));
    assert!(check["wheels"][0]["radius_mm"].as_f64().is_some_and(|radius| radius > 20.0));
    // Nothing is begun over what is there.
    assert_eq!(run(&["new", "harbour", "--counter", "provisions 0..24"]).status.code(), Some(2));
    assert!(out(&run(&["make", file])).contains("unchanged"));
}

#[test]
fn mistakes_end_with_two_refusals_with_one() {
    let temp = tempfile::tempdir().expect("a folder");
    let write = |text: &str| fs::write(temp.path().join("dial.toml"), text).expect("writes");
    write("name = \"T\"\nstok = \"birch plywood 3 mm\"\n");
    let done = dialwright(temp.path(), &["make", "dial.toml"]);
    assert_eq!(done.status.code(), Some(2));
    assert!(err(&done).contains("did you mean `stock`?") && err(&done).contains("dial.toml:2:1"), "{}", err(&done));
    write(
        "name = \"T\"\nstock = \"mine\"\n[stocks.mine]\nlayers = [{ material = \"PVC\", thickness = \"3 mm\" }]\n[[counter]]\nname = \"a\"\nvalues = \"0..9\"\n",
    );
    let done = dialwright(temp.path(), &["make", "dial.toml"]);
    assert_eq!(done.status.code(), Some(1));
    assert!(out(&done).contains("hydrogen chloride"), "{}", out(&done));
    assert_eq!(fs::read_dir(temp.path()).expect("lists").count(), 1, "no job folder, not even half of one");
    fs::write(temp.path().join("dial.toml"), [0xff, 0xfe, 0x00]).expect("writes");
    let done = dialwright(temp.path(), &["check", "dial.toml"]);
    assert_eq!(done.status.code(), Some(2));
    assert!(err(&done).contains("UTF-8"));
    assert!(err(&dialwright(temp.path(), &["check", "nowhere.toml"])).contains("dialwright new"));
}

#[test]
fn a_workshop_file_changes_machine_and_colours() {
    let temp = tempfile::tempdir().expect("a folder");
    fs::create_dir(temp.path().join("dials")).expect("makes");
    fs::write(temp.path().join("workshop.toml"), "[machine]\nbed_width = \"90 mm\"\ncut_outside = \"#123456\"\n")
        .expect("writes");
    let dial = |values: &str| {
        fs::write(
            temp.path().join("dials/dial.toml"),
            format!("name = \"T\"\nstock = \"birch plywood 3 mm\"\n[[counter]]\nname = \"a\"\nvalues = \"{values}\"\n"),
        )
        .expect("writes")
    };
    dial("0..9");
    let done = dialwright(temp.path(), &["make", "dials/dial.toml", "--to", "out"]);
    assert!(done.status.success(), "{}{}", out(&done), err(&done));
    let sheet =
        fs::read_to_string(temp.path().join("out/sheets/setup-1-birch-plywood-3-mm-face-up.svg")).expect("there");
    assert!(sheet.contains("stroke=\"#123456\""));
    dial("0..60");
    let done = dialwright(temp.path(), &["make", "dials/dial.toml", "--to", "out2"]);
    assert_eq!(done.status.code(), Some(1));
    assert!(out(&done).contains("the bed has 90.0"), "{}", out(&done));
    fs::write(temp.path().join("workshop.toml"), "[machine]\nbed_widht = \"90 mm\"\n").expect("writes");
    let done = dialwright(temp.path(), &["check", "dials/dial.toml"]);
    assert!(err(&done).contains("did you mean `bed_width`?") && err(&done).contains("workshop.toml"), "{}", err(&done));
}

#[test]
fn every_command_has_help_with_an_example() {
    let temp = tempfile::tempdir().expect("a folder");
    for command in ["new", "check", "turn", "make", "list", "contrast"] {
        let help = out(&dialwright(temp.path(), &[command, "--help"]));
        assert!(help.contains("Example") && help.contains(&format!("dialwright {command}")), "{command}: {help}");
        assert!(help.contains("--json"), "{command}");
    }
    assert!(
        json(&dialwright(temp.path(), &["list", "symbols", "--json"])).as_array().is_some_and(|all| all.len() >= 12)
    );
    assert!(json(&dialwright(temp.path(), &["list", "stocks", "--json"]))[0]["thinnest_mm"].is_number());
}

/// The grey that just fails on white, 4.478 to 1, worked by hand from the definition in WCAG 2.2; never shown as 4.5.
#[test]
fn anyone_can_check_a_contrast() {
    let temp = tempfile::tempdir().expect("a folder");
    let run = |args: &[&str]| dialwright(temp.path(), args);
    let found = json(&run(&["contrast", "777777", "#ffffff", "--json"]));
    assert!((found["ratio"].as_f64().expect("a figure") - 4.4781).abs() < 1e-4, "{found}");
    assert_eq!((found["ratio_shown"].as_str(), found["polarity"].as_str()), (Some("4.47"), Some("dark on light")));
    let passed: Vec<bool> =
        found["levels"].as_array().expect("levels").iter().filter_map(|one| one["passed"].as_bool()).collect();
    assert_eq!(passed, [false, true, false, false, true]);
    assert!((found["mark"]["l_star"].as_f64().expect("a figure") - 50.03).abs() < 0.01, "{found}");
    let words = out(&run(&["contrast", "#000000", "#ffffff"]));
    assert!(words.starts_with("contrast 21.00:1, dark on light"), "{words}");
    assert!(words.contains("CIEDE2000 100.00") && !words.contains("fails"), "{words}");
    let wrong = run(&["contrast", "brown", "#ffffff"]);
    assert_eq!(wrong.status.code(), Some(2));
    assert!(err(&wrong).contains("#rrggbb"), "{}", err(&wrong));
}

/// `docs/` holds what the tables of parameters say; `dialwright reference --into docs` makes it anew.
#[test]
fn generated_pages_are_up_to_date() {
    let temp = tempfile::tempdir().expect("a folder");
    assert!(dialwright(temp.path(), &["reference", "--into", "docs"]).status.success());
    let docs = Path::new(env!("CARGO_MANIFEST_DIR")).join("../../docs");
    for name in [
        "dial-file.md",
        "dial-file.schema.json",
        "workshop-file.md",
        "workshop-file.schema.json",
        "votes-file.md",
        "votes-file.schema.json",
    ] {
        let made = fs::read_to_string(temp.path().join("docs").join(name)).expect("made");
        let kept = fs::read_to_string(docs.join(name)).unwrap_or_default();
        assert!(made == kept, "docs/{name} is out of date: cargo run -- reference --into docs");
    }
}
