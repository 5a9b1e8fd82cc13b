//! Nothing is lost: undo across reloads, changes from outside, broken files, several pages and desks.

use crate::browser;
use crate::desk::{Desk, Served};
use std::fs;

const FILE: &str = "harbour/dial.toml";
const KEPT: &str = "document.querySelector('desk-head .kept').textContent === 'kept on disk'";

#[test]
fn ten_steps_are_undone_after_a_reload_and_a_restart() {
    let Some(mut desk) = Desk::with(&["harbour"]) else { return };
    let mut texts = vec![desk.text(FILE)];
    for k in 1..=10 {
        desk.browser.eval("document.querySelector('[data-path=\"cover.corner\"]').click()");
        desk.browser.wait("document.querySelector('.editor.here input')");
        desk.browser.eval("document.querySelector('.editor.here input').focus()");
        desk.browser.write(&format!("{k} mm"));
        desk.browser.key("Enter");
        desk.browser.wait(&format!("document.querySelector('[data-path=\"cover.corner\"]').textContent === '{k} mm' && {KEPT} && !document.querySelector('.editor.here')"));
        texts.push(desk.text(FILE));
    }
    let place = desk.browser.eval("location.hash");
    desk.browser.call("Page.reload", serde_json::json!({}));
    desk.browser
        .wait("document.querySelector('order-story .value') && !document.querySelector('.deeds button').disabled");
    for text in texts[5..10].iter().rev() {
        desk.browser.press("Undo");
        desk.browser.wait(KEPT);
        wait_for(&desk, text);
    }
    // Another desk on the same folder goes on where this one was.
    desk.served = Served::on(desk.folder.path(), &desk.path(".state"));
    let link = desk.served.link.clone();
    desk.browser.go(&link);
    desk.browser.eval(&format!("location.hash = {place}"));
    desk.browser
        .wait("document.querySelector('order-story .value') && !document.querySelector('.deeds button').disabled");
    for text in texts[..5].iter().rev() {
        desk.browser.press("Undo");
        wait_for(&desk, text);
    }
    desk.browser.wait("document.querySelector('.deeds button').disabled");
    // The connection that was cut when the first desk ended is no fault of the page.
    desk.browser.errors();
    desk.well();
}

fn wait_for(desk: &Desk, text: &str) {
    for _ in 0..400 {
        if desk.text(FILE) == text {
            return;
        }
        std::thread::sleep(std::time::Duration::from_millis(10));
    }
    panic!("the file holds {}, not {text}", desk.text(FILE));
}

#[test]
fn a_change_from_outside_is_taken_in_at_once() {
    let Some(mut desk) = Desk::with(&["harbour"]) else { return };
    let outside = desk.text(FILE).replace("0..24", "0..30");
    fs::write(desk.path(FILE), &outside).expect("written");
    desk.browser.wait("document.querySelectorAll('[role=slider]')[0].getAttribute('aria-valuemax') === '31'");
    desk.browser.wait("document.querySelector('desk-news').textContent.includes('changed outside')");
    // And undone like any other step.
    desk.browser.press("Undo");
    desk.browser.wait("document.querySelectorAll('[role=slider]')[0].getAttribute('aria-valuemax') === '25'");
    desk.well();
}

#[test]
fn where_both_sides_changed_both_versions_are_shown() {
    let Some(mut desk) = Desk::with(&["harbour"]) else { return };
    desk.browser.press("In writing");
    desk.browser.wait("document.querySelector('writing-view textarea').value.includes('0..24')");
    desk.browser.eval("(() => { const t = document.querySelector('writing-view textarea'); t.value = t.value.replace('0..24', '0..18'); t.dispatchEvent(new Event('input')) })()");
    let outside = desk.text(FILE).replace("0..24", "0..30");
    fs::write(desk.path(FILE), &outside).expect("written");
    desk.browser.wait("document.querySelector('desk-news').textContent.includes('changed outside')");
    assert!(desk.browser.eval("document.querySelector('writing-view textarea').value.includes('0..18')") == true);
    // What was begun here was begun on the old text: it is not written over the new one, and both are shown.
    desk.browser.press("Keep it");
    desk.browser.wait("document.querySelectorAll('desk-news .both pre').length === 2");
    let marked = desk
        .browser
        .eval("[...document.querySelectorAll('desk-news del, desk-news ins')].map((line) => line.textContent)");
    assert_eq!(marked, serde_json::json!(["values = \"0..30\"", "values = \"0..18\""]));
    assert_eq!(desk.text(FILE), outside);
    desk.browser.press("Take mine");
    wait_for(&desk, &outside.replace("0..30", "0..18"));
    desk.browser.wait("!document.querySelector('desk-news .both')");
    desk.browser.press("Undo");
    wait_for(&desk, &outside);
    desk.well();
}

#[test]
fn a_broken_file_is_shown_with_its_places() {
    let Some(mut desk) = Desk::with(&["harbour"]) else { return };
    let broken = desk
        .text(FILE)
        .replace("values = \"0..24\"", "values = 0..24")
        .replace("symbol = \"flame\"", "symbol = \"flam\"");
    fs::write(desk.path(FILE), &broken).expect("written");
    let browser = &mut desk.browser;
    browser.wait("document.querySelector('found-list').textContent.includes('cannot be read as it stands')");
    // The last dial that could be drawn stays, and says so.
    browser.wait("document.querySelector('dial-mat.stale .says').textContent.includes('the file has mistakes now')");
    browser.click("found-list li.refuse a");
    browser.wait("document.querySelectorAll('.mistakes li').length === 2");
    browser.click(".mistakes li button");
    let chosen = browser.eval("(() => { const t = document.querySelector('textarea'); return t.value.slice(t.selectionStart, t.selectionEnd) })()");
    assert_eq!(chosen, "0..24");
    browser.eval("(() => { const t = document.querySelector('textarea'); t.value = t.value.replace('= 0..24', '= \"0..24\"').replace('flam\"', 'flame\"'); t.dispatchEvent(new Event('input')) })()");
    browser.press("Keep it");
    browser.wait(
        "document.querySelector('writing-view [role=status]').textContent === 'The file reads without a mistake.'",
    );
    desk.well();
}

#[test]
fn two_pages_and_two_desks_follow_each_other() {
    let Some(mut desk) = Desk::with(&["harbour"]) else { return };
    let first = desk.browser.page_now();
    let second = desk.browser.page();
    let other = Served::on(&desk.path(FILE), &desk.path(".state"));
    desk.browser.go(&other.link);
    desk.browser.wait("document.querySelector('order-story .value')");
    let corner = |mm: u32| format!("document.querySelector('[data-path=\"cover.corner\"]').textContent === '{mm} mm'");
    for (k, page) in [(2, &first), (3, &second), (4, &first)] {
        desk.browser.turn_to(page);
        desk.browser.eval("document.querySelector('[data-path=\"cover.corner\"]').click()");
        desk.browser.wait("document.querySelector('.editor.here input')");
        desk.browser.eval("document.querySelector('.editor.here input').focus()");
        desk.browser.write(&format!("{k} mm"));
        desk.browser.key("Enter");
        for page in [&first, &second] {
            desk.browser.turn_to(page);
            desk.browser.wait(&corner(k));
        }
    }
    desk.well();
}

/// Without a browser at hand this file would say nothing: what is needed is said in one place.
#[test]
fn the_browser_is_looked_for() {
    let _ = browser::found();
}
