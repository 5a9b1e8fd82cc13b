//! The four corner marks of the card: coarse square tags, each with a pattern of its own, so that the card looks like
//! itself one way only.

use kurbo::{Point, Rect};

/// Modules along one side of a tag: a black frame one module wide round the pattern.
pub(crate) const MODULES: usize = 6;
/// Modules along one side of the pattern inside the frame.
pub(crate) const INNER: usize = MODULES - 2;

/// The patterns as printed, black `#`: lower left, lower right, upper right, upper left. Found by random search so that
/// any two differ in at least 6 of the 16 modules however either is turned or mirrored, and each from itself turned:
/// one module misread leaves no doubt, two are noticed.
const PATTERNS: [[&str; INNER]; 4] = [
    ["..#.", "..##", "#...", "..##"],
    [".#.#", "...#", "####", ".###"],
    ["...#", "###.", "##.#", "##.#"],
    ["##.#", ".#..", "##.#", "#.##"],
];

/// One corner mark of the card.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Tag {
    /// Which corner: 0 lower left, then counter-clockwise.
    pub corner: usize,
    /// Its black square on the card, in mm.
    pub square: Rect,
}

/// Whether the module in a row, from the top, and a column, from the left, is black.
fn black(corner: usize, row: usize, column: usize) -> bool {
    let edge = |i: usize| i == 0 || i == MODULES - 1;
    edge(row) || edge(column) || PATTERNS[corner][row - 1].as_bytes()[column - 1] == b'#'
}

/// The pattern inside the frame as bits, row by row from the top, the first module lowest; 1 is black.
pub(crate) fn bits(corner: usize) -> u16 {
    let modules = (0..INNER * INNER).map(|i| (i, black(corner, 1 + i / INNER, 1 + i % INNER)));
    modules.fold(0, |bits, (i, black)| bits | u16::from(black) << i)
}

/// A pattern after a quarter turn clockwise.
fn turned(bits: u16) -> u16 {
    (0..INNER * INNER)
        .filter(|i| bits >> i & 1 == 1)
        .fold(0, |out, i| out | 1 << (i % INNER * INNER + INNER - 1 - i / INNER))
}

/// Which corner a pattern seen in a photo belongs to, and by how many quarter turns clockwise it is turned there;
/// nothing when more than one module differs from every tag.
pub(crate) fn known(seen: u16) -> Option<(usize, usize)> {
    for corner in 0..4 {
        let mut printed = bits(corner);
        for turns in 0..4 {
            if (printed ^ seen).count_ones() <= 1 {
                return Some((corner, turns));
            }
            printed = turned(printed);
        }
    }
    None
}

impl Tag {
    /// Its corners in mm: lower left, then counter-clockwise.
    pub fn corners(&self) -> [Point; 4] {
        let Rect { x0, y0, x1, y1 } = self.square;
        [Point::new(x0, y0), Point::new(x1, y0), Point::new(x1, y1), Point::new(x0, y1)]
    }

    /// What is printed black, as closed rings in mm; a ring within another is bare paper (even-odd).
    pub(crate) fn rings(&self) -> Vec<Vec<Point>> {
        let at = |(row, column): (usize, usize)| {
            let module = self.square.width() / MODULES as f64;
            Point::new(self.square.x0 + column as f64 * module, self.square.y1 - row as f64 * module)
        };
        grid_rings().get(self.corner).into_iter().flatten().map(|ring| ring.iter().copied().map(at).collect()).collect()
    }
}

/// Outlines of the black modules of every tag on the lattice of module corners, (row, column) each: the edges of all black
/// modules, without those that two share, linked into rings.
fn grid_rings() -> [Vec<Vec<(usize, usize)>>; 4] {
    [0, 1, 2, 3].map(|corner| {
        let is_black = |row: usize, column: usize| row < MODULES && column < MODULES && black(corner, row, column);
        let mut edges = Vec::new();
        for row in 0..MODULES {
            for column in 0..MODULES {
                if !is_black(row, column) {
                    continue;
                }
                // Round the module with black on the right hand.
                let corners = [(row, column), (row, column + 1), (row + 1, column + 1), (row + 1, column)];
                let neighbours = [
                    (row.wrapping_sub(1), column),
                    (row, column + 1),
                    (row + 1, column),
                    (row, column.wrapping_sub(1)),
                ];
                for (side, (r, c)) in neighbours.into_iter().enumerate() {
                    if !is_black(r, c) {
                        edges.push((corners[side], corners[(side + 1) % 4]));
                    }
                }
            }
        }
        let mut rings = Vec::new();
        while let Some((from, mut to)) = edges.pop() {
            let mut ring = vec![from];
            while to != from {
                ring.push(to);
                let Some(next) = edges.iter().position(|edge| edge.0 == to) else { break };
                to = edges.swap_remove(next).1;
            }
            rings.push(ring);
        }
        rings
    })
}

#[cfg(test)]
mod tests {
    use super::*;

    fn mirrored(bits: u16) -> u16 {
        (0..16).filter(|i| bits >> i & 1 == 1).fold(0, |out, i| out | 1 << (i / INNER * INNER + INNER - 1 - i % INNER))
    }

    fn turns(bits: u16) -> [u16; 4] {
        let one = turned(bits);
        [bits, one, turned(one), turned(turned(one))]
    }

    /// Every tag against every other, itself turned and all mirrored: 6 modules at least.
    #[test]
    fn no_two_tags_are_alike() {
        for a in 0..4 {
            assert_eq!(turns(bits(a)).map(turned)[3], bits(a), "four quarter turns are none");
            for b in 0..4 {
                let others = turns(bits(b)).into_iter().skip(usize::from(a == b)).chain(turns(mirrored(bits(b))));
                for other in others {
                    assert!((bits(a) ^ other).count_ones() >= 6, "{a} {b}");
                }
            }
        }
    }

    #[test]
    fn a_turned_tag_with_a_spot_on_it_is_known_two_spots_are_not() {
        for corner in 0..4 {
            for (quarter, seen) in turns(bits(corner)).into_iter().enumerate() {
                assert_eq!(known(seen ^ 0x0100), Some((corner, quarter)));
                assert_eq!(known(seen ^ 0x0101), None);
            }
        }
    }

    /// The rings enclose exactly the black modules: their areas, holes subtracted, add up to them.
    #[test]
    fn rings_enclose_the_black_modules() {
        for corner in 0..4 {
            let tag = Tag { corner, square: Rect::new(2.0, 3.0, 8.0, 9.0) };
            let area: f64 = tag
                .rings()
                .iter()
                .map(|ring| {
                    let next = ring.iter().cycle().skip(1);
                    ring.iter().zip(next).map(|(a, b)| a.to_vec2().cross(b.to_vec2())).sum::<f64>() / 2.0
                })
                .sum();
            let black = bits(corner).count_ones() as f64 + (MODULES * MODULES - INNER * INNER) as f64;
            assert!((area.abs() - black).abs() < 1e-9, "{corner}: {area} {black}");
        }
    }
}
