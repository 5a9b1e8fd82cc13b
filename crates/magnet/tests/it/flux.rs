//! The flux index.
//!
//! The method is that of the Toys Regulations (SOR/2011-17, schedule 10); the expected figures were
//! worked out beforehand from the field on a dense grid of places, by another program.

use magnet::{FLUX_INDEX_LIMIT, Grade, PROBE_HEIGHT};

use crate::table::{agree, disc};

#[test]
fn six_by_two() {
    let flux = disc(6.0, 2.0, 1.30).flux_index();
    agree("peak", flux.field, 0.3325, 2e-4);
    agree("centre", flux.field_at_centre, 0.3223, 2e-4);
    agree("radius", flux.radius, 1.68, 5e-3);
    agree("index", flux.index, 313.0, 2e-3);
    agree("least", flux.span[0], 274.0, 2e-3);
    agree("most", flux.span[1], 367.0, 2e-3);
    assert!(flux.hazardous() && !flux.uncertain());
}

#[test]
fn anchor() {
    let disc = disc(7.0, 2.5, 1.25);
    let flux = disc.flux_index();
    agree("peak", flux.index, 448.26, 2e-5);
    agree("centre", (10.0 * flux.field_at_centre).powi(2) * disc.face(), 418.24, 2e-5);
}

#[test]
fn other_discs() {
    for (d, t, br, index) in [
        (2.0, 1.0, 1.44, 34.0),
        (3.0, 0.5, 1.44, 26.0),
        (3.0, 1.0, 1.19, 46.6),
        (3.0, 1.0, 1.30, 55.6),
        (4.0, 0.5, 1.30, 31.0),
        (5.0, 0.5, 1.19, 35.0),
        (4.0, 1.0, 1.30, 81.0),
        (6.0, 1.0, 1.30, 140.0),
        (8.0, 3.0, 1.44, 853.0),
    ] {
        let flux = disc(d, t, br).flux_index();
        agree(&format!("{d}x{t}:{br}"), flux.index, index, 0.5 / index + 1e-3);
        assert_eq!(flux.hazardous(), index >= FLUX_INDEX_LIMIT);
    }
}

/// A disc near the limit is one for the laboratory.
#[test]
fn near_the_limit_only_a_measurement_tells() {
    assert!(disc(3.0, 1.0, 1.19).flux_index().uncertain());
    assert!(!disc(2.0, 0.5, 1.19).flux_index().uncertain());
}

/// The whole face is searched: on a dense grid there is nothing larger.
#[test]
fn nothing_on_the_face_is_stronger() {
    for (d, t) in [(2.0, 1.0), (6.0, 2.0), (12.0, 0.5), (30.0, 1.0), (100.0, 2.0), (4.0, 10.0)] {
        let disc = disc(d, t, Grade::N42.nominal());
        let flux = disc.flux_index();
        for i in 0..=5000 {
            let rho = d / 2.0 * f64::from(i) / 5000.0;
            let field = disc.field(rho, t / 2.0 + PROBE_HEIGHT[1]).along.abs();
            assert!(field <= flux.field * (1.0 + 1e-12), "{d}x{t} at {rho}: {field}");
        }
        assert!(flux.radius <= d / 2.0);
        assert!(flux.span[0] < flux.index && flux.index < flux.span[1]);
    }
}
