//! Materials, and what must never lie under the beam.

/// One material of a layer.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Material {
    /// Its name.
    pub name: &'static str,
    /// Whether it may be cut.
    pub cutting: Cutting,
    /// Largest relative change of size across the sheet for one per cent of moisture, in the worst direction in the plane; 0 when it does not swell.
    pub swelling: f64,
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

/// All materials that the house knows.
pub const MATERIALS: &[Material] = &[];
