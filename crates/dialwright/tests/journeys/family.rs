//! The dials of a folder side by side: what fits what, and what is found of them as one set.

use crate::desk::Desk;
use serde_json::{Value, json};

#[test]
fn a_family_lies_side_by_side() {
    let Some(mut desk) = Desk::with(&["harbour", "beacon"]) else { return };
    desk.open("shelf");
    let cells = desk.browser.eval("document.querySelectorAll('table.fits tbody td').length");
    assert_eq!(cells, json!(9), "three wheels in three places");
    let own = desk.browser.eval(
        "[0, 1, 2].map((k) => document.querySelectorAll('table.fits tbody tr')[k].querySelectorAll('td')[k].className)",
    );
    assert_eq!(own, json!(["fits", "fits", "fits"]));
    let why = desk.browser.eval("document.querySelector('table.fits td.not p').textContent");
    assert!(why.as_str().expect("words").len() > 10, "{why}");
    desk.well();
}

/// Each two dials of the folder are judged as `check --set` judges them, and each finding leads to the dial that it speaks of.
#[test]
fn the_dials_of_a_folder_are_judged_as_one_set() {
    let Some(mut desk) = Desk::with(&["harbour", "beacon"]) else { return };
    let write = |name: &str, text: String| {
        std::fs::create_dir_all(desk.path(name)).expect("made");
        std::fs::write(desk.path(name).join("dial.toml"), text).expect("written");
    };
    let harbour = desk.text("harbour/dial.toml");
    // One made alike, one the other way round with harbour as its standard, one that nobody can read.
    write("quay", harbour.replace("Harbour", "Quay"));
    let other = harbour.replace("Harbour", "Pier").replace("[notch]", "[magnet]\npoles = \"cover pushes\"\n\n[notch]");
    write("pier", format!("standard = \"../harbour/dial.toml\"\n{other}"));
    write("wreck", "name = 3\n".into());
    desk.open("shelf");
    let file = |name: &str| format!("{name}/dial.toml");
    let rows = desk.browser.eval("[...document.querySelectorAll('fits-table .from-here li')].map((li) => [li.dataset.of, li.dataset.about, li.className, li.querySelector('.what').textContent, li.textContent])");
    let rows = rows.as_array().expect("rows").clone();
    assert_eq!(rows.len(), 6, "four dials, each two once: {rows:#?}");
    let mut grave = 0;
    for row in &rows {
        let (of, about) = (row[0].as_str().expect("a file"), row[1].as_str().expect("a file"));
        // A standard is judged without being named; any other is named.
        let standard = of == file("pier") && about == file("harbour");
        let set = ["--set", about];
        let told = desk.command_with("check", of, if standard { &[] } else { &set });
        let found = told["findings"].as_array().expect("a list").iter();
        let names = desk.command("check", about)["name"].as_str().map(|name| format!("{name}: "));
        let named = names.unwrap_or_default();
        let found: Vec<&Value> = found
            .filter(|one| one["rule"] == "family" && one["what"].as_str().is_some_and(|what| what.starts_with(&named)))
            .collect();
        assert_eq!(found.len(), 1, "{of} and {about}: {found:?}");
        // On the page what is typed stands as code, without its marks.
        let words = |value: &Value| value.as_str().expect("words").replace('`', "");
        assert_eq!((&row[2], words(&row[3])), (&found[0]["severity"], words(&found[0]["what"])), "{of} and {about}");
        assert!(words(&row[4]).contains(&words(&found[0]["mend"])), "{row}");
        grave += usize::from(found[0]["severity"] == "mend");
    }
    assert_eq!(grave, 3, "the other way round for all three: {rows:#?}");
    assert_eq!(rows[0][2], "mend", "the gravest first");
    let pier = rows.iter().any(|row| row[0] == file("pier") && row[1] == file("harbour"));
    assert!(pier, "told by the one that has the standard: {rows:#?}");
    let says = desk.browser.eval("document.querySelector('fits-table .verdict-line').textContent");
    assert!(says.as_str().expect("words").starts_with('3'), "{says}");
    let out = desk.browser.eval("document.querySelector('fits-table').textContent.includes('wreck/dial.toml')");
    assert_eq!(out, true, "what is left out is named");
    // The page itself does not scroll under its head.
    let outer = desk.browser.eval("document.documentElement.scrollHeight - innerHeight");
    assert_eq!(outer, 0);
    desk.pictures("set", "fits-table");
    desk.browser.click("fits-table .from-here li a[href*='harbour']");
    desk.browser.wait(
        "document.querySelector('desk-head h1').textContent === 'Harbour' && document.querySelector('mat-view .wheel')",
    );
    desk.well();
}

/// A standard that cannot be had is told where it is chosen: its file, the line, why, and what to do; it follows what is written.
#[test]
fn a_standard_with_mistakes_is_told_where_it_is_chosen() {
    let Some(mut desk) = Desk::with(&["harbour", "beacon"]) else { return };
    let beacon = desk.text("beacon/dial.toml");
    let broken = beacon.replacen("name = ", "nam = ", 1);
    std::fs::write(desk.path("beacon/dial.toml"), &broken).expect("written");
    let line = broken.lines().position(|line| line.starts_with("nam = ")).expect("there") + 1;
    desk.browser.eval("location.hash = 'view=mat&dial=harbour/dial.toml'");
    desk.browser.wait("document.querySelector('desk-head h1').textContent === 'Harbour' && document.querySelector('[data-path=standard]')");
    assert_eq!(desk.browser.eval("document.querySelector('[data-path=standard]').textContent"), "none");
    let says = "document.querySelector('.standard-trouble').textContent";
    assert_eq!(desk.browser.eval(says), "");
    desk.browser.click("[data-path=standard]");
    desk.browser.wait("document.querySelector('.editor.here input')");
    desk.browser.write("../barn/dial.toml");
    desk.browser.wait(&format!("{says}.includes('../barn/dial.toml is not there')"));
    desk.browser.write("../beacon/dial.toml");
    desk.browser.wait(&format!("{says}.includes('beacon/dial.toml, line {line}')"));
    let told = desk.browser.eval(says);
    let told = told.as_str().expect("words");
    assert!(told.contains("nam") && told.contains("Help: "), "{told}");
    assert!(!desk.text("harbour/dial.toml").contains("standard"), "nothing is written while one types");
    desk.browser.press("Set");
    desk.browser.wait("!document.querySelector('.editor.here') && document.querySelector('.value.troubled')?.textContent === '../beacon/dial.toml'");
    desk.pictures("standard", "[data-path=standard]");
    // It leads to the very line.
    desk.browser.click(".standard-trouble a");
    desk.browser.wait("document.querySelector('writing-view textarea')?.value.includes('nam = ')");
    let chosen = desk.browser.wait("(() => { const t = document.querySelector('writing-view textarea'); return t.value.slice(t.selectionStart, t.selectionEnd) })()");
    assert!(chosen.as_str().expect("text").starts_with("nam"), "{chosen}");
    // Mended there, the trouble is gone here.
    std::fs::write(desk.path("beacon/dial.toml"), &beacon).expect("written");
    desk.browser.eval("location.hash = 'view=mat&dial=harbour/dial.toml'");
    desk.browser
        .wait("document.querySelector('[data-path=standard]:not(.troubled)')?.textContent === '../beacon/dial.toml'");
    assert_eq!(desk.browser.eval(says), "");
    desk.well();
}
