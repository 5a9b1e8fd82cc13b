//! How high a mark should look: published limits.

use super::ARCMIN;

/// A published limit of a character's angular height.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct HeightLimit {
    /// The visual angle in radians.
    pub angle: f64,
    /// What it is the limit of.
    pub what: &'static str,
    /// Where it stands.
    pub source: &'static str,
}

impl HeightLimit {
    /// Letters that a normal eye just makes out, 5'.
    pub const SEEN: HeightLimit = limit(5.0, "just made out by a normal eye", "Snellen, 20/20");
    /// Still of use where the contrast is high, 10'.
    pub const USABLE: HeightLimit = limit(10.0, "of use where the contrast is high", ISO_QUOTED);
    /// The least in a control room, 15'.
    pub const CONTROL_ROOM: HeightLimit = limit(15.0, "the least in a control room", NUREG);
    /// The least, 16'.
    pub const LEAST: HeightLimit = limit(16.0, "the least", ISO);
    /// Below it legibility falls, 18'.
    pub const FALLING: HeightLimit = limit(18.0, "below it legibility falls", FAA);
    /// Preferred, from 20'.
    pub const PREFERRED: HeightLimit = limit(20.0, "preferred, from", ISO);
    /// Preferred, to 22'.
    pub const COMFORTABLE: HeightLimit = limit(22.0, "preferred, to", ISO);

    /// The limit in minutes of arc.
    #[must_use]
    pub fn arcmin(self) -> f64 {
        super::arcmin(self.angle)
    }
}

/// All of them, lowest first.
///
/// ```
/// let met = sight::HEIGHTS.iter().rev().find(|limit| limit.arcmin() <= 17.0).expect("a limit");
/// assert_eq!(met.what, "the least");
/// ```
pub const HEIGHTS: [HeightLimit; 7] = [
    HeightLimit::SEEN,
    HeightLimit::USABLE,
    HeightLimit::CONTROL_ROOM,
    HeightLimit::LEAST,
    HeightLimit::FALLING,
    HeightLimit::PREFERRED,
    HeightLimit::COMFORTABLE,
];

const ISO: &str = "ISO 9241-3, as quoted by IBM's pages on ergonomics; the FAA's human factors training agrees";
const ISO_QUOTED: &str = "IBM's pages on ISO 9241-3";
const FAA: &str = "FAA human factors training, visual displays";
const NUREG: &str = "NUREG-0700 rev. 3, 11.4.1.5-1";

const fn limit(arcmin: f64, what: &'static str, source: &'static str) -> HeightLimit {
    HeightLimit { angle: arcmin * ARCMIN, what, source }
}
