//! `dialwright list`: stocks, symbols, parameters.

use crate::Outcome;
use crate::args::{List, Listed};
use crate::load;
use crate::talk::{Talk, write_picture};
use dial::looks::Engraving;
use measure::{Units, show};
use serde_json::{Value, json};
use std::path::Path;

/// Runs the command.
pub fn run(args: &List) -> Result<Outcome, Talk> {
    match args.what {
        Listed::Stocks => stocks(args)?,
        Listed::Symbols => symbols(args.json),
        Listed::Parameters => {
            if args.json {
                println!("{:#}", dial::design::schema());
            } else {
                print!("{}", dial::design::reference_page());
            }
        }
    }
    Ok(Outcome::Well)
}

fn stocks(args: &List) -> Result<(), Talk> {
    let here = load::workshop_of(Path::new("."));
    let named = args.workshop.as_deref().or(here.is_file().then_some(here.as_path()));
    let workshop = load::workshop(named, None)?;
    if let Some(path) = &args.picture {
        write_picture(path, press::shelf_board(&workshop, Units::Millimetres))?;
    }
    if args.json {
        let all: Vec<Value> = workshop.stocks.iter().map(press::stock_report).collect();
        println!("{:#}", Value::from(all));
        return Ok(());
    }
    let mm = |length| show(length, Units::Millimetres);
    for stock in &workshop.stocks {
        let layers: Vec<String> =
            stock.layers.iter().map(|layer| format!("{} {}", layer.named, mm(layer.thickness))).collect();
        let contrast = Engraving::of(stock, stock.surfaces.engraved_at)
            .map_or(String::new(), |one| format!(", engraving {}:1", one.contrast.shown()));
        println!(
            "{}: {} ({} to {}), kerf {}{contrast}; colours {}",
            stock.name,
            layers.join(" + "),
            mm(stock.thinnest()),
            mm(stock.thickest()),
            mm(stock.kerf.x),
            stock.surfaces.source,
        );
    }
    Ok(())
}

fn symbols(as_json: bool) {
    if as_json {
        let names: Vec<Value> =
            lettering::Symbol::all().map(|symbol| json!({ "name": symbol.name(), "words": symbol.words() })).collect();
        println!("{:#}", Value::from(names));
    } else {
        for symbol in lettering::Symbol::all() {
            println!("{}: {}", symbol.name(), symbol.words());
        }
    }
}
