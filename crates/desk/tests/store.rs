//! The maker's files: what is changed, what stays, and that nothing is lost.

use desk::store::{Change, DialFile, NotHere, Recent, Refused, Shelf, Version, apply, written};
use proptest::prelude::*;
use serde_json::json;
use std::fs;
use std::path::Path;

const HARBOUR: &str = include_str!("../../../examples/harbour/dial.toml");
const ORCHARD: &str = include_str!("../../../examples/orchard/dial.toml");

fn set(path: &str, value: impl Into<serde_json::Value>) -> Change {
    Change::Set { path: path.into(), value: value.into() }
}

fn leave(path: &str) -> Change {
    Change::Leave { path: path.into() }
}

fn fine(_: &str) -> Vec<dial::Mistake> {
    Vec::new()
}

fn mistakes(text: &str) -> Vec<dial::Mistake> {
    dial::design::read(text, &workshop::starter()).err().unwrap_or_default()
}

/// A dial file in a folder of its own.
fn on_disk(text: &str) -> (tempfile::TempDir, DialFile) {
    let folder = tempfile::tempdir().expect("a folder");
    let path = folder.path().join("dial.toml");
    fs::write(&path, text).expect("written");
    (folder, DialFile::at(&path))
}

#[test]
fn a_value_is_written_where_a_maker_would_write_it() {
    let text = apply(HARBOUR, &[set("mark.height", "4 mm"), set("counter[1].window.angle", "90 deg")]).expect("fits");
    assert!(text.contains("[mark]\nheight = \"4 mm\"\n"), "{text}");
    assert!(text.contains("symbol = \"flame\"\nwindow = { angle = \"90 deg\" }"), "{text}");
    assert!(text.starts_with("# Harbour: two counters"), "{text}");
    assert!(mistakes(&text).is_empty(), "{:?}", mistakes(&text));
    // Taken out again, the file is as it was.
    let back = apply(&text, &[leave("mark.height"), leave("counter[1].window.angle")]).expect("fits");
    assert_eq!(back, HARBOUR);
}

#[test]
fn comments_outlive_the_value_they_stood_beside() {
    let text = apply(HARBOUR, &[leave("notch.signs")]).expect("fits");
    assert!(text.contains("# a small + and - beside each notch"), "{text}");
    assert_eq!(written(&text, "notch.signs"), None);
    let text =
        apply("# above\nname = \"x\" # beside\nstock = \"y\"\n", &[leave("stock"), leave("name")]).expect("fits");
    assert!(text.contains("# above") && text.contains("# beside"), "{text}");
}

#[test]
fn counters_and_art_come_and_go() {
    let more = json!({ "name": "rope", "values": "0..9" });
    let add = Change::Add { path: "counter".into(), value: more.as_object().expect("object").clone() };
    let text = apply(HARBOUR, &[add]).expect("fits");
    assert_eq!(written(&text, "counter[2].name").as_deref(), Some("\"rope\""));
    assert!(mistakes(&text).is_empty(), "{text}");
    let back = apply(&text, &[Change::Remove { path: "counter[2]".into() }]).expect("fits");
    assert_eq!(back.trim_end(), HARBOUR.trim_end());
    let star = json!({ "symbol": "star", "at": ["0 mm", "10 mm"] });
    let star = Change::Add { path: "cover.art".into(), value: star.as_object().expect("object").clone() };
    for file in [HARBOUR, ORCHARD] {
        let text = apply(file, std::slice::from_ref(&star)).expect("fits");
        assert!(mistakes(&text).is_empty(), "{text}");
    }
}

#[test]
fn what_does_not_fit_its_place_is_refused_in_words() {
    for (change, says) in [
        (set("mark.height", 4), "a length"),
        (set("notch.signs", "yes"), "true or false"),
        (set("cover.sides", 5.5), "whole number"),
        (set("mark.colour", "red"), "not a parameter"),
        (set("counter", "x"), "in writing"),
        (set("../../x", "x"), "not a place"),
        (set("counter[7].name", "x"), "no such place"),
        (Change::Remove { path: "counter[7]".into() }, "no such place"),
    ] {
        let unfit = apply(HARBOUR, std::slice::from_ref(&change)).expect_err("unfit");
        assert!(unfit.what.contains(says), "{change:?}: {}", unfit.what);
    }
}

#[test]
fn every_step_is_undone_and_redone_also_by_the_next_desk() {
    let (_folder, file) = on_disk(HARBOUR);
    let mut state = file.state().expect("reads");
    let mut texts = vec![state.text.clone()];
    for k in 1..=10 {
        let changes = [set("mark.height", format!("{k} mm"))];
        state = file.edit(&state.version, &changes, &format!("height {k}"), &fine).expect("fits");
        texts.push(state.text.clone());
    }
    // Another desk, another day.
    let file = DialFile::at(file.path());
    let mut state = file.state().expect("reads");
    assert_eq!(state.undo.as_deref(), Some("height 10"));
    for text in texts.iter().rev().skip(1) {
        state = file.undo(&state.version).expect("undone");
        assert_eq!(state.text, *text);
        assert_eq!(fs::read_to_string(file.path()).expect("reads"), *text);
    }
    assert!(matches!(file.undo(&state.version), Err(Refused::NoStep)));
    for text in &texts[1..] {
        state = file.redo(&state.version).expect("redone");
        assert_eq!(state.text, *text);
    }
    assert!(matches!(file.redo(&state.version), Err(Refused::NoStep)));
}

