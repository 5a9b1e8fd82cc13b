//! What is no TOML, in a maker's words.

use crate::spans::{Label, Mistake};
use std::ops::Range;
use toml::de::Error;

/// Tells of the places that the TOML reader could not make sense of: of each line the first, since the others follow from it.
pub(super) fn mistakes(errors: &[Error], text: &str) -> Vec<Mistake> {
    let mut slips: Vec<Mistake> = Vec::new();
    for error in errors {
        let slip = mistake(error, text);
        if !follows(&slip, &slips, text) {
            slips.push(slip);
        }
    }
    slips
}

fn mistake(error: &Error, text: &str) -> Mistake {
    let mut span = clamp(error.span().unwrap_or(0..0), text);
    if NOT_A_NUMBER.iter().any(|start| error.message().starts_with(start)) {
        span = plain_value(&span, text).unwrap_or(span);
    }
    let there = text.get(span.clone()).unwrap_or_default().trim();
    let (words, help) = plainly(error.message(), there);
    Mistake { what: "this is not TOML".into(), at: Some(Label { span, words }), also: Vec::new(), help }
}

/// What the TOML reader says of a range or a length that begins like a number.
const NOT_A_NUMBER: [&str; 4] = ["invalid fraction", "invalid float", "invalid integer", "invalid decimal"];

/// The whole value on whose line a span lies, if it is neither list nor table.
fn plain_value(span: &Range<usize>, text: &str) -> Option<Range<usize>> {
    let line = line_of(span, text);
    let start = line.start + text[line.start..span.start].find('=')? + 1;
    let value = text.get(start..line.end.min(text.len()))?;
    let value = value.split('#').next().unwrap_or_default();
    if value.contains(['[', '{', '"', '=']) {
        return None;
    }
    let from = start + value.len() - value.trim_start().len();
    Some(from..from + value.trim().len())
}

/// What the TOML reader says of the text that is there, and what to do about it.
fn plainly(message: &str, there: &str) -> (String, String) {
    let lower = there.to_lowercase();
    let says = |start: &str| message.starts_with(start);
    if says("invalid boolean") && ["true", "false"].contains(&lower.as_str()) {
        return ("true and false are written small".into(), format!("write {lower}"));
    }
    let unquoted =
        ["string values must be quoted", "invalid boolean"].iter().chain(&NOT_A_NUMBER).any(|start| says(start));
    if !there.is_empty() && unquoted {
        return ("text, lengths and ranges stand in double quotes".into(), format!("write \"{there}\""));
    }
    let words = if says("invalid basic string") || says("invalid literal string") {
        "the closing quote is missing"
    } else if says("duplicate key") {
        "this is written once more"
    } else if says("key with no value") || says("invalid unquoted key") && there == ":" {
        "a key and its value are joined by `=`"
    } else if says("missing comma") {
        "a comma is missing before this"
    } else if says("unclosed table") {
        "the closing bracket is missing"
    } else {
        message
    };
    (words.to_owned(), "a line reads `key = value`, or `[table]`; text and lengths stand in double quotes".into())
}

/// A span that lies in the text, on the borders of characters.
fn clamp(span: Range<usize>, text: &str) -> Range<usize> {
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

/// Whether a mistake touches a line that is not TOML: it may only come of that.
pub(super) fn follows(mistake: &Mistake, broken: &[Mistake], text: &str) -> bool {
    let Some(at) = &mistake.at else { return false };
    broken.iter().filter_map(|one| one.at.as_ref()).any(|slip| {
        let line = line_of(&slip.span, text);
        at.span.start < line.end && line.start < at.span.end
    })
}

/// The whole lines on which a span lies.
fn line_of(span: &Range<usize>, text: &str) -> Range<usize> {
    let start = text[..span.start].rfind('\n').map_or(0, |at| at + 1);
    let end = text[span.end..].find('\n').map_or(text.len(), |at| span.end + at);
    start..end.max(start + 1)
}
