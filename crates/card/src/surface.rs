//! From the light of patches to reflectance, lightness and contrast, each with what it may be off.

use measure::Interval;
use sight::Srgb;

use crate::patch::{Patch, luminance};
use crate::reading::{Measured, Print, Step, Surface};

/// What the light at a patch of the sample is, and what of it is not sure.
#[derive(Clone, Copy, Debug)]
pub(crate) struct Seen {
    /// The patch.
    pub(crate) patch: Patch,
    /// Light of bare paper there.
    pub(crate) white: [f64; 3],
    /// Stray light there, as a share of white.
    pub(crate) stray: [f64; 3],
}

/// What is not sure about a photo as a whole.
#[derive(Clone, Copy, Debug)]
pub(crate) struct Doubt {
    /// Light of white, as a share (standard deviation).
    pub(crate) white: f64,
    /// Stray light, as a share of white (standard deviation).
    pub(crate) stray: f64,
}

/// Pixels next to each other tell almost the same, because the camera and JPEG mix them.
const PIXELS_OF_ONE: f64 = 16.0;
/// What a phone's tone curve may bend away from sRGB between black and white, in coded values from 0 to 1: once as a bow, once as an S. A guess.
const TONE: f64 = 0.015;
/// Standard deviations on either side that hold 95 of 100.
const SIDES: f64 = 2.0;
/// Standard WCAG flare.
const FLARE: f64 = 0.05;

/// Everything that can be off, each by one unit of its doubt.
#[derive(Clone, Copy, Default)]
struct Off {
    paper: f64,
    ink: f64,
    white: f64,
    stray: f64,
    bow: f64,
    bend: f64,
    noise: f64,
}

/// Reflectance of each channel: the two-point scale between bare paper and solid black, in linear light.
fn reflectances(seen: &Seen, print: &Print, doubt: &Doubt, off: Off) -> [f64; 3] {
    let middle = |range: Interval| (range.low + range.high) / 2.0;
    let half = |range: Interval| (range.high - range.low) / 2.0;
    let paper = middle(print.paper) + off.paper * half(print.paper);
    // Ink darker or lighter than thought was taken for stray light, with the other sign: ink by paper, as fitted.
    let ink_to_paper = middle(print.ink) / middle(print.paper);
    let moved = (middle(print.ink) + off.ink * half(print.ink)) / paper;
    let noise = SIDES * seen.patch.spread * (PIXELS_OF_ONE / seen.patch.count.max(1) as f64).sqrt();
    [0, 1, 2].map(|channel| {
        let black = ink_to_paper * (1.0 - seen.stray[channel]) + seen.stray[channel];
        let stray = (black - moved) / (1.0 - moved) + off.stray * SIDES * doubt.stray;
        let white = seen.white[channel] * (1.0 + off.white * SIDES * doubt.white);
        let light = seen.patch.light[channel] * (1.0 + off.noise * noise) / white;
        let share = (light - stray) / (1.0 - stray);
        paper * bent(share, off)
    })
}

/// A share of white after a tone curve that leaves black and white where they are.
fn bent(share: f64, off: Off) -> f64 {
    if off.bow == 0.0 && off.bend == 0.0 {
        return share;
    }
    let coded = sight::encode(share.max(0.0));
    let bow = off.bow * TONE * 4.0 * coded * (1.0 - coded);
    let bend = off.bend * TONE * (2.0 * std::f64::consts::PI * coded).sin();
    sight::decode(coded + bow + bend)
}

/// Figures of one step: reflectance and L* of face and engraved patch, and their contrast.
fn figures([face, engraved]: [&Seen; 2], print: &Print, doubt: &Doubt, [one, other]: [Off; 2]) -> [f64; 5] {
    let [a, b] = [(face, one), (engraved, other)]
        .map(|(seen, off)| luminance(reflectances(seen, print, doubt, off)).clamp(0.0, 1.0));
    let ratio = (a.max(b) + FLARE) / (a.min(b) + FLARE);
    [a, b, sight::lightness(a), sight::lightness(b), ratio]
}

/// One step from the light of its two patches.
pub(crate) fn step(seen: [&Seen; 2], print: &Print, doubt: &Doubt) -> Step {
    let none = Off::default();
    let at = |off: [Off; 2]| figures(seen, print, doubt, off);
    let values = at([none, none]);
    // What both patches share, moved together; what is each one's own, moved alone.
    let both = |off: Off| [off, off];
    let shared = [
        Off { paper: 1.0, ..none },
        Off { ink: 1.0, ..none },
        Off { white: 1.0, ..none },
        Off { stray: 1.0, ..none },
        Off { bow: 1.0, ..none },
        Off { bend: 1.0, ..none },
    ];
    let own = [[Off { noise: 1.0, ..none }, none], [none, Off { noise: 1.0, ..none }]];
    let squares = |offs: &[[Off; 2]]| {
        let mut squares = [0.0; 5];
        for off in offs {
            let moved = at(*off);
            squares.iter_mut().zip(moved).zip(values).for_each(|((s, m), v)| *s += (m - v) * (m - v));
        }
        squares
    };
    let (of_shared, of_own) = (squares(&shared.map(both)), squares(&own));
    let measured = |i: usize| {
        let half = (of_shared[i] + of_own[i]).sqrt();
        let (least, most) = [(0.0, 1.0), (0.0, 1.0), (0.0, 100.0), (0.0, 100.0), (1.0, 21.0)][i];
        let within = Interval::between((values[i] - half).max(least), (values[i] + half).min(most));
        Measured { value: values[i], within }
    };
    let surface = |which: usize| Surface {
        reflectance: measured(which),
        lightness: measured(2 + which),
        colour: colour(reflectances(seen[which], print, doubt, none)),
    };
    Step { face: surface(0), engraved: surface(1), contrast: measured(4), own: of_own[4].sqrt() }
}

fn colour(light: [f64; 3]) -> Srgb {
    let [red, green, blue] = light.map(|light| (255.0 * sight::encode(light.clamp(0.0, 1.0))).round() as u8);
    Srgb { red, green, blue }
}
