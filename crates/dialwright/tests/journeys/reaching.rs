//! What can be reached on the desk beyond the story: papers, the client's code, the workshop file, corners, seats, true size.

use crate::desk::{Desk, HARBOUR as FILE};
use serde_json::{Value, json};

#[test]
fn a_clients_code_is_worn_and_papers_open() {
    let Some(mut desk) = Desk::with(&["harbour"]) else { return };
    desk.open("machine");
    desk.browser.wait("document.querySelector('paper-list .papers li')");
    desk.browser.eval("document.querySelector('paper-list input').focus()");
    desk.browser.write(&press::code("bamboo 3 mm", "walnut plywood 3 mm"));
    desk.browser.press("Read it");
    let says = desk.browser.wait("document.querySelector('paper-list [role=status] p')?.textContent");
    assert_eq!(says, "Cover of bamboo 3 mm, wheels of walnut plywood 3 mm");
    assert!(!desk.text(FILE).contains("walnut"), "nothing is written before it is asked for");
    desk.browser.press("Wear it");
    desk.until(FILE, "stock = \"walnut plywood 3 mm\"");
    assert!(desk.text(FILE).contains("stock = \"bamboo 3 mm\""));
    desk.browser
        .wait("document.querySelector('desk-head [title=\"Undo: wears bamboo 3 mm with walnut plywood 3 mm\"]')");
    desk.browser.press("Undo");
    desk.browser.wait("!document.querySelector('desk-head [title^=Redo]').disabled");
    assert!(!desk.text(FILE).contains("walnut"));
    if cfg!(feature = "workbook") {
        // Every link to a paper gives one: a PDF each, the book longer than any of its documents.
        let all = desk.browser.eval("Promise.all([...document.querySelectorAll('.papers a')].slice(0, 3).map(async (a) => { const r = await fetch(a.href); const b = await r.arrayBuffer(); return [r.headers.get('content-type'), new TextDecoder().decode(b.slice(0, 5)), b.byteLength] }))");
        for one in all.as_array().expect("papers") {
            assert_eq!((&one[0], &one[1]), (&json!("application/pdf"), &json!("%PDF-")), "{all}");
            assert!(one[2].as_u64() <= all[0][2].as_u64(), "{all}");
        }
    } else {
        let says = desk.browser.eval("document.querySelector('.papers').textContent");
        assert!(says.as_str().expect("text").contains("built without the workbook"), "{says}");
    }
    // The turning page runs as the client's, and can ask nothing of the desk.
    let turning = desk.browser.eval("document.querySelector('a[href^=\"/turning\"]').href");
    desk.browser.go(turning.as_str().expect("a link"));
    desk.browser.wait("document.querySelector('#turner-1')");
    assert_eq!(desk.browser.eval("origin"), "null");
}

#[test]
fn the_workshop_file_is_begun_broken_and_undone() {
    let Some(mut desk) = Desk::with(&["harbour"]) else { return };
    desk.open("writing");
    desk.browser.wait("document.querySelector('workshop-file summary')");
    let shelf = desk.browser.eval("[...document.querySelectorAll('workshop-file tbody')].map((t) => t.rows.length)");
    assert!(shelf[0].as_u64() > Some(10) && shelf[1].as_u64() > Some(3), "{shelf}");
    desk.browser.press("Begin one in this folder");
    desk.browser.wait("document.querySelector('workshop-file textarea').value.startsWith('# The workshop')");
    let write = |desk: &mut Desk, text: &str| {
        desk.browser.eval(&format!("(() => {{ const t = document.querySelector('workshop-file textarea'); t.value += {text:?}; t.dispatchEvent(new Event('input')) }})()"));
        desk.browser.eval("document.querySelector('workshop-file .deeds button').click()");
    };
    write(&mut desk, "[machine]\nname = \"Bench\"\nbed_width = 300\n");
    let wrong = desk.browser.wait("document.querySelector('workshop-file .mistakes li')?.textContent");
    assert!(wrong.as_str().expect("text").contains("line 4"), "{wrong}: {}", desk.text("workshop.toml"));
    desk.browser.eval(
        "[...document.querySelectorAll('workshop-file .deeds button')].find((b) => b.textContent === 'Undo').click()",
    );
    desk.browser.wait("!document.querySelector('workshop-file .mistakes li')");
    write(&mut desk, "[machine]\nname = \"Bench\"\nbed_width = \"90 mm\"\n");
    // The dial's own findings follow: its cover is now too large for the bed.
    desk.until("workshop.toml", "90 mm");
    desk.open("mat");
    desk.browser.wait("document.querySelector('found-list li.refuse')");
    let found = desk.browser.eval("document.querySelector('found-list li.refuse').textContent");
    assert!(found.as_str().expect("text").contains("bed"), "{found}");
    desk.well();
}

