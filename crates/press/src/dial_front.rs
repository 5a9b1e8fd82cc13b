//! The dial seen from the front, plain or with the places of its findings; and each wheel's face alone.

use crate::picture::{Picture, dashes, pen, tone};
use dial::Dial;
use dial::assembled::{Sense, Wheel};
use dial::findings::{Finding, Severity};
use outline::{Curve, Point, Rect, Shape, Vec2};

const MARGIN: f64 = 8.0;
/// Height of the words below a picture.
const WORDS: f64 = 2.6;
/// Radius of a finding's ring.
const RING: f64 = 2.2;

/// The dial from the front, every wheel at its first stop.
pub fn dial_front(dial: &Dial) -> String {
    let mut picture = Picture::new(&format!("{} from the front", dial.name), around(dial));
    draw(&mut picture, dial, false);
    picture.finish()
}

/// The dial from the front with a numbered ring at the place of each finding to mend or refuse, and below what it says. The
/// wheels' rims and marks under the cover show through pale, so that a place under the cover can be understood. `None` when no finding has a place.
pub fn findings_picture(dial: &Dial, findings: &[Finding]) -> Option<String> {
    let placed: Vec<(&Finding, Point)> = findings
        .iter()
        .filter(|finding| finding.severity != Severity::Note)
        .filter_map(|finding| finding.place.map(|at| (finding, at)))
        .collect();
    if placed.is_empty() {
        return None;
    }
    let title = format!("{}: where the findings are", dial.name);
    let mut picture = Picture::new(&title, around(dial));
    picture.widen_to(picture.area().x0 + 110.0);
    draw(&mut picture, dial, true);
    let mut down = picture.area().y0;
    for (i, (finding, at)) in placed.iter().enumerate() {
        ring(&mut picture, *at, i + 1);
        let start = Point::new(picture.area().x0 + MARGIN, down);
        picture.text(start, WORDS, &(i + 1).to_string(), tone::FAIL);
        let words = format!("{}: {}", finding.severity.word(), finding.what);
        let beside = start + Vec2::new(6.0, 0.0);
        down -= picture.paragraph(beside, WORDS, &words, tone::INK, MARGIN) + 1.0;
    }
    picture.end_at(down - MARGIN / 2.0);
    Some(picture.finish())
}

/// A wheel's face alone, as it lies at its first stop: marks, pocket, and which way it turns to count up.
pub fn wheel_face(wheel: &Wheel) -> String {
    let rim = Shape::from(wheel.rim.clone());
    let area = rim.bounds().inflate(MARGIN, MARGIN);
    let mut picture = Picture::new(&format!("wheel {}", wheel.name), area);
    picture.fill(&rim, tone::WHEEL);
    picture.outline(&rim, pen(tone::INK, 0.2, dashes::NONE));
    let pocket = Shape::from(Curve::circle(wheel.pocket.centre, wheel.pocket.radius));
    picture.fill(&pocket, tone::PALE);
    picture.outline(&pocket, pen(tone::INK, 0.15, dashes::NONE));
    for mark in &wheel.marks {
        picture.fill(&mark.shape, tone::BURNT);
    }
    picture.outline(&Shape::from(wheel.window.edge.clone()), pen(tone::QUIET, 0.2, dashes::HIDDEN));
    let sense = match wheel.counts_up {
        Sense::Clockwise => "clockwise",
        Sense::Anticlockwise => "anticlockwise",
    };
    let words = format!("{}: {} stops, turns {sense} to count up; dashed: its window", wheel.name, wheel.marks.len());
    let at = Point::new(area.x0 + MARGIN, area.y0);
    let used = picture.paragraph(at, WORDS, &words, tone::INK, MARGIN);
    picture.end_at(area.y0 - used - MARGIN / 2.0 + WORDS);
    picture.finish()
}

/// Cover and wheels with a margin.
fn around(dial: &Dial) -> Rect {
    let wheels = dial.wheels.iter().map(|wheel| wheel.rim.bounds());
    let all = wheels.fold(dial.cover.plate.bounds(), |all, one| all.union(one));
    all.inflate(MARGIN, MARGIN)
}

/// The wheels, and over them the cover with its windows open; `through` shows pale what lies under it.
fn draw(picture: &mut Picture, dial: &Dial, through: bool) {
    for wheel in &dial.wheels {
        picture.fill(&Shape::from(wheel.rim.clone()), tone::WHEEL);
        for mark in &wheel.marks {
            picture.fill(&mark.shape, tone::BURNT);
        }
        picture.outline(&Shape::from(wheel.rim.clone()), pen(tone::QUIET, 0.15, dashes::NONE));
    }
    let windows = dial.wheels.iter().map(|wheel| Shape::from(wheel.window.edge.clone()));
    let face = windows.fold(dial.cover.plate.clone(), |face, window| face.minus(&window));
    picture.fill(&face, tone::COVER);
    for wheel in dial.wheels.iter().filter(|_| through) {
        let window = Shape::from(wheel.window.edge.clone());
        for mark in &wheel.marks {
            let hidden = if mark.shape.bounds().overlaps(window.bounds()) {
                mark.shape.minus(&window)
            } else {
                mark.shape.clone()
            };
            picture.fill(&hidden, tone::THROUGH);
        }
        let rim = Shape::from(wheel.rim.clone());
        picture.outline(&rim, pen(tone::QUIET, 0.15, dashes::HIDDEN));
    }
    for art in &dial.cover.art {
        picture.fill(&art.shape, tone::BURNT);
    }
    picture.outline(&face, pen(tone::INK, 0.2, dashes::NONE));
}

fn ring(picture: &mut Picture, at: Point, number: usize) {
    let ring = Shape::from(Curve::circle(at, RING));
    picture.outline(&ring, pen(tone::PAPER, 1.0, dashes::NONE));
    picture.outline(&ring, pen(tone::FAIL, 0.4, dashes::NONE));
    let beside = at + Vec2::new(RING + 1.0, RING);
    picture.text(beside, WORDS, &number.to_string(), tone::FAIL);
}
