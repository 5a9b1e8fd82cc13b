//! Mends as concrete changes. What the rule itself works out comes first; where it cannot know, some changes are tried.
//! Either is offered only if it was made on the whole dial, the finding was gone and nothing else was worse.

use crate::kin::Kin;
use crate::look::Seen;
use crate::pair;
use crate::store::{Change, apply, value_at, written};
use dial::design::table::{Default, Kind};
use dial::findings::{Finding, Part, Quantity, Remedy, Severity};
use dial::magnets::{self, Candidate, Choice};
use process::Workshop;
use serde::Serialize;
use serde_json::Value;

/// Smaller marks are tried down to this share of their height.
const SMALLEST: f64 = 0.6;

/// So many pairs from the shelf are tried.
const MOST_PAIRS: usize = 4;
/// Rules of what the magnets do.
const HOLDING: &[&str] = &["turning and keeping", "tipping", "pin and socket", "floor under a pocket"];
/// Rules that the size of the marks, and of all that follows from it, may satisfy.
const SIZES: &[&str] = &[
    "turn test",
    "web between cuts",
    "clearance",
    "wheel sticks out",
    "bared rim",
    "part inside the bed",
    "room for art",
    "room for pockets",
    "marks too small to cut",
];

/// A mend that was tried, and what comes of it.
#[derive(Clone, Debug, Serialize)]
pub struct Mend {
    /// The changes.
    pub changes: Vec<Change>,
    /// Whether the rule worked it out, or it was found by trying.
    pub by: By,
    /// What is written at each place now; nothing where it is left to the layout.
    pub before: Vec<Option<Value>>,
    /// What the dial is like with it.
    pub then: Then,
}

/// Where a mend comes from.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize)]
#[serde(rename_all = "lowercase")]
pub enum By {
    /// The rule worked it out.
    Rule,
    /// It was tried with others, and helped.
    Trying,
}

/// A dial in a few figures, once it is mended.
#[derive(Clone, Debug, Serialize)]
pub struct Then {
    /// Findings that forbid making it.
    pub refuse: usize,
    /// Findings that would be better mended.
    pub mend: usize,
    /// Size of its cover, as this maker reads it.
    pub size: String,
}

/// The mend that is known for a finding, if there is one: the rule's own, else the first of those tried, small ones first.
pub(crate) fn mend(seen: &Seen, text: &str, workshop: &Workshop, kin: &Kin, finding: &Finding) -> Option<Mend> {
    if finding.severity == Severity::Note {
        return None;
    }
    let tried = |by: By, mut changes: Vec<Change>| {
        changes.retain(|change| !matches!(change, Change::Leave { path } if written(text, path).is_none()));
        let then = helps(seen, text, workshop, kin, finding, &changes)?;
        let document: toml_edit::DocumentMut = text.parse().ok()?;
        let before = changes.iter().map(|change| value_at(&document, change.place())).collect();
        let plate = then.laid.dial.cover.plate.bounds();
        let show = |mm| measure::show(mm, then.laid.dial.show);
        let then = Then {
            refuse: count(&then, Severity::Refuse),
            mend: count(&then, Severity::Mend),
            size: format!("{} x {}", show(plate.width()), show(plate.height())),
        };
        Some(Mend { changes, by, before, then })
    };
    let known = finding.remedies.iter().filter_map(|remedy| changes(text, remedy));
    let known = known.collect::<Vec<_>>().into_iter().find_map(|changes| tried(By::Rule, changes));
    known.or_else(|| {
        candidates(seen, text, workshop, finding).into_iter().find_map(|changes| tried(By::Trying, changes))
    })
}

/// The mends of all findings, by their order. Each is tried on the whole dial.
pub fn mends(seen: &Seen, text: &str, workshop: &Workshop, kin: &Kin) -> Vec<Option<Mend>> {
    seen.findings.iter().map(|finding| mend(seen, text, workshop, kin, finding)).collect()
}

/// A rule's remedy as changes of this file; what is not written need not be left to the layout.
fn changes(text: &str, remedy: &Remedy) -> Option<Vec<Change>> {
    let values = remedy.values.iter().filter_map(|(path, value)| match value {
        Some(value) => Some(Change::Set { path: path.clone(), value: value.clone().into() }),
        None => written(text, path).is_some().then(|| Change::Leave { path: path.clone() }),
    });
    let changes: Vec<Change> = values.collect();
    (!changes.is_empty()).then_some(changes)
}

fn count(seen: &Seen, severity: Severity) -> usize {
    seen.findings.iter().filter(|one| one.severity == severity).count()
}

/// The dial with the changes, if the finding is gone and nothing is worse.
fn helps(
    seen: &Seen,
    text: &str,
    workshop: &Workshop,
    kin: &Kin,
    finding: &Finding,
    changes: &[Change],
) -> Option<Seen> {
    let after = apply(text, changes).ok()?;
    let then = Seen::of(&after, workshop, &kin.members).ok()?;
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
    (fewer && !still_there).then_some(then)
}

/// Whether two findings are of the same matter, whatever their figures.
fn says_the_same(one: &Finding, other: &Finding) -> bool {
    let words = |finding: &Finding| finding.what.replace(|c: char| c.is_ascii_digit() || c == '.', "");
    words(one) == words(other)
}

/// What is tried where the rule does not know: values left to the layout, lengths at the limit, other marks, another cover.
fn candidates(seen: &Seen, text: &str, workshop: &Workshop, finding: &Finding) -> Vec<Vec<Change>> {
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
    if HOLDING.contains(&finding.rule) {
        all.extend(other_magnets(seen, workshop));
    }
    if SIZES.contains(&finding.rule) {
        all.extend(other_marks(seen, finding));
    }
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

/// Pairs on the shelf that would do, then other seats.
fn other_magnets(seen: &Seen, workshop: &Workshop) -> Vec<Vec<Change>> {
    let does = |one: &Candidate| matches!(one.choice, Choice::Does).then(|| pair::takes(&one.cover, &one.wheel));
    let pairs = magnets::choose(&seen.looked, workshop);
    let seats = ["flush", "recessed", "proud"].map(|seat| {
        let seat = Change::Set { path: "magnet.seat".into(), value: seat.into() };
        let pockets = ["magnet.cover_pocket", "magnet.wheel_pocket"];
        std::iter::once(seat).chain(pockets.map(|path| Change::Leave { path: path.into() })).collect()
    });
    pairs.iter().filter_map(does).take(MOST_PAIRS).chain(seats).collect()
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
