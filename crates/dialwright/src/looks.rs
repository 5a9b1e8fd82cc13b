//! `dialwright looks`: what can be read from where, every pairing of stocks, and what people picked.

use crate::Outcome;
use crate::args::Looks;
use crate::check::look;
use crate::talk::{Talk, write_picture};
use dial::looks::pairings;

/// Runs the command.
pub fn run(args: &Looks) -> Result<Outcome, Talk> {
    let looked = look(&args.on, &[])?;
    let workshop = &looked.loaded.workshop;
    let ranked = pairings(&looked.dial, workshop);
    if let Some(path) = &args.picture {
        write_picture(path, press::pairings_board(&looked.dial, workshop, &ranked))?;
    }
    if let Some(path) = &args.seen {
        let svg = press::window_seen(&looked.dial)
            .ok_or_else(|| Talk::Plain("nobody must read this dial: see `reading.seats`".into()))?;
        write_picture(path, svg)?;
    }
    if args.on.json {
        println!("{:#}", press::looks_report(&looked.dial, workshop, &ranked));
    } else {
        print!("{}", press::looks_page(&looked.dial, workshop, &ranked));
    }
    let unread = [
        "contrast of the engraving",
        "height as it is seen",
        "hidden by the cover's thickness",
        "strokes as they are seen",
    ];
    let mends = looked.dial.findings.iter().filter(|one| one.severity != dial::findings::Severity::Note);
    let well = !mends.into_iter().any(|one| unread.contains(&one.rule));
    Ok(if well { Outcome::Well } else { Outcome::Refused })
}
