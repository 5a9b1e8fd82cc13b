//! `dialwright choice`: a client's choice code, turned back into a pairing.

use crate::Outcome;
use crate::args::{Choice, On};
use crate::load;
use crate::talk::Talk;
use serde_json::json;

/// Runs the command.
pub fn run(args: &Choice) -> Result<Outcome, Talk> {
    let workshop = load::workshop(args.workshop.as_deref(), args.on.as_deref())?;
    let mut stocks: Vec<String> = workshop.stocks.iter().map(|stock| stock.name.clone()).collect();
    if let Some(file) = &args.on {
        let on = On { file: file.clone(), workshop: args.workshop.clone(), json: false };
        let design = load::load(&on)?.design;
        stocks.extend([design.cover.stock.name, design.wheel_stock.name]);
    }
    stocks.dedup();
    let names: Vec<&str> = stocks.iter().map(String::as_str).collect();
    let (cover, wheel) = press::chosen(&args.code, &names).map_err(Talk::Plain)?;
    if args.json {
        println!("{:#}", json!({ "cover": cover, "wheel": wheel }));
    } else if cover == wheel {
        println!("{cover}, for the cover and the wheels\n\nstock = \"{cover}\"");
    } else {
        println!("cover: {cover}\nwheels: {wheel}\n\ncover.stock = \"{cover}\"\nwheel.stock = \"{wheel}\"");
    }
    Ok(Outcome::Well)
}
