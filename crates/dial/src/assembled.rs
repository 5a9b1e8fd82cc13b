//! The assembled dial: every part in one coordinate system, seen from the front, y up, origin at
//! the cover's middle. The single truth; sheets, pictures and figures are views of it.

use crate::design::{Motif, RimKind, Running, WindowKind};
use crate::looks::Reading;
use lettering::Weight;
use measure::{Interval, Units};
use outline::{Axis, Curve, Motion, Point, Shape, Vec2};
use process::Stock;

/// One dial, assembled, every wheel at its first stop.
#[derive(Clone, Debug)]
pub struct Dial {
    /// Its name.
    pub name: String,
    /// Units in which figures are shown to this maker.
    pub show: Units,
    /// The plate on top.
    pub cover: Cover,
    /// The wheels behind it, in the order of the counters.
    pub wheels: Vec<Wheel>,
    /// The axis about which the cover is turned over for its pockets.
    pub turn_axis: Axis,
    /// Whether a pole gauge and a depth gauge are cut with it.
    pub gauges: bool,
    /// Who must read it, and from where.
    pub reading: Reading,
    /// Magnets to have at hand beyond those that are glued in, if the maker says so.
    pub spares: Option<usize>,
}

/// The plate on top.
#[derive(Clone, Debug)]
pub struct Cover {
    /// What it is cut from.
    pub stock: Stock,
    /// Its outline without notches.
    pub outline: Curve,
    /// Its outline with the notches taken out: what is cut on the outside.
    pub plate: Shape,
    /// Engraved on its face.
    pub art: Vec<Art>,
    /// Depth of that engraving.
    pub engrave_depth: f64,
    /// Least distance asked from a wheel's rim to the outline.
    pub edge: f64,
}

/// Something engraved on the cover's face.
#[derive(Clone, Debug)]
pub struct Art {
    /// In words: the text, or the symbol's name.
    pub what: String,
    /// Its outline.
    pub shape: Shape,
    /// Height of its capitals or of the symbol.
    pub height: f64,
    /// Whether it is text, and of which weight.
    pub weight: Option<Weight>,
}

/// A round recess for a magnet.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Pocket {
    /// Middle.
    pub centre: Point,
    /// Radius.
    pub radius: f64,
    /// Depth from the face it is sunk into.
    pub depth: f64,
    /// A shallow wider recess about it, for a cap.
    pub ledge: Option<Ledge>,
}

/// A shallow recess about a pocket, into which a cap is glued.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Ledge {
    /// Radius.
    pub radius: f64,
    /// Depth.
    pub depth: f64,
}

/// A disc magnet as bought.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Disc {
    /// Diameter over the plating.
    pub diameter: f64,
    /// Thickness over the plating.
    pub thickness: f64,
    /// Remanence in T: what its grade promises.
    pub remanence: Interval,
}

/// What a pocket does to the marked face of the master magnet that is held over it.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
#[expect(missing_docs, reason = "the names say it")]
pub enum Poles {
    Pulls,
    Pushes,
}

/// How one wheel is held: its magnet pair and what touches.
#[derive(Clone, Debug, PartialEq)]
pub struct Seat {
    /// The magnet in the cover's pocket.
    pub cover: Disc,
    /// The magnet in the wheel's pocket.
    pub wheel: Disc,
    /// Film of glue under a magnet.
    pub glue: f64,
    /// How near a magnet's face comes to where it is wanted.
    pub depth_within: f64,
    /// How far the two faces together may be from flat.
    pub flatness: f64,
    /// Friction of the faces that touch.
    pub friction: Interval,
    /// A ring that alone touches.
    pub ring: Option<Ring>,
    /// Stock of the caps, if the magnets are enclosed.
    pub cap: Option<Stock>,
    /// What the cover's pocket does to the marked face of the master magnet; the wheel's does the other.
    pub poles: Poles,
}

/// A ring about a pair that alone touches.
#[derive(Clone, Debug, PartialEq)]
pub struct Ring {
    /// Its hole.
    pub inner: f64,
    /// Its outer radius.
    pub outer: f64,
    /// How far it keeps the faces apart, or, left standing, how deep the cover's back is taken down round it.
    pub height: f64,
    /// Stock of the washer on the wheel; without one it is left standing in the cover's back.
    pub washer: Option<Stock>,
}

/// Small magnets on a ring that let a wheel click into its stops.
#[derive(Clone, Debug, PartialEq)]
pub struct ClickRing {
    /// Each of them.
    pub disc: Disc,
    /// Radius of the ring.
    pub radius: f64,
    /// Pockets in the wheel's face.
    pub wheel: Vec<Pocket>,
    /// Pockets in the cover's back.
    pub cover: Vec<Pocket>,
}

impl Pocket {
    /// Radius of all that is taken out.
    pub fn reach(&self) -> f64 {
        self.ledge.map_or(self.radius, |ledge| ledge.radius.max(self.radius))
    }
}

impl Poles {
    /// The other way round.
    pub fn reversed(self) -> Poles {
        match self {
            Poles::Pulls => Poles::Pushes,
            Poles::Pushes => Poles::Pulls,
        }
    }