#[test]
fn a_change_from_outside_is_a_step_like_any_other() {
    let (_folder, file) = on_disk(HARBOUR);
    let before = file.state().expect("reads");
    fs::write(file.path(), ORCHARD).expect("written");
    assert!(matches!(file.undo(&before.version), Err(Refused::Stale)));
    let state = file.state().expect("reads");
    assert_eq!((state.text.as_str(), state.undo.as_deref()), (ORCHARD, Some("changed outside the desk")));
    assert_eq!(file.undo(&state.version).expect("undone").text, HARBOUR);
}

#[test]
fn where_both_sides_changed_another_place_both_changes_hold() {
    let (_folder, file) = on_disk(HARBOUR);
    let page = file.state().expect("reads");
    let outside = HARBOUR.replace("0..24", "0..30");
    fs::write(file.path(), &outside).expect("written");
    let state = file.edit(&page.version, &[set("mark.height", "4 mm")], "height", &fine).expect("both fit");
    assert!(state.text.contains("0..30") && state.text.contains("4 mm"), "{}", state.text);
    assert!(state.kept.is_empty());
}

#[test]
fn where_both_sides_changed_the_same_place_both_versions_are_kept() {
    let (_folder, file) = on_disk(HARBOUR);
    let page = file.state().expect("reads");
    let outside = HARBOUR.replace("0..24", "0..30");
    fs::write(file.path(), &outside).expect("written");
    let refused = file.edit(&page.version, &[set("counter[0].values", "0..18")], "values", &fine);
    let Err(Refused::Both(version)) = refused else { panic!("{refused:?}") };
    let state = DialFile::at(file.path()).state().expect("reads");
    assert_eq!(state.text, outside);
    assert_eq!(state.kept.len(), 1);
    assert!(state.kept[0].text.contains("0..18"));
    let taken = file.settle(&state.version, &version, true).expect("taken");
    assert!(taken.text.contains("0..18") && taken.kept.is_empty());
    // And what was there before is one step back.
    assert_eq!(file.undo(&taken.version).expect("undone").text, outside);
}

#[test]
fn what_the_file_could_not_be_read_with_is_not_written() {
    let (_folder, file) = on_disk(HARBOUR);
    let page = file.state().expect("reads");
    let refused = file.edit(&page.version, &[set("mark.height", "900 mm")], "height", &mistakes);
    let Err(Refused::Mistakes { mistakes, .. }) = refused else { panic!("{refused:?}") };
    assert!(mistakes[0].what.contains("mark.height"), "{mistakes:?}");
    assert_eq!(fs::read_to_string(file.path()).expect("reads"), HARBOUR);
}

/// Four desks count one value up at once; each works on what it saw last. Every step is in the history once.
#[test]
fn desks_on_one_folder_do_not_overwrite_each_other() {
    let (_folder, file) = on_disk(HARBOUR);
    let each = 12;
    std::thread::scope(|scope| {
        for desk in 0..4 {
            let file = DialFile::at(file.path());
            scope.spawn(move || {
                for k in 0..each {
                    loop {
                        let state = file.state().expect("reads");
                        // Whole texts: nothing can be merged.
                        let text = format!("{}# {desk} {k}\n", state.text);
                        match file.write(&state.version, &text, "a line") {
                            Ok(_) => break,
                            Err(Refused::Both(_)) => {}
                            Err(other) => panic!("{other:?}"),
                        }
                    }
                }
            });
        }
    });
    let text = fs::read_to_string(file.path()).expect("reads");
    for desk in 0..4 {
        for k in 0..each {
            assert_eq!(text.matches(&format!("# {desk} {k}\n")).count(), 1, "{text}");
        }
    }
}

#[test]
fn a_write_leaves_no_draft_and_keeps_the_files_rights() {
    let (folder, file) = on_disk(HARBOUR);
    #[cfg(unix)]
    {
        use std::os::unix::fs::PermissionsExt;
        fs::set_permissions(file.path(), fs::Permissions::from_mode(0o640)).expect("set");
    }
    let state = file.state().expect("reads");
    file.write(&state.version, ORCHARD, "another").expect("written");
    let mut names: Vec<String> =
        fs::read_dir(folder.path()).expect("reads").flatten().map(|e| e.file_name().to_string_lossy().into()).collect();
    names.sort();
    assert_eq!(names, [".dialwright", "dial.toml"]);
    #[cfg(unix)]
    {
        use std::os::unix::fs::PermissionsExt;
        assert_eq!(fs::metadata(file.path()).expect("there").permissions().mode() & 0o777, 0o640);
    }
}

