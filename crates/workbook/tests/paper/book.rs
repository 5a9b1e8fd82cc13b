//! The book and each of its documents: accessible, whole in itself, and set whatever things are called.

use crate::accessible::check;
use crate::read::{Read, SMALL, example, ready_in};
use lopdf::Object;
use workbook::{Document, Paper};

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

/// Who works from the pages meets what can hurt before the work, and reads the same thing of several wheels once.
#[test]
fn cautions_come_before_the_work_and_wheels_alike_are_read_of_once() {
    let ready = example("caravan");
    let tickets = Read::of(&ready.alone(Document::Tickets, Paper::A4)).all_text();
    let places = |words: &str| tickets.match_indices(words).map(|one| one.0).collect::<Vec<usize>>();
    let (cares, steps) = (places("Take care"), places("Steps, in this order"));
    assert_eq!((cares.len(), steps.len()), (3, 3));
    assert!(cares.iter().zip(&steps).all(|(care, steps)| care < steps), "{cares:?} {steps:?}");
    let magnets = Read::of(&ready.alone(Document::Magnets, Paper::A4)).all_text();
    let (care, work) = (magnets.find("Take care"), magnets.find("Order of work"));
    assert!(care.is_some() && care < work, "{care:?} {work:?}");

    let dial = Read::of(&ready.alone(Document::Dial, Paper::A4)).all_text();
    for row in
        ["notch of water, coin, mood : at the notch on the left", "wheel water, salt, coin, honour : 6/9 told apart"]
    {
        assert!(dial.contains(row), "{row}: {dial}");
    }
    // One wheel's window forgives another drift: its check has a row of its own, the others stand for all.
    let bench = Read::of(&ready.alone(Document::Assembly, Paper::A4)).all_text();
    assert_eq!(bench.matches("Hook a spring balance").count(), 1, "{bench}");
    assert_eq!(bench.matches("Turn with one finger through every stop").count(), 2, "{bench}");
}
