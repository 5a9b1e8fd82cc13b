//! Marks that can be taken for one another when one of them is read upside down.

use crate::raster::Raster;
use outline::{Motion, Rect, Shape, overlap};
use std::f64::consts::PI;

/// What tells a figure that can be read upside down from its twin.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
pub enum TwinMark {
    /// Nothing.
    None,
    /// A bar under the mark.
    Bar,
    /// A dot after the mark.
    Dot,
}

impl TwinMark {
    /// What a maker calls it.
    pub fn name(self) -> &'static str {
        match self {
            TwinMark::None => "none",
            TwinMark::Bar => "bar",
            TwinMark::Dot => "dot",
        }
    }

    /// The mark of that name.
    pub fn named(name: &str) -> Option<TwinMark> {
        [TwinMark::None, TwinMark::Bar, TwinMark::Dot].into_iter().find(|twin| twin.name() == name)
    }
}

/// Two marks of which one, turned by half a turn, can be taken for the other.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Twin {
    /// Index of the one.
    pub first: usize,
    /// Index of the other, the larger of the two.
    pub second: usize,
    /// Area in common over area of either, when one is turned and laid on the other; of the character that agrees least.
    pub overlap: f64,
}

/// Marks that overlap by this much when one is turned are twins.
///
/// Our own proposal, from measurements: fonts that are known to need a bar under 6 and 9 overlap by 0.87 to 1.00 there, and
/// n on u in the shipped font by 0.90 to 0.97; what nobody takes for the other stays below, A on V by at most 0.80 and any two numbers
/// of 0 to 99 in the shipped font by 0.67.
pub const TWIN_LIMIT: f64 = 0.85;

/// By how much two rasters may understate the overlap of the outlines: 0.08 at most among the 900 pairs of characters
/// in the shipped font, of all weights, whose boxes and areas are alike.
const COARSE: f64 = 0.1;
/// Boxes whose sides differ by a larger share are of different marks.
const BOX: f64 = 0.12;

/// The twins among some marks, each standing upright; those of lower index first.
///
/// Two marks are compared with the middles of their boxes on each other, character by character: 65 is not 66 because half of it is.
/// Marks that are the same are not twins: to read one for the other does no harm.
pub fn upside_down_twins(marks: &[&Shape]) -> Vec<Twin> {
    let mut kinds: Vec<Kind> = Vec::new();
    for (index, shape) in marks.iter().enumerate() {
        if shape.is_empty() {
            continue;
        }
        let one = Kind::of(index, shape);
        match kinds.iter_mut().find(|kind| kind.same_as(&one)) {
            Some(kind) => kind.members.push(index),
            None => kinds.push(one),
        }
    }
    let mut twins = Vec::new();
    for (i, one) in kinds.iter().enumerate() {
        for other in &kinds[i + 1..] {
            let Some(overlap) = one.upside_down_on(other) else {
                continue;
            };
            for &first in &one.members {
                twins.extend(other.members.iter().map(|&second| Twin {
                    first: first.min(second),
                    second: first.max(second),
                    overlap,
                }));
            }
        }
    }
    twins.sort_by_key(|twin| (twin.first, twin.second));
    twins
}

/// Marks that look the same, and what is asked of them again and again.
struct Kind<'a> {
    members: Vec<usize>,
    shape: &'a Shape,
    area: f64,
    width: f64,
    height: f64,
    raster: Raster,
    turned: Raster,
}

impl<'a> Kind<'a> {
    fn of(index: usize, shape: &'a Shape) -> Kind<'a> {
        let bounds = shape.bounds();
        let raster = Raster::of(shape);
        Kind {
            members: vec![index],
            shape,
            area: shape.area(),
            width: bounds.width(),
            height: bounds.height(),
            turned: raster.turned(),
            raster,
        }
    }

    fn same_as(&self, other: &Kind) -> bool {
        let equal = |a: f64, b: f64| (a - b).abs() <= 1e-6 * a.max(b);
        equal(self.area, other.area)
            && equal(self.width, other.width)
            && equal(self.height, other.height)
            && self.raster.overlap(&other.raster) > 0.99
    }

    /// The overlap when this one is turned and laid on the other, if that makes them twins.
    fn upside_down_on(&self, other: &Kind) -> Option<f64> {
        // No more can be in common than the smaller has.
        let smaller = self.area.min(other.area) / self.area.max(other.area);
        let alike = |a: f64, b: f64| (a - b).abs() <= BOX * a.max(b);
        if smaller < TWIN_LIMIT
            || !alike(self.width, other.width)
            || !alike(self.height, other.height)
            || self.turned.overlap(&other.raster) < TWIN_LIMIT - COARSE
        {
            return None;
        }
        let (from, to) = (self.shape.bounds().center(), other.shape.bounds().center());
        let lay = Motion::turn(from, PI).then(&Motion::shift(to - from));
        let (turned, upright) = (characters(&self.shape.moved(&lay)), characters(other.shape));
        if turned.len() != upright.len() {
            return None;
        }
        let pairs = turned.iter().zip(&upright);
        let least = pairs.map(|(a, b)| overlap(a, b)).fold(1.0, f64::min);
        (least >= TWIN_LIMIT).then_some(least)
    }
}

/// The parts of a mark that stand beside each other, from left to right: its characters, unless they reach over or under each other.
fn characters(mark: &Shape) -> Vec<Shape> {
    let mut pieces: Vec<(Rect, Shape)> = mark.pieces().into_iter().map(|piece| (piece.bounds(), piece)).collect();
    pieces.sort_by(|a, b| a.0.x0.total_cmp(&b.0.x0));
    let mut parts: Vec<(f64, Vec<Shape>)> = Vec::new();
    for (around, piece) in pieces {
        match parts.last_mut() {
            Some((end, part)) if around.x0 <= *end => {
                *end = end.max(around.x1);
                part.push(piece);
            }
            _ => parts.push((around.x1, vec![piece])),
        }
    }
    parts.iter().map(|(_, part)| Shape::joined(part)).collect()
}

/// What a text reads when it is turned by half a turn: figures change as 0-0, 1-1, 6-9, 8-8, 9-6 and come in the
/// opposite order (common practice of lottery balls and number tiles); `None` when it holds anything else.
///
/// A reader on the other side of the table reads by this table whatever the font: nobody remembers how its 9 is drawn while looking at a 6.
pub fn reads_upside_down(text: &str) -> Option<String> {
    let turned = |c: char| match c {
        '0' | '1' | '8' => Some(c),
        '6' => Some('9'),
        '9' => Some('6'),
        _ => None,
    };
    (!text.is_empty()).then(|| text.chars().rev().map(turned).collect::<Option<String>>())?
}
