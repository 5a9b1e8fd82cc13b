//! The turning page as a client opens it: one file from the disk, turned by dragging, by keys, by buttons and by a finger.

use crate::browser::{self, Browser};
use crate::checks;
use serde_json::{Value, json};
use std::path::Path;
use std::process::Command;

fn dialwright(args: &[&str]) -> String {
    let run = Command::new(env!("CARGO_BIN_EXE_dialwright")).args(args).output().expect("runs");
    String::from_utf8_lossy(&run.stdout).into_owned()
}

/// The page of the first example, opened from a file.
fn opened() -> Option<(tempfile::TempDir, Browser)> {
    let program = browser::found()?;
    let folder = tempfile::tempdir().expect("a folder");
    let job = folder.path().join("job");
    let example = Path::new(env!("CARGO_MANIFEST_DIR")).join("../../examples/harbour/dial.toml");
    dialwright(&["make", &example.display().to_string(), "--to", &job.display().to_string()]);
    let page = job.join("turn.html");
    assert!(std::fs::metadata(&page).expect("made").len() < 600_000);
    let mut browser = Browser::start(&program);
    browser.prefer(&[("prefers-reduced-motion", "reduce")]);
    browser.go(&format!("file://{}", page.display()));
    browser.wait("document.querySelector('#turner-1')");
    Some((folder, browser))
}

fn shown(browser: &mut Browser, wheel: usize) -> Value {
    browser.eval(&format!("document.querySelector('#turner-{wheel}').getAttribute('aria-valuetext')"))
}

fn well(mut browser: Browser) {
    let errors = browser.errors();
    assert!(errors.is_empty(), "the page complained: {errors:#?}");
}

#[test]
fn a_client_turns_the_wheels() {
    let Some((_folder, mut browser)) = opened() else { return };
    // By keys and buttons, round past the end.
    browser.eval("document.querySelector('#turner-0').focus()");
    browser.key("ArrowDown");
    assert_eq!(shown(&mut browser, 0), "24");
    browser.key("ArrowUp");
    browser.key("ArrowUp");
    assert_eq!(shown(&mut browser, 0), "1");
    browser.click("[aria-label='lamp oil: one back']");
    assert_eq!(shown(&mut browser, 1), "15");
    // What is turned to the window is the mark that is named: it lies over the window's middle.
    let over = |browser: &mut Browser, wheel: usize| {
        browser.eval(&format!("(() => {{ const f = JSON.parse(document.getElementById('figures').textContent).wheels[{wheel}]; const svg = document.querySelector('#front svg'); const m = svg.getScreenCTM(); const w = new DOMPoint(...f.window).matrixTransform(m); const all = [...document.querySelectorAll('#front [data-wheel=\"{wheel}\"] .mark')].map((e, k) => {{ const b = e.getBoundingClientRect(); return [Math.hypot(b.x + b.width / 2 - w.x, b.y + b.height / 2 - w.y), k] }}); return f.marks[all.sort((a, b) => a[0] - b[0])[0][1]] }})()"))
    };
    assert_eq!(over(&mut browser, 0), "1");
    assert_eq!(over(&mut browser, 1), "15");
    // By dragging the bared rim up, with the mouse and with a finger; it comes to rest on a stop.
    let grip = browser.middle(".grip[data-wheel='0']");
    browser.drag(grip, (grip.0 + 6.0, grip.1 - 90.0), 10);
    let dragged: u32 = shown(&mut browser, 0).as_str().and_then(|text| text.parse().ok()).expect("a number");
    assert!((2..=8).contains(&dragged), "{dragged}");
    by_finger(&mut browser, grip, (4.0, 80.0));
    let back: u32 = shown(&mut browser, 0).as_str().and_then(|text| text.parse().ok()).expect("a number");
    assert!(back < dragged, "pushed down it counts down: {dragged}, then {back}");
    assert_eq!(over(&mut browser, 0), back.to_string());
    well(browser);
}

/// Dragged by a finger, in eight steps.
fn by_finger(browser: &mut Browser, from: (f64, f64), by: (f64, f64)) {
    browser.call("Emulation.setTouchEmulationEnabled", json!({ "enabled": true }));
    let mut touch = |kind: &str, points: Value| {
        browser.call("Input.dispatchTouchEvent", json!({ "type": kind, "touchPoints": points }));
    };
    touch("touchStart", json!([{ "x": from.0, "y": from.1 }]));
    for step in 1..=8 {
        let share = f64::from(step) / 8.0;
        touch("touchMove", json!([{ "x": from.0 + share * by.0, "y": from.1 + share * by.1 }]));
    }
    touch("touchEnd", json!([]));
}

