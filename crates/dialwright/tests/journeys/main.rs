//! The desk as a maker uses it, in a real browser. Without one, these say so and pass; `DIALWRIGHT_BROWSER=required` makes its
//! absence a failure.

mod browser;
mod checks;
mod client;
mod desk;
mod everyone;
mod family;
mod keeping;
mod look;
mod looks;
mod magnets;
mod making;
mod mending;
mod reaching;
mod soak;
mod speed;
mod turning;
mod workshop;
