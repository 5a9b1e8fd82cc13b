//! Changes at one place of a maker's file; comments, order and notation of everything else stay.

use super::path::{self, Part};
use dial::design::parameters::DIAL_FILE;
use dial::design::table::{Groups, Kind, Param};
use serde::{Deserialize, Serialize};
use serde_json::Value as Json;
use toml_edit::{Array, DocumentMut, InlineTable, Item, RawString, Table, TableLike, Value};

/// Tables in which a file describes things of its own by name.
const NAMED: [&str; 2] = ["stocks", "magnets"];

/// One change.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
#[serde(tag = "do", rename_all = "lowercase")]
pub enum Change {
    /// Writes a value.
    Set {
        /// Where.
        path: String,
        /// What, in the notation of the dial file: lengths as text with their unit.
        value: Json,
    },
    /// Takes a value out, so that its default holds.
    Leave {
        /// Where.
        path: String,
    },
    /// Adds a table to a list.
    Add {
        /// The list, as `counter`.
        path: String,
        /// The table's values by key.
        value: serde_json::Map<String, Json>,
    },
    /// Takes a table out of a list.
    Remove {
        /// The table, as `counter[1]`.
        path: String,
    },
}

/// Why a change cannot be made, in words for the maker.
#[derive(Clone, Debug, PartialEq)]
pub struct Unfit {
    /// What is wrong.
    pub what: String,
    /// What to do.
    pub help: String,
}

fn unfit(what: impl Into<String>, help: impl Into<String>) -> Unfit {
    Unfit { what: what.into(), help: help.into() }
}

impl Change {
    /// The place it changes.
    pub fn place(&self) -> &str {
        match self {
            Change::Set { path, .. } | Change::Leave { path } | Change::Add { path, .. } | Change::Remove { path } => {
                path
            }
        }
    }
}

/// A dial file's text with changes made.
///
/// # Errors
/// The first that does not fit: the file is not TOML, there is no such parameter, or the value is not of its kind.
pub fn apply(text: &str, changes: &[Change]) -> Result<String, Unfit> {
    apply_to(DIAL_FILE, text, changes)
}

/// The same of a file of these parameters.
///
/// # Errors
/// As for a dial file.
pub(crate) fn apply_to(groups: Groups, text: &str, changes: &[Change]) -> Result<String, Unfit> {
    let mut document: DocumentMut = text.parse().map_err(|_| {
        unfit("the file is not TOML as it stands", "mend it in writing first; its mistakes are shown there")
    })?;
    let opening = workshop::opening_comments(&mut document);
    for change in changes {
        one(groups, &mut document, change)?;
    }
    Ok(workshop::below(opening, &document.to_string()))
}

fn one(groups: Groups, document: &mut DocumentMut, change: &Change) -> Result<(), Unfit> {
    let place = change.place();
    let steps = path::parts(place).ok_or_else(|| unfit(format!("`{place}` is not a place of the file"), ""))?;
    let (last, above) = steps.split_last().ok_or_else(|| unfit("no place was named", ""))?;
    match (change, last) {
        (Change::Set { path, value }, Part::Key(key)) => {
            let param = known(groups, path)?;
            let value = toml_of(param, value)?;
            set(table(document.as_table_mut(), above, true)?, key, value);
            Ok(())
        }
        (Change::Leave { path }, Part::Key(key)) => {
            known(groups, path)?;
            if let Ok(table) = table(document.as_table_mut(), above, false) {
                let left_over = leave(table, key);
                comments_to_head(document, above, &left_over);
                drop_empty(document, above);
            }
            Ok(())
        }
        (Change::Add { path, value }, Part::Key(key)) => {
            let param = known(groups, path)?;
            let Kind::List(inner) = param.kind else {
                return Err(unfit(format!("`{path}` is not a list of tables"), ""));
            };
            let mut pairs = Vec::new();
            for (name, value) in value {
                let key = dial::design::table::find(inner, name)
                    .ok_or_else(|| unfit(format!("`{name}` is not known in `{path}`"), ""))?;
                pairs.push((name.as_str(), toml_of(key, value)?));
            }
            add(table(document.as_table_mut(), above, true)?, key, pairs, above.is_empty())
        }
        (Change::Remove { .. }, Part::Nth(n)) => remove(document, above, *n),
        _ => Err(unfit(format!("`{place}` cannot be changed like this"), "")),
    }
}

