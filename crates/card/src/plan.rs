//! The reference card as geometry: what is printed, what is read, and where the sample lies.

use std::error::Error;
use std::fmt;
use std::ops::RangeInclusive;

use kurbo::{Point, Rect, Size, Vec2};

use crate::tag::Tag;

/// The card, in mm. Chosen so that it fits A4 and US Letter with margins that every printer keeps, and a hand.
pub(crate) const CARD: Size = Size::new(140.0, 100.0);
/// Power steps that a sample may have.
pub const STEPS: RangeInclusive<usize> = 5..=8;
/// The field for the sample. Twelve mm of printed card lie around it on every side.
const OPENING: Rect = Rect::new(24.0, 30.0, 116.0, 70.0);
/// Cut off the opening's lower left corner and the sample's, so that the sample lies one way only.
const CHAMFER: f64 = 5.0;
/// The sample is this much smaller than its opening, on every side.
const PLAY: f64 = 0.3;

/// A sheet of office paper.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Paper {
    /// ISO 216 A4.
    A4,
    /// US Letter.
    Letter,
}

impl Paper {
    /// Width and height, upright, in mm (ISO 216; ANSI/ASME Y14.1, 8.5 by 11 in).
    pub fn size(self) -> Size {
        match self {
            Paper::A4 => Size::new(210.0, 297.0),
            Paper::Letter => Size::new(215.9, 279.4),
        }
    }
}

/// Something printed, all of it black. Places in mm on the card, y up, from its lower left corner; what lies beside the
/// card on the page has places outside it.
#[derive(Clone, Debug, PartialEq)]
pub enum Drawn {
    /// Filled. A ring within another leaves bare paper (even-odd). Rings are not closed by a last point.
    Solid {
        /// Closed rings of straight lines.
        rings: Vec<Vec<Point>>,
    },
    /// A straight line.
    Line {
        /// One end.
        from: Point,
        /// The other end.
        to: Point,
        /// Width in mm, half on each side.
        width: f64,
    },
    /// A closed line.
    Outline {
        /// Its corners; the last joins the first.
        ring: Vec<Point>,
        /// Width in mm, half on each side.
        width: f64,
    },
    /// A line of text.
    Label {
        /// What it says.
        text: String,
        /// Middle of its baseline.
        at: Point,
        /// Height of its capitals in mm.
        height: f64,
        /// Whole width that the text may take in mm: set it smaller where the font needs more.
        width: f64,
    },
}

/// A long narrow strip of bare paper along which the light must change slowly.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Lane {
    /// One end of its middle line, in mm.
    pub from: Point,
    /// The other end, in mm.
    pub to: Point,
    /// Full width in mm.
    pub width: f64,
}

/// One power step on the sample: places in card coordinates, mm.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct StepPlan {
    /// Left as it is.
    pub face: Rect,
    /// Engraved all over.
    pub engraved: Rect,
    /// Room for a numeral of the dial at this power; it is looked at, not measured.
    pub mark: Rect,
}

/// The engraved sample, in card coordinates (mm), face up.
#[derive(Clone, Debug, PartialEq)]
pub struct SamplePlan {
    /// Its outline to be cut, with one corner cut off so that it lies in the opening one way only.
    pub outline: Vec<Point>,
    /// Its steps from left to right, weakest engraving first.
    pub steps: Vec<StepPlan>,
}

