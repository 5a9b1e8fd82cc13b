//! The sheet as it lies in the machine for one setup: parts, holes, the axis, and a line to check the scale.

use crate::svg::{Picture, tone};
use dial::job::{Setup, Sheet, Work};
use outline::{Point, Shape};
use process::StepColours;

const MARGIN: f64 = 10.0;
/// Length of the check line.
const CHECK: f64 = 50.0;

/// The picture that goes with a ticket.
pub fn ticket_picture(dial: &str, sheet: &Sheet, setup: &Setup, colours: &StepColours) -> String {
    let width = sheet.width.max(CHECK);
    let title = format!("{dial}: setup {}", setup.number);
    let mut picture = Picture::new(
        &title,
        Point::new(-MARGIN, -MARGIN - 8.0),
        Point::new(width + MARGIN, sheet.height + MARGIN),
    );
    let corners = [
        (0.0, 0.0),
        (sheet.width, 0.0),
        (sheet.width, sheet.height),
        (0.0, sheet.height),
    ];
    for (i, (x, y)) in corners.iter().enumerate() {
        let (u, v) = corners[(i + 1) % 4];
        picture.straight(
            Point::new(*x, *y),
            Point::new(u, v),
            tone::QUIET,
            0.2,
            "3 2",
        );
    }
    for part in &sheet.parts {
        let turned = setup.turned.iter().any(|one| one.name == part.name);
        // In the second setup the other parts have been taken out: their holes are empty.
        let colour = if setup.is_turned() && !turned {
            tone::PAPER
        } else {
            tone::COVER
        };
        picture.fill(&part.outline, colour);
        picture.line_round(
            &part.outline,
            tone::QUIET,
            0.2,
            if setup.is_turned() { "1 1" } else { "" },
        );
    }
    for step in &setup.steps {
        for work in &step.work {
            match work {
                Work::Area { shape, .. } => {
                    let colour = if step.kind == dial::job::StepKind::Engrave {
                        &colours.engrave
                    } else {
                        &colours.pocket
                    };
                    picture.fill(shape, colour);
                }
                Work::Path { path, .. } => {
                    let inside = step.kind == dial::job::StepKind::CutInside;
                    let (colour, dashes) = if inside {
                        (&colours.cut_inside, "1.2 0.6")
                    } else {
                        (&colours.cut_outside, "")
                    };
                    picture.path(&path.to_bez_path(0.01), colour, 0.3, dashes);
                }
            }
        }
    }
    for part in &setup.turned {
        axis(&mut picture, part.axis, &part.hole);
    }
    let low = -MARGIN - 3.0;
    let (a, b) = (Point::new(0.0, low), Point::new(CHECK, low));
    picture.straight(a, b, tone::INK, 0.3, "");
    for end in [a, b] {
        picture.straight(
            Point::new(end.x, low - 1.0),
            Point::new(end.x, low + 1.0),
            tone::INK,
            0.3,
            "",
        );
    }
    picture.text(Point::new(CHECK + 2.0, low), 2.4, "50 mm", tone::INK);
    picture.finish()
}

fn axis(picture: &mut Picture, axis: outline::Axis, hole: &Shape) {
    let b = hole.bounds().inflate(5.0, 5.0);
    let (from, to) = if axis.direction.y.abs() > axis.direction.x.abs() {
        (
            Point::new(axis.point.x, b.y0),
            Point::new(axis.point.x, b.y1),
        )
    } else {
        (
            Point::new(b.x0, axis.point.y),
            Point::new(b.x1, axis.point.y),
        )
    };
    picture.straight(from, to, tone::INK, 0.3, "6 1.5 1 1.5");
}
