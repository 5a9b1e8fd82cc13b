//! Stocks and pairings as they are chosen, and the window from any seat: read back from the pictures.

mod common;

use common::{SMALL, ready};
use dial::looks::{Engraving, Reader, pairings};
use kurbo::{BezPath, Shape as _};
use process::{Side, Stock};
use sight::Acuity;
use std::f64::consts::PI;

fn stock(name: &str) -> Stock {
    workshop::starter().stocks.into_iter().find(|stock| stock.name == name).expect("on the shelf")
}

/// Colours and path data of all filled paths.
fn filled(svg: &str) -> Vec<(String, BezPath)> {
    let paths = svg.lines().filter_map(|line| line.strip_prefix("<path fill=\"")?.split_once('"'));
    let read = |(colour, rest): (&str, &str)| {
        let data = rest.split(" d=\"").nth(1)?.split('"').next()?;
        Some((colour.to_owned(), BezPath::from_svg(data).ok()?))
    };
    paths.filter(|(colour, _)| *colour != "none").filter_map(read).collect()
}

fn area(svg: &str, colour: &str) -> f64 {
    filled(svg).iter().filter(|(one, _)| one == colour).map(|(_, path)| path.area().abs()).sum()
}

#[test]
fn a_stock_is_drawn_with_all_its_colours() {
    let looked = ready(SMALL).looked;
    let two_ply = stock("two-ply acrylic, white over black");
    let svg = press::swatch(&looked, &two_ply, 0.4);
    let floor = Engraving::of(&two_ply, 0.4).expect("not through").worst.colour.to_string();
    // The patch alone is 120 mm²; what is engraved of the mark comes on top of it.
    assert!(area(&svg, &floor) > 120.0, "{svg}");
    assert!(area(&svg, &two_ply.colour(Side::Face).to_string()) > 39.0 * 22.0 - 1.0);
    let two_faced = stock("maple veneer on both faces");
    let svg = press::swatch(&looked, &two_faced, 0.3);
    assert!(area(&svg, &two_faced.colour(Side::Back).to_string()) > 19.0 * 22.0 - 1.0);
    // As thick as it is.
    let edge = two_faced.edge().to_string();
    assert!(
        (area(&svg, &edge) - 60.0 * two_faced.thickness()).abs() < 0.5
            || edge == two_faced.colour(Side::Face).to_string()
    );
    // Whatever is on the shelf can be drawn, engraved right through too.
    for one in workshop::starter().stocks {
        for depth in [0.3, 50.0] {
            let svg = press::swatch(&looked, &one, depth);
            assert!(svg.len() < 60_000 && filled(&svg).len() >= 4, "{}: {}", one.name, svg.len());
        }
    }
}

#[test]
fn a_pairing_is_drawn_as_on_the_board() {
    let looked = ready(SMALL).looked;
    let shop = workshop::starter();
    let ranked = pairings(&looked, &shop);
    let board = press::pairings_board(&looked, &shop, &ranked);
    let svg = press::pairing_picture(&looked, &ranked[0]);
    // The same shapes in the same colours, elsewhere: the mark of the best pairing has its area on the board too.
    let mark = ranked[0].marks.as_ref().expect("engraved").worst.colour.to_string();
    let mine: Vec<f64> =
        filled(&svg).iter().filter(|(one, _)| *one == mark).map(|(_, path)| path.area().abs()).collect();
    assert!(!mine.is_empty());
    let theirs: Vec<f64> =
        filled(&board).iter().filter(|(one, _)| *one == mark).map(|(_, path)| path.area().abs()).collect();
    assert!(mine.iter().all(|one| theirs.iter().any(|other| (one - other).abs() < 0.01 * one)), "{mine:?}");
}

