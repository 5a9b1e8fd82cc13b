//! Reads one value that is not a table: a length, a choice, a range, a list of marks.

use super::Motif;
use super::counting;
use super::nearest::nearest;
use super::reader::Value;
use super::strength;
use super::table::{Default, Groups, Kind, Param, all};
use crate::spans::Label;
use lettering::Symbol;
use measure::{Units, Unreadable, parse_angle, parse_length, show};
use outline::Point;
use std::ops::Range;
use toml::Spanned;
use toml::de::{DeArray, DeValue};

type Span = Range<usize>;

/// Reads the value of a parameter.
///
/// # Errors
/// All that is wrong with it: a list may hold several slips.
pub(super) fn value(param: &Param, value: &DeValue) -> Result<Value, Vec<Wrong>> {
    match (param.kind, value) {
        (Kind::Points, DeValue::Array(list)) => {
            let points = each(list, point)?;
            if points.len() < 3 {
                let help = "a polygon has at least three";
                return Err(vec![wrong(format!("{} corners", points.len()), help)]);
            }
            Ok(Value::Points(points))
        }
        (Kind::Values, DeValue::Array(list)) => marks(list, mark),
        (Kind::Symbols, DeValue::Array(list)) => marks(list, |one| symbol(&text(param, one)?).map(Motif::Symbol)),
        (Kind::Words(known), DeValue::Array(list)) => words(param, known, list),
        (Kind::Values, DeValue::String(text)) => {
            let motifs = counting::range(text).map_err(|(what, help)| vec![wrong(what, help)])?;
            enough(motifs, &[])
        }
        _ => single(param, value).map_err(|wrong| vec![wrong]),
    }
}

fn single(param: &Param, value: &DeValue) -> Result<Value, Wrong> {
    let this_is = |help: String| Err(wrong(format!("this is {}", kind_of(value)), help));
    match param.kind {
        Kind::Text | Kind::Stock => text(param, value).map(Value::Text),
        Kind::Length(low, high) => length_within(value, low, high).map(Value::Number),
        Kind::Angle => Ok(Value::Number(parse_angle(&text(param, value)?)?)),
        Kind::Unit(unit, low, high) => strength::with_unit(&text(param, value)?, unit, low, high).map(Value::Number),
        Kind::Grade => strength::grade(&text(param, value)?).map(Value::Interval),
        Kind::Friction => strength::friction(&text(param, value)?).map(Value::Interval),
        Kind::Share(low, high) | Kind::Number(low, high) => number(value)
            .filter(|share| (low..=high).contains(share))
            .map(Value::Number)
            .ok_or_else(|| wrong("out of range, or not a number", format!("write a number from {low} to {high}"))),
        Kind::Count(low, high) => number(value)
            .filter(|count| count.fract() == 0.0 && (low as f64..=high as f64).contains(count))
            .map(Value::Number)
            .ok_or_else(|| {
                wrong("out of range, or not a whole number", format!("write a whole number from {low} to {high}"))
            }),
        Kind::Flag => match value {
            DeValue::Boolean(flag) => Ok(Value::Flag(*flag)),
            _ => this_is("write true or false, without quotes".into()),
        },
        Kind::Choice(words) => choice(&text(param, value)?, words),
        Kind::Colour => colour(&text(param, value)?),
        Kind::Point => point(value).map(Value::Point),
        Kind::Symbol => symbol(&text(param, value)?).map(Value::Symbol),
        Kind::Values => this_is("write a range as \"0..24\", or a list as [\"calm\", \"gale\"]".into()),
        Kind::Points | Kind::Symbols | Kind::Words(_) => this_is(format!("write as {}", example(param))),
        Kind::List(_) => this_is(format!("write `[[{}]]` and its keys below it, once for each", param.path)),
        Kind::Named(_) => this_is(format!("write `[{}.\"a name\"]` and its keys below it", param.path)),
    }
}

/// What is wrong with a value.
pub(super) struct Wrong {
    /// What is there.
    pub(super) words: String,
    /// What to write instead.
    pub(super) help: String,
    /// The place within the value; the whole value when `None`.
    pub(super) at: Option<Span>,
    /// Another place that clashes with it.
    pub(super) also: Option<Label>,
}

pub(super) fn wrong(words: impl Into<String>, help: impl Into<String>) -> Wrong {
    Wrong { words: words.into(), help: help.into(), at: None, also: None }
}

impl From<Unreadable> for Wrong {
    fn from(why: Unreadable) -> Wrong {
        wrong(why.what, why.help)
    }
}

impl Wrong {
    fn at(self, span: Span) -> Wrong {
        Wrong { at: self.at.or(Some(span)), ..self }
    }
}

/// Reads each item of a list, or tells of all that cannot be read.
fn each<T>(list: &DeArray, read: impl Fn(&DeValue) -> Result<T, Wrong>) -> Result<Vec<T>, Vec<Wrong>> {
    let mut wrongs = Vec::new();
    let mut items = Vec::new();
    for one in list {
        match read(one.get_ref()) {
            Ok(item) => items.push(item),
            Err(wrong) => wrongs.push(wrong.at(one.span())),
        }
    }
    if wrongs.is_empty() { Ok(items) } else { Err(wrongs) }
}

