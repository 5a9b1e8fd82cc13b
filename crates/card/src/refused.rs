//! Why a photo is refused, in words that say what to do.

use std::error::Error;
use std::fmt;

use crate::reading::Outlines;

/// A photo that gives no trustworthy reading.
#[derive(Clone, Debug, PartialEq)]
pub struct Refused {
    /// What is wrong.
    pub why: Why,
    /// What was found of the card all the same, to be drawn over the photo; empty where nothing was.
    pub found: Box<Outlines>,
}

/// The reasons, in the order in which they are looked for.
#[derive(Clone, Debug, PartialEq)]
pub enum Why {
    /// Not a picture that can be decoded.
    NotAPicture(String),
    /// The file ends before the picture does.
    CutShort,
    /// More pixels than are read.
    TooLarge {
        /// Pixels of the picture, in millions.
        megapixels: f64,
    },
    /// No corner mark was found.
    NoCard,
    /// A corner of the card lies outside the picture.
    NotWhole(Place),
    /// A corner of the card lies in the picture, and its mark cannot be read.
    CornerHidden(Place),
    /// Too few pixels.
    TooSmall {
        /// Pixels to a mm of card where it is farthest.
        px_per_mm: f64,
    },
    /// Photographed too much from the side.
    TooSteep {
        /// Tilt, in degrees.
        degrees: f64,
    },
    /// The corner marks do not lie in one plane.
    NotFlat {
        /// How far they are off, in mm.
        off: f64,
    },
    /// Out of focus, or shaken.
    Blurred {
        /// Width of an edge from 10 to 90 %, in mm.
        edge: f64,
    },
    /// Pixels as bright as the camera can tell.
    TooBright(Place),
    /// Pixels as dark as the camera can tell, or a photo too dark to measure in.
    TooDark(Place),
    /// An edge of shadow, or light more uneven than the card can tell.
    Shadow {
        /// Where.
        place: Place,
        /// How much of the light changes, in percent.
        percent: f64,
    },
    /// A reflection.
    Glare(Place),
    /// The faces of the steps differ, though they are one material.
    UnevenSample {
        /// Step whose face differs most, counted from 1.
        step: usize,
        /// By how much, in percent.
        percent: f64,
    },
    /// A patch of the sample is lighter on one side than on the other.
    UnevenPatch {
        /// Its step, counted from 1.
        step: usize,
        /// The engraved patch, or the plain face.
        engraved: bool,
        /// By how much, in percent.
        percent: f64,
    },
    /// Nothing engraved was seen in the opening.
    NoSample,
}

/// Where on the card, as it lies before the reader upright.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Place {
    /// Lower left corner.
    LowerLeft,
    /// Middle of the lower edge.
    Below,
    /// Lower right corner.
    LowerRight,
    /// Middle of the right edge.
    Right,
    /// Upper right corner.
    UpperRight,
    /// Middle of the upper edge.
    Above,
    /// Upper left corner.
    UpperLeft,
    /// Middle of the left edge.
    Left,
    /// The sample.
    Sample,
}

impl Place {
    /// The corner of a tag.
    pub(crate) fn corner(tag: usize) -> Place {
        [Place::LowerLeft, Place::LowerRight, Place::UpperRight, Place::UpperLeft][tag % 4]
    }

    /// The part of a card of a size that a point lies in.
    pub(crate) fn of(p: kurbo::Point, size: kurbo::Size) -> Place {
        let third = |x: f64| (3.0 * x).clamp(0.0, 2.0) as usize;
        [
            [Place::LowerLeft, Place::Below, Place::LowerRight],
            [Place::Left, Place::Sample, Place::Right],
            [Place::UpperLeft, Place::Above, Place::UpperRight],
        ][third(p.y / size.height)][third(p.x / size.width)]
    }
}

