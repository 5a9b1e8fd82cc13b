//! Dial files: mistakes as the maker sees them, and the table that everything is read by.

mod common;

use common::{examples, try_look};
use dial::design::table::{Default, Kind, all};
use dial::design::{self, parameters};
use proptest::prelude::*;
use std::collections::BTreeSet;
use std::fs;
use std::path::Path;
use std::sync::LazyLock;

/// Each bad file in `mistakes/` beside the text that it gets. `DIALWRIGHT_WRITE=1` writes the texts anew; read them before
/// they are committed.
#[test]
fn mistakes_are_shown_in_the_makers_own_file() {
    let folder = Path::new(env!("CARGO_MANIFEST_DIR")).join("tests/mistakes");
    let mut seen = 0;
    let mut wrong = Vec::new();
    for entry in fs::read_dir(&folder).expect("the folder") {
        let path = entry.expect("an entry").path();
        if path.extension().is_none_or(|end| end != "toml") {
            continue;
        }
        seen += 1;
        let text = fs::read_to_string(&path).expect("reads");
        let name = path.file_name().expect("a name").to_string_lossy().into_owned();
        let mistakes = try_look(&text).err().unwrap_or_else(|| panic!("{name} reads without a mistake"));
        let shown = design::render_mistakes(&name, &text, &mistakes, false);
        let golden = path.with_extension("txt");
        if std::env::var_os("DIALWRIGHT_WRITE").is_some() {
            fs::write(&golden, &shown).expect("writes");
        }
        if fs::read_to_string(&golden).unwrap_or_default() != shown {
            wrong.push(format!("{name}:\n{shown}"));
        }
    }
    assert!(seen >= 20, "only {seen} files");
    assert!(wrong.is_empty(), "changed:\n{}", wrong.join("\n"));
}

#[test]
fn every_parameter_is_told_once_and_its_default_holds() {
    for groups in [
        parameters::DIAL_FILE,
        parameters::COUNTER,
        parameters::ART,
        parameters::STOCK,
        parameters::LAYER,
        parameters::SHELF_MAGNET,
        parameters::WORKSHOP_FILE,
    ] {
        let mut paths = BTreeSet::new();
        for param in all(groups) {
            assert!(paths.insert(param.path), "{} twice", param.path);
            assert!(!param.words.is_empty() && !param.source.is_empty(), "{}", param.path);
            if let Default::Fixed(text) = param.default {
                match param.kind {
                    Kind::Length(low, high) => {
                        let mm = measure::parse_length(text).expect(param.path);
                        assert!((low..=high).contains(&mm), "{}", param.path);
                    }
                    Kind::Angle => assert!(measure::parse_angle(text).is_ok(), "{}", param.path),
                    Kind::Choice(words) | Kind::Words(words) => assert!(words.contains(&text), "{}", param.path),
                    Kind::Count(low, high) => {
                        assert!((low..=high).contains(&text.parse().expect(param.path)), "{}", param.path)
                    }
                    Kind::Share(low, high) | Kind::Number(low, high) => {
                        assert!((low..=high).contains(&text.parse().expect(param.path)), "{}", param.path)
                    }
                    Kind::Unit(unit, low, high) => {
                        let number = text.strip_suffix(unit).expect(param.path).trim();
                        assert!((low..=high).contains(&number.parse().expect(param.path)), "{}", param.path)
                    }
                    // That these read is seen below, where they are written out.
                    Kind::Grade | Kind::Friction | Kind::Stock => {}
                    Kind::Flag => assert!(["true", "false"].contains(&text), "{}", param.path),
                    _ => panic!("{} has a default that nobody reads", param.path),
                }
            }
        }
    }
}

/// A default that is written out changes nothing.
#[test]
fn writing_a_default_out_changes_nothing() {
    let bare = "name = \"T\"\nstock = \"birch plywood 3 mm\"\n[[counter]]\nname = \"a\"\nvalues = \"0..12\"\n";
    let usual = format!("{:?}", common::look(bare).laid);
    for param in all(parameters::DIAL_FILE) {
        let Default::Fixed(text) = param.default else {
            continue;
        };
        // These have a meaning only beside another choice, and are told so.
        if ["cover.sides", "wheel.scallop_depth", "window.neighbour_share"].contains(&param.path) {
            continue;
        }
        let value = if matches!(param.kind, Kind::Flag | Kind::Count(..) | Kind::Share(..) | Kind::Number(..)) {
            text.into()
        } else if matches!(param.kind, Kind::Words(_)) {
            format!("[\"{text}\"]")
        } else {
            format!("\"{text}\"")
        };
        let written = format!("{} = {value}\n{bare}", param.path);
        assert_eq!(format!("{:?}", common::look(&written).laid), usual, "{}", param.path);
    }
}

