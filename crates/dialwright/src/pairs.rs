//! `dialwright magnets --pairs` and `--disc`: the physics alone, without a dial, so that anyone can check a number.

use crate::Outcome;
use crate::talk::Talk;
use magnet::{Disc, Pair};
use serde::{Deserialize, Serialize};
use serde_json::{Value, json};
use std::fs::File;
use std::io::{self, Read, Write};
use std::path::Path;

/// The columns, in the order in which they are usually written.
const COLUMNS: &str = "d1_mm,t1_mm,br1_t,d2_mm,t2_mm,br2_t,gap_mm,offset_mm";

/// One row of the table. A negative remanence turns the magnet over: the pair then repels.
#[derive(Clone, Copy, Debug, Deserialize)]
struct Row {
    d1_mm: f64,
    t1_mm: f64,
    br1_t: f64,
    d2_mm: f64,
    t2_mm: f64,
    br2_t: f64,
    gap_mm: f64,
    offset_mm: f64,
}

/// What is computed for it.
#[derive(Clone, Copy, Debug, Serialize)]
struct Figures {
    axial_n: f64,
    lateral_n: f64,
    /// `null` where it is infinite: equal discs in contact.
    stiffness_n_per_mm: Option<f64>,
    centres: bool,
}

/// Computes every row of a table.
pub fn pairs(path: &Path, as_json: bool) -> Result<Outcome, Talk> {
    let name = path.display();
    let source: Box<dyn Read> = if path.as_os_str() == "-" {
        Box::new(io::stdin())
    } else {
        Box::new(File::open(path).map_err(|error| Talk::Plain(format!("{name} cannot be read: {error}")))?)
    };
    let mut reader = csv::ReaderBuilder::new().trim(csv::Trim::All).comment(Some(b'#')).from_reader(source);
    let headers = reader.headers().map_err(|error| wrong(path, &error))?.clone();
    let missing: Vec<&str> = COLUMNS.split(',').filter(|column| !headers.iter().any(|one| one == *column)).collect();
    if !missing.is_empty() {
        return Err(Talk::Plain(format!(
            "{name}: column{} {} missing in its first line\nwrite {COLUMNS} there; lengths in mm, remanences in T",
            if missing.len() == 1 { "" } else { "s" },
            missing.join(", ")
        )));
    }
    let mut all = Vec::new();
    for (line, row) in reader.deserialize::<Row>().enumerate() {
        let row = row.map_err(|error| wrong(path, &error))?;
        all.push(figures(&row).map_err(|why| Talk::Plain(format!("{name}, row {}: {why}", line + 1)))?);
    }
    say(&all, as_json).map_err(|error| Talk::Plain(format!("the figures cannot be written: {error}")))?;
    Ok(Outcome::Well)
}

fn wrong(path: &Path, error: &csv::Error) -> Talk {
    let at = error.position().map_or(String::new(), |at| format!(", line {}", at.line()));
    let why = match error.kind() {
        csv::ErrorKind::Deserialize { err, .. } => {
            let column = err.field().and_then(|k| COLUMNS.split(',').nth(k as usize)).unwrap_or("a column");
            format!("{column} is not a number ({})", err.kind())
        }
        csv::ErrorKind::UnequalLengths { expected_len, len, .. } => {
            format!("{len} columns, {expected_len} in the first line")
        }
        csv::ErrorKind::Utf8 { .. } => "this is not text in UTF-8".into(),
        _ => error.to_string(),
    };
    Talk::Plain(format!(
        "{}{at}: {why}\nwrite {COLUMNS}; lengths in mm, remanences in T, a point for decimals",
        path.display()
    ))
}

