//! Magnets on the desk: the ring on the map is moved and the verdict changes, a pair is taken from the shelf, a seat is chosen.

use crate::desk::{Desk, HARBOUR};
use serde_json::Value;

#[test]
fn the_ring_is_moved_and_the_verdict_changes() {
    let Some(mut desk) = Desk::with(&["harbour"]) else { return };
    desk.open("magnets");
    let says = "document.querySelector('.map-says').textContent";
    let before = desk.browser.eval(says);
    assert!(before.as_str().expect("words").ends_with("easy and keeps"), "{before}");
    // Dragged to the deepest corner: far apart, and through the floor.
    let frame = desk.browser.eval("(() => { document.querySelector('.map-frame').scrollIntoView({ block: 'center' }); const b = document.querySelector('.magnet-map').getBoundingClientRect(); const n = document.querySelector('.magnet-map').viewBox.baseVal; const at = (x, y) => [b.x + (x - n.x) / n.width * b.width, b.y + (y - n.y) / n.height * b.height]; return [at(15, 22), at(35.5, 1.5)] })()");
    let place = |k: usize| (frame[k][0].as_f64().expect("x"), frame[k][1].as_f64().expect("y"));
    desk.browser.drag(place(0), place(1), 8);
    let after = desk.browser.wait(&format!("{says} !== {before} && {says}"));
    assert!(after.as_str().expect("words").contains("shows through"), "{after}");
    desk.until(HARBOUR, "wheel_pocket");
    // The same verdict as the command line's.
    let held = desk.command("magnets", HARBOUR);
    let verdict = held["wheels"][0]["held"]["verdict"].as_str().expect("a verdict").to_owned();
    desk.browser.wait(&format!("document.querySelector('magnets-view .held h3').textContent.includes({:?})", verdict));
    // Back by the arrow keys from where it is, then left to the seat, then undone.
    desk.browser.press("Leave the depths to the seat");
    desk.browser.wait(&format!("{says} === {before}"));
    assert!(!desk.text(HARBOUR).contains("wheel_pocket"));
    desk.browser.eval("document.querySelector('.map-point').focus()");
    desk.browser.key("ArrowRight");
    desk.until(HARBOUR, "cover_pocket");
    desk.browser.press("Undo");
    desk.browser.wait(&format!("{says} === {before}"));
    desk.well();
}

#[test]
fn a_pair_from_the_shelf_and_a_seat_are_taken() {
    let Some(mut desk) = Desk::with(&["harbour"]) else { return };
    desk.open("magnets");
    let first = desk.browser.eval("document.querySelector('magnets-view tbody button').getAttribute('aria-label')");
    let name = first.as_str().and_then(|label| label.strip_prefix("Take it: ")).expect("a name").to_owned();
    desk.browser.click("magnets-view tbody button");
    let diameter = name.split('x').next().expect("a size").to_owned();
    desk.until(HARBOUR, &format!("diameter = \"{diameter} mm\""));
    assert!(desk.text(HARBOUR).contains("# a small + and - beside each notch"), "comments stay");
    desk.browser.wait("document.querySelector('desk-head .kept').textContent === 'kept on disk'");
    desk.browser.click("input[value='pin and socket']");
    desk.until(HARBOUR, "seat = \"pin and socket\"");
    let held: Value = desk.command("magnets", HARBOUR);
    assert!(held["wheels"][0]["held"]["under_the_face_mm"][1].as_f64().expect("mm") < 0.0);
    desk.well();
}
