//! The stocks on the shelf as they look: face with an engraving, back, and the build-up cut through; and their figures.

use crate::picture::{Picture, dashes, fitting, pen, tone};
use crate::texture::lay;
use dial::looks::Engraving;
use measure::{Interval, Units, show};
use outline::{Curve, Motion, Point, Rect, Shape, Vec2};
use process::{Side, Stock, Workshop};
use serde_json::{Value, json};

const MARGIN: f64 = 6.0;
const WORDS: f64 = 1.8;
const CARD: Vec2 = Vec2::new(62.0, 43.0);
const PICTURE: f64 = 15.0;
const COLUMNS: usize = 4;
/// The build-up is drawn so many times as thick as it is.
const CUT_SCALE: f64 = 3.0;

/// The shelf of a workshop, in the order of its file.
pub fn shelf_board(workshop: &Workshop, units: Units) -> String {
    let width = 2.0 * MARGIN + COLUMNS as f64 * (CARD.x + MARGIN) - MARGIN;
    let mut picture = Picture::new("The stocks on the shelf", Rect::new(0.0, 0.0, width, MARGIN));
    let words = format!(
        "{} stocks. From the left: the face with an engraving as deep as its colour is known for, the back, and a cut through it, {CUT_SCALE} times as thick as it is, the face above; beside it the edge as the beam leaves it.",
        workshop.stocks.len()
    );
    let top = -picture.paragraph(Point::new(MARGIN, -WORDS), WORDS, &words, tone::INK, MARGIN) - 2.0 * WORDS;
    for (k, stock) in workshop.stocks.iter().enumerate() {
        let aside = (k % COLUMNS) as f64 * (CARD.x + MARGIN);
        card(&mut picture, stock, units, Point::new(MARGIN + aside, top - (k / COLUMNS) as f64 * CARD.y));
    }
    picture.end_at(top - workshop.stocks.len().div_ceil(COLUMNS) as f64 * CARD.y);
    picture.finish()
}

fn card(picture: &mut Picture, stock: &Stock, units: Units, corner: Point) {
    let part = |from: f64, to: f64| Rect::new(corner.x + from, corner.y - PICTURE, corner.x + to, corner.y);
    let (face, back) = (part(0.0, 26.0), part(28.0, 46.0));
    let engraving = Engraving::of(stock, stock.surfaces.engraved_at);
    lay(picture, face, stock, Side::Face);
    if let Some(engraving) = &engraving {
        let star = lettering::Symbol::named("star").map(|star| star.outline(9.0)).unwrap_or_default();
        picture.fill(&star.moved(&Motion::shift(face.center().to_vec2())), &engraving.worst.colour.to_string());
    }
    lay(picture, back, stock, Side::Back);
    for side in [face, back] {
        picture.outline(&boxed(side), pen(tone::INK, 0.15, dashes::NONE));
    }
    cut(picture, stock, part(48.0, 57.0));
    let edge = boxed(part(58.0, CARD.x));
    picture.fill(&edge, &stock.edge().to_string());
    picture.outline(&edge, pen(tone::INK, 0.15, dashes::NONE));
    for (k, (words, colour)) in lines(stock, engraving.as_ref(), units).iter().enumerate() {
        let at = Point::new(corner.x, corner.y - PICTURE - 3.0 - k as f64 * 1.8 * WORDS);
        picture.text(at, fitting(words, WORDS, CARD.x), words, colour);
    }
}

/// Layer upon layer, each in the colour of its material; the outermost as its face looks.
fn cut(picture: &mut Picture, stock: &Stock, area: Rect) {
    let scale = CUT_SCALE.min(area.height() / stock.thickness().max(1e-6));
    let mut y = area.center().y + stock.thickness() * scale / 2.0;
    let last = stock.layers.len().saturating_sub(1);
    for (k, layer) in stock.layers.iter().enumerate() {
        let colour = match k {
            0 => stock.colour(Side::Face),
            k if k == last => stock.colour(Side::Back),
            _ => layer.colour.unwrap_or(layer.look().face),
        };
        let thick = layer.thickness * scale;
        let slice = boxed(Rect::new(area.x0, y - thick, area.x1, y));
        picture.fill(&slice, &colour.to_string());
        picture.outline(&slice, pen(tone::INK, 0.1, dashes::NONE));
        y -= thick;
    }
}

