//! The reader's seat moved by keys and by hand, and written into the file.

use crate::desk::{Desk, HARBOUR as FILE};
use serde_json::{Value, json};

/// The figures that a page shows of a seat.
fn figures(desk: &mut Desk) -> Vec<String> {
    let cells = desk.browser.eval("[...document.querySelectorAll('.from-there td')].map((td) => td.textContent)");
    cells.as_array().expect("a list").iter().map(|one| one.as_str().expect("words").to_owned()).collect()
}

#[test]
fn the_seat_is_moved_by_keys_and_by_hand() {
    let Some(mut desk) = Desk::with(&["harbour"]) else { return };
    desk.open("seat");
    // It begins at the owner's seat, with the command line's figures.
    let owner = desk.command("looks", FILE)["wheels"][0]["seen"][0].clone();
    let angle = |told: &Value| format!("{:.1}'", (told["angle_arcmin"].as_f64().expect("'") * 10.0).floor() / 10.0);
    assert!(figures(&mut desk)[0].starts_with(&angle(&owner)), "{:?} {owner}", figures(&mut desk));
    desk.browser.wait("document.querySelector('.seat .verdict-line.well')");
    let value = |desk: &mut Desk, field: &str| {
        desk.browser.eval(&format!("document.querySelector('[data-seat={field}]').value"))
    };
    desk.browser.eval("document.querySelectorAll('.plan-point')[0].focus()");
    for _ in 0..3 {
        desk.browser.key("ArrowDown");
    }
    desk.browser.key("ArrowRight");
    assert_eq!(value(&mut desk, "away"), "380 mm");
    assert_eq!(value(&mut desk, "side"), "5 deg");
    let text = desk.browser.eval("document.activeElement.getAttribute('aria-valuetext')");
    assert_eq!(text, "380 mm away, at 5 deg");
    // The eye dragged down: more is hidden, until it does not read; nothing is written while one drags.
    let before = desk.text(FILE);
    let at = desk.browser.eval("(() => { const svg = document.querySelectorAll('svg.plan')[1]; svg.scrollIntoView({ block: 'center' }); const m = svg.getScreenCTM(); const at = (x, y) => { const p = new DOMPoint(x, y).matrixTransform(m); return [p.x, p.y] }; return [at(380, -470), at(800, -250)] })()");
    let place = |k: usize| (at[k][0].as_f64().expect("x"), at[k][1].as_f64().expect("y"));
    desk.browser.drag(place(0), place(1), 10);
    assert_eq!((value(&mut desk, "away"), value(&mut desk, "eye")), (json!("800 mm"), json!("250 mm")));
    desk.browser
        .wait("document.querySelector('.seat .verdict-line.fails') && document.querySelector('.from-here li.mend')");
    assert_eq!(desk.text(FILE), before);
    desk.browser.wait("document.querySelector('.from-there td').textContent.length && !document.querySelector('.from-there tr').textContent.includes('23.5')");
    // Written into the file, the command line tells the same of that seat.
    desk.browser.press("Write this seat into the file");
    desk.until(FILE, "distance = \"800 mm\"");
    let looks = desk.command("looks", FILE);
    let seen = looks["wheels"][0]["seen"].as_array().expect("a list").last().expect("the new reader").clone();
    assert_eq!(looks["readers"].as_array().expect("a list").last().expect("one")["eye_mm"], 250.0);
    let shown = figures(&mut desk);
    assert!(shown[0].starts_with(&angle(&seen)), "{shown:?} {seen}");
    let share = (seen["seen_height_share"].as_f64().expect("a share") * 100.0).floor();
    assert!(
        shown[1].starts_with(&format!(
            "{share} %; the edge hides {} mm",
            (seen["hidden_mm"].as_f64().expect("mm") * 100.0).round() / 100.0
        )),
        "{shown:?} {seen}"
    );
    // A figure that is none is told at its place, and the seat stays.
    desk.browser.eval("document.querySelector('[data-seat=eye]').focus()");
    desk.browser.write("up high");
    desk.browser.key("Enter");
    desk.browser.wait("document.querySelector('.seat .wrong').textContent.includes('height of the eye')");
    desk.browser.press("Sit as the one across");
    desk.browser.wait("document.querySelector('.seat .wrong').textContent === ''");
    assert_eq!(value(&mut desk, "side"), "180 deg");
    // A usual seat is asked for, and all of it undone.
    desk.browser.click(".must .box:nth-of-type(3) input");
    desk.until(FILE, "seats = [\"owner\", \"across\"]");
    for _ in 0..2 {
        let undo = desk.browser.eval("document.querySelector('.deeds button').title");
        desk.browser.press("Undo");
        desk.browser.wait(&format!("document.querySelector('.deeds button').title !== {undo}"));
    }
    desk.until_gone(FILE, "[reading]");
    assert_eq!(desk.text(FILE), before);
    desk.well();
}

/// How long from a key to the painted window as it is seen from there; see `speed.rs` for how it is run.
#[test]
fn speed_of_the_seat() {
    if std::env::var("DIALWRIGHT_SPEED").is_err() {
        return;
    }
    let Some(mut desk) = Desk::with(&["harbour"]) else { return };
    desk.open("seat");
    desk.browser.eval("(() => { let came = 0; window.took = []; addEventListener('keydown', (event) => (came = event.timeStamp), true); new MutationObserver(() => { const since = came; requestAnimationFrame(() => { const { port1, port2 } = new MessageChannel(); port1.onmessage = () => window.took.push(performance.now() - since); port2.postMessage(0) }) }).observe(document.querySelector('.told'), { childList: true }) })()");
    desk.browser.eval("document.querySelectorAll('.plan-point')[0].focus()");
    let mut all: Vec<f64> = Vec::new();
    for k in 0..60 {
        desk.browser.key(if k % 2 == 0 { "ArrowRight" } else { "ArrowDown" });
        let took = desk.browser.wait("window.took.length && window.took.splice(0)");
        all.extend(took.as_array().expect("a list").iter().filter_map(Value::as_f64));
    }
    all.sort_by(f64::total_cmp);
    println!(
        "harbour: {} steps of the seat: median {:.1} ms, p95 {:.1} ms",
        all.len(),
        all[all.len() / 2],
        all[all.len() * 95 / 100]
    );
    desk.well();
}
