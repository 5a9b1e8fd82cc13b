//! The page that lies beside the machine for one setup, in plain text.

use crate::job_files::sheet_name;
use crate::page::{Block, Page};
use crate::sheet::step_id;
use crate::symmetry::is_upright;
use dial::Dial;
use dial::job::{Setup, Sheet, Step, StepKind, Work};
use measure::{Units, show};
use outline::Axis;
use process::{Grain, Side, StepColours, Workshop};

/// The ticket of one setup, as plain text.
pub fn ticket(dial: &Dial, sheet: &Sheet, setup: &Setup, workshop: &Workshop) -> String {
    page(dial, sheet, setup, workshop).finish()
}

/// The words of the ticket of one setup.
pub fn ticket_words(dial: &Dial, sheet: &Sheet, setup: &Setup, workshop: &Workshop) -> Vec<Block> {
    page(dial, sheet, setup, workshop).blocks()
}

fn page(dial: &Dial, sheet: &Sheet, setup: &Setup, workshop: &Workshop) -> Page {
    let mut page = Page::default();
    let mm = |length: f64| show(length, dial.show);
    let side = if setup.is_turned() { "turned over" } else { "face up" };
    page.title(&format!("{}: setup {}, {side}", dial.name, setup.number));
    page.fact("File", &sheet_name(sheet, setup));
    page.fact(
        "Stock",
        &format!(
            "{}, {} thick (may come {} to {})",
            sheet.stock.name,
            mm(sheet.stock.thickness()),
            mm(sheet.stock.thinnest()),
            mm(sheet.stock.thickest())
        ),
    );
    page.fact(
        "Machine",
        &format!(
            "{}, bed {} x {}",
            workshop.machine.name,
            mm(workshop.machine.bed_width),
            mm(workshop.machine.bed_height)
        ),
    );
    let kerf = &sheet.stock.kerf;
    let width = if kerf.x == kerf.y { mm(kerf.x) } else { format!("{} along x, {} along y", mm(kerf.x), mm(kerf.y)) };
    page.fact("Kerf", &format!("{width}, already taken into account on the sheet: do not compensate again"));
    page.blank();
    if setup.is_turned() {
        turned(&mut page, dial, setup)
    } else {
        face_up(&mut page, sheet, &mm)
    }
    page.heading("Steps, in this order");
    for (i, step) in setup.steps.iter().enumerate() {
        let drawn = drawn_as(step.kind, &workshop.machine.colours);
        page.numbered(i + 1, &step_words(step, dial.show));
        page.detail(&format!("group {}: {drawn}", step_id(i + 1, step)));
    }
    page.blank();
    after(&mut page, sheet, setup);
    cautions(&mut page, setup);
    page
}

fn face_up(page: &mut Page, sheet: &Sheet, mm: &dyn Fn(f64) -> String) {
    page.heading("Load");
    page.text(&format!(
        "A sheet or offcut of at least {} x {}, face up, flat on the bed, held so that it cannot shift. Measure its thickness: a pocket is as deep as the beam makes it, but the floor under it is what is left.",
        mm(sheet.width), mm(sheet.height)
    ));
    let parts: Vec<&str> = sheet.parts.iter().map(|part| part.name.as_str()).collect();
    page.text(&format!("On it: {}.", parts.join(", ")));
    if sheet.stock.grain() == Grain::AlongTheSheet {
        page.text("The grain runs from left to right as the picture lies, on every dial of a set.");
    }
    let noted = match sheet.stock.laser.trim_end_matches('.') {
        "" => String::new(),
        laser => format!(" Noted of this stock: {laser}."),
    };
    page.text(&format!("Focus on the face. It is {}.{noted}", sheet.stock.finish(Side::Face).words()));
    page.text(&format!(
        "The file's page is {} x {}: if it comes in at another size, stop and set the import to true millimetres. Note where the page's corner lies on the bed.",
        mm(sheet.width), mm(sheet.height)
    ));
    page.blank();
}

