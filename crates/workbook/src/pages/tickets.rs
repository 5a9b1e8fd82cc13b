//! One ticket for each setup.

use super::words::{part, parts};
use crate::Make;
use crate::book::Book;
use dial::job::{Setup, Sheet, StepKind};
use measure::show;
use press::{sheet_drawing, step_sign, ticket_words};
use process::{Finish, Grain, Side};
use serde_json::{Value, json};

pub(super) fn data(make: &Make, book: &mut Book) -> Value {
    let mut all = Vec::new();
    for sheet in &make.job.sheets {
        for setup in &sheet.setups {
            all.push(ticket(make, book, sheet, setup));
        }
    }
    json!({ "setups": all })
}

fn ticket(make: &Make, book: &mut Book, sheet: &Sheet, setup: &Setup) -> Value {
    let dial = &make.looked.laid.dial;
    let colours = &make.workshop.machine.colours;
    let mm = |length: f64| show(length, dial.show);
    let mut words = parts(ticket_words(dial, sheet, setup, make.workshop));
    let facts = if words.is_empty() { Value::Null } else { part(&words.remove(0)) };
    let named = |heading: &str| words.iter().find(|one| one.heading == heading).map(part);
    let first = words.iter().find(|one| one.heading == "Load" || one.heading.starts_with("STOP")).map(part);
    let signs: Vec<Value> = setup
        .steps
        .iter()
        .map(|step| {
            let (colour, line) = step_sign(step, colours);
            json!({ "colour": colour, "line": line })
        })
        .collect();
    let mut readings = vec![
        json!([
            "thickness of the stock",
            format!(
                "{} ({} to {})",
                mm(sheet.stock.thickness()),
                mm(sheet.stock.thinnest()),
                mm(sheet.stock.thickest())
            )
        ]),
        json!(["the file\u{2019}s page as it comes in", format!("{} \u{d7} {}", mm(sheet.width), mm(sheet.height))]),
        json!(["way the grain runs on the sheet", grain(sheet)]),
    ];
    let mut depths: Vec<f64> = Vec::new();
    for step in setup.steps.iter().filter(|step| step.kind == StepKind::Pocket) {
        depths.extend(step.depth());
    }
    depths.dedup();
    let within = dial.wheels.first().map(|wheel| wheel.seat.depth_within);
    for depth in depths {
        let within = within.map_or(String::new(), |within| format!(", within {}", mm(within)));
        readings.push(json!(["depth of a pocket", format!("{}{within}", mm(depth))]));
    }
    let later = sheet.setups.iter().any(|one| one.number > setup.number);
    json!({
        "number": setup.number,
        "side": if setup.is_turned() { "turned over" } else { "face up" },
        "turned": setup.is_turned(),
        "facts": facts,
        "drawing": book.drawing(&sheet_drawing(dial, sheet, setup, colours)),
        "first": first,
        "steps": named("Steps, in this order"),
        "signs": signs,
        "then": named("Then"),
        "care": named("Take care"),
        "readings": readings,
        "broken": broken(setup, later),
        "clean": clean(sheet, setup),
        "stop": later,
    })
}

/// What to do when the run ends before its time.
fn broken(setup: &Setup, later: bool) -> Vec<&'static str> {
    let mut all = vec![
        "Fire or smoke that grows: stop, then the machine\u{2019}s own drill. Nothing below matters before that.",
        "Do not move sheet, bed or origin. Note the step and the place where it stopped.",
        "A step that engraves or pockets is not simply begun anew: what has been burnt would come out deeper. Run only what is missing, or throw the part away.",
        "A cut may be run again along the same line, as long as the part has not dropped or shifted.",
    ];
    if setup.is_turned() {
        all.push("A part that lies turned over and has shifted is pressed to the same corner of its hole again. Once it has been lifted out, measure its pockets before anything else.");
    } else if later {
        all.push("If the sheet has moved before the parts were turned over, their holes no longer tell where they lie: finish all cuts of this setup first, then place the file of the next setup anew by the corner of its page.");
    }
    all
}

fn grain(sheet: &Sheet) -> &'static str {
    match sheet.stock.grain() {
        Grain::AlongTheSheet => "from left to right as the picture lies",
        Grain::None => "it has none",
    }
}

/// Cleaning up, by the finish of the side that lies up and its material (common practice).
fn clean(sheet: &Sheet, setup: &Setup) -> Vec<&'static str> {
    let side = if setup.is_turned() { Side::Back } else { Side::Face };
    let layer = sheet.stock.outermost(side);
    let named = layer.map(|layer| layer.named.to_lowercase()).unwrap_or_default();
    let face = if named.contains("leather") {
        "Wipe soot off with a damp cloth and mild soap, no solvent: try it on waste first."
    } else if named.contains("acrylic") {
        "Peel off the film. Soap and water; never alcohol or window cleaner, which craze the cut edge."
    } else if ["felt", "cork", "paper", "cardboard"].iter().any(|word| named.contains(word)) {
        "Brush it dry, or blow it clean outdoors: water and cloths leave marks."
    } else if matches!(sheet.stock.finish(side), Finish::ClearCoated | Finish::Smooth) {
        "Peel off the mask, if it has one. Soot wipes off with a damp cloth; keep water out of marks and pockets."
    } else {
        "Peel off the mask. Brush marks and edges dry, then a cloth that is barely damp. Oil or wax only after the magnets are glued: glue does not hold on either."
    };
    vec![face, "Brush every pocket out to bare material: glue does not hold on soot."]
}
