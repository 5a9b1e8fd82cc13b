//! The one table of parameters: it feeds the reader, the messages, the reference page, the schema and the new file.

use measure::{parse_angle, parse_length};

/// One parameter of a file.
#[derive(Clone, Copy, Debug)]
pub struct Param {
    /// Where it stands: `mark.height` is the key `height` of the table `mark`.
    pub path: &'static str,
    /// What is written there.
    pub kind: Kind,
    /// What holds when it is not written.
    pub default: Default,
    /// What it means, to the maker.
    pub words: &'static str,
    /// Where the default or the limits come from.
    pub source: &'static str,
}

/// What is written for a parameter.
#[derive(Clone, Copy, Debug)]
pub enum Kind {
    /// Any text.
    Text,
    /// A length with its unit, within limits in mm.
    Length(f64, f64),
    /// An angle with its unit.
    Angle,
    /// A plain number from 0 to 1, within limits.
    Share(f64, f64),
    /// A plain number within limits.
    Number(f64, f64),
    /// A number with this unit, within limits.
    Unit(&'static str, f64, f64),
    /// A magnet's grade or remanence: an interval in T.
    Grade,
    /// A coefficient of friction or an angle of tilt, one or two of it: an interval of the coefficient.
    Friction,
    /// A whole number within limits.
    Count(i64, i64),
    /// true or false.
    Flag,
    /// One of some words.
    Choice(&'static [&'static str]),
    /// Two lengths: to the right and up.
    Point,
    /// A list of points.
    Points,
    /// A range such as "0..24", or a list of words and numbers.
    Values,
    /// A list of some of these words; of any words where none are told.
    Words(&'static [&'static str]),
    /// A list of built-in symbols.
    Symbols,
    /// A built-in symbol.
    Symbol,
    /// The name of a stock.
    Stock,
    /// A colour as #rrggbb.
    Colour,
    /// A list of tables, each with these parameters; written as `[[name]]` or in line.
    List(&'static [&'static [Param]]),
    /// Tables by name, each with these parameters; written as `[stocks.name]`.
    Named(&'static [&'static [Param]]),
}

/// What holds when a parameter is not written.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum Default {
    /// It must be written.
    Required,
    /// This, in the file's own notation.
    Fixed(&'static str),
    /// What the layout or a rule derives, in words.
    Derived(&'static str),
}

/// A file's parameters: groups that share a table.
pub type Groups = &'static [&'static [Param]];

/// All parameters of some groups.
pub fn all(groups: Groups) -> impl Iterator<Item = &'static Param> {
    groups.iter().flat_map(|group| group.iter())
}

/// The parameter of a path.
pub fn find(groups: Groups, path: &str) -> Option<&'static Param> {
    all(groups).find(|param| param.path == path)
}

impl Param {
    /// Its key within its table.
    pub fn key(&self) -> &'static str {
        self.path.rsplit('.').next().unwrap_or(self.path)
    }
}

impl Kind {
    /// Whether it is written without quotes.
    pub(crate) fn is_bare(&self) -> bool {
        matches!(self, Kind::Flag | Kind::Count(..) | Kind::Share(..) | Kind::Number(..))
    }

    /// What may be written, in words.
    pub fn words(&self) -> String {
        let length = |mm: f64| measure::show(mm, measure::Units::Millimetres);
        match self {
            Kind::Text => "text".into(),
            Kind::Length(low, high) => format!("a length, {} to {}", length(*low), length(*high)),
            Kind::Angle => "an angle, as \"90 deg\" or \"12 o'clock\"".into(),
            Kind::Share(low, high) | Kind::Number(low, high) => format!("a number, {low} to {high}"),
            Kind::Unit(unit, low, high) => format!("{low} to {high} {unit}, with the unit"),
            Kind::Grade => "a grade as \"N42\", or a remanence as \"1.3 T\" or \"1.28 to 1.32 T\"".into(),
            Kind::Friction => {
                "a coefficient as \"0.3\", an angle of tilt as \"17 deg\", or two as \"0.2 to 0.4\"".into()
            }
            Kind::Count(low, high) => format!("a whole number, {low} to {high}"),
            Kind::Flag => "true or false".into(),
            Kind::Choice(words) => {
                let words: Vec<String> = words.iter().map(|word| format!("\"{word}\"")).collect();
                format!("one of {}", words.join(", "))
            }
            Kind::Point => "a place from the cover's middle, as [\"10 mm\", \"-4 mm\"]: to the right and up".into(),
            Kind::Points => "a list of places from the cover's middle".into(),
            Kind::Values => "a range, as \"0..24\" or \"-5..20 by 5\", or a list of words and numbers".into(),
            Kind::Words([]) => "a list of texts".into(),
            Kind::Words(words) => {
                let words: Vec<String> = words.iter().map(|word| format!("\"{word}\"")).collect();
                format!("a list of some of {}", words.join(", "))
            }
            Kind::Symbols => "a list of built-in symbols".into(),
            Kind::Symbol => "a built-in symbol".into(),
            Kind::Stock => "the name of a stock".into(),
            Kind::Colour => "a colour, as \"#0072b2\"".into(),
            Kind::List(_) => "a list of tables".into(),
            Kind::Named(_) => "tables by name".into(),
        }
    }
}

/// A fixed default length, in mm.
pub(crate) fn default_length(groups: Groups, path: &str) -> f64 {
    fixed(groups, path).and_then(|text| parse_length(text).ok()).unwrap_or_default()
}

/// A fixed default angle, in radians.
pub(crate) fn default_angle(groups: Groups, path: &str) -> f64 {
    fixed(groups, path).and_then(|text| parse_angle(text).ok()).unwrap_or_default()
}

/// A fixed default as it is written.
pub(crate) fn fixed(groups: Groups, path: &str) -> Option<&'static str> {
    match find(groups, path)?.default {
        Default::Fixed(text) => Some(text),
        _ => None,
    }
}
