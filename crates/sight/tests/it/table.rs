//! Reads the tables in tests/data, which scripts in tools/ make.

/// Rows of cells; comment lines and the one header line are left out.
pub fn cells(text: &'static str, columns: usize) -> Vec<Vec<&'static str>> {
    let lines = text.lines().filter(|line| !line.starts_with('#')).skip(1);
    let rows: Vec<Vec<&str>> = lines.map(|line| line.split(',').collect()).collect();
    assert!(rows.len() >= 10, "the table is nearly empty");
    for row in &rows {
        assert_eq!(row.len(), columns, "{row:?}");
    }
    rows
}

/// Rows of numbers.
pub fn rows(text: &'static str, columns: usize) -> Vec<Vec<f64>> {
    cells(text, columns).into_iter().map(|row| row.into_iter().map(number).collect()).collect()
}

pub fn number(cell: &str) -> f64 {
    cell.parse().unwrap_or_else(|_| panic!("{cell} is no number"))
}

/// Asserts an absolute agreement, and says by how much it failed.
#[track_caller]
pub fn agree(what: &str, found: f64, expected: f64, within: f64) {
    let error = (found - expected).abs();
    assert!(error <= within, "{what}: {found} against {expected}, {error:.2e} off");
}
