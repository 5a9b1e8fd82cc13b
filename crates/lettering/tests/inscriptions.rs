//! How texts are set: heights, cells, gaps, bars and dots, and what cannot be set.

use lettering::{Lettering, LetteringError, TwinMark, Weight, Zero};
use outline::{Axis, Edges, Shape, mirror_mismatch};
use proptest::prelude::*;

fn set(weight: Weight, text: &str, height: f64, twin: TwinMark) -> Shape {
    Lettering::shipped(weight).inscription(text, height, twin).expect("a text that can be set")
}

fn plain(text: &str, height: f64) -> Shape {
    set(Weight::Medium, text, height, TwinMark::None)
}

fn distance(a: &Shape, b: &Shape) -> f64 {
    Edges::of(a).nearest(&Edges::of(b)).distance
}

/// The first so many curves of a shape, and the rest.
fn parted(shape: &Shape, first: usize) -> (Shape, Shape) {
    let (a, b) = shape.loops().split_at(first);
    (Shape::from_loops(a.to_vec()), Shape::from_loops(b.to_vec()))
}

#[test]
fn height_is_that_of_figures_and_capitals() {
    for weight in Weight::ALL {
        for text in ["1", "4", "7", "H", "E", "147"] {
            let ink = set(weight, text, 5.0, TwinMark::None).bounds();
            assert!((ink.y0 + 2.5).abs() < 1e-9, "{text} stands at {}", ink.y0);
            assert!((ink.y1 - 2.5).abs() < 1e-9, "{text} ends at {}", ink.y1);
            assert!(ink.center().x.abs() < 1e-9, "{text} is off the middle");
        }
        // Round figures overshoot, as they do in all type, by less than a fortieth of their height.
        for text in ["0", "3", "6", "8", "9"] {
            let ink = set(weight, text, 5.0, TwinMark::None).bounds();
            assert!(ink.y1 < 2.5 + 0.125 && ink.y0 > -2.5 - 0.125, "{text}: {ink:?}");
        }
    }
}

#[test]
fn figures_stand_in_the_middle_of_equal_cells() {
    for weight in Weight::ALL {
        let lettering = Lettering::shipped(weight);
        let mut pitch: Option<f64> = None;
        for number in 0..100 {
            let text = format!("{number:02}");
            let curves = set(weight, &text[..1], 1.0, TwinMark::None).loops().len();
            let (a, b) = parted(&set(weight, &text, 1.0, TwinMark::None), curves);
            let here = b.bounds().center().x - a.bounds().center().x;
            let first = *pitch.get_or_insert(here);
            assert!((here - first).abs() < 1e-3, "{text}: {here}, others {first}");
            let gap = distance(&a, &b);
            assert!(gap > lettering.stroke(1.0) - 1e-3, "{text}: gap {gap}");
        }
    }
}

#[test]
fn a_stroke_fits_between_any_two_characters() {
    let characters: Vec<char> = (33..127u8).map(char::from).collect();
    let lettering = Lettering::shipped(Weight::Bold);
    let stroke = lettering.stroke(1.0);
    for &a in &characters {
        let curves = set(Weight::Bold, &a.to_string(), 1.0, TwinMark::None).loops().len();
        for &b in &characters {
            let (left, right) = parted(&set(Weight::Bold, &format!("{a}{b}"), 1.0, TwinMark::None), curves);
            let gap = distance(&left, &right);
            assert!(gap > stroke - 2e-4, "{a}{b}: gap {gap}, stroke {stroke}");
        }
    }
}

#[test]
fn kerning_draws_pairs_together() {
    let set = |text: &str| set(Weight::Regular, text, 1.0, TwinMark::None).bounds().width();
    for pair in ["AV", "To", "LT", "Ty"] {
        let apart: f64 = pair.chars().map(|c| set(&c.to_string())).sum();
        assert!(set(pair) < apart + 0.02, "{pair}: {} wide, its letters {apart}", set(pair));
    }
}

#[test]
fn the_bar_lies_a_stroke_below_and_is_a_stroke_thick() {
    for weight in Weight::ALL {
        for text in ["6", "9", "66", "19", "Jg"] {
            let without = set(weight, text, 8.0, TwinMark::None);
            let with = set(weight, text, 8.0, TwinMark::Bar);
            let (figures, bar) = parted(&with, without.loops().len());
            let stroke = Lettering::shipped(weight).stroke(8.0);
            assert!((figures.area() - without.area()).abs() < 1e-9, "figures have moved");
            let (ink, bar) = (figures.bounds(), bar.bounds());
            assert!((bar.height() - stroke).abs() < 1e-9, "{text}: {bar:?}");
            assert!((bar.x0 - ink.x0).abs() < 1e-9 && (bar.x1 - ink.x1).abs() < 1e-9);
            assert!((ink.y0.min(-4.0) - bar.y1 - stroke).abs() < 1e-9, "{text}: {bar:?} below {ink:?}");
        }
    }
}

