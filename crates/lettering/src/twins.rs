//! Marks that can be taken for one another when one of them is read upside down.

use outline::{Motion, Point, Shape, Vec2, overlap};

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
            if turned[first].overlap(&rasters[second]) < TWIN_LIMIT - 0.12 {
                continue;
            }
            let middle = |shape: &Shape| shape.bounds().center();
            let (from, to) = (middle(marks[first]), middle(marks[second]));
            let lay = Motion::turn(from, std::f64::consts::PI).then(&Motion::shift(to - from));
            let overlap = overlap(&marks[first].moved(&lay), marks[second]);
            if overlap >= TWIN_LIMIT {
                twins.push(Twin {
                    first,
                    second,
                    overlap,
                });
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

/// A mark in a box of 64 x 64 cells about its middle, at a scale that its larger side fills.
struct Raster {
    rows: [u64; 64],
    size: f64,
}

impl Raster {
    fn of(shape: &Shape) -> Raster {
        let bounds = shape.bounds();
        let size = bounds.width().max(bounds.height()).max(1e-9);
        let centre = bounds.center();
        let cell = size / 64.0;
        let mut rows = [0u64; 64];
        let pieces: Vec<outline::Segment> = shape
            .loops()
            .iter()
            .flat_map(|one| one.segments())
            .collect();
        for (k, row) in rows.iter_mut().enumerate() {
            let y = centre.y + (k as f64 + 0.5 - 32.0) * cell;
            let mut crossings: Vec<f64> = Vec::new();
            for piece in &pieces {
                crossings_of(piece, y, &mut crossings);
            }
            crossings.sort_by(f64::total_cmp);
            for pair in crossings.chunks_exact(2) {
                let column =
                    |x: f64| ((x - centre.x) / cell + 32.0).round().clamp(0.0, 64.0) as u32;
                for bit in column(pair[0])..column(pair[1]) {
                    *row |= 1 << bit;
                }
            }
        }
        Raster { rows, size }
    }

    fn turned(&self) -> Raster {
        let mut rows = [0u64; 64];
        for (k, row) in self.rows.iter().enumerate() {
            rows[63 - k] = row.reverse_bits();
        }
        Raster {
            rows,
            size: self.size,
        }
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

/// Where a level line crosses a piece; ends count once, at their lower side.
fn crossings_of(piece: &outline::Segment, y: f64, out: &mut Vec<f64>) {
    /// Arcs of a glyph are short: three chords each are far below a cell.
    const CHORDS: usize = 3;
    let chords = if matches!(piece, outline::Segment::Line { .. }) {
        1
    } else {
        CHORDS
    };
    let mut a: Point = piece.from();
    for k in 1..=chords {
        let b = piece.point_at(k as f64 / chords as f64);
        if (a.y <= y) != (b.y <= y) {
            let along: Vec2 = b - a;
            out.push(a.x + along.x * (y - a.y) / along.y);
        }
        a = b;
    }
}
