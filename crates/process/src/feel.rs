//! What a hand finds easy: limits of turning and keeping.

/// Limits that a turned part is held against; forces at its rim in N.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Feel {
    /// Below this it moves when it is only brushed.
    pub turn_least: f64,
    /// Above this it is stiff.
    pub turn_stiff: f64,
    /// Above this it is not turned by one finger.
    pub turn_most: f64,
    /// Acceleration that it must stand without being thrown off its seat, in multiples of gravity.
    pub shake: f64,
    /// Coefficient of friction of a finger on the rim: how hard it must press to turn.
    pub finger: f64,
}

impl Feel {
    /// The limits of a workshop that says nothing else.
    ///
    /// Turning: 0.15 and 2.5 N are our own proposal; 5.6 N is the greatest resistance of a discrete thumbwheel (20 oz, MIL-STD-1472E
    /// figure 6). Shaking: 15 g, the common severity for handled equipment (IEC 60068-2-27, from memory). Finger: 0.6, the
    /// finger pad on aluminium (Seo et al., Ergonomics 52, 2009); on sanded wood it is rarely less.
    pub const USUAL: Feel = Feel { turn_least: 0.15, turn_stiff: 2.5, turn_most: 5.6, shake: 15.0, finger: 0.6 };
}
