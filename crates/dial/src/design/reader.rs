//! Reads a file against a table of parameters: every key known, every value of its kind and within its limits, all mistakes at once.

use super::Motif;
use super::counting;
use super::nearest::nearest;
use super::table::{Default, Groups, Kind, Param, all};
use crate::spans::{Label, Mistake, Spans};
use lettering::Symbol;
use measure::{Units, parse_angle, parse_length, show};
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
    Flag(bool),
    Point(Point),
    Points(Vec<Point>),
    Motifs(Vec<Motif>),
    Symbol(Symbol),
    /// A list of tables: how many.
    Tables(usize),
    /// Tables by name.
    Names(Vec<String>),
}

type Span = Range<usize>;

/// Reads a file.
pub(crate) fn read(text: &str, groups: Groups) -> Reading {
    let (table, errors) = DeTable::parse_recoverable(text);
    let mut reading = Reading {
        broken: !errors.is_empty(),
        ..Reading::default()
    };
    for error in errors {
        let span = error.span().unwrap_or(0..0);
        reading.mistakes.push(Mistake {
            what: "this is not TOML".into(),
            at: Some(Label {
                span: clamp(span, text),
                words: error.message().to_owned(),
            }),
            also: Vec::new(),
            help: "a line reads `key = value`, text and lengths stand in double quotes".into(),
        });
    }
    let span = table.span();
    reading.table(table.get_ref(), span, "", "", groups);
    reading
}

/// A span that lies in the text, on the borders of characters.
fn clamp(span: Span, text: &str) -> Span {
    let border = |mut at: usize| {
        at = at.min(text.len());
        while !text.is_char_boundary(at) {
            at -= 1;
        }
        at
    };
    let start = border(span.start);
    start..border(span.end).max(start)
}

impl Reading {
    fn mistake(
        &mut self,
        span: Span,
        what: impl Into<String>,
        words: impl Into<String>,
        help: impl Into<String>,
    ) {
        let at = Some(Label {
            span,
            words: words.into(),
        });
        self.mistakes.push(Mistake {
            what: what.into(),
            at,
            also: Vec::new(),
            help: help.into(),
        });
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
                        let help = format!(
                            "write `[{full}]` and its keys below it, or `{name} = {{ ... }}`"
                        );
                        self.mistake(
                            value.span(),
                            format!("`{full}` is a table"),
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
            let head = span.start..span.start;
            let at = (!base.is_empty()).then_some(Label {
                span: if base.is_empty() { head } else { span.clone() },
                words: "in this table".into(),
            });
            self.mistakes.push(Mistake {
                what: format!("`{full}` is missing: {}", param.words),
                at,
                also: Vec::new(),
                help: match param.kind {
                    Kind::List(_) if base.is_empty() => format!(
                        "write `[[{}]]` and its keys below it, once for each",
                        param.path
                    ),
                    _ => format!("write `{} = {}`", param.key(), example(param)),
                },
            });
        }
    }

    fn unknown(
        &mut self,
        key: &Spanned<toml::de::DeString>,
        path: &str,
        inner: &str,
        groups: Groups,
    ) {
        let name = key.get_ref().as_ref();
        // The keys that may stand here: those of this very table, and the tables in it.
        let mut known: Vec<&str> = all(groups)
            .filter_map(|param| param.path.strip_prefix(inner))
            .map(|rest| rest.split('.').next().unwrap_or(rest))
            .collect();
        known.dedup();
        let elsewhere = all(groups)
            .find(|param| param.key() == name)
            .map(|param| param.path);
        let help = if let Some(near) = nearest(name, known.iter().copied()) {
            format!("did you mean `{near}`?")
        } else if let Some(path) = elsewhere {
            format!("`{name}` belongs elsewhere: `{path}`")
        } else {
            format!("known here: {}", known.join(", "))
        };
        self.mistake(
            key.span(),
            format!("`{path}` is not known here"),
            "this key",
            help,
        );
    }

