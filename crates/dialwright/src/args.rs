//! What can be said on the command line.

use clap::{Args, Parser, Subcommand};
use std::path::PathBuf;

/// Counter dials for tabletop games, from one dial file to cut sheets.
#[derive(Debug, Parser)]
#[command(
    name = "dialwright",
    version,
    about,
    after_help = "Example:\n  dialwright new harbour --counter \"provisions 0..24\" --counter \"lamp oil 0..15\"\n  dialwright make harbour/dial.toml"
)]
pub struct Arguments {
    /// What to do; without a command the desk is opened on this folder.
    #[command(subcommand)]
    pub command: Option<Command>,
}

/// What to do.
#[derive(Debug, Subcommand)]
pub enum Command {
    /// Open the desk: a page in your browser where the dial is seen, turned by hand and mended.
    #[command(
        after_help = "Example:\n  dialwright desk harbour/dial.toml\n  dialwright desk ~/dials --no-open\n\nThe page is served on this machine alone, to whoever has the link. Stop it with Ctrl-C; every change is on disk."
    )]
    Desk(Desk),
    /// Start a new dial: a folder with a commented dial file that already passes.
    #[command(
        after_help = "Example:\n  dialwright new harbour --counter \"provisions 0..24\" --counter \"lamp oil 0..15\"\n  dialwright new weather --counter \"sky: calm, breeze, gale\" --stock \"bamboo 3 mm\""
    )]
    New(New),
    /// Look a dial over: what drives its size, and every finding with how to mend it.
    #[command(
        after_help = "Example:\n  dialwright check harbour/dial.toml\n  dialwright check harbour/dial.toml --json"
    )]
    Check(Check),
    /// Turn every wheel through its window, and say how much each stop forgives.
    #[command(
        after_help = "Example:\n  dialwright turn harbour/dial.toml\n  dialwright turn harbour/dial.toml --picture strip.png"
    )]
    Turn(Turn),
    /// Magnets: how each wheel turns and keeps its number, which pairs on the shelf would do, which way round each goes.
    #[command(
        after_help = "Example:\n  dialwright magnets harbour/dial.toml\n  dialwright magnets harbour/dial.toml --picture map.png\n  dialwright magnets --disc 6x2:N42 --json\n  dialwright magnets --pairs pairs.csv --json"
    )]
    Magnets(Magnets),
    /// Looks: what can be read from where, which pairing of stocks is the one, and what people picked.
    #[command(
        after_help = "Example:\n  dialwright looks harbour/dial.toml\n  dialwright looks harbour/dial.toml --picture board.png --seen window.png\n  dialwright looks harbour/dial.toml --json"
    )]
    Looks(Looks),
    /// Two colours against each other: contrast ratio, L*a*b*, colour difference, and which levels they pass.
    #[command(
        after_help = "Example:\n  dialwright contrast '#4a3020' '#efdcb8'\n  dialwright contrast 777777 ffffff --json"
    )]
    Contrast(Contrast),
    /// A family of dials: which wheel fits which place of which cover, and why not.
    #[command(after_help = "Example:\n  dialwright fits harbour/dial.toml coast/dial.toml")]
    Fits(Fits),
    /// Measure a material by photo: print the reference card, cut the sample for it, read a photo of both.
    #[command(
        after_help = "Example:\n  dialwright card print --to card.pdf\n  dialwright card sample harbour/dial.toml --to sample.svg\n  dialwright card read photo.jpg"
    )]
    Card(Card),
    /// Turn a client's choice code from the turning page back into a pairing of materials.
    #[command(after_help = "Example:\n  dialwright choice 7KQ-2M4X --on harbour/dial.toml")]
    Choice(Choice),
    /// Make the job folder: sheets for the machine, tickets, pictures and figures.
    #[command(
        after_help = "Example:\n  dialwright make harbour/dial.toml\n  dialwright make harbour/dial.toml --to ~/jobs/harbour"
    )]
    Make(Make),
    /// Set the workbook as a PDF: all documents, or one alone.
    #[cfg(feature = "workbook")]
    #[command(
        after_help = "Documents: dial, paper-proof, turn-test, pairings, magnets, tickets, assembly, hand-over, materials\n\nExample:\n  dialwright workbook harbour/dial.toml\n  dialwright workbook harbour/dial.toml --document paper-proof --paper letter --to proof.pdf"
    )]
    Workbook(WorkbookArgs),
    /// List the stocks of the workshop, the built-in symbols, or the parameters of a dial file.
    #[command(after_help = "Example:\n  dialwright list stocks --picture shelf.png\n  dialwright list symbols --json")]
    List(List),
    /// Write the reference pages and schemas that are generated from the parameter tables.
    #[command(hide = true, after_help = "Example:\n  dialwright reference --into docs")]
    Reference {
        /// Folder to write into.
        #[arg(long)]
        into: PathBuf,
    },
}

