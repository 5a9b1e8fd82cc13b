//! The workshop's own values: of its machine, and of what its hands find easy.

use super::order;
use crate::store::value_at;
use dial::design::parameters::WORKSHOP_FILE;
use dial::design::table::{Kind, Param, all};
use measure::Units;
use serde_json::{Map, Value, json};
use toml_edit::DocumentMut;

/// Every parameter of the workshop file but its lists of stocks and magnets.
fn plain() -> impl Iterator<Item = &'static Param> {
    all(WORKSHOP_FILE).filter(|param| !matches!(param.kind, Kind::List(_) | Kind::Named(_)))
}

/// What the starter workshop says of a value, as its file writes it.
fn starters(starter: &DocumentMut, param: &Param) -> Option<String> {
    value_at(starter, param.path)?.as_str().map(str::to_owned)
}

fn starter() -> DocumentMut {
    workshop::STARTER.parse().unwrap_or_default()
}

/// The parameter table of these values for the page. Where nothing is fixed, the starter workshop's value is the usual one.
pub(super) fn parameters() -> Value {
    let starter = starter();
    let each = plain().map(|param| {
        let mut told = order::of(param);
        if let Some(usual) = starters(&starter, param) {
            told["usual"] = json!(usual);
            told["derived"] = Value::Null;
        }
        (param.path.to_owned(), told)
    });
    Value::Object(each.collect())
}

/// Every value: what is written, what holds, and where that comes from. None of a text that is no TOML.
pub(crate) fn workshop_order(text: &str, units: Units) -> Value {
    let Ok(document) = text.parse::<DocumentMut>() else { return json!({}) };
    let starter = starter();
    let mut values = Map::new();
    for param in plain() {
        let value = match (value_at(&document, param.path), starters(&starter, param)) {
            (None, Some(text)) => {
                json!({ "written": Value::Null, "shown": order::usual(param, &text, units), "from": "usual" })
            }
            (own, _) => order::value(param, own, None, None, units),
        };
        values.insert(param.path.to_owned(), value);
    }
    Value::Object(values)
}

#[cfg(test)]
mod tests {
    use super::*;

    /// A value that is not written is the one that the workshop's reader takes, for every parameter.
    #[test]
    fn what_is_usual_is_what_holds() {
        let order = workshop_order("", Units::Millimetres);
        let table = parameters();
        let written: String = plain()
            .map(|param| {
                let usual = table[param.path]["usual"].as_str().unwrap_or_else(|| panic!("{} has one", param.path));
                assert_eq!(order[param.path]["from"], "usual", "{}", param.path);
                assert_eq!(order[param.path]["shown"], usual, "{}", param.path);
                let bare = matches!(param.kind, Kind::Number(..));
                format!("{} = {}\n", param.path, if bare { usual.to_owned() } else { format!("{usual:?}") })
            })
            .collect();
        let read = workshop::read(&written).unwrap_or_else(|mistakes| panic!("{written}{mistakes:?}"));
        let starter = workshop::starter();
        assert_eq!((read.machine, read.feel), (starter.machine, starter.feel));
        let inches = workshop_order("[machine]\nbed_height = \"20 in\"\n", Units::Inches);
        assert_eq!(inches["machine.bed_height"]["shown"], "20 in");
        assert_eq!(inches["machine.bed_width"]["shown"], measure::show(400.0, Units::Inches));
    }
}
