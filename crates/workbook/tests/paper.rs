//! The paper as another library reads it: sizes, true scale, words, tags, and the same bytes each time.

mod common;

use common::accessible::check;
use common::{Painted, Read, SMALL, example, ready_in, squeezed};
use lopdf::Object;
use press::report;
use serde_json::Value;
use workbook::{Document, Paper};

/// Bounds that are as large as asked, to a tenth of a mm.
fn of_size(painted: &[Painted], width: f64, height: f64) -> usize {
    let near = |one: &&Painted| (one[2] - one[0] - width).abs() < 0.1 && (one[3] - one[1] - height).abs() < 0.1;
    painted.iter().filter(near).count()
}

/// ISO 216 and ANSI/ASME Y14.1 for the pages; the dial itself, and a rule, for what is drawn at true size.
#[test]
fn the_proof_is_true_to_size_on_both_papers() {
    let ready = example("harbour");
    let dial = &ready.looked.laid.dial;
    for (paper, width, height) in [(Paper::A4, 210.0, 297.0), (Paper::Letter, 215.9, 279.4)] {
        let book = ready.alone(Document::Proof, paper);
        let read = Read::of(&book);
        assert_eq!(read.pages.len(), book.pages);
        for page in &read.pages {
            let (w, h) = read.size(*page);
            assert!((w - width).abs() < 0.05 && (h - height).abs() < 0.05, "{w} x {h}");
        }
        let painted: Vec<Painted> = read.pages.iter().flat_map(|page| read.painted(*page)).collect();
        assert_eq!(of_size(&painted, 100.0, 0.0), 1, "the check line of 100 mm");
        assert_eq!(of_size(&painted, 101.6, 0.0), 1, "the check line of 4 in");
        let plate = dial.cover.plate.bounds();
        assert!(of_size(&painted, plate.width(), plate.height()) >= 1, "the cover: {plate:?}");
        for wheel in &dial.wheels {
            let across = 2.0 * wheel.radius;
            // Once as a wheel to cut, once dashed under the cover.
            assert!(of_size(&painted, across, across) >= 2, "the wheel {}: {across}", wheel.name);
            let window = wheel.window.edge.bounds();
            assert!(of_size(&painted, window.width(), window.height()) >= 1, "the window of {}", wheel.name);
        }
    }
}

/// What stands on paper is what the report says.
#[test]
fn every_figure_is_the_figure_of_the_report() {
    let ready = example("orchard");
    let units = ready.looked.laid.dial.show;
    let figures = report(&ready.looked);
    let number = |value: &Value| value.as_f64().expect("a number");
    let length = |value: &Value| squeezed(&measure::show(number(value), units));
    let has = |text: &str, words: &str| assert!(text.contains(words), "“{words}” is not in: {text}");

    let dial = Read::of(&ready.alone(Document::Dial, Paper::Letter)).all_text();
    has(&dial, &length(&figures["cover"]["width_mm"]));
    has(&dial, &length(&figures["cover"]["height_mm"]));
    has(&dial, &format!("{:.1}\u{b0}", number(&figures["turn_test"]["slack_angle_deg"])));
    for wheel in figures["wheels"].as_array().expect("wheels") {
        has(&dial, wheel["name"].as_str().expect("a name"));
        has(&dial, &measure::show(2.0 * number(&wheel["radius_mm"]), units));
        has(&dial, &length(&wheel["window"]["width_mm"]));
    }

    let turns = Read::of(&ready.alone(Document::TurnTest, Paper::Letter)).all_text();
    let mut stops = 0;
    for wheel in figures["turn_test"]["wheels"].as_array().expect("wheels") {
        for stop in wheel["stops"].as_array().expect("stops") {
            let angle = number(&stop["slack_angle_deg"]);
            has(
                &turns,
                &format!(
                    "{} {angle:.1}\u{b0} \u{b7} {}",
                    stop["mark"].as_str().expect("a mark"),
                    length(&stop["slack_drift_mm"])
                ),
            );
            stops += 1;
        }
    }
    assert_eq!(stops, 42);

    let bench = Read::of(&ready.alone(Document::Assembly, Paper::Letter)).all_text();
    let held = &figures["magnets"]["wheels"][0]["held"];
    let newtons = |name: &str, end: &str| format!("{:.2}", number(&held[name][end]));
    has(&bench, &format!("{} to {} N all the way round", newtons("effort_n", "least"), newtons("effort_n", "most")));
    has(&bench, &format!("between {} and {} N", newtons("pull_n", "least"), newtons("pull_n", "most")));
    has(&bench, &format!("forgives {}", length(&held["window_forgives_mm"])));

    let magnets = Read::of(&ready.alone(Document::Magnets, Paper::Letter)).all_text();
    for wheel in figures["wheels"].as_array().expect("wheels") {
        for pocket in ["pocket", "cover_pocket"] {
            has(&magnets, &length(&wheel[pocket]["diameter_mm"]));
            has(&magnets, &length(&wheel[pocket]["depth_mm"]));
        }
    }
    for one in figures["magnets"]["wheels"].as_array().expect("wheels") {
        let held = &one["held"];
        let two = |name: &str, end: &str| format!("{:.2}", number(&held[name][end]));
        let spread =
            |name: &str| format!("{} N ({} to {} N)", two(name, "likely"), two(name, "least"), two(name, "most"));
        has(&magnets, &spread("effort_n"));
        has(&magnets, &spread("pull_n"));
        has(&magnets, &format!("{:.0} g", number(&held["slips_at_g"])));
    }
    let materials = Read::of(&ready.alone(Document::Materials, Paper::Letter)).all_text();
    for one in figures["magnets"]["count"].as_array().expect("magnets") {
        has(&magnets, &format!("{} magnets", one["all"]));
        has(&materials, &format!("{} to glue in", one["glued"]));
        has(&materials, &length(&one["diameter_mm"]));
    }
    let tickets = Read::of(&ready.alone(Document::Tickets, Paper::Letter)).all_text();
    for wheel in figures["wheels"].as_array().expect("wheels") {
        has(&tickets, &length(&wheel["pocket"]["depth_mm"]));
    }
}

