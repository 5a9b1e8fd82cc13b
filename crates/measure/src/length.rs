//! Lengths: read with their unit, shown in mm or inches.

use crate::Unreadable;

/// Millimetres in an inch, exactly (international yard and pound agreement, 1959; ISO 80000-3).
pub const INCH: f64 = 25.4;
/// Longer lengths than this are a slip of the pen, in mm.
const LONGEST: f64 = 10_000.0;

/// Units in which lengths are shown.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
pub enum Units {
    /// Millimetres.
    #[default]
    Millimetres,
    /// Inches, in the fractions of a tape where they fit.
    Inches,
}

/// Reads a length with its unit, as "3.2 mm", "12mm", "1/8 in", "1 1/2 in", "2 cm", into mm.
///
/// # Errors
/// What is wrong, and what to write instead.
pub fn parse_length(text: &str) -> Result<f64, Unreadable> {
    let text = text.trim().replace('\u{2212}', "-");
    let split = text.find(|c: char| c.is_alphabetic() || c == '"' || c == '\u{2033}').unwrap_or(text.len());
    let (figure, unit) = text.split_at(split);
    let (figure, unit) = (figure.trim(), unit.trim());
    let size = match unit {
        "mm" => 1.0,
        "cm" => 10.0,
        "in" | "inch" | "inches" | "\"" | "\u{2033}" => INCH,
        "" => {
            let figure = if figure.is_empty() { "3.2" } else { figure };
            return Err(Unreadable::new("a length needs its unit", format!("write “{figure} mm” or “{figure} in”")));
        }
        other => {
            return Err(Unreadable::new(format!("“{other}” is not a unit of length known here"), "write mm, cm or in"));
        }
    };
    if figure.contains(',') {
        return Err(comma(figure, unit));
    }
    let value = number(figure)? * size;
    if value.abs() > LONGEST {
        return Err(Unreadable::new(format!("{text} is longer than any bed"), "is the unit right?"));
    }
    Ok(value)
}

/// A comma may stand for the decimal point, or part the thousands: where it can be either, both are offered.
fn comma(figure: &str, unit: &str) -> Unreadable {
    let point = format!("“{} {unit}”", figure.replace(',', "."));
    let thousands = figure.rsplit(',').next().is_some_and(|end| end.len() == 3);
    let help = if thousands {
        format!("write “{} {unit}” or {point}", figure.replace(',', ""))
    } else {
        format!("write {point}, with a point")
    };
    Unreadable::new(format!("“{figure}” has a comma"), help)
}

/// A decimal number, a fraction, or a whole number and a fraction.
fn number(figure: &str) -> Result<f64, Unreadable> {
    let cannot = || Unreadable::new(format!("“{figure}” is not a number"), "write as “3.2”, “1/8” or “1 1/2”");
    let (minus, figure) = match figure.strip_prefix('-') {
        Some(rest) => (-1.0, rest.trim()),
        None => (1.0, figure),
    };
    let plain = |text: &str| {
        let digits = !text.is_empty() && text.chars().all(|c| c.is_ascii_digit() || c == '.');
        digits.then(|| text.parse::<f64>().ok()).flatten()
    };
    let fraction = |text: &str| {
        let (over, under) = text.split_once('/')?;
        let (over, under) = (plain(over.trim())?, plain(under.trim())?);
        (under > 0.0).then_some(over / under)
    };
    let value = match figure.split_once(char::is_whitespace) {
        Some((whole, rest)) => plain(whole).zip(fraction(rest.trim())).map(|(whole, part)| whole + part),
        None => plain(figure).or_else(|| fraction(figure)),
    };
    value.map(|value| minus * value).ok_or_else(cannot)
}

/// A length in mm as a maker reads it: "3.25 mm"; "1/8 in" where a 64th of an inch is exact, else "0.317 in".
pub fn show(mm: f64, units: Units) -> String {
    match units {
        Units::Millimetres => format!("{} mm", decimals(mm, 2)),
        Units::Inches => format!("{} in", inches(mm / INCH)),
    }
}

