//! What a magnet of this dial can do once it is loose. No verdict on who may have the dial: that is for local law and an accredited
//! laboratory.

use super::poles;
use crate::assembled::{Dial, Disc};
use magnet::FluxIndex;

/// A kind of magnet, loose.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Loose {
    /// The magnet.
    pub disc: Disc,
    /// How many are in the dial.
    pub count: usize,
    /// Its flux index at the strongest that its grade allows.
    pub flux: FluxIndex,
    /// Whether it fits the small-parts cylinder: 31.7 mm across, 25.4 mm deep at its shallowest (16 CFR 1501.4; figure from memory).
    pub small_part: bool,
}

/// Every kind of magnet in a dial. A magnet that cannot be is left out.
pub fn loose(dial: &Dial) -> Vec<Loose> {
    let kinds = poles::count(dial).into_iter();
    kinds
        .filter_map(|(disc, count)| {
            let strongest = magnet::Disc::new(disc.diameter, disc.thickness, disc.remanence.high).ok()?;
            let small_part = disc.diameter < 31.7 && disc.thickness < 25.4;
            Some(Loose { disc, count: count.glued, flux: strongest.flux_index(), small_part })
        })
        .collect()
}

/// Whether a text on a dial says for which age it is, or that it is safe: such labels need tests that no computation replaces.
pub fn age_label(text: &str) -> bool {
    let lower = text.to_lowercase();
    let words: Vec<&str> =
        lower.split(|c: char| !c.is_alphanumeric() && c != '+').filter(|word| !word.is_empty()).collect();
    let says = |list: &[&str]| words.iter().any(|word| list.contains(word));
    let years = |word: &&str| {
        let figures = word.trim_end_matches('+');
        figures.len() != word.len()
            && (1..=2).contains(&figures.len())
            && figures.bytes().all(|byte| byte.is_ascii_digit())
    };
    let aged = says(&["age", "ages", "aged", "years", "yrs"])
        && words.iter().any(|word| word.bytes().any(|b| b.is_ascii_digit()));
    let safe = says(&["safe", "suitable", "for"]) && says(&["child", "children", "kids", "toddlers", "babies"]);
    aged || safe || words.len() == 1 && words.iter().any(years)
}

#[cfg(test)]
mod tests {
    use super::age_label;

    #[test]
    fn age_labels_are_told_from_other_words() {
        for text in ["8+", "Ages 8 and up", "age 14+", "3 years +", "safe for children", "For kids", "Aged 6-99"] {
            assert!(age_label(text), "{text}");
        }
        for text in
            ["Harbour", "+", "score 10+", "Age of Sail", "Bronze Age", "12", "lamp oil", "children of the moon", "+5"]
        {
            assert!(!age_label(text), "{text}");
        }
    }
}
