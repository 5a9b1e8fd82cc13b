//! The job folder: whole or absent, and never over what is there.

use press::{FolderError, Written, write_job};
use std::fs;
use std::path::PathBuf;

fn files(word: &str) -> Vec<(PathBuf, Vec<u8>)> {
    vec![("a.txt".into(), word.as_bytes().to_vec()), ("sheets/b.svg".into(), b"<svg/>".to_vec())]
}

#[test]
fn a_new_folder_is_whole_and_an_unchanged_one_is_left_alone() {
    let temp = tempfile::tempdir().expect("a folder");
    let target = temp.path().join("deep/harbour-job");
    assert_eq!(write_job(&target, &files("one")).expect("writes"), Written::New);
    assert_eq!(fs::read(target.join("sheets/b.svg")).expect("there"), b"<svg/>");
    assert_eq!(write_job(&target, &files("one")).expect("writes"), Written::Unchanged);
    let beside: Vec<_> = fs::read_dir(temp.path().join("deep")).expect("lists").collect();
    assert_eq!(beside.len(), 1, "no draft is left");
}

#[test]
fn an_existing_folder_is_kept_aside_with_everything_in_it() {
    let temp = tempfile::tempdir().expect("a folder");
    let target = temp.path().join("job");
    write_job(&target, &files("one")).expect("writes");
    let Written::Kept { kept, foreign } = write_job(&target, &files("two")).expect("writes") else { panic!("kept") };
    assert!(!foreign);
    assert_eq!(fs::read(kept.join("a.txt")).expect("kept"), b"one");
    // A file of the maker's own, and one of ours that was changed by hand.
    for change in ["mine.txt", "a.txt"] {
        fs::write(target.join(change), "by hand").expect("writes");
        let Written::Kept { kept, foreign } = write_job(&target, &files(change)).expect("writes") else {
            panic!("kept")
        };
        assert!(foreign, "{change}");
        assert_eq!(fs::read(kept.join(change)).expect("kept"), b"by hand");
        assert!(target.join("sheets/b.svg").is_file());
    }
}

#[test]
fn a_failure_half_way_leaves_everything_as_it_was() {
    let temp = tempfile::tempdir().expect("a folder");
    let target = temp.path().join("job");
    write_job(&target, &files("one")).expect("writes");
    // The second file's name is longer than any file system takes.
    let broken = vec![("a.txt".into(), b"two".to_vec()), (PathBuf::from("x".repeat(4000)), Vec::new())];
    let error = write_job(&target, &broken).expect_err("cannot");
    assert!(matches!(&error, FolderError::Io { .. }) && error.to_string().contains("nothing was changed"), "{error}");
    assert_eq!(fs::read(target.join("a.txt")).expect("there"), b"one");
    assert_eq!(fs::read_dir(temp.path()).expect("lists").count(), 1, "no draft is left");
}

#[test]
fn a_file_in_the_way_and_a_path_that_leads_out_are_refused() {
    let temp = tempfile::tempdir().expect("a folder");
    let target = temp.path().join("job");
    fs::write(&target, "mine").expect("writes");
    assert!(matches!(write_job(&target, &files("one")), Err(FolderError::NotAFolder(_))));
    assert_eq!(fs::read(&target).expect("there"), b"mine");
    let out = vec![(PathBuf::from("../escape.txt"), Vec::new())];
    assert!(matches!(write_job(&temp.path().join("other"), &out), Err(FolderError::Outside(_))));
    assert!(!temp.path().join("escape.txt").exists());
}

#[test]
fn an_empty_folder_is_simply_filled() {
    let temp = tempfile::tempdir().expect("a folder");
    let target = temp.path().join("job");
    fs::create_dir(&target).expect("makes");
    assert_eq!(write_job(&target, &files("one")).expect("writes"), Written::New);
    // By a name that cannot be renamed.
    let again = write_job(&target.join("sheets/.."), &files("two")).expect("writes");
    assert!(matches!(again, Written::Kept { foreign: false, .. }));
    assert_eq!(fs::read(target.join("a.txt")).expect("there"), b"two");
}
