//! How the dial looks, on the desk: a stock chosen by its picture, votes, the reader's seat moved by hand, a photo of the card read.

use crate::desk::Desk;
use serde_json::{Value, json};

const FILE: &str = "harbour/dial.toml";
const VIEWS: [(&str, &str); 4] = [
    ("looks", "looks-view .pairing-card img"),
    ("seat", "seat-view .panels svg"),
    ("picks", "picks-view .two img"),
    ("card", "card-view .drop"),
];

fn open(desk: &mut Desk, view: &str) {
    let ready = VIEWS.iter().find(|(name, _)| *name == view).expect("a view").1;
    desk.browser.eval(&format!("location.hash = 'view={view}&dial={FILE}'"));
    desk.browser.wait(&format!("document.querySelector('{ready}')"));
}

/// Pictures of the views, to be looked at: `DIALWRIGHT_PICTURES=folder cargo test -p dialwright --test journeys looks::pictures`.
#[test]
fn pictures_of_the_looks() {
    let Ok(folder) = std::env::var("DIALWRIGHT_PICTURES") else { return };
    let Some(mut desk) = Desk::with(&["harbour"]) else { return };
    for scheme in ["light", "dark"] {
        desk.browser.prefer(&[("prefers-color-scheme", scheme)]);
        for width in [360, 800, 1400] {
            for (view, _) in VIEWS {
                desk.browser.viewport(width, 900);
                open(&mut desk, view);
                std::thread::sleep(std::time::Duration::from_millis(700));
                let high = desk
                    .browser
                    .eval("Math.max(900, Math.min(3200, document.querySelector('main').scrollHeight + 200))");
                desk.browser.viewport(width, high.as_u64().expect("px") as u32);
                std::thread::sleep(std::time::Duration::from_millis(400));
                desk.browser.picture(&std::path::Path::new(&folder).join(format!("looks-{view}-{scheme}-{width}.png")));
            }
        }
    }
    desk.well();
}
