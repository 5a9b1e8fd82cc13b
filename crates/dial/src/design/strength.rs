//! Reads what has a strength: a magnet's grade, friction, a number with its unit.

use super::value::{Wrong, wrong};
use measure::Interval;

/// A number with its unit, as "2.5 N".
pub(super) fn with_unit(said: &str, unit: &str, low: f64, high: f64) -> Result<f64, Wrong> {
    let help = || format!("write {low} to {high} {unit}, as \"{} {unit}\"", (low + high) / 2.0);
    let Some(number) = said.trim().strip_suffix(unit).and_then(|number| number.trim().parse::<f64>().ok()) else {
        return Err(wrong(format!("not a number of {unit}"), help()));
    };
    if (low..=high).contains(&number) { Ok(number) } else { Err(wrong("out of range", help())) }
}

/// A grade as "N42", or a remanence as "1.3 T" or "1.28 to 1.32 T": the remanence in T.
pub(super) fn grade(said: &str) -> Result<Interval, Wrong> {
    let said = said.trim();
    if said.starts_with(['N', 'n']) {
        let grade: magnet::Grade = said
            .parse()
            .map_err(|error: magnet::DiscError| wrong(error.to_string(), "write the grade on the magnets' bag"))?;
        let [least, most] = grade.remanence();
        return Ok(Interval::between(least, most));
    }
    let help = "write a grade as \"N42\", or a remanence in tesla as \"1.3 T\"";
    let both = said.strip_suffix(['T', 't']).and_then(interval);
    let both = both.ok_or_else(|| wrong("neither a grade nor a remanence", help))?;
    if both.low >= 0.05 && both.high <= 2.0 {
        Ok(both)
    } else {
        Err(wrong("no magnet has this remanence", "write 0.05 to 2 T; NdFeB has 1.16 to 1.48 T"))
    }
}

/// Friction as a coefficient or as the angle of tilt at which one face begins to slide on the other, of which it is the tangent; one
/// value or two.
pub(super) fn friction(said: &str) -> Result<Interval, Wrong> {
    let said = said.trim();
    let help = "write a coefficient as \"0.2 to 0.4\", or the angle at which it slides as \"12 to 20 deg\"";
    let unit = ["degrees", "deg", "\u{b0}"].iter().find_map(|unit| said.strip_suffix(unit));
    let both = match unit {
        Some(angles) => interval(angles)
            .filter(|angles| angles.high < 80.0)
            .map(|angles| Interval::between(angles.low.to_radians().tan(), angles.high.to_radians().tan())),
        None => interval(said),
    };
    let both = both.ok_or_else(|| wrong("neither a coefficient of friction nor an angle of tilt", help))?;
    if both.low >= 0.02 && both.high <= 2.0 {
        Ok(both)
    } else {
        Err(wrong("out of range", "write a coefficient from 0.02 to 2; dry sanded wood has 0.2 to 0.5"))
    }
}

/// "0.3" or "0.2 to 0.4".
fn interval(said: &str) -> Option<Interval> {
    let number = |text: &str| text.trim().parse::<f64>().ok().filter(|number| number.is_finite());
    match said.split_once("to") {
        Some((low, high)) => Some(Interval::between(number(low)?, number(high)?)),
        None => number(said).map(Interval::exactly),
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn grades_and_friction_are_read_in_all_their_forms() {
        let near = |read: Result<Interval, Wrong>, low: f64, high: f64| {
            let read = read.unwrap_or_else(|wrong| panic!("{}", wrong.words));
            assert!((read.low - low).abs() < 1e-4 && (read.high - high).abs() < 1e-4, "{read:?}");
        };
        near(grade("n42sh"), 1.28, 1.32);
        near(grade("1.25 T"), 1.25, 1.25);
        near(grade("1.2 to 1.3T"), 1.2, 1.3);
        near(friction("0.4 to 0.2"), 0.2, 0.4);
        // tan 17 degrees, from a table of tangents.
        near(friction("17 deg"), 0.3057, 0.3057);
        for text in ["N99", "42", "1.3", "13 T", "", "T"] {
            assert!(grade(text).is_err(), "{text}");
        }
        for text in ["", "slippery", "3", "0", "89 deg", "0.2 to", "-0.2"] {
            assert!(friction(text).is_err(), "{text}");
        }
    }
}