/// The schema against the examples, by an independent reader of JSON Schema.
#[test]
fn the_schema_takes_the_examples_and_refuses_a_slip() {
    let schema = design::schema();
    let check = jsonschema::validator_for(&schema).expect("a schema");
    for (name, text) in examples() {
        let value: serde_json::Value = toml::from_str(&text).expect("reads");
        let errors: Vec<String> = check.iter_errors(&value).map(|error| error.to_string()).collect();
        assert!(errors.is_empty(), "{name}: {errors:?}");
        let mut slip = value.clone();
        slip["mark"]["hieght"] = "5 mm".into();
        assert!(!check.is_valid(&slip), "{name}");
    }
}

#[test]
fn a_counters_own_values_come_before_the_dials() {
    let text = "name = \"T\"\nstock = \"birch plywood 3 mm\"\n[mark]\nheight = \"4 mm\"\n[[counter]]\nname = \"a\"\nvalues = \"0..5\"\n[[counter]]\nname = \"b\"\nvalues = \"0..5\"\nmark = { height = \"1/4 in\" }\n";
    let design = design::read(text, &workshop::starter()).expect("reads");
    assert_eq!(design.counters.iter().map(|one| one.mark.height).collect::<Vec<_>>(), [4.0, 6.35]);
    assert_eq!(&text[design.spans.get("counter[1].mark.height").expect("a span")], "\"1/4 in\"");
}

/// TOML writes whole numbers in several ways; a mark shows the number, and none is rounded on its way.
#[test]
fn whole_numbers_are_read_exactly() {
    let text = "name = \"T\"\nstock = \"birch plywood 3 mm\"\n[[counter]]\nname = \"a\"\nvalues = [0x10, 1_000, 9007199254740993, -9223372036854775808]\n";
    let design = design::read(text, &workshop::starter()).expect("reads");
    let marks: Vec<String> = design.counters[0]
        .marks
        .iter()
        .map(|mark| match mark {
            design::Motif::Text(text) => text.clone(),
            design::Motif::Symbol(symbol) => symbol.name().to_owned(),
        })
        .collect();
    assert_eq!(marks, ["16", "1000", "9007199254740993", "\u{2212}9223372036854775808"]);
}

/// A stock of the file takes the limits of thickness that it does not give from the material's standard, and says so.
#[test]
fn a_stock_says_where_its_limits_come_from() {
    let stocks = |layer: &str| {
        let text = format!(
            "name = \"T\"\nstock = \"mine\"\n[stocks.mine]\nlayers = [{{ material = \"birch plywood\", thickness = \"4 mm\"{layer} }}]\nsource = \"bought in May\"\n[[counter]]\nname = \"a\"\nvalues = \"0..5\"\n"
        );
        let design = design::read(&text, &workshop::starter()).expect("reads");
        design.cover.stock
    };
    // EN 315, sanded, 4 mm: 3.48 to 4.32 mm.
    let usual = stocks("");
    assert!((usual.thinnest() - 3.48).abs() < 1e-9 && (usual.thickest() - 4.32).abs() < 1e-9);
    assert_eq!(usual.source, "bought in May; limits of thickness: EN 315");
    let measured = stocks(", thinner = \"0.1 mm\", thicker = \"0.2 mm\"");
    assert!((measured.thinnest() - 3.9).abs() < 1e-9 && (measured.thickest() - 4.2).abs() < 1e-9);
    assert_eq!(measured.source, "bought in May");
}

