//! Paths of values in a maker's file, as `mark.height` or `counter[0].window.angle`.

use dial::design::parameters::DIAL_FILE;
use dial::design::table::{Groups, Kind, Param, all};
use serde_json::{Value as Json, json};
use toml_edit::{ArrayOfTables, DocumentMut, Item, TableLike, Value};

/// One step along a path.
#[derive(Clone, Debug, PartialEq)]
pub(super) enum Part<'a> {
    Key(&'a str),
    Nth(usize),
}

/// The steps of a path; `None` if it is not one. A key that is a name of the maker's own stands in quotes, as in
/// `stocks["oak 3.2 mm"].kerf`.
pub(super) fn parts(path: &str) -> Option<Vec<Part<'_>>> {
    let mut parts = Vec::new();
    let mut rest = path;
    loop {
        let end = rest.find(|c: char| !c.is_ascii_alphanumeric() && c != '_').unwrap_or(rest.len());
        let (key, after) = rest.split_at(end);
        if key.is_empty() {
            return None;
        }
        parts.push(Part::Key(key));
        rest = after;
        while let Some(inner) = rest.strip_prefix('[') {
            if let Some(named) = inner.strip_prefix('"') {
                let (name, after) = named.split_once("\"]")?;
                parts.push(Part::Key(name));
                rest = after;
            } else {
                let (index, after) = inner.split_once(']')?;
                parts.push(Part::Nth(index.parse().ok()?));
                rest = after;
            }
        }
        if rest.is_empty() {
            return Some(parts);
        }
        rest = rest.strip_prefix('.')?;
    }
}

/// The parameter of a path of a dial file, through lists: `counter[1].mark.height` is `mark.height` of a counter.
pub fn param(path: &str) -> Option<&'static Param> {
    param_of(DIAL_FILE, path)
}

/// The same in a file of these parameters.
pub(super) fn param_of(groups: Groups, path: &str) -> Option<&'static Param> {
    let Some((list, rest)) = path.split_once('[') else {
        return all(groups).find(|param| param.path == path);
    };
    let holder = all(groups).find(|param| param.path == list)?;
    if let (Kind::Named(inner), Some(named)) = (holder.kind, rest.strip_prefix('"')) {
        let (_, rest) = named.split_once("\"]")?;
        return if rest.is_empty() { Some(holder) } else { param_of(inner, rest.strip_prefix('.')?) };
    }
    let (index, rest) = rest.split_once(']')?;
    index.parse::<usize>().ok()?;
    match holder.kind {
        Kind::List(inner) => param_of(inner, rest.strip_prefix('.')?),
        _ => None,
    }
}

/// What is written at a place, as TOML without the blanks and comments around it; `None` when nothing is.
pub fn written(text: &str, path: &str) -> Option<String> {
    let document: DocumentMut = text.parse().ok()?;
    Some(Here::at(&document, path)?.toml())
}

/// The value at a place of a file as JSON; `None` when nothing is written there, or a table.
pub(crate) fn value_at(document: &DocumentMut, path: &str) -> Option<Json> {
    match Here::at(document, path)? {
        Here::Value(value) => Some(json_of(value)),
        Here::Table(_) | Here::Tables(_) => None,
    }
}

/// How many tables a list holds.
pub(crate) fn count_at(document: &DocumentMut, path: &str) -> usize {
    match Here::at(document, path) {
        Some(Here::Tables(tables)) => tables.len(),
        Some(Here::Value(Value::Array(list))) => list.len(),
        _ => 0,
    }
}

fn json_of(value: &Value) -> Json {
    match value {
        Value::String(text) => json!(text.value()),
        Value::Integer(whole) => json!(whole.value()),
        Value::Float(float) => json!(float.value()),
        Value::Boolean(flag) => json!(flag.value()),
        Value::Datetime(date) => json!(date.value().to_string()),
        Value::Array(list) => Json::Array(list.iter().map(json_of).collect()),
        Value::InlineTable(_) => Json::Null,
    }
}

