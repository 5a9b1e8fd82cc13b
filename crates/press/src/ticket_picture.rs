//! The sheet as it lies in the machine for one setup: parts, holes, the axis, the steps, and a line to check the scale.

use crate::paper::Drawing;
use crate::picture::{Pen, Picture, dashes, pen, tone};
use crate::symmetry::ends;
use crate::ticket::{step_words, turned_how};
use dial::Dial;
use dial::job::{Setup, Sheet, Step, StepKind, TurnedPart, Work};
use measure::show;
use outline::{Axis, BezPath, Curve, Motion, PathEl, Point, Rect, Shape, Vec2};
use process::StepColours;

const MARGIN: f64 = 10.0;
/// Height of the words.
const WORDS: f64 = 2.6;
/// Length of the check line.
const CHECK: f64 = 50.0;
/// How near a path is drawn, in mm.
const NEAR: f64 = 0.01;
/// Dashes of the page's edge.
const EDGE: &str = "3 2";

/// The picture that goes with a ticket.
pub fn ticket_picture(dial: &Dial, sheet: &Sheet, setup: &Setup, colours: &StepColours) -> String {
    let title = format!("{}: setup {}", dial.name, setup.number);
    let mut picture = Picture::new(&title, page_of(sheet).inflate(MARGIN, MARGIN));
    picture.widen_to(140.0);
    lying(&mut picture, sheet, setup, colours);
    let down = legend(&mut picture, dial, sheet, setup, colours);
    let end = check_line(&mut picture, dial, down);
    picture.end_at(end);
    picture.finish()
}

/// The same sheet on white paper, without words.
pub fn sheet_drawing(dial: &Dial, sheet: &Sheet, setup: &Setup, colours: &StepColours) -> Drawing {
    let alt = format!("{}: the sheet in the machine for setup {}", dial.name, setup.number);
    // Room for the ends of the axis and the arrow over it.
    let area = page_of(sheet).inflate(1.0, 1.0);
    let turned = setup.turned.iter().map(|part| part.hole.bounds().inflate(9.0, 9.0));
    let area = turned.fold(area, |all, one| all.union(one));
    let mut picture = Picture::new(&alt, area);
    lying(&mut picture, sheet, setup, colours);
    Drawing { svg: picture.finish_on_white(), width: area.width(), height: area.height(), alt, labels: Vec::new() }
}

/// How each step is drawn on it: its colour, and whether as a line.
pub fn step_sign(step: &Step, colours: &StepColours) -> (String, bool) {
    (colour(step.kind, colours).to_owned(), step.depth().is_none())
}

fn page_of(sheet: &Sheet) -> Rect {
    Rect::new(0.0, 0.0, sheet.width, sheet.height)
}

/// The sheet with its parts, what the steps do to them, and the axes of what was turned over.
fn lying(picture: &mut Picture, sheet: &Sheet, setup: &Setup, colours: &StepColours) {
    let page = page_of(sheet);
    let edge = Curve::rounded_rectangle(page.center(), page.width(), page.height(), 0.0);
    picture.outline(&Shape::from(edge), pen(tone::QUIET, 0.2, EDGE));
    if setup.is_turned() {
        empty_holes(picture, sheet, setup);
    } else {
        for part in &sheet.parts {
            picture.fill(&part.outline, tone::COVER);
        }
    }
    for step in &setup.steps {
        draw(picture, step, colours);
    }
    for part in &setup.turned {
        turn(picture, &part.axis, part.hole.bounds());
    }
}

/// What one step does.
fn draw(picture: &mut Picture, step: &Step, colours: &StepColours) {
    for work in &step.work {
        match work {
            Work::Area { shape, .. } => picture.fill(shape, colour(step.kind, colours)),
            Work::Path { path, .. } => {
                picture.line(&path.to_bez_path(NEAR), pen(colour(step.kind, colours), 0.3, line_of(step.kind)))
            }
        }
    }
}

fn colour(kind: StepKind, colours: &StepColours) -> &str {
    match kind {
        StepKind::Engrave => &colours.engrave,
        StepKind::Pocket => &colours.pocket,
        StepKind::CutInside => &colours.cut_inside,
        StepKind::CutOutside => &colours.cut_outside,
    }
}

fn line_of(kind: StepKind) -> &'static str {
    match kind {
        StepKind::CutInside => "1.2 0.6",
        _ => dashes::NONE,
    }
}

/// The second setup: holes that are cut already, the parts that lie turned over in theirs, and their openings.
fn empty_holes(picture: &mut Picture, sheet: &Sheet, setup: &Setup) {
    let cut = pen(tone::QUIET, 0.2, dashes::HIDDEN);
    for part in &sheet.parts {
        if let Some(turned) = setup.turned.iter().find(|one| one.name == part.name) {
            let over = Motion::mirror(&turned.axis);
            picture.fill(&part.outline.moved(&over), tone::COVER);
            for opening in openings(sheet, turned) {
                let there = moved(&opening, &over);
                picture.fill_path(&there, tone::PAPER);
                picture.line(&there, cut);
            }
        }
        picture.outline(&part.outline, cut);
    }
}

/// What was cut inside a part before it was turned over.
fn openings(sheet: &Sheet, turned: &TurnedPart) -> Vec<BezPath> {
    let before = sheet.setups.iter().filter(|setup| !setup.is_turned());
    let steps = before.flat_map(|setup| &setup.steps).filter(|step| step.kind == StepKind::CutInside);
    steps
        .flat_map(|step| &step.work)
        .filter_map(|work| match work {
            Work::Path { part, path } if *part == turned.name => Some(path.to_bez_path(NEAR)),
            _ => None,
        })
        .collect()
}