#[test]
fn a_free_polygon_is_begun_and_its_corners_moved() {
    let Some(mut desk) = Desk::with(&["harbour"]) else { return };
    desk.browser.wait("document.querySelector('[data-path=\"cover.outline\"]')");
    desk.browser.click("[data-path='cover.outline']");
    desk.browser.wait("document.querySelector('.editor select')");
    desk.browser.eval("(() => { const s = document.querySelector('.editor select'); s.value = 'polygon'; s.dispatchEvent(new Event('change')) })()");
    desk.until(FILE, "points = [");
    desk.browser.wait("!document.querySelector('.editor.here')");
    desk.browser.press("Move things");
    desk.browser.wait("document.querySelectorAll('[data-handle^=\"cover.points/\"]').length === 4");
    let before = desk.text(FILE);
    desk.browser.eval("document.querySelector('[data-handle=\"cover.points/2\"]').focus()");
    desk.browser.key("ArrowRight");
    desk.browser.wait("document.querySelector('desk-head .kept').textContent === 'kept on disk'");
    assert_ne!(desk.text(FILE), before);
    desk.browser.eval("document.querySelectorAll('details').forEach((d) => (d.open = true))");
    desk.browser.eval("document.querySelector('[data-path=\"cover.points\"]').click()");
    desk.browser.wait("document.querySelectorAll('.corners .row').length === 4");
    desk.browser.press("Add a corner");
    desk.browser.press("Set");
    desk.browser.wait("!document.querySelector('.editor.here')");
    desk.browser.wait("document.querySelectorAll('[data-handle^=\"cover.points/\"]').length === 5");
    assert!(desk.command("check", FILE)["findings"].is_array(), "the file reads");
    desk.well();
}

#[test]
fn seats_are_chosen_by_touching_them() {
    let Some(mut desk) = Desk::with(&["harbour"]) else { return };
    desk.browser.wait("document.querySelector('[data-path=\"reading.seats\"]')");
    desk.browser.eval("document.querySelectorAll('details').forEach((d) => (d.open = true))");
    desk.browser.eval("document.querySelector('[data-path=\"reading.seats\"]').click()");
    desk.browser.wait("document.querySelectorAll('.editor .choose input').length > 2");
    let all = desk.browser.eval("[...document.querySelectorAll('.editor .choose')].map((one) => one.textContent)");
    desk.browser
        .eval("document.querySelectorAll('.editor .choose input').forEach((one) => one.checked || one.click())");
    desk.browser.press("Set");
    for seat in all.as_array().expect("seats") {
        desk.until(FILE, seat.as_str().expect("a word"));
    }
    desk.well();
}

