//! The turn test as a picture: every stop of every wheel as it stands in its window.

use crate::picture::{Picture, dashes, pen, tone};
use dial::Dial;
use dial::assembled::Wheel;
use dial::findings::Quantity;
use dial::turning::{Fault, Other, Stop, TurnTest, WheelTurns};
use measure::show;
use outline::{Curve, Motion, Point, Rect, Shape, Vec2};

/// Room round a window within its cell.
const PAD: f64 = 2.0;
/// Width of the cells, about that of a page; of a dial with many stops twice that, so that the whole stays as broad as it is high.
const WIDTH: f64 = 180.0;
/// Stops from which the strip is set broad.
const MANY: usize = 250;
const MARGIN: f64 = 6.0;
/// Height of a wheel's name, and of the words beside and below it.
const NAME: f64 = 3.0;
const WORDS: f64 = 2.4;

/// The strip of all windows: each cell shows the opening, what is really seen through it, and pale what of the stop's own
/// mark the cover hides. A stop that fails has a frame and a cross.
pub fn strip(dial: &Dial, turns: &TurnTest) -> String {
    let stops: usize = dial.wheels.iter().map(|wheel| wheel.marks.len()).sum();
    let width = if stops < MANY { WIDTH } else { 2.0 * WIDTH };
    let title = format!("{}: every stop in its window", dial.name);
    let cells: Vec<Cells> = dial.wheels.iter().map(|wheel| Cells::of(wheel, width)).collect();
    let width = cells.iter().map(|cells| cells.size.x).fold(width, f64::max);
    let mut picture = Picture::new(&title, Rect::new(0.0, -1.0, width + 2.0 * MARGIN, 0.0));
    let mut top = -MARGIN;
    for ((wheel, test), cells) in dial.wheels.iter().zip(&turns.wheels).zip(&cells) {
        top = heading(&mut picture, dial, test, top);
        for (k, stop) in test.stops.iter().enumerate() {
            cell(&mut picture, wheel, k, stop, cells.middle(k, top), cells.size);
        }
        top -= cells.height() + MARGIN;
    }
    let end = legend(&mut picture, dial, turns, top - WORDS / 2.0);
    picture.end_at(end - MARGIN + WORDS);
    picture.finish()
}

/// The wheel's name, its verdict and what it forgives; returns where its cells begin.
fn heading(picture: &mut Picture, dial: &Dial, test: &WheelTurns, top: f64) -> f64 {
    let at = Point::new(MARGIN, top - NAME / 2.0);
    let width = picture.text(at, NAME, &test.name, tone::INK);
    let failing = test.stops.iter().filter(|stop| !stop.faults.is_empty()).count();
    let all = test.stops.len();
    let (words, colour) = if failing > 0 {
        (format!("{failing} of {all} stops fail: {}", turn_words(test)), tone::FAIL)
    } else {
        let least = |of: fn(&Stop) -> f64| test.stops.iter().map(of).fold(f64::INFINITY, f64::min);
        let angle = Quantity::Angle(least(|stop| stop.slack_angle)).show(dial.show);
        let drift = show(least(|stop| stop.slack_drift), dial.show);
        (format!("all {all} stops pass, and forgive {angle} of turning and {drift} of drift"), tone::QUIET)
    };
    let beside = at + Vec2::new(width + 4.0, 0.0);
    let used = picture.paragraph(beside, WORDS, &words, colour, MARGIN);
    top - NAME.max(used - WORDS) - 2.0
}

/// What fails on a wheel, and at how many stops.
pub fn turn_words(test: &WheelTurns) -> String {
    let mut counts: Vec<(&str, usize)> = Vec::new();
    for fault in test.stops.iter().flat_map(|stop| &stop.faults) {
        let words = fault_words(fault);
        match counts.iter_mut().find(|one| one.0 == words) {
            Some(one) => one.1 += 1,
            None => counts.push((words, 1)),
        }
    }
    let parts: Vec<String> = counts.iter().map(|(words, n)| format!("{words} ({n})")).collect();
    parts.join(", ")
}

fn fault_words(fault: &Fault) -> &'static str {
    match fault {
        Fault::NotWhole => "mark not whole",
        Fault::Tight => "mark nearer to the edge than asked",
        Fault::NotAlone(Other::Mark(_)) => "another mark seen",
        Fault::NotAlone(Other::Rim) => "rim seen",
        Fault::NotAlone(Other::Pocket) => "pocket seen",
        Fault::Close(_) => "something else nearer to the edge than asked",
        Fault::Leans => "mark leans",
        Fault::OutOfOrder => "neighbour out of order",
        Fault::NeighbourHidden => "too little of a neighbour seen",
    }
}

