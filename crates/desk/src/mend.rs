//! Mends as concrete changes: one is offered only if it was tried, and the finding was gone and nothing else was worse.

use crate::look::Seen;
use crate::store::{Change, apply, written};
use dial::design::table::{Default, Kind};
use dial::findings::{Finding, Part, Quantity, Severity};
use process::Workshop;

/// Smaller marks are tried down to this share of their height.
const SMALLEST: f64 = 0.6;

/// The changes that mend a finding, if some are known: the first that helps, small ones first.
pub(crate) fn mend(seen: &Seen, text: &str, workshop: &Workshop, finding: &Finding) -> Option<Vec<Change>> {
    if finding.severity == Severity::Note {
        return None;
    }
    candidates(seen, text, finding).into_iter().find(|changes| helps(seen, text, workshop, finding, changes))
}

fn helps(seen: &Seen, text: &str, workshop: &Workshop, finding: &Finding, changes: &[Change]) -> bool {
    let Ok(after) = apply(text, changes) else { return false };
    let Ok(then) = Seen::of(&after, workshop) else { return false };
    let count = |seen: &Seen, severity| seen.findings.iter().filter(|one| one.severity == severity).count();
    let still_there = then.findings.iter().any(|one| {
        one.rule == finding.rule
            && one.part == finding.part
            && one.severity >= finding.severity
            && says_the_same(one, finding)
    });
    let (refuse, refused) = (count(&then, Severity::Refuse), count(seen, Severity::Refuse));
    let (mend, mended) = (count(&then, Severity::Mend), count(seen, Severity::Mend));
    let fewer = match finding.severity {
        Severity::Refuse => refuse < refused,
        _ => refuse <= refused && mend < mended,
    };
    fewer && !still_there
}

/// Whether two findings are of the same matter, whatever their figures.
fn says_the_same(one: &Finding, other: &Finding) -> bool {
    let words = |finding: &Finding| finding.what.replace(|c: char| c.is_ascii_digit() || c == '.', "");
    words(one) == words(other)
}

fn candidates(seen: &Seen, text: &str, finding: &Finding) -> Vec<Vec<Change>> {
    let written: Vec<String> = finding.keys.iter().flat_map(|key| leaves(seen, text, key)).collect();
    let leave = |path: &String| Change::Leave { path: path.clone() };
    // What the maker asked for against the layout: let the layout do it.
    let mut all: Vec<Vec<Change>> = written.iter().map(|path| vec![leave(path)]).collect();
    if written.len() > 1 {
        all.push(written.iter().map(leave).collect());
    }
    // A length of its own: at the limit.
    if let Some(Quantity::Length(limit)) = finding.limit {
        let lengths = finding.keys.iter().filter(|key| is_length(key));
        all.extend(lengths.map(|key| vec![set(key, limit)]));
    }
    all.extend(flags(finding));
    all.extend(other_marks(seen, finding));
    // The size of the cover, if the maker fixed it.
    let cover: Vec<Change> = ["cover.width", "cover.height"]
        .iter()
        .filter(|path| seen.design.spans.get(path).is_some())
        .map(|path| leave(&(*path).to_owned()))
        .collect();
    if !cover.is_empty() {
        all.push(cover);
    }
    all
}

/// The values written at or below a key.
fn leaves(seen: &Seen, text: &str, key: &str) -> Vec<String> {
    let below = format!("{key}.");
    let mut paths = seen.design.spans.under(&below);
    paths.insert(0, key.to_owned());
    paths.retain(|path| {
        crate::store::param(path).is_some_and(|param| param.default != Default::Required)
            && written(text, path).is_some()
    });
    paths
}

fn is_length(key: &str) -> bool {
    crate::store::param(key).is_some_and(|param| matches!(param.kind, Kind::Length(..)))
}

fn set(path: &str, mm: f64) -> Change {
    // A hundredth is what the beam can place; rounded up, so that a least distance is kept.
    let mm = (mm * 100.0 - 1e-6).ceil() / 100.0;
    Change::Set { path: path.into(), value: format!("{mm} mm").into() }
}

fn flags(finding: &Finding) -> Vec<Vec<Change>> {
    let twins = finding.keys.iter().filter(|key| key.ends_with("mark.twins"));
    twins.map(|key| vec![Change::Set { path: key.clone(), value: "where needed".into() }]).collect()
}

/// Smaller marks, then larger ones, for the wheel or for all.
fn other_marks(seen: &Seen, finding: &Finding) -> Vec<Vec<Change>> {
    let (path, height) = match finding.part {
        Part::Wheel(i) | Part::Window(i) | Part::Notch(i) => match seen.design.counters.get(i) {
            Some(counter) => (format!("counter[{i}].mark.height"), counter.mark.height),
            None => return Vec::new(),
        },
        _ => match seen.design.counters.first() {
            Some(counter) => ("mark.height".to_owned(), counter.mark.height),
            None => return Vec::new(),
        },
    };
    let half = |steps: f64| (height * 2.0).round() / 2.0 + 0.5 * steps;
    let smaller = (1..=6).map(|k| half(-f64::from(k))).filter(|mm| *mm >= SMALLEST * height && *mm >= 1.0);
    let larger = (1..=3).map(|k| half(f64::from(k)));
    smaller.chain(larger).map(|mm| vec![set(&path, mm)]).collect()
}
