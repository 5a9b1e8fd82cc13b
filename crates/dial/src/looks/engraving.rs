//! How far an engraving stands out from its face.

use lettering::Weight;
use measure::Interval;
use process::{Shown, Side, Stock};
use sight::{ARCMIN, Contrast, Lab, Level, Srgb, ciede2000};

/// An engraving of some depth in a stock.
#[derive(Clone, Debug, PartialEq)]
pub struct Engraving {
    /// Colour of the face.
    pub face: Srgb,
    /// Its depth.
    pub depth: f64,
    /// What its floor should show, then what it may show too.
    pub floors: Vec<Shown>,
    /// The floor that stands out least.
    pub worst: Shown,
    /// Contrast of that floor against the face.
    pub contrast: Contrast,
    /// Where that contrast lies if it was measured on this stock; `None` where colours are taken as said.
    pub measured: Option<Interval>,
    /// Colour difference of the two, CIEDE2000: whether they are different colours at all, no measure of reading.
    pub difference: f64,
}

/// Visual angle of capitals from which text counts as large. WCAG 2.2 calls text large from 18 points, 24 px of 0.0213° (CSS
/// reference pixel) each; capitals are 0.7 of that: 21.5'. In bold from 14 points: 16.7'.
const LARGE: f64 = 24.0 * 0.0213 * 60.0 * 0.7 * ARCMIN;
const LARGE_BOLD: f64 = LARGE * 14.0 / 18.0;

/// The level of contrast that a mark needs: symbols as lines and shapes, text by how high it looks.
pub fn level(weight: Option<Weight>, angle: f64) -> Level {
    match weight {
        None => Level::Graphics,
        Some(Weight::Bold) if angle >= LARGE_BOLD => Level::LargeText,
        Some(_) if angle >= LARGE => Level::LargeText,
        Some(_) => Level::Text,
    }
}

impl Engraving {
    /// An engraving of this depth in the face of a stock; `None` where it goes through.
    pub fn of(stock: &Stock, depth: f64) -> Option<Engraving> {
        let face = stock.colour(Side::Face);
        let floors = stock.engraved_at(depth);
        let contrast = |shown: &Shown| Contrast::between(shown.colour, face);
        let worst = *floors.iter().min_by(|a, b| contrast(a).ratio().total_cmp(&contrast(b).ratio()))?;
        let difference = ciede2000(Lab::from(worst.colour), Lab::from(face));
        let was_measured = stock.layer_at(stock.surfaces.engraved_at) == Some(worst.layer);
        let contrast = contrast(&worst);
        // Colours that were changed by hand since are no longer those that were measured.
        let holds = |range: &Interval| was_measured && (range.low..=range.high).contains(&contrast.ratio());
        let measured = stock.surfaces.contrast.filter(holds);
        Some(Engraving { face, depth, worst, contrast, measured, difference, floors })
    }

    /// Whether its floor may show another layer than it should.
    pub fn may_differ(&self) -> bool {
        self.floors.len() > 1
    }

    /// Lightness L* of the face and of the floor.
    pub fn lightness(&self) -> (f64, f64) {
        (Lab::from(self.face).lightness, Lab::from(self.worst.colour).lightness)
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    fn engraved(name: &str, depth: f64) -> Engraving {
        let stock = workshop::starter().stocks.into_iter().find(|stock| stock.name == name).expect("on the shelf");
        Engraving::of(&stock, depth).expect("not through")
    }

    /// Common practice of those who make dials: dark faces with a mid-brown core fail, a light face over a dark core reads well.
    /// Figures of bare wood and char: Kubovský and others 2018, see the process room.
    #[test]
    fn what_makers_say_of_faces_and_cores_comes_out() {
        for name in ["dark laminate on a brown core", "dark leather substitute on plywood", "walnut veneer on plywood"]
        {
            let found = engraved(name, 0.3);
            assert!(!found.contrast.passes(Level::Graphics), "{name}: {}", found.contrast.shown());
        }
        for name in ["white laminate on a dark core", "two-ply acrylic, white over black"] {
            let found = engraved(name, 0.4);
            assert!(found.contrast.passes(Level::TextEnhanced), "{name}: {}", found.contrast.shown());
        }
        for (name, low, high) in
            [("maple 3 mm", 6.5, 6.7), ("beech plywood 3 mm", 5.1, 5.2), ("walnut plywood 3 mm", 1.9, 2.3)]
        {
            let ratio = engraved(name, 0.3).contrast.ratio();
            assert!((low..=high).contains(&ratio), "{name}: {ratio}");
        }
    }

    /// An engraving that ends within the cap of engraving sheet shows nothing; just through it, all. Where it may do either, the
    /// worse counts.
    #[test]
    fn the_worse_floor_counts() {
        let sheet = "two-ply acrylic, white over black";
        assert!(engraved(sheet, 0.1).contrast.ratio() < 1.01);
        assert!(engraved(sheet, 0.2).may_differ() && engraved(sheet, 0.2).contrast.ratio() < 1.01);
        assert!(engraved(sheet, 0.4).contrast.ratio() > 7.0 && !engraved(sheet, 0.4).may_differ());
    }

    /// 18 points at arm's length are about 21' of capitals.
    #[test]
    fn large_text_is_large_to_the_eye() {
        assert!((sight::arcmin(LARGE) - 21.5).abs() < 0.05 && (sight::arcmin(LARGE_BOLD) - 16.7).abs() < 0.05);
        assert_eq!(level(None, 0.0), Level::Graphics);
        assert_eq!(level(Some(Weight::Bold), 17.0 * ARCMIN), Level::LargeText);
        assert_eq!(level(Some(Weight::Medium), 17.0 * ARCMIN), Level::Text);
    }
}