proptest! {
    #![proptest_config(ProptestConfig { cases: 400, ..ProptestConfig::default() })]

    /// A new file always reads, whatever is counted.
    #[test]
    fn new_files_read(name in "[^\\p{C}]{1,20}", counter in "\\PC{1,20}", first in -30i64..30, stops in 1i64..99) {
        prop_assume!(!name.trim().is_empty() && !counter.trim().is_empty());
        let text = design::new_file(&name, &[(counter, format!("{first}..{}", first + stops)), ("sky".into(), "calm, gale".into())], "bamboo 3 mm");
        let read = design::read(&text, &workshop::starter());
        prop_assert!(read.is_ok(), "{text}\n{read:?}");
    }

    /// Any text is answered: with a design, or with at least one mistake whose places lie in the text.
    #[test]
    fn any_text_is_answered(text in ".{0,200}") {
        answered(&text)?;
    }

    #[test]
    fn any_bytes_are_answered(bytes in prop::collection::vec(any::<u8>(), 0..200)) {
        answered(&String::from_utf8_lossy(&bytes))?;
    }

    /// So is an example with something broken in it.
    #[test]
    fn broken_examples_are_answered(which in any::<prop::sample::Index>(), cuts in prop::collection::vec((any::<prop::sample::Index>(), 0usize..12, piece()), 1..5)) {
        let mut letters: Vec<char> = which.get(&EXAMPLES).1.chars().collect();
        for (at, cut, put) in cuts {
            let from = at.index(letters.len() + 1);
            let to = (from + cut).min(letters.len());
            letters.splice(from..to, put.chars());
        }
        answered(&letters.iter().collect::<String>())?;
    }

    /// So is any value of any known key.
    #[test]
    fn any_value_of_a_known_key_is_answered(pairs in prop::collection::vec((prop::sample::select(paths()), piece()), 1..6)) {
        let pairs: String = pairs.iter().map(|(path, value)| format!("{path} = {value}\n")).collect();
        answered(&format!("counter = [{{ name = \"a\", values = \"0..3\" }}]\n{pairs}"))?;
    }
}

static EXAMPLES: LazyLock<Vec<(String, String)>> = LazyLock::new(examples);

fn paths() -> Vec<&'static str> {
    all(parameters::DIAL_FILE).map(|param| param.path).collect()
}

/// What a slip of the hand may put into a file.
fn piece() -> impl Strategy<Value = String> {
    prop_oneof![
        "\\PC{0,6}",
        any::<char>().prop_map(String::from),
        prop::sample::select(vec![
            "[",
            "]",
            "[[",
            "]]",
            "{",
            "}",
            "\"",
            "'",
            "\"\"\"",
            "=",
            ",",
            ".",
            "#",
            "\n",
            "\\",
            "\r",
            "\u{feff}",
            "0",
            "-1",
            "1e400",
            "1e300",
            "nan",
            "-inf",
            "0x7fff_ffff_ffff_ffff",
            "-9223372036854775808",
            "true",
            "1979-05-27",
            "[]",
            "{}",
            "[[counter]]\n",
            "[mark]\n",
            "[stocks.\"\"]\n",
            "\"0..24\"",
            "\"1/0 in\"",
            "\"99999999999999999999 mm\"",
            "\"-9223372036854775808..9223372036854775807\"",
            "counter = 3\n",
            "stocks = []\n",
            "= [1, [2, [3]]]",
        ])
        .prop_map(String::from),
    ]
}

/// Lists in lists in lists are refused before they exhaust the stack.
#[test]
fn deep_nesting_is_refused() {
    for (open, close) in [("[", "]"), ("{a=", "}")] {
        let text = format!("name = {}1{}", open.repeat(20_000), close.repeat(20_000));
        assert!(design::read(&text, &workshop::starter()).is_err());
        answered(&text).expect("is answered");
    }
}

fn answered(text: &str) -> Result<(), TestCaseError> {
    let (dial, shelf) = (try_look(text).err(), workshop::read(text).err());
    for mistakes in dial.into_iter().chain(shelf) {
        prop_assert!(!mistakes.is_empty());
        let shown = design::render_mistakes("dial.toml", text, &mistakes, false);
        prop_assert!(!shown.is_empty());
        for one in &mistakes {
            prop_assert!(!one.what.is_empty() && !one.help.is_empty(), "{one:?}");
        }
        for label in mistakes.iter().flat_map(|one| one.at.iter().chain(&one.also)) {
            prop_assert!(text.get(label.span.clone()).is_some(), "{label:?}");
        }
    }
    Ok(())
}
