//! Stocks and pairings as they are chosen: small pictures in their real colours, for a page that asks for one at a time.

use crate::pairings_board::{laid_together, mark, placed};
use crate::picture::{Picture, dashes, pen, tone};
use crate::texture::lay;
use dial::Looked;
use dial::looks::{Engraving, Pairing};
use outline::{Curve, Point, Rect, Shape};
use process::{Side, Stock};

/// Size of a stock's picture, in mm.
const WIDTH: f64 = 60.0;
const HEIGHT: f64 = 22.0;
/// From here on the back is seen.
const BACK: f64 = 41.0;
/// What stands between pieces.
const GAP: f64 = 2.0;

/// A stock: its face with a mark of this dial and a patch engraved as deep as is asked for, its back, and its cut edge below, as thick
/// as it is. An engraving that goes through is drawn as a hole.
pub fn swatch(looked: &Looked, stock: &Stock, depth: f64) -> String {
    let thick = stock.thickness().clamp(0.4, 8.0);
    let mut picture = Picture::new(&stock.name, Rect::new(0.0, -HEIGHT - 1.0 - thick, WIDTH, 0.0));
    let face = Rect::new(0.0, -HEIGHT, BACK - GAP, 0.0);
    lay(&mut picture, face, stock, Side::Face);
    let floor = Engraving::of(stock, depth).map_or_else(|| tone::PAPER.to_owned(), |one| one.worst.colour.to_string());
    picture.fill(&placed(&mark(looked), 11.0, Point::new(12.0, -HEIGHT / 2.0)), &floor);
    let patch = Curve::rounded_rectangle(Point::new(30.0, -HEIGHT / 2.0), 10.0, 12.0, 0.0);
    picture.fill(&Shape::from(patch), &floor);
    let back = Rect::new(BACK, -HEIGHT, WIDTH, 0.0);
    lay(&mut picture, back, stock, Side::Back);
    let edge = Rect::new(0.0, -HEIGHT - 1.0 - thick, WIDTH, -HEIGHT - 1.0);
    let plain = |area: Rect| Shape::from(Curve::rounded_rectangle(area.center(), area.width(), area.height(), 0.0));
    picture.fill(&plain(edge), &stock.edge().to_string());
    for area in [face, back, edge] {
        picture.outline(&plain(area), pen(tone::INK, 0.15, dashes::NONE));
    }
    picture.finish_on_white()
}

/// A pairing: the cover with its window, through which a wheel's mark is seen, and the wheel's back.
pub fn pairing_picture(looked: &Looked, pairing: &Pairing) -> String {
    let mut picture = Picture::new(&pairing.name(), Rect::new(0.0, -17.0, 62.0, 0.0));
    laid_together(&mut picture, pairing, &mark(looked), Point::ZERO);
    picture.finish_on_white()
}
