//! For everyone: axe on every view, narrow windows, zoom, fingers, paper.

use crate::checks::{self, axe};
use crate::desk::{Desk, HARBOUR, VIEWS};
use crate::looks::card::{choose, with_votes_and_photo};
use serde_json::json;

/// Goes to a view as it is when it is in use: with votes, with a photo that was read, with everything unfolded.
fn in_use(desk: &mut Desk, view: &str) {
    desk.open(view);
    if view == "card" {
        choose(desk, "good.jpg");
        desk.browser.wait("document.querySelector('.found .verdict-line.well')");
    }
    desk.browser.eval("document.querySelectorAll('main details').forEach((d) => (d.open = true))");
    if view == "shelf" {
        desk.browser.wait("document.querySelector('.cut-from button.stock')");
    }
    if view == "machine" {
        desk.browser.wait("document.querySelector('workshop-story [data-path]') && document.querySelectorAll('shelf-of').length === 2");
        desk.browser.eval("document.querySelectorAll('main details').forEach((d) => (d.open = true))");
        desk.browser
            .wait("[...document.querySelectorAll('shelf-of')].every((one) => one.querySelector('[data-path]'))");
    }
}

#[test]
fn axe_finds_nothing_on_any_view() {
    let Some(mut desk) = Desk::with(&["harbour", "beacon"]) else { return };
    with_votes_and_photo(&desk);
    for scheme in ["light", "dark"] {
        desk.browser.prefer(&[("prefers-color-scheme", scheme)]);
        for (view, _) in VIEWS {
            in_use(&mut desk, view);
            axe(&mut desk.browser, &format!("{view}, {scheme}"));
        }
        desk.open("mat");
        for words in ["Turned over", "Lifted apart", "Face up", "Move things", "Measure"] {
            desk.browser.press(words);
            desk.browser.wait(&format!("document.querySelector('[aria-pressed=true][data-pressed]') || [...document.querySelectorAll('[aria-pressed=true]')].some((b) => b.textContent === '{words}')"));
            axe(&mut desk.browser, &format!("{words}, {scheme}"));
        }
        for (view, value) in [("mat", "cover.outline"), ("mat", "stock"), ("machine", "machine.engrave")] {
            in_use(&mut desk, view);
            desk.browser.eval(&format!("document.querySelector('[data-path=\"{value}\"]').click()"));
            desk.browser.wait("document.querySelector('.editor.here')");
            axe(&mut desk.browser, &format!("an open editor of {value}, {scheme}"));
        }
    }
    desk.well();
}

/// A view always says something, and breaks no rule by it: without a dial, and with one that cannot be read.
#[test]
fn nothing_to_show_is_for_everyone_too() {
    let Some(mut desk) = Desk::with(&[]) else { return };
    desk.browser.wait("document.querySelector('shelf-view form')");
    for (view, _) in VIEWS {
        desk.browser.eval(&format!("location.hash = 'view={view}'"));
        let said =
            if ["shelf", "card"].contains(&view) { format!("{view}-view h2") } else { "main a[href*=shelf]".into() };
        desk.browser.wait(&format!("document.querySelector('{said}') && location.hash.includes('{view}')"));
        axe(&mut desk.browser, &format!("{view}, without a dial"));
    }
    desk.well();
    let Some(mut desk) = Desk::with(&["harbour"]) else { return };
    std::fs::write(desk.path(HARBOUR), "name = 3\nstandard = \"nowhere.toml\"\n").expect("written");
    for (view, _) in VIEWS {
        desk.browser.eval(&format!("location.hash = 'view={view}&dial={HARBOUR}'"));
        let said = match view {
            "mat" => "found-list li.refuse",
            "machine" => "machine-view > div .wrong",
            "writing" => "writing-view .mistakes li",
            _ => "main *",
        };
        desk.browser.wait(&format!("document.querySelector('{view}-view') && document.querySelector('{said}')"));
        axe(&mut desk.browser, &format!("{view}, broken"));
    }
    desk.well();
}