/// Held against a bank card (ISO/IEC 7810 ID-1, 85.60 mm wide), a mm of the dial has as many pixels as one of the card.
#[test]
fn true_size_is_that_of_the_card() {
    let Some(mut desk) = Desk::with(&["harbour"]) else { return };
    // The cover is as wide as the command line says.
    let wide = desk.command("check", FILE)["cover"]["width_mm"].as_f64().expect("mm");
    let browser = &mut desk.browser;
    browser.wait("document.querySelector('dial-mat svg.dial')");
    browser.press("True size");
    browser.wait("document.querySelector('.calibrate [type=range]')");
    for pixels in [5.0, 4.27] {
        browser.eval(&format!("(() => {{ const s = document.querySelector('.calibrate [type=range]'); s.value = {pixels}; s.dispatchEvent(new Event('input')) }})()"));
        let card = browser.eval("document.querySelector('.calibrate svg').getBoundingClientRect().width").as_f64();
        assert!((card.expect("px") - 85.6 * pixels).abs() < 0.5, "{card:?}");
        browser.press("It fits");
        let drawn = browser.eval("(() => { const svg = document.querySelector('svg.dial'); return [svg.getBoundingClientRect().width, svg.viewBox.baseVal.width, document.querySelector('dial-mat .face').getBoundingClientRect().width] })()");
        let [width, mm, face] = [0, 1, 2].map(|k| drawn[k].as_f64().expect("a figure"));
        assert!((width - mm * pixels).abs() < 0.5, "{drawn}");
        assert!((face - wide * pixels).abs() < 1.5, "{face} px for {wide} mm at {pixels}");
        browser.press("Hold a card to it again");
    }
    desk.well();
}

/// The middle of a wheel is measured from where a finger is, 18 px beside it.
#[test]
fn a_finger_hits_what_is_measured() {
    let Some(mut desk) = Desk::with(&["harbour"]) else { return };
    desk.browser.press("Measure");
    desk.browser.wait("document.querySelector('[data-reach=\"middle/0\"]')");
    let hit: Value = desk.browser.eval(
        "[...document.querySelectorAll('.feature')].map((f) => Math.max(...Array.from({ length: 12 }, (_, k) => { const p = f.getPointAtLength(f.getTotalLength() * k / 12).matrixTransform(f.getScreenCTM()); const near = [-18, 18].flatMap((d) => [[p.x + d, p.y], [p.x, p.y + d]]).map(([x, y]) => document.elementFromPoint(x, y)); return near.filter((e) => e?.matches('.feature, .feature-reach')).length })))",
    );
    for (n, count) in hit.as_array().expect("features").iter().enumerate() {
        assert!(count.as_u64() >= Some(2), "feature {n}: {hit}");
    }
    desk.well();
}

/// The table beside the map says what `magnets` says.
#[test]
fn the_wheels_figures_stand_side_by_side() {
    let Some(mut desk) = Desk::with(&["harbour"]) else { return };
    let told = desk.command("magnets", FILE);
    desk.open("magnets");
    desk.browser.wait("document.querySelector('.wheel-figures tbody tr')");
    let rows = desk.browser.eval("[...document.querySelectorAll('.wheel-figures tbody tr')].map((row) => [...row.cells].map((cell) => cell.textContent))");
    for (row, wheel) in rows.as_array().expect("rows").iter().zip(told["wheels"].as_array().expect("wheels")) {
        assert_eq!(row[0], wheel["wheel"]);
        assert_eq!(row[5], wheel["held"]["verdict"]);
        let figure =
            |name: &str| format!("{}", (wheel["held"][name]["likely"].as_f64().expect("N") * 100.0).round() / 100.0);
        assert!(row[1].as_str().expect("text").starts_with(&figure("effort_n")), "{row}");
        assert!(row[4].as_str().expect("text").starts_with(&figure("gap_mm")), "{row}");
    }
    desk.well();
}