fn text(param: &Param, value: &DeValue) -> Result<String, Wrong> {
    match value {
        DeValue::String(text) => Ok(text.to_string()),
        other => {
            // Of a list of symbols, one; an example of the whole would mislead.
            let example = match param.kind {
                Kind::Symbols => "\"flame\"".to_owned(),
                Kind::Words(words) => format!("\"{}\"", words.first().unwrap_or(&"...")),
                _ => example(param),
            };
            Err(wrong(format!("this is {}", kind_of(other)), format!("write it in double quotes, as {example}")))
        }
    }
}

fn choice(said: &str, words: &'static [&'static str]) -> Result<Value, Wrong> {
    match words.iter().find(|word| **word == said) {
        Some(word) => Ok(Value::Text((*word).to_owned())),
        None => {
            let help = nearest(said, words.iter().copied()).map_or_else(
                || format!("write {}", Kind::Choice(words).words()),
                |near| format!("did you mean \"{near}\"?"),
            );
            Err(wrong("not one of the words known here", help))
        }
    }
}

/// Words of a list, each once; where none are told as known any will do, two at least.
fn words(param: &Param, known: &'static [&'static str], list: &DeArray) -> Result<Value, Vec<Wrong>> {
    let said = each(list, |one| {
        let word = text(param, one)?;
        if known.is_empty() { Ok(Value::Text(word)) } else { choice(&word, known) }
    })?;
    let mut once: Vec<String> = Vec::new();
    for word in said {
        if let Value::Text(word) = word
            && !once.contains(&word)
        {
            once.push(word);
        }
    }
    if known.is_empty() && once.len() < 2 {
        return Err(vec![wrong("fewer than two different ones", format!("write at least two, as {}", example(param)))]);
    }
    Ok(Value::Words(once))
}

fn colour(said: &str) -> Result<Value, Wrong> {
    said.strip_prefix('#')
        .filter(|digits| digits.len() == 6 && digits.chars().all(|c| c.is_ascii_hexdigit()))
        .map(|_| Value::Text(said.to_lowercase()))
        .ok_or_else(|| wrong("not a colour", "write as \"#0072b2\""))
}

fn length(value: &DeValue) -> Result<f64, Wrong> {
    match value {
        DeValue::String(text) => Ok(parse_length(text)?),
        other => match number(other) {
            Some(figure) => {
                Err(wrong("a length needs its unit", format!("write \"{figure} mm\" or \"{figure} in\", in quotes")))
            }
            None => Err(wrong(
                format!("this is {}", kind_of(other)),
                "write a length in quotes, as \"3.2 mm\" or \"1/8 in\"",
            )),
        },
    }
}

/// A length within limits, which are told in the unit that was written.
fn length_within(value: &DeValue, low: f64, high: f64) -> Result<f64, Wrong> {
    let mm = length(value)?;
    if (low..=high).contains(&mm) {
        return Ok(mm);
    }
    let written = value.as_str().unwrap_or_default().trim();
    let units = if written.ends_with("mm") || written.ends_with("cm") { Units::Millimetres } else { Units::Inches };
    let side = if mm < low { "too small" } else { "too large" };
    Err(wrong(format!("{} is {side}", show(mm, units)), format!("write {} to {}", show(low, units), show(high, units))))
}

fn point(value: &DeValue) -> Result<Point, Wrong> {
    let help = "write as [\"10 mm\", \"-4 mm\"]: to the right, and up";
    match value {
        DeValue::Array(list) => match &list[..] {
            [x, y] => {
                let side = |one: &Spanned<DeValue>| length(one.get_ref()).map_err(|wrong| wrong.at(one.span()));
                Ok(Point::new(side(x)?, side(y)?))
            }
            other => Err(wrong(format!("a place has two lengths, this has {}", other.len()), help)),
        },
        other => Err(wrong(format!("this is {}", kind_of(other)), help)),
    }
}

fn number(value: &DeValue) -> Option<f64> {
    match value {
        DeValue::Integer(_) => whole(value).map(|n| n as f64),
        DeValue::Float(float) => float.as_str().replace('_', "").parse().ok().filter(|n: &f64| n.is_finite()),
        _ => None,
    }
}

/// A whole number, however it is written: 24, 2_400, 0x18.
fn whole(value: &DeValue) -> Option<i64> {
    match value {
        DeValue::Integer(integer) => i64::from_str_radix(&integer.as_str().replace('_', ""), integer.radix()).ok(),
        _ => None,
    }
}

/// One mark of a list: a word, or a whole number.
fn mark(value: &DeValue) -> Result<Motif, Wrong> {
    match value {
        DeValue::String(text) if text.trim().is_empty() => Err(wrong("an empty mark", "write a word or a number")),
        DeValue::String(text) => Ok(counting::word(text.trim())),
        other => whole(other).map(counting::integer).ok_or_else(|| {
            wrong(
                format!("this is {}", kind_of(other)),
                "write words in quotes and whole numbers; \"0.5\" in quotes is a word",
            )
        }),
    }
}

