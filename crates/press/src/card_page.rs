//! The printed reference card, and the sample that is engraved to lie on it.

use crate::svg::{Frame, escaped, number};
use card::{CardPlan, Drawn};
use dial::Dial;
use lettering::{Lettering, TwinMark, Weight};
use outline::{Curve, KerfSide, Motion, Point, Shape, Vec2, compensated};
use process::Stock;
use std::fmt::Write;

/// Colours that tell the power steps of a sample apart: Okabe & Ito, Color Universal Design (2008); the cut is black.
const STEPS: [&str; 8] = ["#0072b2", "#e69f00", "#009e73", "#d55e00", "#cc79a7", "#56b4e9", "#b8a800", "#7a7064"];
/// Free border round the sample's sheet.
const BORDER: f64 = 5.0;
/// Width of the cut line.
const CUT: f64 = 0.2;

/// The page to be printed at full size: an SVG in true mm, as large as the paper. Letters are outlines.
pub fn card_page(plan: &CardPlan) -> String {
    let paper = plan.paper.size();
    let (w, h) = (number(paper.width), number(paper.height));
    // From the card's corner to the page's.
    let frame = Frame { corner: Point::new(-plan.on_page.x, paper.height - plan.on_page.y) };
    let mut out = format!(
        "<svg xmlns=\"http://www.w3.org/2000/svg\" width=\"{w}mm\" height=\"{h}mm\" viewBox=\"0 0 {w} {h}\">\n<title>reference card, print at full size</title>\n"
    );
    for thing in plan.drawn() {
        let drawn = match &thing {
            Drawn::Solid { rings } => {
                let data: Vec<String> = rings.iter().map(|ring| frame.bezier(&ring_of(ring))).collect();
                format!("<path fill-rule=\"evenodd\" d=\"{}\"/>", data.join(" "))
            }
            Drawn::Outline { ring, width } => line(&frame.bezier(&ring_of(ring)), *width),
            Drawn::Line { from, to, width } => {
                let mut path = outline::BezPath::new();
                path.move_to(*from);
                path.line_to(*to);
                line(&frame.bezier(&path), *width)
            }
            Drawn::Label { text, at, height, width } => {
                format!("<path d=\"{}\"/>", frame.shape(&label(text, *at, *height, *width)))
            }
        };
        out += &drawn;
        out.push('\n');
    }
    out + "</svg>\n"
}

fn line(data: &str, width: f64) -> String {
    format!("<path fill=\"none\" stroke=\"#000000\" stroke-width=\"{}\" d=\"{data}\"/>", number(width))
}

fn ring_of(ring: &[Point]) -> outline::BezPath {
    let mut path = outline::BezPath::new();
    for (k, p) in ring.iter().enumerate() {
        if k == 0 { path.move_to(*p) } else { path.line_to(*p) }
    }
    path.close_path();
    path
}

/// Words with the middle of their baseline at a place, set smaller where they would be wider than their room.
fn label(text: &str, at: Point, height: f64, width: f64) -> Shape {
    let Ok(shape) = Lettering::shipped(Weight::Regular).inscription(text, height, TwinMark::None) else {
        return Shape::empty();
    };
    let shape = shape.scaled(Point::ZERO, (width / shape.bounds().width()).min(1.0));
    let lift = Vec2::new(0.0, height / 2.0);
    shape.moved(&Motion::shift(at.to_vec2() + lift))
}

/// The sample's cut file for a stock: one group for each power step, from the weakest to the strongest, with a patch cleared all over and a
/// mark of this very dial as high as it is on the wheel; then the cut.
///
/// # Errors
/// In words: an outline that the kerf eats up.
pub fn card_sample(plan: &CardPlan, dial: &Dial, stock: &Stock) -> Result<String, String> {
    let outline = Curve::polygon(&plan.sample.outline, 0.0).map_err(|error| error.to_string())?;
    let bounds = outline.bounds();
    let lay = Motion::shift(Point::new(BORDER, BORDER) - Point::new(bounds.x0, bounds.y0));
    let (width, height) = (bounds.width() + 2.0 * BORDER, bounds.height() + 2.0 * BORDER);
    let frame = Frame::of_height(height);
    let (w, h) = (number(width), number(height));
    let mut out = format!(
        "<svg xmlns=\"http://www.w3.org/2000/svg\" width=\"{w}mm\" height=\"{h}mm\" viewBox=\"0 0 {w} {h}\">\n<title>sample of {} for the reference card</title>\n<desc>Engrave the groups power-1 to power-{} each at its own power, rising from left to right, with the speed and line interval of the dial; then cut. Write the powers down. The colours are this house's own convention: one for each power, black for the cut.</desc>\n",
        escaped(&stock.name),
        plan.sample.steps.len()
    );
    let marks: Vec<_> =
        dial.wheels.iter().flat_map(|wheel| wheel.marks.iter().map(move |mark| (wheel, mark))).collect();
    for (k, step) in plan.sample.steps.iter().enumerate() {
        let _ = writeln!(
            out,
            "<g id=\"power-{}\" fill=\"{}\" fill-rule=\"nonzero\" stroke=\"none\">",
            k + 1,
            STEPS[k % STEPS.len()]
        );
        let patch = step.engraved;
        let area = Shape::from(Curve::rounded_rectangle(patch.center(), patch.width(), patch.height(), 0.0));
        let _ = writeln!(out, "<path d=\"{}\"/>", frame.shape(&area.moved(&lay)));
        // Marks spread over the dial's, so that one sees several of its figures.
        if let Some((wheel, mark)) = marks.get(k * marks.len().max(1) / plan.sample.steps.len()) {
            let stop = wheel.marks.iter().position(|one| std::ptr::eq(one, *mark)).unwrap_or(0);
            let upright = wheel.upright(stop);
            let size = upright.bounds();
            let fits = (step.mark.width() / size.width()).min(step.mark.height() / size.height()).min(1.0);
            let there = upright.moved(&Motion::shift(-size.center().to_vec2())).scaled(Point::ZERO, fits);
            let there = there.moved(&Motion::shift(step.mark.center().to_vec2())).moved(&lay);
            let _ = writeln!(out, "<path d=\"{}\"/>", frame.shape(&there));
        }
        out += "</g>\n";
    }
    let cut =
        compensated(&Shape::from(outline).moved(&lay), KerfSide::KeepInside, stock.kerf.x / 2.0, stock.kerf.y / 2.0)
            .map_err(|error| error.to_string())?;
    let _ = writeln!(out, "<g id=\"cut-outside\" fill=\"none\" stroke=\"#000000\" stroke-width=\"{CUT}\">");
    for path in &cut {
        let _ = writeln!(out, "<path d=\"{}\"/>", frame.elliptic(path));
    }
    Ok(out + "</g>\n</svg>\n")
}
