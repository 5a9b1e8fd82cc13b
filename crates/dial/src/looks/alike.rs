//! Figures that can no longer be told apart once the cover hides their feet.

use super::seen::cut_off;
use crate::assembled::Wheel;
use crate::design::Motif;
use lettering::{Lettering, TWIN_LIMIT, TwinMark};
use outline::{Shape, overlap_reaches};
use sight::View;
use std::collections::BTreeSet;

/// The figures that a wheel's marks are made of; words and symbols are told apart by more than one figure.
pub fn figures_of(wheel: &Wheel) -> Vec<char> {
    let texts = wheel.marks.iter().filter_map(|mark| match &mark.motif {
        Motif::Text(text) => Some(text),
        Motif::Symbol(_) => None,
    });
    let figures: BTreeSet<char> = texts.flat_map(|text| text.chars()).filter(char::is_ascii_digit).collect();
    figures.into_iter().collect()
}

/// Pairs of a wheel's figures that look the same when the nearest `hidden` mm of them are gone: what is left of one covers the other
/// as upside-down twins do, which is the limit here too.
pub fn alike(wheel: &Wheel, view: View, hidden: f64) -> Vec<(char, char)> {
    let lettering = Lettering::shipped(wheel.weight);
    let left = |figure: char| -> Option<Shape> {
        let whole = lettering.inscription(&figure.to_string(), wheel.asked.height, TwinMark::None).ok()?;
        Some(cut_off(&whole, view, hidden))
    };
    let figures = figures_of(wheel);
    let shapes: Vec<Option<Shape>> = figures.iter().map(|figure| left(*figure)).collect();
    let mut pairs = Vec::new();
    for (i, one) in shapes.iter().enumerate() {
        for (j, other) in shapes.iter().enumerate().skip(i + 1) {
            let (Some(one), Some(other)) = (one, other) else { continue };
            if one.is_empty() || other.is_empty() || overlap_reaches(one, other, TWIN_LIMIT) {
                pairs.push((figures[i], figures[j]));
            }
        }
    }
    pairs
}
