//! What the turning page says of materials is what the pairings say; where a wheel lies under a cover is what a hand-worked view says.

mod common;

use common::{SMALL, ready};
use dial::looks::pairings;
use press::{Wardrobe, turning_page};
use process::Side;
use serde_json::Value;

fn figures(page: &str) -> Value {
    let (_, rest) = page.split_once("id=\"figures\"").expect("figures");
    let (_, rest) = rest.split_once('>').expect("an element");
    let (text, _) = rest.split_once("</script>").expect("its end");
    serde_json::from_str(&text.replace("<\\/", "</")).expect("JSON")
}

#[test]
fn every_pairing_is_told_as_it_is() {
    let made = ready(SMALL);
    let dial = &made.looked.laid.dial;
    let ranked = pairings(&made.looked, &made.workshop);
    let page = turning_page(dial, &Wardrobe::of(dial, &ranked));
    assert!(page.len() < 600_000, "{} bytes", page.len());
    let figures = figures(&page);
    let stocks = figures["stocks"].as_array().expect("stocks");
    let at = |name: &str| stocks.iter().position(|one| one["name"] == name).expect("on the page");
    let mut failing = 0;
    for one in &ranked {
        let (cover, wheel) = (at(&one.cover.name), at(&one.wheel.name));
        let said = &figures["pairings"][cover][wheel]["why_not"];
        match one.reasons.first() {
            None => assert!(said.is_null(), "{}: {said}", one.name()),
            Some(reason) => {
                failing += 1;
                assert!(said.as_str().is_some_and(|said| said.contains(&reason.words())), "{}: {said}", one.name());
            }
        }
        assert_eq!(stocks[cover]["back"], one.cover.colour(Side::Back).to_string());
        if let Some(marks) = &one.marks {
            assert_eq!(stocks[wheel]["burnt"][1], marks.worst.colour.to_string(), "{}", one.wheel.name);
        }
    }
    assert!(failing > 0 && failing < ranked.len());
}

/// A thicker cover lets the wheel lie deeper: seen by the owner (0.47 m up, 0.35 m away), it seems shifted up by
/// depth / tan(elevation), and the owner sees it along y alone.
#[test]
fn a_thicker_cover_hides_more() {
    let made = ready(SMALL);
    let dial = &made.looked.laid.dial;
    let ranked = pairings(&made.looked, &made.workshop);
    let figures = figures(&turning_page(dial, &Wardrobe::of(dial, &ranked)));
    let gap = dial::looks::gap(&dial.wheels[0]);
    let owner = &figures["seats"][0];
    let mut seen = 0;
    for stock in figures["stocks"].as_array().expect("stocks") {
        let at = stock["deep"][0].as_u64().expect("an index") as usize;
        let map = |row: usize, column: usize| owner["deep"][at][row][column].as_f64().expect("a number");
        // Where the middle of the wheel's window is seen, carried back to the cover's face by that face's own map.
        let face = |row: usize, column: usize| owner["cover"][row][column].as_f64().expect("a number");
        let apart = map(1, 2) / map(2, 2) - face(1, 2) / face(2, 2);
        let ranked = ranked.iter().find(|one| stock["name"] == one.cover.name.as_str()).expect("ranked");
        let depth = ranked.cover.thickness() + gap;
        // On the plane across the line of sight a drop by `depth` is seen as depth times the cosine of the elevation.
        let cosine = 0.35_f64 / 0.35_f64.hypot(0.47);
        let wanted = -depth * cosine;
        assert!((apart - wanted).abs() < 0.02 * depth, "{}: {apart} of {wanted}", ranked.cover.name);
        seen += 1;
    }
    assert!(seen > 20);
}
