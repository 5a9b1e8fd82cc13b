//! The dial taken apart in layers, seen at an isometric slant from above its face.

use super::{Anchor, Drawing, Sketch};
use crate::layers::look;
use crate::picture::tone;
use crate::svg::Frame;
use dial::Dial;
use dial::assembled::{Pocket, Wheel};
use outline::{BezPath, Point, Rect, Shape, Vec2};
use process::{Side, Stock};
use std::fmt::Write;

/// cos and sin of 30 degrees: the slant of both axes (ISO 5456-3 isometric; no foreshortening, as is common).
const ALONG: f64 = 0.866_025_403_784_438_6;
const UP: f64 = 0.5;
/// Height of one slice of a plate's edge, in mm.
const SLICE: f64 = 0.3;
const MARGIN: f64 = 2.0;

/// Cover, the magnets of its back, those of the wheels, and the wheels, drawn apart along their common axis.
pub fn taken_apart(dial: &Dial) -> Drawing {
    let flat = super::faces::around(dial);
    let (left, right) = (slant(Point::new(flat.x0, flat.y1)).x, slant(Point::new(flat.x1, flat.y0)).x);
    let (low, high) = (slant(Point::new(flat.x0, flat.y0)).y, slant(Point::new(flat.x1, flat.y1)).y);
    // The magnets of the cover come out from under it: so far reaches the cover on the page below its wheels' middles.
    let hides = |wheel: &Wheel| (wheel.centre.x - flat.x0).min(wheel.centre.y - flat.y0);
    let below = dial.wheels.iter().map(hides).fold(0.0, f64::max);
    let under = dial.wheels.iter().map(|wheel| wheel.stock.thickness()).fold(0.0, f64::max);
    // Names beside the layers need room, however small the whole is shown.
    let step = (0.08 * (high - low)).max(11.0);
    let levels = [0.0, under + step, under + 2.0 * step, under + 2.5 * step + below];
    let top = levels[3] + dial.cover.stock.thickness();
    let area = Rect::new(left - MARGIN, low - MARGIN, right + MARGIN + 0.3 * (right - left), high + top + MARGIN);
    let mut sketch = Sketch::new(&format!("{} taken apart in layers", dial.name), area);
    let mut iso = Iso { corner: Point::new(area.x0, area.y1), body: String::new() };
    for wheel in &dial.wheels {
        let rim = Shape::from(wheel.rim.clone());
        iso.plate(&rim, levels[0], &wheel.stock);
        let at = levels[0] + wheel.stock.thickness();
        for mark in &wheel.marks {
            iso.flat(&mark.shape, at, &look(&wheel.stock, wheel.mark_depth).burnt);
        }
        for pocket in std::iter::once(&wheel.pocket).chain(wheel.clicks.iter().flat_map(|ring| &ring.wheel)) {
            iso.flat(&super::pockets::round(pocket), at, tone::PALE);
        }
    }
    for wheel in &dial.wheels {
        iso.thread(wheel.centre, levels[0] + wheel.stock.thickness(), levels[3]);
    }
    for wheel in &dial.wheels {
        iso.magnet(&wheel.pocket, wheel.seat.wheel.diameter / 2.0, levels[1], wheel.seat.wheel.thickness);
        if let Some(ring) = &wheel.clicks {
            ring.wheel
                .iter()
                .for_each(|pocket| iso.magnet(pocket, ring.disc.diameter / 2.0, levels[1], ring.disc.thickness));
        }
    }
    for wheel in &dial.wheels {
        iso.magnet(&wheel.cover_pocket, wheel.seat.cover.diameter / 2.0, levels[2], wheel.seat.cover.thickness);
        if let Some(ring) = &wheel.clicks {
            ring.cover
                .iter()
                .for_each(|pocket| iso.magnet(pocket, ring.disc.diameter / 2.0, levels[2], ring.disc.thickness));
        }
    }
    iso.plate(&super::faces::open_face(dial), levels[3], &dial.cover.stock);
    for art in &dial.cover.art {
        iso.flat(&art.shape, top, &look(&dial.cover.stock, dial.cover.engrave_depth).burnt);
    }
    sketch.picture.raw(&iso.body);
    // Names stand to the right of each layer, at its rightmost corner.
    let edge = Point::new(flat.x1, flat.y0);
    for (level, words) in [
        (levels[3], "cover"),
        (levels[2], "magnets of the cover"),
        (levels[1], "magnets of the wheels"),
        (levels[0], if dial.wheels.len() == 1 { "wheel" } else { "wheels" }),
    ] {
        let at = slant(edge) + Vec2::new(3.0, level);
        sketch.label(at, Anchor::Start, words);
    }
    sketch.finish()
}

