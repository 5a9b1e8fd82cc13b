//! Angles: counter-clockwise from 3 o'clock, in degrees, radians, or as a place on the clock.

use std::f64::consts::{FRAC_PI_2, TAU};

/// Reads an angle with its unit, as "90 deg", "1.57 rad" or "12 o'clock", into radians, counter-clockwise from 3 o'clock.
///
/// # Errors
/// What is wrong, and what to write instead.
pub fn parse_angle(text: &str) -> Result<f64, String> {
    let text = text
        .trim()
        .replace('\u{2212}', "-")
        .replace('\u{2019}', "'");
    let help = "write an angle as “90 deg”, “1.57 rad” or “12 o'clock”";
    let split = text
        .find(|c: char| c.is_alphabetic() || c == '\u{b0}')
        .unwrap_or(text.len());
    let (figure, unit) = text.split_at(split);
    let figure = figure.trim();
    let value: f64 = figure
        .chars()
        .all(|c| c.is_ascii_digit() || c == '.' || c == '-')
        .then(|| figure.parse().ok())
        .flatten()
        .ok_or_else(|| format!("“{text}” is not an angle: {help}"))?;
    match unit.trim() {
        "deg" | "degrees" | "\u{b0}" => Ok(value.to_radians()),
        "rad" => Ok(value),
        // The clock runs the other way, from 12.
        "o'clock" if (0.0..=12.0).contains(&value) => Ok(FRAC_PI_2 - value % 12.0 / 12.0 * TAU),
        "o'clock" => Err(format!(
            "{value} o'clock is not on the clock: write 1 to 12"
        )),
        "" => Err(format!("an angle needs its unit: {help}")),
        other => Err(format!(
            "“{other}” is not a unit of angle known here: {help}"
        )),
    }
}

#[cfg(test)]
mod tests {
    use super::parse_angle;

    #[test]
    fn angles_are_read_with_their_units() {
        for (text, degrees) in [
            ("90 deg", 90.0),
            ("-30\u{b0}", -30.0),
            ("12 o'clock", 90.0),
            ("3 o\u{2019}clock", 0.0),
            ("9 o'clock", -90.0 - 90.0),
            ("4.5 o'clock", -45.0),
        ] {
            assert!(
                (parse_angle(text).expect(text).to_degrees() - degrees).abs() < 1e-9,
                "{text}"
            );
        }
        assert!((parse_angle("1.5 rad").expect("radians") - 1.5).abs() < 1e-12);
    }

    #[test]
    fn what_is_wrong_is_said() {
        for (text, says) in [
            ("90", "needs its unit"),
            ("90 grad", "not a unit"),
            ("13 o'clock", "1 to 12"),
            ("up", "not an angle"),
        ] {
            assert!(parse_angle(text).expect_err(text).contains(says), "{text}");
        }
    }
}
