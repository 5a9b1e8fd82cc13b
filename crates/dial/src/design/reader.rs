//! Reads a file against a table of parameters: every key known, every value of its kind and within its limits, all mistakes at once.

use super::Motif;
use super::nearest::nearest;
use super::syntax;
use super::table::{Default, Groups, Kind, Param, all};
use super::value::{self, Wrong, example, kind_of, wrong};
use crate::spans::{Label, Mistake, Spans};
use lettering::Symbol;
use measure::Interval;
use outline::Point;
use std::collections::BTreeMap;
use std::ops::Range;
use toml::Spanned;
use toml::de::{DeTable, DeValue};

/// What a file says, by full path: `counter[1].mark.height`.
#[derive(Debug, Default)]
pub(crate) struct Reading {
    pub(crate) values: BTreeMap<String, Value>,
    pub(crate) spans: Spans,
    pub(crate) mistakes: Vec<Mistake>,
    /// Whether the file is TOML only in parts.
    pub(crate) broken: bool,
}

/// A value, checked.
#[derive(Clone, Debug)]
pub(crate) enum Value {
    Text(String),
    /// A length in mm, an angle in radians, a share, or a count.
    Number(f64),
    /// Remanence in T, or a coefficient of friction.
    Interval(Interval),
    Flag(bool),
    Point(Point),
    Points(Vec<Point>),
    Motifs(Vec<Motif>),
    Symbol(Symbol),
    /// Some of the words known for it.
    Words(Vec<String>),
    /// A list of tables: how many.
    Tables(usize),
    /// Tables by name.
    Names(Vec<String>),
}

type Span = Range<usize>;

/// Reads a file.
pub(crate) fn read(text: &str, groups: Groups) -> Reading {
    let (table, errors) = DeTable::parse_recoverable(text);
    let mut reading = Reading { broken: !errors.is_empty(), ..Reading::default() };
    let slips = syntax::mistakes(&errors, text);
    reading.table(table.get_ref(), table.span(), "", "", groups);
    reading.mistakes.retain(|mistake| !syntax::follows(mistake, &slips, text));
    reading.mistakes.extend(slips);
    reading
}

impl Reading {
    fn mistake(&mut self, span: Span, what: impl Into<String>, words: impl Into<String>, help: impl Into<String>) {
        let at = Some(Label { span, words: words.into() });
        self.mistakes.push(Mistake { what: what.into(), at, also: Vec::new(), help: help.into() });
    }

    /// Reads one table. `base` is the full path of the table that the groups belong to, `inner` the path within it.
    fn table(&mut self, table: &DeTable, span: Span, base: &str, inner: &str, groups: Groups) {
        for (key, value) in table {
            let name = key.get_ref().as_ref();
            let path = format!("{inner}{name}");
            let full = format!("{base}{path}");
            if let Some(param) = all(groups).find(|param| param.path == path) {
                self.param(param, &full, value);
            } else if all(groups).any(|param| param.path.starts_with(&format!("{path}."))) {
                match value.get_ref() {
                    DeValue::Table(table) => {
                        self.spans.put(full, key.span());
                        self.table(table, value.span(), base, &format!("{path}."), groups);
                    }
                    other => {
                        let help = format!("write `[{path}]` and its keys below it, or `{name} = {{ ... }}`");
                        self.mistake(
                            value.span(),
                            format!("{} is a table", told(&full)),
                            format!("this is {}", kind_of(other)),
                            help,
                        );
                    }
                }
            } else {
                self.unknown(key, &path, inner, groups);
            }
        }
        // What is missing beside a slip of TOML may only have been swallowed by it.
        if self.broken {
            return;
        }
        let missing: Vec<&Param> = all(groups)
            .filter(|param| param.default == Default::Required && param.path.starts_with(inner))
            .filter(|param| !param.path[inner.len()..].contains('.'))
            .filter(|param| !table.contains_key(param.key()))
            .collect();
        for param in missing {
            let full = format!("{base}{}", param.path);
            let at = (!base.is_empty()).then_some(Label { span: span.clone(), words: "in this table".into() });
            let help = match param.kind {
                // The lists of a whole file have their own heads.
                Kind::List(_) if base.is_empty() => {
                    format!("write `[[{full}]]` and its keys below it")
                }
                _ => format!("write `{} = {}`", param.key(), example(param)),
            };
            self.mistakes.push(Mistake {
                what: format!("{} is missing: {}", told(&full), param.words),
                at,
                also: Vec::new(),
                help,
            });
        }
    }

