//! What the maker's workshop has, as a file says it: machine, stocks and magnets, and what its hands find easy.

mod disk;
mod measured;
mod opening;

pub use disk::{Settle, put};
pub use measured::{MeasuredLook, NotStored, store_look};
pub use opening::{below, opening_comments};

use dial::Mistake;
use dial::design::{
    self,
    parameters::{VOTES_FILE, WORKSHOP_FILE},
};
use process::{Feel, Machine, StepColours, Vote, Workshop};
use std::sync::OnceLock;

/// The starter workshop's file.
pub const STARTER: &str = include_str!("starter.toml");

/// The starter workshop.
pub fn starter() -> Workshop {
    // Asked for at every step of a drag, and always the same.
    static READ: OnceLock<Workshop> = OnceLock::new();
    READ.get_or_init(read_starter).clone()
}

fn read_starter() -> Workshop {
    let bare = || Workshop {
        machine: Machine {
            name: String::new(),
            bed_width: 400.0,
            bed_height: 300.0,
            colours: StepColours {
                engrave: String::new(),
                pocket: String::new(),
                cut_inside: String::new(),
                cut_outside: String::new(),
            },
        },
        stocks: Vec::new(),
        magnets: Vec::new(),
        feel: Feel::USUAL,
        votes: Vec::new(),
    };
    design::read_workshop(STARTER, &bare()).unwrap_or_else(|_| bare())
}

/// Reads a maker's workshop file; what it does not say is as in the starter workshop.
///
/// # Errors
/// All mistakes in it, each with its place.
pub fn read(text: &str) -> Result<Workshop, Vec<Mistake>> {
    design::read_workshop(text, &starter())
}

/// Reads a file of votes on pairings of stocks.
///
/// # Errors
/// All mistakes in it, each with its place.
pub fn read_votes(text: &str) -> Result<Vec<Vote>, Vec<Mistake>> {
    design::read_votes(text)
}

/// The reference page of the file of votes.
pub fn votes_page() -> String {
    design::page_of(
        "The file of votes",
        "A file `votes.toml` beside a dial file, or in a folder above it, keeps which pairings of stocks people picked: one against one, or ranked.\n`dialwright looks` ranks them, with how sure that is; the desk and `dialwright looks --vote` write them down.\n\n```toml\n[[vote]]\nbest_first = [\"bamboo 3 mm / maple 3 mm\", \"walnut plywood 3 mm / maple 3 mm\"]\ntimes = 3\n```",
        VOTES_FILE,
    )
}

/// The schema of the file of votes.
pub fn votes_schema() -> serde_json::Value {
    design::schema_of("A file of votes", VOTES_FILE)
}

/// The reference page of the workshop file.
pub fn reference_page() -> String {
    design::page_of(
        "The workshop file",
        "A file `workshop.toml` beside a dial file, or in a folder above it, tells of the machine, the stocks and magnets on the shelf, and what your hand finds easy.\nWhat it does not say is as in the starter workshop.",
        WORKSHOP_FILE,
    )
}

/// The schema of the workshop file.
pub fn schema() -> serde_json::Value {
    design::schema_of("A workshop file", WORKSHOP_FILE)
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn the_starter_reads_without_a_mistake() {
        let all = design::read_workshop(STARTER, &starter()).expect("reads");
        assert!(all.stocks.len() >= 12);
        assert_eq!(all.feel, Feel::USUAL);
        let (thinnest, widest) = (|of: f64, one: f64| of.min(one), |of: f64, one: f64| of.max(one));
        let across = |by: fn(f64, f64) -> f64| all.magnets.iter().map(|m| m.diameter).reduce(by);
        assert_eq!((across(thinnest), across(widest)), (Some(3.0), Some(10.0)));
        assert!(all.magnets.iter().all(|magnet| magnet.price.is_some() && magnet.remanence.low > 1.1));
        for stock in &all.stocks {
            assert!(stock.layers.iter().all(|layer| layer.material.is_some()), "{}", stock.name);
            assert!(
                stock.thinnest() > 0.0 && stock.thinnest() < stock.thickness() && stock.kerf.x > 0.0,
                "{}",
                stock.name
            );
        }
    }

    /// The table says what a limit is when nothing is written: the same as the code.
    #[test]
    fn the_limits_in_the_table_are_those_that_hold() {
        let written: String = dial::design::table::all(WORKSHOP_FILE)
            .filter_map(|param| match (param.path.strip_prefix("feel."), param.default) {
                (Some(key), dial::design::table::Default::Fixed(text)) => Some(match text.parse::<f64>() {
                    Ok(bare) => format!("{key} = {bare}\n"),
                    Err(_) => format!("{key} = \"{text}\"\n"),
                }),
                _ => None,
            })
            .collect();
        let other = Feel { turn_least: 9.0, turn_stiff: 9.0, turn_most: 9.0, shake: 9.0, finger: 9.0 };
        let usual = Workshop { feel: other, ..starter() };
        let read = design::read_workshop(&format!("[feel]\n{written}"), &usual).expect("reads");
        assert_eq!(read.feel, Feel::USUAL);
    }

    #[test]
    fn a_makers_stock_takes_the_place_of_a_starter_stock() {
        let mine = read("[machine]\nbed_width = \"600 mm\"\n[stocks.\"birch plywood 3 mm\"]\nlayers = [{ material = \"birch plywood\", thickness = \"2.9 mm\" }]\nkerf_x = \"0.1 mm\"\nkerf_y = \"0.2 mm\"\n").expect("reads");
        let stock = mine.stocks.iter().find(|stock| stock.name == "birch plywood 3 mm").expect("there");
        assert_eq!((stock.thickness(), stock.kerf.x, stock.kerf.y), (2.9, 0.1, 0.2));
        assert_eq!((mine.machine.bed_width, mine.machine.bed_height), (600.0, 300.0));
        assert_eq!(mine.stocks.len(), starter().stocks.len());
    }
}
