//! The card as it comes out of a printer.

use card::{CardPlan, Drawn, Point};

use super::Chance;

/// Cells to a mm.
const FINE: f64 = 10.0;

/// Paper, toner, and what the printer does to edges.
#[derive(Clone, Debug)]
pub struct Print {
    /// Reflectance of bare paper.
    pub paper: f64,
    /// Reflectance of solid print.
    pub ink: f64,
    /// How far ink spreads past an edge, in mm.
    pub gain: f64,
    /// Share by which solid print is mottled.
    pub mottle: f64,
}

impl Print {
    /// Typical paper and toner: L* 93 to 95, density 1.3 to 1.5.
    pub fn by_chance(chance: &mut Chance) -> Print {
        Print {
            paper: chance.between(0.83, 0.88),
            ink: 10.0_f64.powf(-chance.between(1.3, 1.5)),
            gain: chance.between(0.0, 0.12),
            mottle: chance.between(0.0, 0.2),
        }
    }
}

/// Reflectance of the printed sheet in cells.
pub struct Sheet {
    left: f64,
    bottom: f64,
    wide: usize,
    high: usize,
    cells: Vec<f32>,
    page: Option<[f64; 4]>,
    paper: f64,
}

impl Sheet {
    /// Prints a plan; `uncut` leaves it on its page.
    pub fn printed(plan: &CardPlan, print: &Print, uncut: bool, seed: u64) -> Sheet {
        let margin = if uncut { 34.0 } else { 0.0 };
        let (wide, high) = (((140.0 + 2.0 * margin) * FINE) as usize, ((100.0 + 2.0 * margin) * FINE) as usize);
        let mut ink = vec![0.0_f32; wide * high];
        for thing in plan.drawn() {
            for rings in rings(&thing) {
                fill(&mut ink, wide, high, margin, &rings);
            }
        }
        // Ink runs: edges blurred, then cut nearer to the paper's side. Edges keep a slope of a cell or two.
        blur(&mut ink, wide, high, (print.gain * FINE).round().max(1.0) as usize);
        let (from, to) = if print.gain > 0.03 { (0.08, 0.5) } else { (0.3, 0.7) };
        ink.iter_mut().for_each(|c| *c = ((*c - from) / (to - from)).clamp(0.0, 1.0));
        let mut chance = Chance::new(seed);
        let mut mottle: Vec<f32> = (0..wide * high).map(|_| chance.normal() as f32).collect();
        blur(&mut mottle, wide, high, 2);
        // Yule and Nielsen, n = 1.7: light that wanders in the paper darkens it beside ink (from memory).
        let n = 1.7;
        let cells = ink
            .iter()
            .zip(mottle)
            .map(|(c, m)| {
                if *c == 0.0 {
                    return print.paper as f32;
                }
                let toner = print.ink * (1.0 + print.mottle * 4.0 * f64::from(m)).clamp(0.3, 2.0);
                let c = f64::from(*c);
                ((1.0 - c) * print.paper.powf(1.0 / n) + c * toner.powf(1.0 / n)).powf(n) as f32
            })
            .collect();
        let size = plan.paper.size();
        let (left, bottom) = (-plan.on_page.x, -plan.on_page.y);
        let page = uncut.then_some([left, bottom, left + size.width, bottom + size.height]);
        Sheet { left: -margin, bottom: -margin, wide, high, cells, page, paper: print.paper }
    }

    /// Reflectance at a place of the card's plane, linear between cells; nothing beside the sheet.
    pub fn at(&self, [x, y]: [f64; 2]) -> Option<f64> {
        let beside = |[x0, y0, x1, y1]: [f64; 4]| !(x0..=x1).contains(&x) || !(y0..=y1).contains(&y);
        if self.page.is_some_and(beside) {
            return None;
        }
        let (cx, cy) = ((x - self.left) * FINE, (y - self.bottom) * FINE);
        if cx < 0.0 || cy < 0.0 || cx >= self.wide as f64 || cy >= self.high as f64 {
            return self.page.map(|_| self.paper);
        }
        let (cx, cy) =
            ((cx - 0.5).clamp(0.0, self.wide as f64 - 1.001), (cy - 0.5).clamp(0.0, self.high as f64 - 1.001));
        let (i, k) = (cx as usize, cy as usize);
        let (fx, fy) = (cx - i as f64, cy - k as f64);
        let cell = |i: usize, k: usize| f64::from(self.cells[k * self.wide + i]);
        let low = cell(i, k) * (1.0 - fx) + cell(i + 1, k) * fx;
        let high = cell(i, k + 1) * (1.0 - fx) + cell(i + 1, k + 1) * fx;
        Some(low * (1.0 - fy) + high * fy)
    }
}

