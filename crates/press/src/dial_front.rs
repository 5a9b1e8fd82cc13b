//! The dial seen from the front: cover, art, windows, and the rims in their notches; findings as numbered places.

use crate::svg::{Picture, tone};
use dial::Dial;
use dial::findings::{Finding, Severity};
use outline::{Curve, Point, Shape, Vec2};

const MARGIN: f64 = 8.0;

/// The dial from the front, every wheel at its first stop; a numbered ring at the place of each finding to mend or refuse.
pub fn dial_front(dial: &Dial, findings: &[Finding]) -> String {
    let around = dial
        .wheels
        .iter()
        .map(|wheel| wheel.rim.bounds())
        .fold(dial.cover.plate.bounds(), |all, one| all.union(one));
    let wide = around.inflate(MARGIN, MARGIN);
    let mut picture = Picture::new(
        &format!("{} from the front", dial.name),
        Point::new(wide.x0, wide.y0),
        Point::new(wide.x1, wide.y1),
    );
    for wheel in &dial.wheels {
        picture.fill(&Shape::from(wheel.rim.clone()), tone::WHEEL);
        for mark in &wheel.marks {
            picture.fill(&mark.shape, tone::BURNT);
        }
        picture.line_round(&Shape::from(wheel.rim.clone()), tone::QUIET, 0.15, "");
    }
    let windows = dial
        .wheels
        .iter()
        .map(|wheel| Shape::from(wheel.window.edge.clone()));
    let face = windows.fold(dial.cover.plate.clone(), |face, window| face.minus(&window));
    picture.fill(&face, tone::COVER);
    for art in &dial.cover.art {
        picture.fill(&art.shape, tone::BURNT);
    }
    picture.line_round(&face, tone::INK, 0.2, "");
    let placed = findings
        .iter()
        .filter(|finding| finding.severity != Severity::Note);
    for (i, finding) in placed.enumerate() {
        if let Some(at) = finding.place {
            let ring = Shape::from(Curve::circle(at, 2.2));
            picture.line_round(&ring, tone::FAIL, 0.4, "");
            picture.text(
                at + Vec2::new(2.6, 2.2),
                2.2,
                &(i + 1).to_string(),
                tone::FAIL,
            );
        }
    }
    picture.finish()
}
