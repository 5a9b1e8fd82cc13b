//! What a reader sees and how pairings rank: read back from the pictures and held against rays and hand-worked figures.

mod common;

use common::{SMALL, ready, ready_in};
use dial::looks::{name_of, pairings};
use kurbo::{BezPath, Shape as _};
use outline::{Point, Shape};
use process::{Side, Vote};

/// A dial whose cover, wall, wheel and marks all differ in colour.
const TWO_TONE: &str = "name = \"T\"\n[cover]\nstock = \"white laminate on a dark core\"\n[wheel]\nstock = \"beech plywood 3 mm\"\n[[counter]]\nname = \"c\"\nlabel = \"\"\nvalues = [\"H\", \"E\"]\n";

/// Area of all paths of a colour, in the picture's mm², of the first panel: that is what is drawn before the first group ends.
fn area_of(svg: &str, colour: &str) -> f64 {
    let first = svg.split("<g ").nth(1).and_then(|rest| rest.split("</g>").next()).expect("a panel");
    let paths = first.lines().filter(|line| line.contains(&format!("fill=\"{colour}\"")));
    let data = paths.filter_map(|line| line.split(" d=\"").nth(1)?.split('"').next().map(str::to_owned));
    data.map(|data| BezPath::from_svg(&data).expect("path data").area().abs()).sum()
}

/// Rays from the eye to a fine grid of the wheel's face: each must pass the window at the cover's face and at its back. The share of
/// what is seen that is engraved is that of the picture's areas.
#[test]
fn the_picture_shows_what_rays_see() {
    let made = ready(TWO_TONE);
    let dial = &made.looked.laid.dial;
    let (wheel, look) = (&dial.wheels[0], &made.looked.looks.wheels[0]);
    let svg = press::window_seen(&made.looked).expect("a reader");
    let seat = dial.reading.readers[0].view.seat();
    let centre = wheel.window.centre;
    let eye = [centre.x, centre.y - seat.away(), seat.eye()];
    let (thick, window) = (dial.cover.stock.thickness(), Shape::from(wheel.window.edge.clone()));
    let stop = look.seen[0].worst;
    let mark = wheel.upright(stop);
    let reach = wheel.window.edge.bounds();
    let (mut seen, mut inked) = (0, 0);
    let steps = 160;
    for i in 0..steps {
        for j in 0..steps {
            let at = |low: f64, high: f64, k: i32| low + (high - low) * (f64::from(k) + 0.5) / f64::from(steps);
            let p = Point::new(at(reach.x0, reach.x1, i), at(reach.y0, reach.y1, j));
            let at_height = |z: f64| {
                let share = (z + thick) / (eye[2] + thick);
                Point::new(p.x + share * (eye[0] - p.x), p.y + share * (eye[1] - p.y))
            };
            if window.contains(at_height(0.0)) && window.contains(at_height(-thick)) {
                seen += 1;
                inked += i32::from(mark.contains(p));
            }
        }
    }
    let colour = |side: &str| side.to_owned();
    let engraved = area_of(&svg, &colour(&look.engraving.as_ref().expect("not through").worst.colour.to_string()));
    let face = area_of(&svg, &wheel.stock.colour(Side::Face).to_string());
    let (rays, drawn) = (f64::from(inked) / f64::from(seen), engraved / face);
    assert!(rays > 0.05 && (rays / drawn - 1.0).abs() < 0.03, "rays {rays}, picture {drawn}");
    // What is hidden is hidden: less of the mark than there is.
    assert!(look.seen[0].at_worst().share < 0.9);
}

