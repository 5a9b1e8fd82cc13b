//! What must hold of any page, whatever it shows: for a screen reader, a narrow window, a finger, paper.

use crate::browser::Browser;
use serde_json::{Value, json};

/// axe-core 4.14.1 (Deque Systems, MPL-2.0; its licence lies beside it). Only tests use it.
const AXE: &str = include_str!("axe/axe.min.js");

/// axe finds nothing in the page as it is now. It is put in by the browser's own protocol: the page itself would not run it.
pub fn axe(browser: &mut Browser, what: &str) {
    axe_of(browser, "{}", what);
}

/// The same with options, of which rules to run above all.
pub fn axe_of(browser: &mut Browser, options: &str, what: &str) {
    if browser.eval("typeof axe") == "undefined" {
        browser.eval(&format!("{AXE}; 0"));
    }
    let run = format!(
        "axe.run(document, {{ resultTypes: ['violations'], ...{options} }}).then((r) => r.violations.map((v) => [v.id, v.help, v.nodes.slice(0, 3).map((n) => n.html.slice(0, 160) + ' :: ' + (n.any[0]?.message ?? ''))]))"
    );
    let found = browser.eval(&run);
    assert_eq!(found, json!([]), "{what}: {found:#}");
}

/// Nothing sticks out of the window at its side.
pub fn nothing_wider(browser: &mut Browser, what: &str) {
    let wider = browser.eval("document.documentElement.scrollWidth <= innerWidth ? [] : [...document.querySelectorAll('body *')].filter((e) => e.getBoundingClientRect().right > innerWidth + 0.5).map((e) => [e.outerHTML.slice(0, 80), e.getBoundingClientRect().right])");
    assert_eq!(wider, json!([]), "{what} is wider than its window: {wider:#}");
}

/// Words in a line are let be (WCAG 2.2, 2.5.5: targets in a sentence); everything else is 44 px each way. A choice is hit by its
/// whole label.
pub fn targets(browser: &mut Browser, what: &str) {
    let small: Value = browser.eval(
        "[...document.querySelectorAll('button, a, input, select, textarea, summary, [role=slider], label:has(> :is([type=radio], [type=checkbox]))')].filter((e) => e.getClientRects().length && !e.matches('.value, p a, .only-heard, [type=range], label > :is([type=radio], [type=checkbox])')).map((e) => [e.outerHTML.slice(0, 90), e.getBoundingClientRect()]).filter(([, b]) => b.width < 43.5 || b.height < 43.5).map(([html, b]) => [html, b.width, b.height])",
    );
    assert_eq!(small, json!([]), "{what}: {small:#}");
}