fn moved(path: &BezPath, motion: &Motion) -> BezPath {
    let go = |p: Point| motion.apply(p);
    path.elements()
        .iter()
        .map(|element| match *element {
            PathEl::MoveTo(p) => PathEl::MoveTo(go(p)),
            PathEl::LineTo(p) => PathEl::LineTo(go(p)),
            PathEl::QuadTo(a, p) => PathEl::QuadTo(go(a), go(p)),
            PathEl::CurveTo(a, b, p) => PathEl::CurveTo(go(a), go(b), go(p)),
            PathEl::ClosePath => PathEl::ClosePath,
        })
        .collect()
}

/// The axis a part was turned over about, and an arrow over its end.
fn turn(picture: &mut Picture, axis: &Axis, hole: Rect) {
    let (from, to) = ends(axis, hole.inflate(6.0, 6.0));
    picture.straight(from, to, pen(tone::INK, 0.3, dashes::AXIS));
    let along = (to - from) / (to - from).hypot();
    let across = Vec2::new(-along.y, along.x);
    // Half a flat ellipse round the axis' end, as a circle seen at a slant.
    let at = |angle: f64| to - 1.5 * along + 8.0 * angle.cos() * across + 3.0 * angle.sin() * along;
    let mut path = BezPath::new();
    path.move_to(at(std::f64::consts::PI * 0.9));
    for k in 1..=24 {
        path.line_to(at(std::f64::consts::PI * (0.9 - 0.8 * f64::from(k) / 24.0)));
    }
    picture.line(&path, pen(tone::INK, 0.4, dashes::NONE));
    let tip = at(std::f64::consts::PI * 0.1);
    let before = at(std::f64::consts::PI * 0.2);
    let back = (before - tip) / (before - tip).hypot();
    let side = Vec2::new(-back.y, back.x);
    let mut head = BezPath::new();
    head.move_to(tip - 0.8 * back);
    head.line_to(tip + 1.8 * back + 1.0 * side);
    head.line_to(tip + 1.8 * back - 1.0 * side);
    head.close_path();
    picture.fill_path(&head, tone::INK);
}

/// Rows of signs and what they mean, below the sheet.
struct Legend<'a> {
    picture: &'a mut Picture,
    next: Point,
}

impl Legend<'_> {
    /// Writes a row; returns where its sign stands.
    fn row(&mut self, words: &str) -> Point {
        let start = self.next;
        let beside = start + Vec2::new(11.0, 0.0);
        let used = self.picture.paragraph(beside, WORDS, words, tone::INK, MARGIN);
        self.next.y -= used + 0.6;
        start
    }

    /// A row with a line as its sign.
    fn line(&mut self, words: &str, pen: Pen) {
        let start = self.row(words);
        let end = start + Vec2::new(8.0, 0.0);
        self.picture.straight(start, end, pen);
    }

    /// A row with an area as its sign.
    fn area(&mut self, words: &str, colour: &str) {
        let start = self.row(words);
        let middle = start + Vec2::new(4.0, 0.0);
        let swatch = Curve::rounded_rectangle(middle, 8.0, WORDS, 0.3);
        self.picture.fill(&Shape::from(swatch), colour);
    }
}

/// The steps, numbered in running order, and the other lines; returns where the words end.
fn legend(picture: &mut Picture, dial: &Dial, sheet: &Sheet, setup: &Setup, colours: &StepColours) -> f64 {
    let next = Point::new(picture.area().x0 + MARGIN, -MARGIN / 2.0);
    let mut legend = Legend { picture, next };
    for (i, step) in setup.steps.iter().enumerate() {
        let words = format!("{}. {}", i + 1, step_words(step, dial.show));
        let colour = colour(step.kind, colours);
        if step.depth().is_some() {
            legend.area(&words, colour);
        } else {
            legend.line(&words, pen(colour, 0.4, line_of(step.kind)));
        }
    }
    for part in &setup.turned {
        let how = turned_how(&part.axis);
        let words = format!("the {} was turned over {how} about this axis; its face is down", part.name);
        legend.line(&words, pen(tone::INK, 0.3, "4 1 1 1"));
    }
    if setup.is_turned() {
        let words = "cut in the setup before; nothing is cut there now, and the other holes are empty";
        legend.line(words, pen(tone::QUIET, 0.3, dashes::HIDDEN));
    }
    let (width, height) = (show(sheet.width, dial.show), show(sheet.height, dial.show));
    let words = format!("edge of the file's page, {width} x {height}: at the same place in every setup of this sheet");
    legend.line(&words, pen(tone::QUIET, 0.3, EDGE));
    legend.next.y
}

/// A line to hold a rule against, in case the picture is printed; returns where the picture ends.
fn check_line(picture: &mut Picture, dial: &Dial, down: f64) -> f64 {
    let y = down - WORDS;
    let left = picture.area().x0 + MARGIN;
    let (a, b) = (Point::new(left, y), Point::new(left + CHECK, y));
    let ink = pen(tone::INK, 0.3, dashes::NONE);
    picture.straight(a, b, ink);
    for end in [a, b] {
        let tick = Vec2::new(0.0, 1.0);
        picture.straight(end - tick, end + tick, ink);
    }
    let words = format!("{} when printed at full size", show(CHECK, dial.show));
    picture.text(b + Vec2::new(3.0, 0.0), WORDS, &words, tone::INK);
    y - MARGIN
}
