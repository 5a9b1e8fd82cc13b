//! The dial file: what the maker wrote, with units resolved and fixed defaults filled in. Whatever
//! the layout derives is still `None` here.
//!
//! Lengths are in mm, angles in radians, counter-clockwise from 3 o'clock, seen from the front.

mod build;
mod build_workshop;
mod clash;
mod counting;
mod explain;
pub mod magnets;
pub(crate) mod nearest;
mod new_file;
mod page;
pub mod parameters;
mod reader;
mod reading;
mod strength;
mod syntax;
pub mod table;
mod value;

use crate::looks::Reading;
use crate::spans::{Mistake, Spans};
pub use explain::render_mistakes;
use lettering::{Symbol, TwinMark, Weight};
pub use magnets::{ClickDesign, MagnetDesign, RingDesign, SeatKind};
use measure::Units;
pub use new_file::new_file;
use outline::Point;
pub use page::{reference_page as page_of, schema as schema_of};
use process::Stock;
use process::{Vote, Workshop};

/// One dial as the maker asked for it.
#[derive(Clone, Debug)]
pub struct Design {
    /// The dial's name.
    pub name: String,
    /// Units in which figures are shown to this maker.
    pub show: Units,
    /// Which half of the cover is the master of the other, if any.
    pub symmetry: Option<Half>,
    /// The axis about which the cover is turned over for its pockets.
    pub turn_over: TurnOver,
    /// The plate on top.
    pub cover: CoverDesign,
    /// Stock of all wheels.
    pub wheel_stock: Stock,
    /// Clear distance between two wheels.
    pub wheel_gap: f64,
    /// Whether all wheels get the radius of the largest.
    pub same_size: bool,
    /// The magnets and their pockets.
    pub magnet: MagnetDesign,
    /// Whether the gauges are cut too.
    pub gauges: bool,
    /// Who must read it, and from where.
    pub reading: Reading,
    /// Dial file of the family's standard, as written.
    pub standard: Option<String>,
    /// What the wheels count: one to six.
    pub counters: Vec<CounterDesign>,
    /// Where each value stands in the maker's file.
    pub spans: Spans,
}

/// Half of the cover, seen from the front.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Half {
    /// x below 0.
    Left,
    /// x above 0.
    Right,
    /// y above 0.
    Top,
    /// y below 0.
    Bottom,
}

/// How the cover is turned over in its hole.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum TurnOver {
    /// Like the page of a book: about the upright axis through the cover's middle.
    Sideways,
    /// Like a notepad: about the level axis through the cover's middle.
    Endways,
}

/// The cover as asked for.
#[derive(Clone, Debug)]
pub struct CoverDesign {
    /// Its stock.
    pub stock: Stock,
    /// Its outline, if asked for.
    pub outline: Option<OutlineKind>,
    /// Radius of its corners.
    pub corner: f64,
    /// Width of a rounded rectangle or stadium, diameter of a circle, or distance across the flats of a regular polygon.
    pub width: Option<f64>,
    /// Height of a rounded rectangle or stadium.
    pub height: Option<f64>,
    /// Sides of a regular polygon.
    pub sides: usize,
    /// Corners of a free polygon, in order round it.
    pub points: Vec<Point>,
    /// From a wheel's rim to the cover's edge, at least.
    pub edge: f64,
    /// Depth of the engraving on the cover's face.
    pub engrave_depth: f64,
    /// Extra text and symbols on the face.
    pub art: Vec<ArtDesign>,
}

/// Kinds of cover outline.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
#[expect(missing_docs, reason = "the names say it")]
pub enum OutlineKind {
    RoundedRectangle,
    Circle,
    Stadium,
    RegularPolygon,
    Polygon,
}

/// One piece of text or a symbol on the cover's face.
#[derive(Clone, Debug)]
pub struct ArtDesign {
    /// What is engraved.
    pub motif: Motif,
    /// Middle of the motif.
    pub at: Point,
    /// Height of its capitals or of the symbol.
    pub height: f64,
    /// Turned counter-clockwise by this.
    pub angle: f64,
}

