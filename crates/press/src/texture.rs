//! Faces of stocks as they look: wood grain, bamboo strips, leather, cork, fibres; all by formula, the same at every run.

use crate::picture::{Picture, dashes, pen};
use outline::{BezPath, Curve, Point, Rect, Shape, Vec2};
use process::{Side, Stock, Texture};
use sight::{Srgb, decode, encode};
use std::f64::consts::TAU;

/// Fills a rectangle with the face of a stock; its grain runs along x.
pub(crate) fn lay(picture: &mut Picture, area: Rect, stock: &Stock, side: Side) {
    let colour = stock.colour(side);
    let plain = Shape::from(Curve::rounded_rectangle(area.center(), area.width(), area.height(), 0.0));
    picture.fill(&plain, &colour.to_string());
    // Another stock, another sheet of the same wood.
    let mut chance = Chance::of(&stock.name);
    let (dark, darker) = (shade(colour, 0.82), shade(colour, 0.66));
    match stock.texture(side) {
        Texture::Grain => {
            picture.line(&grain(area, 0.9, &mut chance), pen(&dark, 0.22, dashes::NONE));
            picture.line(&grain(area, 2.6, &mut chance), pen(&darker, 0.12, dashes::NONE));
        }
        Texture::Strips => {
            picture.line(&strips(area), pen(&darker, 0.12, dashes::NONE));
            picture.line(&nodes(area, &mut chance), pen(&dark, 0.35, dashes::NONE));
        }
        Texture::Leather => picture.line(&pebbles(area, 1.3, &mut chance), pen(&dark, 0.14, dashes::NONE)),
        Texture::Crumbs => {
            picture.line(&flecks(area, 1.0, 0.5, &mut chance), pen(&darker, 0.4, dashes::NONE));
            picture.line(&flecks(area, 1.2, 0.5, &mut chance), pen(&shade(colour, 1.25), 0.3, dashes::NONE));
        }
        Texture::Fibres => picture.line(&flecks(area, 1.1, 0.7, &mut chance), pen(&dark, 0.1, dashes::NONE)),
        Texture::Plain => {}
    }
}

/// A colour with so many times its light, no brighter than white.
fn shade(colour: Srgb, share: f64) -> String {
    let [red, green, blue] = [colour.red, colour.green, colour.blue].map(|code| {
        let light = (decode(f64::from(code) / 255.0) * share).min(1.0);
        (encode(light) * 255.0).round() as u8
    });
    Srgb { red, green, blue }.to_string()
}

/// Lines of growth: nearly level, each wavering with its neighbours, closer here and wider there.
fn grain(area: Rect, pitch: f64, chance: &mut Chance) -> BezPath {
    let (phase, slope) = (chance.next() * TAU, 0.5 + chance.next());
    let mut path = BezPath::new();
    let mut y = area.y0 + pitch * 0.5;
    while y < area.y1 - 0.35 * pitch {
        let swing = 0.22 * pitch;
        let at = |x: f64| {
            let wave = (phase + slope * (x - area.x0) / 6.0 + y / (2.5 * pitch)).sin();
            Point::new(x, (y + swing * wave).clamp(area.y0, area.y1))
        };
        // Some begin late or end early.
        let (from, to) = (area.x0 + short(chance, area), area.x1 - short(chance, area));
        let step = (to - from) / 3.0;
        path.move_to(at(from));
        for k in 0..3 {
            let x = from + step * f64::from(k);
            path.quad_to(at(x + step / 2.0) + Vec2::new(0.0, swing * 0.2), at(x + step));
        }
        y += pitch * (0.6 + 0.8 * chance.next());
    }
    path
}

fn short(chance: &mut Chance, area: Rect) -> f64 {
    let one = chance.next();
    if one < 0.6 { 0.0 } else { (one - 0.6) * area.width() }
}

/// Edges of strips side by side.
fn strips(area: Rect) -> BezPath {
    let mut path = BezPath::new();
    let count = (area.height() / 4.0).round().max(1.0);
    for k in 1..count as usize {
        let y = area.y0 + area.height() * k as f64 / count;
        path.move_to((area.x0, y));
        path.line_to((area.x1, y));
    }
    path
}

