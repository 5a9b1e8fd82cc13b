//! `dialwright magnets`: how each wheel is held, the map, the chooser and the pole plan.

use crate::Outcome;
use crate::args::{Magnets, On};
use crate::check::look;
use crate::talk::{Talk, write_picture};
use dial::magnets::Verdict;

/// Runs the command.
pub fn run(args: &Magnets) -> Result<Outcome, Talk> {
    if let Some(path) = &args.pairs {
        return crate::pairs::pairs(path, args.json);
    }
    if let Some(said) = &args.disc {
        return crate::pairs::disc(said, args.json);
    }
    let file = args.file.clone().unwrap_or_default();
    let looked = look(&On { file, workshop: args.workshop.clone(), json: args.json }, &[])?;
    let workshop = &looked.loaded.workshop;
    if let Some(path) = &args.picture {
        let svg = press::magnet_map(&looked.dial, workshop)
            .ok_or_else(|| Talk::Plain("there is no map of magnets that cannot be: see `dialwright check`".into()))?;
        write_picture(path, svg)?;
    }
    if args.json {
        let mut report = looked.report()["magnets"].clone();
        report["chooser"] = press::chooser_report(&looked.dial, workshop);
        report["map"] = press::map_report(&looked.dial, workshop);
        println!("{report:#}");
    } else {
        print!("{}", press::magnets_page(&looked.dial, workshop));
    }
    let well = looked.dial.held.iter().flatten().all(|held| held.likely.verdict == Verdict::EasyAndKeeps);
    Ok(if well { Outcome::Well } else { Outcome::Refused })
}
