//! Visual angle and seats against published rules and figures, and against plain vectors.

use std::f64::consts::{FRAC_PI_2, PI, TAU};

use proptest::prelude::*;
use sight::{ARCMIN, Acuity, HEIGHTS, HeightLimit, Seat, View, angle_of, arcmin, blur, critical_stroke, size_at};

use crate::table::agree;

/// Heights in mm by h = 2 d tan(A/2), to the two digits of a table worked elsewhere.
#[test]
fn heights_by_distance() {
    for (distance, heights) in [
        (350.0, [0.51, 1.02, 1.63, 2.04, 2.24, 3.05]),
        (500.0, [0.73, 1.45, 2.33, 2.91, 3.20, 4.36]),
        (750.0, [1.09, 2.18, 3.49, 4.36, 4.80, 6.55]),
        (1200.0, [1.75, 3.49, 5.59, 6.98, 7.68, 10.47]),
    ] {
        for (minutes, height) in [5.0, 10.0, 16.0, 20.0, 22.0, 30.0].into_iter().zip(heights) {
            agree("height", size_at(minutes * ARCMIN, distance), height, 0.0051);
        }
    }
}

/// Rules of thumb of others: the FAA's d/200 is 17.2'; NUREG-0700's d x 0.006 is about its 20'; a letter of 20/20 on
/// the chart at 20 feet is 8.87 mm high (Snellen).
#[test]
fn rules_of_thumb() {
    agree("d/200", arcmin(angle_of(1.0, 200.0)), 17.2, 0.05);
    agree("d x 0.006", arcmin(angle_of(6.0, 1000.0)), 20.6, 0.05);
    agree("chart", size_at(5.0 * ARCMIN, 20.0 * 304.8), 8.87, 0.005);
    assert!(HEIGHTS.windows(2).all(|two| two[0].angle < two[1].angle));
    assert!(HEIGHTS.iter().all(|limit| !limit.source.is_empty() && !limit.what.is_empty()));
    agree("least", HeightLimit::LEAST.arcmin(), 16.0, 1e-12);
}

/// The three seats, and the numeral that each needs for 20' (worked with the approximation d A / sin(elevation)).
#[test]
fn seats_at_the_table() {
    for (seat, distance, elevation, height, hidden) in [
        (Seat::OWNER, 586.0, 53.0, 4.3, 2.23),
        (Seat::NEIGHBOUR, 762.0, 38.0, 7.2, 3.83),
        (Seat::ACROSS, 1060.0, 26.0, 13.9, 6.06),
    ] {
        agree("distance", seat.distance(), distance, 0.5);
        agree("elevation", seat.elevation().to_degrees(), elevation, 0.5);
        let view = View::upright(seat);
        agree("height", view.height_for(20.0 * ARCMIN), height, 0.06);
        let approximate = seat.distance() * 20.0 / 3437.75 / seat.elevation().sin();
        agree("approximation", approximate / view.height_for(20.0 * ARCMIN), 1.0, 1e-4);
        agree("hidden by 3 mm", view.hides(3.0), hidden, 0.005);
    }
}

/// Howett's method: a 20/40 reader at 1 m needs strokes of 0.58 mm; at 1/6 of the height that is 3.5 mm.
#[test]
fn strokes() {
    let weak = critical_stroke(1000.0, Acuity::WEAK);
    agree("stroke", weak, 0.58, 0.005);
    agree("height", 6.0 * weak, 3.5, 0.05);
    agree("per mm and S", critical_stroke(1.0, Acuity::NORMAL) / 20.0, 1.4544e-5, 1e-9);
    agree("older", critical_stroke(1000.0, Acuity::WEAK.older()), 1.5 * weak, 1e-6);
    agree("low vision", Acuity::LOW.over(), 70.0, 1e-12);
    // Flat on the table, across the table: thicker by 1 / sin 26.3 degrees.
    let flat = View::upright(Seat::ACROSS).critical_stroke(Acuity::NORMAL);
    agree("flat", flat, critical_stroke(1060.0, Acuity::NORMAL) / 0.4434, 1e-3);
    for wrong in [f64::NAN, 0.0, 4.0, 500.0] {
        assert!(Acuity::snellen(wrong).is_err_and(|error| error.to_string().contains("20/")), "{wrong}");
    }
}

/// A grating of bars as wide as the finest stroke, blurred as documented: the fundamental of a Gaussian's transform.
#[test]
fn blur_leaves_some_contrast_at_the_limit() {
    for acuity in [Acuity::NORMAL, Acuity::WEAK, Acuity::LOW] {
        let period = 2.0 * acuity.resolves();
        let left = (-2.0 * (PI * blur(acuity) / period).powi(2)).exp();
        agree("contrast left", left, 0.29, 0.005);
    }
}

