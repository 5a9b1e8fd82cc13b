//! Materials, and what must never lie under the beam.

use crate::{Look, Panel, look};
use measure::Interval;

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
    /// Density in g/cm³.
    pub density: f64,
    /// Coefficient of friction of its dry face against itself or plain wood, from sliding to sticking: an interval, since moisture
    /// and finish move it by a factor of two.
    pub friction: Interval,
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

/// Dry sanded wood on wood: 0.25 to 0.5 in general tables; chestnut slides at 0.33 and sticks at 0.46 (Villar-García et al.,
/// Int. Agrophysics 2020), pine at 0.17 and 0.24 (Aira et al., Mater. Constr. 64, 2014).
const ON_WOOD: Interval = Interval { low: 0.2, high: 0.5 };
/// Leather on wood 0.3 to 0.4, on oak along the grain 0.52 sliding and 0.61 sticking (general tables).
const ON_LEATHER: Interval = Interval { low: 0.3, high: 0.61 };
/// Acrylic on acrylic sticks at 0.8, on steel at 0.4 to 0.5 (from memory, weak).
const ON_ACRYLIC: Interval = Interval { low: 0.3, high: 0.8 };
/// Soft faces that grip (from memory: cork, felt, adhesive-backed foils vary widely).
const ON_SOFT: Interval = Interval { low: 0.3, high: 0.7 };
/// Two nickel-plated magnets, face on face: slide at 0.53, stick at 0.7 to 1.1 (general tables: nickel on nickel, dry).
pub const ON_NICKEL: Interval = Interval { low: 0.53, high: 1.1 };

const fn material(name: &'static str, cutting: Cutting, swelling: f64, panel: Panel, source: &'static str) -> Material {
    Material { name, cutting, swelling, panel, density: 0.65, friction: ON_WOOD, source }
}

impl Material {
    const fn of_density(self, density: f64) -> Material {
        Material { density, ..self }
    }

    const fn gripping(self, friction: Interval) -> Material {
        Material { friction, ..self }
    }
}

const fn solid(name: &'static str, swelling: f64, density: f64) -> Material {
    material(name, Cutting::Usual, swelling, Panel::Other, WOOD).of_density(density)
}

const fn plywood(name: &'static str, density: f64) -> Material {
    material(name, Cutting::Usual, PLY, Panel::SandedPlywood, "EN 315; movement: panel trade figure, second-hand")
        .of_density(density)
}

const fn never(name: &'static str, why: &'static str) -> Material {
    material(name, Cutting::Never(why), 0.0, Panel::Other, LAB)
}

/// All materials that the house knows. Densities of solid wood: Wood Handbook ch. 5 at 12 % of moisture; of birch plywood a mill's data
/// sheet; of MDF the middle of 730 to 850 kg/m³; the others from memory.
pub const MATERIALS: &[Material] = &[
    plywood("birch plywood", 0.67),
    plywood("basswood plywood", 0.45),
    plywood("poplar plywood", 0.45),
    plywood("beech plywood", 0.7),
    plywood("maple plywood", 0.65),
    plywood("walnut plywood", 0.6),
    plywood("cherry plywood", 0.6),
    plywood("oak plywood", 0.65),
    material(
        "unsanded plywood",
        Cutting::Usual,
        PLY,
        Panel::UnsandedPlywood,
        "EN 315; movement: panel trade figure, second-hand",
    ),
    solid("maple", 0.00353, 0.705),
    solid("yellow birch", 0.00338, 0.69),
    solid("paper birch", 0.00304, 0.61),
    solid("beech", 0.00431, 0.72),
    solid("walnut", 0.00274, 0.61),
    solid("cherry", 0.00248, 0.56),
    solid("basswood", 0.00330, 0.415),
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
    )
    .of_density(0.7),
    material(
        "MDF",
        Cutting::Usual,
        PLY,
        Panel::Fibreboard,
        "EN 622-1; its dust and fume hold formaldehyde: extraction (IARC group 1)",
    )
    .of_density(0.79),
    material("hardboard", Cutting::Usual, PLY, Panel::Fibreboard, PRACTICE).of_density(0.95),
    material("cardboard", Cutting::Usual, PLY, Panel::Other, PRACTICE).of_density(0.7),
    material("cork", Cutting::Usual, 0.0, Panel::Other, PRACTICE).of_density(0.2).gripping(ON_SOFT),
    material("paper", Cutting::Usual, PLY, Panel::Other, PRACTICE).of_density(0.8),
    material("acrylic", Cutting::Usual, 0.0, Panel::CastAcrylic, "ISO 7823-1; cutting is common practice")
        .of_density(1.185)
        .gripping(ON_ACRYLIC),
    material("wood glue", Cutting::Usual, 0.0, Panel::Other, PRACTICE).of_density(1.1),
    material(
        "vegetable-tanned leather",
        Cutting::WithDataSheet("vegetable-tanned throughout: chrome tanning gives off chromium"),
        0.0,
        Panel::Other,
        LAB,
    )
    .of_density(0.9)
    .gripping(ON_LEATHER),
    material("PVC-free leather substitute", Cutting::WithDataSheet(SHEET), 0.0, Panel::Other, LAB)
        .of_density(0.8)
        .gripping(ON_SOFT),
    material("adhesive sheet", Cutting::WithDataSheet(SHEET), 0.0, Panel::Other, PRACTICE)
        .of_density(1.0)
        .gripping(ON_SOFT),
    material(
        "laminate",
        Cutting::WithDataSheet(
            "thin paper laminate for laser work; board that is mostly phenolic or epoxy resin is not cut",
        ),
        PLY,
        Panel::Other,
        LAB,
    )
    .of_density(1.35),
    material("felt", Cutting::WithDataSheet("wool, not an unknown synthetic fibre"), 0.0, Panel::Other, PRACTICE)
        .of_density(0.25)
        .gripping(ON_SOFT),
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
    /// How it looks; grey where nobody has said.
    pub fn look(&self) -> &'static Look {
        look::of(self.name).unwrap_or(&look::UNKNOWN)
    }

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
