//! The workshop's machine and feel on the desk: every value of them is changed in place, as in the order.

use crate::desk::{Desk, HARBOUR as FILE};
use serde_json::{Value, json};

const KEPT: &str = "workshop.toml";

fn open(desk: &mut Desk) {
    desk.open("machine");
    desk.browser.wait("document.querySelector('workshop-story .value')?.textContent");
}

/// Opens the editor of a value and writes into it.
fn write(desk: &mut Desk, path: &str, text: &str) {
    desk.browser.click(&format!("workshop-story [data-path='{path}']"));
    desk.browser.wait("document.querySelector('workshop-story .editor.here input')");
    desk.browser.eval("document.querySelector('workshop-story .editor.here input').focus()");
    desk.browser.write(text);
}

#[test]
fn every_value_of_the_machine_and_the_hand_is_changed_in_place() {
    let Some(mut desk) = Desk::with(&["harbour"]) else { return };
    open(&mut desk);
    // Whatever may stand in those two tables has its place in the story.
    let missing = desk.browser.eval("fetch('/parameters').then((r) => r.json()).then((p) => [Object.keys(p.workshop).length, Object.keys(p.workshop).filter((path) => !document.querySelector(`workshop-story [data-path=\"${path}\"]`)?.textContent)])");
    assert!(missing[0].as_u64() >= Some(12), "{missing}");
    assert_eq!(missing[1], json!([]));

    // A figure that does not fit is told beside it while it is written, and nothing is begun.
    write(&mut desk, "machine.bed_width", "4 mm");
    let wrong = desk.browser.wait("document.querySelector('workshop-story .editor.here .wrong').textContent");
    assert!(wrong.as_str().expect("words").contains("50 mm"), "{wrong}");
    desk.browser.press("Set");
    desk.browser.wait("document.querySelector('workshop-story .editor.here .wrong').textContent");
    assert!(!desk.path(KEPT).exists());
    // One that does begins the file, and the dial's own findings follow: its cover is too large for that bed.
    desk.browser.eval("document.querySelector('workshop-story .editor.here input').focus()");
    desk.browser.write("90 mm");
    desk.browser.key("Enter");
    desk.until(KEPT, "bed_width = \"90 mm\"");
    desk.browser.wait(
        "document.activeElement.dataset.path === 'machine.bed_width' && document.activeElement.textContent === '90 mm'",
    );
    desk.browser.wait("document.querySelector('workshop-story [role=status]').textContent.includes('forbids')");
    let refused = desk.command("check", FILE)["findings"]
        .as_array()
        .expect("a list")
        .iter()
        .any(|one| one["severity"] == "refuse");
    assert!(refused, "as the command line says");

    desk.browser.wait("document.querySelector('machine-view > div .wrong')?.textContent.includes('bed')");
    desk.browser.eval("document.querySelector('workshop-story .deeds button').click()");
    desk.browser.wait("document.querySelector('.setup')");
    desk.browser.wait("document.querySelector('workshop-story [role=status]').textContent.includes('can be made')");

    // Stepped by keys, in newtons; a colour picked by eye; comments and order stay.
    let mine = format!("{}\n[feel]   # of my hand\nturn_stiff = \"2 N\" # after a long day\n", desk.text(KEPT));
    std::fs::write(desk.path(KEPT), &mine).expect("written");
    desk.browser.wait("document.querySelector('[data-path=\"feel.turn_stiff\"]').textContent === '2 N'");
    write(&mut desk, "feel.turn_stiff", "2 N");
    desk.browser.key("ArrowUp");
    desk.browser.key("Enter");
    desk.until(KEPT, "2.05 N");
    assert_eq!(desk.text(KEPT), mine.replace("2 N", "2.05 N"));
    desk.browser.wait("!document.querySelector('workshop-story .editor.here')");
    desk.browser.click("workshop-story [data-path='machine.pocket']");
    desk.browser.wait("document.querySelector('.editor [type=color]').value === '#009e73'");
    desk.browser.eval("(() => { const c = document.querySelector('.editor [type=color]'); c.value = '#123456'; c.dispatchEvent(new Event('input')) })()");
    desk.pictures("workshop-colour", "workshop-story");
    desk.browser.press("Set");
    desk.until(KEPT, "pocket = \"#123456\"");
    // It is the colour of the sheet below.
    desk.browser.wait("document.querySelector('.setup [id^=step-][id*=pocket]')?.outerHTML.includes('#123456')");

    // Back to what is usual, then all of it undone.
    desk.browser.wait("!document.querySelector('workshop-story .editor.here')");
    desk.browser.click("workshop-story [data-path='machine.pocket']");
    desk.browser.press("Back to the usual #009e73");
    desk.browser.wait("document.querySelector('[data-path=\"machine.pocket\"].usual')");
    assert!(!desk.text(KEPT).contains("pocket"));
    for _ in 0..3 {
        let undo = desk.browser.eval("document.querySelector('workshop-story .deeds button').title");
        desk.browser.eval("document.querySelector('workshop-story .deeds button').click()");
        desk.browser.wait(&format!("document.querySelector('workshop-story .deeds button').title !== {undo}"));
    }
    assert_eq!(desk.text(KEPT), mine);
    desk.well();
}

