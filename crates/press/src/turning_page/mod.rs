//! The turning page: one HTML file that a client opens on a phone, without a network, and turns the dial by hand.

mod code;

use crate::layers::path_data;
use crate::svg::escaped;
use crate::swatch::floor_colour;
pub use code::{chosen, code};
use dial::Dial;
use dial::assembled::{Sense, Wheel};
use dial::looks::{Pairing, Reason, gap};
use outline::{Motion, Point, Shape};
use process::{Side, Stock};
use serde_json::{Value, json};
use sight::{Acuity, Seat, View, blur};
use std::f64::consts::{FRAC_PI_2, PI};
use std::fmt::Write;

/// Room round the dial, in mm.
const MARGIN: f64 = 4.0;
/// A fingertip's reach round the middle of the bared rim, in mm.
const GRIP: f64 = 11.0;

/// Stocks that may be tried on, for the cover and for the wheels.
#[derive(Clone, Debug)]
pub struct Wardrobe<'a> {
    /// The stocks; the first is worn by the cover at the start.
    stocks: Vec<&'a Stock>,
    /// Index of the stock that the wheels wear at the start.
    wheel: usize,
    /// All pairings of them.
    ranked: &'a [Pairing],
}

impl<'a> Wardrobe<'a> {
    /// The dial's own stocks, then all that were ranked with it, best first.
    pub fn of(dial: &'a Dial, ranked: &'a [Pairing]) -> Wardrobe<'a> {
        let mut stocks = vec![&dial.cover.stock];
        let wheels = dial.wheels.iter().map(|wheel| &wheel.stock);
        for stock in wheels.chain(ranked.iter().flat_map(|pairing| [&pairing.wheel, &pairing.cover])) {
            if !stocks.iter().any(|one| one.name == stock.name) {
                stocks.push(stock);
            }
        }
        let worn = dial.wheels.first().map(|wheel| &wheel.stock.name);
        let wheel = stocks.iter().position(|stock| Some(&stock.name) == worn).unwrap_or(0);
        Wardrobe { stocks, wheel, ranked }
    }

    /// Why two of them will not do together, in words.
    fn why_not(&self, cover: &Stock, wheel: &Stock) -> Option<String> {
        let same = |one: &&Pairing| one.cover.name == cover.name && one.wheel.name == wheel.name;
        let reasons = &self.ranked.iter().find(same)?.reasons;
        (!reasons.is_empty()).then(|| reasons.iter().map(Reason::words).collect::<Vec<_>>().join("; "))
    }
}

/// The page of a dial, with the stocks that may be tried on.
pub fn turning_page(dial: &Dial, worn: &Wardrobe) -> String {
    let title = escaped(&dial.name);
    // A script element ends at the first `</`, whatever stands round it.
    let figures = figures(dial, worn).to_string().replace("</", "<\\/");
    include_str!("page.html")
        .replace("{{style}}", include_str!("page.css"))
        .replace("{{script}}", include_str!("page.js"))
        .replace("{{front}}", &front(dial))
        .replace("{{back}}", &back(dial))
        .replace("{{title}}", &title)
        .replace("{{figures}}", &figures)
}

/// The frame of both views: cover and wheels, y down.
fn frame(dial: &Dial) -> outline::Rect {
    let wheels = dial.wheels.iter().map(|wheel| wheel.rim.bounds());
    wheels.fold(dial.cover.plate.bounds(), |all, one| all.union(one)).inflate(MARGIN, MARGIN)
}

/// The dial from the front: wheels that turn, the cover over them, and the places where a finger takes a rim.
fn front(dial: &Dial) -> String {
    let area = frame(dial);
    let mut svg = open(&format!("{} from the front", dial.name), area);
    for (i, wheel) in dial.wheels.iter().enumerate() {
        let _ = write!(
            svg,
            "<g data-at=\"{i}\" transform=\"translate({:.4} {:.4})\"><g class=\"wheel\" data-wheel=\"{i}\">",
            wheel.centre.x, -wheel.centre.y
        );
        let _ = write!(svg, "<path class=\"rim\" d=\"{}\"/>", path_data(&Shape::from(wheel.rim.clone()), wheel.centre));
        for mark in &wheel.marks {
            let _ = write!(svg, "<path class=\"mark\" d=\"{}\"/>", path_data(&mark.shape, wheel.centre));
        }
        svg += "</g></g>\n";
    }
    let _ = writeln!(svg, "<path class=\"plate\" d=\"{}\"/>", path_data(&face(dial), Point::ZERO));
    for art in &dial.cover.art {
        let _ = writeln!(svg, "<path class=\"art\" d=\"{}\"/>", path_data(&art.shape, Point::ZERO));
    }
    for (i, wheel) in dial.wheels.iter().enumerate() {
        let at = wheel.centre + wheel.radius * outline::Vec2::from_angle(wheel.notch.angle);
        let _ = writeln!(
            svg,
            "<circle class=\"grip\" data-wheel=\"{i}\" cx=\"{:.3}\" cy=\"{:.3}\" r=\"{GRIP}\"/>",
            at.x, -at.y
        );
    }
    svg + "</svg>"
}

