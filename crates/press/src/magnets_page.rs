//! The page on magnets, in plain text: how each wheel is held, what the shelf offers, which way round each magnet goes, in which order
//! they are glued, and what to take care of.

use crate::page::{Block, Page};
use dial::magnets::{self, Candidate, Choice, Held, Range, Where};
use dial::{Dial, Looked};
use measure::show;
use process::Workshop;

/// How many pairs that do the job are told of.
const BEST: usize = 6;

/// The page on the magnets of a dial, as plain text.
pub fn magnets_page(looked: &Looked, workshop: &Workshop) -> String {
    page_of(looked, workshop).finish()
}

/// The words of the page on the magnets of a dial.
pub fn magnets_words(looked: &Looked, workshop: &Workshop) -> Vec<Block> {
    page_of(looked, workshop).blocks()
}

fn page_of(looked: &Looked, workshop: &Workshop) -> Page {
    let dial = &looked.laid.dial;
    let mut page = Page::default();
    page.title(&format!("{}: magnets", dial.name));
    held(&mut page, looked);
    chooser(&mut page, looked, workshop);
    poles(&mut page, dial);
    order(&mut page, dial);
    checks(&mut page, looked);
    care(&mut page, dial);
    page
}

fn held(page: &mut Page, looked: &Looked) {
    let dial = &looked.laid.dial;
    let mm = |length: f64| if length.is_finite() { show(length, dial.show) } else { "pushed off".into() };
    let lengths = |range: Range| format!("{} ({} to {})", mm(range.likely), mm(range.low), mm(range.high));
    let newtons = |range: Range| format!("{:.2} N ({:.2} to {:.2} N)", range.likely, range.low, range.high);
    let mut groups: Vec<(&Held, Vec<&str>)> = Vec::new();
    for (wheel, held) in dial.wheels.iter().zip(&looked.held) {
        let Some(held) = held else { continue };
        match groups.iter_mut().find(|group| group.0 == held) {
            Some(group) => group.1.push(&wheel.name),
            None => groups.push((held, vec![&wheel.name])),
        }
    }
    for (held, names) in groups {
        page.heading(&format!("{}: {}", names.join(", "), held.likely.verdict.words()));
        let mut item = |name: &str, words: String| page.item(name, &words);
        item("turning", format!("{} at the rim", newtons(held.effort)));
        item("pull", newtons(held.pull));
        item(
            "touches",
            format!(
                "{}, {} to {} from the middle; friction {:.2} to {:.2}",
                held.contact.touch.words(),
                mm(held.contact.inner),
                mm(held.contact.outer),
                held.friction.low,
                held.friction.high
            ),
        );
        item("gap", format!("{} between the magnets", lengths(held.gap)));
        item(
            "one finger",
            format!(
                "pushes it {} off centre while it turns; the windows forgive {}",
                lengths(held.drift),
                mm(held.forgives)
            ),
        );
        item("two fingers", "opposite each other push it nowhere".into());
        item(
            "after a knock",
            format!(
                "friction lets it rest up to {} off; {:.0}\u{b0} of turning ({:.0} to {:.0}\u{b0}) centre it again",
                lengths(held.rest),
                held.centred_by.likely.to_degrees(),
                held.centred_by.low.to_degrees(),
                held.centred_by.high.to_degrees()
            ),
        );
        item(
            "keeps",
            format!(
                "shaken with {:.0} g it begins to slip aside, with {:.0} g it is thrown off; it lifts off with {:.0} g; a fall on its edge from {:.2} m knocks it off its seat ({:.1} g of wheel)",
                held.slips_at, held.likely.thrown_at, held.lifts_at, held.drop, held.build.mass
            ),
        );
        let inwards = held.tips_inwards.map_or("never".to_owned(), |force| format!("from {force:.1} N"));
        item(
            "tips",
            format!(
                "turning presses on the rim with {:.1} N; it tips away from the cover from {:.1} N, towards it {inwards}",
                held.press, held.tips_outwards
            ),
        );
        if let Some(aside) = held.rests_aside {
            item("CAUTION", format!("the pair is unequal and rests {} off its middle", mm(aside)));
        }
        page.blank();
    }
    for one in magnets::neighbours(dial).into_iter().take(1) {
        page.text(&format!(
            "Neighbouring wheels {} apart push each other with {:.2} mN, which is {} aside: {}.",
            mm(one.apart),
            1e3 * one.force,
            if one.shift < 0.01 { "less than a hundredth of a millimetre".into() } else { mm(one.shift) },
            if one.shift > 0.05 { "set them farther apart" } else { "it does not matter" }
        ));
        page.blank();
    }
    page.text("Likely figures, and in brackets what may come out of grade, depth, bow and friction at their limits. Model: rigid discs magnetised along their axes (Robertson et al. 2011; Vokoun et al. 2009), pivot friction.");
    page.blank();
}

