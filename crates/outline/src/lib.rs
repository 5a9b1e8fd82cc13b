//! Plane geometry of closed curves made of straight lines and true circular arcs, in mm,
//! y up, counter-clockwise positive: booleans, offsets, motions, and the exact distances between
//! outlines from which the turn test is made.
//!
//! - [`Curve`]: one closed curve without self-crossings.
//! - [`Shape`]: a flat region: outer curves counter-clockwise, holes clockwise.
//! - [`Motion`]: a rigid motion, maybe with a mirror in it; [`Axis`]: a line to mirror about.
//! - [`Edges`]: a shape's or curve's pieces, made ready for many distance questions.
//!
//! Knows no dial.

mod biarc;
mod booleans;
mod circles;
mod curve;
mod edges;
mod error;
mod fillet;
mod kerf;
mod makers;
mod mirror;
mod motion;
mod offset;
mod path;
mod piece;
mod segment;
mod shape;
mod stroke;
mod touch;

pub use circles::{enclosing_radius, inscribed_circle};
pub use curve::Curve;
pub use edges::{Edges, Nearest};
pub use error::OutlineError;
pub use kerf::{EllipticCurve, EllipticPiece, KerfSide, compensated};
pub use kurbo::{BezPath, PathEl, Point, Rect, Vec2};
pub use mirror::{Mismatch, mirror_mismatch};
pub use motion::{Axis, Motion, Side};
pub use segment::Segment;
pub use shape::{Shape, overlap, overlap_reaches};
pub use stroke::{Neck, narrowest_gap, narrowest_stroke};
pub use touch::{Touch, Turn};