/// Inches at will: the figures follow, and the file is not converted.
#[test]
fn figures_are_shown_in_inches_at_will() {
    let Some(mut desk) = Desk::with(&["harbour"]) else { return };
    desk.browser.wait("document.querySelector('[data-path=\"show\"]')");
    desk.browser.click("[data-path='show']");
    desk.browser.wait("document.querySelector('.editor select')");
    let words = desk.browser.eval("[...document.querySelectorAll('.editor option')].map((one) => one.value)");
    let inch =
        words.as_array().expect("words").iter().find(|word| word.as_str().is_some_and(|word| word.starts_with("in")));
    let inch = inch.and_then(Value::as_str).expect("inches").to_owned();
    desk.browser.eval(&format!("(() => {{ const s = document.querySelector('.editor select'); s.value = {inch:?}; s.dispatchEvent(new Event('change')) }})()"));
    desk.browser.wait("document.querySelector('[data-path=\"cover.width\"]').textContent.endsWith(' in')");
    desk.browser.wait("/ in\\b/.test(document.querySelector('window-strip .verdict').textContent)");
    desk.well();
}

/// A stock is described on the page, worn, and taken out again.
#[test]
fn a_stock_of_the_files_own_is_described() {
    let Some(mut desk) = Desk::with(&["harbour"]) else { return };
    desk.browser.wait("document.querySelector('[data-part=stocks]')");
    desk.add("[data-part=stocks] > .adder", "my 3.2 mm ply: birch plywood, 3.2 mm");
    desk.until(FILE, "[stocks.\"my 3.2 mm ply\"]");
    desk.browser.wait("document.querySelector('[data-part=stocks] h3')?.textContent === 'my 3.2 mm ply'");
    desk.add("[data-part=stocks] section .adder", "cork, 1 mm");
    desk.until(FILE, "cork");
    desk.browser.wait("document.querySelectorAll('[data-path$=\".thickness\"][data-path*=layers]').length === 2");
    desk.browser.eval("document.querySelector('[data-path=\"stock\"]').click()");
    desk.browser.wait("document.querySelector('.editor.here')?.textContent.includes('my 3.2 mm ply')");
    let read = dial::design::read(&desk.text(FILE), &workshop::starter());
    assert!(read.is_ok(), "{:?} {}", read.err(), desk.text(FILE));
    desk.browser.eval("document.querySelectorAll('details').forEach((d) => (d.open = true))");
    desk.browser.press("Take this stock out");
    desk.browser.wait("!document.querySelector('[data-part=stocks] h3')");
    assert!(!desk.text(FILE).contains("stocks"), "{}", desk.text(FILE));
    desk.well();
}

/// Whatever may stand in a dial file has its place on the page.
#[test]
fn every_value_of_the_file_is_on_the_page() {
    let Some(mut desk) = Desk::with(&["caravan"]) else { return };
    desk.browser.wait("document.querySelectorAll('wheel-knobs .knob-row').length === 6");
    let missing = desk.browser.eval("fetch('/look?dial=caravan/dial.toml').then((r) => r.json()).then((l) => { const all = Object.keys(l.changed.order); return [all.length, all.filter((path) => !document.querySelector(`[data-path=\"${CSS.escape(path)}\"]`))] })");
    assert!(missing[0].as_u64() > Some(150), "{missing}");
    assert_eq!(missing[1], json!([]));
    // And the order knows every key of the parameter table but the lists themselves.
    let told = desk.browser.eval("Promise.all([fetch('/parameters').then((r) => r.json()), fetch('/look?dial=caravan/dial.toml').then((r) => r.json())]).then(([p, l]) => Object.entries(p.dial).filter(([path, one]) => !['list', 'named'].includes(one.kind) && !(path in l.changed.order)).map(([path]) => path))");
    assert_eq!(told, json!([]));
    desk.well();
}

/// Who wants no motion sees a setup's steps at once.
#[test]
fn without_motion_steps_do_not_play() {
    let Some(mut desk) = Desk::with(&["harbour"]) else { return };
    desk.browser.prefer(&[("prefers-reduced-motion", "reduce")]);
    desk.open("machine");
    desk.browser.wait("document.querySelector('.setup .steps')");
    desk.browser.press("Play the steps");
    let later = desk.browser.eval("document.querySelectorAll('.setup')[0].querySelectorAll('.later').length");
    assert_eq!(later, 0);
    desk.well();
}
