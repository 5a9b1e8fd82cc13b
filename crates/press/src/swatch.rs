//! Stocks and pairings as they are chosen: small pictures in their real colours, for a page that asks for one at a time.

use crate::pairings_board::{laid_together, mark, placed};
use crate::picture::{Picture, dashes, pen, tone};
use crate::texture::lay;
use dial::looks::{Engraving, Pairing, name_of};
use dial::{Dial, Looked};
use outline::{Curve, Point, Rect, Shape};
use process::{Side, Stock};

/// Size of a stock's picture, in mm.
const WIDTH: f64 = 60.0;
const HEIGHT: f64 = 22.0;
/// From here on the back is seen.
const BACK: f64 = 41.0;
/// What is seen through a hole.
const HOLE: &str = tone::PAPER;
/// What stands between pieces.
const GAP: f64 = 2.0;

/// A stock: its face with a mark of this dial and a patch engraved as deep as is asked for, its back, and its cut edge below, as thick
/// as it is. An engraving that goes through is drawn as a hole.
pub fn swatch(looked: &Looked, stock: &Stock, depth: f64) -> String {
    let thick = stock.thickness().clamp(0.4, 8.0);
    let mut picture = Picture::new(&stock.name, Rect::new(0.0, -HEIGHT - 1.0 - thick, WIDTH, 0.0));
    let face = Rect::new(0.0, -HEIGHT, BACK - GAP, 0.0);
    lay(&mut picture, face, stock, Side::Face);
    let floor = floor_colour(stock, depth);
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

/// Colour of the floor of an engraving of a depth, where it stands out least; of a hole where it goes through.
pub fn floor_colour(stock: &Stock, depth: f64) -> String {
    Engraving::of(stock, depth).map_or_else(|| HOLE.to_owned(), |one| one.worst.colour.to_string())
}

/// A dial from the front, every wheel at its first stop, as it would look in two stocks; the layout is that of the dial as it is.
pub fn dressed(dial: &Dial, cover: &Stock, wheels: &Stock) -> String {
    let bounds = dial.cover.plate.bounds();
    let all = dial.wheels.iter().map(|wheel| wheel.rim.bounds()).fold(bounds, |all, one| all.union(one));
    let mut picture = Picture::new(&name_of(&cover.name, &wheels.name), all.inflate(1.0, 1.0));
    let line = pen(tone::INK, 0.2, dashes::NONE);
    for wheel in &dial.wheels {
        let rim = Shape::from(wheel.rim.clone());
        picture.fill(&rim, &wheels.colour(Side::Face).to_string());
        picture.outline(&rim, line);
        let floor = floor_colour(wheels, wheel.mark_depth);
        // The others lie under the cover.
        let sight = wheel.window.edge.bounds();
        for mark in wheel.marks.iter().filter(|mark| mark.shape.bounds().overlaps(sight)) {
            picture.fill(&mark.shape, &floor);
        }
    }
    let windows = dial.wheels.iter().map(|wheel| Shape::from(wheel.window.edge.clone()));
    let face = windows.fold(dial.cover.plate.clone(), |face, window| face.minus(&window));
    picture.fill(&face, &cover.colour(Side::Face).to_string());
    let floor = floor_colour(cover, dial.cover.engrave_depth);
    for art in &dial.cover.art {
        picture.fill(&art.shape, &floor);
    }
    picture.outline(&face, line);
    picture.finish_on_white()
}
