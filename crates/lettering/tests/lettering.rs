//! Numerals, words and symbols, against fontTools and against the figures of the trade.

use lettering::{
    Lettering, LetteringError, Symbol, TWIN_LIMIT, TwinMark, Weight, reads_upside_down, upside_down_twins,
};
use outline::{Curve, Motion, Point, Shape, narrowest_gap, narrowest_stroke};

/// Height of the letter H in font units: what a height of 1 mm stands for.
const CAPITAL: f64 = 668.0;

fn weight(name: &str) -> Weight {
    match name {
        "Regular" => Weight::Regular,
        "Medium" => Weight::Medium,
        "SemiBold" => Weight::SemiBold,
        "Bold" => Weight::Bold,
        other => panic!("unknown weight {other}"),
    }
}

/// Areas and boxes of glyphs by fontTools (the table says which version; `tools/lettering_oracle.py` makes it).
#[test]
fn glyphs_are_what_font_tools_reads() {
    let mut rows = 0;
    for line in include_str!("data/fonttools.csv").lines().filter(|line| !line.starts_with('#')) {
        let fields: Vec<&str> = line.split(',').collect();
        let values: Vec<f64> = fields[2..].iter().map(|field| field.parse().expect("a number")).collect();
        let height = 10.0;
        let scale = height / CAPITAL;
        let shape =
            Lettering::shipped(weight(fields[0])).inscription(fields[1], height, TwinMark::None).expect("there");
        let bounds = shape.bounds();
        // Arcs lie within 1e-4 of the height of the font's curves.
        let near =
            |ours: f64, theirs: f64, off: f64| assert!((ours - theirs).abs() < off, "{line}: {ours} against {theirs}");
        near(shape.area(), values[0] * scale * scale, shape.perimeter() * 1e-3);
        near(bounds.width(), (values[3] - values[1]) * scale, 2.1e-3);
        // The origin is half way up a figure.
        near(bounds.y0, values[2] * scale - height / 2.0, 2e-3);
        near(bounds.y1, values[4] * scale - height / 2.0, 2e-3);
        rows += 1;
    }
    assert_eq!(rows, 88);
}

#[test]
fn the_zero_is_plain_and_its_island_stands() {
    for weight in Weight::ALL {
        let zero = Lettering::shipped(weight).inscription("0", 5.0, TwinMark::None).expect("there");
        assert_eq!((zero.outers().len(), zero.holes().len()), (1, 1), "{weight:?}");
        assert!(Lettering::shipped(weight).smallest_island("0", 5.0).expect("an island") > 2.0);
    }
    // Of the figures the bold 4 has the smallest: above half a millimetre (common practice) from 3 mm up.
    let bold = Lettering::shipped(Weight::Bold);
    assert!(bold.smallest_island("0123456789", 3.0).expect("islands") > 0.5);
}

/// Stroke to height: DOD-HDBK-791 6-5.3.2.3 asks for about 1 to 6 dark on light; the medium weight is 1 to 6.6.
#[test]
fn the_usual_weight_is_near_one_to_six() {
    let ratio = Lettering::shipped(Weight::Medium).stroke(1.0);
    assert!((1.0 / 7.0..=1.0 / 5.5).contains(&ratio), "{ratio}");
    let strokes: Vec<f64> = Weight::ALL.iter().map(|weight| Lettering::shipped(*weight).stroke(1.0)).collect();
    assert!(strokes.is_sorted());
}

