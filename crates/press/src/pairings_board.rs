//! The board of pairings: the best in their real colours, and every cover stock with every wheel stock, best first, those that fail
//! shown as failing; and what people picked.

use crate::picture::{Picture, dashes, fitting, pen, tone};
use crate::texture::lay;
use dial::Looked;
use dial::looks::{Pairing, Picks, picks};
use outline::{BezPath, Curve, Motion, Point, Rect, Shape, Vec2};
use process::{Side, Stock, Workshop};

const MARGIN: f64 = 6.0;
const WORDS: f64 = 2.2;
/// The cards of the best, and how many.
const CARD: Vec2 = Vec2::new(62.0, 36.0);
const CARDS: usize = 8;
const COLUMNS: usize = 4;
/// The table of all.
pub(crate) const CELL: f64 = 6.6;
const NAMES: f64 = 56.0;
/// Colour of a dial that does.
const DOES: &str = "#1b6b3a";

/// The board of a dial: pairings as `dial::looks::pairings` ranks them.
pub fn pairings_board(looked: &Looked, workshop: &Workshop, ranked: &[Pairing]) -> String {
    let dial = &looked.laid.dial;
    let width = 2.0 * MARGIN + COLUMNS as f64 * (CARD.x + MARGIN) - MARGIN;
    let mut picture =
        Picture::new(&format!("{}: pairings of stocks, best first", dial.name), Rect::new(0.0, 0.0, width, MARGIN));
    let mark = mark(looked);
    let does = ranked.iter().filter(|one| one.does()).count();
    let words = format!(
        "{}: {does} of {} pairings of the shelf can be read and keep their numbers. The best of them; left the cover with its window, right the wheel's back, which is under the fingers.",
        dial.name,
        ranked.len()
    );
    let mut top = -picture.paragraph(Point::new(MARGIN, -WORDS), WORDS, &words, tone::INK, MARGIN) - 2.0 * WORDS;
    let shown = does.clamp(1, CARDS).min(ranked.len());
    for (k, one) in ranked.iter().take(shown).enumerate() {
        let corner = Point::new(
            MARGIN + (k % COLUMNS) as f64 * (CARD.x + MARGIN),
            top - (k / COLUMNS) as f64 * (CARD.y + MARGIN),
        );
        card(&mut picture, one, k + 1, &mark, corner);
    }
    top -= shown.div_ceil(COLUMNS) as f64 * (CARD.y + MARGIN);
    top = table(
        &mut picture,
        ranked,
        (&dial.cover.stock.name, dial.wheels.first().map(|one| one.stock.name.as_str())),
        top,
    );
    if let Some(picks) = picks(&workshop.votes) {
        top = votes(&mut picture, &picks, ranked, top);
    }
    picture.end_at(top);
    picture.finish()
}

/// The mark of the stop that is seen worst, upright, about the origin, 1 mm high.
pub(crate) fn mark(looked: &Looked) -> Shape {
    let Some((wheel, look)) = looked.laid.dial.wheels.first().zip(looked.looks.wheels.first()) else {
        return Shape::empty();
    };
    let stop = look.seen.first().map_or(0, |seen| seen.worst);
    let shape = wheel.upright(stop);
    let around = shape.bounds();
    let largest = around.width().max(around.height()).max(1e-6);
    shape.moved(&Motion::shift(-around.center().to_vec2())).scaled(Point::ZERO, 1.0 / largest)
}

pub(crate) fn placed(mark: &Shape, size: f64, at: Point) -> Shape {
    mark.scaled(Point::ZERO, size).moved(&Motion::shift(at.to_vec2()))
}

