//! How the dial looks, on the desk: a stock chosen by its picture, a pairing worn, two colours held against each other.

pub mod card;
mod picks;
mod seat;

use self::card::{choose, with_votes_and_photo};
use crate::desk::{Desk, HARBOUR as FILE};
use serde_json::{Value, json};

/// What the command line says of one pairing.
fn pairing(looks: &Value, name: &str) -> Value {
    let all = looks["pairings"].as_array().expect("a list");
    all.iter().find(|one| one["name"] == name).unwrap_or_else(|| panic!("{name} is on the shelf")).clone()
}

#[test]
fn a_stock_is_chosen_by_its_picture_and_taken_back() {
    let Some(mut desk) = Desk::with(&["harbour"]) else { return };
    desk.open("looks");
    let before = desk.text(FILE);
    desk.browser.eval("(() => { const s = document.querySelector('[data-choose=part]'); s.value = 'wheel.stock'; s.dispatchEvent(new Event('change')) })()");
    // What the picture says is what the command line says of that pairing.
    let walnut = "button[data-stock=\"walnut plywood 3 mm\"]";
    let why = pairing(&desk.command("looks", FILE), "birch plywood 3 mm / walnut plywood 3 mm")["why_not"][0].clone();
    let why = why.as_str().expect("it fails").to_owned();
    desk.browser.wait(&format!("document.querySelector('{walnut}').textContent.includes({})", json!(why)));
    desk.browser.eval(&format!("document.querySelector('{walnut}').scrollIntoView()"));
    let drawn = desk.browser.wait(&format!("document.querySelector('{walnut} img').naturalWidth"));
    assert!(drawn.as_u64() > Some(50), "{drawn}");
    desk.browser.click(walnut);
    desk.until(FILE, "stock = \"walnut plywood 3 mm\"");
    desk.browser.wait(&format!("document.querySelector('{walnut}').getAttribute('aria-pressed') === 'true'"));
    let found = "[...document.querySelectorAll('found-list li.mend, found-list li.refuse')].filter((li) => li.textContent.includes('walnut')).length";
    desk.browser.eval(&format!("location.hash = 'view=mat&dial={FILE}'"));
    desk.browser.wait(&format!("document.querySelector('found-list li') && {found} > 0"));
    desk.browser.press("Undo");
    desk.browser.wait(&format!("{found} === 0"));
    desk.until_gone(FILE, "walnut");
    assert_eq!(desk.text(FILE), before);

    // In the story too, by keys alone: to the next one with an arrow, chosen with Enter.
    desk.browser.eval("document.querySelector('[data-path=stock]').focus()");
    desk.browser.key("Enter");
    let now =
        "document.activeElement.closest('.editor stock-choice') && document.activeElement.getAttribute('aria-pressed')";
    desk.browser.wait(&format!("{now} === 'true'"));
    desk.browser.key("ArrowRight");
    let next = desk.browser.eval("document.activeElement.dataset.stock");
    desk.browser.key("Enter");
    let next = next.as_str().expect("a name");
    assert_ne!(next, "birch plywood 3 mm");
    desk.until(FILE, &format!("stock = \"{next}\""));
    desk.browser.wait("document.activeElement.dataset.path === 'stock'");
    desk.well();
}

#[test]
fn a_pairing_of_the_board_is_worn() {
    let Some(mut desk) = Desk::with(&["harbour"]) else { return };
    desk.open("looks");
    let looks = desk.command("looks", FILE);
    let (all, best) = (looks["pairings"].as_array().expect("a list").clone(), &looks["pairings"][0]);
    let does = all.iter().filter(|one| one["does"] == json!(true)).count();
    let says = desk.browser.eval("document.querySelector('.board p').textContent");
    assert!(says.as_str().expect("words").starts_with(&format!("{does} of {} pairings", all.len())), "{says}");
    // The cards are the command line's, in its order, with its price.
    let cards =
        desk.browser.eval("[...document.querySelectorAll('.pairing-card')].map((card) => card.dataset.pairing)");
    let first: Vec<Value> = all.iter().take(8).map(|one| one["name"].clone()).collect();
    assert_eq!(cards, json!(first));
    let card = desk.browser.eval("document.querySelector('.pairing-card').textContent");
    let price = format!("{:.2} of stock and magnets", best["price"].as_f64().expect("a price"));
    assert!(card.as_str().expect("words").contains(&price), "{card}");
    desk.browser.wait("document.querySelector('.pairing-card img').naturalWidth > 50");
    // Those that fail say why.
    desk.browser.eval("(() => { const s = document.querySelector('[data-filter=show]'); s.value = 'fails'; s.dispatchEvent(new Event('change')) })()");
    let failing = all.iter().find(|one| one["does"] == json!(false)).expect("some fail");
    let why = json!(failing["why_not"][0]);
    desk.browser.wait(&format!("document.querySelector('.pairing-card.not .verdict').textContent.includes({why})"));
    desk.browser.press("Show more");
    desk.browser.wait("document.querySelectorAll('.pairing-card').length === 32");
    desk.browser.eval("(() => { const s = document.querySelector('[data-filter=show]'); s.value = ''; s.dispatchEvent(new Event('change')) })()");
    desk.browser.wait("document.querySelectorAll('.pairing-card').length === 8");
    desk.browser.click(".pairing-card button");
    let cover = best["cover"]["stock"].as_str().expect("a name");
    desk.until(FILE, &format!("stock = \"{cover}\""));
    desk.browser.wait("document.querySelector('.pairing-card .worn')");
    let check = desk.command("check", FILE);
    let contrast = |one: &&Value| one["rule"] == "contrast of the engraving" && one["severity"] != "note";
    assert_eq!(check["findings"].as_array().expect("a list").iter().filter(contrast).count(), 0);
    desk.well();
}