fn marks(list: &DeArray, read: impl Fn(&DeValue) -> Result<Motif, Wrong>) -> Result<Value, Vec<Wrong>> {
    let spans: Vec<Span> = list.iter().map(Spanned::span).collect();
    enough(each(list, read)?, &spans)
}

/// Two to a hundred marks, none twice. The spans of a list's items, if it is one.
fn enough(motifs: Vec<Motif>, spans: &[Span]) -> Result<Value, Vec<Wrong>> {
    if !(counting::FEWEST..=counting::MOST).contains(&motifs.len()) {
        let help = format!("a wheel takes {} to {} marks", counting::FEWEST, counting::MOST);
        let count = match motifs.len() {
            1 => "1 mark".to_owned(),
            n => format!("{n} marks"),
        };
        return Err(vec![wrong(count, help)]);
    }
    let again: Vec<Wrong> = motifs
        .iter()
        .enumerate()
        .filter_map(|(j, later)| {
            let first = motifs[..j].iter().position(|one| one == later)?;
            let twice = wrong(format!("“{}” stands here again", later.words()), "every stop shows another mark");
            Some(match (spans.get(first), spans.get(j)) {
                (Some(first), Some(again)) => Wrong {
                    also: Some(Label { span: first.clone(), words: "and here already".into() }),
                    ..twice.at(again.clone())
                },
                _ => twice,
            })
        })
        .collect();
    if again.is_empty() { Ok(Value::Motifs(motifs)) } else { Err(again) }
}

fn symbol(name: &str) -> Result<Symbol, Wrong> {
    Symbol::named(name).ok_or_else(|| {
        let names: Vec<&str> = Symbol::all().map(|symbol| symbol.name()).collect();
        let help = nearest(name, names.iter().copied())
            .map_or_else(|| format!("known: {}", names.join(", ")), |near| format!("did you mean \"{near}\"?"));
        wrong(format!("there is no symbol “{name}”"), help)
    })
}

/// What a value is, in words.
pub(super) fn kind_of(value: &DeValue) -> &'static str {
    match value {
        DeValue::String(_) => "text",
        DeValue::Integer(_) => "a bare number",
        DeValue::Float(_) => "a bare number with decimals",
        DeValue::Boolean(_) => "true or false",
        DeValue::Datetime(_) => "a date",
        DeValue::Array(_) => "a list",
        DeValue::Table(_) => "a table",
    }
}

/// An example of what may be written.
pub(super) fn example(param: &Param) -> String {
    match (param.default, param.kind) {
        (Default::Fixed(text), kind) if kind.is_bare() => text.to_owned(),
        (Default::Fixed(text), Kind::Words(_)) => format!("[\"{text}\"]"),
        (Default::Fixed(text), _) => format!("\"{text}\""),
        (_, kind) => match kind {
            Kind::Length(low, _) => format!("\"{}\"", show(low.max(3.0), Units::Millimetres)),
            Kind::Angle => "\"90 deg\"".into(),
            Kind::Share(low, _) | Kind::Number(low, _) => low.to_string(),
            Kind::Unit(unit, low, _) => format!("\"{low} {unit}\""),
            Kind::Grade => "\"N42\"".into(),
            Kind::Friction => "\"0.2 to 0.4\"".into(),
            Kind::Count(low, _) => low.to_string(),
            Kind::Flag => "true".into(),
            Kind::Choice(words) => format!("\"{}\"", words[0]),
            Kind::Words([]) => "[\"maple 3 mm / maple 3 mm\", \"bamboo 3 mm / maple 3 mm\"]".into(),
            Kind::Words(words) => format!("[\"{}\"]", words[0]),
            Kind::Point => "[\"10 mm\", \"-4 mm\"]".into(),
            Kind::Points => "[[\"-30 mm\", \"-20 mm\"], [\"30 mm\", \"-20 mm\"], [\"0 mm\", \"30 mm\"]]".into(),
            Kind::Values => "\"0..24\"".into(),
            Kind::Symbols => "[\"flame\", \"drop\"]".into(),
            Kind::Symbol => "\"flame\"".into(),
            Kind::Stock => "\"birch plywood 3 mm\"".into(),
            Kind::Colour => "\"#0072b2\"".into(),
            Kind::Text => "\"...\"".into(),
            Kind::List(groups) => format!("[{}]", example_table(groups)),
            Kind::Named(groups) => format!("{{ \"a name\" = {} }}", example_table(groups)),
        },
    }
}

/// A table in line, with the keys that must be given.
fn example_table(groups: Groups) -> String {
    let pairs: Vec<String> = all(groups)
        .filter(|param| param.default == Default::Required)
        .map(|param| format!("{} = {}", param.key(), example(param)))
        .collect();
    format!("{{ {} }}", pairs.join(", "))
}
