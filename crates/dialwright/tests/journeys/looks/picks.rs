//! Votes: kept, ranked, given at two desks, taken back.

use crate::desk::{Desk, HARBOUR as FILE, Served};
use serde_json::{Value, json};

#[test]
fn votes_are_kept_ranked_and_taken_back() {
    let Some(mut desk) = Desk::with(&["harbour"]) else { return };
    desk.open("picks");
    let mine = "# asked at the fair\n";
    std::fs::write(desk.path("harbour/votes.toml"), mine).expect("written");
    let name = |desk: &mut Desk, side: u8| {
        let name = desk.browser.eval(&format!("document.querySelector('[data-side=\"{side}\"]').value"));
        name.as_str().expect("a name").to_owned()
    };
    let (a, b) = (name(&mut desk, 0), name(&mut desk, 1));
    desk.browser.click("[data-rather='0']");
    desk.until("harbour/votes.toml", &format!("best_first = [\"{a}\", \"{b}\"]"));
    assert!(desk.text("harbour/votes.toml").starts_with(mine));
    desk.browser.wait("document.querySelector('.picks .verdict-line').textContent.startsWith('Too few votes')");
    // Another two lie there now; the focus is where the next answer is given.
    desk.browser.wait("document.activeElement.dataset.rather === '0'");
    assert_ne!((a.clone(), b.clone()), (name(&mut desk, 0), name(&mut desk, 1)));

    // A second desk on the same folder, in another page: neither overwrites the other.
    let other = Served::on(desk.folder.path(), &desk.folder.path().join(".state"));
    let first = desk.browser.page_now();
    desk.browser.page();
    desk.browser.go(&other.link);
    desk.browser.wait("document.querySelector('order-story .value')");
    desk.open("picks");
    desk.browser.click("[data-rather='1']");
    desk.browser.wait("document.querySelectorAll('.picked li').length > 0 && document.querySelector('.picks').textContent.includes('2 choices so far')");
    desk.browser.turn_to(&first);
    desk.browser.click("[data-rather='0']");
    desk.browser.wait("document.querySelector('.picks').textContent.includes('3 choices so far')");
    assert_eq!(desk.text("harbour/votes.toml").matches("[[vote]]").count(), 3);
    // The ranking is the command line's.
    let told = desk.command("looks", FILE)["picked"].clone();
    assert_eq!(told["choices"], 3);
    let names: Vec<&Value> = told["ranking"].as_array().expect("a list").iter().map(|one| &one["name"]).collect();
    let rows = desk.browser.eval("[...document.querySelectorAll('.picked li strong')].map((one) => one.textContent)");
    assert_eq!(rows, json!(names));

    // So is what the board says of it.
    desk.open("looks");
    let picked = told["ranking"][0]["share"].as_f64().expect("a share");
    let liked = json!(format!("{:.0} %", picked * 100.0));
    let first = &told["ranking"][0]["name"];
    desk.browser.wait(&format!(
        "document.querySelector(`[data-pairing=\"${{{first}}}\"] .liked`).textContent.includes({liked})"
    ));
    desk.open("picks");

    // A ranking by keys, and the last vote taken back, also after a reload.
    desk.browser.eval("document.querySelector('.picks details').open = true");
    for _ in 0..3 {
        desk.browser.eval("document.querySelector('[data-add]').focus()");
        desk.browser.key("Enter");
    }
    desk.browser.press("Write the ranking down");
    desk.browser.wait("document.querySelector('.picks').textContent.includes('5 choices so far')");
    desk.browser.eval("window.before = true");
    desk.browser.call("Page.reload", json!({}));
    desk.browser.wait("!window.before && document.readyState === 'complete' && document.querySelector('[data-back]')");
    desk.browser.press("Take the last vote back");
    desk.browser.wait("document.querySelector('.picks').textContent.includes('3 choices so far')");
    desk.browser.press("Take the last vote back");
    desk.browser.wait("document.querySelector('.picks').textContent.includes('2 choices so far')");
    assert!(desk.text("harbour/votes.toml").starts_with(mine), "{}", desk.text("harbour/votes.toml"));
    desk.well();
}
