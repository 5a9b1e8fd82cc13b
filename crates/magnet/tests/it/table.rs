//! Reads the tables in tests/data, which scripts in tools/ make.

use magnet::{Disc, Pair};

/// Rows of numbers; comment lines and the one header line are left out.
pub fn rows(text: &str, columns: usize) -> Vec<Vec<f64>> {
    let rows: Vec<Vec<f64>> = text
        .lines()
        .filter(|line| !line.starts_with('#'))
        .skip(1)
        .map(|line| line.split(',').map(|cell| cell.parse().expect(line)).collect())
        .collect();
    assert!(rows.len() >= 10, "the table is nearly empty");
    for row in &rows {
        assert_eq!(row.len(), columns, "{row:?}");
    }
    rows
}

pub fn disc(d: f64, t: f64, br: f64) -> Disc {
    Disc::new(d, t, br).expect("a disc of the table")
}

/// The first six columns of a row.
pub fn pair(row: &[f64]) -> Pair {
    Pair { first: disc(row[0], row[1], row[2]), second: disc(row[3], row[4], row[5]) }
}

/// Asserts a relative agreement, and says by how much it failed.
pub fn agree(what: &str, found: f64, expected: f64, relative: f64) {
    let error = (found - expected).abs();
    assert!(
        error <= relative * expected.abs(),
        "{what}: {found} against {expected}, {:.2e} off",
        error / expected.abs()
    );
}