fn boxed(area: Rect) -> Shape {
    Shape::from(Curve::rounded_rectangle(area.center(), area.width(), area.height(), 0.0))
}

fn lines(stock: &Stock, engraving: Option<&Engraving>, units: Units) -> [(String, &'static str); 7] {
    let friction = stock.friction(Side::Back);
    let price = stock.price.map_or("price unknown".to_owned(), |price| {
        format!("{:.2} a sheet of {} x {}", price.sheet, show(price.width, units), show(price.height, units))
    });
    let contrast = engraving.map_or("the engraving goes through".to_owned(), |one| {
        format!("engraved {} deep: {}:1, {}", show(one.depth, units), one.contrast.shown(), one.contrast.polarity())
    });
    let two = |range: Interval| format!("{:.2} to {:.2}", range.low, range.high);
    [
        (stock.name.clone(), tone::INK),
        (
            format!(
                "{} ({} to {}), {:.2} kg/m²",
                show(stock.thickness(), units),
                show(stock.thinnest(), units),
                show(stock.thickest(), units),
                stock.mass_per_area() * 1e3
            ),
            tone::INK,
        ),
        (contrast, tone::INK),
        (
            format!(
                "{}, back {}, grain {}",
                stock.finish(Side::Face).word(),
                stock.finish(Side::Back).word(),
                stock.grain().words()
            ),
            tone::QUIET,
        ),
        (format!("friction of its back {}", two(friction)), tone::QUIET),
        (price, tone::QUIET),
        (format!("colours: {}", stock.surfaces.source), tone::QUIET),
    ]
}

/// All that is known of a stock.
pub fn stock_report(stock: &Stock) -> Value {
    let side = |side: Side| {
        let friction = stock.friction(side);
        json!({
            "colour": stock.colour(side).to_string(),
            "finish": stock.finish(side).word(),
            "friction_least": friction.low,
            "friction_most": friction.high,
        })
    };
    let engraving = Engraving::of(stock, stock.surfaces.engraved_at);
    json!({
        "name": stock.name,
        "thickness_mm": stock.thickness(),
        "thinnest_mm": stock.thinnest(),
        "thickest_mm": stock.thickest(),
        "kerf_x_mm": stock.kerf.x,
        "kerf_y_mm": stock.kerf.y,
        "mass_kg_per_m2": stock.mass_per_area() * 1e3,
        "layers": stock.layers.iter().map(|layer| json!({
            "material": layer.named,
            "thickness_mm": layer.thickness,
            "thinner_mm": layer.thinner,
            "thicker_mm": layer.thicker,
            "density_g_per_cm3": layer.material.map(|material| material.density),
        })).collect::<Vec<_>>(),
        "face": side(Side::Face),
        "back": side(Side::Back),
        "edge": stock.edge().to_string(),
        "engraved": engraving.as_ref().map(|one| one.worst.colour.to_string()),
        "engraved_at_mm": stock.surfaces.engraved_at,
        "engraved_ratio": engraving.as_ref().map(|one| one.contrast.ratio()),
        "measured_ratio_least": stock.surfaces.contrast.map(|measured| measured.low),
        "measured_ratio_most": stock.surfaces.contrast.map(|measured| measured.high),
        "grain": stock.grain().words(),
        "laser": stock.laser,
        "price": stock.price.map(|price| json!({
            "sheet": price.sheet, "width_mm": price.width, "height_mm": price.height,
        })),
        "looks": stock.surfaces.source,
        "photo": stock.surfaces.photo,
        "source": stock.source,
    })
}
