//! The job: which parts lie where on which sheet, in which setups, and what is done in which order.
//! Sheet coordinates: mm, y up, origin at the sheet's lower left corner, as the sheet lies in the machine.

mod gauges;
mod plan;
mod rows;
mod turn_over;

use outline::{Axis, EllipticCurve, OutlineError, Point, Shape};
pub(crate) use plan::between_parts;
pub use plan::plan;
use process::Stock;
use std::fmt;

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
    /// Empty when the stock lies face up; else the parts that were turned over in their own holes.
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
    /// The hole it lies in: its own outline as it was cut face up.
    pub hole: Shape,
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

/// Why no job can be planned.
#[derive(Clone, Debug, PartialEq)]
pub enum JobError {
    /// A part does not fit on the machine's bed.
    TooLarge {
        /// The part.
        part: String,
        /// Its width and height with the border, in mm.
        needs: (f64, f64),
        /// The bed's width and height, in mm.
        bed: (f64, f64),
    },
    /// A cut cannot be compensated for the kerf.
    Kerf {
        /// The part.
        part: String,
        /// Why.
        why: OutlineError,
    },
}

impl fmt::Display for JobError {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        match self {
            JobError::TooLarge { part, needs, bed } => write!(
                f,
                "{part} needs {:.1} x {:.1} mm with its border, the bed has {:.1} x {:.1} mm",
                needs.0, needs.1, bed.0, bed.1
            ),
            JobError::Kerf { part, why } => write!(
                f,
                "a cut of {part} cannot be compensated for the kerf ({why}): the opening is narrower than the beam"
            ),
        }
    }
}

impl std::error::Error for JobError {}

impl JobError {
    /// What to do about it.
    pub fn mend(&self) -> &'static str {
        match self {
            JobError::TooLarge { .. } => "make it smaller, or name a larger machine in the workshop file",
            JobError::Kerf { .. } => "make the opening larger",
        }
    }
}

impl StepKind {
    /// What the step is called.
    pub fn words(self) -> &'static str {
        match self {
            StepKind::Engrave => "engrave",
            StepKind::Pocket => "pocket",
            StepKind::CutInside => "cut inside",
            StepKind::CutOutside => "cut outside",
        }
    }
}

impl Step {
    /// Depth of its areas; `None` for a cut, which goes right through.
    pub fn depth(&self) -> Option<f64> {
        self.work.iter().find_map(|work| match work {
            Work::Area { depth, .. } => Some(*depth),
            Work::Path { .. } => None,
        })
    }
}

impl Setup {
    /// Whether parts lie turned over in it.
    pub fn is_turned(&self) -> bool {
        !self.turned.is_empty()
    }
}