fn known(groups: Groups, place: &str) -> Result<&'static Param, Unfit> {
    path::param_of(groups, place).ok_or_else(|| unfit(format!("`{place}` is not a parameter of the file"), ""))
}

/// The table that the steps lead to; `make` makes those that are missing: with a head of its own in the file itself,
/// in line within another table.
fn table<'a>(root: &'a mut Table, steps: &[Part], make: bool) -> Result<&'a mut dyn TableLike, Unfit> {
    let missing = || unfit("there is no such place in the file", "it may have been changed meanwhile");
    let mut here: &mut dyn TableLike = root;
    let mut steps = steps.iter().peekable();
    let mut top = true;
    while let Some(step) = steps.next() {
        let Part::Key(key) = step else { return Err(missing()) };
        if here.get(key).is_none() {
            if !make || matches!(steps.peek(), Some(Part::Nth(_))) {
                return Err(missing());
            }
            // Each thing that has a name has a head of its own, and the table of them none.
            let mut new = Table::new();
            new.set_implicit(NAMED.contains(key));
            let new = if top { Item::Table(new) } else { Item::Value(InlineTable::new().into()) };
            here.insert(key, new);
        }
        top = top && NAMED.contains(key);
        let item = here.get_mut(key).ok_or_else(missing)?;
        here = match steps.peek() {
            Some(Part::Nth(n)) => {
                steps.next();
                match item {
                    Item::ArrayOfTables(tables) => tables.get_mut(*n).ok_or_else(missing)?,
                    Item::Value(Value::Array(list)) => {
                        list.get_mut(*n).and_then(Value::as_inline_table_mut).ok_or_else(missing)?
                    }
                    _ => return Err(missing()),
                }
            }
            _ => item.as_table_like_mut().ok_or_else(missing)?,
        };
    }
    Ok(here)
}

/// Writes a value; what stood around the old one, a comment above all, stays.
fn set(table: &mut dyn TableLike, key: &str, mut value: Value) {
    match table.get_mut(key) {
        Some(item) => {
            if let Some(old) = item.as_value() {
                *value.decor_mut() = old.decor().clone();
            }
            *item = Item::Value(value);
        }
        None => {
            table.insert(key, Item::Value(value));
        }
    }
}

/// Takes a value out. The comments above it and beside it go to what stands below, or to what stands above it; returns
/// those for which there is neither.
fn leave(table: &mut dyn TableLike, key: &str) -> String {
    let keys: Vec<String> = table.iter().map(|(key, _)| key.to_owned()).collect();
    let Some(at) = keys.iter().position(|one| one == key) else { return String::new() };
    let text = |raw: Option<&RawString>| raw.and_then(|raw| raw.as_str()).unwrap_or_default().to_owned();
    let above = text(table.key(key).and_then(|key| key.leaf_decor().prefix()));
    let beside = text(table.get(key).and_then(Item::as_value).and_then(|value| value.decor().suffix()));
    table.remove(key);
    let comments: Vec<&str> =
        above.lines().chain(beside.lines()).map(str::trim).filter(|line| line.starts_with('#')).collect();
    let comments = comments.join("\n");
    if comments.is_empty() {
        return comments;
    }
    let next =
        keys.get(at + 1).filter(|next| !matches!(table.get(next), Some(Item::Table(_) | Item::ArrayOfTables(_))));
    if let Some(mut next) = next.and_then(|next| table.key_mut(next)) {
        let old = text(next.leaf_decor().prefix());
        next.leaf_decor_mut().set_prefix(format!("{comments}\n{old}"));
        return String::new();
    }
    let before = at.checked_sub(1).and_then(|at| keys.get(at)).and_then(|before| table.get_mut(before));
    if let Some(value) = before.and_then(Item::as_value_mut) {
        let old = text(value.decor().suffix());
        value.decor_mut().set_suffix(format!("{old}\n{comments}"));
        return String::new();
    }
    comments
}

/// Comments that no value is left to hang on stand below the head of their table, which stays for their sake.
fn comments_to_head(document: &mut DocumentMut, steps: &[Part], comments: &str) {
    if steps.is_empty() && !comments.is_empty() {
        let old = document.trailing().as_str().unwrap_or_default().to_owned();
        document.set_trailing(format!("{comments}\n{old}"));
    }
    let [Part::Key(key)] = steps else { return };
    if let Some(table) = document.get_mut(key).and_then(Item::as_table_mut).filter(|_| !comments.is_empty()) {
        let old = table.decor().suffix().and_then(|raw| raw.as_str()).unwrap_or_default().to_owned();
        table.decor_mut().set_suffix(format!("{old}\n{comments}"));
    }
}

