//! The report against its published schema, read by an independent validator.

mod common;

use common::{examples, ready};
use serde_json::{Value, json};

#[test]
fn every_report_keeps_to_its_schema() {
    let report = jsonschema::validator_for(&press::report_schema()).expect("a schema");
    let steps = jsonschema::validator_for(&press::job_schema()).expect("a schema");
    let more = "name = \"More\"\nstock = \"birch plywood 4 mm\"\n[magnet]\nseat = \"enclosed\"\n[click]\ndiameter = \"3 mm\"\n[[counter]]\nname = \"ice\"\nvalues = \"0..9\"\nwindow = { width = \"4 mm\" }\nwheel = { radius = \"25 mm\" }\n";
    let all = examples().into_iter().chain([("more".to_owned(), more.to_owned())]);
    for (name, text) in all {
        let made = ready(&text);
        let (figures, job) = (press::report(&made.looked), press::job_report(&made.job));
        let wrong: Vec<String> =
            report.iter_errors(&figures).map(|error| format!("{}: {error}", error.instance_path())).collect();
        assert!(wrong.is_empty(), "{name}: {wrong:?}");
        assert!(steps.is_valid(&job), "{name}");
        assert!(units_are_named(&figures, ""), "{name}");
    }
    // And it refuses what is no report.
    let mut slip = press::report(&ready(&examples()[0].1).looked);
    slip["cover"]["width_mm"] = json!("wide");
    assert!(!report.is_valid(&slip));
    assert!(!report.is_valid(&json!({ "schema_version": 2 })));
}

/// Every number that is no count stands under a name that ends in a unit.
fn units_are_named(value: &Value, name: &str) -> bool {
    const UNITS: [&str; 14] = [
        "_mm",
        "_mm2",
        "_deg",
        "_n",
        "_g",
        "_m",
        "_t",
        "_share",
        "_n_mm",
        "_n_per_mm",
        "_kg2_mm2",
        "_count",
        "_arcmin",
        "_ratio",
    ];
    // Bare by nature: coefficients, unit vectors, spreads under a name with a unit.
    const BARE: [&str; 8] = [
        "friction",
        "push_up",
        "next_mark_from",
        "ratio",
        "face_l_star",
        "engraved_l_star",
        "ciede2000",
        "stroke_to_height",
    ];
    match value {
        Value::Number(number) => {
            number.is_u64() || UNITS.iter().any(|unit| name.ends_with(unit)) || BARE.contains(&name)
        }
        Value::Array(all) => all.iter().all(|one| units_are_named(one, name)),
        Value::Object(all) => all.iter().all(|(key, one)| {
            let own = UNITS.iter().any(|unit| key.ends_with(unit)) || BARE.contains(&key.as_str());
            let inner = if own { key } else { name };
            let named = units_are_named(one, inner);
            assert!(named, "{key} has no unit");
            named
        }),
        _ => true,
    }
}
