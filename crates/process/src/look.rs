//! How materials look: their face, what the beam leaves of it, their cut edge.
//!
//! Typical colours, chosen so that their L* is that of the sources named beside them; hue and whatever is not named are from
//! memory. Wood varies by ten L* from board to board: measure the sheet that lies on your bench.

use sight::Srgb;

/// How a material looks and feels.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Look {
    /// Its untouched face.
    pub face: Srgb,
    /// The floor of an engraving in it.
    pub engraved: Srgb,
    /// Its edge as the beam leaves it.
    pub edge: Srgb,
    /// What its face is like.
    pub texture: Texture,
    /// How it is finished as bought.
    pub finish: Finish,
    /// Where the lightness comes from.
    pub source: &'static str,
}

/// What a face is like.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Texture {
    /// Wood, its grain along the sheet.
    Grain,
    /// Bamboo: strips side by side.
    Strips,
    /// Leather and what imitates it.
    Leather,
    /// Crumbs: cork.
    Crumbs,
    /// Pressed fibres without direction: MDF, board, felt.
    Fibres,
    /// Nothing to be seen.
    Plain,
}

/// How a face is finished.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
#[expect(missing_docs, reason = "the names say it")]
pub enum Finish {
    Raw,
    ClearCoated,
    Smooth,
    Leather,
}

/// Which way the grain runs.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
#[expect(missing_docs, reason = "the names say it")]
pub enum Grain {
    None,
    AlongTheSheet,
}

impl Finish {
    /// All, by the words a file says.
    pub const ALL: [(&str, Finish); 4] = [
        ("raw", Finish::Raw),
        ("clear-coated", Finish::ClearCoated),
        ("smooth", Finish::Smooth),
        ("leather", Finish::Leather),
    ];

    /// What it means under a hand.
    pub fn words(self) -> &'static str {
        match self {
            Finish::Raw => "raw: soot and fingers smear it, so mask it and seal it",
            Finish::ClearCoated => "clear-coated: soot wipes off clean",
            Finish::Smooth => "smooth: soot wipes off clean",
            Finish::Leather => "leather or its like: soot comes off with a damp cloth",
        }
    }

    /// Whether it is good to touch as it is.
    pub fn is_finished(self) -> bool {
        self != Finish::Raw
    }

    /// The word a file says.
    pub fn word(self) -> &'static str {
        Finish::ALL.iter().find(|one| one.1 == self).map_or("raw", |one| one.0)
    }
}

impl Grain {
    /// In words.
    pub fn words(self) -> &'static str {
        match self {
            Grain::None => "none",
            Grain::AlongTheSheet => "along the sheet",
        }
    }
}

impl Texture {
    /// Which way the grain runs.
    pub fn grain(self) -> Grain {
        match self {
            Texture::Grain | Texture::Strips => Grain::AlongTheSheet,
            _ => Grain::None,
        }
    }
}

const fn rgb(code: u32) -> Srgb {
    Srgb { red: (code >> 16) as u8, green: (code >> 8) as u8, blue: code as u8 }
}

const fn look(face: u32, engraved: u32, edge: u32, texture: Texture, finish: Finish, source: &'static str) -> Look {
    Look { face: rgb(face), engraved: rgb(engraved), edge: rgb(edge), texture, finish, source }
}

const fn wood(face: u32, engraved: u32, edge: u32, source: &'static str) -> Look {
    look(face, engraved, edge, Texture::Grain, Finish::Raw, source)
}

const CHAR: &str = "L* of bare wood from memory; drop by laser char: Kubovsk\u{fd}, Ka\u{10d}\u{ed}k & Velkov\u{e1}, BioResources 13(2) 2515 (2018), abstract";
const MEMORY: &str = "typical, from memory";