/// The dial from behind, turned over sideways: the cover's back, and the wheels' backs on it.
fn back(dial: &Dial) -> String {
    let over = Motion::mirror(&outline::Axis::vertical(0.0));
    let area = frame(dial);
    let area = outline::Rect::new(-area.x1, area.y0, -area.x0, area.y1);
    let mut svg = open(&format!("{} from behind", dial.name), area);
    let _ = writeln!(svg, "<path class=\"plate-back\" d=\"{}\"/>", path_data(&face(dial).moved(&over), Point::ZERO));
    for wheel in &dial.wheels {
        let rim = Shape::from(wheel.rim.clone()).moved(&over);
        let _ = writeln!(svg, "<path class=\"rim-back\" d=\"{}\"/>", path_data(&rim, Point::ZERO));
    }
    svg + "</svg>"
}

fn open(title: &str, area: outline::Rect) -> String {
    format!(
        "<svg xmlns=\"http://www.w3.org/2000/svg\" viewBox=\"{:.3} {:.3} {:.3} {:.3}\" role=\"img\" aria-label=\"{}\">\n",
        area.x0,
        -area.y1,
        area.width(),
        area.height(),
        escaped(title)
    )
}

/// The cover's face with its windows open.
fn face(dial: &Dial) -> Shape {
    let windows = dial.wheels.iter().map(|wheel| Shape::from(wheel.window.edge.clone()));
    windows.fold(dial.cover.plate.clone(), |face, window| face.minus(&window))
}

fn figures(dial: &Dial, worn: &Wardrobe) -> Value {
    let area = frame(dial);
    let mut depths = Depths::default();
    let stocks: Vec<Value> = worn.stocks.iter().map(|stock| wears(dial, stock, &mut depths)).collect();
    json!({
        "name": dial.name,
        "size": [area.width(), area.height()],
        "wheels": dial.wheels.iter().map(wheel).collect::<Vec<_>>(),
        "seats": seats(&depths.all),
        "stocks": stocks,
        "worn": [0, worn.wheel],
        "pairings": worn.stocks.iter().map(|cover| {
            let pairs = worn.stocks.iter().map(|wheel| json!({
                "code": code(&cover.name, &wheel.name),
                "why_not": worn.why_not(cover, wheel),
            }));
            pairs.collect::<Vec<_>>()
        }).collect::<Vec<_>>(),
    })
}

fn wheel(wheel: &Wheel) -> Value {
    let at = |p: Point| json!([p.x, -p.y]);
    json!({
        "name": wheel.name,
        "marks": wheel.marks.iter().map(|mark| mark.words.as_str()).collect::<Vec<_>>(),
        "centre": at(wheel.centre),
        "radius": wheel.radius,
        "window": at(wheel.window.centre),
        "opening": path_data(&Shape::from(wheel.window.edge.clone()), Point::ZERO),
        // Counting up, the wheel turns this way as seen with y up.
        "senses": if wheel.counts_up == Sense::Anticlockwise { 1 } else { -1 },
    })
}

/// Depths of wheels below the face of a cover, each once.
#[derive(Default)]
struct Depths {
    all: Vec<f64>,
}

impl Depths {
    fn at(&mut self, depth: f64) -> usize {
        let known = self.all.iter().position(|one| (one - depth).abs() < 1e-6);
        known.unwrap_or_else(|| {
            self.all.push(depth);
            self.all.len() - 1
        })
    }
}

/// Where the readers sit: what each sees of the cover's face, and of a wheel at each depth under it, as projective maps about the
/// window's middle.
fn seats(depths: &[f64]) -> Vec<Value> {
    let seats = [
        ("the owner", Seat::OWNER, 0.0),
        ("the neighbour on the right", Seat::NEIGHBOUR, FRAC_PI_2),
        ("the neighbour on the left", Seat::NEIGHBOUR, -FRAC_PI_2),
        ("the one across the table", Seat::ACROSS, PI),
    ];
    let seat = |(name, seat, azimuth): (&str, Seat, f64)| {
        let view = View::new(seat, azimuth);
        let plane = |depth: f64| view.seen(depth).ok().map(|map| map.matrix());
        Some(json!({
            "name": name,
            "cover": plane(0.0)?,
            "deep": depths.iter().map(|depth| plane(*depth)).collect::<Option<Vec<_>>>()?,
            "blur_mm": blur(Acuity::NORMAL) * seat.distance(),
        }))
    };
    seats.into_iter().filter_map(seat).collect()
}

/// The colours of a stock, as a cover and as a wheel, and how deep each wheel lies under a cover of it.
fn wears(dial: &Dial, stock: &Stock, depths: &mut Depths) -> Value {
    let marks = dial.wheels.first().map_or(0.0, |wheel| wheel.mark_depth);
    let deep = dial.wheels.iter().map(|wheel| depths.at(stock.thickness() + gap(wheel)));
    json!({
        "name": stock.name,
        "face": stock.colour(Side::Face).to_string(),
        "back": stock.colour(Side::Back).to_string(),
        "edge": stock.edge().to_string(),
        "burnt": [floor_colour(stock, dial.cover.engrave_depth), floor_colour(stock, marks)],
        "deep": deep.collect::<Vec<_>>(),
    })
}

#[cfg(test)]
mod tests {
    use super::*;
    use outline::Curve;

    /// What is drawn at the origin of the frame lies where the dial has it.
    #[test]
    fn paths_keep_their_place() {
        let disc = Shape::from(Curve::circle(Point::new(3.0, 4.0), 1.0));
        assert!(path_data(&disc, Point::new(3.0, 4.0)).starts_with("M1 0"));
        assert!(path_data(&disc, Point::ZERO).starts_with("M4 -4"));
    }
}
