//! How long from the input event to the painted frame. Measured, not judged, since other work on the machine would
//! decide. Build the program for release, then:
//! `DIALWRIGHT_SPEED=1 DIALWRIGHT_PROGRAM=$PWD/target/release/dialwright cargo test -p dialwright --test journeys speed -- --nocapture`.

use crate::browser::Browser;
use crate::desk::Desk;
use serde_json::Value;
use std::time::Instant;

/// Notes when the last input came, and when the frame after the next look was painted.
const WATCH: &str = "import('/page/lib/board.js').then(({ board }) => {
  let came = 0;
  window.took = [];
  for (const kind of ['pointermove', 'keydown']) addEventListener(kind, (event) => (came = event.timeStamp), true);
  board.addEventListener('pieces', () => {
    const since = came;
    requestAnimationFrame(() => { const { port1, port2 } = new MessageChannel(); port1.onmessage = () => window.took.push(performance.now() - since); port2.postMessage(0) });
  });
})";

fn percentile(mut took: Vec<f64>, share: f64) -> f64 {
    took.sort_by(f64::total_cmp);
    took[((took.len() - 1) as f64 * share).round() as usize]
}

fn took(browser: &mut Browser, count: usize) -> Vec<f64> {
    browser.wait(&format!("window.took.length >= {count}"));
    let took = browser.eval("window.took.splice(0)");
    took.as_array().expect("list").iter().filter_map(Value::as_f64).collect()
}

/// What the page's thread has done so far, in ms: script, style, layout, all tasks.
fn work(browser: &mut Browser) -> [f64; 4] {
    let all = browser.call("Performance.getMetrics", serde_json::json!({}));
    let all = all["metrics"].as_array().cloned().unwrap_or_default();
    ["ScriptDuration", "RecalcStyleDuration", "LayoutDuration", "TaskDuration"].map(|name| {
        let found = all.iter().find(|one| one["name"] == name).and_then(|one| one["value"].as_f64());
        found.unwrap_or(f64::NAN) * 1e3
    })
}

fn measure(dial: &str) {
    let began = Instant::now();
    let Some(mut desk) = Desk::with(&[dial]) else { return };
    println!(
        "{dial}: from no process to the first page with dial and story {:.0} ms",
        began.elapsed().as_secs_f64() * 1e3
    );
    let browser = &mut desk.browser;
    let began = Instant::now();
    browser.call("Page.reload", serde_json::json!({}));
    browser.wait("document.querySelector('dial-mat svg.dial .wheel') && document.querySelector('order-story .value')");
    println!("{dial}: the page loaded again, dial and story drawn {:.0} ms", began.elapsed().as_secs_f64() * 1e3);
    browser.eval(WATCH);
    // A window dragged round its wheel, step by step.
    browser.press("Move things");
    let (x, y) = browser.middle("[data-handle='window/0'] .reach");
    browser.call("Performance.enable", serde_json::json!({}));
    let _ = browser.eval("window.took.splice(0)");
    browser.mouse("mousePressed", (x, y));
    let before = work(browser);
    let mut all = Vec::new();
    for k in 1..=80 {
        browser.mouse("mouseMoved", (x - 4.0, y + 1.5 * f64::from(k)));
        all.extend(took(browser, 1));
    }
    let after = work(browser);
    browser.mouse("mouseReleased", (x - 4.0, y + 120.0));
    let [script, style, layout, tasks] = std::array::from_fn(|k| (after[k] - before[k]) / 80.0);
    println!(
        "{dial}: of it the page, mean of a step: script {script:.1} ms, style {style:.1} ms, layout {layout:.1} ms, all tasks {tasks:.1} ms"
    );
    let server = "(() => { const all = performance.getEntriesByType('resource').filter((r) => r.name.endsWith('/try')).map((r) => r.responseEnd - r.startTime).sort((a, b) => a - b); return [all[Math.floor(all.length / 2)], all[Math.floor(all.length * 0.95)]] })()";
    println!("{dial}: of it the answer of the desk, median and p95: {}", browser.eval(server));
    println!(
        "{dial}: {} drag steps: median {:.1} ms, p95 {:.1} ms",
        all.len(),
        percentile(all.clone(), 0.5),
        percentile(all, 0.95)
    );
    browser.wait("document.querySelector('desk-head .kept').textContent === 'kept on disk'");
    browser.press("Undo");
    // A value stepped in the story; every wheel is laid out anew.
    browser.eval("document.querySelector('[data-path=\"mark.height\"]').click()");
    browser.wait("document.querySelector('.editor.here input')");
    browser.eval("document.querySelector('.editor.here input').focus(); window.took.splice(0)");
    let mut all = Vec::new();
    for k in 0..60 {
        browser.key(if k % 20 < 10 { "ArrowUp" } else { "ArrowDown" });
        all.extend(took(browser, 1));
    }
    println!(
        "{dial}: {} value steps: median {:.1} ms, p95 {:.1} ms",
        all.len(),
        percentile(all.clone(), 0.5),
        percentile(all, 0.95)
    );
    // Values kept: written, settled on disk, and painted.
    let mut all = Vec::new();
    for k in 0..20 {
        browser.eval(
            "document.querySelector('.editor.here') || document.querySelector('[data-path=\"mark.height\"]').click()",
        );
        browser.wait("document.querySelector('.editor.here input')");
        browser.eval("document.querySelector('.editor.here input').focus()");
        browser.write(&format!("{} mm", 4.0 + f64::from(k % 10) / 10.0));
        std::thread::sleep(std::time::Duration::from_millis(150));
        browser.eval("window.took.splice(0)");
        browser.key("Enter");
        all.extend(took(browser, 1));
        browser.wait("!document.querySelector('.editor.here')");
    }
    println!(
        "{dial}: {} values kept on disk: median {:.1} ms, p95 {:.1} ms",
        all.len(),
        percentile(all.clone(), 0.5),
        percentile(all, 0.95)
    );
    desk.well();
}

#[test]
fn speed_from_input_to_painted_frame() {
    if std::env::var("DIALWRIGHT_SPEED").is_err() {
        return;
    }
    for dial in ["harbour", "caravan"] {
        measure(dial);
    }
}
