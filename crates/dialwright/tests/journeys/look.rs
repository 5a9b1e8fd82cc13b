//! Pictures of every view, to be looked at: `DIALWRIGHT_PICTURES=folder cargo test -p dialwright --test journeys pictures`.

use crate::desk::Desk;
use std::path::Path;

#[test]
fn pictures_of_every_view() {
    let Ok(folder) = std::env::var("DIALWRIGHT_PICTURES") else { return };
    let Some(mut desk) = Desk::with(&["harbour", "caravan", "orchard"]) else { return };
    let browser = &mut desk.browser;
    for (scheme, sizes) in
        [("light", &[(1400, 900), (800, 1024), (360, 740)][..]), ("dark", &[(1400, 900), (800, 1024), (360, 740)])]
    {
        browser.prefer(&[("prefers-color-scheme", scheme)]);
        for &(width, height) in sizes {
            browser.viewport(width, height);
            for dial in ["harbour", "caravan"] {
                for view in ["mat", "magnets", "machine", "writing", "shelf"] {
                    if dial == "caravan" && view != "mat" {
                        continue;
                    }
                    browser.eval(&format!("location.hash = 'view={view}&dial={dial}/dial.toml'"));
                    browser.wait(&format!("document.querySelector('{view}-view')"));
                    std::thread::sleep(std::time::Duration::from_millis(900));
                    browser.picture(&Path::new(&folder).join(format!("{dial}-{view}-{scheme}-{width}.png")));
                }
            }
        }
    }
    browser.prefer(&[]);
    browser.viewport(1280, 800);
    browser.eval("location.hash = 'view=mat&dial=harbour/dial.toml'");
    browser.wait("document.title.startsWith('Harbour') && document.querySelector('mat-view dial-mat')");
    browser.wait("document.querySelectorAll('[role=slider]').length === 2");
    for (name, words) in [
        ("back", "Turned over"),
        ("apart", "Lifted apart"),
        ("front", "Face up"),
        ("move", "Move things"),
        ("measure", "Measure"),
    ] {
        browser.press(words);
        std::thread::sleep(std::time::Duration::from_millis(300));
        browser.picture(&Path::new(&folder).join(format!("harbour-{name}.png")));
    }
    // Those that stand in the docs.
    for (name, scheme, view, ready) in [
        ("desk", "light", "mat", "window-strip .row"),
        ("desk-dark", "dark", "mat", "window-strip .row"),
        ("desk-sheets", "light", "machine", ".setup svg"),
    ] {
        browser.prefer(&[("prefers-color-scheme", scheme)]);
        browser.eval(&format!("location.hash = 'view={view}&dial=harbour/dial.toml'"));
        browser.wait(&format!("document.querySelector('{ready}')"));
        if view == "machine" {
            browser.eval("document.querySelector('.setup').scrollIntoView()");
        }
        std::thread::sleep(std::time::Duration::from_millis(900));
        browser.picture(&Path::new(&folder).join(format!("docs-{name}.png")));
    }
    desk.well();
}