#[test]
fn figures_are_tabular_and_a_stroke_apart() {
    let medium = Lettering::shipped(Weight::Medium);
    let middles = |text: &str| {
        let shape = medium.inscription(text, 5.0, TwinMark::None).expect("there");
        let mut all: Vec<f64> = shape.pieces().iter().map(|piece| piece.bounds().center().x).collect();
        all.sort_by(f64::total_cmp);
        all[1] - all[0]
    };
    assert!((middles("11") - middles("88")).abs() < 1e-9 && (middles("47") - middles("88")).abs() < 1e-9);
    for text in ["88", "00", "10", "\u{2212}5", "gale", "ri", "WAVE"] {
        let gap = narrowest_gap(&medium.inscription(text, 5.0, TwinMark::None).expect("there")).map(|neck| neck.width);
        let apart = medium.inscription(text, 5.0, TwinMark::None).expect("there").pieces();
        assert!(apart.len() >= 2, "{text}");
        assert!(gap.is_none_or(|gap| gap > 0.3), "{text}: {gap:?}");
        let mut boxes: Vec<_> = apart.iter().map(Shape::bounds).collect();
        boxes.sort_by(|a, b| a.x0.total_cmp(&b.x0));
        for pair in boxes.windows(2) {
            // The dot of an i stands over its own stem.
            let over = pair[1].x0 < pair[0].x1;
            assert!(over || pair[1].x0 - pair[0].x1 > medium.stroke(5.0) - 1e-9, "{text}");
        }
    }
}

#[test]
fn bars_and_dots_keep_a_stroke_away() {
    let medium = Lettering::shipped(Weight::Medium);
    let stroke = medium.stroke(5.0);
    let plain = medium.inscription("66", 5.0, TwinMark::None).expect("there").bounds();
    let barred = medium.inscription("66", 5.0, TwinMark::Bar).expect("there").bounds();
    assert!((plain.y0 - barred.y0 - 2.0 * stroke).abs() < 1e-6 && (barred.width() - plain.width()).abs() < 1e-9);
    let dotted = medium.inscription("66", 5.0, TwinMark::Dot).expect("there").bounds();
    assert!(dotted.width() > plain.width() + 2.0 * stroke);
}

#[test]
fn what_the_font_does_not_have_is_named() {
    let medium = Lettering::shipped(Weight::Medium);
    assert_eq!(
        medium.inscription("a嵐", 5.0, TwinMark::None).map(|_| ()),
        Err(LetteringError::Missing { character: '嵐' })
    );
    assert_eq!(medium.inscription("  ", 5.0, TwinMark::None).map(|_| ()), Err(LetteringError::Empty));
}

/// Half-turn partners in 0 to 99 (common practice of lottery balls and number tiles).
const PAIRS: [(&str, &str); 7] =
    [("6", "9"), ("16", "91"), ("18", "81"), ("19", "61"), ("66", "99"), ("68", "89"), ("86", "98")];

#[test]
fn the_table_of_partners_is_found_by_rule() {
    let mut found = Vec::new();
    for n in 0..100 {
        let text = n.to_string();
        if let Some(turned) = reads_upside_down(&text)
            && let Ok(m) = turned.parse::<i32>()
            && m > n
            && !turned.starts_with('0')
        {
            found.push((text, turned));
        }
    }
    let want: Vec<(String, String)> = PAIRS.iter().map(|(a, b)| ((*a).into(), (*b).into())).collect();
    assert_eq!(found, want);
}