/// One pairing in its colours: the cover with its window, and the wheel's back beside it.
pub(crate) fn laid_together(picture: &mut Picture, one: &Pairing, mark: &Shape, corner: Point) {
    let cover = Rect::new(corner.x, corner.y - 17.0, corner.x + 36.0, corner.y);
    lay(picture, cover, &one.cover, Side::Face);
    let window = Curve::rounded_rectangle(Point::new(corner.x + 11.0, corner.y - 8.5), 14.0, 11.0, 1.2);
    // The wall of the window stands round it as a rim.
    picture.fill(&Shape::from(window.clone()), &one.cover.edge().to_string());
    let inner = window.bounds().inset(-0.5);
    lay(picture, inner, &one.wheel, Side::Face);
    if let Some(marks) = &one.marks {
        picture.fill(&placed(mark, 7.0, inner.center()), &marks.worst.colour.to_string());
    }
    if let Some(art) = &one.art {
        let star = lettering::Symbol::named("star").map(|star| star.outline(7.0)).unwrap_or_default();
        let at = Point::new(corner.x + 27.0, corner.y - 8.5);
        picture.fill(&star.moved(&Motion::shift(at.to_vec2())), &art.worst.colour.to_string());
    }
    picture.outline(&boxed(cover), pen(tone::INK, 0.15, dashes::NONE));
    let back = Rect::new(corner.x + 39.0, corner.y - 17.0, corner.x + CARD.x, corner.y);
    lay(picture, back, &one.wheel, Side::Back);
    picture.outline(&boxed(back), pen(tone::INK, 0.15, dashes::NONE));
}

/// What is said of a pairing: whether it does, how it turns, what it costs.
pub(crate) fn said(one: &Pairing) -> [String; 3] {
    let ratio = |engraving: &Option<dial::looks::Engraving>| {
        engraving.as_ref().map_or("none".to_owned(), |one| format!("{}:1", one.contrast.shown()))
    };
    let verdict = match one.reasons.first() {
        None => format!("marks {}, text {}", ratio(&one.marks), ratio(&one.art)),
        Some(reason) => format!("fails: {}", reason.words()),
    };
    let turning = one.likely.map_or(String::new(), |likely| format!("{:.1} N turn it; ", likely.effort));
    let price = one.price.map_or("price unknown".to_owned(), |price| format!("{price:.2} of stock and magnets"));
    [verdict, format!("{turning}back {}", one.wheel.finish(Side::Back).word()), price]
}

/// One pairing with its figures.
fn card(picture: &mut Picture, one: &Pairing, rank: usize, mark: &Shape, corner: Point) {
    laid_together(picture, one, mark, corner);
    let [verdict, turning, price] = said(one);
    let colour = if one.does() { DOES } else { tone::FAIL };
    let lines = [
        (format!("{rank}  {}", one.cover.name), tone::INK),
        (format!("wheels {}", one.wheel.name), tone::INK),
        (verdict, colour),
        (turning, tone::QUIET),
        (price, tone::QUIET),
    ];
    for (k, (words, colour)) in lines.iter().enumerate() {
        let at = Point::new(corner.x, corner.y - 20.0 - k as f64 * 1.75 * WORDS);
        picture.text(at, fitting(words, WORDS, CARD.x), words, colour);
    }
}

fn boxed(area: Rect) -> Shape {
    Shape::from(Curve::rounded_rectangle(area.center(), area.width(), area.height(), 0.0))
}

/// The stocks in the order in which they first come in the ranking.
fn order<'a>(ranked: &'a [Pairing], of: fn(&'a Pairing) -> &'a Stock) -> Vec<&'a Stock> {
    let mut all: Vec<&Stock> = Vec::new();
    for one in ranked {
        if !all.iter().any(|stock| stock.name == of(one).name) {
            all.push(of(one));
        }
    }
    all
}

/// Every cover with every wheel, their stocks in the order of the ranking.
pub(crate) struct Grid<'a> {
    pub(crate) covers: Vec<&'a Stock>,
    pub(crate) wheels: Vec<&'a Stock>,
    ranked: &'a [Pairing],
}