/// `dialwright desk`.
#[derive(Debug, Args)]
pub struct Desk {
    /// A dial file, or a folder with dials.
    #[arg(default_value = ".")]
    pub place: PathBuf,
    /// Print the opening link and serve, but open no browser.
    #[arg(long)]
    pub no_open: bool,
}

/// A dial file and the workshop it is made in.
#[derive(Debug, Args)]
pub struct On {
    /// The dial file.
    pub file: PathBuf,
    /// The workshop file; without it `workshop.toml` beside the dial file or in the folders above it, else the starter workshop.
    #[arg(long)]
    pub workshop: Option<PathBuf>,
    /// Print the figures as JSON; names carry their units.
    #[arg(long)]
    pub json: bool,
}

/// `dialwright check`.
#[derive(Debug, Args)]
pub struct Check {
    /// The dial.
    #[command(flatten)]
    pub on: On,
    /// Another dial that this one's wheels and covers should fit; may be given several times.
    #[arg(long)]
    pub set: Vec<PathBuf>,
}

/// `dialwright magnets`.
#[derive(Debug, Args)]
pub struct Magnets {
    /// The dial file.
    #[arg(required_unless_present_any = ["pairs", "disc"], conflicts_with_all = ["pairs", "disc"])]
    pub file: Option<PathBuf>,
    /// A table of pairs to compute instead of a dial: d1_mm,t1_mm,br1_t,d2_mm,t2_mm,br2_t,gap_mm,offset_mm; `-` reads standard input.
    #[arg(long, conflicts_with = "disc")]
    pub pairs: Option<PathBuf>,
    /// One disc to compute instead of a dial, as 6x2:N42 or 6x2:1.30T.
    #[arg(long)]
    pub disc: Option<String>,
    /// The workshop file.
    #[arg(long)]
    pub workshop: Option<PathBuf>,
    /// Also draw the map into this file (.svg or .png).
    #[arg(long, conflicts_with_all = ["pairs", "disc"])]
    pub picture: Option<PathBuf>,
    /// Print the figures as JSON; names carry their units.
    #[arg(long)]
    pub json: bool,
}

/// `dialwright looks`.
#[derive(Debug, Args)]
pub struct Looks {
    /// The dial.
    #[command(flatten)]
    pub on: On,
    /// Also draw the board of all pairings into this file (.svg or .png).
    #[arg(long)]
    pub picture: Option<PathBuf>,
    /// Also draw the worst window as each reader sees it into this file (.svg or .png).
    #[arg(long)]
    pub seen: Option<PathBuf>,
    /// First write a vote into votes.toml: pairings as "cover / wheels", the one that was picked first.
    #[arg(long, num_args = 2.., value_name = "PAIRING")]
    pub vote: Option<Vec<String>>,
}

/// `dialwright contrast`.
#[derive(Debug, Args)]
pub struct Contrast {
    /// Colour of the mark, as #rrggbb; a shell may want it in quotes, or without the #.
    pub mark: String,
    /// Colour of what it stands on.
    pub ground: String,
    /// Print the figures as JSON.
    #[arg(long)]
    pub json: bool,
}

/// `dialwright fits`.
#[derive(Debug, Args)]
pub struct Fits {
    /// The dials: every wheel is tried in every place of every cover.
    #[arg(required = true)]
    pub files: Vec<PathBuf>,
    /// The workshop file.
    #[arg(long)]
    pub workshop: Option<PathBuf>,
    /// Print as JSON.
    #[arg(long)]
    pub json: bool,
}

/// `dialwright card`.
#[derive(Debug, Args)]
pub struct Card {
    /// What to do.
    #[command(subcommand)]
    pub does: CardDoes,
    /// Power steps of the sample, 5 to 8; the same for card, sample and photo.
    #[arg(long, default_value_t = 6, global = true)]
    pub steps: usize,
    /// For US Letter instead of A4.
    #[arg(long, global = true)]
    pub letter: bool,
    /// Print the figures, or what was written, as JSON.
    #[arg(long, global = true)]
    pub json: bool,
}

