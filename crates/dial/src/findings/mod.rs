//! Findings: each rule reads the assembled dial and says what it measured.

mod alike;
mod apparent_height;
mod art_room;
mod bared_rim;
mod bed;
mod clearances;
mod clicks;
mod contrast;
mod counting;
mod family;
mod fine_marks;
mod floors;
mod held;
mod hidden;
mod loose_magnets;
mod materials;
mod neighbours;
mod pockets;
mod remedy;
mod strokes;
mod symmetric;
mod turn_test;
mod twins;
mod webs;

use crate::assembled::Dial;
use crate::family::Member;
use crate::looks::Looks;
use crate::magnets::Held;
use crate::turning::TurnTest;
pub(crate) use floors::FLOOR;
use measure::Units;
use outline::Point;
use process::Workshop;
pub use remedy::Remedy;
pub use symmetric::{Mirrored, mirrored};

/// What a rule says.
#[derive(Clone, Debug)]
pub struct Finding {
    /// The rule's name.
    pub rule: &'static str,
    /// How much it matters.
    pub severity: Severity,
    /// What is the matter, in a sentence with both figures.
    pub what: String,
    /// The measured value, if it is a figure.
    pub measured: Option<Quantity>,
    /// The limit it was held against.
    pub limit: Option<Quantity>,
    /// The part.
    pub part: Part,
    /// The place, in assembled coordinates.
    pub place: Option<Point>,
    /// Where the limit comes from.
    pub source: &'static str,
    /// How to mend it.
    pub mend: String,
    /// Values with which it goes, where the rule can work them out: the best first. They are worked out, not tried.
    pub remedies: Vec<Remedy>,
    /// Paths of the dial file's values that matter here.
    pub keys: Vec<String>,
}

/// How much a finding matters.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub enum Severity {
    /// Good to know.
    Note,
    /// The dial can be made, but would be better mended.
    Mend,
    /// The dial cannot be made like this: no job is written.
    Refuse,
}

/// A figure with its dimension; lengths in mm, angles in radians, forces in N.
#[derive(Clone, Copy, Debug, PartialEq)]
#[expect(missing_docs, reason = "the names say it")]
pub enum Quantity {
    Length(f64),
    Angle(f64),
    Share(f64),
    Count(usize),
    Force(f64),
    /// A small visual angle in radians, told in minutes of arc.
    Sight(f64),
    /// A contrast ratio, 1 to 21.
    Ratio(f64),
}

/// Part of the dial.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
#[expect(missing_docs, reason = "the names say it")]
pub enum Part {
    Dial,
    Cover,
    Wheel(usize),
    Window(usize),
    Notch(usize),
}

/// What a rule may look at.
#[derive(Clone, Copy, Debug)]
pub struct Bench<'a> {
    /// The assembled dial.
    pub dial: &'a Dial,
    /// Its turn test.
    pub turns: &'a TurnTest,
    /// How its wheels are held.
    pub held: &'a [Option<Held>],
    /// What can be read of it, and from where.
    pub looks: &'a Looks,
    /// The workshop's machine and stocks.
    pub workshop: &'a Workshop,
    /// Other dials of its family.
    pub family: &'a [Member],
}

impl Bench<'_> {
    /// A length as this maker reads it.
    fn show(&self, mm: f64) -> String {
        measure::show(mm, self.dial.show)
    }
}

/// A rule: reads the bench, says what it found.
type Rule = fn(&Bench) -> Vec<Finding>;

/// All rules, in the order in which a maker would look.
const RULES: &[Rule] = &[
    materials::check,
    turn_test::check,
    counting::check,
    twins::check,
    fine_marks::check,
    contrast::check,
    apparent_height::check,
    hidden::check,
    strokes::check,
    webs::check,
    bared_rim::check,
    clearances::check,
    pockets::check,
    floors::check,
    held::check,
    clicks::check,
    neighbours::check,
    family::check,
    loose_magnets::check,
    symmetric::check,
    art_room::check,
    bed::check,
];

/// The rules of what can be read from where.
const READING: &[Rule] = &[contrast::check, apparent_height::check, hidden::check, strokes::check];

/// Applies the rules of what can be read from where, as `check` does with all.
pub(crate) fn check_reading(bench: &Bench) -> Vec<Finding> {
    sorted(READING.iter().flat_map(|rule| rule(bench)).collect())
}

/// Applies all rules; the gravest findings first, else in the order of the rules.
pub fn check(bench: &Bench) -> Vec<Finding> {
    sorted(RULES.iter().flat_map(|rule| rule(bench)).collect())
}

/// What the rule of the family alone says, as `check` does with all: a finding for each of the others, in their order.
pub fn check_family(bench: &Bench) -> Vec<Finding> {
    family::check(bench)
}

fn sorted(mut findings: Vec<Finding>) -> Vec<Finding> {
    findings.sort_by_key(|finding| std::cmp::Reverse(finding.severity));
    findings
}

/// Whether any finding forbids making the dial.
pub fn refuses(findings: &[Finding]) -> bool {
    findings.iter().any(|finding| finding.severity == Severity::Refuse)
}

impl Quantity {
    /// The figure with its unit, as this maker reads it.
    pub fn show(&self, units: Units) -> String {
        match self {
            Quantity::Length(mm) => measure::show(*mm, units),
            Quantity::Angle(radians) => format!("{:.1}\u{b0}", radians.to_degrees()),
            // Never rounded up to a whole: 99.96 % is not all.
            Quantity::Share(share) => format!("{:.1} %", (share * 1000.0).floor() / 10.0),
            Quantity::Count(count) => count.to_string(),
            // Never rounded up: 15.96' is not 16'.
            Quantity::Sight(radians) => format!("{:.1}'", (sight::arcmin(*radians) * 10.0 + 1e-6).floor() / 10.0),
            Quantity::Ratio(ratio) => format!("{:.2}:1", (ratio * 100.0 + 1e-6).floor() / 100.0),
            Quantity::Force(force) => format!("{force:.2} N"),
        }
    }
}

impl Severity {
    /// The word for it.
    pub fn word(self) -> &'static str {
        match self {
            Severity::Note => "note",
            Severity::Mend => "mend",
            Severity::Refuse => "refuse",
        }
    }
}

impl Part {
    /// What the part is called.
    pub fn words(self, dial: &Dial) -> String {
        let name = |i: usize| dial.wheels.get(i).map_or("?", |wheel| wheel.name.as_str());
        match self {
            Part::Dial => "dial".into(),
            Part::Cover => "cover".into(),
            Part::Wheel(i) => format!("wheel {}", name(i)),
            Part::Window(i) => format!("window of {}", name(i)),
            Part::Notch(i) => format!("notch of {}", name(i)),
        }
    }
}