    /// What it does, in words.
    pub fn words(self) -> &'static str {
        match self {
            Poles::Pulls => "pulls",
            Poles::Pushes => "pushes",
        }
    }
}

/// One wheel with its window, its notch and its two pockets.
#[derive(Clone, Debug)]
pub struct Wheel {
    /// Name of the counter.
    pub name: String,
    /// What it is cut from.
    pub stock: Stock,
    /// Middle of the wheel.
    pub centre: Point,
    /// Radius over the rim.
    pub radius: f64,
    /// Kind of rim.
    pub rim_kind: RimKind,
    /// Its rim.
    pub rim: Curve,
    /// Its marks in counting order, as they lie when the first stands in the window.
    pub marks: Vec<Mark>,
    /// Depth of the engraving.
    pub mark_depth: f64,
    /// Weight of the strokes of its text.
    pub weight: Weight,
    /// The margins asked for in the window.
    pub asked: Asked,
    /// Which way it turns to count up.
    pub counts_up: Sense,
    /// The opening that shows one stop.
    pub window: Window,
    /// The cut-out that bares its rim.
    pub notch: Notch,
    /// The pocket in its face.
    pub pocket: Pocket,
    /// The pocket opposite, in the cover's back.
    pub cover_pocket: Pocket,
    /// How the pair in the two sits.
    pub seat: Seat,
    /// Small magnets that let it click into its stops.
    pub clicks: Option<ClickRing>,
}

/// What the maker asked of every stop.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Asked {
    /// Height of the marks.
    pub height: f64,
    /// From the mark to the window's edge, at least.
    pub margin: f64,
    /// From anything else to the window's edge, at least.
    pub clear: f64,
    /// Neighbours may be seen: at least this share of their width.
    pub neighbours: Option<f64>,
    /// Which way the numbers run.
    pub running: Running,
}

/// What is engraved for one stop.
#[derive(Clone, Debug)]
pub struct Mark {
    /// What it is.
    pub motif: Motif,
    /// In words.
    pub words: String,
    /// Its outline where it lies.
    pub shape: Shape,
    /// Which way is up for it, where it lies.
    pub up: Vec2,
    /// Whether a bar or dot tells it from its upside-down twin.
    pub told_apart: bool,
}

/// A way round, seen from the front.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
#[expect(missing_docs, reason = "the names say it")]
pub enum Sense {
    Clockwise,
    Anticlockwise,
}

/// The opening in the cover that shows one stop of one wheel.
#[derive(Clone, Debug)]
pub struct Window {
    /// Its kind.
    pub kind: WindowKind,
    /// Where the marks stand in it.
    pub centre: Point,
    /// Direction from the wheel's middle.
    pub angle: f64,
    /// From the wheel's middle to `centre`.
    pub distance: f64,
    /// Width across the upright mark; of a ring sector along its middle arc.
    pub width: f64,
    /// Height; of a ring sector from arc to arc.
    pub height: f64,
    /// Radius of its corners.
    pub corner: f64,
    /// Its edge.
    pub edge: Curve,
}

/// The finger cut-out at the cover's edge that bares a wheel's rim.
#[derive(Clone, Debug)]
pub struct Notch {
    /// Direction from the wheel's middle.
    pub angle: f64,
    /// Width at the cover's edge.
    pub width: f64,
    /// Depth from the cover's edge.
    pub depth: f64,
    /// Length of rim that it was asked to bare.
    pub bares: f64,
    /// What is taken out of the cover.
    pub cutter: Curve,
    /// Where the cover's edge would be.
    pub mouth: Point,
    /// Which push, seen from the front, counts up: unit vector along the rim.
    pub push_up: Vec2,
}

impl Sense {
    /// The other way round.
    pub fn reversed(self) -> Sense {
        match self {
            Sense::Clockwise => Sense::Anticlockwise,
            Sense::Anticlockwise => Sense::Clockwise,
        }
    }

    /// +1 for anticlockwise, -1 for clockwise.
    pub fn sign(self) -> f64 {
        match self {
            Sense::Clockwise => -1.0,
            Sense::Anticlockwise => 1.0,
        }
    }
}

impl Wheel {
    /// Radius about its middle that pocket, cap, washer and clicks take up on its face.
    pub fn hub(&self) -> f64 {
        let washer = self.seat.ring.as_ref().filter(|ring| ring.washer.is_some()).map_or(0.0, |ring| ring.outer);
        let clicks = self
            .clicks
            .as_ref()
            .map_or(0.0, |ring| ring.radius + ring.wheel.iter().map(|pocket| pocket.radius).fold(0.0, f64::max));
        self.pocket.reach().max(washer).max(clicks)
    }

    /// Angle by which the wheel is turned from its first stop to stop `k`, counter-clockwise positive.
    pub fn turned_to(&self, k: usize) -> f64 {
        self.counts_up.sign() * std::f64::consts::TAU * k as f64 / self.marks.len() as f64
    }

    /// The mark of stop `k` as it stands in the window.
    pub fn upright(&self, k: usize) -> Shape {
        self.marks[k].shape.moved(&Motion::turn(self.centre, self.turned_to(k)))
    }
}
