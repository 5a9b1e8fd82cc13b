//! What a photo told of a stock, kept in the maker's file.

use crate::load;
use crate::talk::Talk;
use card::Reading;
use std::fs;
use std::io::ErrorKind;
use std::path::{Path, PathBuf};
use workshop::{MeasuredLook, Settle};

/// What is to be kept of a reading.
#[derive(Clone, Debug)]
pub struct Wish {
    /// The stock's name.
    pub stock: String,
    /// The step that will be engraved with, counted from 1; without it the gentlest that reads as well as the best.
    pub step: Option<usize>,
    /// Depth of the engraving at that step, in mm.
    pub depth: f64,
    /// Power and speed of that step, in the maker's words.
    pub power: Option<String>,
    /// The photo's name.
    pub photo: String,
}

/// What is kept of a reading, today.
///
/// # Errors
/// A step that the card does not have.
pub fn look(reading: &Reading, wish: &Wish) -> Result<MeasuredLook, String> {
    let steps = reading.steps.len();
    let at = match wish.step {
        None => reading.gentlest_as_good(),
        Some(step) if (1..=steps).contains(&step) => step - 1,
        Some(step) => return Err(format!("there is no step {step}: this card has steps 1 to {steps}")),
    };
    let step = &reading.steps[at];
    let power = wish.power.as_ref().map_or(String::new(), |power| format!(", {power}"));
    Ok(MeasuredLook {
        face: step.face.colour,
        engraved: step.engraved.colour,
        depth: wish.depth,
        contrast: step.contrast.within,
        on: jiff::Zoned::now().date().to_string(),
        how: format!("step {} of {steps}{power}", at + 1),
        photo: wish.photo.clone(),
    })
}

/// Writes it into a workshop's or a dial's file, whole or not at all; gives the file's name.
pub fn keep(reading: &Reading, wish: &Wish, into: Option<&Path>) -> Result<PathBuf, Talk> {
    let file = into.map_or_else(|| load::workshop_of(Path::new(".")), Path::to_owned);
    let text = match fs::read_to_string(&file) {
        Ok(text) => text,
        Err(error) if error.kind() == ErrorKind::NotFound => String::new(),
        Err(error) => return Err(Talk::Plain(format!("{} cannot be read: {error}", file.display()))),
    };
    let look = look(reading, wish).map_err(Talk::Plain)?;
    let told = |error: &dyn std::fmt::Display| Talk::Plain(format!("{}: {error}", file.display()));
    let stored = workshop::store_look(&text, &wish.stock, &look).map_err(|error| told(&error))?;
    if !is_dial(&stored, &file) {
        workshop::read(&stored).map_err(|mistakes| Talk::Mistakes {
            file: file.clone(),
            text: stored.clone(),
            mistakes,
        })?;
    }
    workshop::put(&file, &stored, Settle::Now)
        .map_err(|error| Talk::Plain(format!("{} cannot be written: {error}", file.display())))?;
    Ok(file)
}

/// Whether a text is that of a dial file without mistakes.
fn is_dial(text: &str, file: &Path) -> bool {
    load::workshop(None, Some(file)).is_ok_and(|workshop| dial::design::read(text, &workshop).is_ok())
}
