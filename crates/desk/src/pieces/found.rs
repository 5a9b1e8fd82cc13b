//! Findings, the gravest first, with their places on the dial and in the file.

use super::scene::place;
use crate::look::Seen;
use dial::findings::{Finding, Part};
use serde_json::{Value, json};

/// Findings of a dial, or of what is seen of it from somewhere.
pub(crate) fn findings(found: &[Finding], seen: &Seen, text: &str) -> Value {
    Value::Array(found.iter().map(|one| finding(seen, one, text)).collect())
}

fn finding(seen: &Seen, finding: &Finding, text: &str) -> Value {
    let dial = &seen.laid.dial;
    let span = finding.keys.iter().find_map(|key| seen.design.spans.get(key));
    let line = span.and_then(|span| text.get(..span.start)).map(|before| before.matches('\n').count() + 1);
    json!({
        "rule": finding.rule,
        "severity": finding.severity.word(),
        "what": finding.what,
        "measured": finding.measured.map(|one| one.show(dial.show)),
        "limit": finding.limit.map(|one| one.show(dial.show)),
        "part": part(finding.part),
        "part_words": finding.part.words(dial),
        "place": finding.place.map(place),
        "source": finding.source,
        "mend": finding.mend,
        "keys": finding.keys,
        "line": line,
    })
}

/// A part as the page names it.
fn part(part: Part) -> String {
    match part {
        Part::Dial => "dial".into(),
        Part::Cover => "cover".into(),
        Part::Wheel(i) => format!("rim/{i}"),
        Part::Window(i) => format!("window/{i}"),
        Part::Notch(i) => format!("notch/{i}"),
    }
}