#[test]
fn two_colours_are_held_against_each_other() {
    let Some(mut desk) = Desk::with(&["harbour"]) else { return };
    desk.open("looks");
    // WCAG 2.2: #767676 on white is just enough for text, #777777 is not; never rounded up.
    for (mark, ratio, verdict) in [("#767676", "4.54:1", "passes"), ("#777777", "4.47:1", "fails")] {
        for (which, colour) in [("mark", mark), ("ground", "#ffffff")] {
            desk.browser.eval(&format!("document.querySelector('[data-colour={which}]').focus()"));
            desk.browser.write(colour);
        }
        let level = "[...document.querySelectorAll('contrast-check li')].find((li) => li.textContent.includes('1.4.3)'))?.textContent";
        desk.browser.wait(&format!("document.querySelector('contrast-check .verdict-line').textContent.startsWith('{ratio}') && {level}.startsWith('{verdict}')"));
    }
    desk.browser.write("brown");
    desk.browser.wait("document.querySelector('contrast-check .wrong')");
    desk.well();
}

/// Pictures of the views, to be looked at: `DIALWRIGHT_PICTURES=folder cargo test -p dialwright --test journeys looks::pictures`.
#[test]
fn pictures_of_the_looks() {
    let Ok(folder) = std::env::var("DIALWRIGHT_PICTURES") else { return };
    let Some(mut desk) = Desk::with(&["harbour"]) else { return };
    with_votes_and_photo(&desk);
    for scheme in ["light", "dark"] {
        desk.browser.prefer(&[("prefers-color-scheme", scheme)]);
        for width in [360, 800, 1400] {
            for view in ["looks", "seat", "picks", "card"] {
                desk.browser.viewport(width, 900);
                desk.open(view);
                if view == "card" {
                    choose(&mut desk, if scheme == "dark" { "shadow.jpg" } else { "good.jpg" });
                    desk.browser.wait("document.querySelector('.found .verdict-line')");
                }
                std::thread::sleep(std::time::Duration::from_millis(700));
                let high = desk
                    .browser
                    .eval("Math.max(900, Math.min(3200, document.querySelector('main').scrollHeight + 200))");
                desk.browser.viewport(width, high.as_u64().expect("px") as u32);
                std::thread::sleep(std::time::Duration::from_millis(400));
                desk.browser.picture(&std::path::Path::new(&folder).join(format!("looks-{view}-{scheme}-{width}.png")));
            }
            desk.browser.viewport(width, 900);
            desk.browser.eval(&format!("location.hash = 'view=mat&dial={FILE}'"));
            desk.browser.wait("document.querySelector('[data-path=stock]')");
            desk.browser.click("[data-path=stock]");
            desk.browser.wait("document.querySelector('.editor stock-choice img')");
            std::thread::sleep(std::time::Duration::from_millis(500));
            desk.browser.picture(&std::path::Path::new(&folder).join(format!("looks-story-{scheme}-{width}.png")));
        }
    }
    // On the mat, in a pairing of very different stocks.
    desk.browser.viewport(1280, 800);
    let text = desk.text(FILE).replace(
        "stock = \"birch plywood 3 mm\"",
        "cover.stock = \"two-ply acrylic, black over white\"\nwheel.stock = \"maple veneer on both faces\"",
    );
    std::fs::write(desk.path(FILE), text).expect("written");
    for scheme in ["light", "dark"] {
        desk.browser.prefer(&[("prefers-color-scheme", scheme)]);
        for words in ["Turned over", "Lifted apart", "Face up", "Move things"] {
            desk.browser.press(words);
            std::thread::sleep(std::time::Duration::from_millis(400));
            desk.browser.picture(&std::path::Path::new(&folder).join(format!("looks-mat-{scheme}-{words}.png")));
        }
        desk.browser.press("Move things");
    }
    desk.well();
}
