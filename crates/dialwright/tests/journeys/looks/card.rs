//! A photo of the card: dropped in, chosen, taken with the camera; read and kept, or refused. The scenes that try the reader render it.

use crate::desk::{Desk, HARBOUR as FILE};
use base64::Engine;
use card::{CardPlan, Paper};
use scene::{Chance, Scene};
use serde_json::json;

#[expect(dead_code, reason = "these scenes are made for the card's own tests; only some are needed here")]
#[path = "../../../../card/tests/scene/mod.rs"]
mod scene;

/// Photos of the card with known truth: one as a maker would take it, and the same with an edge of shadow.
fn photos(desk: &Desk) -> (Vec<u8>, Scene) {
    let (plan, mut chance, scene) = taken();
    std::fs::write(desk.path("shadow.jpg"), scene.clone().shadowed(&mut chance).jpeg(&plan)).expect("written");
    (scene.jpeg(&plan), scene)
}

fn taken() -> (CardPlan, Chance, Scene) {
    let plan = CardPlan::new(Paper::A4, 6).expect("it is allowed");
    let mut chance = Chance::new(7);
    let scene = Scene::clean(&mut chance, &plan, 1280);
    (plan, chance, scene)
}

#[test]
fn a_photo_is_taken_with_the_camera() {
    let (plan, _, scene) = taken();
    // The browser takes the codes of a film to run from 16 to 235 (ITU-R BT.601), as those of a film do.
    let mut film = scene.photograph(&plan);
    film.rgb.iter_mut().for_each(|code| *code = (16.0 + f64::from(*code) * 219.0 / 255.0).round() as u8);
    let Some(mut desk) = Desk::before_camera(&["harbour"], Some(&film.jpeg(95))) else { return };
    desk.open("card");
    desk.browser.press("Take it with the camera");
    desk.browser.wait("document.querySelector('.viewfinder video').videoWidth > 0 && document.activeElement.textContent === 'Take the photo'");
    // Put away, the camera is off.
    desk.browser.press("Put the camera away");
    desk.browser.wait("document.querySelector('.viewfinder').hidden && document.querySelector('.viewfinder video').srcObject === null");
    desk.browser.key("Enter");
    desk.browser.wait("document.querySelector('.viewfinder video').videoWidth > 0 && document.activeElement.textContent === 'Take the photo'");
    // The first frame may come later than its size.
    desk.browser.wait("document.querySelector('.viewfinder video').currentTime > 0.2");
    desk.browser.key("Enter");
    let says = desk.browser.wait("document.querySelector('.found .verdict-line')?.textContent");
    assert_eq!(says, "Accepted.");
    let best = desk.browser.eval("document.querySelector('.reading tr.chosen th').textContent");
    let truth = (0..6).max_by(|a, b| scene.contrast(*a).total_cmp(&scene.contrast(*b))).expect("six steps") + 1;
    assert!(best.as_str().expect("words").starts_with(&format!("step {truth}")), "{best} where {truth} is true");
    desk.well();
}

/// Some votes beside the dial, and a good photo of the card.
pub fn with_votes_and_photo(desk: &Desk) {
    let votes = [
        ("bamboo 3 mm / maple 3 mm", "maple 3 mm / maple 3 mm", 7),
        ("maple 3 mm / maple 3 mm", "bamboo 3 mm / maple 3 mm", 2),
    ];
    let votes = votes.map(|(a, b, n)| format!("[[vote]]\nbest_first = [\"{a}\", \"{b}\"]\ntimes = {n}\n"));
    std::fs::write(desk.path("harbour/votes.toml"), votes.concat()).expect("written");
    let (good, _) = photos(desk);
    std::fs::write(desk.path("good.jpg"), good).expect("written");
}

/// Chooses a photo, as from a folder.
pub fn choose(desk: &mut Desk, photo: &str) {
    let input = json!({ "expression": "document.querySelector('[data-photo]')" });
    let input = desk.browser.call("Runtime.evaluate", input);
    let files = json!({ "files": [desk.path(photo)], "objectId": input["result"]["objectId"] });
    desk.browser.call("DOM.setFileInputFiles", files);
}

