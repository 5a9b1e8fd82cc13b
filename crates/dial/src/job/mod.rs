//! The job: which parts lie where on which sheet, in which setups, and what is done in which order.
//! Sheet coordinates: mm, y up, origin at the sheet's lower left corner, as the sheet lies in the machine.

use outline::{Axis, Curve, EllipticCurve, Point, Shape};
use process::Stock;

/// All that must be cut for one dial.
#[derive(Clone, Debug)]
pub struct Job {
    /// One for each stock, or more when the parts do not fit on one.
    pub sheets: Vec<Sheet>,
}

/// One sheet of stock with its parts.
#[derive(Clone, Debug)]
pub struct Sheet {
    /// Number, from 1.
    pub number: usize,
    /// What it is.
    pub stock: Stock,
    /// Width that the parts need, with a border.
    pub width: f64,
    /// Height that the parts need, with a border.
    pub height: f64,
    /// Where the parts lie.
    pub parts: Vec<Placed>,
    /// Face up first, then turned over if any part has work on its back.
    pub setups: Vec<Setup>,
}

/// One part on a sheet.
#[derive(Clone, Debug)]
pub struct Placed {
    /// Its name.
    pub name: String,
    /// Its middle on the sheet.
    pub at: Point,
    /// Its outline on the sheet, as drawn (kerf not yet compensated).
    pub outline: Shape,
}

/// One placement of the stock in the machine.
#[derive(Clone, Debug)]
pub struct Setup {
    /// Number, counted through the whole job from 1.
    pub number: usize,
    /// Face up, or turned over in its own hole about these axes, one for each part that is turned.
    pub turned: Vec<TurnedPart>,
    /// What is done, in order.
    pub steps: Vec<Step>,
}

/// A part that lies turned over in its own hole.
#[derive(Clone, Debug)]
pub struct TurnedPart {
    /// Its name.
    pub name: String,
    /// The axis it was turned about, on the sheet.
    pub axis: Axis,
    /// The hole it lies in.
    pub hole: Curve,
}

/// One operation within a setup.
#[derive(Clone, Debug)]
pub struct Step {
    /// Which.
    pub kind: StepKind,
    /// What the beam does.
    pub work: Vec<Work>,
}

/// Kinds of step, in the order of the trade.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
#[expect(missing_docs, reason = "the names say it")]
pub enum StepKind {
    Engrave,
    Pocket,
    CutInside,
    CutOutside,
}

/// One thing the beam does.
#[derive(Clone, Debug)]
pub enum Work {
    /// Clears an area to a depth.
    Area {
        /// The part it belongs to.
        part: String,
        /// The area.
        shape: Shape,
        /// The depth.
        depth: f64,
    },
    /// Follows a path, right through.
    Path {
        /// The part it belongs to.
        part: String,
        /// The path of the beam's middle, kerf compensated.
        path: EllipticCurve,
    },
}
