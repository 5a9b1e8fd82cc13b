//! `dialwright card`: print the reference card, cut the sample for it, read a photo of both.

use crate::Outcome;
use crate::args::{Card, CardDoes, On};
use crate::check::look;
use crate::measured::{Wish, keep};
use crate::talk::{Talk, write_picture};
use card::{CardPlan, Measured, Paper, Print, Reading, Surface};
use serde_json::{Value, json};
use std::fs;
use std::path::Path;

/// Runs the command.
pub fn run(args: &Card) -> Result<Outcome, Talk> {
    let paper = if args.letter { Paper::Letter } else { Paper::A4 };
    let plan = CardPlan::new(paper, args.steps).map_err(|error| Talk::Plain(error.to_string()))?;
    match &args.does {
        CardDoes::Print { to } => {
            write_page(&plan, to)?;
            println!(
                "{}: print it at full size (100 %) on plain white paper, and measure its line: 100 mm",
                to.display()
            );
        }
        CardDoes::Sample { file, workshop, stock, to } => {
            let looked = look(&On { file: file.clone(), workshop: workshop.clone(), json: false }, &[])?;
            let dial = &looked.dial.laid.dial;
            let own = [&dial.cover.stock, &dial.wheels[0].stock];
            let shelf = looked.loaded.workshop.stocks.iter();
            let stock = match stock {
                Some(name) => own.into_iter().chain(shelf).find(|one| one.name == *name).ok_or_else(|| {
                    Talk::Plain(format!("there is no stock “{name}”; `dialwright list stocks` shows what there is"))
                })?,
                None => own[1],
            };
            write_picture(to, press::card_sample(&plan, dial, stock).map_err(Talk::Plain)?)?;
            let told = format!(
                "{}: engrave its {} groups at rising power on {}, cut it, wipe it as you would the dial, and write the powers down",
                to.display(),
                args.steps,
                stock.name
            );
            say(args, json!({ "file": to, "steps": args.steps, "stock": stock.name }), &told);
        }
        CardDoes::Read { photo, store, into, step, depth, power, paper_white, ink_black } => {
            let depth = measure::parse_length(depth).map_err(|error| Talk::Plain(format!("--depth: {error}")))?;
            let bytes =
                fs::read(photo).map_err(|error| Talk::Plain(format!("{} cannot be read: {error}", photo.display())))?;
            match card::read(&bytes, &plan, &print(*paper_white, *ink_black)) {
                Ok(reading) => {
                    let wish = store.as_ref().map(|stock| Wish {
                        stock: stock.clone(),
                        step: *step,
                        depth,
                        power: power.clone(),
                        photo: photo.display().to_string(),
                    });
                    let kept = match wish {
                        Some(wish) => Some(keep(&reading, &wish, into.as_deref())?),
                        None => None,
                    };
                    if args.json {
                        let mut all = figures(&reading);
                        if let Some(file) = &kept {
                            all["stored_into"] = json!(file);
                        }
                        println!("{all:#}");
                    } else {
                        print!("{}", words(&reading));
                        if let (Some(file), Some(stock)) = (&kept, store) {
                            println!("  written into “{stock}” in {}", file.display());
                        }
                    }
                }
                Err(refused) => {
                    if args.json {
                        println!("{:#}", json!({ "refused": refused.to_string() }));
                    } else {
                        println!("not read: {refused}");
                    }
                    return Ok(Outcome::Refused);
                }
            }
        }
    }
    Ok(Outcome::Well)
}

/// Writes the card as its file's ending says.
fn write_page(plan: &CardPlan, to: &Path) -> Result<(), Talk> {
    let svg = press::card_page(plan);
    if to.extension().is_none_or(|end| end != "pdf") {
        return write_picture(to, svg);
    }
    let bytes = pdf(plan, &svg)?;
    fs::write(to, bytes).map_err(|error| Talk::Plain(format!("{} cannot be written: {error}", to.display())))
}

#[cfg(feature = "workbook")]
fn pdf(plan: &CardPlan, svg: &str) -> Result<Vec<u8>, Talk> {
    let size = plan.paper.size();
    let alt =
        "Reference card: white and black patches, corner marks, and an opening for the sample. Print at full size.";
    workbook::drawing_alone("Reference card", alt, svg, (size.width, size.height))
        .map_err(|error| Talk::Plain(error.to_string()))
}

#[cfg(not(feature = "workbook"))]
fn pdf(_plan: &CardPlan, _svg: &str) -> Result<Vec<u8>, Talk> {
    Err(Talk::Plain(
        "this build has no typesetter for PDF: print the card to a .svg, and print that from a browser at 100 %".into(),
    ))
}

fn say(args: &Card, figures: Value, words: &str) {
    if args.json { println!("{figures:#}") } else { println!("{words}") }
}

/// What paper and print send back, from what was measured of them.
pub fn print(paper_white: Option<f64>, ink_black: Option<f64>) -> Print {
    let usual = Print::default();
    let about = |given: Option<f64>, usual: measure::Interval| given.map_or(usual, measure::Interval::exactly);
    match (paper_white, ink_black) {
        (Some(paper), Some(ink)) => Print::measured(paper, ink),
        _ => Print { paper: about(paper_white, usual.paper), ink: about(ink_black, usual.ink) },
    }
}

/// The figures of a reading.
pub fn figures(reading: &Reading) -> Value {
    let measured = |one: &Measured| json!({ "value": one.value, "least": one.within.low, "most": one.within.high });
    let surface = |one: &Surface| {
        json!({
            "reflectance": measured(&one.reflectance),
            "lightness": measured(&one.lightness),
            "colour": one.colour.to_string(),
        })
    };
    let step = |one: &card::Step| {
        json!({
            "face": surface(&one.face),
            "engraved": surface(&one.engraved),
            "contrast_ratio": measured(&one.contrast),
        })
    };
    json!({
        "steps": reading.steps.iter().map(step).collect::<Vec<_>>(),
        "best_step": reading.best + 1,
        "gentlest_as_good_step": reading.gentlest_as_good() + 1,
        "tilt_deg": reading.tilt,
        "px_per_mm": reading.px_per_mm,
    })
}

fn words(reading: &Reading) -> String {
    let mut out = String::from("  power      face L*          engraved L*      contrast\n");
    for (k, step) in reading.steps.iter().enumerate() {
        let of = |one: &Measured, places: usize| {
            format!("{:.places$} ({:.places$} to {:.places$})", one.value, one.within.low, one.within.high)
        };
        out += &format!(
            "  step {}     {:<16} {:<16} {}{}\n",
            k + 1,
            of(&step.face.lightness, 0),
            of(&step.engraved.lightness, 0),
            of(&step.contrast, 1),
            if k == reading.best { "  best" } else { "" }
        );
    }
    let gentlest = reading.gentlest_as_good();
    if gentlest != reading.best {
        out += &format!("  step {} reads as well within the measure, and burns less: choose that\n", gentlest + 1);
    }
    out + "  read from a photo: good for 2 L* and a tenth of the contrast, not for more\n"
}
