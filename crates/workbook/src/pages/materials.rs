//! The bill of materials, without prices.

use super::dial_page::count;
use crate::Make;
use dial::magnets;
use measure::show;
use serde_json::{Value, json};

pub(super) fn data(make: &Make) -> Value {
    let dial = &make.looked.laid.dial;
    let mm = |length: f64| show(length, dial.show);
    let stocks = make.job.sheets.iter().map(|sheet| {
        let parts: Vec<&str> = sheet.parts.iter().map(|part| part.name.as_str()).collect();
        json!({
            "item": sheet.stock.name,
            "count": "1",
            "size": format!("at least {} \u{d7} {}, {} thick", mm(sheet.width), mm(sheet.height), mm(sheet.stock.thickness())),
            "for": parts.join(", "),
        })
    });
    let magnets = magnets::count(dial).into_iter().map(|(disc, count)| {
        let master = if count.master > 0 { ", 1 master" } else { "" };
        json!({
            "item": "disc magnet",
            "count": count.all().to_string(),
            "size": format!("{} \u{d7} {}, remanence {:.2} to {:.2} T", mm(disc.diameter), mm(disc.thickness), disc.remanence.low, disc.remanence.high),
            "for": format!("{} to glue in{master}, {} spare", count.glued, count.spares),
        })
    });
    let used = [
        ("slow epoxy, or the glue that its sheet allows for plated metal on this stock", "a few drops for each magnet"),
        ("masking film or paper", "the faces, where the finish asks for it"),
        ("paint pen", "the marked face of the master magnet"),
        ("paper and one pin for each wheel", "the paper proof"),
    ];
    let used = used.iter().map(|(item, why)| json!({ "item": item, "for": why }));
    let parts: usize = make.job.sheets.iter().map(|sheet| sheet.parts.len()).sum();
    json!({
        "line": format!("{} cut from {}.", count(parts, "part"), count(make.job.sheets.len(), "sheet")),
        "stocks": stocks.collect::<Vec<_>>(),
        "magnets": magnets.collect::<Vec<_>>(),
        "used": used.collect::<Vec<_>>(),
    })
}
