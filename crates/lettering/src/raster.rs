//! A mark as a coarse raster, on which two marks are compared in well under a microsecond.

use outline::{Curve, Shape};

/// Rows of a raster; its columns are the bits of a word, half as wide as the rows are high.
const ROWS: usize = 32;
const COLUMNS: f64 = 64.0;

/// A mark in a box of 32 rows and 64 columns about the middle of its own box, at a scale that its larger side fills.
pub(crate) struct Raster {
    rows: [u64; ROWS],
}

impl Raster {
    pub(crate) fn of(shape: &Shape) -> Raster {
        let bounds = shape.bounds();
        let centre = bounds.center();
        let cell = bounds.width().max(bounds.height()).max(1e-9) / COLUMNS;
        // Where each row's middle line crosses the outline.
        let mut crossings: Vec<(usize, f64)> = Vec::with_capacity(8 * ROWS);
        let row_of = |y: f64| (y - centre.y) / (2.0 * cell) + (ROWS as f64 - 1.0) / 2.0;
        for points in shape.loops().iter().map(Curve::chord_points) {
            let mut a = points.last().copied().unwrap_or_default();
            for b in points {
                let (from, to) = (row_of(a.y), row_of(b.y));
                // A chord crosses the rows above its lower end up to its upper end, so that ends count once.
                let first = (from.min(to).floor() as i64 + 1).max(0);
                let last = (from.max(to).floor() as i64).min(ROWS as i64 - 1);
                for row in first..=last {
                    let t = (row as f64 - from) / (to - from);
                    crossings.push((row as usize, a.x + t * (b.x - a.x)));
                }
                a = b;
            }
        }
        crossings.sort_unstable_by(|a, b| a.0.cmp(&b.0).then(a.1.total_cmp(&b.1)));
        let mut rows = [0u64; ROWS];
        for pair in crossings.chunks_exact(2) {
            let column = |x: f64| ((x - centre.x) / cell + COLUMNS / 2.0).round();
            rows[pair[0].0] |= below(column(pair[1].1)) & !below(column(pair[0].1));
        }
        Raster { rows }
    }

    /// The same mark, turned by half a turn.
    pub(crate) fn turned(&self) -> Raster {
        let mut rows = self.rows.map(u64::reverse_bits);
        rows.reverse();
        Raster { rows }
    }

    /// Cells in common over cells in either.
    pub(crate) fn overlap(&self, other: &Raster) -> f64 {
        let (mut both, mut either) = (0, 0);
        for (a, b) in self.rows.iter().zip(&other.rows) {
            both += (a & b).count_ones();
            either += (a | b).count_ones();
        }
        f64::from(both) / f64::from(either.max(1))
    }
}

/// The columns to the left of one, of which there may be 64.
fn below(column: f64) -> u64 {
    match column.clamp(0.0, COLUMNS) as u32 {
        64 => u64::MAX,
        column => (1 << column) - 1,
    }
}
