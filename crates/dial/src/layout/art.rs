//! What is engraved on the cover's face: labels, symbols and signs by default, and whatever else was asked for.

use super::marks::motif_outline;
use crate::assembled::{Art, Wheel};
use crate::design::{CounterDesign, Design, Motif};
use crate::spans::{Label, Mistake};
use lettering::{Lettering, TwinMark, Weight};
use outline::{Curve, Edges, Motion, Point, Rect, Shape, Vec2};

/// Least distance of art from windows, pockets, the plate's edge and other art (half of the usual plate; our own proposal).
const CLEAR: f64 = 1.5;
/// A default label is this share of the marks' height, and at least so high that the thin places of m and n are wider than
/// the least engraved stroke; a symbol is this many times the marks' height.
const LABEL: f64 = 0.8;
const LABEL_AT_LEAST: f64 = 3.8;
const SYMBOL: f64 = 1.4;
/// Default art is not made smaller than this: below it a label of common fonts has strokes under
/// 0.3 mm, the least engraved stroke in wood (common practice).
const SMALLEST: f64 = 1.8;
/// Signs beside a notch.
const SIGN: f64 = 3.2;
const SIGN_WEIGHT: Weight = Weight::Bold;
const LABEL_WEIGHT: Weight = Weight::SemiBold;

/// All art of the cover.
pub(super) fn all(design: &Design, plate: &Shape, wheels: &[Wheel]) -> Result<Vec<Art>, Vec<Mistake>> {
    let mut face = Face::new(plate, wheels);
    let mut mistakes = Vec::new();
    for (i, art) in design.cover.art.iter().enumerate() {
        match motif_outline(&art.motif, art.height, LABEL_WEIGHT, TwinMark::None) {
            Ok(shape) => {
                let lay = Motion::turn(Point::ZERO, art.angle).then(&Motion::shift(art.at.to_vec2()));
                face.put(&art.motif, shape.moved(&lay), art.height, LABEL_WEIGHT);
            }
            Err((what, help)) => mistakes.push(mistake(design, &format!("cover.art[{i}]"), what, help)),
        }
    }
    for (i, (counter, wheel)) in design.counters.iter().zip(wheels).enumerate() {
        if counter.notch.signs {
            signs(&mut face, wheel, counter);
        }
        for (motif, height, side) in beside(counter) {
            let placed = beside_window(&mut face, wheel, &motif, height, side);
            if let Err((what, help)) = placed {
                mistakes.push(mistake(design, &format!("counter[{i}].label"), what, help));
            }
        }
    }
    if mistakes.is_empty() { Ok(face.art) } else { Err(mistakes) }
}

fn mistake(design: &Design, key: &str, what: String, help: String) -> Mistake {
    let at = design.spans.get(key).map(|span| Label { span, words: "asked for here".into() });
    Mistake { what, at, also: Vec::new(), help }
}

/// A height that was asked for is kept; a default one gives way.
#[derive(Clone, Copy)]
enum Height {
    Asked(f64),
    AtMost(f64),
}

fn beside(counter: &CounterDesign) -> Vec<(Motif, Height, f64)> {
    let mut art = Vec::new();
    if !counter.label.is_empty() {
        let height = counter
            .label_height
            .map_or(Height::AtMost((LABEL * counter.mark.height).max(LABEL_AT_LEAST)), Height::Asked);
        art.push((Motif::Text(counter.label.clone()), height, 1.0));
    }
    if let Some(symbol) = counter.symbol {
        art.push((Motif::Symbol(symbol), Height::AtMost(SYMBOL * counter.mark.height), -1.0));
    }
    art
}

/// The face with what must be kept clear of.
struct Face {
    plate: Shape,
    edges: Edges,
    obstacles: Vec<Edges>,
    art: Vec<Art>,
    taken: Vec<Edges>,
}

impl Face {
    fn new(plate: &Shape, wheels: &[Wheel]) -> Face {
        let windows = wheels.iter().map(|wheel| wheel.window.edge.clone());
        let pockets = wheels.iter().map(|w| Curve::circle(w.cover_pocket.centre, w.cover_pocket.radius));
        let obstacles = windows.chain(pockets).map(|curve| Edges::of_curve(&curve));
        Face {
            plate: plate.clone(),
            edges: Edges::of(plate),
            obstacles: obstacles.collect(),
            art: Vec::new(),
            taken: Vec::new(),
        }
    }

    fn put(&mut self, motif: &Motif, shape: Shape, height: f64, weight: Weight) {
        self.taken.push(Edges::of(&shape));
        let weight = matches!(motif, Motif::Text(_)).then_some(weight);
        self.art.push(Art { what: motif.words(), shape, height, weight });
    }

