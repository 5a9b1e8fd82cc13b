//! The font as we read it against fontTools, skia-pathops, GEOS and HarfBuzz (tools/lettering_oracle.py).

use lettering::{Lettering, TwinMark, Weight, Zero};

/// At this height of the figures one font unit is one mm.
const UNITS: f64 = 668.0;

/// One row of tests/data/glyphs.csv, in font units.
struct Glyph {
    weight: Weight,
    character: char,
    area: f64,
    x: (f64, f64),
    y: (f64, f64),
    island: Option<f64>,
}

fn glyphs() -> Vec<Glyph> {
    let rows = include_str!("data/glyphs.csv").lines();
    let all: Vec<Glyph> = rows.filter(|row| !row.starts_with('#')).map(glyph).collect();
    assert_eq!(all.len(), 464);
    all
}

fn glyph(row: &str) -> Glyph {
    let columns: Vec<&str> = row.split('\t').collect();
    let number = |k: usize| columns[k].parse::<f64>().expect("a number");
    let weight = match columns[0] {
        "Regular" => Weight::Regular,
        "Medium" => Weight::Medium,
        "SemiBold" => Weight::SemiBold,
        _ => Weight::Bold,
    };
    Glyph {
        weight,
        character: char::from_u32(columns[1].parse().expect("a code point")).expect("a character"),
        area: number(3),
        x: (number(4), number(6)),
        y: (number(5), number(7)),
        island: columns[8].parse().ok(),
    }
}

/// The oracle reads the zero as the font draws it.
fn font(weight: Weight) -> &'static Lettering {
    Lettering::with_zero(weight, Zero::Slashed)
}

#[test]
fn outlines_are_those_of_the_font() {
    for glyph in glyphs() {
        let text = glyph.character.to_string();
        let shape = font(glyph.weight).inscription(&text, UNITS, TwinMark::None).expect("a glyph");
        let (area, ink) = (shape.area(), shape.bounds());
        let said = format!("{} {text}", glyph.weight.name());
        // Arcs lie within 0.001 units of the curves; the oracle's own numbers have eight digits.
        let off = 0.002 * shape.perimeter();
        assert!((area - glyph.area).abs() < off.max(1.0), "{said}: area {area}, fontTools {}", glyph.area);
        let width = glyph.x.1 - glyph.x.0;
        assert!((ink.width() - width).abs() < 0.02, "{said}: {} wide, fontTools {width}", ink.width());
        let y = (ink.y0 + UNITS / 2.0, ink.y1 + UNITS / 2.0);
        assert!(
            (y.0 - glyph.y.0).abs() < 0.01 && (y.1 - glyph.y.1).abs() < 0.01,
            "{said}: from {y:?}, fontTools {:?}",
            glyph.y
        );
    }
}

#[test]
fn islands_are_as_wide_as_geos_finds_them() {
    let mut seen = 0;
    for glyph in glyphs() {
        let text = glyph.character.to_string();
        let ours = font(glyph.weight).smallest_island(&text, UNITS);
        assert_eq!(ours.is_some(), glyph.island.is_some(), "{text}");
        if let (Some(ours), Some(theirs)) = (ours, glyph.island) {
            seen += 1;
            assert!((ours - theirs).abs() < 0.003 * UNITS, "{} {text}: {ours}, GEOS {theirs}", glyph.weight.name());
        }
    }
    assert!(seen > 100, "only {seen} glyphs with islands");
}

#[test]
fn the_island_of_a_four_is_the_incircle_of_its_triangle() {
    // Corners of the inner contour of "four", Bold, as fontTools lists them.
    let [a, b, c]: [(f64, f64); 3] = [(177.0, 269.0), (352.0, 269.0), (352.0, 485.0)];
    let side = |p: (f64, f64), q: (f64, f64)| (p.0 - q.0).hypot(p.1 - q.1);
    let area = ((b.0 - a.0) * (c.1 - a.1) - (c.0 - a.0) * (b.1 - a.1)).abs() / 2.0;
    let diameter = 4.0 * area / (side(a, b) + side(b, c) + side(c, a));
    let ours = Lettering::shipped(Weight::Bold).smallest_island("4", UNITS).expect("an island");
    assert!((ours - diameter).abs() < 0.003 * UNITS, "{ours}, by hand {diameter}");
}

#[test]
fn strokes_are_those_between_the_corners_of_the_font() {
    let bold = Lettering::shipped(Weight::Bold);
    // As fontTools lists them: "one" has its upright from 200 to 338; "H" its bar from 279 to 408, thinner than its uprights.
    assert!((bold.stroke(UNITS) - 138.0).abs() < 1e-6);
    let h = bold.thinnest_stroke("H", UNITS).expect("a stroke");
    assert!((h - 129.0).abs() < 0.1, "{h}");
    assert!(bold.thinnest_stroke(" ", UNITS).is_none());
    // DOD-HDBK-791(AM) 6-5.3.2.3 asks for 1/8 to 1/6 of the height: Medium and SemiBold are on either side of 1/6.
    let strokes = Weight::ALL.map(|weight| Lettering::shipped(weight).stroke(1.0));
    assert!(strokes.is_sorted(), "{strokes:?}");
    assert!(strokes[1] < 1.0 / 6.0 && strokes[2] > 1.0 / 6.0, "{strokes:?}");
}