/// Text or one of the built-in symbols.
#[derive(Clone, Debug, PartialEq, Eq)]
#[expect(missing_docs, reason = "the names say it")]
pub enum Motif {
    Text(String),
    Symbol(Symbol),
}

/// One counter: a wheel with its marks, window and notch.
#[derive(Clone, Debug)]
pub struct CounterDesign {
    /// What it counts.
    pub name: String,
    /// Its marks in counting order: 2 to 100.
    pub marks: Vec<Motif>,
    /// Text beside the window; empty for none.
    pub label: String,
    /// Symbol beside the window.
    pub symbol: Option<Symbol>,
    /// Height of the label's capitals; derived when `None`.
    pub label_height: Option<f64>,
    /// Which way the numbers run.
    pub running: Running,
    /// Middle of the wheel; derived when `None`.
    pub at: Option<Point>,
    /// Its marks.
    pub mark: MarkDesign,
    /// Its window.
    pub window: WindowDesign,
    /// Its notch.
    pub notch: NotchDesign,
    /// Its wheel.
    pub wheel: WheelDesign,
}

/// Which way the marks run round the wheel.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Running {
    /// The next higher mark comes in from above, or from the right where marks move sideways: in
    /// every window alike (MIL-STD-1472E 5.2.3.3.1 for straight scales: numbers increase from bottom to top, from left to right).
    Alike,
    /// As `Alike`, from the other side.
    AlikeReversed,
    /// Numbers grow clockwise round the wheel's face, so the wheel turns anticlockwise to count up (MIL-STD-1472E 5.2.3.3.1, circular dials).
    NumbersClockwise,
    /// Turning the wheel clockwise counts up; the numbers grow anticlockwise.
    TurnClockwise,
}

/// How marks are made.
#[derive(Clone, Copy, Debug)]
pub struct MarkDesign {
    /// Height of a figure or capital; height of a symbol.
    pub height: f64,
    /// From the mark to the window's edge, at least.
    pub margin: f64,
    /// From a neighbour's mark to the window's edge, at least.
    pub clear: f64,
    /// Weight of the strokes.
    pub weight: Weight,
    /// How marks that can be read upside down are told apart.
    pub twins: Twins,
    /// Depth of the engraving.
    pub depth: f64,
}

/// How marks that read as another mark when upside down are told apart.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Twins {
    /// A bar where the font alone does not tell them apart.
    WhereNeeded,
    /// Always this mark on every member of such a pair.
    Always(TwinMark),
}

/// Kinds of window.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
#[expect(missing_docs, reason = "the names say it")]
pub enum WindowKind {
    RoundedRectangle,
    Round,
    RingSector,
}

/// What a window shows.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum Shows {
    /// One mark, whole and alone.
    OneMark,
    /// Also at least this share of each neighbour's width (better for setting, MIL-STD-1472E 5.2.3.3.4).
    Neighbours(f64),
}

/// A window as asked for.
#[derive(Clone, Copy, Debug)]
pub struct WindowDesign {
    /// Its kind.
    pub kind: WindowKind,
    /// What it shows.
    pub shows: Shows,
    /// Direction from the wheel's middle; derived when `None`.
    pub angle: Option<f64>,
    /// From the wheel's middle to the window's middle; derived when `None`.
    pub distance: Option<f64>,
    /// Width across the upright mark (diameter of a round window); derived when `None`.
    pub width: Option<f64>,
    /// Height; derived when `None`. Of a ring sector: from inner to outer arc.
    pub height: Option<f64>,
    /// Radius of its corners; derived when `None`.
    pub corner: Option<f64>,
}

/// A notch as asked for.
#[derive(Clone, Copy, Debug)]
pub struct NotchDesign {
    /// Direction from the wheel's middle; derived when `None`.
    pub angle: Option<f64>,
    /// Width at the cover's edge.
    pub width: f64,
    /// Depth from the cover's edge; derived when `None`.
    pub depth: Option<f64>,
    /// Length of rim it bares, at least.
    pub bares: f64,
    /// Radius of the rounded corners where the notch meets the edge.
    pub corner: f64,
    /// Engrave a small + and - beside it.
    pub signs: bool,
}

