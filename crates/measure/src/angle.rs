//! Angles: counter-clockwise from 3 o'clock, in degrees, radians, or as a place on the clock.

use crate::Unreadable;
use std::f64::consts::{FRAC_PI_2, TAU};

const HELP: &str = "write as “90 deg”, “1.57 rad” or “12 o'clock”";

/// Reads an angle with its unit, as "90 deg", "1.57 rad", "12 o'clock" or "1:30 o'clock", into radians, counter-clockwise from 3 o'clock.
///
/// # Errors
/// What is wrong, and what to write instead.
pub fn parse_angle(text: &str) -> Result<f64, Unreadable> {
    let text = text.trim().replace('\u{2212}', "-").replace('\u{2019}', "'");
    let split = text.find(|c: char| c.is_alphabetic() || c == '\u{b0}').unwrap_or(text.len());
    let (figure, unit) = text.split_at(split);
    let (figure, unit) = (figure.trim(), unit.trim());
    if unit == "o'clock" {
        return clock(figure);
    }
    let value = number(figure).ok_or_else(|| Unreadable::new(format!("“{text}” is not an angle"), HELP))?;
    match unit {
        "deg" | "degrees" | "\u{b0}" => Ok(value.to_radians()),
        "rad" => Ok(value),
        "" => Err(Unreadable::new("an angle needs its unit", HELP)),
        other => Err(Unreadable::new(format!("“{other}” is not a unit of angle known here"), HELP)),
    }
}

/// A place on the clock, which runs clockwise from 12: a full or half hour as "7" or "7:30", or hours as "4.5".
fn clock(figure: &str) -> Result<f64, Unreadable> {
    let hours = match figure.split_once(':') {
        Some((hours, "00")) => number(hours).filter(|hours| hours.fract() == 0.0),
        Some((hours, "30")) => number(hours).filter(|hours| hours.fract() == 0.0).map(|hours| hours + 0.5),
        Some(_) => None,
        None => number(figure),
    };
    hours.filter(|hours| (0.0..13.0).contains(hours)).map(|hours| FRAC_PI_2 - hours % 12.0 / 12.0 * TAU).ok_or_else(
        || {
            Unreadable::new(
                format!("{figure} o'clock is not on the clock"),
                "write 1 to 12, or a half hour as “1:30 o'clock”",
            )
        },
    )
}

fn number(figure: &str) -> Option<f64> {
    figure
        .chars()
        .all(|c| c.is_ascii_digit() || c == '.' || c == '-')
        .then(|| figure.parse().ok())
        .flatten()
        .filter(|value: &f64| value.is_finite())
}

#[cfg(test)]
mod tests {
    use super::parse_angle;
    use proptest::prelude::*;

    #[test]
    fn angles_are_read_with_their_units() {
        for (text, degrees) in [
            ("90 deg", 90.0),
            ("-30\u{b0}", -30.0),
            ("12 o'clock", 90.0),
            ("3 o\u{2019}clock", 0.0),
            ("9 o'clock", -90.0 - 90.0),
            ("4.5 o'clock", -45.0),
            ("1:30 o'clock", 45.0),
            ("12:30 o'clock", 75.0),
        ] {
            assert!((parse_angle(text).expect(text).to_degrees() - degrees).abs() < 1e-9, "{text}");
        }
        assert!((parse_angle("1.5 rad").expect("radians") - 1.5).abs() < 1e-12);
    }

    #[test]
    fn what_is_wrong_is_said() {
        for (text, says) in [
            ("90", "needs its unit"),
            ("90 grad", "not a unit"),
            ("13 o'clock", "1 to 12"),
            ("1:20 o'clock", "half hour"),
            ("-1 o'clock", "1 to 12"),
            ("up", "not an angle"),
        ] {
            let error = parse_angle(text).expect_err(text).to_string();
            assert!(error.contains(says), "{text}: {error}");
        }
    }

    proptest! {
        #[test]
        fn any_text_is_answered(text in ".*|-?[0-9.:]{0,12} ?(deg|rad|o'clock)") {
            let _ = parse_angle(&text).map(|angle| assert!(angle.is_finite()));
        }
    }
}