/// What is inked, as sets of rings.
fn rings(thing: &Drawn) -> Vec<Vec<Vec<Point>>> {
    match thing {
        Drawn::Solid { rings } => vec![rings.clone()],
        Drawn::Line { from, to, width } => vec![vec![bar(*from, *to, *width)]],
        Drawn::Outline { ring, width } => {
            (0..ring.len()).map(|i| vec![bar(ring[i], ring[(i + 1) % ring.len()], *width)]).collect()
        }
        // Letters as upright strokes, half of the place inked that a letter takes.
        Drawn::Label { text, at, height, width } => {
            let count = text.chars().count() as f64;
            let pitch = (0.6 * height).min(width / count);
            let letters = text.chars().enumerate().filter(|(_, c)| *c != ' ');
            letters
                .map(|(i, _)| {
                    let x = at.x + (i as f64 + 0.5 - count / 2.0) * pitch;
                    vec![bar(Point::new(x, at.y), Point::new(x, at.y + height), 0.4 * pitch)]
                })
                .collect()
        }
    }
}

fn bar(from: Point, to: Point, width: f64) -> Vec<Point> {
    let along = to - from;
    let across = card::Vec2::new(-along.y, along.x) * (width / 2.0 / along.hypot());
    vec![from + across, from - across, to - across, to + across]
}

/// Adds the share of each cell inside rings, even-odd, by four lines through each row of cells.
fn fill(ink: &mut [f32], wide: usize, high: usize, margin: f64, rings: &[Vec<Point>]) {
    const LINES: usize = 4;
    let cell = |v: f64| (v + margin) * FINE;
    let all = || rings.iter().flatten().map(|p| cell(p.y));
    let (low, top) = all().fold((f64::MAX, f64::MIN), |(l, t), y| (l.min(y), t.max(y)));
    for row in low.floor().max(0.0) as usize..(top.ceil().max(0.0) as usize).min(high) {
        for line in 0..LINES {
            let y = row as f64 + (line as f64 + 0.5) / LINES as f64;
            let mut cuts: Vec<f64> = Vec::new();
            for ring in rings {
                for i in 0..ring.len() {
                    let (a, b) = (ring[i], ring[(i + 1) % ring.len()]);
                    let (ya, yb) = (cell(a.y), cell(b.y));
                    if (ya <= y) != (yb <= y) {
                        cuts.push(cell(a.x) + (y - ya) / (yb - ya) * (cell(b.x) - cell(a.x)));
                    }
                }
            }
            cuts.sort_by(f64::total_cmp);
            for pair in cuts.chunks_exact(2) {
                let (from, to) = (pair[0].max(0.0), pair[1].min(wide as f64));
                for x in from as usize..(to.ceil().max(0.0) as usize).min(wide) {
                    let part = (to.min(x as f64 + 1.0) - from.max(x as f64)).max(0.0);
                    let cell = &mut ink[row * wide + x];
                    *cell = (*cell + part as f32 / LINES as f32).min(1.0);
                }
            }
        }
    }
}

/// Two passes of a box of 2 r + 1 cells, along rows and columns.
fn blur(cells: &mut [f32], wide: usize, high: usize, r: usize) {
    for _ in 0..2 {
        for row in cells.chunks_exact_mut(wide) {
            smooth(row, r);
        }
        let mut column = vec![0.0; high];
        for x in 0..wide {
            (0..high).for_each(|y| column[y] = cells[y * wide + x]);
            smooth(&mut column, r);
            (0..high).for_each(|y| cells[y * wide + x] = column[y]);
        }
    }
}

fn smooth(line: &mut [f32], r: usize) {
    let old = line.to_vec();
    let last = old.len() - 1;
    let at = |i: isize| f64::from(old[i.clamp(0, last as isize) as usize]);
    let r = r as isize;
    let mut sum: f64 = (-r..=r).map(at).sum();
    for (i, cell) in line.iter_mut().enumerate() {
        *cell = (sum / (2 * r + 1) as f64) as f32;
        sum += at(i as isize + r + 1) - at(i as isize - r);
    }
}
