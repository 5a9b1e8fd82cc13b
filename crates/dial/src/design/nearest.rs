//! The known name nearest to one that is not known.

/// The nearest of some names, if it is near enough to be meant: at most a third of its letters differ, or one holds the other.
pub(crate) fn nearest<'a>(name: &str, known: impl IntoIterator<Item = &'a str>) -> Option<&'a str> {
    let name = name.to_lowercase();
    known
        .into_iter()
        .map(|one| (distance(&name, &one.to_lowercase()), one))
        .filter(|(off, one)| {
            *off * 3 <= one.chars().count().max(3) || name.len() > 3 && one.to_lowercase().contains(&name)
        })
        .min_by_key(|(off, _)| *off)
        .map(|(_, one)| one)
}

/// Letters to change, add, leave out or swap with their neighbour (Damerau 1964, restricted).
fn distance(a: &str, b: &str) -> usize {
    let (a, b): (Vec<char>, Vec<char>) = (a.chars().collect(), b.chars().collect());
    let mut rows = vec![(0..=b.len()).collect::<Vec<usize>>()];
    for i in 1..=a.len() {
        let mut row = vec![i];
        for j in 1..=b.len() {
            let change = rows[i - 1][j - 1] + usize::from(a[i - 1] != b[j - 1]);
            let mut least = change.min(rows[i - 1][j] + 1).min(row[j - 1] + 1);
            if i > 1 && j > 1 && a[i - 1] == b[j - 2] && a[i - 2] == b[j - 1] {
                least = least.min(rows[i - 2][j - 2] + 1);
            }
            row.push(least);
        }
        rows.push(row);
    }
    rows[a.len()][b.len()]
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn slips_of_the_pen_are_found() {
        let known = ["height", "margin", "weight", "twins"];
        assert_eq!(nearest("hieght", known), Some("height"));
        assert_eq!(nearest("Margin", known), Some("margin"));
        assert_eq!(nearest("colour", known), None);
        assert_eq!(distance("kitten", "sitting"), 3);
    }
}
