//! What a photo of the card tells.

use kurbo::{Point, Vec2};
use measure::Interval;
use sight::Srgb;

use crate::locate::Located;
use crate::plan::CardPlan;

/// What is known of the print itself: how much light bare paper and solid black send back.
///
/// Typical office paper: L* 93 to 95; toner solid: density 1.3 to 1.5 (common practice). Who has measured his own, on a
/// scanner beside a known target or with a reflectance meter, should say so: the reading gets surer, for dark engraving above all.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Print {
    /// Reflectance (luminance factor, 0 to 1) of bare paper.
    pub paper: Interval,
    /// Reflectance of solid black.
    pub ink: Interval,
}

impl Default for Print {
    fn default() -> Print {
        Print { paper: Interval::between(0.83, 0.88), ink: Interval::between(0.032, 0.050) }
    }
}

impl Print {
    /// Measured values, taken to be sure to 1 % of the paper and 5 % of the ink.
    pub fn measured(paper: f64, ink: f64) -> Print {
        let about = |value: f64, share: f64| Interval::between(value * (1.0 - share), value * (1.0 + share));
        Print { paper: about(paper, 0.01), ink: about(ink, 0.05) }
    }
}

/// A figure read from the photo, with the interval that contains the true one in at least 95 of 100 photos.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Measured {
    /// The most likely value.
    pub value: f64,
    /// Where the true value lies.
    pub within: Interval,
}

/// A surface of the sample.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Surface {
    /// Luminance factor Y, 0 to 1.
    pub reflectance: Measured,
    /// CIE lightness L*, 0 to 100.
    pub lightness: Measured,
    /// Its colour under a light in which the paper is neutral.
    pub colour: Srgb,
}

/// One power step as read.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Step {
    /// The plain face.
    pub face: Surface,
    /// The engraved patch beside it.
    pub engraved: Surface,
    /// Contrast ratio of the two, from 1 to 21 (WCAG 2.2, “contrast ratio”, flare 0.05).
    pub contrast: Measured,
    /// How sure the contrast is against that of the other steps of the same photo: what all of them share is left out.
    pub(crate) own: f64,
}

/// What was found, as corners in pixels of the upright photo, to be drawn over it. Empty where nothing was found.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct Outlines {
    /// Corners of the card, in the order of the card: lower left first, counter-clockwise on the card.
    pub card: Vec<Point>,
    /// Corners of the corner marks.
    pub tags: Vec<[Point; 4]>,
    /// Corners of the whites that were used.
    pub whites: Vec<[Point; 4]>,
    /// Corners of the blacks that were used.
    pub blacks: Vec<[Point; 4]>,
    /// Corners of each step's face and engraved patch, where they were found.
    pub steps: Vec<[[Point; 4]; 2]>,
}

impl Outlines {
    /// All outlines of a card that was found, with its sample shifted in mm.
    pub(crate) fn of(located: &Located, plan: &CardPlan, shift: Vec2) -> Outlines {
        let card = kurbo::Rect::from_origin_size(Point::ORIGIN, plan.size);
        Outlines {
            card: located.quad(card).to_vec(),
            tags: located.tags.clone(),
            whites: plan.whites.iter().map(|white| located.quad(*white)).collect(),
            blacks: plan.blacks.iter().map(|black| located.quad(*black)).collect(),
            steps: plan
                .sample
                .steps
                .iter()
                .map(|step| [step.face, step.engraved].map(|patch| located.quad(patch + shift)))
                .collect(),
        }
    }
}

/// The reading of one photo.
#[derive(Clone, Debug, PartialEq)]
pub struct Reading {
    /// The steps in the order of the plan, weakest engraving first.
    pub steps: Vec<Step>,
    /// Which step has the highest contrast, counted from 0.
    pub best: usize,
    /// Pixels to a mm of the card where they are fewest.
    pub px_per_mm: f64,
    /// Tilt of the camera from straight above, in degrees, about.
    pub tilt: f64,
    /// Width of an edge from 10 to 90 % of its height, in mm on the card: the blur of photo and print together.
    pub edge: f64,
    /// How much the light differs over the card: brightest by darkest, less 1.
    pub unevenness: f64,
    /// How far the light is off a smooth one, root mean square, as a share.
    pub roughness: f64,
    /// Stray light over the middle of the card, as a share of white.
    pub stray: f64,
    /// How far the sample was seen aside of its place, in mm on the card.
    pub shift: Vec2,
    /// What was found.
    pub outlines: Outlines,
}

impl Reading {
    /// The first step, thus the gentlest engraving, whose contrast cannot be told from that of the best: the one to choose.
    pub fn gentlest_as_good(&self) -> usize {
        let best = &self.steps[self.best];
        let as_good = |step: &Step| best.contrast.value - step.contrast.value <= best.own.hypot(step.own);
        self.steps.iter().position(as_good).unwrap_or(self.best)
    }
}
