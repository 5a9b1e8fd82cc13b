//! A counter as it is said on the command line: "provisions 0..24", "score -5..20 by 5", "sky: calm, breeze, gale".

/// Splits a counter's brief into its name and its values; `Err` says what is missing.
pub fn split(brief: &str) -> Result<(String, String), String> {
    let brief = brief.trim();
    let (name, values) = if let Some((name, values)) = brief.split_once(':') {
        (name, values)
    } else {
        // The range is the first word with two dots in it; what stands before it is the name.
        let at = brief
            .split_whitespace()
            .find(|word| word.contains(".."))
            .map(|word| word.as_ptr() as usize - brief.as_ptr() as usize)
            .ok_or_else(|| example(brief))?;
        brief.split_at(at)
    };
    let (name, values) = (name.trim(), values.trim());
    if name.is_empty() || values.is_empty() { Err(example(brief)) } else { Ok((name.into(), values.into())) }
}

fn example(brief: &str) -> String {
    format!(
        "“{brief}” does not say what is counted and how far: write a name and a range, as \"provisions 0..24\", or a name, a colon and words, as \"sky: calm, breeze, gale\""
    )
}

#[cfg(test)]
mod tests {
    use super::split;

    #[test]
    fn names_and_values_part_at_the_range_or_the_colon() {
        let parts = |text: &str| split(text).expect(text);
        assert_eq!(parts("provisions 0..24"), ("provisions".into(), "0..24".into()));
        assert_eq!(parts("lamp oil -5..20 by 5"), ("lamp oil".into(), "-5..20 by 5".into()));
        assert_eq!(parts("sky: calm, breeze"), ("sky".into(), "calm, breeze".into()));
        for bad in ["", "0..24", "provisions", "sky:", ": calm"] {
            assert!(split(bad).is_err(), "{bad}");
        }
    }
}