    fn param(&mut self, param: &'static Param, full: &str, value: &Spanned<DeValue>) {
        self.spans.put(full, value.span());
        let read = match (param.kind, value.get_ref()) {
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
                            format!("`{full}` is a list of tables"),
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
            (kind, value) => self.plain(kind, param, value),
        };
        match read {
            Ok(value) => {
                self.values.insert(full.to_owned(), value);
            }
            Err(Wrong {
                words,
                help,
                at,
                also,
            }) => {
                let what = format!("`{full}` is {}", param.kind.words());
                self.mistake(at.unwrap_or_else(|| value.span()), what, words, help);
                if let (Some(also), Some(mistake)) = (also, self.mistakes.last_mut()) {
                    mistake.also.push(also);
                }
            }
        }
    }

    /// A value that is not a table.
    fn plain(&self, kind: Kind, param: &Param, value: &DeValue) -> Result<Value, Wrong> {
        let text = |value: &DeValue| match value {
            DeValue::String(text) => Ok(text.to_string()),
            other => Err(wrong(
                format!("this is {}", kind_of(other)),
                format!("write it in double quotes, as {}", example(param)),
            )),
        };
        match kind {
            Kind::Text | Kind::Stock => text(value).map(Value::Text),
            Kind::Length(low, high) => within(length(value)?, low, high).map(Value::Number),
            Kind::Angle => parse_angle(&text(value)?)
                .map(Value::Number)
                .map_err(|why| wrong(why, "write as \"90 deg\" or \"12 o'clock\"")),
            Kind::Share(low, high) => number(value)
                .filter(|share| (low..=high).contains(share))
                .map(Value::Number)
                .ok_or_else(|| {
                    wrong(
                        "out of range, or not a number",
                        format!("write a number from {low} to {high}"),
                    )
                }),
            Kind::Count(low, high) => number(value)
                .filter(|count| count.fract() == 0.0 && (low as f64..=high as f64).contains(count))
                .map(Value::Number)
                .ok_or_else(|| {
                    wrong(
                        "out of range, or not a whole number",
                        format!("write a whole number from {low} to {high}"),
                    )
                }),
            Kind::Flag => match value {
                DeValue::Boolean(flag) => Ok(Value::Flag(*flag)),
                other => Err(wrong(
                    format!("this is {}", kind_of(other)),
                    "write true or false, without quotes",
                )),
            },
            Kind::Choice(words) => {
                let said = text(value)?;
                words
                    .iter()
                    .find(|word| **word == said)
                    .map(|word| Value::Text((*word).to_owned()))
                    .ok_or_else(|| {
                        let help = nearest(&said, words.iter().copied()).map_or_else(
                            || format!("write one of {}", Kind::Choice(words).words()),
                            |near| format!("did you mean \"{near}\"?"),
                        );
                        wrong("not one of the words known here", help)
                    })
            }
            Kind::Colour => {
                let colour = text(value)?;
                let hex = colour.len() == 7
                    && colour.starts_with('#')
                    && colour[1..].chars().all(|c| c.is_ascii_hexdigit());
                if hex {
                    Ok(Value::Text(colour.to_lowercase()))
                } else {
                    Err(wrong("not a colour", "write as \"#0072b2\""))
                }
            }
            Kind::Point => point(value).map(Value::Point),
            Kind::Points => match value {
                DeValue::Array(list) => list
                    .iter()
                    .map(|one| point(one.get_ref()).map_err(|wrong| wrong.at(one.span())))
                    .collect::<Result<Vec<_>, _>>()
                    .map(Value::Points),
                other => Err(wrong(
                    format!("this is {}", kind_of(other)),
                    "write as [[\"0 mm\", \"0 mm\"], [\"60 mm\", \"0 mm\"], ...]",
                )),
            },
            Kind::Values => values(value),
            Kind::Symbols => match value {
                DeValue::Array(list) => list
                    .iter()
                    .map(|one| {
                        symbol(&text(one.get_ref())?)
                            .map(Motif::Symbol)
                            .map_err(|wrong| wrong.at(one.span()))
                    })
                    .collect::<Result<Vec<_>, _>>()
                    .and_then(|motifs| enough(motifs, list.iter().map(Spanned::span).collect())),
                other => Err(wrong(
                    format!("this is {}", kind_of(other)),
                    "write as [\"flame\", \"drop\"]",
                )),
            },
            Kind::Symbol => symbol(&text(value)?).map(Value::Symbol),
            Kind::List(_) => Err(wrong(
                format!("this is {}", kind_of(value)),
                format!(
                    "write `[[{}]]` and its keys below it, once for each",
                    param.path
                ),
            )),
            Kind::Named(_) => Err(wrong(
                format!("this is {}", kind_of(value)),
                format!("write `[{}.\"a name\"]` and its keys below it", param.path),
            )),
        }
    }
}