/// A dial that wears two stocks: each face in its own colour, the window left open, only the mark of the first stop inked.
#[test]
fn a_dial_is_dressed_in_two_stocks() {
    let looked = ready(SMALL).looked;
    let dial = &looked.laid.dial;
    let (white, beech) = (stock("white laminate on a dark core"), stock("beech plywood 3 mm"));
    let svg = press::dressed(dial, &white, &beech);
    let cover = area(&svg, &white.colour(Side::Face).to_string());
    let window = outline::Shape::from(dial.wheels[0].window.edge.clone()).area();
    assert!((cover - (dial.cover.plate.area() - window)).abs() < 0.01 * cover, "{cover}");
    let mark = area(&svg, &press::floor_colour(&beech, dial.wheels[0].mark_depth));
    assert!((mark - dial.wheels[0].upright(0).area()).abs() < 0.02 * mark, "{mark}");
}

/// From any seat the part of the picture's cover that is inked is that of the plan: both are foreshortened alike, but for the wheel's
/// lying a little deeper than the cover's face.
#[test]
fn the_window_from_a_seat_shows_what_is_seen_from_there() {
    let text = "name = \"T\"\n[cover]\nstock = \"white laminate on a dark core\"\n[wheel]\nstock = \"beech plywood 3 mm\"\n[[counter]]\nname = \"c\"\nlabel = \"\"\nvalues = [\"H\", \"E\"]\n";
    let looked = ready(text).looked;
    let shop = workshop::starter();
    for (away, eye, side) in [(350.0, 470.0, 0.0), (600.0, 400.0, PI / 2.0), (950.0, 470.0, PI), (120.0, 600.0, 0.7)] {
        let from = dial::look_from(&looked, Reader::at(away, eye, side).expect("a seat"), &shop);
        let (wheel, look) = (&from.laid.dial.wheels[0], &from.looks.wheels[0]);
        let stop = look.seen[0].worst;
        let svg = press::window_from(&from, 0, stop, Acuity::NORMAL).expect("seen");
        let ink = look.engraving.as_ref().expect("engraved").worst.colour.to_string();
        let cover = from.laid.dial.cover.stock.colour(Side::Face).to_string();
        let around = wheel.window.edge.bounds();
        // A card of cover 3 mm wider all round, its corners of 1 mm.
        let card = (around.width() + 6.0) * (around.height() + 6.0) - (4.0 - PI);
        let plan = look.seen[0].stops[stop].share * wheel.upright(stop).area() / card;
        let shown = area(&svg, &ink) / area(&svg, &cover);
        assert!((shown - plan).abs() < 0.03 * plan.abs() + 1e-6, "{away} {eye} {side}: {shown} {plan}");
    }
    assert!(press::window_from(&looked, 7, 0, Acuity::NORMAL).is_none());
}

/// What a seat of one's own is told is what the file's reader there is told.
#[test]
fn a_seat_finds_what_the_files_reader_finds() {
    let text = |reading: &str| format!("{SMALL}\n[reading]\n{reading}\n");
    let file = ready(&text("seats = []\ndistance = \"900 mm\"\neye = \"300 mm\"\nside = \"30 deg\"")).looked;
    let plain = ready(&text("seats = [\"owner\", \"across\"]")).looked;
    let reader = Reader::at(900.0, 300.0, 30f64.to_radians()).expect("a seat");
    let from = dial::look_from(&plain, reader, &workshop::starter());
    assert_eq!(from.laid.dial.reading, file.laid.dial.reading);
    let told = |all: &[dial::findings::Finding]| -> Vec<String> {
        let rules = [
            "contrast of the engraving",
            "height as it is seen",
            "hidden by the cover's thickness",
            "strokes as they are seen",
        ];
        all.iter()
            .filter(|one| rules.contains(&one.rule))
            .map(|one| format!("{:?} {}", one.severity, one.what))
            .collect()
    };
    assert!(from.findings.len() >= 2, "{:?}", from.findings);
    assert_eq!(told(&from.findings), told(&file.findings));
    assert_eq!(told(&from.findings).len(), from.findings.len(), "nothing else is told of a seat");
}