fn inches(inches: f64) -> String {
    let sixty_fourths = (inches * 64.0).round();
    // A fraction is what the tape shows; what lies off it by more than 5 microns, and does not come to
    // lie there when it is rounded, is told in decimals.
    let off = |inches: f64| (sixty_fourths / 64.0 - inches).abs() * INCH > 0.005;
    if off(inches) && off((inches * 1000.0).round() / 1000.0) || sixty_fourths == 0.0 && inches != 0.0 {
        return decimals(inches, 3);
    }
    let sign = if sixty_fourths < 0.0 { "\u{2212}" } else { "" };
    let all = sixty_fourths.abs() as u64;
    let (whole, mut over, mut under) = (all / 64, all % 64, 64);
    while over > 0 && over % 2 == 0 {
        (over, under) = (over / 2, under / 2);
    }
    match (whole, over) {
        (whole, 0) => format!("{sign}{whole}"),
        (0, over) => format!("{sign}{over}/{under}"),
        (whole, over) => format!("{sign}{whole} {over}/{under}"),
    }
}

/// A number with at most so many decimals, no trailing zeros, a true minus sign, and no minus before zero.
fn decimals(value: f64, places: usize) -> String {
    let text = format!("{value:.places$}");
    let text = if text.contains('.') { text.trim_end_matches('0').trim_end_matches('.') } else { &text };
    match text.strip_prefix('-') {
        Some("0") => "0".into(),
        Some(rest) => format!("\u{2212}{rest}"),
        None => text.into(),
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use proptest::prelude::*;

    #[test]
    fn lengths_are_read_with_their_units() {
        let cases = [
            ("3.2 mm", 3.2),
            ("12mm", 12.0),
            ("1/8 in", 3.175),
            ("1 1/2 in", 38.1),
            ("0.5\"", 12.7),
            ("2 cm", 20.0),
            ("-5/8 in", -15.875),
            ("\u{2212}3 mm", -3.0),
            (" 7 mm ", 7.0),
        ];
        for (text, mm) in cases {
            assert!((parse_length(text).expect(text) - mm).abs() < 1e-12, "{text}");
        }
    }

    #[test]
    fn what_is_wrong_is_said() {
        for (text, says) in [
            ("12", "12 mm"),
            ("3,2 mm", "3.2 mm"),
            ("1,000 mm", "1000 mm"),
            ("12 km", "km"),
            ("mm", "not a number"),
            ("1/0 in", "not a number"),
            ("999999 mm", "longer than any bed"),
            ("", "unit"),
            ("1e3 mm", "not a unit"),
            ("nan mm", "not a unit"),
        ] {
            let error = parse_length(text).expect_err(text);
            assert!(error.to_string().contains(says), "{text}: {error}");
        }
    }

    #[test]
    fn lengths_are_shown_as_on_a_tape() {
        assert_eq!(show(3.25, Units::Millimetres), "3.25 mm");
        assert_eq!(show(40.0, Units::Millimetres), "40 mm");
        assert_eq!(show(-0.001, Units::Millimetres), "0 mm");
        assert_eq!(show(3.175, Units::Inches), "1/8 in");
        assert_eq!(show(38.1, Units::Inches), "1 1/2 in");
        assert_eq!(show(3.0, Units::Inches), "0.118 in");
        assert_eq!(show(0.1, Units::Inches), "0.004 in");
    }

    proptest! {
        /// What is shown reads back as what was shown.
        #[test]
        fn shown_lengths_read_back(mm in -900.0f64..900.0, inches: bool) {
            let units = if inches { Units::Inches } else { Units::Millimetres };
            let shown = show(mm, units);
            let read = parse_length(&shown).expect("reads back");
            // Half the last decimal, and for inches the 5 microns by which a fraction may be off.
            let off = if inches { 0.0005 * INCH + 0.005 } else { 0.005 };
            prop_assert!((read - mm).abs() <= off + 1e-9, "{mm} -> {shown} -> {read}");
            prop_assert_eq!(show(read, units), shown);
        }

        #[test]
        fn any_text_is_answered(text in ".*") {
            let _ = parse_length(&text).map(|mm| assert!(mm.is_finite()));
        }
    }
}