#[test]
fn no_name_leads_out_of_the_opened_folder() {
    let outside = tempfile::tempdir().expect("a folder");
    fs::write(outside.path().join("dial.toml"), HARBOUR).expect("written");
    let inside = tempfile::tempdir().expect("a folder");
    fs::create_dir(inside.path().join("harbour")).expect("made");
    fs::write(inside.path().join("harbour/dial.toml"), HARBOUR).expect("written");
    let shelf = Shelf::open(inside.path()).expect("opens");
    assert_eq!(shelf.dials(), ["harbour/dial.toml"]);
    assert!(shelf.file("harbour/dial.toml").is_ok());
    let absolute = outside.path().join("dial.toml");
    let up = format!("../{}/dial.toml", outside.path().file_name().expect("named").to_string_lossy());
    for name in [
        absolute.to_str().expect("text"),
        &up,
        "",
        ".",
        "harbour/../../x.toml",
        ".dialwright/x.toml",
        "a\0.toml",
        "harbour",
    ] {
        assert_eq!(shelf.file(name), Err(NotHere::Outside), "{name}");
    }
    assert_eq!(shelf.file("nothing.toml"), Err(NotHere::Missing));
    #[cfg(unix)]
    {
        std::os::unix::fs::symlink(outside.path(), inside.path().join("linked")).expect("linked");
        std::os::unix::fs::symlink(outside.path().join("dial.toml"), inside.path().join("link.toml")).expect("linked");
        for name in ["linked/dial.toml", "link.toml"] {
            assert_eq!(shelf.file(name), Err(NotHere::Outside), "{name}");
        }
        assert_eq!(shelf.place("linked/new/dial.toml"), Err(NotHere::Outside));
        assert_eq!(shelf.dials(), ["harbour/dial.toml"]);
    }
    assert!(shelf.place("new/dial.toml").is_ok());
}

#[test]
fn recent_dials_come_newest_first_and_once() {
    let (folder, file) = on_disk(HARBOUR);
    let other = folder.path().join("other.toml");
    fs::write(&other, ORCHARD).expect("written");
    let recent = Recent::in_file(&folder.path().join("state/recent.json"));
    for path in [file.path(), Path::new(&other), file.path()] {
        recent.remember(path);
    }
    assert_eq!(recent.list(), [file.path(), Path::new(&other)]);
    fs::remove_file(&other).expect("removed");
    assert_eq!(recent.list(), [file.path()]);
}

fn change() -> impl Strategy<Value = Change> {
    let length = (10..400u32).prop_map(|tenths| format!("{} mm", f64::from(tenths) / 10.0));
    let place = prop::sample::select(vec![
        "mark.height",
        "mark.margin",
        "cover.corner",
        "cover.width",
        "notch.width",
        "magnet.diameter",
        "counter[0].mark.height",
        "counter[1].window.width",
        "counter[1].notch.depth",
        "counter[0].label_height",
    ]);
    prop_oneof![
        3 => (place.clone(), length).prop_map(|(path, value)| set(path, value)),
        1 => place.prop_map(leave),
        1 => any::<bool>().prop_map(|flag| set("notch.signs", flag)),
        1 => (0..360u32).prop_map(|angle| set("counter[0].window.angle", format!("{angle} deg"))),
    ]
}

proptest! {
    #![proptest_config(ProptestConfig::with_cases(128))]

    /// Whatever is changed: the place holds the new value, every other value is what it was, and no comment is gone.
    #[test]
    fn only_the_place_changes(changes in prop::collection::vec(change(), 1..12), inch in any::<bool>()) {
        let mut text = if inch { ORCHARD.to_owned() } else { HARBOUR.to_owned() };
        for change in &changes {
            let after = apply(&text, std::slice::from_ref(change)).expect("fits");
            for comment in text.lines().filter_map(|line| line.find('#').map(|at| line[at..].trim())) {
                prop_assert!(after.contains(comment), "{comment} is gone from\n{after}");
            }
            for path in ["name", "stock", "show", "cover.art", "counter[0].name", "counter[1].values", "notch.signs", "mark.height", "counter[0].mark.height", "counter[0].window.angle", "magnet.diameter"] {
                let now = written(&after, path);
                match change {
                    Change::Set { path: there, value } if there == path => {
                        prop_assert_eq!(now, Some(value.to_string()));
                    }
                    Change::Leave { path: there } if there == path => prop_assert_eq!(now, None),
                    _ => prop_assert_eq!(now, written(&text, path), "{} after {:?}", path, change),
                }
            }
            text = after;
        }
    }

    /// The version is the content: the same text, the same version; another text, another.
    #[test]
    fn versions_tell_texts_apart(a in ".{0,40}", b in ".{0,40}") {
        prop_assert_eq!(Version::of(&a) == Version::of(&b), a == b);
    }
}
