//! The machine that cuts.

/// One machine.
#[derive(Clone, Debug, PartialEq)]
pub struct Machine {
    /// What the maker calls it.
    pub name: String,
    /// Usable width of the bed, along x.
    pub bed_width: f64,
    /// Usable height of the bed, along y.
    pub bed_height: f64,
    /// Colours that tell the steps of a sheet apart.
    pub colours: StepColours,
}

/// Colours of the steps, as `#rrggbb`.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct StepColours {
    /// Engraved areas.
    pub engrave: String,
    /// Pockets.
    pub pocket: String,
    /// Inside cuts.
    pub cut_inside: String,
    /// Outside cuts.
    pub cut_outside: String,
}
