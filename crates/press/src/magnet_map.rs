//! The map: turning, drift and hold against the depths of both pockets, with the good region and the design's own point in it.

use crate::picture::{Picture, dashes, pen, tone};
use dial::Looked;
use dial::magnets::{self, Likely, Map};
use measure::show;
use outline::{BezPath, Point, Rect, Shape, Vec2};
use process::Workshop;

/// Side of one cell.
const CELL: f64 = 1.5;
const MARGIN: f64 = 8.0;
/// Room for the figures left of a panel and below it.
const AXIS: f64 = 12.0;
const WORDS: f64 = 2.4;
/// From pale to dark: a figure that grows.
const RAMP: [&str; 6] = ["#fdf3dc", "#f2dcae", "#dfba7c", "#b98d52", "#84603a", "#4a3020"];

/// One panel: what it shows, in which bands.
struct Panel {
    title: String,
    unit: &'static str,
    /// Upper ends of all bands but the last.
    bands: [f64; 5],
    of: fn(&Likely) -> f64,
}

/// The map of the wheel that is hardest to hold; `None` where a magnet cannot be.
pub fn magnet_map(looked: &Looked, workshop: &Workshop) -> Option<String> {
    let (i, map) = magnets::map_of_hardest(looked, workshop)?;
    let (dial, held) = (&looked.laid.dial, looked.held[i].as_ref()?);
    let panels = [
        Panel {
            title: "turning: force at the rim".into(),
            unit: "N",
            bands: map.bands.effort,
            of: |likely| likely.effort,
        },
        Panel {
            title: format!("drift under one finger; {} forgiven", show(held.forgives, dial.show)),
            unit: "mm",
            bands: map.bands.drift,
            of: |likely| likely.drift.unwrap_or(f64::INFINITY),
        },
        Panel {
            title: "hold: thrown off when shaken with".into(),
            unit: "g",
            bands: map.bands.thrown_at,
            of: |likely| likely.thrown_at,
        },
    ];
    let side = CELL * map.cover.len() as f64;
    let width = 3.0 * (side + AXIS) + 2.0 * MARGIN;
    let title = format!("{}: magnets in pockets of every depth, wheel {}", dial.name, dial.wheels[i].name);
    let mut picture = Picture::new(&title, Rect::new(0.0, 0.0, width, side + MARGIN + 2.0 * WORDS));
    for (k, panel) in panels.iter().enumerate() {
        let corner = Point::new(MARGIN + AXIS + k as f64 * (side + AXIS), 0.0);
        draw(&mut picture, panel, &map, corner, side, dial.show);
    }
    let words = format!(
        "Ringed: the pockets of this dial, {} in the cover and {} in the wheel; the square: where they may come out, within {} each. Inside the bold line {} is easy to turn and keeps its number. Dashed: deeper pockets show through the stock when it comes thin. Likely figures: grade and bow in their middle, friction {:.2} of {:.2} to {:.2}.",
        show(map.point.0, dial.show),
        show(map.point.1, dial.show),
        show(map.within, dial.show),
        dial.wheels[i].name,
        (held.friction.low * held.friction.high).sqrt(),
        held.friction.low,
        held.friction.high,
    );
    let at = Point::new(MARGIN, -AXIS - 8.0 * WORDS);
    let used = picture.paragraph(at, WORDS, &words, tone::INK, MARGIN);
    picture.end_at(at.y - used - MARGIN / 2.0 + WORDS);
    Some(picture.finish())
}

fn draw(picture: &mut Picture, panel: &Panel, map: &Map, corner: Point, side: f64, units: measure::Units) {
    let band = |likely: &Likely| panel.bands.iter().filter(|end| (panel.of)(likely) > **end).count();
    for (k, colour) in RAMP.into_iter().enumerate() {
        let mut cells = BezPath::new();
        for i in 0..map.cover.len() {
            column(&mut cells, corner, i, map.wheel.len(), |j| map.cells[i][j].as_ref().map(&band) == Some(k));
        }
        picture.fill_path(&cells, colour);
    }
    picture.line(&edge_of_good(map, corner), pen(tone::INK, 0.7, dashes::NONE));
    let x = |depth: f64| corner.x + along(&map.cover, depth);
    let y = |depth: f64| corner.y + along(&map.wheel, depth);
    for (from, to, shown) in [
        (
            Point::new(x(map.deepest.0), corner.y),
            Point::new(x(map.deepest.0), corner.y + side),
            x(map.deepest.0) < corner.x + side,
        ),
        (
            Point::new(corner.x, y(map.deepest.1)),
            Point::new(corner.x + side, y(map.deepest.1)),
            y(map.deepest.1) < corner.y + side,
        ),
    ] {
        if shown {
            picture.straight(from, to, pen(tone::PAPER, 0.9, dashes::NONE));
            picture.straight(from, to, pen(tone::INK, 0.35, dashes::HIDDEN));
        }
    }
    let frame = Rect::new(corner.x, corner.y, corner.x + side, corner.y + side);
    picture.outline(&boxed(frame), pen(tone::QUIET, 0.2, dashes::NONE));
    let at = Point::new(x(map.point.0), y(map.point.1));
    let wander = map.within / (map.cover[1] - map.cover[0]) * CELL;
    let ring = Shape::from(outline::Curve::circle(at, 1.3));
    for (shape, width) in [(&boxed(Rect::from_center_size(at, (2.0 * wander, 2.0 * wander))), 0.35), (&ring, 0.5)] {
        picture.outline(shape, pen(tone::PAPER, width + 0.6, dashes::NONE));
        picture.outline(shape, pen(tone::FAIL, width, dashes::NONE));
    }
    picture.text(Point::new(corner.x, corner.y + side + 1.6 * WORDS), WORDS, &panel.title, tone::INK);
    axes(picture, map, corner, side, units);
    legend(picture, panel, Point::new(corner.x, corner.y - AXIS - 1.5 * WORDS));
}

