//! Small parts for the bench and for the magnets, measured on the cut files: gauges, caps with their ledges, washers, standing rings.

mod common;

use common::{paths, ready};
use kurbo::{BezPath, PathEl, Shape as _};
use std::f64::consts::PI;

const ONE: &str = "\n[[counter]]\nname = \"coal\"\nvalues = \"0..9\"\n";

fn made(more: &str) -> common::Ready {
    ready(&format!("name = \"Test\"\nstock = \"birch plywood 4 mm\"\n{more}{ONE}"))
}

/// All paths of a step on all sheets of a stock, of setups that lie face up or turned.
fn on(made: &common::Ready, stock: &str, step: &str, turned: bool) -> Vec<BezPath> {
    let sheets = made.job.sheets.iter().filter(|sheet| sheet.stock.name == stock);
    sheets
        .flat_map(|sheet| sheet.setups.iter().map(move |setup| (sheet, setup)))
        .filter(|(_, setup)| setup.is_turned() == turned)
        .flat_map(|(sheet, setup)| paths(&press::sheet("Test", sheet, setup, &made.workshop.machine.colours), step))
        .collect()
}

fn corners(path: &BezPath) -> Vec<kurbo::Point> {
    path.elements().iter().filter_map(PathEl::end_point).collect()
}

/// The tongues of a depth gauge, measured on its cut path from the shoulders: the wanted depth and two steps to either side.
#[test]
fn the_depth_gauge_has_the_wanted_depth_in_its_middle() {
    for (more, wanted) in [("", 1.7), ("[magnet]\nthickness = \"1 mm\"", 1.2)] {
        let made = made(more);
        let sheet = &made.job.sheets[0];
        let gauge = sheet.parts.iter().find(|part| part.name == "depth gauge").expect("cut with the sheets");
        let cuts = on(&made, "birch plywood 4 mm", "cut-outside", false);
        let around = gauge.outline.bounds().inflate(1.0, 1.0);
        let cut = cuts.iter().find(|path| around.union(path.bounding_box()) == around).expect("its cut");
        // The shoulder of each side is the farthest that its plain corners reach; the sixth side is all shoulder.
        let bounds = gauge.outline.bounds();
        let (across, kerf) = (gauge.outline.bounds().width(), sheet.stock.kerf.x / 2.0);
        assert!(across > 20.0 && across < 40.0);
        let plain = cut.bounding_box().y0 + kerf;
        assert!((plain - bounds.y0).abs() < 0.01, "the plain side lies at the bottom");
        // The gauge's middle: its hexagon is as high below it as its plain side is.
        let side = 2.0 * (made.looked.laid.dial.wheels[0].pocket.radius) - 0.8 + 8.0;
        let inradius = side * 3f64.sqrt() / 2.0;
        let middle = kurbo::Point::new(bounds.center().x, plain + inradius);
        let mut depths: Vec<f64> = (1..=5)
            .map(|k| {
                let way = kurbo::Vec2::from_angle(-PI / 2.0 + f64::from(k) * PI / 3.0);
                // Only the tongue's own corners: those near the middle of the side.
                let own = |p: &&kurbo::Point| way.cross(**p - middle).abs() < side / 2.0 - 2.0;
                let reach = corners(cut).iter().filter(own).map(|p| way.dot(*p - middle)).fold(0.0, f64::max);
                reach - kerf - inradius
            })
            .collect();
        depths.sort_by(f64::total_cmp);
        for (k, depth) in depths.iter().enumerate() {
            let step = wanted - 0.2 + 0.1 * k as f64;
            assert!((depth - step).abs() < 0.02, "{more}: {depths:?}");
        }
    }
    let none = made("gauges = false\n");
    assert!(none.job.sheets[0].parts.iter().all(|part| !part.name.contains("gauge")));
}

#[test]
fn the_pole_gauge_holds_the_master() {
    let made = made("");
    let gauge = made.job.sheets[0].parts.iter().find(|part| part.name == "pole gauge").expect("cut with the sheets");
    let pockets = on(&made, "birch plywood 4 mm", "pocket", false);
    let holds = |path: &&BezPath| gauge.outline.contains(path.bounding_box().center());
    let pocket = pockets.iter().find(holds).expect("a pocket").bounding_box();
    assert!((pocket.width() - 6.15).abs() < 0.01);
    let words = on(&made, "birch plywood 4 mm", "engrave", false);
    assert!(words.iter().filter(|path| gauge.outline.contains(path.bounding_box().center())).count() >= 2);
}

/// A cap drops into its ledge, whose ring and pocket together take out each place once.
#[test]
fn caps_fit_their_ledges() {
    let made = made("[magnet]\nseat = \"enclosed\"\ndiameter = \"5 mm\"\nthickness = \"1.5 mm\"\n");
    let wheel = &made.looked.laid.dial.wheels[0];
    let ledge = wheel.pocket.ledge.expect("a ledge");
    let caps = on(&made, "maple veneer 0.6 mm", "cut-outside", false);
    assert_eq!(caps.len(), 2, "one over each magnet");
    let kerf = 0.15;
    for cap in &caps {
        let across = cap.bounding_box().width() - kerf;
        assert!(across < 2.0 * ledge.radius && across > 2.0 * ledge.radius - 0.5, "{across}");
    }
    // Cap and glue fill the ledge; below it lie magnet and glue.
    assert!((ledge.depth - 0.7).abs() < 1e-9 && (wheel.pocket.depth - (0.7 + 1.5 + 0.1)).abs() < 1e-9);
    let hollows = on(&made, "birch plywood 4 mm", "pocket", true);
    let area: f64 = hollows.iter().map(|path| path.area().abs()).sum();
    assert!((area - PI * ledge.radius.powi(2)).abs() < 0.05, "ring and disc are the ledge: {area}");
    let left = made.looked.held[0].as_ref().expect("held");
    assert!(left.likely.pull > 0.3 && left.gap.likely > 1.3, "the force that is left is told: {left:?}");
}

#[test]
fn washers_and_standing_rings_touch_alone() {
    let washer = made("[magnet]\nring = \"16 mm\"\nring_stock = \"card 0.3 mm\"\n");
    let (hole, rim) = (
        on(&washer, "card 0.3 mm", "cut-inside", false)[0].bounding_box().width() + 0.12,
        on(&washer, "card 0.3 mm", "cut-outside", false)[0].bounding_box().width() - 0.12,
    );
    assert!((rim - 16.0).abs() < 0.01 && hole > 6.15 && hole < 8.0, "{rim} {hole}");
    assert!(washer.looked.turns.passes(), "marks and window keep clear of it");
    let standing = made("[magnet]\nring = \"12 mm\"\n");
    let dial = &standing.looked.laid.dial;
    let down = on(&standing, "birch plywood 4 mm", "pocket", true);
    let widest = down.iter().map(|path| path.bounding_box().width()).fold(0.0, f64::max);
    assert!(widest > 2.0 * dial.wheels[0].radius, "taken down as far as the wheel reaches");
    // The ring itself stands: its middle circle is in no area that is taken down.
    let lay = standing.job.sheets[0].parts.iter().find(|part| part.name == "cover").expect("there").at
        - dial.cover.plate.bounds().center();
    let on_ring = dial.wheels[0].centre + lay + kurbo::Vec2::new(0.0, 5.0);
    assert!(down.iter().all(|path| path.winding(on_ring) == 0));
}
