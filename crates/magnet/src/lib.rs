//! Field, force, stiffness and flux index of disc magnets, for one pair or a ring of pairs.
//!
//! The room knows discs magnetised along their axes and nothing of the part they are glued into.
//! The discs are rigid and uniformly magnetised (mu_r = 1) with nothing else magnetic near. In that model the
//! formulas are exact, from contact to any distance, and computed to better than 1e-9 of the force for discs thicker
//! than a hundredth of their diameter. Real magnets differ by a few percent: 3 to 5 % of force by the grade alone.
//!
//! ```
//! use magnet::{Disc, Pair};
//!
//! let disc: Disc = "6x2:N42".parse()?;
//! let pair = Pair::twins(disc);
//! let pull = pair.pull(0.3);                          // 6.3 N through a gap of 0.3 mm
//! let aside = pair.forces(0.3, 1.0);                  // ... and pushed 1 mm aside
//! assert!(aside.axial < pull && aside.lateral < 0.0); // weaker, and drawn back
//! assert!(pair.centres(0.3).on_axis());
//! assert!(disc.flux_index().hazardous());             // as nearly every disc that holds a part
//! # Ok::<(), magnet::DiscError>(())
//! ```
//!
//! # Units
//! Lengths in mm, remanence and flux density in T, forces in N, stiffness in N/mm, torque in N·mm,
//! angles in radians. Equal poles do not meet here: two discs of a [`Pair`] attract; for a pair
//! turned to repel, negate what it tells.
//!
//! # Meaningless numbers
//! Sizes are checked once, by [`Disc::new`]. A negative gap, or a number that is none, gives NaN;
//! nothing panics.
//!
//! # Safety of people
//! Small strong magnets that are swallowed can kill. [`Disc::flux_index`] is the toy-safety figure;
//! see the cautions there.

mod click;
mod coaxial;
mod disc;
mod elliptic;
mod field;
mod flux;
mod grade;
mod multipole;
mod offset;
mod pair;
mod quadrature;
mod rest;
mod search;

pub use click::{Clicks, Load, Poles, Seat};
pub use disc::{Disc, DiscError, PLATING};
pub use elliptic::{cel, first, second, third};
pub use field::Field;
pub use flux::{FLUX_INDEX_LIMIT, FluxIndex, PROBE_HEIGHT};
pub use grade::Grade;
pub use pair::{Forces, Pair};
pub use rest::{Centring, Restoring};

/// Magnetic constant in N/A² (CODATA 2022 recommended value).
pub(crate) const MU_0: f64 = 1.256_637_061_27e-6;