fn chooser(page: &mut Page, looked: &Looked, workshop: &Workshop) {
    let all = magnets::choose(looked, workshop);
    let Some(first) = magnets::hardest(&looked.held) else { return };
    let dial = &looked.laid.dial;
    let mm = |length: f64| show(length, dial.show);
    let name = |one: &Candidate| {
        if one.cover.name == one.wheel.name {
            one.cover.name.clone()
        } else {
            format!("{} with {}", one.cover.name, one.wheel.name)
        }
    };
    page.heading(&format!("From the shelf, in this seat, for {}", dial.wheels[first].name));
    let (does, fails): (Vec<_>, Vec<_>) = all.iter().partition(|one| one.choice == Choice::Does);
    if does.is_empty() {
        page.text("No pair on the shelf does the job in this seat.");
    }
    for one in does.iter().take(BEST) {
        let price = one.price.map_or(String::new(), |price| format!("; {price:.2} a pair"));
        let depth = if one.depths.0 == one.depths.1 {
            mm(one.depths.0)
        } else {
            format!("{} in the cover, {} in the wheel", mm(one.depths.0), mm(one.depths.1))
        };
        page.bullet(&format!(
            "{}: {:.2} N at the rim, pull {:.1} N, drift {}; pockets {depth}, both together up to {} shallower or {} deeper{price}",
            name(one),
            one.likely.effort,
            one.likely.pull,
            one.likely.drift.map_or("off".into(), mm),
            mm(one.band.0),
            mm(one.band.1),
        ));
    }
    if does.len() > BEST {
        page.text(&format!("and {} more that do.", does.len() - BEST));
    }
    let equal = fails.iter().filter(|one| one.cover.name == one.wheel.name);
    let mut reasons: Vec<(&str, Vec<String>)> = Vec::new();
    for one in equal {
        let Choice::Fails(why) = &one.choice else { continue };
        match reasons.iter_mut().find(|reason| reason.0 == why) {
            Some(reason) => reason.1.push(name(one)),
            None => reasons.push((why, vec![name(one)])),
        }
    }
    if !reasons.is_empty() {
        page.text("Not these:");
    }
    for (why, names) in reasons {
        page.bullet(&format!("{}: {why}", names.join(", ")));
    }
    let off: Vec<String> = fails
        .iter()
        .filter(|one| {
            one.cover.name != one.wheel.name && matches!(&one.choice, Choice::Fails(why) if why.contains("smaller"))
        })
        .map(|one| name(one))
        .collect();
    if !off.is_empty() {
        page.text(&format!(
            "Unequal pairs that do not centre, the smaller being drawn to the rim of the larger: {}.",
            off.join("; ")
        ));
    }
    enclosed(page, looked, workshop, first);
    page.blank();
}

/// What is left of the hold when each magnet lies under a glued cap.
fn enclosed(page: &mut Page, looked: &Looked, workshop: &Workshop, first: usize) {
    let dial = &looked.laid.dial;
    let (wheel, Some(held)) = (&dial.wheels[first], looked.held[first].as_ref()) else { return };
    if wheel.seat.cap.is_some() {
        return;
    }
    let thin = workshop.stocks.iter().filter(|stock| stock.thickness() <= 1.0);
    let Some(cap) = thin.max_by(|a, b| a.thickness().total_cmp(&b.thickness())) else { return };
    let under = cap.thickness() + wheel.seat.glue;
    let Some(left) = held.build.seated((under, under)).likely(&workshop.feel, held.forgives) else { return };
    page.text(&format!(
        "Enclosed under caps of {} (`magnet.seat = \"enclosed\"`) the same pair would pull with {:.1} N and turn with {:.2} N: {}.",
        cap.name, left.pull, left.effort, left.verdict.words()
    ));
}

fn poles(page: &mut Page, dial: &Dial) {
    page.heading("Which way round (see the picture of the pole plan)");
    let plan = magnets::plan(dial);
    for part in [Where::CoverBack, Where::WheelFace] {
        let Some(one) = plan.iter().find(|one| one.part == part) else { continue };
        let count = plan.iter().filter(|one| one.part == part).count();
        let kind = if part == Where::CoverBack { "In every cover's back" } else { "In every wheel's face" };
        page.bullet(&format!(
            "{kind} ({count} here): the marked face {} here.",
            one.poles.words().trim_end_matches('s').to_owned() + "s"
        ));
    }
    page.text("Marked face: one side of one magnet, the master, painted and glued with that side out into the pole gauge. Testers and compasses disagree about names of poles; all magnets of all your dials agree with this one master (common practice). Keep it.");
    page.blank();
    page.heading("Count");
    for (disc, count) in magnets::count(dial) {
        page.bullet(&format!(
            "{} magnets {} x {}: {} to glue in, {}{} spare. Loose ones lie at least {:.0} mm apart on the bench, or they jump together.",
            count.all(),
            show(disc.diameter, dial.show),
            show(disc.thickness, dial.show),
            count.glued,
            if count.master > 0 { "1 master for the pole gauge if you have none yet, " } else { "" },
            count.spares,
            magnets::spares_apart(&disc),
        ));
    }
    page.blank();
}

