//! How closely arcs follow the curves that they stand for, at the size to which they are scaled.

/// Arcs lie within this many mm of the drawn curve at the final size: a hundredth of what a beam is wide.
pub(crate) const WITHIN: f64 = 5e-4;

/// Outlines up to this height, in mm, share the coarsest fit.
const COARSEST: f64 = 5.0;

/// One of the fits in which outlines are kept, each for sizes up to twice those of the one before. A small mark
/// needs fewer arcs than a large one, and all questions about it are answered the sooner.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
pub(crate) struct Closeness(u8);

impl Closeness {
    /// How many there are: the last is for heights up to 320 mm, and still close enough to look smooth above.
    pub(crate) const COUNT: usize = 7;
    /// The fit for small marks; proportions are measured on it.
    pub(crate) const COARSE: Closeness = Closeness(0);

    /// The fit for outlines of a height in mm.
    pub(crate) fn at(height: f64) -> Closeness {
        let larger = (height / COARSEST).log2().ceil();
        Closeness(larger.clamp(0.0, Closeness::COUNT as f64 - 1.0) as u8)
    }

    /// Its place among all.
    pub(crate) fn index(self) -> usize {
        usize::from(self.0)
    }

    /// The tolerance at a height of 1 mm.
    pub(crate) fn tolerance(self) -> f64 {
        WITHIN / (COARSEST * f64::from(1u32 << self.0))
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn keeps_the_promise_up_to_the_largest_height_of_each_fit() {
        for height in [0.5, 4.99, 5.0, 5.01, 10.0, 19.9, 20.0, 320.0] {
            let closeness = Closeness::at(height);
            let off = closeness.tolerance() * height;
            assert!(off <= WITHIN * (1.0 + 1e-12), "{height} mm: {off} mm off");
            assert!(height <= COARSEST || off > 0.49 * WITHIN, "{height} mm: finer than needed, {off} mm");
        }
        assert_eq!(Closeness::at(f64::NAN), Closeness::COARSE);
        assert_eq!(Closeness::at(1e9).index(), Closeness::COUNT - 1);
    }
}
