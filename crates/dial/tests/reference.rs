//! What is made from the table of parameters: the schemas, and the comments of a new file.

use dial::design;
use serde_json::Value;
use std::fs;
use std::path::Path;

fn json(text: &str) -> Value {
    toml::from_str(text).expect("TOML")
}

#[test]
fn the_schemas_take_the_starter_workshop_and_a_new_file() {
    let shelf = jsonschema::validator_for(&workshop::schema()).expect("a schema");
    let errors: Vec<String> = shelf.iter_errors(&json(workshop::STARTER)).map(|error| error.to_string()).collect();
    assert!(errors.is_empty(), "{errors:?}");
    let dial = jsonschema::validator_for(&design::schema()).expect("a schema");
    assert!(dial.is_valid(&json(&ferry())));
}

/// An editor with the schema underlines the slips that a schema can know: keys, kinds, units and words.
#[test]
fn the_schema_refuses_slips_of_the_pen() {
    let dial = jsonschema::validator_for(&design::schema()).expect("a schema");
    let folder = Path::new(env!("CARGO_MANIFEST_DIR")).join("tests/mistakes");
    for case in [
        "angle_without_unit",
        "bare_number",
        "decimal_comma",
        "key_of_another_table",
        "missing",
        "no_counters",
        "polygon_of_two_corners",
        "slips_in_lists",
        "unknown_choice",
        "unknown_key",
        "unknown_key_in_a_counter",
        "unknown_symbol",
        "unknown_unit",
        "wrong_kind",
    ] {
        let text = fs::read_to_string(folder.join(case).with_extension("toml")).expect(case);
        assert!(!dial.is_valid(&json(&text)), "{case}");
    }
}

fn ferry() -> String {
    let counters = [("fare".to_owned(), "0..24".to_owned()), ("wind".to_owned(), "calm, breeze, gale".to_owned())];
    design::new_file("Ferry", &counters, "birch plywood 3 mm")
}

/// A bell and a delete among the letters: no TOML comment may hold them.
#[test]
fn control_characters_do_not_get_into_a_new_file() {
    let counters = [("fa\u{7}re".to_owned(), "0..9".to_owned())];
    let text = design::new_file("Fer\u{7f}ry\nboat", &counters, "birch plywood 3 mm");
    let read = design::read(&text, &workshop::starter()).expect("reads");
    assert_eq!((read.name.as_str(), read.counters[0].name.as_str()), ("Fer ry boat", "fa re"));
}

/// A maker who takes away the `#` of a line, and of its table's head, gets a file that is understood: the key is known, its
/// value of its kind. That it clashes with another value, both shown, is no fault of the line.
#[test]
fn every_commented_line_of_a_new_file_is_understood() {
    let text = ferry();
    let lines: Vec<&str> = text.lines().collect();
    let key = |line: &str| {
        line.strip_prefix("# ")
            .and_then(|rest| rest.split_once(" = "))
            .is_some_and(|(key, _)| !key.is_empty() && key.chars().all(|c| c.is_ascii_lowercase() || c == '_'))
    };
    let mut tried = 0;
    for at in (0..lines.len()).filter(|&at| key(lines[at])) {
        let mut changed = lines.clone();
        changed[at] = &lines[at][2..];
        let head = (0..at).rev().find(|&i| lines[i].trim_start_matches("# ").starts_with('['));
        if let Some(head) = head {
            changed[head] = lines[head].trim_start_matches("# ");
        }
        let changed = changed.join("\n");
        if let Err(mistakes) = design::read(&changed, &workshop::starter()) {
            let told = design::render_mistakes("dial.toml", &changed, &mistakes, false);
            for fault in ["not known here", "not TOML", "` is a", "` is one of", "is missing"] {
                assert!(!told.contains(fault), "{}\n{told}", lines[at]);
            }
        }
        tried += 1;
    }
    assert!(tried > 40, "only {tried} lines were tried");
}
