//! What can be read, and which pairing is the one, as text.

use dial::Looked;
use dial::findings::Quantity;
use dial::looks::{Engraving, Pairing, picks};
use measure::show;
use process::Workshop;
use sight::{ARCMIN, Acuity};

/// Pairings that are listed.
const LISTED: usize = 12;

/// The page.
pub fn looks_page(looked: &Looked, workshop: &Workshop, ranked: &[Pairing]) -> String {
    reading(looked) + &pairings(ranked) + &votes(workshop, ranked)
}

fn reading(looked: &Looked) -> String {
    let dial = &looked.laid.dial;
    let mm = |length: f64| show(length, dial.show);
    let mut out = String::new();
    for reader in &dial.reading.readers {
        let (seat, view) = (reader.view.seat(), reader.view);
        out += &format!(
            "{}: {} away, eye {} up, looks down at {:.0}°; 16' are {} of numeral, 20' {}; strokes of {} for a normal eye, {} for an older one, {} for {}\n",
            reader.name,
            mm(seat.away()),
            mm(seat.eye()),
            seat.elevation().to_degrees(),
            mm(view.height_for(16.0 * ARCMIN)),
            mm(view.height_for(20.0 * ARCMIN)),
            mm(view.critical_stroke(Acuity::NORMAL)),
            mm(view.critical_stroke(Acuity::NORMAL.older())),
            mm(view.critical_stroke(Acuity::WEAK)),
            Acuity::WEAK,
        );
    }
    if dial.reading.readers.is_empty() {
        out += "nobody must read it: `reading.seats` is empty\n";
    }
    out += &format!("cover, {}: {}\n", dial.cover.stock.name, engraved(looked.looks.cover.as_ref()));
    for (wheel, look) in dial.wheels.iter().zip(&looked.looks.wheels) {
        out += &format!("{}, {}: {}\n", wheel.name, wheel.stock.name, engraved(look.engraving.as_ref()));
        for (reader, seen) in dial.reading.readers.iter().zip(&look.seen) {
            let worst = seen.at_worst();
            out += &format!(
                "  {}: {} high; of “{}” the edge hides {} of {}; a window {} high would hide nothing\n",
                reader.name,
                Quantity::Sight(seen.angle).show(dial.show),
                wheel.marks[seen.worst].words,
                mm(worst.hidden),
                mm(worst.extent),
                mm((seen.window_for_all * 10.0).ceil() / 10.0),
            );
        }
    }
    out
}

fn engraved(one: Option<&Engraving>) -> String {
    let Some(one) = one else {
        return "the engraving goes through".into();
    };
    let (face, floor) = one.lightness();
    let may = if one.may_differ() { ", where it ends in the layer that stands out least" } else { "" };
    format!(
        "engraving {}:1, {}, L* {floor:.0} on {face:.0}, CIEDE2000 {:.1}{may}",
        one.contrast.shown(),
        one.contrast.polarity(),
        one.difference
    )
}

fn pairings(ranked: &[Pairing]) -> String {
    let does = ranked.iter().filter(|one| one.does()).count();
    let mut out = format!("\n{does} of {} pairings (cover / wheels) do; the best:\n", ranked.len());
    for (k, one) in ranked.iter().take(LISTED.min(does.max(1))).enumerate() {
        let ratio = |engraving: &Option<Engraving>| {
            engraving.as_ref().map_or("-".to_owned(), |one| format!("{}:1", one.contrast.shown()))
        };
        out += &format!(
            "  {:>2}  {}: marks {}, text {}; {}{}\n",
            k + 1,
            one.name(),
            ratio(&one.marks),
            ratio(&one.art),
            one.likely.map_or(String::new(), |likely| format!("{:.1} N at the rim; ", likely.effort)),
            one.price.map_or("price unknown".into(), |price| format!("{price:.2} of stock and magnets")),
        );
    }
    let mut why: Vec<(String, usize)> = Vec::new();
    for reason in ranked.iter().filter_map(|one| one.reasons.first()) {
        let kind = match reason.letter() {
            'C' => "the marks do not stand out",
            'A' => "the text on the cover does not stand out",
            'H' => "the cover hides too much of the marks",
            'P' => "a pocket is too deep for the stock",
            'T' => "the wheels do not turn easily or do not keep",
            'E' => "the engraving goes through",
            _ => "a material is never cut or not known",
        };
        match why.iter_mut().find(|one| one.0 == kind) {
            Some(one) => one.1 += 1,
            None => why.push((kind.to_owned(), 1)),
        }
    }
    for (words, count) in why {
        out += &format!("  {count} fail: {words}\n");
    }
    out
}

fn votes(workshop: &Workshop, ranked: &[Pairing]) -> String {
    let Some(picks) = picks(&workshop.votes) else {
        return "\nno votes yet: lay two pairings side by side, ask, and write it down in votes.toml (docs/votes-file.md)\n".into();
    };
    let mut out = format!("\n{} choices: {}\n", picks.cast, picks.verdict);
    for one in &picks.picked {
        let known = match ranked.iter().find(|pairing| pairing.name() == one.name) {
            None => ", not on this shelf",
            Some(pairing) if !pairing.does() => ", fails on this dial",
            Some(_) => "",
        };
        let figures = match (one.share, one.strength) {
            (Some(share), Some((log, error))) => {
                format!("picked out of all in {:.0} % (strength {log:.2} ± {error:.2})", share * 100.0)
            }
            _ => "not ranked".to_owned(),
        };
        out += &format!("  {}: {figures}, laid out {} times{known}\n", one.name, one.laid_out);
    }
    out
}
