//! Dialwright: counter dials for tabletop games, from one dial file to cut sheets.

mod args;
mod brief;
mod card;
mod check;
mod choice;
mod contrast;
mod desk;
mod fits;
mod list;
mod load;
mod looks;
mod magnets;
mod make;
mod measured;
mod new;
mod pairs;
mod reference;
mod talk;
mod turn;
#[cfg(feature = "workbook")]
mod workbook;

use args::{Arguments, Command};
use clap::Parser;
use std::process::ExitCode;

/// How a command ended.
pub enum Outcome {
    /// All is well.
    Well,
    /// Something is to be mended before the dial can be made: exit code 1.
    Refused,
}

fn main() -> ExitCode {
    std::panic::set_hook(Box::new(|fault| {
        eprintln!("this is a fault of the program, not of your dial ({fault})");
        eprintln!("nothing was changed; please report it, with the dial file");
    }));
    match std::panic::catch_unwind(run) {
        Ok(code) => code,
        Err(_) => ExitCode::from(3),
    }
}

fn run() -> ExitCode {
    let command = Arguments::parse().command.unwrap_or(Command::Desk(args::Desk { place: ".".into(), no_open: false }));
    let done = match command {
        Command::Desk(args) => desk::run(&args),
        Command::New(args) => new::run(&args),
        Command::Check(args) => check::run(&args),
        Command::Turn(args) => turn::run(&args),
        Command::Magnets(args) => magnets::run(&args),
        Command::Contrast(args) => contrast::run(&args),
        Command::Looks(args) => looks::run(&args),
        Command::Fits(args) => fits::run(&args),
        Command::Card(args) => card::run(&args),
        Command::Choice(args) => choice::run(&args),
        Command::Make(args) => make::run(&args),
        #[cfg(feature = "workbook")]
        Command::Workbook(args) => workbook::run(&args),
        Command::List(args) => list::run(&args),
        Command::Reference { into } => reference::run(&into),
    };
    match done {
        Ok(Outcome::Well) => ExitCode::SUCCESS,
        Ok(Outcome::Refused) => ExitCode::from(1),
        Err(talk) => {
            talk::complain(&talk);
            ExitCode::from(2)
        }
    }
}