/// The printed reference card: pure geometry, from which the page to print, the sample's cut file and the reader are made.
///
/// # The card
/// 140 by 100 mm, origin at its lower left corner, y up. A [`Tag`] in each corner tells where the card lies and which way
/// up; whites are bare paper and blacks solid print, both spread over the card, so that light and glare are known
/// everywhere; slanted black squares tell how sharp the photo is; a line is 100 mm long when the printer kept the scale.
///
/// # The sample
/// A plate of 91.4 by 39.4 mm with its lower left corner cut off, laid into the opening (cut out, or only the field that
/// is outlined). Its steps stand side by side from left to right, from the weakest engraving to the strongest; each has
/// from the bottom up a patch engraved all over, 2 mm above it a patch of plain face, and 2 mm above that room for a
/// numeral of the dial engraved at the same power. Engrave it as it lies here, at the places of [`SamplePlan`]: they
/// count from the card's origin, so move them all by the lower left corner of the outline's bounds for a sheet of their own.
#[derive(Clone, Debug, PartialEq)]
pub struct CardPlan {
    /// What it is printed on, upright.
    pub paper: Paper,
    /// The card's lower left corner on the page, from the page's lower left corner, in mm.
    pub on_page: Vec2,
    /// Width and height of the card in mm.
    pub size: Size,
    /// The corner marks, lower left first, then counter-clockwise.
    pub tags: [Tag; 4],
    /// Spots of bare paper.
    pub whites: Vec<Rect>,
    /// Solid black squares.
    pub blacks: Vec<Rect>,
    /// Slanted black squares whose edges tell the sharpness; corners counter-clockwise.
    pub sharp: Vec<[Point; 4]>,
    /// Strips of bare paper round the opening.
    pub lanes: [Lane; 4],
    /// Outline of the field where the sample lies.
    pub opening: Vec<Point>,
    /// The sample.
    pub sample: SamplePlan,
    /// The ends of the check line, 100 mm apart.
    pub check_line: [Point; 2],
}

/// A sample with too few steps to choose from, or too many to measure.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct StepsError(usize);

impl CardPlan {
    /// The card for a paper and a sample of a number of power steps, 5 to 8.
    pub fn new(paper: Paper, steps: usize) -> Result<CardPlan, StepsError> {
        if !STEPS.contains(&steps) {
            return Err(StepsError(steps));
        }
        let Size { width, height } = CARD;
        // White around each tag at least as wide as one of its modules, so that a dark table does not touch it.
        let (side, inset) = (14.0, 4.0);
        let tag = |corner: usize, x: f64, y: f64| Tag { corner, square: square(x, y, side) };
        let (right, top) = (width - inset - side, height - inset - side);
        let mut blacks = Vec::new();
        for y in [8.0, 85.0] {
            blacks.extend([28.0, 46.0, 87.0, 105.0].map(|x| square(x, y, 7.0)));
        }
        for x in [4.0, 129.0] {
            blacks.extend([30.0, 46.5, 63.0].map(|y| square(x, y, 7.0)));
        }
        let spot = |x: f64, y: f64| square(x - 2.0, y - 2.0, 4.0);
        let mut whites = Vec::new();
        for y in [11.5, 88.5] {
            whites.extend([23.0, 40.5, 58.0, 82.0, 99.5, 117.0].map(|x| spot(x, y)));
        }
        for y in [23.5, 76.5] {
            whites.extend([17.0, 30.0, 43.0, 56.0, 70.0, 84.0, 97.0, 110.0, 123.0].map(|x| spot(x, y)));
        }
        for x in [17.0, 123.0] {
            whites.extend([36.0, 50.0, 64.0].map(|y| spot(x, y)));
        }
        let lane = |x0, y0, x1, y1| Lane { from: Point::new(x0, y0), to: Point::new(x1, y1), width: 2.4 };
        Ok(CardPlan {
            paper,
            on_page: Vec2::new((paper.size().width - width) / 2.0, paper.size().height - 30.0 - height),
            size: CARD,
            tags: [tag(0, inset, inset), tag(1, right, inset), tag(2, right, top), tag(3, inset, top)],
            whites,
            blacks,
            sharp: [slanted(Point::new(70.0, 11.5)), slanted(Point::new(70.0, 88.5))].to_vec(),
            lanes: [
                lane(6.0, 23.5, 134.0, 23.5),
                lane(6.0, 76.5, 134.0, 76.5),
                lane(17.0, 21.0, 17.0, 79.0),
                lane(123.0, 21.0, 123.0, 79.0),
            ],
            opening: chamfered(OPENING),
            sample: SamplePlan { outline: chamfered(OPENING.inset(-PLAY)), steps: step_places(steps) },
            check_line: [Point::new(20.0, 97.5), Point::new(120.0, 97.5)],
        })
    }

