//! `dialwright contrast`: two colours against each other, so that anyone can check a number.

use crate::Outcome;
use crate::args::Contrast as Args;
use crate::talk::Talk;
use serde_json::{Value, json};
use sight::{Contrast, Lab, Level, Srgb, ciede2000};

/// Runs the command.
pub fn run(args: &Args) -> Result<Outcome, Talk> {
    let (mark, ground) = read(&args.mark, &args.ground).map_err(Talk::Plain)?;
    if args.json {
        println!("{:#}", figures(mark, ground));
    } else {
        print!("{}", words(mark, ground));
    }
    Ok(Outcome::Well)
}

fn read(mark: &str, ground: &str) -> Result<(Srgb, Srgb), String> {
    let read = |text: &str| text.parse::<Srgb>().map_err(|error| error.to_string());
    Ok((read(mark)?, read(ground)?))
}

/// The figures of a mark's colour on a ground's; or which of them is no colour.
pub fn of(mark: &str, ground: &str) -> Result<Value, String> {
    read(mark, ground).map(|(mark, ground)| figures(mark, ground))
}

fn figures(mark: Srgb, ground: Srgb) -> Value {
    let contrast = Contrast::between(mark, ground);
    let one = |colour: Srgb| {
        let Lab { lightness, a, b } = Lab::from(colour);
        json!({ "colour": colour.to_string(), "luminance": colour.luminance(), "l_star": lightness, "a_star": a, "b_star": b })
    };
    let levels = Level::ALL.map(|level| {
        json!({
            "level": level.to_string(), "criterion": level.criterion(), "least": level.least(),
            "passed": contrast.passes(level),
        })
    });
    json!({
        "mark": one(mark),
        "ground": one(ground),
        "ratio": contrast.ratio(),
        "ratio_shown": contrast.shown(),
        "polarity": contrast.polarity().to_string(),
        "ciede2000": ciede2000(Lab::from(mark), Lab::from(ground)),
        "levels": levels,
    })
}

fn words(mark: Srgb, ground: Srgb) -> String {
    let contrast = Contrast::between(mark, ground);
    let one = |what: &str, colour: Srgb| {
        let Lab { lightness, a, b } = Lab::from(colour);
        format!("  {what} {colour}: luminance {:.4}, L* {lightness:.2}, a* {a:.2}, b* {b:.2}\n", colour.luminance())
    };
    let mut out = format!("contrast {}:1, {}\n", contrast.shown(), contrast.polarity());
    out += &one("mark  ", mark);
    out += &one("ground", ground);
    out += &format!("  colour difference CIEDE2000 {:.2}\n", ciede2000(Lab::from(mark), Lab::from(ground)));
    for level in Level::ALL {
        let verdict = if contrast.passes(level) { "passes" } else { "fails " };
        out += &format!("  {verdict} {}:1, {level} (WCAG 2.2, {})\n", level.least(), level.criterion());
    }
    out
}
