//! The same dial gives the same bytes, whoever makes it and wherever: two processes at once, with seeds, clocks, tongues and folders of
//! their own. The two dials between them have every page and every kind of sheet, in the book on both papers.

use std::collections::BTreeMap;
use std::fs;
use std::path::{Path, PathBuf};
use std::process::{Child, Command, Stdio};

/// Starts a command in a world of its own.
fn start(args: &[&str], dial: &Path, to: &Path, far: bool) -> Child {
    let mut command = Command::new(env!("CARGO_BIN_EXE_dialwright"));
    command.args(args).arg(dial).arg("--to").arg(to).stdout(Stdio::null()).stderr(Stdio::null());
    let (zone, tongue) = if far { ("Pacific/Auckland", "ar_EG.UTF-8") } else { ("UTC", "C") };
    command.env("TZ", zone).env("LC_ALL", tongue).spawn().expect("starts")
}

/// All files of a folder, or the one file, by their paths within.
fn files(at: &Path, within: &Path, all: &mut BTreeMap<PathBuf, Vec<u8>>) {
    let path = at.join(within);
    if path.is_file() {
        all.insert(within.to_owned(), fs::read(&path).expect("reads"));
        return;
    }
    for entry in fs::read_dir(&path).expect("lists") {
        files(at, &within.join(entry.expect("an entry").file_name()), all);
    }
}

/// Does it twice at once; returns what came out.
fn twice(args: &[&str], name: &str, to: &str) -> BTreeMap<PathBuf, Vec<u8>> {
    let temp = tempfile::tempdir().expect("a folder");
    let example = Path::new(env!("CARGO_MANIFEST_DIR")).join("../../examples").join(name).join("dial.toml");
    let homes = ["near", "a folder far away"].map(|home| temp.path().join(home));
    let running = homes.each_ref().map(|home| {
        fs::create_dir(home).expect("makes");
        let dial = home.join("dial.toml");
        fs::copy(&example, &dial).expect("copies");
        start(args, &dial, &home.join(to), home.ends_with("a folder far away"))
    });
    for mut child in running {
        assert!(child.wait().expect("ends").success(), "{args:?} {name}");
    }
    let [one, other] = homes.map(|home| {
        let mut all = BTreeMap::new();
        files(&home, Path::new(to), &mut all);
        all
    });
    assert_eq!(one.keys().collect::<Vec<_>>(), other.keys().collect::<Vec<_>>());
    for (path, bytes) in &one {
        assert!(*bytes == other[path], "{name}: {} differs", path.display());
    }
    one
}

#[test]
fn a_job_folder_is_the_same_each_time() {
    for (name, paper) in [("harbour", "a4"), ("caravan", "letter")] {
        let made = twice(&["make", "--paper", paper], name, "job");
        for file in [
            #[cfg(feature = "workbook")]
            "workbook.pdf",
            "turn.html",
            "report.json",
            "steps.json",
            "pictures/pairings.png",
            "pictures/turn-test.svg",
        ] {
            assert!(made.contains_key(&Path::new("job").join(file)), "{file} of {name}");
        }
        assert!(made.keys().filter(|path| path.starts_with("job/sheets")).count() >= 2, "{name}: {:?}", made.keys());
    }
}

#[cfg(feature = "workbook")]
#[test]
fn a_workbook_is_the_same_each_time_on_the_other_paper() {
    for (name, paper) in [("harbour", "letter"), ("caravan", "a4")] {
        twice(&["workbook", "--paper", paper], name, "book.pdf");
    }
}