/// A font whose 9 is a 6 turned by half a turn, made of simple shapes: the geometry finds the very same pairs.
#[test]
fn geometry_finds_the_same_pairs_in_a_font_of_turned_figures() {
    let disc = |x: f64, y: f64, r: f64| Shape::from(Curve::circle(Point::new(x, y), r));
    let bar = |x: f64, y: f64, w: f64, h: f64| Shape::from(Curve::rounded_rectangle(Point::new(x, y), w, h, 0.0));
    let ring = |y: f64, r: f64| disc(0.0, y, r).minus(&disc(0.0, y, r - 0.6));
    let six = ring(-0.9, 1.6).united(&bar(-1.3, 1.0, 0.6, 3.0));
    let nine = six.moved(&Motion::turn(Point::ZERO, std::f64::consts::PI));
    let polygon = |points: &[(f64, f64)]| {
        let points: Vec<Point> = points.iter().map(|p| Point::new(p.0, p.1)).collect();
        Shape::from(Curve::polygon(&points, 0.0).expect("a figure"))
    };
    // None of 2, 3, 4, 5, 7 is itself or another when it is turned.
    let figure = |digit: u32| match digit {
        0 => disc(0.0, 0.0, 2.4).minus(&disc(0.0, 0.0, 1.6)),
        1 => bar(0.0, 0.0, 0.7, 5.0),
        2 => bar(-1.3, 0.0, 0.6, 5.0).united(&bar(0.0, 2.2, 3.2, 0.6)),
        3 => polygon(&[(-1.6, -2.5), (1.6, -2.5), (0.0, 2.5)]),
        4 => bar(-1.3, 0.0, 0.6, 5.0).united(&bar(0.0, -2.0, 3.2, 1.0)),
        5 => bar(0.0, 0.0, 0.6, 5.0).united(&bar(0.0, 2.0, 3.2, 1.0)),
        6 => six.clone(),
        7 => polygon(&[(-1.6, -2.5), (1.6, -2.5), (-1.6, 2.5)]),
        8 => ring(-1.2, 1.4).united(&ring(1.2, 1.4)),
        _ => nine.clone(),
    };
    let number = |n: u32| {
        let text = n.to_string();
        let shift = (text.len() - 1) as f64 * 2.5;
        let digits: Vec<Shape> = text
            .chars()
            .enumerate()
            .map(|(i, c)| {
                figure(c.to_digit(10).expect("a digit"))
                    .moved(&Motion::shift(outline::Vec2::new(5.0 * i as f64 - shift, 0.0)))
            })
            .collect();
        Shape::joined(&digits)
    };
    let all: Vec<Shape> = (0..100).map(number).collect();
    let twins = upside_down_twins(&all.iter().collect::<Vec<_>>());
    let found: Vec<(String, String)> =
        twins.iter().map(|twin| (twin.first.to_string(), twin.second.to_string())).collect();
    let want: Vec<(String, String)> = PAIRS.iter().map(|(a, b)| ((*a).into(), (*b).into())).collect();
    assert_eq!(found, want);
    assert!(twins.iter().all(|twin| twin.overlap > 0.999));
}

/// The shipped font draws 6 and 9 so differently that no number of 0 to 99 is the other turned; its 6 on its 9 measures as the
/// literature of the font has it, about 0.56 to 0.66.
#[test]
fn the_shipped_font_tells_all_of_them_apart() {
    for weight in Weight::ALL {
        let all: Vec<Shape> = (0..100)
            .map(|n| Lettering::shipped(weight).inscription(&n.to_string(), 5.0, TwinMark::None).expect("there"))
            .collect();
        assert!(upside_down_twins(&all.iter().collect::<Vec<_>>()).is_empty(), "{weight:?}");
        let turned = all[6].moved(&Motion::turn(all[6].bounds().center(), std::f64::consts::PI));
        let there = turned.moved(&Motion::shift(all[9].bounds().center() - turned.bounds().center()));
        let overlap = outline::overlap(&there, &all[9]);
        assert!((0.5..0.7).contains(&overlap) && overlap < TWIN_LIMIT, "{weight:?}: {overlap}");
    }
}

#[test]
fn symbols_are_plain_enough_to_engrave() {
    assert!(Symbol::all().count() >= 16);
    for symbol in Symbol::all() {
        let shape = symbol.outline(8.0);
        let bounds = shape.bounds();
        assert!((bounds.width().max(bounds.height()) - 8.0).abs() < 1e-3, "{}", symbol.name());
        assert!(bounds.center().to_vec2().hypot() < 1e-9);
        assert!(shape.area() > 0.1 * 64.0, "{}", symbol.name());
        // At 8 mm no stroke is thinner than 0.3 mm (common practice for wood).
        assert!(
            narrowest_stroke(&shape).is_none_or(|neck| neck.width > 0.3),
            "{}: {:?}",
            symbol.name(),
            narrowest_stroke(&shape)
        );
        assert_eq!(Symbol::named(symbol.name()), Some(symbol));
        assert!(!symbol.words().is_empty());
    }
    assert_eq!(Symbol::named("anker"), None);
}
