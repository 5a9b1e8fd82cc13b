//! The values of a counter: ranges, and lists of words and numbers.

use super::Motif;

/// A counter has at least two stops.
pub(crate) const FEWEST: usize = 2;
/// And at most a hundred.
pub(crate) const MOST: usize = 100;
/// A range counts no further than this, up or down.
const MOST_COUNTED: u64 = 1_000_000;

/// Reads a range such as "0..24", "24..0" or "-5..20 by 5". A comma list is read as words.
///
/// # Errors
/// What is wrong, and what to write instead.
pub(crate) fn range(text: &str) -> Result<Vec<Motif>, (String, String)> {
    let plain = text.replace('\u{2212}', "-");
    let Some((from, rest)) = plain.split_once("..") else {
        let words: Vec<Motif> = text.split(',').map(str::trim).filter(|word| !word.is_empty()).map(word).collect();
        return if words.len() < FEWEST {
            Err((
                format!("“{text}” is not a range"),
                "write a range as \"0..24\", or a list as [\"calm\", \"gale\"]".into(),
            ))
        } else {
            Ok(words)
        };
    };
    let (to, step) = match rest.split_once("by") {
        Some((to, step)) => (to, Some(step)),
        None => (rest, None),
    };
    let number = |what: &str, text: &str| {
        text.trim().parse::<i64>().ok().filter(|n| n.unsigned_abs() <= MOST_COUNTED).ok_or_else(|| {
            (
                format!("the {what} of the range, “{}”, is not a whole number up to a million", text.trim()),
                "write a range as \"0..24\" or \"-5..20 by 5\"".to_owned(),
            )
        })
    };
    let (first, last) = (number("start", from)?, number("end", to)?);
    let step = step.map(|step| number("step", step)).transpose()?.unwrap_or(1).abs();
    if step == 0 {
        return Err(("a step of 0 never arrives".into(), "write a step of 1 or more".into()));
    }
    if first == last {
        return Err((format!("the range starts and ends at {first}"), "a counter needs at least two stops".into()));
    }
    let span = (last - first).abs();
    let sign = (last - first).signum();
    if span % step != 0 {
        let below = first + sign * (span / step * step);
        let above = below + sign * step;
        return Err((
            format!("in steps of {step} from {first} the range does not arrive at {last}"),
            format!("end it at {below} or at {above}"),
        ));
    }
    let stops = (span / step + 1) as usize;
    if stops > MOST {
        return Err((
            format!("the range has {stops} stops, a wheel takes {MOST}"),
            format!(
                "count in larger steps, as \"{first}..{last} by {}\", or share the count between two wheels",
                (span + 98) / 99
            ),
        ));
    }
    Ok((0..stops as i64).map(|k| integer(first + sign * step * k)).collect())
}

/// A whole number as a mark, with a true minus sign.
pub(crate) fn integer(n: i64) -> Motif {
    Motif::Text(if n < 0 { format!("\u{2212}{}", n.unsigned_abs()) } else { n.to_string() })
}

/// A word as a mark; what is a number gets its true minus sign.
pub(crate) fn word(text: &str) -> Motif {
    match text.replace('\u{2212}', "-").parse::<i64>() {
        Ok(n) if n < 0 => integer(n),
        _ => Motif::Text(text.to_owned()),
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    fn shown(text: &str) -> Vec<String> {
        range(text).expect(text).iter().map(Motif::words).collect()
    }

    #[test]
    fn ranges_run_up_and_down() {
        assert_eq!(shown("0..3"), ["0", "1", "2", "3"]);
        assert_eq!(shown("3..0"), ["3", "2", "1", "0"]);
        assert_eq!(shown("-5..10 by 5"), ["\u{2212}5", "0", "5", "10"]);
        assert_eq!(shown("10..-10 by -10"), ["10", "0", "\u{2212}10"]);
        assert_eq!(shown("calm, gale"), ["calm", "gale"]);
        assert_eq!(range("0..99").expect("a hundred").len(), 100);
    }

    #[test]
    fn impossible_ranges_say_what_to_write() {
        for (text, help) in [
            ("0..24 by 5", "20 or at 25"),
            ("0..200", "by 3"),
            ("4..4", "two stops"),
            ("0..9 by 0", "1 or more"),
            ("a..b", "0..24"),
            // The least of all whole numbers has no positive twin.
            ("-9223372036854775808..0", "0..24"),
            ("7", "0..24"),
        ] {
            let (what, says) = range(text).expect_err(text);
            assert!(says.contains(help), "{text}: {what}; {says}");
        }
    }
}
