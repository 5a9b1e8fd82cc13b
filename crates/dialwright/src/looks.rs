//! `dialwright looks`: what can be read from where, every pairing of stocks, and what people picked.

use crate::Outcome;
use crate::args::Looks;
use crate::check::look;
use crate::load;
use crate::talk::{Talk, write_picture};
use desk::store::{NoVote, VotesFile};
use dial::looks::{Pairing, pairings};
use process::Vote;

/// Runs the command.
pub fn run(args: &Looks) -> Result<Outcome, Talk> {
    let looked = look(&args.on, &[])?;
    let mut workshop = looked.loaded.workshop.clone();
    let ranked = pairings(&looked.dial, &workshop);
    if let Some(best_first) = &args.vote {
        workshop.votes = vote(args, best_first, &ranked)?;
    }
    let workshop = &workshop;
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

/// Writes a vote on pairings of the shelf, and returns all votes.
fn vote(args: &Looks, best_first: &[String], ranked: &[Pairing]) -> Result<Vec<Vote>, Talk> {
    if let Some(unknown) = best_first.iter().find(|name| !ranked.iter().any(|one| one.name() == **name)) {
        return Err(Talk::Plain(format!(
            "there is no pairing “{unknown}” on the shelf: write it as \"{}\", cover first",
            ranked.first().map(Pairing::name).unwrap_or_default()
        )));
    }
    let file = load::votes_place(args.on.workshop.as_deref(), &args.on.file);
    VotesFile::at(&file).add(best_first).map_err(|why| match why {
        NoVote::Mistakes { text, mistakes } => Talk::Mistakes { file, text, mistakes },
        NoVote::Io(error) => Talk::Plain(format!("{} cannot be written: {error}", file.display())),
        NoVote::NoSuch => Talk::Plain("there is no such vote".into()),
    })
}
