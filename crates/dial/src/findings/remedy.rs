//! Values of the dial file with which a finding goes, where its rule can work them out.

use super::Bench;
use crate::assembled::Art;
use measure::Units;

/// One way to mend a finding: keys of the dial file with what to write there; `None` leaves a value to the layout.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Remedy {
    /// Key paths, as `counter[0].mark.height`, with their values in the notation of the file.
    pub values: Vec<(String, Option<String>)>,
}

impl Remedy {
    /// One value.
    pub(super) fn set(key: impl Into<String>, value: impl Into<String>) -> Remedy {
        Remedy { values: vec![(key.into(), Some(value.into()))] }
    }

    /// Values of a wheel left to the layout, its own and the dial's.
    pub(super) fn leave(wheel: usize, paths: &[&str]) -> Remedy {
        let own = paths.iter().map(|path| format!("counter[{wheel}].{path}"));
        let all = own.chain(paths.iter().map(|path| (*path).to_owned()));
        Remedy { values: all.map(|path| (path, None)).collect() }
    }

    /// A value for some wheels: once for the dial if it is all of them, else for each of its own.
    pub(super) fn of_wheels(bench: &Bench, wheels: &[usize], path: &str, value: &str) -> Remedy {
        let own = |i: &usize| format!("counter[{i}].{path}");
        if wheels.len() == bench.dial.wheels.len() {
            let once = (path.to_owned(), Some(value.to_owned()));
            let instead = wheels.iter().map(|i| (own(i), None));
            return Remedy { values: std::iter::once(once).chain(instead).collect() };
        }
        Remedy { values: wheels.iter().map(|i| (own(i), Some(value.to_owned()))).collect() }
    }

    /// Both.
    pub(super) fn also(&self, other: Remedy) -> Remedy {
        Remedy { values: self.values.iter().cloned().chain(other.values).collect() }
    }
}

/// The height of a counter's name on the cover; other art has no key that a rule could tell.
pub(super) fn of_art(bench: &Bench, art: &Art, height: &str) -> Vec<Remedy> {
    let whose = bench.dial.wheels.iter().position(|wheel| art.weight.is_some() && wheel.name == art.what);
    whose.map(|i| Remedy::set(format!("counter[{i}].label_height"), height)).into_iter().collect()
}

/// A length as the file writes it, never less than what is needed once it is rounded.
pub(super) fn at_least(bench: &Bench, mm: f64) -> String {
    written(bench, mm, |steps| (steps - 1e-6).ceil())
}

/// A length as the file writes it, never more than may be once it is rounded.
pub(super) fn at_most(bench: &Bench, mm: f64) -> String {
    written(bench, mm, |steps| (steps + 1e-6).floor())
}

/// Rounded to what a beam can place: a hundredth of a millimetre, or half a thousandth of an inch.
fn written(bench: &Bench, mm: f64, round: fn(f64) -> f64) -> String {
    match bench.dial.show {
        Units::Millimetres => format!("{} mm", round(mm * 100.0) / 100.0),
        Units::Inches => format!("{} in", round(mm / 25.4 * 2000.0) / 2000.0),
    }
}