/// Takes out a table that nothing is left in, unless comments hang on it.
fn drop_empty(document: &mut DocumentMut, steps: &[Part]) {
    let Some((Part::Key(key), above)) = steps.split_last() else { return };
    let Ok(parent) = table(document.as_table_mut(), above, false) else { return };
    let bare = |decor: Option<&RawString>| decor.and_then(|raw| raw.as_str()).is_none_or(|text| !text.contains('#'));
    let empty = match parent.get(key) {
        Some(Item::Table(table)) => {
            table.is_empty() && bare(table.decor().prefix()) && bare(table.decor().suffix()) && !table.is_dotted()
        }
        Some(Item::Value(Value::InlineTable(table))) => table.is_empty(),
        _ => false,
    };
    if empty {
        leave(parent, key);
    }
}

fn add(parent: &mut dyn TableLike, key: &str, pairs: Vec<(&str, Value)>, top: bool) -> Result<(), Unfit> {
    let in_line = |pairs: Vec<(&str, Value)>| {
        let mut table = InlineTable::new();
        for (name, value) in pairs {
            table.insert(name, value);
        }
        Value::InlineTable(table)
    };
    if parent.get(key).is_none() {
        let new = if top { Item::ArrayOfTables(Default::default()) } else { Item::Value(Array::new().into()) };
        parent.insert(key, new);
    }
    match parent.get_mut(key) {
        Some(Item::ArrayOfTables(tables)) => {
            let mut table = Table::new();
            for (name, value) in pairs {
                table.insert(name, Item::Value(value));
            }
            table.decor_mut().set_prefix("\n");
            tables.push(table);
            Ok(())
        }
        Some(Item::Value(Value::Array(list))) => {
            list.push(in_line(pairs));
            Ok(())
        }
        _ => Err(unfit(format!("`{key}` is not a list of tables"), "mend it in writing")),
    }
}

fn remove(document: &mut DocumentMut, steps: &[Part], n: usize) -> Result<(), Unfit> {
    let missing = || unfit("there is no such place in the file", "it may have been changed meanwhile");
    let Some((Part::Key(key), above)) = steps.split_last() else { return Err(missing()) };
    let parent = table(document.as_table_mut(), above, false)?;
    match parent.get_mut(key) {
        Some(Item::ArrayOfTables(tables)) if n < tables.len() => {
            tables.remove(n);
        }
        Some(Item::Value(Value::Array(list))) if n < list.len() => {
            list.remove(n);
            if list.is_empty() {
                leave(parent, key);
            }
        }
        _ => return Err(missing()),
    }
    Ok(())
}

/// A value as the file writes it.
fn toml_of(param: &Param, value: &Json) -> Result<Value, Unfit> {
    let wrong = || unfit(format!("`{}` is {}", param.path, param.kind.words()), "");
    let text = |value: &Json| value.as_str().map(Value::from).ok_or_else(wrong);
    let list = |value: &Json, each: &dyn Fn(&Json) -> Result<Value, Unfit>| {
        let items = value.as_array().ok_or_else(wrong)?;
        Ok(Value::Array(items.iter().map(each).collect::<Result<Array, Unfit>>()?))
    };
    match param.kind {
        Kind::Text
        | Kind::Length(..)
        | Kind::Angle
        | Kind::Unit(..)
        | Kind::Grade
        | Kind::Friction
        | Kind::Choice(_)
        | Kind::Symbol
        | Kind::Stock
        | Kind::Colour => text(value),
        Kind::Share(..) | Kind::Number(..) => value.as_f64().map(Value::from).ok_or_else(wrong),
        Kind::Count(..) => value.as_i64().map(Value::from).ok_or_else(wrong),
        Kind::Flag => value.as_bool().map(Value::from).ok_or_else(wrong),
        Kind::Point => list(value, &text),
        Kind::Points => list(value, &|point| list(point, &text)),
        Kind::Symbols | Kind::Words(_) => list(value, &text),
        Kind::Values => match value {
            Json::String(_) => text(value),
            _ => list(value, &|mark| match mark.as_i64() {
                Some(whole) => Ok(Value::from(whole)),
                None => text(mark),
            }),
        },
        Kind::List(_) | Kind::Named(_) => Err(unfit(format!("`{}` is changed in writing", param.path), "")),
    }
}