/// What is wrong with a value.
struct Wrong {
    words: String,
    help: String,
    at: Option<Span>,
    also: Option<Label>,
}

fn wrong(words: impl Into<String>, help: impl Into<String>) -> Wrong {
    Wrong {
        words: words.into(),
        help: help.into(),
        at: None,
        also: None,
    }
}

impl Wrong {
    fn at(self, span: Span) -> Wrong {
        Wrong {
            at: self.at.or(Some(span)),
            ..self
        }
    }
}

fn length(value: &DeValue) -> Result<f64, Wrong> {
    match value {
        DeValue::String(text) => parse_length(text).map_err(|why| {
            let (words, help) = why.split_once(": ").map_or(
                (why.clone(), "write a number and mm or in".to_owned()),
                |(a, b)| (a.to_owned(), b.to_owned()),
            );
            wrong(words, help)
        }),
        other => match number(other) {
            Some(figure) => Err(wrong(
                "a length needs its unit",
                format!("write \"{figure} mm\" or \"{figure} in\", in quotes"),
            )),
            None => Err(wrong(
                format!("this is {}", kind_of(other)),
                "write a length in quotes, as \"3.2 mm\" or \"1/8 in\"",
            )),
        },
    }
}

fn within(mm: f64, low: f64, high: f64) -> Result<f64, Wrong> {
    if (low..=high).contains(&mm) {
        return Ok(mm);
    }
    let limits = format!(
        "{} to {}",
        show(low, Units::Millimetres),
        show(high, Units::Millimetres)
    );
    let side = if mm < low { "too small" } else { "too large" };
    Err(wrong(
        format!("{} is {side}", show(mm, Units::Millimetres)),
        format!("write {limits}"),
    ))
}

fn point(value: &DeValue) -> Result<Point, Wrong> {
    let help = "write as [\"10 mm\", \"-4 mm\"]";
    match value {
        DeValue::Array(list) if list.len() == 2 => {
            let mut both = list
                .iter()
                .map(|one| length(one.get_ref()).map_err(|wrong| wrong.at(one.span())));
            match (both.next(), both.next()) {
                (Some(x), Some(y)) => Ok(Point::new(x?, y?)),
                _ => Err(wrong("two lengths are needed", help)),
            }
        }
        DeValue::Array(list) => Err(wrong(format!("{} lengths", list.len()), help)),
        other => Err(wrong(format!("this is {}", kind_of(other)), help)),
    }
}

fn number(value: &DeValue) -> Option<f64> {
    match value {
        DeValue::Integer(integer) => integer
            .as_str()
            .replace('_', "")
            .parse::<i64>()
            .ok()
            .map(|n| n as f64),
        DeValue::Float(float) => float
            .as_str()
            .replace('_', "")
            .parse()
            .ok()
            .filter(|n: &f64| n.is_finite()),
        _ => None,
    }
}

