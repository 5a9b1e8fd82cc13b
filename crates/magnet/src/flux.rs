//! The toy-safety figure of a loose magnet.

use crate::Disc;
use crate::search::peak;

/// Flux index from which on a magnet small enough to be swallowed counts as hazardous, in
/// kG²·mm² (equal to 0.5 T²·mm²): 16 CFR 1262.2; SOR/2011-17 section 43; ASTM F963; EN 71-1.
pub const FLUX_INDEX_LIMIT: f64 = 50.0;

/// How far over the pole face the probe of the method measures, in mm, `[least, middle, most]`:
/// 0.38 ± 0.13 (Toys Regulations, SOR/2011-17, schedule 10; the other standards say the same).
pub const PROBE_HEIGHT: [f64; 3] = [0.25, 0.38, 0.51];

/// Flux index by calculation, (largest flux density at the pole in kG)² x area of the pole in mm².
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct FluxIndex {
    /// In kG²·mm², probe at its middle height.
    pub index: f64,
    /// The index with the probe as high and as low as the method allows, `[least, most]`: what two
    /// laboratories may find on the same magnet.
    pub span: [f64; 2],
    /// The largest flux density normal to the face, at the middle height, in T.
    pub field: f64,
    /// Where it lies, in mm from the axis. Thin discs are strongest off their centre.
    pub radius: f64,
    /// The flux density over the centre, in T.
    pub field_at_centre: f64,
}

impl FluxIndex {
    /// Whether the index reaches [`FLUX_INDEX_LIMIT`]. Every disc that fits a small-parts cylinder
    /// and reaches it is a hazardous magnet once it is loose.
    #[must_use]
    pub fn hazardous(&self) -> bool {
        self.index >= FLUX_INDEX_LIMIT
    }

    /// Whether the tolerance of the method alone can put the magnet on either side of the limit:
    /// only a measurement tells.
    #[must_use]
    pub fn uncertain(&self) -> bool {
        self.span[0] < FLUX_INDEX_LIMIT && self.span[1] >= FLUX_INDEX_LIMIT
    }
}

impl Disc {
    /// Flux index by the method of the toy standards, with the field calculated instead of
    /// measured: the probe is led over the whole pole face, and the largest value counts.
    ///
    /// # Caution
    /// Two swallowed magnets attract each other through walls of the gut and can kill. Keep loose
    /// magnets from children, glue and cap them so that they cannot come loose, and seek medical
    /// help at once if one may have been swallowed. A calculated index is no test report: what may
    /// be sold, to whom and with which warning is for the rules of the place and an accredited
    /// laboratory to say.
    ///
    /// ```
    /// let flux = "6x2:1.30T".parse::<magnet::Disc>()?.flux_index();
    /// assert_eq!(flux.index.round(), 313.0);
    /// # Ok::<(), magnet::DiscError>(())
    /// ```
    #[must_use]
    pub fn flux_index(&self) -> FluxIndex {
        let [low, middle, high] = PROBE_HEIGHT;
        let (radius, field) = self.strongest(middle);
        FluxIndex {
            index: self.index_of(field),
            span: [self.index_of(self.strongest(high).1), self.index_of(self.strongest(low).1)],
            field,
            radius,
            field_at_centre: self.over_face(0.0, middle),
        }
    }

    fn index_of(&self, field: f64) -> f64 {
        let kilogauss = 10.0 * field;
        kilogauss * kilogauss * self.face()
    }

    /// Normal flux density `height` over the face.
    fn over_face(&self, rho: f64, height: f64) -> f64 {
        self.field(rho, self.thickness() / 2.0 + height).along.abs()
    }

    /// Radius and size of the largest normal flux density `height` over the face.
    fn strongest(&self, height: f64) -> (f64, f64) {
        let radius = self.radius();
        // The hump near the rim of a wide thin disc is about as wide as the height.
        let count = (8.0 * radius / height).ceil().clamp(32.0, 4000.0) as usize;
        peak(0.0, radius, count, |rho| self.over_face(rho, height))
    }
}