#[test]
fn seats_that_are_none_are_refused() {
    for (away, eye) in [(-1.0, 400.0), (f64::NAN, 400.0), (300.0, 0.0), (300.0, f64::INFINITY), (3e5, 400.0)] {
        let error = Seat::new(away, eye).expect_err("no seat").to_string();
        assert!(error.contains("mm"), "{error}");
    }
    assert!(View::between([0.0, 0.0, 5.0], [0.0, 100.0]).is_err());
    // Straight above: nothing is foreshortened, nothing hidden, whichever way round.
    let above = View::between([3.0, 4.0, 500.0], [3.0, 4.0]).expect("a view");
    agree("height", above.angular_height(10.0), angle_of(10.0, 500.0), 1e-15);
    assert_eq!((above.shift(3.0), above.squeeze(), above.azimuth()), ([0.0, 0.0], 1.0, 0.0));
}

/// Who sits where about a mark whose up is y.
#[test]
fn azimuths() {
    for (eye, azimuth) in
        [([0.0, -400.0], 0.0), ([400.0, 0.0], FRAC_PI_2), ([0.0, 400.0], PI), ([-400.0, 0.0], -FRAC_PI_2)]
    {
        let view = View::between([eye[0] + 20.0, eye[1] - 7.0, 470.0], [20.0, -7.0]).expect("a view");
        agree("azimuth", view.azimuth(), azimuth, 1e-12);
        agree("away", view.seat().away(), 400.0, 1e-12);
    }
    // Upside down a mark looks as large; from aside its width is what is squeezed.
    let [near, across, aside] =
        [0.0, PI, FRAC_PI_2].map(|azimuth| View::new(Seat::NEIGHBOUR, azimuth).apparent(6.0, 6.0));
    agree("upside down", across.height, near.height, 1e-15);
    agree("from aside", aside.height, near.width, 1e-15);
    agree("from aside", aside.width, near.height, 1e-15);
    assert!(near.height < 0.63 * near.width);
}

prop_compose! {
    fn any_seat()(away in 1.0..3000.0, eye in 50.0..1500.0) -> Seat {
        Seat::new(away, eye).expect("a seat")
    }
}

prop_compose! {
    fn any_view()(seat in any_seat(), azimuth in -TAU..TAU) -> View {
        View::new(seat, azimuth)
    }
}

proptest! {
    /// The short formulas are the angle between the rays to the ends, and the needed height gives the angle.
    #[test]
    fn sizes_are_angles_between_rays(view in any_view(), size in 0.1..40.0f64) {
        let rays = view.angle_between([0.0, -size / 2.0], [0.0, size / 2.0]);
        prop_assert!((view.angular_height(size) - rays).abs() < 1e-12, "{} {}", view.angular_height(size), rays);
        let rays = view.angle_between([-size / 2.0, 0.0], [size / 2.0, 0.0]);
        prop_assert!((view.angular_width(size) - rays).abs() < 1e-12);
        prop_assert!((view.height_for(view.angular_height(size)) / size - 1.0).abs() < 1e-9);
        prop_assert!((view.width_for(view.angular_width(size)) / size - 1.0).abs() < 1e-9);
        let apparent = view.apparent(size, 2.0 * size);
        prop_assert_eq!((apparent.width, apparent.height), (view.angular_width(size), view.angular_height(2.0 * size)));
    }

    /// Foreshortening, to the first order: sin(elevation) along the view, nothing across it.
    #[test]
    fn small_marks_are_foreshortened_along_the_view(view in any_view()) {
        let small = 0.01;
        let along = view.azimuth().cos().powi(2);
        let squeezed = (along * view.squeeze().powi(2) + 1.0 - along).sqrt() * small / view.seat().distance();
        prop_assert!((view.angular_height(small) / squeezed - 1.0).abs() < 1e-6);
    }

    #[test]
    fn further_away_looks_smaller(seat in any_seat(), further in 1.0..500.0, size in 0.5..20.0) {
        let far = Seat::new(seat.away() + further, seat.eye()).expect("a seat");
        for azimuth in [0.0, FRAC_PI_2, PI] {
            prop_assert!(View::new(far, azimuth).angular_height(size) < View::new(seat, azimuth).angular_height(size));
        }
        prop_assert!(View::upright(far).height_for(20.0 * ARCMIN) > View::upright(seat).height_for(20.0 * ARCMIN));
        prop_assert!(View::upright(far).hides(3.0) > View::upright(seat).hides(3.0));
    }

    /// A lower eye sees less of a flat mark, as long as it looks down by less than half a right angle: above that it
    /// only comes nearer.
    #[test]
    fn a_lower_eye_sees_a_lower_mark(away in 300.0..2000.0, eye in 0.2..0.99, lower in 0.3..0.99, size in 0.5..20.0) {
        let high = View::upright(Seat::new(away, away * eye).expect("a seat"));
        let low = View::upright(Seat::new(away, away * eye * lower).expect("a seat"));
        prop_assert!(low.angular_height(size) < high.angular_height(size));
        prop_assert!(low.hides(3.0) > high.hides(3.0));
        prop_assert!(low.squeeze() < high.squeeze());
    }
}
