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

pub use kurbo::{BezPath, Point, Rect, Vec2};
