//! For everyone: axe on every view, narrow windows, zoom, fingers, paper.

use crate::desk::Desk;
use serde_json::{Value, json};

/// axe-core 4.14.1 (Deque Systems, MPL-2.0; its licence lies beside it). Only tests use it.
const AXE: &str = include_str!("axe/axe.min.js");

const VIEWS: [&str; 5] = ["mat", "magnets", "machine", "writing", "shelf"];

fn show(desk: &mut Desk, view: &str) {
    desk.browser.eval(&format!("location.hash = 'view={view}&dial=harbour/dial.toml'"));
    let ready = match view {
        "mat" => "mat-view order-story .value",
        "magnets" => "magnets-view .plate-picture svg",
        "machine" => "machine-view .setup svg",
        "writing" => "writing-view textarea",
        _ => "shelf-view form.brief",
    };
    desk.browser.wait(&format!("document.querySelector('{ready}')"));
}

fn axe(desk: &mut Desk, what: &str) {
    let run = "axe.run(document, { resultTypes: ['violations'] }).then((r) => r.violations.map((v) => [v.id, v.help, v.nodes.slice(0, 3).map((n) => n.html.slice(0, 160) + ' :: ' + (n.any[0]?.message ?? ''))]))";
    let found = desk.browser.eval(run);
    assert_eq!(found, json!([]), "{what}: {found:#}");
}

#[test]
fn axe_finds_nothing_on_any_view() {
    let Some(mut desk) = Desk::with(&["harbour"]) else { return };
    // Put in by the browser's own protocol: the page itself would not run it.
    desk.browser.eval(&format!("{AXE}; 0"));
    for scheme in ["light", "dark"] {
        desk.browser.prefer(&[("prefers-color-scheme", scheme)]);
        for view in VIEWS {
            show(&mut desk, view);
            axe(&mut desk, &format!("{view}, {scheme}"));
        }
        show(&mut desk, "mat");
        for words in ["Turned over", "Lifted apart", "Face up", "Move things", "Measure"] {
            desk.browser.press(words);
            desk.browser.wait(&format!("document.querySelector('[aria-pressed=true][data-pressed]') || [...document.querySelectorAll('[aria-pressed=true]')].some((b) => b.textContent === '{words}')"));
            axe(&mut desk, &format!("{words}, {scheme}"));
        }
        desk.browser.eval("document.querySelector('[data-path=\"cover.outline\"]').click()");
        desk.browser.eval("document.querySelectorAll('details').forEach((d) => (d.open = true))");
        axe(&mut desk, &format!("an open editor, {scheme}"));
    }
    // A broken file.
    let text = desk.text("harbour/dial.toml");
    std::fs::write(desk.path("harbour/dial.toml"), text.replace("0..24\"", "0..24")).expect("written");
    for view in ["mat", "writing", "machine"] {
        show_broken(&mut desk, view);
        axe(&mut desk, &format!("{view}, broken"));
    }
    desk.well();
}

fn show_broken(desk: &mut Desk, view: &str) {
    desk.browser.eval(&format!("location.hash = 'view={view}&dial=harbour/dial.toml'"));
    let ready = match view {
        "mat" => "found-list li.refuse",
        "machine" => "machine-view .wrong",
        _ => "writing-view .mistakes li",
    };
    desk.browser.wait(&format!("document.querySelector('{ready}')"));
}

/// 360 CSS pixels wide, and 640 x 400: a window of 1280 x 800 at 200 %.
#[test]
fn narrow_windows_and_zoom_hide_nothing() {
    let Some(mut desk) = Desk::with(&["harbour"]) else { return };
    for (width, height) in [(360, 740), (640, 400)] {
        desk.browser.viewport(width, height);
        for view in VIEWS {
            show(&mut desk, view);
            let wide = desk.browser.eval("document.documentElement.scrollWidth");
            assert!(wide.as_u64().expect("px") <= u64::from(width), "{view} is {wide} px wide in {width}");
        }
    }
    // And it can be worked with: a value is changed on the narrow page.
    desk.browser.viewport(360, 740);
    show(&mut desk, "mat");
    desk.browser.click("[data-path='cover.corner']");
    desk.browser.wait("document.querySelector('.editor.here input')");
    desk.browser.write("3 mm");
    desk.browser.press("Set");
    desk.browser.wait("document.querySelector('[data-path=\"cover.corner\"]').textContent === '3 mm'");
    desk.browser.wait("document.querySelector('desk-head .kept').textContent === 'kept on disk'");
    assert!(desk.text("harbour/dial.toml").contains("corner = \"3 mm\""));
    desk.well();
}

/// Words in a line are let be (WCAG 2.2, 2.5.5: targets in a sentence); everything else is 44 px each way. A choice is hit by its whole
/// label.
#[test]
fn a_finger_hits_every_target() {
    let Some(mut desk) = Desk::with(&["harbour"]) else { return };
    desk.browser.viewport(360, 740);
    for view in VIEWS {
        show(&mut desk, view);
        let small: Value = desk.browser.eval(
            "[...document.querySelectorAll('button, a, input, select, textarea, summary, [role=slider], label:has(> [type=radio])')].filter((e) => e.getClientRects().length && !e.matches('.value, p a, [type=range], label > [type=radio]')).map((e) => [e.outerHTML.slice(0, 90), e.getBoundingClientRect()]).filter(([, b]) => b.width < 43.5 || b.height < 43.5).map(([html, b]) => [html, b.width, b.height])",
        );
        assert_eq!(small, json!([]), "{view}: {small:#}");
    }
    show(&mut desk, "mat");
    desk.browser.press("Move things");
    let small = desk.browser.eval("[...document.querySelectorAll('.handle-group')].map((e) => [e.dataset.handle, e.getBoundingClientRect().width]).filter(([, w]) => w < 43)");
    assert_eq!(small, json!([]), "{small}");
    desk.well();
}

/// Printed: the dial in the file's own paper size, controls left out.
#[test]
fn paper_shows_the_dial_and_no_controls() {
    let Some(mut desk) = Desk::with(&["harbour"]) else { return };
    desk.browser.call("Emulation.setEmulatedMedia", json!({ "media": "print" }));
    let shown = desk.browser.eval("['desk-head nav', '.deeds', '.views', 'dial-mat svg.dial', 'order-story'].map((s) => document.querySelector(s).getClientRects().length > 0)");
    assert_eq!(shown, json!([false, false, false, true, true]));
    desk.well();
}