/// 360 CSS pixels wide, and 640 x 400: a window of 1280 x 800 at 200 %. A finger hits everything there.
#[test]
fn narrow_windows_and_zoom_hide_nothing_from_a_finger() {
    let Some(mut desk) = Desk::with(&["harbour", "beacon"]) else { return };
    with_votes_and_photo(&desk);
    for (width, height) in [(360, 740), (640, 400)] {
        desk.browser.viewport(width, height);
        for (view, _) in VIEWS {
            in_use(&mut desk, view);
            checks::nothing_wider(&mut desk.browser, view);
            checks::targets(&mut desk.browser, view);
        }
    }
    // And it can be worked with: a value is changed on the narrow page.
    desk.browser.viewport(360, 740);
    desk.open("mat");
    desk.browser.click("[data-path='cover.corner']");
    desk.browser.wait("document.querySelector('.editor.here input')");
    desk.browser.write("3 mm");
    desk.browser.press("Set");
    desk.browser.wait("document.querySelector('[data-path=\"cover.corner\"]').textContent === '3 mm'");
    desk.browser.wait("document.querySelector('desk-head .kept').textContent === 'kept on disk'");
    assert!(desk.text(HARBOUR).contains("corner = \"3 mm\""));
    desk.browser.press("Move things");
    let small = desk.browser.eval("[...document.querySelectorAll('.handle-group')].map((e) => [e.dataset.handle, e.getBoundingClientRect().width]).filter(([, w]) => w < 43)");
    assert_eq!(small, json!([]), "{small}");
    desk.well();
}

/// What is printed holds of every view: no controls but words that are content too, nothing cut off at an edge or beside the paper,
/// dark on white whatever the screen is.
#[test]
fn every_view_goes_onto_paper() {
    let Some(mut desk) = Desk::with(&["harbour", "beacon"]) else { return };
    with_votes_and_photo(&desk);
    for scheme in ["light", "dark"] {
        for (view, _) in VIEWS {
            desk.browser.viewport(1280, 800);
            desk.browser.call(
                "Emulation.setEmulatedMedia",
                json!({ "media": "", "features": [{ "name": "prefers-color-scheme", "value": scheme }] }),
            );
            in_use(&mut desk, view);
            desk.browser.call(
                "Emulation.setEmulatedMedia",
                json!({ "media": "print", "features": [{ "name": "prefers-color-scheme", "value": scheme }] }),
            );
            // A4 less two margins of 12 mm, at 96 pixels to the inch.
            desk.browser.viewport(703, 1000);
            let what = format!("{view}, {scheme}, printed");
            paper(&mut desk, &what);
            if let Ok(folder) = std::env::var("DIALWRIGHT_PICTURES") {
                let high = desk.browser.eval("Math.min(2600, document.documentElement.scrollHeight)").as_u64();
                desk.browser.viewport(703, high.expect("px") as u32);
                desk.browser.picture(&std::path::Path::new(&folder).join(format!("paper-{view}-{scheme}.png")));
            }
        }
    }
    desk.browser.call("Emulation.setEmulatedMedia", json!({ "media": "", "features": [] }));
    desk.well();
}

fn paper(desk: &mut Desk, what: &str) {
    let browser = &mut desk.browser;
    // Values of the story, findings and stocks are buttons on the screen, and words and pictures on paper; so is what is filled in.
    let controls = browser.eval("[...document.querySelectorAll('button, .button, input, select, textarea, progress, nav, form, [role=slider], details:not([open]) > summary')].filter((e) => e.checkVisibility() && e.getClientRects().length && !e.matches('.value, .touch, button.stock, .only-heard, .fields input')).map((e) => e.outerHTML.slice(0, 120))");
    assert_eq!(controls, json!([]), "{what}: {controls:#}");
    let words = browser.eval("document.querySelector('main').innerText.length").as_u64();
    assert!(words > Some(40), "{what}: {words:?} letters are left");
    checks::nothing_wider(browser, what);
    let clipped = browser.eval("[...document.querySelectorAll('body, body *')].filter((e) => e instanceof HTMLElement && e.getClientRects().length && !e.closest('.only-heard') && [getComputedStyle(e).overflowX, getComputedStyle(e).overflowY].some((o) => o !== 'visible') && (e.scrollHeight > e.clientHeight + 1 || e.scrollWidth > e.clientWidth + 1)).map((e) => [e.outerHTML.slice(0, 100), e.scrollHeight, e.clientHeight, e.scrollWidth, e.clientWidth])");
    assert_eq!(clipped, json!([]), "{what}: {clipped:#}");
    let dark = browser.eval("(() => { const light = (c) => { const [r, g, b, a = 1] = c.match(/[\\d.]+/g).map(Number); return a < 0.1 ? 255 : (r + g + b) / 3 }; return [...document.querySelectorAll('html, body, body *')].filter((e) => e instanceof HTMLElement && e.getClientRects().length).filter((e) => light(getComputedStyle(e).backgroundColor) < 200).map((e) => e.outerHTML.slice(0, 100)) })()");
    assert_eq!(dark, json!([]), "{what}: {dark:#}");
    assert_eq!(
        browser.eval("getComputedStyle(document.documentElement).backgroundColor"),
        "rgb(255, 255, 255)",
        "{what}"
    );
    checks::axe_of(browser, "{ runOnly: ['color-contrast'] }", what);
}
