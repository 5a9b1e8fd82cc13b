//! The turn test as a picture: every stop of every wheel as it stands in its window.

use crate::svg::{Picture, tone};
use dial::Dial;
use dial::assembled::Wheel;
use dial::findings::Quantity;
use dial::turning::{Stop, TurnTest};
use measure::show;
use outline::{Curve, Motion, Point, Rect, Shape, Vec2};

/// Room round a window within its cell.
const PAD: f64 = 2.0;
/// Width of the whole strip, about that of a page.
const WIDTH: f64 = 180.0;
const MARGIN: f64 = 6.0;
const HEADING: f64 = 3.0;
const HEAD_ROOM: f64 = 8.0;

/// The strip of all windows.
pub fn strip(dial: &Dial, turns: &TurnTest) -> String {
    let rows: Vec<Cells> = dial.wheels.iter().map(Cells::of).collect();
    let height =
        2.0 * MARGIN + rows.iter().map(|row| row.height() + HEAD_ROOM).sum::<f64>() + HEAD_ROOM;
    let title = format!("{}: every stop in its window", dial.name);
    let mut picture = Picture::new(
        &title,
        Point::ZERO,
        Point::new(WIDTH + 2.0 * MARGIN, height),
    );
    let mut top = height - MARGIN;
    for ((wheel, test), cells) in dial.wheels.iter().zip(&turns.wheels).zip(&rows) {
        let failing = test
            .stops
            .iter()
            .filter(|stop| !stop.faults.is_empty())
            .count();
        let (verdict, colour) = match failing {
            0 => (format!("all {} stops pass", test.stops.len()), tone::QUIET),
            n => (
                format!("{n} of {} stops fail", test.stops.len()),
                tone::FAIL,
            ),
        };
        let at = Point::new(MARGIN, top - HEADING);
        let width = picture.text(at, HEADING, &wheel.name, tone::INK);
        picture.text(
            at + Vec2::new(width + 4.0, 0.0),
            HEADING * 0.8,
            &verdict,
            colour,
        );
        top -= HEAD_ROOM;
        for (k, stop) in test.stops.iter().enumerate() {
            let (column, row) = (k % cells.columns, k / cells.columns);
            let middle = Point::new(
                MARGIN + (column as f64 + 0.5) * cells.cell.x,
                top - (row as f64 + 0.5) * cells.cell.y,
            );
            cell(&mut picture, wheel, k, stop, middle, cells.cell);
        }
        top -= cells.height();
    }
    let slack = turns.slack();
    let words = format!(
        "slack: {} of turning, {} of sideways drift",
        Quantity::Angle(slack.angle).show(dial.show),
        show(slack.drift, dial.show)
    );
    picture.text(
        Point::new(MARGIN, top - HEADING),
        HEADING * 0.8,
        &words,
        tone::INK,
    );
    picture.finish()
}

/// How the cells of one wheel are set.
struct Cells {
    cell: Vec2,
    columns: usize,
    rows: usize,
}

impl Cells {
    fn of(wheel: &Wheel) -> Cells {
        let size = wheel.window.edge.bounds().size();
        let cell = Vec2::new(size.width + 2.0 * PAD, size.height + 2.0 * PAD);
        let columns = ((WIDTH / cell.x).floor() as usize).max(1);
        Cells {
            cell,
            columns,
            rows: wheel.marks.len().div_ceil(columns),
        }
    }

    fn height(&self) -> f64 {
        self.rows as f64 * self.cell.y
    }
}

fn cell(picture: &mut Picture, wheel: &Wheel, k: usize, stop: &Stop, middle: Point, size: Vec2) {
    let around = wheel.window.edge.bounds();
    let to_cell = Motion::shift(middle - around.center());
    let window = Shape::from(wheel.window.edge.clone());
    let opening = window.moved(&to_cell);
    let back = Curve::rounded_rectangle(middle, size.x - 0.6, size.y - 0.6, 1.0);
    picture.fill(&Shape::from(back.clone()), tone::COVER);
    picture.fill(&opening, tone::WHEEL);
    let turned = Motion::turn(wheel.centre, wheel.turned_to(k));
    let seen_box = Rect::new(
        around.x0 - PAD,
        around.y0 - PAD,
        around.x1 + PAD,
        around.y1 + PAD,
    );
    for (j, mark) in wheel.marks.iter().enumerate() {
        let there = mark.shape.moved(&turned);
        let b = there.bounds();
        if b.x1 < seen_box.x0 || b.x0 > seen_box.x1 || b.y1 < seen_box.y0 || b.y0 > seen_box.y1 {
            continue;
        }
        if j == k && stop.seen >= 1.0 {
            picture.fill(&there.moved(&to_cell), tone::BURNT);
            continue;
        }
        // What is hidden lies under the cover: pale, and only as far as the cell goes.
        if j == k {
            let cell = Shape::from(back.moved(&to_cell.inverse()));
            picture.fill(
                &there.common(&cell).minus(&window).moved(&to_cell),
                tone::PALE,
            );
        }
        picture.fill(&there.common(&window).moved(&to_cell), tone::BURNT);
    }
    picture.line_round(&opening, tone::INK, 0.15, "");
    if !stop.faults.is_empty() {
        picture.line_round(&Shape::from(back), tone::FAIL, 0.8, "");
        let corner = middle + Vec2::new(size.x / 2.0 - 1.7, size.y / 2.0 - 1.7);
        for slope in [1.0, -1.0] {
            let half = Vec2::new(1.0, slope);
            picture.straight(corner - half, corner + half, tone::FAIL, 0.6, "");
        }
    }
}