    /// Everything printed on the page, in card coordinates.
    pub fn drawn(&self) -> Vec<Drawn> {
        let solid = |ring: Vec<Point>| Drawn::Solid { rings: vec![ring] };
        let card = Rect::from_origin_size(Point::ORIGIN, self.size);
        let mut drawn = vec![
            Drawn::Outline { ring: corners(card).to_vec(), width: 0.2 },
            Drawn::Outline { ring: self.opening.clone(), width: 0.2 },
        ];
        drawn.extend(self.tags.iter().map(|tag| Drawn::Solid { rings: tag.rings() }));
        drawn.extend(self.blacks.iter().map(|black| solid(corners(*black).to_vec())));
        drawn.extend(self.sharp.iter().map(|ring| solid(ring.to_vec())));
        let [from, to] = self.check_line;
        let line = |from: Point, to: Point| Drawn::Line { from, to, width: 0.25 };
        drawn.push(line(from, to));
        drawn.extend([from, to].map(|end| line(end - Vec2::new(0.0, 1.0), end + Vec2::new(0.0, 1.0))));
        let label = |text: &str, x: f64, y: f64, height: f64, width: f64| Drawn::Label {
            text: text.to_owned(),
            at: Point::new(x, y),
            height,
            width,
        };
        drawn.push(label("100 mm", 40.5, 94.4, 1.8, 12.0));
        drawn.push(label("weakest step on the left, cut corner at the lower left", 70.0, 18.2, 1.8, 78.0));
        for (i, step) in self.sample.steps.iter().enumerate() {
            drawn.push(label(&(i + 1).to_string(), step.face.center().x, 26.9, 1.8, 3.0));
        }
        let told = [
            "Print at full size (100 %) on plain white paper, then measure the line: it must be 100 mm long.",
            "Cut out the field in the middle, or lay the sample on it: face up, its cut corner at the lower left.",
            "Lay the card flat in even daylight without sun, lamp spot or shadow. No flash.",
            "Photograph the whole card from above, sharp and without filters, filling most of the picture.",
        ];
        for (i, text) in told.into_iter().enumerate() {
            drawn.push(label(text, 70.0, -10.0 - 6.0 * i as f64, 2.2, 150.0));
        }
        drawn
    }
}

/// The places of the steps in the opening: as wide as their number lets them be, at most 14 mm.
fn step_places(steps: usize) -> Vec<StepPlan> {
    let within = OPENING.inset(-3.0);
    let pitch = within.width() / steps as f64;
    let width = (pitch - 1.8).min(14.0);
    (0..steps)
        .map(|i| {
            let x = within.x0 + (i as f64 + 0.5) * pitch - width / 2.0;
            let row = |y: f64, height: f64| Rect::new(x, y, x + width, y + height);
            // In this order no two rows change places when the sample is turned by half a turn: see the test.
            StepPlan { engraved: row(within.y0 + 1.0, 10.5), face: row(46.5, 10.5), mark: row(59.0, 8.0) }
        })
        .collect()
}

fn square(x: f64, y: f64, side: f64) -> Rect {
    Rect::new(x, y, x + side, y + side)
}

/// Corners from the lower left, counter-clockwise.
pub(crate) fn corners(rect: Rect) -> [Point; 4] {
    let Rect { x0, y0, x1, y1 } = rect;
    [Point::new(x0, y0), Point::new(x1, y0), Point::new(x1, y1), Point::new(x0, y1)]
}

/// A black square of 9 mm, turned by 9 degrees: its edges cross the pixels of the photo at a slant, which shows an edge
/// finer than the pixels do (the principle of ISO 12233).
fn slanted(middle: Point) -> [Point; 4] {
    let (half, turn) = (4.5, 9.0_f64.to_radians());
    [(-half, -half), (half, -half), (half, half), (-half, half)]
        .map(|(x, y)| middle + Vec2::new(x * turn.cos() - y * turn.sin(), x * turn.sin() + y * turn.cos()))
}

fn chamfered(rect: Rect) -> Vec<Point> {
    let [a, b, c, d] = corners(rect);
    vec![a + Vec2::new(CHAMFER, 0.0), b, c, d, a + Vec2::new(0.0, CHAMFER)]
}

impl fmt::Display for StepsError {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        let (least, most) = (STEPS.start(), STEPS.end());
        write!(
            f,
            "a sample of {} power steps: choose {least} to {most}, so that each patch is wide enough to measure",
            self.0
        )
    }
}

impl Error for StepsError {}