    /// Whether a shape keeps clear of everything there.
    fn takes(&self, shape: &Shape) -> bool {
        let bounds = shape.bounds();
        let middle = bounds.center();
        // Boxes first: they are quick, and an obstacle within the box may lie between letters.
        let boxes = self.plate.contains(middle)
            && self.obstacles.iter().all(|obstacle| !overlap(&bounds, &obstacle.bounds()))
            && self.taken.iter().all(|taken| !overlap(&bounds, &taken.bounds()));
        if !boxes {
            return false;
        }
        let edges = Edges::of(shape);
        edges.nearest_under(&self.edges, CLEAR).is_none()
            && self.obstacles.iter().all(|obstacle| edges.nearest_under(obstacle, CLEAR).is_none())
    }
}

fn overlap(a: &Rect, b: &Rect) -> bool {
    let both = a.intersect(*b);
    both.width() > 0.0 && both.height() > 0.0
}

/// Places a label or a symbol over the wheel, to one side of the line from the pocket to the window, as
/// large as fits.
fn beside_window(
    face: &mut Face,
    wheel: &Wheel,
    motif: &Motif,
    height: Height,
    side: f64,
) -> Result<(), (String, String)> {
    let (largest, smallest) = match height {
        Height::Asked(height) => (height, height),
        Height::AtMost(height) => (height, SMALLEST.min(height)),
    };
    let unit = motif_outline(motif, 1.0, LABEL_WEIGHT, TwinMark::None)?;
    let try_at = |face: &Face, size: f64| {
        let shape = unit.scaled(Point::ZERO, size);
        seats(wheel, side).map(|seat| shape.moved(&Motion::shift(seat.to_vec2()))).find(|shape| face.takes(shape))
    };
    // A tenth of a millimetre is as fine as a size need be; the smallest is used, however it lies, when none fits.
    let steps = ((largest - smallest) / 0.1).ceil() as usize;
    for step in 0..=steps {
        let size = (largest - 0.1 * step as f64).max(smallest);
        if let Some(shape) = try_at(face, size) {
            face.put(motif, shape, size, LABEL_WEIGHT);
            return Ok(());
        }
    }
    if let Some(seat) = seats(wheel, side).next() {
        let shape = unit.scaled(Point::ZERO, smallest).moved(&Motion::shift(seat.to_vec2()));
        face.put(motif, shape, smallest, LABEL_WEIGHT);
    }
    Ok(())
}

/// Places to try, the most pleasing first: with the window at the side, above (`side` +1) or below (-1) the
/// pocket; with the window above or below, on the side away from it, then left or right of it.
fn seats(wheel: &Wheel, side: f64) -> impl Iterator<Item = Point> {
    let to_window = Vec2::from_angle(wheel.window.angle);
    let (centre, radius) = (wheel.centre, wheel.radius);
    let sideways = to_window.x.abs() > to_window.y.abs();
    let main = if sideways {
        Vec2::new(0.0, side)
    } else if side > 0.0 {
        Vec2::new(0.0, -to_window.y.signum())
    } else {
        Vec2::new(-1.0, 0.0)
    };
    let across = Vec2::new(main.y.abs(), main.x.abs());
    [0.50, 0.45, 0.55, 0.40, 0.60, 0.65, 0.7].into_iter().flat_map(move |out| {
        [0.0, -0.1, 0.1, -0.2, 0.2].into_iter().map(move |off| centre + radius * (out * main + off * across))
    })
}

/// A plus and a minus at the two ends of a notch, on the side to which a push counts up or down.
fn signs(face: &mut Face, wheel: &Wheel, counter: &CounterDesign) {
    let inwards = -Vec2::from_angle(wheel.notch.angle);
    let lettering = Lettering::shipped(SIGN_WEIGHT);
    for (sign, way) in [("+", 1.0), ("\u{2212}", -1.0)] {
        let Ok(shape) = lettering.inscription(sign, SIGN, TwinMark::None) else {
            continue;
        };
        let middle = shape.bounds().center().to_vec2();
        let along = wheel.notch.width / 2.0 + counter.notch.corner + SIGN / 2.0 + CLEAR;
        let mut seat = wheel.notch.mouth + way * along * wheel.notch.push_up + (CLEAR + SIGN / 2.0) * inwards;
        // On a round cover the edge falls away: follow it inwards until the sign keeps clear.
        for _ in 0..40 {
            let placed = shape.moved(&Motion::shift(seat.to_vec2() - middle));
            if face.takes(&placed) {
                break;
            }
            seat += 0.25 * inwards;
        }
        let placed = shape.moved(&Motion::shift(seat.to_vec2() - middle));
        face.put(&Motif::Text(sign.into()), placed, SIGN, SIGN_WEIGHT);
    }
}
