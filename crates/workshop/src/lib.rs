//! What the maker's workshop has, as a file says it: machine and stocks.

use dial::Mistake;
use dial::design::{self, parameters::WORKSHOP_FILE};
use process::{Machine, StepColours, Workshop};

/// The starter workshop's file.
pub const STARTER: &str = include_str!("starter.toml");

/// The starter workshop.
pub fn starter() -> Workshop {
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

/// The reference page of the workshop file.
pub fn reference_page() -> String {
    design::page_of(
        "The workshop file",
        "A file `workshop.toml` beside a dial file, or in a folder above it, tells of the machine and the stocks on the shelf.\nWhat it does not say is as in the starter workshop.",
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
        for stock in &all.stocks {
            assert!(stock.layers.iter().all(|layer| layer.material.is_some()), "{}", stock.name);
            assert!(
                stock.thinnest() > 0.0 && stock.thinnest() < stock.thickness() && stock.kerf.x > 0.0,
                "{}",
                stock.name
            );
        }
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
