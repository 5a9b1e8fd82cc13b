//! The short choice code: what a client reads out on the telephone, and the maker turns back into a pairing.

/// Digits without letters that are mistaken for figures or for each other (D. Crockford, Base 32; written from memory).
const DIGITS: &[u8; 32] = b"0123456789ABCDEFGHJKMNPQRSTVWXYZ";

/// Digits of a code that tell the pairing; one more tells a slip.
const TELLING: u32 = 6;

/// The code of a pairing, as `7KQ-2M4X`: it depends on the names of the two stocks alone.
pub fn code(cover: &str, wheel: &str) -> String {
    let number = digest(&format!("{cover}\n{wheel}")) >> (64 - 5 * TELLING);
    let mut text: String = (0..TELLING).rev().map(|k| digit(number >> (5 * k))).collect();
    text.push(check(&text));
    text.insert(3, '-');
    text
}

/// The pairing of a code, among all pairings of these stocks; `Err` says what is wrong with it.
///
/// # Errors
/// A slip of the pen, or a code of other stocks.
pub fn chosen<'a>(said: &str, stocks: &[&'a str]) -> Result<(&'a str, &'a str), String> {
    let plain: String = said.chars().filter(|c| c.is_alphanumeric()).flat_map(char::to_uppercase).map(alike).collect();
    let (telling, last) =
        plain.split_at_checked(TELLING as usize).ok_or("a code has seven letters and figures, as 7KQ-2M4X")?;
    if last.chars().ne([check(telling)]) {
        return Err(format!(
            "\u{201c}{}\u{201d} is no code: a letter or figure of it is wrong or missing",
            said.trim()
        ));
    }
    let wanted = format!("{}-{}{last}", &telling[..3], &telling[3..]);
    let pairs = stocks.iter().flat_map(|cover| stocks.iter().map(move |wheel| (*cover, *wheel)));
    let mut fitting = pairs.filter(|(cover, wheel)| code(cover, wheel) == wanted);
    fitting.next().ok_or_else(|| {
        format!("{wanted} is a code, but of stocks that are not on this shelf: look in the workshop file that the page was made with")
    })
}

/// What is mistaken for a digit.
fn alike(c: char) -> char {
    match c {
        'O' => '0',
        'I' | 'L' => '1',
        c => c,
    }
}

fn digit(value: u64) -> char {
    DIGITS[(value % 32) as usize] as char
}

/// A digit that tells every slip of one digit and every swap of two, wherever they stand: digits as elements of the field of 32,
/// weighted by its distinct powers of x, the check digit itself by 1 (a shortened Reed-Solomon code; Reed & Solomon 1960).
fn check(telling: &str) -> char {
    let value = |c: char| DIGITS.iter().position(|digit| *digit as char == c).unwrap_or(0) as u64;
    // Horner's rule, times x for the place of the check digit.
    digit(telling.chars().fold(0, |sum, c| times_x(sum ^ value(c))))
}

/// Times x in the field of 32 elements, modulo x^5 + x^2 + 1, of which x is a primitive element.
fn times_x(value: u64) -> u64 {
    let doubled = value << 1;
    if doubled & 32 == 0 { doubled } else { doubled ^ 0b10_0101 }
}

/// FNV-1a, 64 bits (Fowler, Noll, Vo; RFC 9923): the same on every machine, for ever.
fn digest(text: &str) -> u64 {
    text.bytes().fold(0xcbf2_9ce4_8422_2325, |hash, byte| (hash ^ u64::from(byte)).wrapping_mul(0x0100_0000_01b3))
}

#[cfg(test)]
mod tests {
    use super::*;

    /// The published test values of FNV-1a.
    #[test]
    fn the_digest_is_fnv_1a() {
        assert_eq!(digest(""), 0xcbf2_9ce4_8422_2325);
        assert_eq!(digest("a"), 0xaf63_dc4c_8601_ec8c);
        assert_eq!(digest("foobar"), 0x8594_4171_f739_67e8);
    }

    #[test]
    fn a_code_comes_back_and_slips_are_told() {
        let stocks = ["birch plywood 3 mm", "walnut veneer on plywood", "acrylic 3 mm"];
        for cover in stocks {
            for wheel in stocks {
                let code = code(cover, wheel);
                assert_eq!(chosen(&format!(" {} ", code.to_lowercase()), &stocks), Ok((cover, wheel)));
                for (k, c) in code.char_indices().filter(|(_, c)| *c != '-') {
                    let mut slip = code.clone();
                    slip.replace_range(k..=k, if c == 'A' { "B" } else { "A" });
                    assert!(chosen(&slip, &stocks).is_err(), "{code} {slip}");
                }
            }
        }
        assert!(
            chosen("7KQ", &stocks).is_err()
                && chosen("", &stocks).is_err()
                && chosen("\u{e9}\u{e9}\u{e9}\u{e9}", &stocks).is_err()
        );
        let far = code("oak", "elm");
        assert!(chosen(&far, &stocks).is_err_and(|why| why.contains("shelf")));
    }

    /// Any two digits that change places are told, the last one too: all pairs of digits at all pairs of places.
    #[test]
    fn swaps_are_told() {
        let sound = |digits: &[char]| {
            let (telling, last) = digits.split_at(TELLING as usize);
            check(&telling.iter().collect::<String>()) == last[0]
        };
        let mut tried = 0;
        for k in 0..32_u64.pow(2) {
            let mut digits: Vec<char> =
                (0..u64::from(TELLING)).map(|place| digit(k * (7 + place) / 5 + place)).collect();
            digits.push(check(&digits.iter().collect::<String>()));
            assert!(sound(&digits));
            for one in 0..digits.len() {
                for other in one + 1..digits.len() {
                    let mut slip = digits.clone();
                    slip.swap(one, other);
                    if slip != digits {
                        assert!(!sound(&slip), "{digits:?} {slip:?}");
                        tried += 1;
                    }
                }
            }
        }
        assert!(tried > 15_000);
    }

    /// Of all pairings of a large shelf no two have the same code.
    #[test]
    fn codes_are_apart() {
        let stocks: Vec<String> = (0..60).map(|k| format!("stock {k}")).collect();
        let mut all: Vec<String> = stocks.iter().flat_map(|a| stocks.iter().map(move |b| code(a, b))).collect();
        all.sort();
        all.dedup();
        assert_eq!(all.len(), 3600);
    }
}
