//! How well photos with known truth are read: scenes made by calculation, one kind a line of the table.
//!
//! `cargo run --release -p card --example accuracy -- 200 2400` reads 200 scenes of each kind, 2400 pixels wide.
//! `... -- one KIND SEED 1600 scene.png` draws one, with what was found, and tells every figure.

#[path = "../tests/scene/mod.rs"]
#[allow(dead_code, reason = "each user of the scenes needs some of them")]
mod scene;
#[path = "../tests/it/trial.rs"]
#[allow(dead_code, reason = "each user of the trials needs some of them")]
mod trial;

use std::time::Instant;

use card::{CardPlan, Paper};
use trial::{KINDS, Kind, Tally, Trial};

fn main() {
    let arguments: Vec<String> = std::env::args().skip(1).collect();
    let number = |at: usize, otherwise: u64| arguments.get(at).and_then(|a| a.parse().ok()).unwrap_or(otherwise);
    if arguments.first().is_some_and(|first| first == "one") {
        let kind = KINDS.into_iter().find(|kind| Some(kind.name()) == arguments.get(1).map(String::as_str));
        let Some(kind) = kind else {
            eprintln!("kinds: {}", KINDS.map(Kind::name).join(", "));
            std::process::exit(2);
        };
        let file = arguments.get(4).map_or("scene.png", String::as_str);
        one(&Trial { kind, seed: number(2, 0), width: number(3, 1600) as usize }, file);
        return;
    }
    let (count, width) = (number(0, 200), number(1, 2400) as usize);
    println!("{count} scenes of each kind, {width} by {} pixels", width * 3 / 4);
    println!("{}", Tally::HEADING);
    let only = arguments.get(2);
    for kind in KINDS.into_iter().filter(|kind| only.is_none_or(|only| kind.name() == only)) {
        let started = Instant::now();
        let tally = Tally::over(kind, 0..count, width);
        println!("{tally}  ({:.0} s)", started.elapsed().as_secs_f64());
        for line in tally.remarks() {
            println!("      {line}");
        }
    }
}

/// One scene: its picture with the outlines found, and every figure.
fn one(trial: &Trial, file: &str) {
    let plan = CardPlan::new(Paper::A4, trial.steps()).expect("a plan");
    let scene = trial.scene(&plan);
    let picture = scene.photograph(&plan);
    let mut pixels = image::RgbImage::from_raw(picture.width as u32, picture.height as u32, picture.rgb.clone())
        .expect("as many pixels as the picture has");
    let outlines = match trial.read(&scene, &plan) {
        Ok(reading) => {
            println!("{reading:#?}");
            reading.outlines
        }
        Err(refused) => {
            println!("{refused}");
            *refused.found
        }
    };
    println!("{scene:#?}");
    let mut ring = |ring: &[card::Point], colour: [u8; 3]| {
        for (i, from) in ring.iter().enumerate() {
            let to = ring[(i + 1) % ring.len()];
            for k in 0..1000 {
                let p = from.lerp(to, f64::from(k) / 1000.0);
                // Left of and above the picture is no pixel either.
                let (x, y) = (p.x.max(0.0) as u32, p.y.max(0.0) as u32);
                if let Some(pixel) = pixels.get_pixel_mut_checked(x, y) {
                    *pixel = image::Rgb(colour);
                }
            }
        }
    };
    ring(&outlines.card, [255, 0, 0]);
    outlines.tags.iter().for_each(|quad| ring(quad, [0, 200, 0]));
    outlines.whites.iter().chain(&outlines.blacks).for_each(|quad| ring(quad, [0, 120, 255]));
    outlines.steps.iter().flatten().for_each(|quad| ring(quad, [255, 0, 255]));
    pixels.save(file).expect("the picture can be written");
}