/// What is done with the card.
#[derive(Debug, Subcommand)]
pub enum CardDoes {
    /// Write the card to be printed at full size.
    #[command(after_help = "Example:\n  dialwright card print --to card.pdf")]
    Print {
        /// The file (.pdf, .svg or .png).
        #[arg(long)]
        to: PathBuf,
    },
    /// Write the cut file of the sample: patches and this dial's own marks at several powers.
    #[command(after_help = "Example:\n  dialwright card sample harbour/dial.toml --to sample.svg")]
    Sample {
        /// The dial file.
        file: PathBuf,
        /// The workshop file.
        #[arg(long)]
        workshop: Option<PathBuf>,
        /// The stock; without it the wheels'.
        #[arg(long)]
        stock: Option<String>,
        /// The file (.svg or .png).
        #[arg(long)]
        to: PathBuf,
    },
    /// Read a phone's photo of card and sample.
    #[command(
        after_help = "Example:\n  dialwright card read photo.jpg --json\n  dialwright card read photo.jpg --store \"maple 3 mm\" --power \"22 %\""
    )]
    Read {
        /// The photo (JPEG or PNG).
        photo: PathBuf,
        /// Write what was measured into this stock, with the day and the photo's name.
        #[arg(long, value_name = "STOCK")]
        store: Option<String>,
        /// The file that the stock is written into, a workshop's or a dial's; without it the nearest `workshop.toml` here or in the folders above, or a new one here.
        #[arg(long, value_name = "FILE", requires = "store")]
        into: Option<PathBuf>,
        /// Which step you will engrave with; without it the gentlest that reads as well as the best.
        #[arg(long, requires = "store")]
        step: Option<usize>,
        /// Depth of the engraving at that step.
        #[arg(long, requires = "store", default_value = "0.3 mm")]
        depth: String,
        /// Power and speed of that step, in your own words.
        #[arg(long, requires = "store")]
        power: Option<String>,
        /// Reflectance of your paper, 0 to 1, if you have measured it.
        #[arg(long)]
        paper_white: Option<f64>,
        /// Reflectance of your printer's solid black, if you have measured it.
        #[arg(long)]
        ink_black: Option<f64>,
    },
}

/// `dialwright choice`.
#[derive(Debug, Args)]
pub struct Choice {
    /// The code, as the client reads it out.
    pub code: String,
    /// The dial file that the page was made from: its own stocks count too, and its workshop is used.
    #[arg(long)]
    pub on: Option<PathBuf>,
    /// The workshop file.
    #[arg(long)]
    pub workshop: Option<PathBuf>,
    /// Print as JSON.
    #[arg(long)]
    pub json: bool,
}

/// `dialwright turn`.
#[derive(Debug, Args)]
pub struct Turn {
    /// The dial.
    #[command(flatten)]
    pub on: On,
    /// Also draw the strip of all windows into this file (.svg or .png).
    #[arg(long)]
    pub picture: Option<PathBuf>,
}

/// `dialwright make`.
#[derive(Debug, Args)]
pub struct Make {
    /// The dial.
    #[command(flatten)]
    pub on: On,
    /// The job folder; without it `<name>-job` beside the dial file.
    #[arg(long)]
    pub to: Option<PathBuf>,
    /// Paper of the workbook: a4 or letter; without it a4, or letter for a dial that is shown in inches.
    #[cfg(feature = "workbook")]
    #[arg(long)]
    pub paper: Option<workbook::Paper>,
}

/// `dialwright workbook`.
#[cfg(feature = "workbook")]
#[derive(Debug, Args)]
pub struct WorkbookArgs {
    /// The dial.
    #[command(flatten)]
    pub on: On,
    /// One document alone.
    #[arg(long)]
    pub document: Option<workbook::Document>,
    /// a4 or letter; without it a4, or letter for a dial that is shown in inches.
    #[arg(long)]
    pub paper: Option<workbook::Paper>,
    /// The file; without it `<name>-workbook.pdf` beside the dial file, or the document's name for one alone.
    #[arg(long)]
    pub to: Option<PathBuf>,
}

/// `dialwright new`.
#[derive(Debug, Args)]
pub struct New {
    /// Name of the dial, and of the folder that is made.
    pub name: String,
    /// A counter: its name and what it counts, as "provisions 0..24", "score -5..20 by 5" or "sky: calm, breeze, gale".
    #[arg(long = "counter", required = true)]
    pub counters: Vec<String>,
    /// Stock of cover and wheels.
    #[arg(long, default_value = "birch plywood 3 mm")]
    pub stock: String,
    /// Print what was made as JSON.
    #[arg(long)]
    pub json: bool,
}

/// `dialwright list`.
#[derive(Debug, Args)]
pub struct List {
    /// What to list.
    #[arg(value_enum)]
    pub what: Listed,
    /// Draw the stocks as they look, into this file (.svg or .png).
    #[arg(long, value_name = "FILE")]
    pub picture: Option<PathBuf>,
    /// The workshop file.
    #[arg(long)]
    pub workshop: Option<PathBuf>,
    /// Print as JSON.
    #[arg(long)]
    pub json: bool,
}

/// Things that can be listed.
#[derive(Clone, Copy, Debug, PartialEq, Eq, clap::ValueEnum)]
pub enum Listed {
    /// The stocks of the workshop.
    Stocks,
    /// The built-in symbols.
    Symbols,
    /// The parameters of a dial file.
    Parameters,
}
