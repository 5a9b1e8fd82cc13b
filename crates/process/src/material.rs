//! Materials, and what must never lie under the beam.

use crate::Panel;

/// One material of a layer.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Material {
    /// Its name.
    pub name: &'static str,
    /// Whether it may be cut.
    pub cutting: Cutting,
    /// Largest relative change of size across the sheet for one per cent of moisture, in the worst direction in the plane; 0 when it does not swell.
    pub swelling: f64,
    /// Which standard limits its thickness.
    pub panel: Panel,
    /// Where the verdict and the figure come from.
    pub source: &'static str,
}

/// Whether a material may be cut.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Cutting {
    /// Usual in a laser workshop, with the usual cautions.
    Usual,
    /// Only with a data sheet that states what it must not contain: said here.
    WithDataSheet(&'static str),
    /// Never: the reason.
    Never(&'static str),
}

/// Plywood in its plane: 0.02 % for 10 % of relative humidity, which is about 2 % of moisture (panel trade figure, second-hand).
const PLY: f64 = 0.0001;
const WOOD: &str = "Wood Handbook FPL-GTR-190 table 13-5; cutting is common practice";
const PRACTICE: &str = "common practice";
const LAB: &str = "safety lists of university laser workshops";
const SHEET: &str = "the data sheet must state that it holds no PVC and no other chlorine or fluorine compound";

const fn material(name: &'static str, cutting: Cutting, swelling: f64, panel: Panel, source: &'static str) -> Material {
    Material { name, cutting, swelling, panel, source }
}

const fn solid(name: &'static str, swelling: f64) -> Material {
    material(name, Cutting::Usual, swelling, Panel::Other, WOOD)
}

const fn plywood(name: &'static str) -> Material {
    material(name, Cutting::Usual, PLY, Panel::SandedPlywood, "EN 315; movement: panel trade figure, second-hand")
}

const fn never(name: &'static str, why: &'static str) -> Material {
    material(name, Cutting::Never(why), 0.0, Panel::Other, LAB)
}

/// All materials that the house knows.
pub const MATERIALS: &[Material] = &[
    plywood("birch plywood"),
    plywood("basswood plywood"),
    plywood("poplar plywood"),
    plywood("beech plywood"),
    plywood("maple plywood"),
    plywood("walnut plywood"),
    plywood("cherry plywood"),
    plywood("oak plywood"),
    material(
        "unsanded plywood",
        Cutting::Usual,
        PLY,
        Panel::UnsandedPlywood,
        "EN 315; movement: panel trade figure, second-hand",
    ),
    solid("maple", 0.00353),
    solid("yellow birch", 0.00338),
    solid("paper birch", 0.00304),
    solid("beech", 0.00431),
    solid("walnut", 0.00274),
    solid("cherry", 0.00248),
    solid("basswood", 0.00330),
    // A veneer is held by what it is glued on.
    material("birch veneer", Cutting::Usual, PLY, Panel::Other, PRACTICE),
    material("maple veneer", Cutting::Usual, PLY, Panel::Other, PRACTICE),
    material("walnut veneer", Cutting::Usual, PLY, Panel::Other, PRACTICE),
    material("cherry veneer", Cutting::Usual, PLY, Panel::Other, PRACTICE),
    material("oak veneer", Cutting::Usual, PLY, Panel::Other, PRACTICE),
    material(
        "bamboo",
        Cutting::Usual,
        PLY,
        Panel::Other,
        "common practice; movement taken as that of plywood: cross-bonded sheet",
    ),
    material(
        "MDF",
        Cutting::Usual,
        PLY,
        Panel::Fibreboard,
        "EN 622-1; its dust and fume hold formaldehyde: extraction (IARC group 1)",
    ),
    material("hardboard", Cutting::Usual, PLY, Panel::Fibreboard, PRACTICE),
    material("cardboard", Cutting::Usual, PLY, Panel::Other, PRACTICE),
    material("cork", Cutting::Usual, 0.0, Panel::Other, PRACTICE),
    material("paper", Cutting::Usual, PLY, Panel::Other, PRACTICE),
    material("acrylic", Cutting::Usual, 0.0, Panel::CastAcrylic, "ISO 7823-1; cutting is common practice"),
    material("wood glue", Cutting::Usual, 0.0, Panel::Other, PRACTICE),
    material(
        "vegetable-tanned leather",
        Cutting::WithDataSheet("vegetable-tanned throughout: chrome tanning gives off chromium"),
        0.0,
        Panel::Other,
        LAB,
    ),
    material("PVC-free leather substitute", Cutting::WithDataSheet(SHEET), 0.0, Panel::Other, LAB),
    material("adhesive sheet", Cutting::WithDataSheet(SHEET), 0.0, Panel::Other, PRACTICE),
    material(
        "laminate",
        Cutting::WithDataSheet(
            "thin paper laminate for laser work; board that is mostly phenolic or epoxy resin is not cut",
        ),
        PLY,
        Panel::Other,
        LAB,
    ),
    material("felt", Cutting::WithDataSheet("wool, not an unknown synthetic fibre"), 0.0, Panel::Other, PRACTICE),
    never("PVC", "it gives off hydrogen chloride, which is poisonous and destroys the machine"),
    never("vinyl", "it is PVC: it gives off hydrogen chloride, which is poisonous and destroys the machine"),
    never(
        "faux leather",
        "leather substitutes of unknown make are mostly PVC, which gives off hydrogen chloride; one whose data sheet states no PVC is called “PVC-free leather substitute” here",
    ),
    never("pleather", "leather substitutes of unknown make are mostly PVC, which gives off hydrogen chloride"),
    never("PVB", "it may give off the same acids as PVC"),
    never("PTFE", "it gives off hydrogen fluoride"),
    never("polycarbonate", "it absorbs the beam, chars and burns"),
    never("ABS", "it melts and burns and gives off cyanide"),
    never("HDPE", "it melts and burns"),
    never("polystyrene foam", "it is the first cause of fires in laser workshops"),
    never("polystyrene", "it melts and burns"),
    never("polypropylene foam", "it melts and burns"),
    never("PETG", "it melts and burns"),
    never("foam core", "its foam burns"),
    never("carbon fibre", "its resin gives off poisonous fume, its fibres short machines and hurt lungs"),
    never("glass fibre", "its resin gives off poisonous fume, its fibres hurt lungs"),
    never("circuit board", "it is glass fibre with brominated resin"),
    never("marine plywood", "its resin gives off poisonous fume, and the beam does not get through"),
    never("phenolic board", "its resin gives off poisonous fume, and the beam does not get through"),
    never("chrome-tanned leather", "it gives off chromium(VI)"),
    never("treated wood", "preservatives give off arsenic, copper and worse"),
    never("painted wood", "unknown coatings give off lead and other fume"),
    never("beryllium oxide", "its dust is poisonous"),
    never("mirror", "it throws the beam back"),
    never("polished metal", "it throws the beam back"),
];

impl Material {
    /// The material of that name, forgiving about case and hyphens.
    pub fn named(name: &str) -> Option<&'static Material> {
        let plain =
            |text: &str| text.to_lowercase().replace(['-', '_'], " ").split_whitespace().collect::<Vec<_>>().join(" ");
        let wanted = plain(name);
        MATERIALS.iter().find(|material| plain(material.name) == wanted)
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn names_are_found_forgivingly_and_once() {
        assert_eq!(Material::named("Pvc free leather-substitute").map(|m| m.name), Some("PVC-free leather substitute"));
        assert_eq!(Material::named("unobtainium"), None);
        for material in MATERIALS {
            assert_eq!(Material::named(material.name).map(|m| m.name), Some(material.name));
        }
    }

    /// University lists forbid these by name (facts read in their published policies).
    #[test]
    fn what_the_lists_forbid_is_never_cut() {
        for name in ["PVC", "vinyl", "ABS", "polycarbonate", "PTFE", "HDPE", "carbon fibre", "chrome-tanned leather"] {
            assert!(matches!(Material::named(name).map(|m| m.cutting), Some(Cutting::Never(_))), "{name}");
        }
    }

    /// Wood Handbook table 13-5, tangential: a 45 mm disc of sugar maple moves 0.64 mm for 4 % of moisture.
    #[test]
    fn maple_moves_as_the_handbook_says() {
        let maple = Material::named("maple").expect("known");
        assert!((45.0 * maple.swelling * 4.0 - 0.64).abs() < 0.005);
    }
}