/// Bookmarks, warnings, no clock, and the standard's rules for all that the book holds.
#[test]
fn the_book_is_accessible_and_whole_in_itself() {
    let ready = ready_in(SMALL, workshop::starter());
    let ranked = dial::looks::pairings(&ready.looked, &ready.workshop);
    let make = workbook::Make { pairings: Some(&ranked), ..ready.make(Paper::A4) };
    let book = workbook::workbook(&make).expect("sets");
    let mut read = Read::of(&book);
    let toc = read.pdf.get_toc().expect("bookmarks");
    let titles: Vec<&str> = toc.toc.iter().filter(|one| one.level == 1).map(|one| one.title.as_str()).collect();
    for title in ["Small", "Paper proof", "Turn test", "Magnets", "Ticket 1: face up", "Hand-over", "Bill of materials"]
    {
        assert!(titles.contains(&title), "{title}: {titles:?}");
    }
    assert!(!String::from_utf8_lossy(&book.pdf).contains("CreationDate"), "no clock");
    let text = read.all_text();
    for words in ["If one may have been swallowed", "Beam:", "Fire:", "Fume:", "no age label", "local law"] {
        assert!(text.contains(words), "{words}");
    }
    let checked = check(&read);
    assert!(checked.broken.is_empty(), "{:?}", checked.broken);
    assert!(checked.figures > 20 && checked.headings > 40 && checked.tables > 8, "{checked:?}");
    assert!(checked.links >= 8 && checked.marked > 1000, "{checked:?}");

    // What the check is worth: one picture without words, a level of heading skipped, a title hidden.
    for object in read.pdf.objects.values_mut() {
        let Ok(one) = object.as_dict_mut() else { continue };
        match one.get(b"S").and_then(Object::as_name) {
            Ok(b"Figure") => drop(one.remove(b"Alt")),
            Ok(b"H2") => one.set("S", "H3"),
            _ => {}
        }
    }
    let viewer = read.pdf.catalog_mut().expect("a catalog");
    viewer.remove(b"ViewerPreferences");
    let broken = check(&read).broken.join("\n");
    for clause in ["7.3-1", "7.4.2-1", "7.1-10"] {
        assert!(broken.contains(clause), "{clause}: {broken}");
    }
}

