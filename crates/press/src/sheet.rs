//! One sheet for one setup, as the machine takes it.

use crate::svg::{Frame, escaped, number};
use dial::job::{Setup, Sheet, Step, StepKind, Work};
use process::StepColours;
use std::fmt::Write;

/// Widths of cut lines, in mm: steps are told apart by line as well as by colour. Not by dashes, which a machine might
/// cut as dashes.
const INSIDE: f64 = 0.1;
const OUTSIDE: f64 = 0.2;

/// The SVG of one setup of a sheet: true mm; one group for the setup, in it one for each step in running order; cut lines as
/// strokes, engraving and pockets as fills; lines and arcs as they are; no text elements, transforms, clip paths or styles.
pub fn sheet(dial: &str, sheet: &Sheet, setup: &Setup, colours: &StepColours) -> String {
    let (w, h) = (number(sheet.width), number(sheet.height));
    let frame = Frame::of_height(sheet.height);
    let side = if setup.is_turned() { "turned-over" } else { "face-up" };
    let mut out = format!(
        "<svg xmlns=\"http://www.w3.org/2000/svg\" width=\"{w}mm\" height=\"{h}mm\" viewBox=\"0 0 {w} {h}\">\n<title>{}: setup {}, {}, on {}</title>\n<desc>Cut lines are strokes, engraving and pockets are fills. The colours are this house's own convention: engrave {}, pocket {}, cut inside {} (thin), cut outside {} (thicker). Run the groups in order.</desc>\n<g id=\"setup-{}-{side}\">\n",
        escaped(dial),
        setup.number,
        side.replace('-', " "),
        escaped(&sheet.stock.name),
        colours.engrave,
        colours.pocket,
        colours.cut_inside,
        colours.cut_outside,
        setup.number
    );
    for (i, step) in setup.steps.iter().enumerate() {
        group(&mut out, i + 1, step, frame, colours);
    }
    out + "</g>\n</svg>\n"
}

/// Name of a step's group.
pub(crate) fn step_id(index: usize, step: &Step) -> String {
    let depth = step.depth().map(|depth| format!("-{}mm", number((depth * 100.0).round() / 100.0))).unwrap_or_default();
    format!("step-{index}-{}{depth}", step.kind.words().replace(' ', "-"))
}

fn group(out: &mut String, index: usize, step: &Step, frame: Frame, colours: &StepColours) {
    let style = match step.kind {
        StepKind::Engrave => format!("fill=\"{}\" fill-rule=\"nonzero\" stroke=\"none\"", colours.engrave),
        StepKind::Pocket => format!("fill=\"{}\" fill-rule=\"nonzero\" stroke=\"none\"", colours.pocket),
        StepKind::CutInside => format!("fill=\"none\" stroke=\"{}\" stroke-width=\"{INSIDE}\"", colours.cut_inside),
        StepKind::CutOutside => format!("fill=\"none\" stroke=\"{}\" stroke-width=\"{OUTSIDE}\"", colours.cut_outside),
    };
    let _ = writeln!(out, "<g id=\"{}\" {style}>", step_id(index, step));
    for work in &step.work {
        let data = match work {
            Work::Area { shape, .. } => frame.shape(shape),
            Work::Path { path, .. } => frame.elliptic(path),
        };
        let _ = writeln!(out, "<path d=\"{data}\"/>");
    }
    out.push_str("</g>\n");
}