/// What is shown of the magnets follows the hand that the workshop file tells of, whoever wrote it.
#[test]
fn the_magnets_verdict_follows_the_hand() {
    let Some(mut desk) = Desk::with(&["harbour"]) else { return };
    desk.browser.eval(&format!("location.hash = 'view=magnets&dial={FILE}'"));
    desk.browser.wait("document.querySelector('.held h3.well')");
    std::fs::write(desk.path(KEPT), "[feel]\nturn_stiff = \"0.2 N\"\n").expect("written");
    desk.browser.wait("document.querySelector('.held h3.mend')?.textContent.includes('stiff')");
    desk.well();
}

/// What another window wrote at the same place meanwhile is not overwritten, and both versions are shown.
#[test]
fn two_windows_do_not_overwrite_each_others_workshop() {
    let Some(mut desk) = Desk::with(&["harbour"]) else { return };
    std::fs::write(desk.path(KEPT), "[machine]\nbed_width = \"500 mm\"\n").expect("written");
    open(&mut desk);
    write(&mut desk, "machine.bed_width", "510 mm");
    let outside = "[machine]\nbed_width = \"520 mm\"\n";
    std::fs::write(desk.path(KEPT), outside).expect("written");
    desk.browser.wait("document.querySelector('[data-path=\"machine.bed_width\"]').textContent === '520 mm'");
    desk.browser.press("Set");
    desk.browser
        .wait("document.querySelector('workshop-story .editor.here .wrong').textContent.includes('changed meanwhile')");
    assert_eq!(desk.text(KEPT), outside);
    let marked = desk.browser.wait("(() => { const all = [...document.querySelectorAll('workshop-story :is(del, ins)')].map((line) => line.textContent); return all.length && all })()");
    assert_eq!(marked, json!(["bed_width = \"520 mm\"", "bed_width = \"510 mm\""]));
    desk.pictures("workshop-both", "workshop-story");
    desk.browser.press("Take mine");
    desk.until(KEPT, "510 mm");
    desk.browser.wait("!document.querySelector('workshop-story .both')");
    desk.well();
}

/// Shown as this dial's maker reads, and taken in any unit; a workshop file with mistakes is said to have them.
#[test]
fn the_machine_is_told_in_the_makers_units() {
    let Some(mut desk) = Desk::with(&["harbour"]) else { return };
    std::fs::write(desk.path(FILE), format!("show = \"inch\"\n{}", desk.text(FILE))).expect("written");
    open(&mut desk);
    let shown = |desk: &mut Desk, path: &str| {
        desk.browser.eval(&format!("document.querySelector('[data-path=\"{path}\"]').textContent"))
    };
    desk.browser.wait("document.querySelector('[data-path=\"machine.bed_width\"]').textContent.endsWith(' in')");
    assert_eq!(shown(&mut desk, "machine.bed_width"), json!(measure::show(400.0, measure::Units::Inches)));
    write(&mut desk, "machine.bed_height", "12 1/2 in");
    desk.browser.key("Enter");
    desk.until(KEPT, "bed_height = \"12 1/2 in\"");
    std::fs::write(desk.path(KEPT), "[machine]\nbed_width = 3\nname = \"Bench\"\n").expect("written");
    desk.browser.wait("document.querySelector('workshop-story .wrong').textContent.includes('has mistakes')");
    assert_eq!(shown(&mut desk, "machine.name"), "Bench");
    // Where it is no TOML at all, it is mended in writing.
    std::fs::write(desk.path(KEPT), "[machine\n").expect("written");
    desk.browser.wait("!document.querySelector('workshop-story .value')");
    let link: Value = desk.browser.eval("document.querySelector('workshop-story .wrong a').hash");
    assert!(link.as_str().expect("a link").contains("view=writing"), "{link}");
    desk.well();
}