fn order(page: &mut Page, dial: &Dial) {
    page.heading("Order of work");
    let mut n = 0;
    let mut step = |page: &mut Page, words: &str| {
        n += 1;
        page.numbered(n, words);
    };
    step(
        page,
        "All beam work on the part is done; it is clean and cool. No beam and no heat ever comes near a magnet.",
    );
    step(
        page,
        "Measure every pocket with the depth gauge: the tongue of the wanted depth goes in until the shoulders rest on the face, the next deeper one keeps them off it.",
    );
    step(
        page,
        "Stack the magnets in one column, as they snap together: now all lie the same way. Lay the pole gauge against an end of the column and paint the end that the marked face pulls.",
    );
    step(
        page,
        "Take magnets from that end only, one at a time, by sliding them off sideways. The side that was outside is the side the marked face pulls; the painted end goes along: paint the new end each time before you slide it off.",
    );
    let mut caps = false;
    for part in [Where::CoverBack, Where::WheelFace] {
        let plan = magnets::plan(dial);
        let Some(one) = plan.iter().find(|one| one.part == part) else { continue };
        let side = if one.poles == dial::assembled::Poles::Pulls {
            "painted side out"
        } else {
            "painted side down into the pocket"
        };
        let names: Vec<&str> = dial.wheels.iter().map(|wheel| wheel.name.as_str()).collect();
        step(
            page,
            &format!(
                "{} ({}): {side}. Try each dry with the pole gauge before the glue: the marked face {} it.",
                if part == Where::CoverBack { "Cover's back" } else { "Wheels' faces" },
                names.join(", "),
                one.poles.words()
            ),
        );
        caps |= dial.wheels.iter().any(|wheel| wheel.seat.cap.is_some());
    }
    step(
        page,
        "Glue: a drop of slow epoxy in the pocket's middle, press the magnet down with a flat stick until it sits, wipe what wells out. Let it cure by the glue's own sheet before another magnet comes within a hand's breadth.",
    );
    if caps {
        step(
            page,
            "Glue a cap over each magnet into its ledge, flush with the face, and press it flat until it holds.",
        );
    }
    if dial.wheels.iter().any(|wheel| wheel.seat.ring.as_ref().is_some_and(|ring| ring.washer.is_some())) {
        step(page, "Glue a washer about each wheel's pocket, thinly and all round.");
    }
    step(
        page,
        "Check each magnet once more with the pole gauge when the glue has set. One that is the wrong way round is drilled out from behind, never pried.",
    );
    step(page, "Count what is left over: none may be missing.");
    page.blank();
}

fn checks(page: &mut Page, looked: &Looked) {
    page.heading("At the bench, when it is together");
    for (wheel, held) in looked.laid.dial.wheels.iter().zip(&looked.held).take(1) {
        let Some(held) = held else { continue };
        page.bullet(&format!(
            "A spring balance at the rim of {} should read {:.2} to {:.2} N while it turns; as much as {:.0} to {:.0} g weigh on a luggage scale.",
            wheel.name,
            held.effort.low,
            held.effort.high,
            held.effort.low * 1e3 / 9.81,
            held.effort.high * 1e3 / 9.81
        ));
    }
    page.bullet("Turn every wheel once round with one finger: every number comes whole. Push a wheel aside and turn it a little: it centres itself.");
    page.bullet("Any wheel into any place of any cover of the family: it is pulled in, never pushed off. `dialwright fits` tells which should.");
    page.blank();
}

fn care(page: &mut Page, dial: &Dial) {
    page.heading("Take care");
    for one in magnets::loose(dial) {
        let verdict = if one.flux.uncertain() {
            "too near the limit of 50 to tell"
        } else if one.flux.hazardous() {
            "over the limit of 50"
        } else {
            "under the limit of 50"
        };
        page.bullet(&format!(
            "Swallowed magnets kill: two, or one and a piece of steel, attract each other through the walls of the gut. A loose magnet {} x {} has a flux index of {:.0} kG\u{b2}mm\u{b2} ({:.0} to {:.0} by the tolerance of the method), {verdict}, and {} the small-parts cylinder. If one may have been swallowed: medical help at once, also without any sign.",
            show(one.disc.diameter, dial.show),
            show(one.disc.thickness, dial.show),
            one.flux.index,
            one.flux.span[0],
            one.flux.span[1],
            if one.small_part { "fits into" } else { "does not fit into" },
        ));
    }
    for words in [
        "Keep magnets and the finished dial from children. Glue in wood lets go with moisture and with time: look at the magnets now and then, and take a dial with a loose one out of use.",
        "No age label and no word of safety comes from this tool: figures here are computed, they are no test. Before you sell or give away: local law (in the United States 16 CFR 1262, in Europe EN 71-1, in Canada SOR/2011-17, among others) and an accredited laboratory.",
        "Pacemakers, defibrillators, pumps and other implants: keep magnets 15 cm away at least, and ask the doctor. Cards, watches and compasses too.",
        "Magnets snap together and pinch, chip and splinter: wear glasses, slide them apart, never let two jump.",
        "Superglue bonds skin and eyelids, fumes, and heats on cotton and wool. Epoxy: gloves, and no skin contact. Air the room.",
    ] {
        page.bullet(words);
    }
}
