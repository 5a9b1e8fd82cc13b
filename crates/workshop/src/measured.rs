//! A stock's looks as they were measured here, written into the maker's file; comments and order of all else stay.

use crate::{STARTER, below, opening_comments};
use measure::Interval;
use sight::Srgb;
use std::fmt;
use toml_edit::{DocumentMut, InlineTable, Item, Table, TableLike, TomlError, Value};

/// What was measured of a stock, and how.
#[derive(Clone, Debug, PartialEq)]
pub struct MeasuredLook {
    /// Colour of its face.
    pub face: Srgb,
    /// Colour of the floor of the engraving.
    pub engraved: Srgb,
    /// Depth of that engraving, in mm.
    pub depth: f64,
    /// Where the contrast ratio of the two lies, 1 to 21.
    pub contrast: Interval,
    /// The day, as 2026-05-01.
    pub on: String,
    /// How it was measured, in a few words: step, power.
    pub how: String,
    /// File of the photo.
    pub photo: String,
}

/// Why a measured look cannot be written.
#[derive(Debug)]
pub enum NotStored {
    /// The file is no TOML.
    Unreadable(TomlError),
    /// Neither the file nor the starter workshop has a stock of that name.
    NoStock(String),
    /// Something else than tables stands where stocks are described.
    NoTable(String),
}

impl fmt::Display for NotStored {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        match self {
            NotStored::Unreadable(error) => {
                write!(f, "the file cannot be read, so nothing is written into it: {error}")
            }
            NotStored::NoStock(name) => write!(
                f,
                "neither this file nor the starter workshop has a stock “{name}”, and a measured look alone does not make one: describe it first, as `[stocks.\"{name}\"]` with its layers; `dialwright list stocks` shows what there is"
            ),
            NotStored::NoTable(path) => {
                write!(f, "`{path}` is not a table of the file, so nothing can be written into it")
            }
        }
    }
}

impl std::error::Error for NotStored {}

/// The file's text with a measured look in one of its stocks. A stock of the starter workshop that the file does not have is
/// copied into it first, whole.
///
/// # Errors
/// A text that is no TOML, a name that no stock has.
pub fn store_look(text: &str, stock: &str, look: &MeasuredLook) -> Result<String, NotStored> {
    let mut document: DocumentMut = text.parse().map_err(NotStored::Unreadable)?;
    let opening = opening_comments(&mut document);
    let stocks = document.entry("stocks").or_insert_with(|| {
        let mut stocks = Table::new();
        stocks.set_implicit(true);
        Item::Table(stocks)
    });
    let inline = stocks.is_inline_table();
    let stocks = stocks.as_table_like_mut().ok_or_else(|| NotStored::NoTable("stocks".into()))?;
    if !stocks.contains_key(stock) {
        let starter = of_starter(stock).ok_or_else(|| NotStored::NoStock(stock.to_owned()))?;
        stocks.insert(stock, if inline { Item::Value(Value::InlineTable(in_line(starter))) } else { starter.into() });
    }
    let own = stocks.get_mut(stock).and_then(Item::as_table_like_mut);
    write(own.ok_or_else(|| NotStored::NoTable(format!("stocks.{stock}")))?, look);
    Ok(below(opening, &document.to_string()))
}

/// A stock of the starter workshop, as its file says it.
fn of_starter(stock: &str) -> Option<Table> {
    let starter: DocumentMut = STARTER.parse().ok()?;
    let mut table = starter.get("stocks")?.get(stock)?.as_table()?.clone();
    // Written after whatever the maker's file ends with, and not where it stood in the starter's.
    table.set_position(None);
    Some(table)
}

fn in_line(table: Table) -> InlineTable {
    table.into_inline_table()
}