/// Adds the runs of cells of one column that belong.
fn column(path: &mut BezPath, corner: Point, i: usize, rows: usize, belongs: impl Fn(usize) -> bool) {
    let mut from = None;
    for j in 0..=rows {
        match (from, j < rows && belongs(j)) {
            (None, true) => from = Some(j),
            (Some(first), false) => {
                // A hair wider, so that no paper shows between two columns.
                let left = corner.x + i as f64 * CELL - 0.02;
                let right = left + CELL + 0.04;
                let (low, high) = (corner.y + first as f64 * CELL - 0.02, corner.y + j as f64 * CELL + 0.02);
                path.move_to((left, low));
                path.line_to((right, low));
                path.line_to((right, high));
                path.line_to((left, high));
                path.close_path();
                from = None;
            }
            _ => {}
        }
    }
}

/// The lines between a good cell and one that is not.
fn edge_of_good(map: &Map, corner: Point) -> BezPath {
    let (columns, rows) = (map.cover.len(), map.wheel.len());
    let good = |i: usize, j: usize| i < columns && j < rows && map.good(i, j);
    let at = |i: usize, j: usize| corner + Vec2::new(i as f64 * CELL, j as f64 * CELL);
    let mut path = BezPath::new();
    for i in 0..=columns {
        for j in 0..=rows {
            let here = good(i, j);
            if here != (i > 0 && good(i - 1, j)) {
                path.move_to(at(i, j));
                path.line_to(at(i, j + 1));
            }
            if here != (j > 0 && good(i, j - 1)) {
                path.move_to(at(i, j));
                path.line_to(at(i + 1, j));
            }
        }
    }
    path
}

/// Where a depth lies along a side; depths stand in the middle of their cells.
fn along(depths: &[f64], depth: f64) -> f64 {
    ((depth - depths[0]) / (depths[1] - depths[0]) + 0.5) * CELL
}

fn axes(picture: &mut Picture, map: &Map, corner: Point, side: f64, units: measure::Units) {
    for (depths, upright) in [(&map.cover, false), (&map.wheel, true)] {
        for k in (0..depths.len()).step_by(12) {
            let t = along(depths, depths[k]);
            let label = show(depths[k], units);
            let at =
                if upright { corner + Vec2::new(-AXIS + 0.5, t) } else { corner + Vec2::new(t - 3.5, -1.6 * WORDS) };
            picture.text(at, 2.0, &label, tone::QUIET);
            let (tick, way) = if upright {
                (corner + Vec2::new(0.0, t), Vec2::new(-1.0, 0.0))
            } else {
                (corner + Vec2::new(t, 0.0), Vec2::new(0.0, -1.0))
            };
            picture.straight(tick, tick + way, pen(tone::QUIET, 0.2, dashes::NONE));
        }
    }
    picture.text(
        corner + Vec2::new(side / 2.0 - 20.0, -3.6 * WORDS),
        2.0,
        "across: cover's pocket; up: wheel's",
        tone::QUIET,
    );
}

fn legend(picture: &mut Picture, panel: &Panel, at: Point) {
    for (k, colour) in RAMP.into_iter().enumerate() {
        let words = match k {
            0 => format!("up to {} {}", figure(panel.bands[0]), panel.unit),
            5 => format!("over {} {}", figure(panel.bands[4]), panel.unit),
            k => format!("to {} {}", figure(panel.bands[k]), panel.unit),
        };
        let place = at + Vec2::new((k % 3) as f64 * 22.0, -((k / 3) as f64) * 2.0 * WORDS);
        let swatch = boxed(Rect::from_center_size(place + Vec2::new(1.2, 0.0), (2.4, 2.4)));
        picture.fill(&swatch, colour);
        picture.outline(&swatch, pen(tone::QUIET, 0.15, dashes::NONE));
        picture.text(place + Vec2::new(3.2, 0.0), 2.0, &words, tone::INK);
    }
}

fn figure(value: f64) -> String {
    let text = format!("{value:.2}");
    text.trim_end_matches('0').trim_end_matches('.').to_owned()
}

fn boxed(area: Rect) -> Shape {
    Shape::from(outline::Curve::rounded_rectangle(area.center(), area.width(), area.height(), 0.0))
}