#[test]
fn the_dot_stands_on_the_base_line_a_stroke_away() {
    for weight in Weight::ALL {
        let without = set(weight, "9", 8.0, TwinMark::None);
        let (figure, dot) = parted(&set(weight, "9", 8.0, TwinMark::Dot), without.loops().len());
        let stroke = Lettering::shipped(weight).stroke(8.0);
        assert!((dot.bounds().y0 + 4.0).abs() < 1e-9, "{:?}", dot.bounds());
        assert!((dot.bounds().x0 - figure.bounds().x1 - stroke).abs() < 1e-9);
        assert!(dot.bounds().width() > stroke && dot.bounds().width() < 1.5 * stroke);
        assert!(distance(&figure, &dot) >= stroke - 1e-9);
    }
}

#[test]
fn the_plain_zero_lacks_nothing_but_its_slash() {
    for weight in Weight::ALL {
        let zero = |zero| Lettering::with_zero(weight, zero).inscription("0", 1.0, TwinMark::None).expect("a zero");
        let (plain, slashed) = (zero(Zero::Plain), zero(Zero::Slashed));
        assert_eq!((plain.holes().len(), slashed.holes().len()), (1, 2));
        // Nothing is added, and what is taken away is the bar: a stroke or less wide, in one piece.
        assert!(plain.minus(&slashed).area() < 1e-4);
        let bar = slashed.minus(&plain).pieces().into_iter().filter(|piece| piece.area() > 1e-4);
        let bar: Vec<Shape> = bar.collect();
        assert_eq!(bar.len(), 1);
        // The island is an oval: it turns one way only.
        for piece in plain.holes()[0].segments() {
            if let outline::Segment::Arc { sweep, radius, .. } = piece {
                assert!(sweep < 0.0 || radius > 20.0, "a dent: {piece:?}");
            }
        }
        // The bridges run as the oval does across from them: left and right are alike but for the hand that drew them.
        let oval = Shape::from(plain.holes()[0].reversed());
        let axis = Axis::vertical(oval.bounds().center().x);
        let uneven = mirror_mismatch(&oval, &axis).distance;
        assert!(uneven < 0.0032, "{}: {uneven}", weight.name());
        let island = |zero| Lettering::with_zero(weight, zero).smallest_island("0", 1.0).expect("an island");
        let (one, two) = (island(Zero::Plain), island(Zero::Slashed));
        assert!(one > 1.8 * two, "plain {one}, slashed {two}");
    }
    assert_eq!(Zero::named("slashed"), Some(Zero::Slashed));
}

#[test]
fn what_cannot_be_set_is_named_with_what_to_do() {
    let medium = Lettering::shipped(Weight::Medium);
    let said =
        |text: &str, height: f64| medium.inscription(text, height, TwinMark::None).expect_err("an error").to_string();
    assert_eq!(
        said("a\u{2603}b", 5.0),
        "the font has no “\u{2603}” (U+2603): write it with letters and figures, or use a symbol"
    );
    assert_eq!(
        said("e\u{301}", 5.0),
        "an accent (U+0301) stands apart from its letter: type the accented letter as one character"
    );
    assert!(said("a\tb", 5.0).starts_with("U+0009 is no character"));
    assert!(said("  ", 5.0).starts_with("there is nothing to engrave"));
    assert!(said("", 5.0).starts_with("there is nothing to engrave"));
    for height in [0.0, -1.0, f64::NAN, f64::INFINITY] {
        assert!(matches!(medium.inscription("8", height, TwinMark::None), Err(LetteringError::Height { .. })));
    }
}

proptest! {
    #![proptest_config(ProptestConfig::with_cases(64))]

    /// Size changes nothing but size, whichever of the kept fits is used.
    #[test]
    fn proportions_hold_at_all_heights(text in "[A-Za-z0-9+.-]{1,6}", height in 0.5f64..60.0) {
        let (unit, large) = (plain(&text, 1.0), plain(&text, height));
        prop_assert!((large.bounds().width() - height * unit.bounds().width()).abs() < 4e-4 * height);
        prop_assert!((large.area() - height * height * unit.area()).abs() < 2e-4 * height * height * unit.perimeter());
        prop_assert_eq!(large.loops().len(), unit.loops().len());
    }

    /// Whatever is typed, nothing panics.
    #[test]
    fn any_text_is_set_or_refused(text in any::<String>(), height in any::<f64>()) {
        let _ = Lettering::shipped(Weight::Regular).inscription(&text, height, TwinMark::Bar);
        let _ = Lettering::shipped(Weight::Regular).thinnest_stroke(&text, 1.0);
    }
}