/// A place in a document.
enum Here<'a> {
    Table(&'a dyn TableLike),
    Tables(&'a ArrayOfTables),
    Value(&'a Value),
}

impl<'a> Here<'a> {
    fn at(document: &'a DocumentMut, path: &str) -> Option<Here<'a>> {
        let mut here = Here::Table(document.as_table());
        for part in parts(path)? {
            here = here.step(&part)?;
        }
        Some(here)
    }

    fn of(item: &'a Item) -> Option<Here<'a>> {
        match item {
            Item::None => None,
            Item::Table(table) => Some(Here::Table(table)),
            Item::ArrayOfTables(tables) => Some(Here::Tables(tables)),
            Item::Value(value) => Some(Here::Value(value)),
        }
    }

    fn step(&self, part: &Part) -> Option<Here<'a>> {
        match (self, part) {
            (Here::Table(table), Part::Key(key)) => Here::of(table.get(key)?),
            (Here::Tables(tables), Part::Nth(n)) => tables.get(*n).map(|table| Here::Table(table)),
            (Here::Value(Value::InlineTable(table)), Part::Key(key)) => table.get(key).map(Here::Value),
            (Here::Value(Value::Array(list)), Part::Nth(n)) => list.get(*n).map(Here::Value),
            _ => None,
        }
    }

    fn toml(&self) -> String {
        match self {
            Here::Table(table) => {
                table.iter().filter_map(|(key, item)| Some(format!("{key} = {}\n", Here::of(item)?.toml()))).collect()
            }
            Here::Tables(tables) => tables.iter().map(|table| Here::Table(table).toml() + "\n").collect(),
            Here::Value(value) => {
                let mut plain = (*value).clone();
                plain.decor_mut().clear();
                plain.to_string()
            }
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn paths_are_read_as_the_heart_writes_them() {
        assert_eq!(
            parts("counter[1].window.angle"),
            Some(vec![Part::Key("counter"), Part::Nth(1), Part::Key("window"), Part::Key("angle")])
        );
        assert_eq!(
            parts("stocks[\"oak 3.2 mm\"].layers[0].thickness"),
            Some(vec![
                Part::Key("stocks"),
                Part::Key("oak 3.2 mm"),
                Part::Key("layers"),
                Part::Nth(0),
                Part::Key("thickness")
            ])
        );
        for bad in
            ["", ".", "a[\"b]", "a[\"b\"", "a.", "a[\"b\"]c", "a..b", "a[", "a[x]", "a[0]b", "a b", "../a", "a[-1]"]
        {
            assert_eq!(parts(bad), None, "{bad}");
        }
    }

    #[test]
    fn parameters_are_found_through_lists() {
        assert_eq!(param("mark.height").map(|param| param.path), Some("mark.height"));
        assert_eq!(param("counter[3].mark.height").map(|param| param.path), Some("mark.height"));
        assert_eq!(param("cover.art[0].at").map(|param| param.path), Some("at"));
        assert_eq!(param("stocks[\"oak 3.2 mm\"].kerf").map(|param| param.path), Some("kerf"));
        assert_eq!(param("stocks[\"oak\"].layers[1].thickness").map(|param| param.path), Some("thickness"));
        for unknown in [
            "stocks[\"oak\"].mark",
            "stocks[0].kerf",
            "mark",
            "counter[0]",
            "counter[x].name",
            "mark[0].height",
            "mark.colour",
        ] {
            assert!(param(unknown).is_none(), "{unknown}");
        }
    }

    #[test]
    fn what_is_written_is_found_in_every_notation() {
        let text = "mark.height = \"4 mm\" # dotted\ncounter = [{ name = \"a\", window = { angle = \"90 deg\" } }]\n[cover]\nart = [{ text = \"x\", at = [\"0 mm\", \"1 mm\"] }]\n";
        assert_eq!(written(text, "mark.height").as_deref(), Some("\"4 mm\""));
        assert_eq!(written(text, "counter[0].window.angle").as_deref(), Some("\"90 deg\""));
        assert_eq!(written(text, "cover.art[0].at").as_deref(), Some("[\"0 mm\", \"1 mm\"]"));
        assert_eq!(written(text, "counter[1].name"), None);
    }
}
