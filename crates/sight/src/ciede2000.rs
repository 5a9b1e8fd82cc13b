//! CIEDE2000: how different two colours look.

use std::f64::consts::{PI, TAU};

use crate::Lab;

/// Hues this near to opposite count as opposite, in radians. Which mean hue opposite colours get is a matter of the
/// last digit otherwise, and the two sides give different results (pairs 9 to 16 of Sharma, Wu and Dalal 2005).
const OPPOSITE: f64 = 1e-12;
/// Below this chroma a colour is grey, and what hue it seems to have is rounding.
const GREY: f64 = 1e-9;

/// Colour difference ΔE00 with the parametric factors at 1 (G. Sharma, W. Wu, E. N. Dalal, The CIEDE2000
/// color-difference formula: implementation notes, supplementary test data, and mathematical observations, Color
/// Research and Application 30 (2005) 21-30, equations 2 to 22).
///
/// About 1 can just be told apart side by side (common practice). It says whether two surfaces look different, not
/// whether a mark can be read: for that see [`Contrast`](crate::Contrast). The formula jumps where two hues are
/// opposite, such as by 1 % between the published pairs 14 and 15.
///
/// ```
/// use sight::{Lab, ciede2000};
///
/// let one = Lab { lightness: 50.0, a: 2.5, b: 0.0 };
/// let other = Lab { lightness: 73.0, a: 25.0, b: -18.0 };
/// assert!((ciede2000(one, other) - 27.1492).abs() < 5e-5);
/// ```
#[must_use]
pub fn ciede2000(one: Lab, other: Lab) -> f64 {
    let mean_chroma = f64::midpoint(one.chroma(), other.chroma());
    let stretch = 1.5 - 0.5 * saturation(mean_chroma);
    let [a1, a2] = [stretch * one.a, stretch * other.a];
    let [chroma1, chroma2] = [a1.hypot(one.b), a2.hypot(other.b)];
    let [hue1, hue2] = [hue(a1, one.b), hue(a2, other.b)];

    let lightness_difference = other.lightness - one.lightness;
    let chroma_difference = chroma2 - chroma1;
    let (turn, mean_hue) = hues(hue1, hue2, [chroma1 < GREY, chroma2 < GREY]);
    let hue_difference = 2.0 * (chroma1 * chroma2).sqrt() * (turn / 2.0).sin();

    let mean_lightness = f64::midpoint(one.lightness, other.lightness);
    let mean_chroma = f64::midpoint(chroma1, chroma2);
    let ripple = 1.0 - 0.17 * (mean_hue - 30f64.to_radians()).cos()
        + 0.24 * (2.0 * mean_hue).cos()
        + 0.32 * (3.0 * mean_hue + 6f64.to_radians()).cos()
        - 0.20 * (4.0 * mean_hue - 63f64.to_radians()).cos();
    let from_middle = (mean_lightness - 50.0).powi(2);
    let lightness_weight = 1.0 + 0.015 * from_middle / (20.0 + from_middle).sqrt();
    let chroma_weight = 1.0 + 0.045 * mean_chroma;
    let hue_weight = 1.0 + 0.015 * mean_chroma * ripple;
    let bump = 30f64.to_radians() * (-((mean_hue.to_degrees() - 275.0) / 25.0).powi(2)).exp();
    let rotation = -2.0 * saturation(mean_chroma) * (2.0 * bump).sin();

    let lightness = lightness_difference / lightness_weight;
    let chroma = chroma_difference / chroma_weight;
    let hue = hue_difference / hue_weight;
    (lightness.powi(2) + chroma.powi(2) + hue.powi(2) + rotation * chroma * hue).max(0.0).sqrt()
}

/// sqrt(C⁷ / (C⁷ + 25⁷)), 0 for grey to 1 for strong colours.
fn saturation(chroma: f64) -> f64 {
    let seventh = chroma.powi(7);
    (seventh / (seventh + 25f64.powi(7))).sqrt()
}

/// Hue angle, 0 to 2π.
fn hue(a: f64, b: f64) -> f64 {
    b.atan2(a).rem_euclid(TAU)
}

/// The turn from one hue to the other by the shorter way, and the hue half-way (equations 10 and 14). Where one
/// colour is grey there is no turn, and the mean is the other's hue.
fn hues(one: f64, other: f64, grey: [bool; 2]) -> (f64, f64) {
    let turn = other - one;
    let sum = one + other;
    if grey[0] {
        (0.0, other)
    } else if grey[1] {
        (0.0, one)
    } else if turn.abs() <= PI + OPPOSITE {
        (turn, sum / 2.0)
    } else {
        let mean = if sum < TAU { (sum + TAU) / 2.0 } else { (sum - TAU) / 2.0 };
        (turn - TAU.copysign(turn), mean)
    }
}
