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
use std::any::Any;
use std::io::Write;
use std::process::ExitCode;

/// How a command ended.
pub enum Outcome {
    /// All is well.
    Well,
    /// Something is to be mended before the dial can be made: exit code 1.
    Refused,
}

fn main() -> ExitCode {
    std::panic::set_hook(Box::new(|fault| match Printing::of(fault.payload()) {
        Some(Printing::NobodyReads) => {}
        Some(Printing::Failed(why)) => {
            let _ = writeln!(std::io::stderr(), "what was to be said could not be written: {why}");
        }
        None => {
            let mut out = std::io::stderr();
            let _ = writeln!(out, "this is a fault of the program, not of your dial ({fault})");
            let _ = writeln!(out, "nothing was changed; please report it, with the dial file");
        }
    }));
    match std::panic::catch_unwind(run) {
        Ok(code) => code,
        Err(fault) => match Printing::of(fault.as_ref()) {
            Some(Printing::NobodyReads) => ExitCode::from(NOBODY_READS),
            Some(Printing::Failed(_)) => ExitCode::from(2),
            None => ExitCode::from(3),
        },
    }
}

/// What shells show for a program that wrote to a pipe whose reader had gone: 128 + SIGPIPE.
const NOBODY_READS: u8 = 141;

/// Why printing failed. The standard library's `print` knows no other way to say so than to panic, and a reader who has
/// seen enough (`| head`) is no fault of the program.
enum Printing {
    /// The reader of the pipe has gone.
    NobodyReads,
    /// Something else, as a full disk: in the system's words.
    Failed(String),
}

impl Printing {
    fn of(panic: &(dyn Any + Send)) -> Option<Printing> {
        let text = panic.downcast_ref::<String>()?;
        let why =
            text.strip_prefix("failed printing to stdout: ").or(text.strip_prefix("failed printing to stderr: "))?;
        // EPIPE; and on Windows ERROR_NO_DATA and ERROR_BROKEN_PIPE.
        let gone = ["(os error 32)", "(os error 232)", "(os error 109)"].iter().any(|end| why.ends_with(end));
        Some(if gone { Printing::NobodyReads } else { Printing::Failed(why.to_owned()) })
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