/// The nodes of bamboo: short bars across the strips.
fn nodes(area: Rect, chance: &mut Chance) -> BezPath {
    let mut path = BezPath::new();
    let count = (area.height() / 4.0).round().max(1.0);
    let wide = area.height() / count;
    for k in 0..count as usize {
        let x = area.x0 + area.width() * (0.1 + 0.8 * chance.next());
        let y = area.y0 + wide * k as f64;
        path.move_to((x, y));
        path.line_to((x, y + wide));
    }
    path
}

/// The pebbles of leather: small open arcs on an uneven grid.
fn pebbles(area: Rect, pitch: f64, chance: &mut Chance) -> BezPath {
    let mut path = BezPath::new();
    let inner = area.inset(-pitch / 2.0);
    scatter(inner, pitch, chance, |at, chance| {
        let turn = Vec2::from_angle(chance.next() * TAU) * pitch * 0.36;
        let aside = Vec2::new(-turn.y, turn.x);
        path.move_to(at + turn);
        path.quad_to(at + turn + aside, at + aside);
        path.quad_to(at - turn + aside, at - turn);
    });
    path
}

/// Short strokes in any direction.
fn flecks(area: Rect, pitch: f64, length: f64, chance: &mut Chance) -> BezPath {
    let mut path = BezPath::new();
    let inner = area.inset(-0.5);
    scatter(inner, pitch, chance, |at, chance| {
        let half = Vec2::from_angle(chance.next() * TAU) * length / 2.0;
        path.move_to(at - half);
        path.line_to(at + half);
    });
    path
}

/// One place in each cell of a grid, anywhere in its middle half.
fn scatter(area: Rect, pitch: f64, chance: &mut Chance, mut put: impl FnMut(Point, &mut Chance)) {
    let cells = |side: f64| (side / pitch).floor().max(0.0) as usize;
    for i in 0..cells(area.width()) {
        for j in 0..cells(area.height()) {
            let off = Vec2::new(0.25 + 0.5 * chance.next(), 0.25 + 0.5 * chance.next());
            put(Point::new(area.x0, area.y0) + (Vec2::new(i as f64, j as f64) + off) * pitch, chance);
        }
    }
}

/// A row of numbers from 0 to 1 that looks like chance and is the same each time (linear congruential, the constants of Knuth's MMIX).
struct Chance(u64);

impl Chance {
    fn of(name: &str) -> Chance {
        Chance(
            name.bytes()
                .fold(0xcbf2_9ce4_8422_2325, |hash, byte| (hash ^ u64::from(byte)).wrapping_mul(0x0100_0000_01b3)),
        )
    }

    fn next(&mut self) -> f64 {
        self.0 = self.0.wrapping_mul(6_364_136_223_846_793_005).wrapping_add(1_442_695_040_888_963_407);
        (self.0 >> 11) as f64 / (1u64 << 53) as f64
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    /// Whatever is drawn stays within its rectangle, and is the same each time.
    #[test]
    fn textures_keep_to_their_place() {
        let area = Rect::new(3.0, -4.0, 25.0, 9.0);
        for stock in workshop::starter().stocks {
            let drawn = || {
                let mut picture = Picture::new("t", area);
                lay(&mut picture, area, &stock, Side::Face);
                picture.finish()
            };
            let svg = drawn();
            assert_eq!(svg, drawn());
            let tree = usvg::Tree::from_str(&svg, &usvg::Options::default()).expect("reads");
            let (size, inked) = (tree.size(), tree.root().abs_bounding_box());
            assert!(inked.left() >= -0.01 && inked.top() >= -0.01, "{}: {inked:?}", stock.name);
            assert!(
                inked.right() <= size.width() + 0.01 && inked.bottom() <= size.height() + 0.01,
                "{}: {inked:?}",
                stock.name
            );
            assert!(svg.len() < 16_000, "{}: {}", stock.name, svg.len());
        }
    }
}
