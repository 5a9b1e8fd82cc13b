//! L*a*b* and CIEDE2000 against published pairs and tools/colour_reference.py.

use proptest::prelude::*;
use sight::{Lab, Srgb, ciede2000, lightness};

use crate::table::{agree, rows};

fn lab(row: &[f64]) -> Lab {
    Lab { lightness: row[0], a: row[1], b: row[2] }
}

fn colour(row: &[f64]) -> Srgb {
    let byte = |at: usize| row[at] as u8;
    Srgb { red: byte(0), green: byte(1), blue: byte(2) }
}

/// Sharma, Wu and Dalal (2005), supplementary data: all 34 pairs, to the four printed digits, and to 1e-12 of the
/// formula in 50 digits. Pairs 9 to 16 sit on the jump at opposite hues.
#[test]
fn published_pairs() {
    let rows = rows(include_str!("../data/sharma.csv"), 8);
    assert_eq!(rows.len(), 34);
    for (pair, row) in rows.iter().enumerate() {
        let found = ciede2000(lab(&row[..3]), lab(&row[3..6]));
        agree(&format!("pair {}, printed", pair + 1), found, row[6], 5.1e-5);
        agree(&format!("pair {}, exact", pair + 1), found, row[7], 1e-12);
    }
}

#[test]
fn random_colours_of_another_library() {
    let rows = rows(include_str!("../data/colours.csv"), 13);
    assert_eq!(rows.len(), 400);
    for row in rows {
        for (code, expected) in [(&row[..3], lab(&row[6..9])), (&row[3..6], lab(&row[9..12]))] {
            let found = Lab::from(colour(code));
            let what = format!("{:?}", colour(code));
            agree(&what, found.lightness, expected.lightness, 1e-11);
            agree(&what, found.a, expected.a, 1e-11);
            agree(&what, found.b, expected.b, 1e-11);
        }
        let found = ciede2000(Lab::from(colour(&row)), Lab::from(colour(&row[3..])));
        agree(&format!("{row:?}"), found, row[12], 1e-10);
    }
}

/// Equal parts of the primaries are the white itself: no hue, however dark.
#[test]
fn greys_have_no_hue() {
    for code in 0..=255u8 {
        let grey = Lab::from(Srgb { red: code, green: code, blue: code });
        assert!(grey.chroma() < 1e-12, "{code}: {grey:?}");
    }
    agree("white", Lab::from_light([1.0; 3]).lightness, 100.0, 1e-12);
    agree("black", Lab::from_light([0.0; 3]).lightness, 0.0, 1e-12);
}

prop_compose! {
    fn any_colour()(red: u8, green: u8, blue: u8) -> Srgb {
        Srgb { red, green, blue }
    }
}

prop_compose! {
    fn any_lab()(lightness in 0.0..100.0, a in -120.0..120.0, b in -120.0..120.0) -> Lab {
        Lab { lightness, a, b }
    }
}

proptest! {
    #[test]
    fn a_colour_is_like_itself_and_differs_the_same_both_ways(one in any_lab(), other in any_lab()) {
        prop_assert_eq!(ciede2000(one, one), 0.0);
        let difference = ciede2000(one, other);
        prop_assert!(difference > 0.0 && difference < 200.0);
        prop_assert!((difference - ciede2000(other, one)).abs() < 1e-11 * difference);
    }

    /// Hues that are opposite but for the last digit: still the same both ways.
    #[test]
    fn opposite_hues_do_not_flip(one in any_lab(), share in 0.1..2.0f64) {
        let other = Lab { lightness: 40.0, a: -share * one.a, b: -share * one.b };
        let difference = ciede2000(one, other);
        prop_assert!((difference - ciede2000(other, one)).abs() < 1e-11 * difference);
    }

    #[test]
    fn lightness_is_nearly_that_of_the_luminance(colour in any_colour()) {
        prop_assert!((Lab::from(colour).lightness - lightness(colour.luminance())).abs() < 0.005);
    }
}