impl fmt::Display for Place {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        f.write_str(match self {
            Place::LowerLeft => "at the card's lower left",
            Place::Below => "at the card's lower edge",
            Place::LowerRight => "at the card's lower right",
            Place::Right => "at the card's right edge",
            Place::UpperRight => "at the card's upper right",
            Place::Above => "at the card's upper edge",
            Place::UpperLeft => "at the card's upper left",
            Place::Left => "at the card's left edge",
            Place::Sample => "on the sample",
        })
    }
}

impl fmt::Display for Why {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        match self {
            Why::NotAPicture(what) => {
                write!(f, "this is not a picture that can be read ({what}): send the photo as JPEG or PNG")
            }
            Why::CutShort => {
                write!(f, "the file ends before its picture does: copy the photo from the phone once more")
            }
            Why::TooLarge { megapixels } => write!(
                f,
                "the picture has {megapixels:.0} million pixels, more than is read ({} million): save it smaller, 12 million are plenty",
                crate::photo::MOST_PIXELS / 1_000_000
            ),
            Why::NoCard => write!(
                f,
                "no reference card was found: lay the printed card flat, and photograph all of it from above, sharp and not mirrored, so that it fills most of the picture"
            ),
            Why::NotWhole(place) => write!(
                f,
                "the card is not whole in the picture, a corner is missing {place}: step back until a little table shows all round"
            ),
            Why::CornerHidden(place) => write!(
                f,
                "the corner mark {place} cannot be read: take away what covers it, and look for a shadow, a reflection or a crease on it"
            ),
            Why::TooSmall { px_per_mm } => write!(
                f,
                "the card is too small in the picture: {px_per_mm:.1} pixels to a millimetre where {:.1} are needed; go nearer, or take a larger picture",
                crate::read::LEAST_SCALE
            ),
            Why::TooSteep { degrees } => write!(
                f,
                "the card is seen too much from the side, tilted by about {degrees:.0} degrees where {:.0} are the most: hold the phone more above the card",
                crate::read::MOST_TILT
            ),
            Why::NotFlat { off } => write!(
                f,
                "the card does not lie flat, its corner marks are {off:.1} mm off where a flat card would show them: press it flat, and photograph it from farther away so that the lens bends it less"
            ),
            Why::Blurred { edge } => write!(
                f,
                "the photo is not sharp: an edge takes {edge:.1} mm on the card to go from black to white where {:.1} mm are the most; tap on the card to focus, and hold the phone still",
                crate::read::MOST_BLUR
            ),
            Why::TooBright(place) => write!(
                f,
                "the photo is overexposed {place}, where white has run out of scale: take it with less exposure, or in softer light"
            ),
            Why::TooDark(place) => {
                write!(f, "the photo is too dark {place} to measure in: take it in more light, or with more exposure")
            }
            Why::Shadow { place, percent } => write!(
                f,
                "the light changes by {percent:.0} % within a short way {place}, as at the edge of a shadow or of a lamp's spot: turn the card until nothing throws a shadow on it, and use soft daylight"
            ),
            Why::Glare(place) => write!(
                f,
                "something bright is reflected {place}: turn the card or the phone until the black print looks black all over, and use no flash"
            ),
            Why::UnevenSample { step, percent } => write!(
                f,
                "the plain face beside step {step} differs by {percent:.0} % from the others, though it is the same material: look for a shadow, a reflection, smoke stain or a knot there, and whether the sample lies straight in its field"
            ),
            Why::UnevenPatch { step, engraved, percent } => write!(
                f,
                "the {} of step {step} is {percent:.0} % lighter on one side than on the other: look for a reflection or a shadow on the sample, and whether it lies straight in its field",
                if *engraved { "engraved patch" } else { "plain face" }
            ),
            Why::NoSample => write!(
                f,
                "no engraving was seen in the field for the sample: lay it in face up with its cut corner at the lower left, and check that its number of steps is that of this card"
            ),
        }
    }
}

impl Why {
    /// The reason alone, before anything of the card was found.
    pub(crate) fn at_once(self) -> Refused {
        Refused { why: self, found: Box::default() }
    }
}

impl fmt::Display for Refused {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        self.why.fmt(f)
    }
}

impl Error for Refused {}