/// Looks by the names of their materials.
const LOOKS: &[(&[&str], Look)] = &[
    // L* 84 to 28: that paper's maple loses 56.
    (&["maple", "maple plywood", "maple veneer"], wood(0xe9cdae, 0x533e30, 0x47352a, CHAR)),
    // L* 72 to 25: its beech loses 47.
    (&["beech", "beech plywood"], wood(0xd1a989, 0x4b372b, 0x423128, CHAR)),
    // L* 83 to 32.5: its lime loses 50.5.
    (&["basswood", "basswood plywood"], wood(0xe5cbaa, 0x5e4838, 0x4c3a2f, CHAR)),
    (
        &["birch plywood", "yellow birch", "paper birch", "birch veneer", "unsanded plywood"],
        wood(0xe4c7a5, 0x533e30, 0x47352a, "L* 82 and the char of maple, from memory"),
    ),
    (&["poplar plywood"], wood(0xdac3a1, 0x584234, 0x49382d, MEMORY)),
    // L* 42, between 40 and 45; char at 22.
    (
        &["walnut", "walnut plywood", "walnut veneer"],
        wood(0x7a5d49, 0x40322b, 0x372c26, "L* 40 to 45 and char at 22, from memory"),
    ),
    (&["cherry", "cherry plywood", "cherry veneer"], wood(0xbc8c69, 0x48352a, 0x3f2f27, MEMORY)),
    (&["oak plywood", "oak veneer"], wood(0xc9a580, 0x4c3a2f, 0x43342a, MEMORY)),
    (&["bamboo"], look(0xdebc8f, 0x5a4230, 0x4b372a, Texture::Strips, Finish::Raw, MEMORY)),
    (&["MDF"], look(0xb1906f, 0x513e33, 0x3c2d25, Texture::Fibres, Finish::Raw, MEMORY)),
    (&["hardboard"], look(0x775841, 0x403229, 0x352a24, Texture::Fibres, Finish::Raw, MEMORY)),
    (&["cardboard"], look(0xba9b7d, 0x513e33, 0x45362c, Texture::Fibres, Finish::Raw, MEMORY)),
    (&["cork"], look(0xad835d, 0x47362c, 0x3e3027, Texture::Crumbs, Finish::Raw, MEMORY)),
    (
        &["paper"],
        look(
            0xefeeea,
            0x5b4d44,
            0x6b5c4e,
            Texture::Plain,
            Finish::Raw,
            "white of office paper L* 93 to 95 (ISO 12647-2, from memory)",
        ),
    ),
    // White and not clear: what lies under a clear sheet is for the maker to say.
    (
        &["acrylic"],
        look(
            0xecebe9,
            0xdddddd,
            0xe9e8e6,
            Texture::Plain,
            Finish::Smooth,
            "a white sheet; the beam leaves it white: typical, from memory",
        ),
    ),
    (&["wood glue"], look(0xb2895c, 0x4e392c, 0x47352a, Texture::Plain, Finish::Raw, MEMORY)),
    (&["vegetable-tanned leather"], look(0xd5a880, 0x4d392f, 0x3c2d25, Texture::Leather, Finish::Leather, MEMORY)),
    (&["PVC-free leather substitute"], look(0xcba37d, 0x4b372b, 0x3e322c, Texture::Leather, Finish::Leather, MEMORY)),
    (&["adhesive sheet"], look(0xc3b7aa, 0x493b32, 0x43372d, Texture::Plain, Finish::Raw, MEMORY)),
    // A pale decor on the dark core of its paper.
    (&["laminate"], look(0xedebe7, 0x473b35, 0x3d322d, Texture::Plain, Finish::Smooth, MEMORY)),
    (&["felt"], look(0x919191, 0x3c3836, 0x373433, Texture::Fibres, Finish::Raw, MEMORY)),
];

/// What nobody has said: grey, and no contrast.
pub(crate) const UNKNOWN: Look = look(0x909090, 0x707070, 0x606060, Texture::Plain, Finish::Raw, "unknown");

/// The look of the material of that name.
pub(crate) fn of(name: &str) -> Option<&'static Look> {
    LOOKS.iter().find(|one| one.0.contains(&name)).map(|one| &one.1)
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::{Cutting, MATERIALS, Material};
    use sight::{Contrast, Lab};

    /// Whatever may be cut has a look, under a name that is in the table of materials.
    #[test]
    fn every_material_that_is_cut_has_a_look() {
        for material in MATERIALS {
            let is_cut = !matches!(material.cutting, Cutting::Never(_));
            assert_eq!(of(material.name).is_some(), is_cut, "{}", material.name);
        }
        for name in LOOKS.iter().flat_map(|one| one.0) {
            assert!(Material::named(name).is_some_and(|known| known.name == *name), "{name}");
        }
    }

    /// Kubovský, Kačík & Velková 2018: laser char takes 56 L* from maple, 46.8 from beech, 50.5 from lime; with the bare woods' L* 84
    /// and 72 that is 6.6 and 5.1 to 1 (worked elsewhere). Walnut, L* 40 to 45 with char at 22: 1.9 to 2.3.
    #[test]
    fn char_on_wood_is_as_dark_as_measured() {
        let figures = |name: &str| {
            let look = of(name).expect("known");
            let lost = Lab::from(look.face).lightness - Lab::from(look.engraved).lightness;
            (lost, Contrast::between(look.engraved, look.face).ratio())
        };
        for (name, lost, ratio) in [("maple", 56.0, 6.6), ("beech", 46.8, 5.1), ("basswood", 50.5, 5.4)] {
            let found = figures(name);
            assert!((found.0 - lost).abs() < 0.5, "{name} loses {}", found.0);
            assert!((found.1 - ratio).abs() < 0.1, "{name} {}", found.1);
        }
        let walnut = figures("walnut").1;
        assert!((1.9..2.3).contains(&walnut), "{walnut}");
    }
}