/// Where a point of a level plane is seen.
fn slant(p: Point) -> Point {
    Point::new((p.x - p.y) * ALONG, (p.x + p.y) * UP)
}

/// Path data under slanted transforms.
struct Iso {
    corner: Point,
    body: String,
}

impl Iso {
    /// A shape in the level plane at a height.
    fn flat(&mut self, shape: &Shape, height: f64, colour: &str) {
        if shape.is_empty() {
            return;
        }
        let data = crate::layers::path_data(shape, Point::ZERO);
        let _ = writeln!(self.body, "<path fill=\"{colour}\" transform=\"{}\" d=\"{data}\"/>", self.matrix(height));
    }

    fn matrix(&self, height: f64) -> String {
        // Path data has y down.
        let (e, f) = (-self.corner.x, self.corner.y - height);
        format!("matrix({ALONG:.6} {:.6} {ALONG:.6} {UP:.6} {e:.4} {f:.4})", -UP)
    }

    /// A plate of a stock standing on a height, its edge in the colours of its layers.
    fn plate(&mut self, shape: &Shape, height: f64, stock: &Stock) {
        let data = crate::layers::path_data(shape, Point::ZERO);
        let thickness = stock.thickness();
        let slices = (thickness / SLICE).ceil().max(1.0) as usize;
        for k in 0..slices {
            let at = thickness * k as f64 / slices as f64;
            let colour = shaded(&edge_colour(stock, thickness - at), if k == 0 { 0.45 } else { 0.72 });
            let _ = writeln!(
                self.body,
                "<path fill=\"{colour}\" transform=\"{}\" d=\"{data}\"/>",
                self.matrix(height + at)
            );
        }
        let colours = look(stock, stock.surfaces.engraved_at);
        let _ = writeln!(
            self.body,
            "<path fill=\"{}\" stroke=\"{}\" stroke-width=\"0.15\" transform=\"{}\" d=\"{data}\"/>",
            colours.face,
            colours.burnt,
            self.matrix(height + thickness)
        );
    }

    fn magnet(&mut self, pocket: &Pocket, radius: f64, height: f64, thickness: f64) {
        let disc = Shape::from(outline::Curve::circle(pocket.centre, radius));
        let slices = (thickness / SLICE).ceil().max(1.0) as usize;
        for k in 0..slices {
            self.flat(&disc, height + thickness * k as f64 / slices as f64, "#70757a");
        }
        self.flat(&disc, height + thickness, "#c3c8cc");
    }

    /// The line along which things come together.
    fn thread(&mut self, at: Point, from: f64, to: f64) {
        let frame = Frame { corner: self.corner };
        let mut path = BezPath::new();
        path.move_to(slant(at) + Vec2::new(0.0, from));
        path.line_to(slant(at) + Vec2::new(0.0, to));
        let _ = writeln!(
            self.body,
            "<path fill=\"none\" stroke=\"{}\" stroke-width=\"0.2\" stroke-dasharray=\"3 1 0.6 1\" d=\"{}\"/>",
            tone::QUIET,
            frame.bezier(&path)
        );
    }
}

/// Colour of the layer at a depth below the face.
fn edge_colour(stock: &Stock, depth: f64) -> String {
    let mut down = 0.0;
    let layer = stock.layers.iter().find(|layer| {
        down += layer.thickness;
        depth <= down + 1e-9
    });
    let layer = layer.map(|layer| layer.colour.unwrap_or(layer.look().face));
    layer.unwrap_or_else(|| stock.colour(Side::Back)).to_string()
}

/// A colour as it lies in shade.
fn shaded(colour: &str, light: f64) -> String {
    let part = |k: usize| colour.get(k..k + 2).and_then(|two| u8::from_str_radix(two, 16).ok()).unwrap_or(128);
    let dim = |k: usize| (f64::from(part(k)) * light).round() as u8;
    format!("#{:02x}{:02x}{:02x}", dim(1), dim(3), dim(5))
}
