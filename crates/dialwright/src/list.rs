//! `dialwright list`: stocks, symbols, parameters.

use crate::Outcome;
use crate::args::{List, Listed};
use crate::load;
use crate::talk::Talk;
use measure::{Units, show};
use serde_json::{Value, json};

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
    let workshop = load::workshop(args.workshop.as_deref(), None)?;
    if args.json {
        let all: Vec<Value> = workshop
            .stocks
            .iter()
            .map(|stock| {
                json!({
                    "name": stock.name, "thickness_mm": stock.thickness(), "thinnest_mm": stock.thinnest(),
                    "thickest_mm": stock.thickest(), "kerf_x_mm": stock.kerf.x, "kerf_y_mm": stock.kerf.y, "source": stock.source,
                    "layers": stock.layers.iter().map(|layer| json!({
                        "material": layer.named, "thickness_mm": layer.thickness,
                        "thinner_mm": layer.thinner, "thicker_mm": layer.thicker,
                    })).collect::<Vec<_>>(),
                })
            })
            .collect();
        println!("{:#}", Value::from(all));
        return Ok(());
    }
    let mm = |length| show(length, Units::Millimetres);
    for stock in &workshop.stocks {
        let layers: Vec<String> =
            stock.layers.iter().map(|layer| format!("{} {}", layer.named, mm(layer.thickness))).collect();
        println!(
            "{}: {} ({} to {}), kerf {}",
            stock.name,
            layers.join(" + "),
            mm(stock.thinnest()),
            mm(stock.thickest()),
            mm(stock.kerf.x)
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
