//! The magnets: how they hold, where each goes, how deep, which way round, in which order.

use super::words::{Part, part, parts};
use crate::Make;
use crate::book::{Book, NAMES};
use crate::ink::short;
use dial::assembled::{Poles, Wheel};
use dial::magnets::{self, Where};
use measure::show;
use press::paper::{pair_section, pole_drawing};
use press::{Block, magnet_map, magnets_words};
use serde_json::{Value, json};

pub(super) fn data(make: &Make, book: &mut Book) -> Value {
    let dial = &make.looked.laid.dial;
    let mut number = 0;
    let pockets: Vec<Value> = magnets::plan(dial)
        .into_iter()
        .map(|one| {
            let wheel = &dial.wheels[one.wheel];
            number += usize::from(!one.clicks);
            json!({
                "number": (!one.clicks).then_some(number),
                "part": match one.part { Where::CoverBack => "cover\u{2019}s back", Where::WheelFace => "wheel\u{2019}s face" },
                "wheel": short(&wheel.name, NAMES),
                "clicks": one.clicks,
                "diameter": show(2.0 * one.pocket.radius, dial.show),
                "depth": show(one.pocket.depth, dial.show),
                "within": show(wheel.seat.depth_within, dial.show),
                "pulls": one.poles == Poles::Pulls,
                "face": match one.poles { Poles::Pulls => "pulls: painted side out", Poles::Pushes => "pushes: painted side down" },
            })
        })
        .collect();
    let mut sections: Vec<Value> = Vec::new();
    let mut drawn: Vec<(&Wheel, Vec<String>)> = Vec::new();
    for wheel in &dial.wheels {
        match drawn.iter_mut().find(|one| alike(one.0, wheel)) {
            Some(one) => one.1.push(short(&wheel.name, NAMES)),
            None => drawn.push((wheel, vec![short(&wheel.name, NAMES)])),
        }
    }
    for (wheel, names) in drawn {
        sections.push(json!({ "names": names.join(", "), "drawing": book.drawing(&pair_section(dial, wheel)) }));
    }
    let mut all = parts(magnets_words(make.looked, make.workshop));
    for one in &mut all {
        // Every unequal pair of the shelf by name fills half a page; the page of text has them.
        one.blocks.retain(|block| !matches!(block, Block::Text(words) if words.starts_with("Unequal pairs")));
    }
    let kinds = |of: &dyn Fn(&Part) -> bool| all.iter().filter(|one| of(one)).map(part).collect::<Vec<Value>>();
    let named = |words: &[&str]| -> Vec<Value> {
        words.iter().flat_map(|word| kinds(&|one| one.heading.starts_with(word))).collect()
    };
    let work = |one: &Part| ROUND.iter().chain(&WORK).any(|word| one.heading.starts_with(word));
    json!({
        "poles": book.drawing(&pole_drawing(dial)),
        "pockets": pockets,
        "sections": sections,
        "map": magnet_map(make.looked, make.workshop).map(|svg| book.picture(&on_white(&svg))),
        "round": named(&ROUND),
        "work": named(&WORK),
        "held": kinds(&|one| !work(one) && !one.heading.starts_with(SHELF)),
        "shelf": kinds(&|one| one.heading.starts_with(SHELF)),
    })
}

/// Heading of what the shelf offers.
const SHELF: &str = "From the shelf";
/// Headings of what the plan and the pockets are read with.
const ROUND: [&str; 2] = ["Which way round", "Count"];
/// Headings of what is done at the bench, which stands before the figures behind it; bench checks and cautions have documents of their own as
/// well.
const WORK: [&str; 3] = ["Take care", "Order of work", "At the bench"];

fn alike(one: &Wheel, other: &Wheel) -> bool {
    let pocket =
        |wheel: &Wheel| [wheel.pocket, wheel.cover_pocket].map(|pocket| (pocket.radius, pocket.depth, pocket.ledge));
    one.seat == other.seat && one.stock == other.stock && pocket(one) == pocket(other)
}

/// One of the press's pictures without the paper under it, which is its first element.
fn on_white(svg: &str) -> String {
    let Some(start) = svg.find("<rect ") else { return svg.to_owned() };
    let Some(end) = svg[start..].find("/>") else { return svg.to_owned() };
    format!("{}{}", &svg[..start], &svg[start + end + 2..])
}