/// The kerf that was measured of one's own sheets is written where the stock is; a starter's stock comes along whole.
#[test]
fn a_stocks_kerf_is_changed_in_place_and_the_sheets_follow() {
    let Some(mut desk) = Desk::with(&["harbour"]) else { return };
    open(&mut desk);
    desk.browser.eval("document.querySelectorAll('shelf-of > details').forEach((one) => (one.open = true))");
    let choose = |desk: &mut Desk, kind: &str, name: &str| {
        desk.browser.eval(&format!("(() => {{ const s = document.querySelector('shelf-of[kind={kind}] select'); s.value = '{name}'; s.dispatchEvent(new Event('change')) }})()"));
        desk.browser.wait(&format!("[...document.querySelectorAll('shelf-of[kind={kind}] [data-path]')].some((e) => e.dataset.path.includes('{name}'))"));
    };
    choose(&mut desk, "stocks", "birch plywood 3 mm");
    desk.browser.wait("document.querySelector('shelf-of img').naturalWidth > 50");
    // Whatever may be said of a stock, its layers and a magnet has its place.
    let missing = desk.browser.eval("fetch('/parameters').then((r) => r.json()).then((p) => [['stock', 'stocks'], ['layer', 'stocks'], ['magnet', 'magnets']].flatMap(([table, kind]) => Object.entries(p[table]).filter(([path, one]) => one.kind !== 'list' && ![...document.querySelectorAll(`shelf-of[kind=${kind}] [data-path]`)].some((e) => e.dataset.path.endsWith(`].${path}`))).map(([path]) => `${table} ${path}`)))");
    assert_eq!(missing, json!([]));
    desk.pictures("workshop-shelf", "shelf-of");
    let starter = workshop::starter();
    let birch = |all: &process::Workshop| {
        all.stocks.iter().find(|one| one.name == "birch plywood 3 mm").expect("there").clone()
    };
    let kerf = "shelf-of [data-path$='3 mm\"].kerf']";
    desk.browser.click(kerf);
    desk.browser.wait("document.querySelector('shelf-of .editor.here input')");
    desk.pictures("workshop-kerf", ".of-shelf");
    desk.browser.eval("document.querySelector('shelf-of .editor.here input').focus()");
    desk.browser.write("9 mm");
    desk.browser.wait("document.querySelector('shelf-of .editor.here .wrong').textContent.includes('2 mm')");
    assert!(!desk.path(KEPT).exists());
    desk.browser.write("0.12 mm");
    desk.browser.key("Enter");
    desk.until(KEPT, "kerf = \"0.12 mm\"");
    let read = workshop::read(&desk.text(KEPT)).expect("reads");
    let mut mine = birch(&read);
    assert_eq!((mine.kerf.x, mine.kerf.y), (0.12, 0.12));
    mine.kerf = birch(&starter).kerf;
    assert_eq!(mine, birch(&starter), "nothing else is another");
    desk.browser
        .wait("document.querySelector('.setup pre').textContent.includes('0.12 mm, already taken into account')");
    desk.browser
        .wait("document.querySelector('shelf-of p + p, shelf-of img + p').textContent.includes('Described in your')");

    // Another stock, with a second layer; another magnet, that the chooser knows at once.
    desk.add("shelf-of[kind=stocks] > details > .adder", "attic oak: oak, 3.2 mm");
    desk.until(KEPT, "[stocks.\"attic oak\"]");
    desk.browser.wait("document.querySelector('shelf-of select').value === 'attic oak' && document.querySelectorAll('shelf-of [data-path$=\".thickness\"]').length > 0");
    desk.browser.wait("[...document.querySelectorAll('shelf-of [data-path]')].some((e) => e.dataset.path.includes('attic oak') && e.dataset.path.includes('layers[0]'))");
    desk.add(".of-shelf .adder", "cork, 1 mm");
    desk.until(KEPT, "cork");
    desk.browser.wait("[...document.querySelectorAll('shelf-of [data-path]')].some((e) => e.dataset.path.endsWith('layers[1].thickness') && e.textContent === '1 mm')");
    desk.add("shelf-of[kind=magnets] > details > .adder", "little ones: 4 mm, 2 mm, N45");
    desk.until(KEPT, "little ones");
    let read = workshop::read(&desk.text(KEPT)).unwrap_or_else(|mistakes| panic!("{}{mistakes:?}", desk.text(KEPT)));
    assert!(read.magnets.iter().any(|one| one.name == "little ones" && one.diameter == 4.0), "{}", desk.text(KEPT));
    let oak = read.stocks.iter().find(|one| one.name == "attic oak").expect("there");
    assert!((oak.thickness() - 4.2).abs() < 1e-9, "{}", desk.text(KEPT));
    // What cannot be is told beside it.
    desk.add("shelf-of[kind=magnets] > details > .adder", "huge: 400 mm, 2 mm, N45");
    desk.browser.wait("document.querySelector('shelf-of[kind=magnets] .adder .wrong').textContent.includes('20 mm')");
    assert!(!desk.text(KEPT).contains("huge"));

    // Taken out, the starter's holds again.
    choose(&mut desk, "stocks", "birch plywood 3 mm");
    desk.browser.press("Take it out of the file");
    desk.until_gone(KEPT, "birch plywood 3 mm");
    desk.browser
        .wait("document.querySelector('.setup pre').textContent.includes('0.2 mm, already taken into account')");
    desk.well();
}