/// A wheel as asked for.
#[derive(Clone, Copy, Debug)]
pub struct WheelDesign {
    /// Radius over the rim; derived when `None`.
    pub radius: Option<f64>,
    /// From the window's farthest corner to the rim's lowest place, at least.
    pub land: f64,
    /// The rim.
    pub rim: RimKind,
}

/// Kinds of wheel rim.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum RimKind {
    /// A plain circle.
    Plain,
    /// Shallow scoops for grip.
    Scalloped {
        /// How many; derived from the rim's length when `None`.
        count: Option<usize>,
        /// How deep.
        depth: f64,
    },
}

/// Reads a dial file.
///
/// # Errors
/// All mistakes in it, each with its place.
pub fn read(text: &str, workshop: &Workshop) -> Result<Design, Vec<Mistake>> {
    let reading = reader::read(text, parameters::DIAL_FILE);
    let counters = match reading.values.get("counter") {
        Some(reader::Value::Tables(count)) => *count,
        _ => 0,
    };
    let mut mistakes = reading.mistakes.clone();
    mistakes.extend(clash::exclusive(&reading, counters));
    if reading.broken {
        return Err(in_order(mistakes));
    }
    let (design, more) = build::design(&reading, workshop);
    mistakes.extend(more);
    mistakes.extend(design.iter().flat_map(|design| clash::measures(&reading, design)));
    match design {
        Some(design) if mistakes.is_empty() => Ok(design),
        _ => Err(in_order(mistakes)),
    }
}

/// In the order of the file; what has no place comes first.
fn in_order(mut mistakes: Vec<Mistake>) -> Vec<Mistake> {
    mistakes.sort_by_key(|mistake| mistake.at.as_ref().map_or(0, |label| label.span.start + 1));
    mistakes
}

/// What a workshop file says: the machine's values that are written, and its stocks.
///
/// # Errors
/// All mistakes in it, each with its place.
pub fn read_workshop(text: &str, usual: &Workshop) -> Result<Workshop, Vec<Mistake>> {
    let reading = reader::read(text, parameters::WORKSHOP_FILE);
    let mut mistakes = reading.mistakes.clone();
    mistakes.extend(clash::exclusive(&reading, 0));
    if !mistakes.is_empty() {
        return Err(in_order(mistakes));
    }
    Ok(build_workshop::workshop(&reading, usual))
}

/// The votes that a file holds.
///
/// # Errors
/// All mistakes in it, each with its place.
pub fn read_votes(text: &str) -> Result<Vec<Vote>, Vec<Mistake>> {
    let reading = reader::read(text, parameters::VOTES_FILE);
    if !reading.mistakes.is_empty() {
        return Err(in_order(reading.mistakes));
    }
    Ok(build_workshop::votes(&reading))
}

/// The reference page of the dial file.
pub fn reference_page() -> String {
    page_of("The dial file", OPENING, parameters::DIAL_FILE)
}

/// The schema of the dial file.
pub fn schema() -> serde_json::Value {
    schema_of("A dial file", parameters::DIAL_FILE)
}

const OPENING: &str = "Only `name`, the counters and a stock are required. Lengths are written with their unit, as `\"3.2 mm\"` or `\"1/8 in\"`;\nangles as `\"90 deg\"` or `\"12 o'clock\"`. Places are measured from the cover's middle, to the right and up, seen from the front.\nThe tables `wheel`, `mark`, `window` and `notch` may also stand in a counter, as `window = { angle = \"90 deg\" }`, and hold for its wheel alone.\n\n```toml\nname = \"Harbour\"\nstock = \"birch plywood 3 mm\"\n\n[[counter]]\nname = \"provisions\"\nvalues = \"0..24\"\n```";
