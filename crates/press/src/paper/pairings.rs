//! Pairings of stocks: the best as they look, and all of them in a grid.

use super::{Anchor, Drawing, Sketch};
use crate::pairings_board::{CELL, Grid, laid_together, mark, said};
use dial::Looked;
use dial::looks::Pairing;
use outline::{Point, Rect, Vec2};

/// Room for the numbers above the grid, and for the names beside it, in mm.
const ABOVE: f64 = 5.0;
const BESIDE: f64 = 64.0;

/// One pairing as it looks, and what is said of it.
pub fn pairing_card(looked: &Looked, one: &Pairing) -> (Drawing, [String; 3]) {
    let mut sketch = Sketch::new(&one.name(), Rect::new(-0.2, -17.2, 62.2, 0.2));
    laid_together(&mut sketch.picture, one, &mark(looked), Point::ZERO);
    (sketch.finish(), said(one))
}

/// Every cover with every wheel.
pub fn pairings_grid(looked: &Looked, ranked: &[Pairing]) -> Drawing {
    let dial = &looked.laid.dial;
    let grid = Grid::of(ranked);
    let size = grid.size();
    let alt = "Every cover material in a row, every wheel material in a column; struck through where they will not do";
    let mut sketch = Sketch::new(alt, Rect::new(-BESIDE, -size.y - 0.5, size.x + 0.5, ABOVE));
    let own = (dial.cover.stock.name.as_str(), dial.wheels.first().map(|wheel| wheel.stock.name.as_str()));
    grid.draw(&mut sketch.picture, own, Point::ZERO);
    for (i, cover) in grid.covers.iter().enumerate() {
        let at = Point::ZERO + grid.middle(i, 0) - Vec2::new(CELL, 0.0);
        sketch.label(Point::new(-BESIDE + 5.0, at.y), Anchor::End, grid.number(cover).to_string());
        sketch.label(Point::new(-BESIDE + 7.0, at.y), Anchor::Start, cover.name.clone());
    }
    for (j, wheel) in grid.wheels.iter().enumerate() {
        let at = Point::new(grid.middle(0, j).x, ABOVE / 2.0);
        sketch.label(at, Anchor::Middle, grid.number(wheel).to_string());
    }
    sketch.finish()
}
