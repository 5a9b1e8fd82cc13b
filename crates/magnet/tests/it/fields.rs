//! Flux density against the Biot-Savart integral (tools/magnet_reference.py), and its laws.

use magnet::Field;

use crate::table::{agree, disc, rows};

#[test]
fn biot_savart() {
    for row in rows(include_str!("../data/fields.csv"), 7) {
        let found = disc(row[0], row[1], row[2]).field(row[3], row[4]);
        let error = (found.away - row[5]).hypot(found.along - row[6]);
        let length = row[5].hypot(row[6]);
        assert!(error < 1e-13 * length, "{row:?}: {found:?}, {:.2e}", error / length);
    }
}

/// On the axis: J/2 [(h+t)/sqrt((h+t)²+R²) - h/sqrt(h²+R²)], h over the face (textbook).
#[test]
fn axis() {
    let disc = disc(6.0, 2.0, 1.3);
    for h in [0.0, 0.1, 1.0, 5.0, 12.0, 200.0_f64] {
        let exact = 0.65 * ((h + 2.0) / (h + 2.0).hypot(3.0) - h / h.hypot(3.0));
        let found = disc.field(0.0, 1.0 + h);
        agree(&format!("{h}"), found.along, exact, if h > 100.0 { 1e-9 } else { 1e-13 });
        assert_eq!(found.away, 0.0);
    }
}

/// Across the side wall the part along the axis jumps by the remanence, and the wall itself has
/// the mean; across the pole face the normal part does not jump.
#[test]
fn walls() {
    let disc = disc(6.0, 2.0, 1.3);
    let (inside, on, outside) =
        (disc.field(3.0 - 1e-9, 0.4).along, disc.field(3.0, 0.4).along, disc.field(3.0 + 1e-9, 0.4).along);
    agree("jump", inside - outside, 1.3, 1e-7);
    agree("mean", on, 0.5 * (inside + outside), 1e-7);
    agree("face", disc.field(1.5, 1.0 + 1e-9).along, disc.field(1.5, 1.0 - 1e-9).along, 1e-7);
}

#[test]
fn mirrored() {
    let disc = disc(6.0, 2.0, 1.3);
    let Field { away, along } = disc.field(2.0, 1.7);
    assert_eq!(disc.field(-2.0, 1.7), Field { away: -away, along });
    let below = disc.field(2.0, -1.7);
    agree("away", below.away, -away, 1e-14);
    agree("along", below.along, along, 1e-14);
}

/// No flux is made: div B = 0 by central differences in a few places, inside and out.
#[test]
fn no_flux_is_made() {
    let disc = disc(7.0, 2.5, 1.25);
    for (rho, z) in [(1.0, 0.2), (3.0, 1.0), (2.0, 1.6), (5.0, 0.3), (4.0, 3.0), (20.0, 9.0)] {
        let e = 1e-4;
        let flow = |rho: f64| rho * disc.field(rho, z).away;
        let away = (flow(rho + e) - flow(rho - e)) / (2.0 * e * rho);
        let along = (disc.field(rho, z + e).along - disc.field(rho, z - e).along) / (2.0 * e);
        assert!((away + along).abs() < 1e-6 * along.abs() + 1e-10, "{rho}, {z}: {away} {along}");
    }
}

#[test]
fn rims_and_nonsense_do_not_panic() {
    let disc = disc(6.0, 2.0, 1.3);
    assert!(disc.field(3.0, 1.0).away.is_infinite());
    assert!(disc.field(f64::NAN, 1.0).along.is_nan());
    assert!(disc.field(1e200, -1e200).along.abs() < 1e-300);
}