#[test]
fn a_client_turns_it_over_and_chooses_materials() {
    let Some((_folder, mut browser)) = opened() else { return };
    browser.press("Turn over");
    assert_eq!(
        browser.eval("[document.querySelector('#front').hidden, document.querySelector('#back').hidden]"),
        json!([true, false])
    );
    browser.press("Show the front");
    // Other materials: the page wears their colours, and the code names them.
    let before = browser.eval("getComputedStyle(document.querySelector('#front .plate')).fill");
    browser.click("#stocks-0 [aria-checked=true]");
    browser.key("ArrowRight");
    browser.key("ArrowRight");
    assert_ne!(browser.eval("getComputedStyle(document.querySelector('#front .plate')).fill"), before);
    let chosen =
        browser.eval("[0, 1].map((p) => document.querySelector(`#stocks-${p} [aria-checked=true]`).textContent)");
    browser.press("This one");
    let code = browser.eval("document.querySelector('#code').textContent");
    let pairing: Value =
        serde_json::from_str(&dialwright(&["choice", code.as_str().expect("a code"), "--json"])).expect("JSON");
    assert_eq!((&pairing["cover"], &pairing["wheel"]), (&chosen[0], &chosen[1]));
    // What will not do is said, with its reason: char does not show on walnut (1.9 to 2.3:1, see the room `process`).
    browser.eval("[...document.querySelectorAll('#stocks-1 button')].find((one) => one.textContent === 'walnut plywood 3 mm').click()");
    let said = browser.eval("document.querySelector('#not-readable').textContent");
    assert!(said.as_str().is_some_and(|said| said.starts_with("Will not do: ") && said.contains("marks 2.")), "{said}");
    // The seat across the table sees the number upside down and squeezed: the wheel's plane is mapped so.
    browser.eval("(() => { const s = document.querySelectorAll('#table-choice select')[1]; s.value = '3'; s.dispatchEvent(new Event('change')) })()");
    let matrix = browser.eval(
        "new DOMMatrix(getComputedStyle(document.querySelector('#seen svg')).transform).toFloat64Array().join(' ')",
    );
    let numbers: Vec<f64> =
        matrix.as_str().expect("a matrix").split(' ').map(|one| one.parse().expect("a number")).collect();
    assert!(numbers[0] < -0.9 && numbers[5] < -0.3 && numbers[5] > -0.6, "{numbers:?}");
    // True size: the drawn card is as wide as the slider says, and so is the dial.
    browser.press("True size");
    browser.eval("(() => { const r = document.querySelector('#card-size'); r.value = '5'; r.dispatchEvent(new Event('input')) })()");
    let sizes = browser.eval("[document.querySelector('#bank-card').getBoundingClientRect().width, document.querySelector('#front svg').getBoundingClientRect().width / JSON.parse(document.getElementById('figures').textContent).size[0]]");
    assert!(
        (sizes[0].as_f64().expect("px") - 428.0).abs() < 0.5 && (sizes[1].as_f64().expect("px") - 5.0).abs() < 0.01,
        "{sizes}"
    );
    well(browser);
}

#[test]
fn the_page_is_for_everyone() {
    let Some((_folder, mut browser)) = opened() else { return };
    for scheme in ["light", "dark"] {
        browser.prefer(&[("prefers-color-scheme", scheme)]);
        checks::axe(&mut browser, scheme);
    }
    // A page of 1280 x 800 magnified to twice its size has this much room; and a phone.
    for (width, height, what) in [(640, 400, "magnified"), (360, 740, "narrow")] {
        browser.viewport(width, height);
        checks::nothing_wider(&mut browser, what);
        checks::targets(&mut browser, what);
        checks::axe(&mut browser, what);
    }
    // It can be worked with there, by a finger on the narrow page.
    let grip = browser.middle(".grip[data-wheel='1']");
    by_finger(&mut browser, grip, (-3.0, -45.0));
    assert_ne!(shown(&mut browser, 1), "0");
    // Nothing is asked of any network.
    assert_eq!(browser.eval("performance.getEntriesByType('resource').length"), json!(0));
    well(browser);
}