    fn unknown(&mut self, key: &Spanned<toml::de::DeString>, path: &str, inner: &str, groups: Groups) {
        let name = key.get_ref().as_ref();
        // The keys that may stand here: those of this very table, and the tables in it.
        let mut known: Vec<&str> = all(groups)
            .filter_map(|param| param.path.strip_prefix(inner))
            .map(|rest| rest.split('.').next().unwrap_or(rest))
            .collect();
        known.dedup();
        let elsewhere = all(groups).find(|param| param.key() == name).map(|param| param.path);
        let meant = if let Some(near) = nearest(name, known.iter().copied()) {
            format!("did you mean `{near}`? ")
        } else if let Some(path) = elsewhere {
            format!("`{name}` belongs elsewhere: `{path}`; ")
        } else {
            String::new()
        };
        let help = format!("{meant}known here: {}", known.join(", "));
        self.mistake(key.span(), format!("`{path}` is not known here"), "this key", help);
    }

    fn param(&mut self, param: &'static Param, full: &str, value: &Spanned<DeValue>) {
        self.spans.put(full, value.span());
        let read = match (param.kind, value.get_ref()) {
            (Kind::List(_), DeValue::Array(list)) if list.is_empty() && param.default == Default::Required => {
                Err(vec![wrong("an empty list", format!("at least one is needed: {}", param.words))])
            }
            (Kind::List(groups), DeValue::Array(list)) => {
                for (i, one) in list.iter().enumerate() {
                    match one.get_ref() {
                        DeValue::Table(table) => {
                            let base = format!("{full}[{i}]");
                            self.spans.put(base.clone(), one.span());
                            self.table(table, one.span(), &format!("{base}."), "", groups);
                        }
                        other => self.mistake(
                            one.span(),
                            format!("{} is a list of tables", told(full)),
                            format!("this is {}", kind_of(other)),
                            "write each as `{ key = value, ... }`",
                        ),
                    }
                }
                Ok(Value::Tables(list.len()))
            }
            (Kind::Named(groups), DeValue::Table(table)) => {
                let mut names = Vec::new();
                for (key, one) in table {
                    let name = key.get_ref().to_string();
                    match one.get_ref() {
                        DeValue::Table(table) => {
                            self.spans.put(format!("{full}.{name}"), key.span());
                            self.table(table, key.span(), &format!("{full}.{name}."), "", groups);
                            names.push(name);
                        }
                        other => self.mistake(
                            one.span(),
                            format!("`{full}.{name}` is a table"),
                            format!("this is {}", kind_of(other)),
                            format!("write `[{full}.\"{name}\"]` and its keys below it"),
                        ),
                    }
                }
                Ok(Value::Names(names))
            }
            (_, plain) => value::value(param, plain),
        };
        match read {
            Ok(value) => {
                self.values.insert(full.to_owned(), value);
            }
            Err(wrongs) => {
                for Wrong { words, help, at, also } in wrongs {
                    self.mistakes.push(Mistake {
                        what: format!("{} is {}", told(full), param.kind.words()),
                        at: Some(Label { span: at.unwrap_or_else(|| value.span()), words }),
                        also: also.into_iter().collect(),
                        help,
                    });
                }
            }
        }
    }
}

/// A path as a maker counts: `window.angle` of `counter` 1.
fn told(full: &str) -> String {
    let numbered = full.rsplit_once("].").and_then(|(list, key)| {
        let (list, index) = list.rsplit_once('[')?;
        Some((list, index.parse::<usize>().ok()?, key))
    });
    match numbered {
        Some((list, index, key)) => format!("`{key}` of {} {}", told(list), index + 1),
        None => format!("`{full}`"),
    }
}

#[cfg(test)]
mod tests {
    use super::told;

    #[test]
    fn makers_count_from_one() {
        assert_eq!(told("mark.height"), "`mark.height`");
        assert_eq!(told("counter[0].window.angle"), "`window.angle` of `counter` 1");
    }
}