impl<'a> Grid<'a> {
    pub(crate) fn of(ranked: &'a [Pairing]) -> Grid<'a> {
        Grid { covers: order(ranked, |one| &one.cover), wheels: order(ranked, |one| &one.wheel), ranked }
    }

    /// Number of a stock: its place among the wheels.
    pub(crate) fn number(&self, stock: &Stock) -> usize {
        self.wheels.iter().position(|one| one.name == stock.name).map_or(0, |at| at + 1)
    }

    /// Width and height.
    pub(crate) fn size(&self) -> Vec2 {
        Vec2::new(self.wheels.len() as f64, self.covers.len() as f64) * CELL
    }

    /// Middle of the cell of a cover and a wheel, from the upper left corner.
    pub(crate) fn middle(&self, cover: usize, wheel: usize) -> Vec2 {
        Vec2::new(wheel as f64 + 0.5, -(cover as f64 + 0.5)) * CELL
    }

    /// The cells, without a word; `own` is ringed.
    pub(crate) fn draw(&self, picture: &mut Picture, own: (&str, Option<&str>), corner: Point) {
        let middle = |i: usize, j: usize| corner + self.middle(i, j);
        let wide = self.size().x;
        for (i, cover) in self.covers.iter().enumerate() {
            let y = middle(i, 0).y;
            let row = Rect::new(corner.x, y - 0.47 * CELL, corner.x + wide, y + 0.47 * CELL);
            picture.fill(&boxed(row), &cover.colour(Side::Face).to_string());
        }
        let (mut struck, mut letters) = (BezPath::new(), BezPath::new());
        let mut spots = Vec::new();
        for (j, wheel) in self.wheels.iter().enumerate() {
            let windows =
                (0..self.covers.len()).map(|i| Shape::from(Curve::rounded_rectangle(middle(i, j), 4.6, 4.6, 0.6)));
            picture.fill(&Shape::joined(&windows.collect::<Vec<_>>()), &wheel.colour(Side::Face).to_string());
            let (mut marks, mut colour) = (BezPath::new(), None);
            for (i, cover) in self.covers.iter().enumerate() {
                let same = |one: &&Pairing| one.cover.name == cover.name && one.wheel.name == wheel.name;
                let Some(one) = self.ranked.iter().find(same) else { continue };
                let at = middle(i, j);
                if let Some(reason) = one.reasons.first() {
                    struck.move_to(at + Vec2::new(-0.42, -0.42) * CELL);
                    struck.line_to(at + Vec2::new(0.42, 0.42) * CELL);
                    let spot = at + Vec2::new(-1.9, 1.9);
                    spots.push(Shape::from(Curve::circle(spot, 1.2)));
                    plain(&mut letters, reason.letter(), spot, 1.5);
                }
                colour = one.marks.as_ref().map(|marks| marks.worst.colour).or(colour);
                plain(&mut marks, '7', at, 2.6);
            }
            if let Some(colour) = colour {
                picture.line(&marks, pen(&colour.to_string(), 0.5, dashes::NONE));
            }
        }
        picture.line(&struck, pen(tone::PAPER, 0.7, dashes::NONE));
        picture.line(&struck, pen(tone::FAIL, 0.35, dashes::NONE));
        picture.fill(&Shape::joined(&spots), tone::PAPER);
        picture.line(&letters, pen(tone::FAIL, 0.28, dashes::NONE));
        let at = |name: Option<&str>, all: &[&Stock]| all.iter().position(|one| Some(one.name.as_str()) == name);
        if let (Some(i), Some(j)) = (at(Some(own.0), &self.covers), at(own.1, &self.wheels)) {
            let ring = Shape::from(Curve::rounded_rectangle(middle(i, j), CELL, CELL, 1.0));
            picture.outline(&ring, pen(tone::PAPER, 1.0, dashes::NONE));
            picture.outline(&ring, pen(tone::INK, 0.5, dashes::NONE));
        }
    }
}

/// How the grid is read.
pub const GRID_WORDS: &str = "A row for each cover, a column for each wheel stock, both numbered as the rows are. Struck through: will not do, and why: C marks do not stand out, A text on the cover does not, H the cover hides too much, P pocket too deep, T does not turn or keep, E engraved through, N never cut. Ringed: this dial as it is.";

/// Every cover with every wheel; returns where it ends.
fn table(picture: &mut Picture, ranked: &[Pairing], own: (&str, Option<&str>), top: f64) -> f64 {
    let grid = Grid::of(ranked);
    let words = format!("All of them. {GRID_WORDS}");
    let used = picture.paragraph(Point::new(MARGIN, top), WORDS, &words, tone::INK, MARGIN);
    let corner = Point::new(MARGIN + NAMES, top - used - 2.0 * WORDS);
    for (j, stock) in grid.wheels.iter().enumerate() {
        let words = grid.number(stock).to_string();
        let aside = grid.middle(0, j).x - 0.4 * WORDS * words.len() as f64;
        picture.text(Point::new(corner.x + aside, corner.y + WORDS), WORDS, &words, tone::INK);
    }
    for (i, cover) in grid.covers.iter().enumerate() {
        let name = format!("{}  {}", grid.number(cover), cover.name);
        let at = Point::new(MARGIN, corner.y + grid.middle(i, 0).y);
        picture.text(at, fitting(&name, WORDS, NAMES - 2.0), &name, tone::INK);
    }
    grid.draw(picture, own, corner);
    picture.widen_to(corner.x + grid.size().x + MARGIN);
    corner.y - grid.size().y - MARGIN
}

/// A letter or a 7 as a bare line, about a point: the table has hundreds of them, and an outline would take ten times the room.
fn plain(path: &mut BezPath, letter: char, at: Point, height: f64) {
    let strokes: &[&[(f64, f64)]] = match letter {
        '7' => &[&[(-0.3, 0.5), (0.3, 0.5), (-0.1, -0.5)]],
        'C' => {
            &[&[(0.3, 0.3), (0.1, 0.5), (-0.1, 0.5), (-0.3, 0.3), (-0.3, -0.3), (-0.1, -0.5), (0.1, -0.5), (0.3, -0.3)]]
        }
        'A' => &[&[(-0.35, -0.5), (0.0, 0.5), (0.35, -0.5)], &[(-0.22, -0.15), (0.22, -0.15)]],
        'H' => &[&[(-0.3, 0.5), (-0.3, -0.5)], &[(0.3, 0.5), (0.3, -0.5)], &[(-0.3, 0.0), (0.3, 0.0)]],
        'P' => &[&[(-0.3, -0.5), (-0.3, 0.5), (0.15, 0.5), (0.3, 0.25), (0.15, 0.0), (-0.3, 0.0)]],
        'T' => &[&[(-0.35, 0.5), (0.35, 0.5)], &[(0.0, 0.5), (0.0, -0.5)]],
        'E' => &[&[(0.3, 0.5), (-0.3, 0.5), (-0.3, -0.5), (0.3, -0.5)], &[(-0.3, 0.0), (0.2, 0.0)]],
        _ => &[&[(-0.3, -0.5), (-0.3, 0.5), (0.3, -0.5), (0.3, 0.5)]],
    };
    for stroke in strokes {
        for (k, (x, y)) in stroke.iter().enumerate() {
            let p = at + Vec2::new(*x, *y) * height;
            if k == 0 {
                path.move_to(p);
            } else {
                path.line_to(p);
            }
        }
    }
}

/// What people picked: a bar for each, from one standard error below to one above; returns where it ends.
fn votes(picture: &mut Picture, picks: &Picks, ranked: &[Pairing], top: f64) -> f64 {
    let words = format!("What people picked ({} choices): {}.", picks.cast, picks.verdict);
    let mut y = top - picture.paragraph(Point::new(MARGIN, top), WORDS, &words, tone::INK, MARGIN) - WORDS;
    let reach =
        picks.picked.iter().filter_map(|one| one.strength).map(|(log, error)| log.abs() + error).fold(0.5, f64::max);
    let (left, wide) = (MARGIN + 110.0, 110.0);
    let x = |log: f64| left + wide * (0.5 + 0.5 * log / reach);
    for one in &picks.picked {
        let known = ranked.iter().find(|pairing| pairing.name() == one.name);
        let (word, colour) = match known {
            None => (" (not on this shelf)", tone::QUIET),
            Some(pairing) if !pairing.does() => (" (fails on this dial)", tone::FAIL),
            Some(_) => ("", tone::INK),
        };
        let name = format!("{}{word}", one.name);
        picture.text(Point::new(MARGIN, y), fitting(&name, WORDS, 106.0), &name, colour);
        if let Some((log, error)) = one.strength {
            picture.straight(
                Point::new(x(log - error), y),
                Point::new(x(log + error), y),
                pen(tone::QUIET, 0.5, dashes::NONE),
            );
            picture.fill(&Shape::from(Curve::circle(Point::new(x(log), y), 1.0)), tone::INK);
        }
        y -= 2.0 * WORDS;
    }
    let words = "Farther right: more liked; the bar is one standard error either way.";
    picture.text(Point::new(left, y), WORDS, words, tone::QUIET);
    y - MARGIN
}
