//! Marks that can be taken for one another when one of them is read upside down.

use outline::{Motion, Shape, overlap};

/// What tells a figure that can be read upside down from its twin.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
pub enum TwinMark {
    /// Nothing.
    None,
    /// A bar under the mark.
    Bar,
    /// A dot after the mark.
    Dot,
}

/// Two marks of which one, turned by half a turn, can be taken for the other.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Twin {
    /// Index of the one.
    pub first: usize,
    /// Index of the other.
    pub second: usize,
    /// Area in common over area of either, when one is turned and laid on the other.
    pub overlap: f64,
}

/// Marks that overlap by this much when one is turned are twins. Our own proposal: fonts whose 9 is a turned 6 measure 0.9
/// to 1, the shipped font 0.56 to 0.66.
pub const TWIN_LIMIT: f64 = 0.85;

/// The twins among some marks, each standing upright.
pub fn upside_down_twins(marks: &[&Shape]) -> Vec<Twin> {
    let rasters: Vec<Raster> = marks.iter().map(|shape| Raster::of(shape)).collect();
    let turned: Vec<Raster> = rasters.iter().map(Raster::turned).collect();
    let mut twins = Vec::new();
    for first in 0..marks.len() {
        for second in first + 1..marks.len() {
            // A coarse raster settles nearly all pairs; it is within a few per cent.
            if turned[first].overlap(&rasters[second]) < TWIN_LIMIT - 0.06 {
                continue;
            }
            let middle = |shape: &Shape| shape.bounds().center();
            let (from, to) = (middle(marks[first]), middle(marks[second]));
            let lay = Motion::turn(from, std::f64::consts::PI).then(&Motion::shift(to - from));
            let overlap = overlap(&marks[first].moved(&lay), marks[second]);
            if overlap >= TWIN_LIMIT {
                twins.push(Twin { first, second, overlap });
            }
        }
    }
    twins
}

/// What a text reads when it is turned by half a turn: figures change as 0-0, 1-1, 6-9, 8-8, 9-6 and come in the
/// opposite order (common practice of lottery balls and number tiles); `None` when it holds anything else.
pub fn reads_upside_down(text: &str) -> Option<String> {
    let turned = |c: char| match c {
        '0' | '1' | '8' => Some(c),
        '6' => Some('9'),
        '9' => Some('6'),
        _ => None,
    };
    (!text.is_empty()).then(|| text.chars().rev().map(turned).collect::<Option<String>>())?
}

/// Rows of a raster; its columns are the bits of a word, half as wide as the rows are high.
const ROWS: usize = 32;

/// A mark in a box of 32 rows and 64 columns about its middle, at a scale that its larger side fills.
struct Raster {
    rows: [u64; ROWS],
    size: f64,
}

impl Raster {
    fn of(shape: &Shape) -> Raster {
        let bounds = shape.bounds();
        let size = bounds.width().max(bounds.height()).max(1e-9);
        let centre = bounds.center();
        let cell = size / 64.0;
        // Where each row's middle line crosses the outline.
        let mut crossings: Vec<(usize, f64)> = Vec::with_capacity(8 * ROWS);
        let row_of = |y: f64| (y - centre.y) / (2.0 * cell) + (ROWS as f64 - 1.0) / 2.0;
        for points in shape.loops().iter().map(outline::Curve::chord_points) {
            let mut a = points.last().copied().unwrap_or_default();
            for b in points {
                let (low, high) = (row_of(a.y.min(b.y)), row_of(a.y.max(b.y)));
                // A chord crosses the rows above its lower end up to its upper end, so that ends count once.
                for row in (low.floor() as i64 + 1).max(0)..=(high.floor() as i64).min(ROWS as i64 - 1) {
                    let t = (row as f64 - row_of(a.y)) / (row_of(b.y) - row_of(a.y));
                    crossings.push((row as usize, a.x + t * (b.x - a.x)));
                }
                a = b;
            }
        }
        crossings.sort_unstable_by(|a, b| a.0.cmp(&b.0).then(a.1.total_cmp(&b.1)));
        let mut rows = [0u64; ROWS];
        for pair in crossings.chunks_exact(2) {
            let column = |x: f64| ((x - centre.x) / cell + 32.0).round().clamp(0.0, 64.0) as u32;
            let (from, to) = (column(pair[0].1), column(pair[1].1));
            // Bits from `from` up to `to`, of which there may be 64.
            let below = |bits: u32| {
                if bits >= 64 { u64::MAX } else { (1 << bits) - 1 }
            };
            rows[pair[0].0] |= below(to) & !below(from);
        }
        Raster { rows, size }
    }

    fn turned(&self) -> Raster {
        let mut rows = [0u64; ROWS];
        for (k, row) in self.rows.iter().enumerate() {
            rows[ROWS - 1 - k] = row.reverse_bits();
        }
        Raster { rows, size: self.size }
    }

    /// Intersection over union, if the two are of about the same size.
    fn overlap(&self, other: &Raster) -> f64 {
        if (self.size / other.size - 1.0).abs() > 0.1 {
            return 0.0;
        }
        let (mut both, mut either) = (0, 0);
        for (a, b) in self.rows.iter().zip(&other.rows) {
            both += (a & b).count_ones();
            either += (a | b).count_ones();
        }
        f64::from(both) / f64::from(either.max(1))
    }
}
