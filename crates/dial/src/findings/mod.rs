//! Findings: each rule reads the assembled dial and says what it measured.

use outline::Point;

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

/// A figure with its dimension; lengths in mm, angles in radians.
#[derive(Clone, Copy, Debug, PartialEq)]
#[expect(missing_docs, reason = "the names say it")]
pub enum Quantity {
    Length(f64),
    Angle(f64),
    Share(f64),
    Count(usize),
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