fn write(stock: &mut dyn TableLike, look: &MeasuredLook) {
    // Rounded outwards, so that no contrast is called better than it was measured.
    let down = |ratio: f64| ((ratio * 100.0 + 1e-6).floor() / 100.0).max(1.0);
    let up = |ratio: f64| ((ratio * 100.0 - 1e-6).ceil() / 100.0).min(21.0);
    let said: [(&str, Value); 7] = [
        ("face", look.face.to_string().into()),
        ("engraved", look.engraved.to_string().into()),
        ("engraved_at", format!("{} mm", (look.depth * 1000.0).round() / 1000.0).into()),
        ("contrast_least", down(look.contrast.low).into()),
        ("contrast_most", up(look.contrast.high).into()),
        ("looks", format!("measured here on {}: {}", look.on, look.how).into()),
        ("photo", look.photo.as_str().into()),
    ];
    for (key, mut value) in said {
        if let Some(old) = stock.get(key).and_then(Item::as_value) {
            *value.decor_mut() = old.decor().clone();
            if let Some(place) = stock.get_mut(key) {
                *place = Item::Value(value);
            }
        } else {
            stock.insert(key, Item::Value(value));
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use process::Side;

    fn look() -> MeasuredLook {
        MeasuredLook {
            face: "#e0c8a8".parse().expect("a colour"),
            engraved: "#403020".parse().expect("a colour"),
            depth: 0.4,
            contrast: Interval::between(7.126, 8.5),
            on: "2026-05-01".into(),
            how: "step 3 of 6, power 24 %".into(),
            photo: "maple.jpg".into(),
        }
    }

    fn stock(text: &str, name: &str) -> process::Stock {
        let all = crate::read(text).unwrap_or_else(|mistakes| panic!("{text}\n{mistakes:?}"));
        all.stocks.into_iter().find(|stock| stock.name == name).expect("there")
    }

    /// Into an empty file, a file with other stocks, one that describes this stock in a table or in a line: comments stay, what
    /// was written of layers stays, and the reader of workshop files finds what was measured.
    #[test]
    fn a_measured_look_is_found_again_and_the_rest_stays() {
        let table = "# mine\n[machine]\nname = \"long bed\"   # the old one\n\n[stocks.\"maple 3 mm\"]\n# planed\nlayers = [{ material = \"maple\", thickness = \"2.8 mm\" }]\nkerf = \"0.1 mm\"\nface = \"#ffffff\"   # a guess\n\n[stocks.other]\nlayers = [{ material = \"cork\", thickness = \"2 mm\" }]\nkerf = \"0.2 mm\"\n";
        let line = "stocks = { \"maple 3 mm\" = { layers = [{ material = \"maple\", thickness = \"2.8 mm\" }], kerf = \"0.1 mm\" } }\n";
        let other = "[magnets]\n[stocks]\n";
        for (text, thickness) in [("", 3.0), (table, 2.8), (line, 2.8), (other, 3.0), ("stocks = {}\n", 3.0)] {
            let stored = store_look(text, "maple 3 mm", &look()).expect("stored");
            let maple = stock(&stored, "maple 3 mm");
            assert_eq!(maple.thickness(), thickness, "{stored}");
            assert_eq!(maple.colour(Side::Face), look().face);
            assert_eq!(maple.engraved_at(0.4)[0].colour, look().engraved);
            let contrast = maple.surfaces.contrast.expect("measured");
            assert_eq!((contrast.low, contrast.high), (7.12, 8.5));
            assert!(
                maple.surfaces.measured() && maple.surfaces.source.ends_with("2026-05-01: step 3 of 6, power 24 %")
            );
            assert_eq!(maple.surfaces.photo.as_deref(), Some("maple.jpg"));
            let comments = |text: &str| text.matches('#').count() - text.matches("\"#").count();
            assert!(comments(&stored) >= comments(text), "{stored}");
            assert_eq!(store_look(&stored, "maple 3 mm", &look()).expect("again"), stored, "twice is once");
        }
        let stored = store_look("# of my shop\n", "maple 3 mm", &look()).expect("stored");
        assert!(stored.starts_with("# of my shop\n\n[stocks"), "{stored}");
    }

    #[test]
    fn what_cannot_be_stored_says_why() {
        let said = |text: &str, name: &str| store_look(text, name, &look()).expect_err("refused").to_string();
        assert!(said("", "moon rock").contains("moon rock"));
        assert!(said("stocks = 3", "maple 3 mm").contains("`stocks`"));
        assert!(said("[stocks]\n\"maple 3 mm\" = 3", "maple 3 mm").contains("stocks.maple 3 mm"));
        assert!(said("[stocks", "maple 3 mm").contains("cannot be read"));
    }
}
