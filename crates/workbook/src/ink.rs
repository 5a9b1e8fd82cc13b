//! Words as the shipped font can show them: what it does not cover is marked where it stands and named, and what has no place to break
//! gets some.

use crate::world;
use serde_json::Value;

/// Stands for a run of characters that the font does not cover.
const MARK: &str = "[?]";
/// Longest run of letters without a place to break.
const UNBROKEN: usize = 22;
/// Invisible, and a line may break there.
const MAY_BREAK: char = '\u{200b}';

/// Words that the font does not cover.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct NotCovered {
    /// The words, as the maker wrote them.
    pub words: String,
    /// The characters that the font lacks, each once.
    pub characters: Vec<char>,
}

impl NotCovered {
    /// The characters by their code points, as "U+0645 U+0631".
    pub fn code_points(&self) -> String {
        self.characters.iter().map(|c| format!("U+{:04X}", u32::from(*c))).collect::<Vec<_>>().join(" ")
    }
}

/// Mends every string of the data, and names what is not covered.
pub(crate) fn mend(data: &mut Value, found: &mut Vec<NotCovered>) {
    match data {
        Value::String(words) => *words = mended(words, found),
        Value::Array(all) => all.iter_mut().for_each(|one| mend(one, found)),
        Value::Object(all) => all.values_mut().for_each(|one| mend(one, found)),
        _ => {}
    }
}

fn mended(words: &str, found: &mut Vec<NotCovered>) -> String {
    let mut out = String::with_capacity(words.len());
    let mut lacking: Vec<char> = Vec::new();
    let (mut run, mut in_mark) = (0, false);
    for c in words.chars() {
        let c = if c.is_whitespace() && c != '\u{a0}' { ' ' } else { c };
        // Characters that only steer others (joiners, directions, variants) would steer ours.
        if is_steering(c) {
            continue;
        }
        if c.is_control() || !world::covers(c) {
            if !lacking.contains(&c) {
                lacking.push(c);
            }
            if !in_mark {
                out += MARK;
            }
            (run, in_mark) = (0, true);
            continue;
        }
        in_mark = false;
        run = if matches!(c, ' ' | '-' | '/') { 0 } else { run + 1 };
        if run > UNBROKEN {
            out.push(MAY_BREAK);
            run = 1;
        }
        out.push(c);
    }
    let known = |c: &char| found.iter().any(|one| one.characters.contains(c));
    if !lacking.iter().all(known) {
        found.push(NotCovered { words: words.to_owned(), characters: lacking });
    }
    out
}

/// Format characters: directions, joiners, isolates, variation selectors, tags (Unicode general category Cf, and Mn of variants).
fn is_steering(c: char) -> bool {
    matches!(c, '\u{ad}' | '\u{61c}' | '\u{180e}' | '\u{200b}'..='\u{200f}' | '\u{202a}'..='\u{202e}' | '\u{2060}'..='\u{206f}'
        | '\u{feff}' | '\u{fe00}'..='\u{fe0f}' | '\u{e0000}'..='\u{e0fff}')
}

/// A name as one line, without what cannot be seen.
pub(crate) fn one_line(name: &str) -> String {
    let seen: String = name.chars().filter(|c| c.is_whitespace() || !(c.is_control() || is_steering(*c))).collect();
    seen.split_whitespace().collect::<Vec<_>>().join(" ")
}

/// A name that fits where there is room for so many letters.
pub(crate) fn short(name: &str, letters: usize) -> String {
    let one_line: String = name.split_whitespace().collect::<Vec<_>>().join(" ");
    if one_line.chars().count() <= letters {
        return one_line;
    }
    let kept: String = one_line.chars().take(letters - 1).collect();
    format!("{}\u{2026}", kept.trim_end())
}

#[cfg(test)]
mod tests {
    use super::*;

    fn set(words: &str) -> (String, Vec<NotCovered>) {
        let mut found = Vec::new();
        (mended(words, &mut found), found)
    }

    #[test]
    fn what_is_covered_stays_as_it_is() {
        for words in [
            "Harbour",
            "#set page(width: 1pt) $x$ *b* _i_ \\ @ref <label>",
            "Müller \u{2212}3.2 mm \u{b1}0.1 \u{201c}a\u{201d}",
        ] {
            assert_eq!(set(words), (words.to_owned(), Vec::new()));
        }
    }

    #[test]
    fn what_is_not_covered_is_marked_and_named() {
        let (words, found) = set("ميناء harbour 🚢");
        assert_eq!(words, "[?] harbour [?]");
        assert_eq!(found[0].code_points(), "U+0645 U+064A U+0646 U+0627 U+0621 U+1F6A2");
        let (words, _) = set("a\u{202e}b\u{7}c");
        assert_eq!(words, "ab[?]c");
    }

    #[test]
    fn long_words_can_break_and_short_names_end_in_an_ellipsis() {
        let (words, _) = set(&"x".repeat(300));
        assert!(words.split(MAY_BREAK).all(|part| part.len() <= UNBROKEN));
        assert_eq!(words.replace(MAY_BREAK, ""), "x".repeat(300));
        assert_eq!(short("a very long name", 8), "a very\u{2026}");
        assert_eq!(short("a  b", 8), "a b");
    }
}