/// Common practice, and the figures of char on wood: light faces come before dark ones, a dark face with a brown core fails with its
/// reason; thickness, friction and mass are those of the pairing.
#[test]
fn pairings_rank_as_makers_would() {
    let made = ready(SMALL);
    let ranked = pairings(&made.looked, &made.workshop);
    let find = |cover: &str, wheel: &str| {
        ranked.iter().position(|one| one.name() == name_of(cover, wheel)).unwrap_or_else(|| panic!("{cover} / {wheel}"))
    };
    let plates = made.workshop.stocks.iter().filter(|stock| stock.thinnest() >= 1.5).count();
    assert_eq!(ranked.len(), plates * plates);
    assert!(ranked.windows(2).all(|two| two[0].reasons.len() <= two[1].reasons.len()), "failing ones come last");
    let maple = &ranked[find("birch plywood 3 mm", "maple 3 mm")];
    assert!(maple.does(), "{:?}", maple.reasons);
    let dark = &ranked[find("birch plywood 3 mm", "dark laminate on a brown core")];
    assert!(!dark.does() && dark.reasons[0].words().starts_with("marks 1."), "{:?}", dark.reasons);
    // The dial as it is: the same figures as its own findings are made from.
    let own = &ranked[find("birch plywood 3 mm", "birch plywood 3 mm")];
    let held = made.looked.held[0].as_ref().expect("held");
    assert!((own.likely.expect("known").effort - held.likely.effort).abs() < 1e-9);
    let grip = &ranked[find("acrylic 3 mm", "acrylic 3 mm")];
    assert!(grip.likely.expect("known").effort > 1.3 * own.likely.expect("known").effort, "acrylic grips");
    // Price by hand: boxes of cover and wheel with 3 mm between parts, at 6 for 600 x 300 mm, and two magnets at 0.10.
    let dial = &made.looked.laid.dial;
    let plate = dial.cover.plate.bounds();
    let side = 2.0 * dial.wheels[0].radius + 3.0;
    let by_hand = ((plate.width() + 3.0) * (plate.height() + 3.0) + side * side) * 6.0 / 180_000.0 + 0.2;
    assert!((own.price.expect("priced") - by_hand).abs() < 1e-9, "{:?} {by_hand}", own.price);
}

/// A pairing that fails is struck through, and what people picked is on the board with its verdict.
#[test]
fn the_board_shows_failures_and_votes() {
    let mut workshop = workshop::starter();
    let plain = ready_in(SMALL, workshop.clone());
    let ranked = pairings(&plain.looked, &plain.workshop);
    let without = press::pairings_board(&plain.looked, &plain.workshop, &ranked);
    let failing = ranked.iter().filter(|one| !one.does()).count();
    // Every struck line is one M and one L: the thinner of the two red ones.
    let struck = without
        .lines()
        .find(|line| line.contains("stroke=\"#b3261e\" stroke-width=\"0.35\""))
        .map_or(0, |line| line.matches('M').count());
    assert!(failing > 20 && struck == failing, "{struck} {failing}");
    let vote = |best: &str, worse: &str| Vote { best_first: vec![best.into(), worse.into()], times: 9 };
    workshop.votes = vec![
        vote("maple 3 mm / maple 3 mm", "bamboo 3 mm / bamboo 3 mm"),
        vote("bamboo 3 mm / bamboo 3 mm", "MDF 3 mm / MDF 3 mm"),
    ];
    let with = press::pairings_board(&plain.looked, &workshop, &ranked);
    assert!(with.len() > without.len() + 1000, "votes are drawn");
    let report = press::looks_report(&plain.looked, &workshop, &ranked);
    assert_eq!(report["picked"]["choices"], 18);
    assert!(report["picked"]["verdict"].as_str().is_some_and(|words| !words.is_empty()));
    assert!(report["pairings"][0]["does"].as_bool().expect("a verdict"));
}

/// Every stock of the shelf is on its board in its own colours, and its report names what the maker would ask for.
#[test]
fn the_shelf_shows_every_stock() {
    let shelf = workshop::starter();
    assert!(shelf.stocks.len() >= 16);
    let svg = press::shelf_board(&shelf, measure::Units::Millimetres);
    usvg::Tree::from_str(&svg, &usvg::Options::default()).expect("an SVG that others read");
    for stock in &shelf.stocks {
        for colour in [stock.colour(process::Side::Face), stock.colour(process::Side::Back), stock.edge()] {
            assert!(svg.contains(&colour.to_string()), "{}: {colour}", stock.name);
        }
        let report = press::stock_report(stock);
        for key in ["face", "back", "edge", "grain", "price", "looks", "source", "layers", "mass_kg_per_m2"] {
            assert!(!report[key].is_null(), "{}: {key}", stock.name);
        }
    }
}