fn figures(row: &Row) -> Result<Figures, String> {
    let disc = |d: f64, t: f64, br: f64| Disc::new(d, t, br.abs()).map_err(|error| error.to_string());
    let pair = Pair { first: disc(row.d1_mm, row.t1_mm, row.br1_t)?, second: disc(row.d2_mm, row.t2_mm, row.br2_t)? };
    if !(row.gap_mm >= 0.0 && row.gap_mm.is_finite() && row.offset_mm.is_finite()) {
        return Err(format!("a gap of {} mm, {} mm aside cannot be: the gap is 0 or more", row.gap_mm, row.offset_mm));
    }
    let repels = row.br1_t * row.br2_t < 0.0;
    let sign = if repels { -1.0 } else { 1.0 };
    let forces = pair.forces(row.gap_mm, row.offset_mm);
    let stiffness = sign * pair.stiffness(row.gap_mm);
    Ok(Figures {
        axial_n: sign * forces.axial,
        lateral_n: sign * forces.lateral + 0.0,
        stiffness_n_per_mm: Some(stiffness).filter(|one| one.is_finite()),
        centres: stiffness > 0.0,
    })
}

fn say(all: &[Figures], as_json: bool) -> io::Result<()> {
    let mut out = io::BufWriter::new(io::stdout().lock());
    if as_json {
        // One row a line: ten thousand are still read by an eye or a `diff`.
        write!(out, "[")?;
        for (k, one) in all.iter().enumerate() {
            write!(out, "{}\n  {}", if k == 0 { "" } else { "," }, serde_json::to_string(one)?)?;
        }
        writeln!(out, "\n]")?;
    } else {
        writeln!(out, "{:>14} {:>14} {:>20}  centres", "axial_n", "lateral_n", "stiffness_n_per_mm")?;
        for one in all {
            let stiffness = one.stiffness_n_per_mm.map_or("infinite".into(), |one| format!("{one:.6}"));
            let centres = if one.centres { "yes" } else { "no" };
            writeln!(out, "{:>14.6} {:>14.6} {stiffness:>20}  {centres}", one.axial_n, one.lateral_n)?;
        }
    }
    out.flush()
}

/// Computes one disc.
pub fn disc(said: &str, as_json: bool) -> Result<Outcome, Talk> {
    let disc: Disc = said.parse().map_err(|error: magnet::DiscError| Talk::Plain(error.to_string()))?;
    let flux = disc.flux_index();
    if as_json {
        let figures: Value = json!({
            "disc": disc.to_string(),
            "flux_index_kg2_mm2": flux.index,
            "flux_index_least_kg2_mm2": flux.span[0],
            "flux_index_most_kg2_mm2": flux.span[1],
            "flux_index_limit_kg2_mm2": magnet::FLUX_INDEX_LIMIT,
            "hazardous_when_loose": flux.hazardous(),
            "bz_peak_t": flux.field,
            "bz_peak_radius_mm": flux.radius,
            "bz_centre_t": flux.field_at_centre,
            "bz_height_mm": magnet::PROBE_HEIGHT[1],
            "pull_on_twin_n": disc.pull_on_twin(),
            "mass_g": disc.mass(),
        });
        println!("{figures:#}");
        return Ok(Outcome::Well);
    }
    println!("{disc}: pulls its twin with {:.2} N, faces touching; {:.2} g", disc.pull_on_twin(), disc.mass());
    println!(
        "  flux density {:.2} mm over the pole: {:.4} T at {:.2} mm from the axis, {:.4} T over its middle",
        magnet::PROBE_HEIGHT[1],
        flux.field,
        flux.radius,
        flux.field_at_centre
    );
    println!(
        "  flux index {:.0} kG\u{b2}mm\u{b2} ({:.0} to {:.0} by the method's own tolerance), limit {:.0}: {}",
        flux.index,
        flux.span[0],
        flux.span[1],
        magnet::FLUX_INDEX_LIMIT,
        match (flux.hazardous(), flux.uncertain()) {
            (_, true) => "too near to tell; have it measured",
            (true, _) => "over it: a loose one that can be swallowed is a hazard to life",
            (false, _) => "under it; two together are stronger than one, so keep them from children all the same",
        }
    );
    println!(
        "  computed, no test report: what may be sold to whom is for local law and an accredited laboratory to say"
    );
    Ok(Outcome::Well)
}
