//! Magnets, their seats and their clicks, as asked for.

use super::build::Scope;
use super::parameters::DIAL_FILE;
use super::reader::Value;
use crate::assembled::{Disc, Poles};
use measure::Interval;
use process::Stock;

/// Magnets and pockets as asked for.
#[derive(Clone, Debug)]
pub struct MagnetDesign {
    /// The magnet in each of the cover's pockets.
    pub cover: Disc,
    /// The magnet in each wheel.
    pub wheel: Disc,
    /// Pocket diameter less magnet diameter.
    pub fit: f64,
    /// How a pair sits, unless the pockets' depths say otherwise.
    pub seat: SeatKind,
    /// How far a magnet's face lies under the face it is sunk into.
    pub recess: f64,
    /// How far a magnet stands out of the face.
    pub stand: f64,
    /// Stock of the caps, if the magnets are enclosed.
    pub cap: Option<Stock>,
    /// Depth of the pockets in the cover's back; derived when `None`.
    pub cover_pocket: Option<f64>,
    /// Depth of the pocket in each wheel's face; derived when `None`.
    pub wheel_pocket: Option<f64>,
    /// Film of glue under a magnet or a cap.
    pub glue: f64,
    /// How near a magnet's face comes to where it is wanted.
    pub depth_within: f64,
    /// How far the two faces together may be from flat.
    pub flatness: f64,
    /// Friction of the faces that touch; derived when `None`.
    pub friction: Option<Interval>,
    /// A ring that alone touches.
    pub ring: Option<RingDesign>,
    /// What every pocket of a cover does to the marked face of the master magnet.
    pub poles: Poles,
    /// Magnets beyond those that are glued in; derived when `None`.
    pub spares: Option<usize>,
    /// A ring of small magnets that click.
    pub click: Option<ClickDesign>,
}

/// How a pair sits.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum SeatKind {
    /// The magnets' faces just under the faces of cover and wheel.
    Flush,
    /// Deeper.
    Recessed,
    /// Standing out: they touch, the wheel does not touch the cover.
    Proud,
    /// The wheel's magnet stands out into the cover's deeper pocket.
    PinAndSocket,
    /// Each under a cap that is glued over it.
    Enclosed,
}

/// A ring about each pair that alone touches.
#[derive(Clone, Debug, PartialEq)]
pub struct RingDesign {
    /// Its outer diameter.
    pub diameter: f64,
    /// Height of a ring that is left standing in the cover's back.
    pub height: f64,
    /// Stock of a washer glued to the wheel instead.
    pub washer: Option<Stock>,
}

/// A ring of small magnets that click.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct ClickDesign {
    /// Each of them.
    pub disc: Disc,
    /// Radius of the ring; derived when `None`.
    pub ring: Option<f64>,
}

impl SeatKind {
    /// What it is called in a dial file.
    pub fn words(self) -> &'static str {
        match self {
            SeatKind::Flush => "flush",
            SeatKind::Recessed => "recessed",
            SeatKind::Proud => "proud",
            SeatKind::PinAndSocket => "pin and socket",
            SeatKind::Enclosed => "enclosed",
        }
    }

    fn named(words: &str) -> SeatKind {
        let all = [SeatKind::Recessed, SeatKind::Proud, SeatKind::PinAndSocket, SeatKind::Enclosed];
        all.into_iter().find(|kind| kind.words() == words).unwrap_or(SeatKind::Flush)
    }
}

/// The design of the magnets; `stock` looks up a stock by its key.
pub(super) fn build(dial: &Scope, mut stock: impl FnMut(&str) -> Option<Stock>) -> MagnetDesign {
    let length = |key: &str| dial.length_or_default(&format!("magnet.{key}"));
    let asked = |key: &str| dial.number(&format!("magnet.{key}"));
    let cover =
        Disc { diameter: length("diameter"), thickness: length("thickness"), remanence: grade(dial, "magnet.grade") };
    let wheel = Disc {
        diameter: asked("wheel_diameter").unwrap_or(cover.diameter),
        thickness: asked("wheel_thickness").unwrap_or(cover.thickness),
        remanence: dial.interval("magnet.wheel_grade").unwrap_or(cover.remanence),
    };
    let seat = SeatKind::named(dial.text_or_default("magnet.seat"));
    let ring = asked("ring").map(|diameter| RingDesign {
        diameter,
        height: length("ring_height"),
        washer: dial.text("magnet.ring_stock").and_then(|_| stock("magnet.ring_stock")),
    });
    MagnetDesign {
        cover,
        wheel,
        fit: length("fit"),
        seat,
        recess: asked("recess").unwrap_or(if seat == SeatKind::Recessed { 0.4 } else { 0.1 }),
        stand: asked("stand").unwrap_or(if seat == SeatKind::PinAndSocket { 0.5 } else { 0.2 }),
        cap: if seat == SeatKind::Enclosed { stock("magnet.cap_stock") } else { None },
        cover_pocket: asked("cover_pocket"),
        wheel_pocket: asked("wheel_pocket"),
        glue: length("glue"),
        depth_within: length("depth_within"),
        flatness: length("flatness"),
        friction: dial.interval("magnet.friction"),
        ring,
        poles: if dial.text_or_default("magnet.poles") == "cover pushes" { Poles::Pushes } else { Poles::Pulls },
        spares: dial.count("magnet.spares"),
        click: dial.number("click.diameter").map(|diameter| ClickDesign {
            disc: Disc {
                diameter,
                thickness: dial.length_or_default("click.thickness"),
                remanence: grade(dial, "click.grade"),
            },
            ring: dial.number("click.ring"),
        }),
    }
}

/// The grade that is written, or the usual one.
fn grade(dial: &Scope, path: &str) -> Interval {
    let usual = || super::table::fixed(DIAL_FILE, path).and_then(|text| super::strength::grade(text).ok());
    dial.interval(path).or_else(usual).unwrap_or_default()
}

impl Scope<'_> {
    pub(super) fn interval(&self, path: &str) -> Option<Interval> {
        match self.value(path) {
            Some(Value::Interval(interval)) => Some(*interval),
            _ => None,
        }
    }
}

impl MagnetDesign {
    /// Depths of the pockets in the cover's back and in the wheel's face: as asked, or what the seat needs.
    pub fn depths(&self) -> (f64, f64) {
        let cap = self.cap.as_ref().map_or(0.0, |stock| stock.thickness() + self.glue);
        let under = |disc: &Disc, recess: f64| disc.thickness + self.glue + recess;
        let (cover, wheel) = match self.seat {
            SeatKind::Flush | SeatKind::Recessed => (self.recess, self.recess),
            SeatKind::Proud => (-self.stand, -self.stand),
            // The socket takes the pin and leaves it as much room as a flush pair has.
            SeatKind::PinAndSocket => (self.stand + 2.0 * self.recess, -self.stand),
            SeatKind::Enclosed => (cap, cap),
        };
        (self.cover_pocket.unwrap_or(under(&self.cover, cover)), self.wheel_pocket.unwrap_or(under(&self.wheel, wheel)))
    }
}
