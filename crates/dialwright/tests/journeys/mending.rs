//! A failing dial mended: by the finding's own mend, by dragging, in the story.

use crate::desk::Desk;
use std::fs;

const FILE: &str = "harbour/dial.toml";

fn with(desk: &Desk, from: &str, to: &str) {
    fs::write(desk.path(FILE), desk.text(FILE).replacen(from, to, 1)).expect("written");
}

#[test]
fn a_finding_shows_its_place_and_mends() {
    let Some(mut desk) = Desk::with(&["harbour"]) else { return };
    with(&desk, "[notch]\n", "[window]\nwidth = \"5 mm\" # tight\n\n[notch]\n");
    let browser = &mut desk.browser;
    browser.wait("document.querySelector('found-list li.refuse')");
    browser.click("found-list li.refuse .touch");
    browser.wait("document.querySelector('dial-mat .ring')");
    let why = browser.eval("document.querySelector('found-list li.refuse .why').textContent");
    assert!(why.as_str().expect("text").contains("By: "), "{why}");
    browser.press("Mend it: window.width left to the layout");
    browser.wait("document.querySelector('.verdict-line').textContent === 'This dial can be made.'");
    assert!(!desk.text(FILE).contains("5 mm"), "{}", desk.text(FILE));
    assert!(desk.text(FILE).contains("# tight"), "comments stay");
    desk.browser.press("Undo");
    desk.browser.wait("document.querySelector('found-list li.refuse')");
    assert!(desk.text(FILE).contains("width = \"5 mm\" # tight"));
    desk.well();
}

#[test]
fn a_window_is_dragged_until_a_finding_goes() {
    let Some(mut desk) = Desk::with(&["harbour"]) else { return };
    with(&desk, "name = \"provisions\"\n", "name = \"provisions\"\nwindow = { angle = \"170 deg\" }\n");
    let browser = &mut desk.browser;
    browser.wait("document.querySelector('found-list li.refuse')");
    browser.press("Move things");
    let from = browser.middle("[data-handle='window/0'] .reach");
    let to = browser.eval("(() => { const b = document.querySelector('[data-handle=\"middle/0\"] .knob').getBoundingClientRect(); return [b.x + b.width / 2, b.y + b.height / 2] })()");
    let (x, y) = (to[0].as_f64().expect("x"), to[1].as_f64().expect("y"));
    let before = desk.text(FILE);
    let browser = &mut desk.browser;
    browser.mouse("mousePressed", from);
    let radius = x - from.0;
    for k in 1..=30 {
        let angle = f64::from(k) * std::f64::consts::PI / 30.0;
        browser.mouse("mouseMoved", (x - radius * angle.cos(), y - radius * angle.sin()));
    }
    // The finding goes while one drags, and nothing is written yet.
    browser.wait("!document.querySelector('found-list li.refuse')");
    assert_eq!(desk.text(FILE), before);
    desk.browser.mouse("mouseReleased", (x + radius, y));
    desk.browser.wait("document.querySelector('desk-head .kept').textContent === 'kept on disk'");
    assert!(desk.text(FILE).contains("window = { angle = \"0 deg\" }"), "snapped: {}", desk.text(FILE));
    assert_eq!(
        desk.command("check", FILE)["findings"]
            .as_array()
            .expect("list")
            .iter()
            .filter(|one| one["severity"] == "refuse")
            .count(),
        0
    );
    desk.well();
}

/// Art, cover, notch and wheel are moved by the keyboard as well; each move is a step.
#[test]
fn everything_that_moves_moves_by_keys() {
    let Some(mut desk) = Desk::with(&["orchard"]) else { return };
    let file = "orchard/dial.toml";
    desk.browser.press("Move things");
    for (handle, key, path) in [
        ("cover.art[0]", "ArrowUp", "at = [\"0 in\", \"-0.594 in\"]"),
        ("cover.width", "ArrowRight", "width = "),
        ("notch/0", "ArrowRight", "notch = { angle ="),
        ("middle/1", "ArrowDown", "at = "),
    ] {
        desk.browser.eval(&format!("document.querySelector('[data-handle=\"{handle}\"]').focus()"));
        let undo = desk.browser.eval("document.querySelector('.deeds button').title");
        desk.browser.key(key);
        desk.browser.wait(&format!("document.querySelector('.deeds button').title !== {undo}"));
        assert!(desk.text(file).contains(path), "{handle}: {}", desk.text(file));
    }
    desk.well();
}

#[test]
fn a_value_is_changed_in_the_story_by_keyboard_alone() {
    let Some(mut desk) = Desk::with(&["harbour"]) else { return };
    let browser = &mut desk.browser;
    browser.eval("document.querySelector('[data-path=\"mark.height\"]').focus()");
    browser.key("Enter");
    browser.wait("document.querySelector('.editor.here input')");
    let help = browser.eval("document.querySelector('.editor.here').textContent");
    for said in ["a length, 1 mm to 40 mm", "The usual value", "MIL-STD-1472E"] {
        assert!(help.as_str().expect("text").contains(said), "{help}");
    }
    // Stepped, the dial follows; a value that cannot be is told at the place; Enter keeps.
    let radius = browser.eval("document.querySelector('[data-path=\"counter[0].wheel.radius\"]').textContent");
    browser.key("ArrowUp");
    browser
        .wait(&format!("document.querySelector('[data-path=\"counter[0].wheel.radius\"]').textContent !== {radius}"));
    browser.write("900 mm");
    browser.wait("document.querySelector('.editor.here .wrong').textContent.includes('1 mm to 40 mm')");
    browser.write("4 mm");
    browser.key("Enter");
    browser.wait("document.querySelector('desk-head .kept').textContent === 'kept on disk'");
    assert!(desk.text(FILE).contains("[mark]\nheight = \"4 mm\"\n"), "{}", desk.text(FILE));
    let focus = desk.browser.eval("document.activeElement.dataset.path");
    assert_eq!(focus, "mark.height", "the focus comes back to the word");
    desk.well();
}
