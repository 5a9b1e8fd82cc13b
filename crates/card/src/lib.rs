//! The printed reference card, and reading a photo of it with an engraved sample: how light the plain face and the engraving
//! of a real material are, and at which power the engraving reads best. Knows no dial.
//!
//! - [`CardPlan`]: what is printed and where the sample lies, as geometry in mm.
//! - [`read`]: from the bytes of a phone's photo to a [`Reading`], or a reason why not ([`Refused`]).
//!
//! ```
//! use card::{CardPlan, Drawn, Paper, Print};
//!
//! let plan = CardPlan::new(Paper::A4, 6)?;                        // a sample of six power steps
//! let printed = plan.drawn();                                     // black things in mm, to be set as a page
//! assert!(printed.iter().any(|thing| matches!(thing, Drawn::Label { .. })));
//!
//! let photo = b"not a photo";
//! let refused = card::read(photo, &plan, &Print::default()).unwrap_err();
//! assert!(refused.to_string().contains("JPEG or PNG"));           // always a reason that says what to do
//! # Ok::<(), card::StepsError>(())
//! ```
//!
//! # How it is measured
//! The corner marks tell where the card lies; perspective is undone; patches are averaged in linear light. Bare paper all over
//! the card tells how bright the light is everywhere, solid print how much stray light lies over it. Between the two every
//! patch of the sample has its place on a scale whose ends are the reflectances of paper and print ([`Print`]).
//!
//! # Limits
//! A photo is good for 2 L* and 10 % of the contrast ratio, not for more, and only what is read in a plain mode of the camera:
//! what a phone does to its tones beyond the sRGB curve cannot be seen on the card, and the intervals allow for a little of it
//! alone. Pixels are taken to be sRGB: those of the wider Display P3, which has the same curve, make colours a little paler and
//! hardly change lightness.
//! Nothing printed between white and black is used: print makes greys darker than they are told to be.

mod alarm;
mod edge;
mod find;
mod light;
mod locate;
mod patch;
mod photo;
mod plan;
mod plane;
mod read;
mod reading;
mod refused;
mod settle;
mod solve;
mod surface;
mod tag;

pub use kurbo::{Point, Rect, Size, Vec2};
pub use photo::Photo;
pub use plan::{CardPlan, Drawn, Lane, Paper, STEPS, SamplePlan, StepPlan, StepsError};
pub use read::{read, read_photo};
pub use reading::{Measured, Outlines, Print, Reading, Step, Surface};
pub use refused::{Place, Refused, Why};
pub use tag::Tag;