#[test]
fn hostile_names_are_words_and_nothing_else() {
    let evil = "#set page(width: 1pt) #panic() $x$ *b* _i_ `c` <l> @r \\\\ // /* ]) {{";
    let text = format!(
        "name = \"{evil} ميناء 🚢\"\nstock = \"birch plywood 3 mm\"\n[[counter]]\nname = \"{}\"\nlabel = \"\"\nvalues = [\"a\", \"b\"]\n",
        "w".repeat(300)
    );
    let ready = ready_in(&text, workshop::starter());
    let book = ready.alone(Document::Dial, Paper::A4);
    assert_eq!(book.not_covered.len(), 1, "{:?}", book.not_covered);
    assert_eq!(book.not_covered[0].code_points(), "U+0645 U+064A U+0646 U+0627 U+0621 U+1F6A2");
    let read = Read::of(&book);
    assert!((read.size(read.pages[0]).0 - 210.0).abs() < 0.05);
    let words = read.all_text();
    let evil = evil.replace("\\\\", "\\");
    assert!(words.contains(&format!("{evil} [?] [?]")), "{words}");
    assert!(words.replace(' ', "").contains(&"w".repeat(300)), "the long name is whole");
    assert!(words.contains("U+0645"), "the page names what it lacks");
}

/// A heading and a title are never empty, whatever cannot be seen of a name.
#[test]
fn names_that_cannot_be_seen_break_nothing() {
    let text = "name = \" \"\nstock = \"birch plywood 3 mm\"\n[[counter]]\nname = \"\u{202e}\"\nlabel = \"\"\nvalues = [\"a\", \"b\"]\n";
    let read = Read::of(&workbook::workbook(&ready_in(text, workshop::starter()).make(Paper::A4)).expect("sets"));
    assert_eq!(check(&read).broken, Vec::<String>::new());
    assert!(read.text(0).contains("(no name)"), "{}", read.text(0));
}

#[test]
fn each_document_can_be_made_alone() {
    let ready = ready_in(SMALL, workshop::starter());
    let ranked = dial::looks::pairings(&ready.looked, &ready.workshop);
    let make = workbook::Make { pairings: Some(&ranked), ..ready.make(Paper::Letter) };
    for which in Document::ALL {
        let read = Read::of(&workbook::document(&make, which).expect("sets"));
        assert_eq!(check(&read).broken, Vec::<String>::new(), "{which}");
        let text = read.all_text();
        let title = if which == Document::Tickets { "Ticket 1: face up" } else { which.title() };
        assert!(text.contains(title), "{which}: {text}");
        for other in Document::ALL.into_iter().filter(|one| *one != which && *one != Document::Dial) {
            // As a title in the running head, which every page has.
            assert!(!text.contains(&format!("{} 1 of", other.title())), "{which} holds {other}");
        }
        assert_eq!(which.word().parse(), Ok(which));
    }
    // The board says in words which pairing is best, and names every stock that may be a cover.
    let text = Read::of(&workbook::document(&make, Document::Pairings).expect("sets")).all_text();
    let of = |one: &dial::looks::Pairing| {
        one.marks.as_ref().map_or(String::new(), |marks| format!("{}:1", marks.contrast.shown()))
    };
    assert!(ranked.len() > 100 && text.contains(&of(&ranked[0])), "{text}");
    for one in &ranked {
        // A name longer than its place ends in an ellipsis.
        let begins: String = one.cover.name.chars().take(24).collect();
        assert!(text.contains(&begins), "{begins}");
    }
    let none = workbook::document(&ready.make(Paper::A4), Document::Pairings);
    assert!(none.is_err_and(|error| error.to_string().contains("no pairings board")));
}

/// The reference card as a PDF: as large as its paper, and its check line 100 mm long.
#[test]
fn a_drawing_alone_is_true_to_size() {
    for (kind, width, height) in [(card::Paper::A4, 210.0, 297.0), (card::Paper::Letter, 215.9, 279.4)] {
        let plan = card::CardPlan::new(kind, 6).expect("it is allowed");
        let pdf = workbook::drawing_alone("card", "a card", &press::card_page(&plan), (width, height)).expect("sets");
        let read = Read::of_bytes(&pdf);
        assert_eq!(read.pages.len(), 1);
        assert_eq!(check(&read).broken, Vec::<String>::new());
        let (w, h) = read.size(read.pages[0]);
        assert!((w - width).abs() < 0.05 && (h - height).abs() < 0.05, "{w} x {h}");
        let painted = read.painted(read.pages[0]);
        assert!(of_size(&painted, 100.0, 0.0) >= 1, "the check line");
        let white = plan.size;
        assert!(of_size(&painted, white.width, white.height) >= 1, "the card's outline, {white:?}: {painted:?}");
    }
}
