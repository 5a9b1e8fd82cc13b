//! The pairings board: the best pairings as they look, and every cover with every wheel.

use crate::Make;
use crate::book::{Book, NAMES};
use crate::ink::short;
use dial::looks::{Pairing, picks};
use press::GRID_WORDS;
use press::paper::{pairing_card, pairings_grid};
use serde_json::{Value, json};

/// How many are shown as they look.
const CARDS: usize = 9;
/// Letters of a name beside the grid.
const LABEL: usize = 36;

pub(super) fn data(make: &Make, book: &mut Book, ranked: &[Pairing]) -> Value {
    let does = ranked.iter().filter(|one| one.does()).count();
    let shown = does.clamp(1, CARDS).min(ranked.len());
    let own = ranked.iter().find(|one| is_own(make, one));
    let cards = ranked.iter().take(shown).enumerate().map(|(k, one)| card(make, book, one, &(k + 1).to_string()));
    let cards: Vec<Value> = cards.collect();
    let rank = own.and_then(|own| ranked.iter().position(|one| one.name() == own.name()));
    let own = own.zip(rank).map(|(own, rank)| {
        let mut own_card = card(make, book, own, &(rank + 1).to_string());
        own_card["all"] = ranked.len().into();
        own_card["why_not"] = own.reasons.iter().map(dial::looks::Reason::words).collect();
        own_card
    });
    json!({
        "line": format!("{does} of {} pairings of the shelf can be read and keep their numbers.", ranked.len()),
        "cards": cards,
        "own": own,
        "grid": book.drawing_with(&pairings_grid(make.looked, ranked), LABEL),
        "grid_words": GRID_WORDS,
        "picked": picks(&make.workshop.votes).map(|picks| format!("{} choices were made: {}.", picks.cast, picks.verdict)),
    })
}

fn is_own(make: &Make, one: &Pairing) -> bool {
    let dial = &make.looked.laid.dial;
    one.cover.name == dial.cover.stock.name
        && dial.wheels.first().is_some_and(|wheel| wheel.stock.name == one.wheel.name)
}

fn card(make: &Make, book: &mut Book, one: &Pairing, rank: &str) -> Value {
    let (drawing, said) = pairing_card(make.looked, one);
    json!({
        "rank": rank,
        "cover": short(&one.cover.name, NAMES),
        "wheels": short(&one.wheel.name, NAMES),
        "does": one.does(),
        "said": said,
        "drawing": book.drawing(&drawing),
    })
}