/// What the whole dial forgives and where it forgives least, and what the signs mean; returns where it ends.
fn legend(picture: &mut Picture, dial: &Dial, turns: &TurnTest, top: f64) -> f64 {
    let slack = turns.slack();
    let stop = |(wheel, stop): (usize, usize)| {
        let found = turns.wheels.get(wheel).and_then(|one| one.stops.get(stop).map(|stop| (one, stop)));
        found.map_or(String::new(), |(wheel, stop)| format!(" (\u{201c}{}\u{201d} of {})", stop.words, wheel.name))
    };
    let words = format!(
        "slack of the dial: {} of turning{}, {} of sideways drift{}",
        Quantity::Angle(slack.angle).show(dial.show),
        stop(slack.angle_at),
        show(slack.drift, dial.show),
        stop(slack.drift_at),
    );
    let at = Point::new(MARGIN, top);
    let mut used = picture.paragraph(at, WORDS, &words, tone::INK, MARGIN);
    if !turns.passes() {
        let key = Curve::rounded_rectangle(at + Vec2::new(3.0, -used - 1.0), 5.4, 4.0, 1.0);
        mark_failing(picture, &key);
        let words = "fails; what the cover hides of its mark is drawn pale";
        picture.text(at + Vec2::new(8.0, -used - 1.0), WORDS, words, tone::INK);
        used += 2.0 * WORDS + 1.0;
    }
    top - used
}

/// How the cells of one wheel are set.
struct Cells {
    size: Vec2,
    columns: usize,
    rows: usize,
}

impl Cells {
    fn of(wheel: &Wheel, width: f64) -> Cells {
        let window = wheel.window.edge.bounds().size();
        let size = Vec2::new(window.width + 2.0 * PAD, window.height + 2.0 * PAD);
        let columns = ((width / size.x).floor() as usize).max(1);
        Cells { size, columns, rows: wheel.marks.len().div_ceil(columns) }
    }

    fn middle(&self, k: usize, top: f64) -> Point {
        let (column, row) = (k % self.columns, k / self.columns);
        Point::new(MARGIN + (column as f64 + 0.5) * self.size.x, top - (row as f64 + 0.5) * self.size.y)
    }

    fn height(&self) -> f64 {
        self.rows as f64 * self.size.y
    }
}

fn cell(picture: &mut Picture, wheel: &Wheel, k: usize, stop: &Stop, middle: Point, size: Vec2) {
    let around = wheel.window.edge.bounds();
    let to_cell = Motion::shift(middle - around.center());
    let window = Shape::from(wheel.window.edge.clone());
    let opening = window.moved(&to_cell);
    let card = Curve::rounded_rectangle(middle, size.x - 0.6, size.y - 0.6, 1.0);
    picture.fill(&Shape::from(card.clone()), tone::COVER);
    picture.fill(&opening, tone::WHEEL);
    let turned = Motion::turn(wheel.centre, wheel.turned_to(k));
    let shown = around.inflate(PAD, PAD);
    for (j, mark) in wheel.marks.iter().enumerate() {
        let there = mark.shape.moved(&turned);
        if !shown.overlaps(there.bounds()) {
            continue;
        }
        if j == k && stop.seen >= 1.0 {
            picture.fill(&there.moved(&to_cell), tone::BURNT);
            continue;
        }
        // What is hidden lies under the cover: pale, and only as far as the cell goes.
        if j == k {
            let card = Shape::from(card.moved(&to_cell.inverse()));
            let hidden = there.common(&card).minus(&window);
            picture.fill(&hidden.moved(&to_cell), tone::PALE);
        }
        picture.fill(&there.common(&window).moved(&to_cell), tone::BURNT);
    }
    picture.outline(&opening, pen(tone::INK, 0.15, dashes::NONE));
    if !stop.faults.is_empty() {
        mark_failing(picture, &card);
    }
}

/// A frame, and a cross in its upper right corner: not by colour alone.
fn mark_failing(picture: &mut Picture, frame: &Curve) {
    let inner = frame.bounds().inflate(-0.3, -0.3);
    let edge = Curve::rounded_rectangle(inner.center(), inner.width(), inner.height(), 0.7);
    picture.outline(&Shape::from(edge), pen(tone::FAIL, 0.6, dashes::NONE));
    let middle = Point::new(inner.x1 - 0.9, inner.y1 - 0.9);
    picture.fill(&Shape::from(Curve::circle(middle, 1.3)), tone::FAIL);
    for slope in [1.0, -1.0] {
        let half = Vec2::new(0.6, 0.6 * slope);
        picture.straight(middle - half, middle + half, pen(tone::PAPER, 0.4, dashes::NONE));
    }
}