fn turned(page: &mut Page, dial: &Dial, setup: &Setup) {
    let names: Vec<&str> = setup.turned.iter().map(|part| part.name.as_str()).collect();
    page.heading("STOP before this setup");
    page.text("Wait until the machine stands still and the fume is gone. Do not move the sheet, the bed or the origin since the last setup: the hole is the fixture now.");
    page.text(&format!(
        "Lift out the {}, turn it over {} about the axis drawn in the picture ({}), and lay it back into its own hole, face down. The other parts stay out. Nothing stands above the sheet: the head has to pass.",
        names.join(" and the "),
        turned_how(&dial.turn_axis),
        if is_upright(&dial.turn_axis) { "upright, through its middle" } else { "level, through its middle" }
    ));
    page.text("It lies with the play of the kerf all round: press it to one corner, and to the same corner each time.");
    page.text("Place this file by its page, which is as large as that of the setup before, and by the same corner. Only the pockets are drawn on it: placed by what is drawn, they would go astray.");
    page.blank();
}

/// How a part is turned over about an axis, in words.
pub(crate) fn turned_how(axis: &Axis) -> &'static str {
    if is_upright(axis) { "sideways, like the page of a book," } else { "endways, like a notepad," }
}

/// What a step does, to which parts, and how often.
pub(crate) fn step_words(step: &Step, units: Units) -> String {
    let mut parts: Vec<(&str, usize)> = Vec::new();
    for work in &step.work {
        let (Work::Area { part, .. } | Work::Path { part, .. }) = work;
        match parts.iter_mut().find(|one| one.0 == part) {
            Some(one) => one.1 += 1,
            None => parts.push((part, 1)),
        }
    }
    let of = parts.iter().map(|(part, n)| format!("{part} ({n})")).collect::<Vec<_>>().join(", ");
    let depth = step.depth().map(|depth| show(depth, units));
    match (step.kind, depth) {
        (StepKind::Engrave, Some(depth)) => format!("Engrave {depth} deep: {of}"),
        (StepKind::Pocket, Some(depth)) => format!("Pocket {depth} deep: {of}"),
        (StepKind::CutInside, _) => format!("Cut inside, right through: {of}"),
        _ => format!("Cut outside, right through: {of}"),
    }
}

/// How a step is drawn on the sheet.
fn drawn_as(kind: StepKind, colours: &StepColours) -> String {
    match kind {
        StepKind::Engrave => format!("filled, {}", colours.engrave),
        StepKind::Pocket => format!("filled, {}", colours.pocket),
        StepKind::CutInside => format!("thin line, {}", colours.cut_inside),
        StepKind::CutOutside => format!("thicker line, {}", colours.cut_outside),
    }
}

fn after(page: &mut Page, sheet: &Sheet, setup: &Setup) {
    page.heading("Then");
    if setup.steps.iter().any(|step| step.kind == StepKind::Pocket) {
        page.text("With the machine at rest and before a part is lifted: measure each pocket with a depth gauge, or try a magnet in it. It should drop in and lie just under the surface. Too shallow: run the pocket's step once more at low power while the part still lies where it was.");
    }
    if sheet.setups.iter().any(|one| one.number > setup.number) {
        page.text(
            "STOP. Leave the sheet where it is. The next setup turns a part over in its own hole; its ticket says how.",
        );
    }
    page.blank();
}

fn cautions(page: &mut Page, setup: &Setup) {
    page.heading("Take care");
    for words in [
        "The machine's manual, local rules and the appointed laser safety officer come first; this page does not replace them.",
        "Beam: never open the housing or bypass an interlock while it runs. Open machines need an enclosure; goggles alone are not enough.",
        "Fire: stay with the machine and watch it the whole time. Extinguisher at hand, bed clear of scraps. If it burns, stop the job and the exhaust.",
        "Fume: extraction on, outdoors or through a filter made for it. Never cut PVC, or a material whose data sheet you have not read.",
    ] {
        page.bullet(words);
    }
    if setup.steps.iter().any(|step| step.kind == StepKind::Pocket) {
        page.bullet("Magnets: two or more that are swallowed attract each other through the gut and can kill: keep them from children, count them, seek help at once. Keep them away from pacemakers and other implants. They snap together and chip: wear glasses.");
        page.bullet("Glue: superglue fumes and bonds skin; it heats on cotton and wool. Air the room. Glue magnets only when all beam work on the part is done and it is clean and cool.");
    }
}