#[test]
fn a_photo_of_the_card_is_read_and_kept_or_refused() {
    let Some(mut desk) = Desk::with(&["harbour"]) else { return };
    let (good, truth) = photos(&desk);
    // A board that only this dial knows.
    let own = "\n[stocks.\"my board\"]\nlayers = [{ material = \"maple\", thickness = \"2.8 mm\" }]\nkerf_x = \"0.1 mm\"\nkerf_y = \"0.1 mm\"\n";
    std::fs::write(desk.path(FILE), desk.text(FILE) + own).expect("written");
    desk.open("card");
    desk.browser
        .wait("[...document.querySelectorAll('[data-card=stock] option')].some((one) => one.value === 'my board')");
    desk.browser.wait("[...document.querySelectorAll('.to-save img')].every((img) => img.naturalWidth > 50)");
    // Dropped in.
    let data = base64::engine::general_purpose::STANDARD.encode(&good);
    desk.browser.eval(&format!("(() => {{ const bytes = Uint8Array.from(atob('{data}'), (c) => c.charCodeAt(0)); const all = new DataTransfer(); all.items.add(new File([bytes], 'maple.jpg', {{ type: 'image/jpeg' }})); document.querySelector('.drop').dispatchEvent(new DragEvent('drop', {{ dataTransfer: all, bubbles: true, cancelable: true }})) }})()"));
    desk.browser.wait("document.querySelector('.found .verdict-line.well')");
    // The outlines lie over the photo: the card's first corner, as the camera of the scene shows it.
    let first = desk.browser.eval(
        "document.querySelector('.over .found-card').getAttribute('d').slice(1).split('L')[0].split(' ').map(Number)",
    );
    let [x, y] = truth.camera.project(0.0, 0.0, 0.0);
    let off = (first[0].as_f64().expect("x") - x).hypot(first[1].as_f64().expect("y") - y);
    assert!(off < 6.0, "{first} where {x} {y} is true");
    let steps =
        desk.browser.eval("document.querySelector('.over .found-steps').getAttribute('d').split('M').length - 1");
    assert_eq!(steps, 12, "a face and an engraving of each of six");
    // Every contrast within a tenth of what is true.
    let told = desk.browser.eval("[...document.querySelectorAll('.reading tbody tr')].map((row) => parseFloat(row.querySelectorAll('td')[2].textContent))");
    for (k, one) in told.as_array().expect("a list").iter().enumerate() {
        let share = one.as_f64().expect("a ratio") / truth.contrast(k);
        assert!((share - 1.0).abs() < 0.1 + 0.05 / truth.contrast(k), "step {k}: {one} of {}", truth.contrast(k));
    }
    // Kept in its stock, and taken back.
    desk.browser.eval("document.querySelector('.keeping select').value = 'maple 3 mm'");
    desk.browser.eval("document.querySelector('.keeping [data-card=power]').focus()");
    desk.browser.write("22 %");
    desk.browser.press("Keep it in this stock");
    desk.until("workshop.toml", "photo = \"maple.jpg\"");
    let text = desk.text("workshop.toml");
    assert!(
        text.contains("[stocks.\"maple 3 mm\"]") && text.contains("22 %") && text.contains("contrast_least"),
        "{text}"
    );
    // It is told by what was measured, at once.
    let stocks = desk.browser.eval(&format!("fetch('/stocks?dial={FILE}&path=stock').then((r) => r.json())"));
    let maple =
        stocks.as_array().expect("a list").iter().find(|one| one["name"] == "maple 3 mm").expect("on the shelf");
    assert!(maple["looks"].as_str().expect("words").starts_with("measured here on "), "{maple}");
    desk.browser.press("Take it back");
    desk.until_gone("workshop.toml", "maple.jpg");

    // A stock that the dial file describes is kept there, as a step of its own.
    let before = desk.text(FILE);
    desk.browser.eval("document.querySelector('.keeping select').value = 'my board'");
    desk.browser.press("Keep it in this stock");
    desk.until(FILE, "photo = \"maple.jpg\"");
    desk.browser.wait("document.querySelector('.deeds button').title === 'Undo: my board: as measured'");
    desk.browser.press("Take it back");
    desk.until_gone(FILE, "maple.jpg");
    assert_eq!(desk.text(FILE), before);

    // What is no photo is told at once, pasted here.
    desk.browser.eval("(() => { const all = new DataTransfer(); all.items.add(new File(['hello'], 'notes.txt', { type: 'text/plain' })); document.dispatchEvent(new ClipboardEvent('paste', { clipboardData: all })) })()");
    desk.browser.wait("document.querySelector('.found .wrong').textContent.includes('not a photo')");

    // Chosen from a folder: with an edge of shadow across it.
    choose(&mut desk, "shadow.jpg");
    let says = desk.browser.wait("document.querySelector('.found .verdict-line.fails')?.textContent");
    let says = says.as_str().expect("words");
    assert!(says.starts_with("Refused: ") && (says.contains("shadow") || says.contains("light")), "{says}");
    assert!(desk.browser.eval("document.querySelectorAll('.over path').length > 0").as_bool() == Some(true));
    assert_eq!(desk.browser.eval("document.querySelectorAll('.keeping').length"), 0);
    desk.well();
}