fn values(value: &DeValue) -> Result<Value, Wrong> {
    match value {
        DeValue::String(text) => {
            let motifs = counting::range(text).map_err(|(what, help)| wrong(what, help))?;
            enough(motifs, Vec::new())
        }
        DeValue::Array(list) => {
            let motifs = list.iter().map(|one| match one.get_ref() {
                DeValue::String(text) if !text.trim().is_empty() => Ok(counting::word(text.trim())),
                DeValue::String(_) => {
                    Err(wrong("an empty mark", "write a word or a number").at(one.span()))
                }
                other => number(other)
                    .filter(|n| n.fract() == 0.0)
                    .map(|n| counting::integer(n as i64))
                    .ok_or_else(|| {
                        wrong(
                            format!("this is {}", kind_of(other)),
                            "write words in quotes and whole numbers; \"0.5\" in quotes is a word",
                        )
                        .at(one.span())
                    }),
            });
            let motifs = motifs.collect::<Result<Vec<_>, _>>()?;
            enough(motifs, list.iter().map(Spanned::span).collect())
        }
        other => Err(wrong(
            format!("this is {}", kind_of(other)),
            "write a range as \"0..24\", or a list as [\"calm\", \"gale\"]",
        )),
    }
}

/// Two to a hundred marks, none twice.
fn enough(motifs: Vec<Motif>, spans: Vec<Span>) -> Result<Value, Wrong> {
    if !(counting::FEWEST..=counting::MOST).contains(&motifs.len()) {
        return Err(wrong(
            format!("{} marks", motifs.len()),
            format!(
                "a wheel takes {} to {} marks",
                counting::FEWEST,
                counting::MOST
            ),
        ));
    }
    for (j, later) in motifs.iter().enumerate() {
        if let Some(i) = motifs[..j].iter().position(|one| one == later) {
            let twice = wrong(
                format!("“{}” stands here again", later.words()),
                "every stop shows another mark",
            );
            return Err(match (spans.get(i), spans.get(j)) {
                (Some(first), Some(again)) => {
                    let also = Some(Label {
                        span: first.clone(),
                        words: "and here already".into(),
                    });
                    Wrong {
                        also,
                        ..twice.at(again.clone())
                    }
                }
                _ => twice,
            });
        }
    }
    Ok(Value::Motifs(motifs))
}

fn symbol(name: &str) -> Result<Symbol, Wrong> {
    Symbol::named(name).ok_or_else(|| {
        let names: Vec<&str> = Symbol::all().map(|symbol| symbol.name()).collect();
        let help = nearest(name, names.iter().copied()).map_or_else(
            || format!("known: {}", names.join(", ")),
            |near| format!("did you mean \"{near}\"?"),
        );
        wrong(format!("there is no symbol “{name}”"), help)
    })
}

fn kind_of(value: &DeValue) -> &'static str {
    match value {
        DeValue::String(_) => "text",
        DeValue::Integer(_) | DeValue::Float(_) => "a bare number",
        DeValue::Boolean(_) => "true or false",
        DeValue::Datetime(_) => "a date",
        DeValue::Array(_) => "a list",
        DeValue::Table(_) => "a table",
    }
}

/// An example of what may be written.
pub(crate) fn example(param: &Param) -> String {
    match (param.default, param.kind) {
        (Default::Fixed(text), Kind::Flag | Kind::Count(..) | Kind::Share(..)) => text.to_owned(),
        (Default::Fixed(text), _) => format!("\"{text}\""),
        (_, kind) => match kind {
            Kind::Length(low, _) => format!("\"{}\"", show(low.max(3.0), Units::Millimetres)),
            Kind::Angle => "\"90 deg\"".into(),
            Kind::Share(low, _) => low.to_string(),
            Kind::Count(low, _) => low.to_string(),
            Kind::Flag => "true".into(),
            Kind::Choice(words) => format!("\"{}\"", words[0]),
            Kind::Point => "[\"10 mm\", \"-4 mm\"]".into(),
            Kind::Points => {
                "[[\"-30 mm\", \"-20 mm\"], [\"30 mm\", \"-20 mm\"], [\"0 mm\", \"30 mm\"]]".into()
            }
            Kind::Values => "\"0..24\"".into(),
            Kind::Symbols => "[\"flame\", \"drop\"]".into(),
            Kind::Symbol => "\"flame\"".into(),
            Kind::Stock => "\"birch plywood 3 mm\"".into(),
            Kind::Colour => "\"#0072b2\"".into(),
            Kind::Text => "\"...\"".into(),
            Kind::List(_) | Kind::Named(_) => "...".into(),
        },
    }
}
