//! No page is overfull: every word and picture lies within its page's margins, and no two words lie on each other. Looked at on the pages
//! as they are laid out.

use crate::{Document, Make, Paper, gathered, typeset};
use process::Workshop;
use typst::layout::{Frame, FrameItem, Point, Transform};

/// Something on a page: bounds in mm, y down, and what it says if it is words.
struct Thing {
    x0: f64,
    y0: f64,
    x1: f64,
    y1: f64,
    words: Option<String>,
}

fn things(frame: &Frame, to_page: Transform, all: &mut Vec<Thing>) {
    for (at, item) in frame.items() {
        let mut put = |x0: f64, y0: f64, x1: f64, y1: f64, words: Option<String>| {
            let corner = |x: f64, y: f64| {
                let p = Point::new(typst::layout::Abs::pt(x), typst::layout::Abs::pt(y)) + *at;
                let p = p.transform(to_page);
                (p.x.to_mm(), p.y.to_mm())
            };
            let (a, b) = (corner(x0, y0), corner(x1, y1));
            all.push(Thing { x0: a.0.min(b.0), y0: a.1.min(b.1), x1: a.0.max(b.0), y1: a.1.max(b.1), words });
        };
        match item {
            // A clipped group shows one piece of a drawing that goes over several sheets.
            FrameItem::Group(group) if group.clip.is_none() => {
                let inner = to_page.pre_concat(Transform::translate(at.x, at.y)).pre_concat(group.transform);
                things(&group.frame, inner, all);
            }
            FrameItem::Text(text) if !text.text.trim().is_empty() => {
                let size = text.size.to_pt();
                put(0.0, -0.66 * size, text.width().to_pt(), 0.16 * size, Some(text.text.to_string()));
            }
            FrameItem::Image(_, size, _) => put(0.0, 0.0, size.x.to_pt(), size.y.to_pt(), None),
            _ => {}
        }
    }
}

fn look_at(make: &Make, documents: &[Document]) -> usize {
    let (data, pictures, _) = gathered(make, documents);
    let document = typeset::laid_out(crate::world::BOOK_OF, &data, pictures).expect("sets without a warning");
    let (width, height) = make.paper.size();
    for (n, page) in document.pages().iter().enumerate() {
        let mut all = Vec::new();
        things(&page.frame, Transform::identity(), &mut all);
        for one in &all {
            let words = one.words.as_deref().unwrap_or("a picture");
            let within = one.x0 > 10.0 && one.x1 < width - 10.0 && one.y0 > 8.0 && one.y1 < height - 10.0;
            assert!(within, "page {}: {words} at {:.1} {:.1} to {:.1} {:.1}", n + 1, one.x0, one.y0, one.x1, one.y1);
        }
        let words: Vec<&Thing> = all.iter().filter(|one| one.words.is_some()).collect();
        for (i, one) in words.iter().enumerate() {
            for other in &words[i + 1..] {
                let wide = one.x1.min(other.x1) - one.x0.max(other.x0);
                let high = one.y1.min(other.y1) - one.y0.max(other.y0);
                assert!(
                    wide < 0.3 || high < 0.5,
                    "page {}: {:?} lies on {:?} at {:.1} {:.1}",
                    n + 1,
                    one.words,
                    other.words,
                    one.x0,
                    one.y0
                );
            }
        }
    }
    document.pages().len()
}

/// Sets all documents of a dial on papers, side by side; returns their pages.
fn looked(text: &str, workshop: &Workshop, papers: &[Paper]) -> Vec<usize> {
    let design = dial::design::read(text, workshop).expect("reads");
    let looked = dial::look(&design, workshop, &[]).expect("can be drawn");
    let job = dial::job::plan(&looked.laid.dial, workshop).expect("fits");
    let ranked = dial::looks::pairings(&looked, workshop);
    let make = |paper| Make { looked: &looked, job: &job, workshop, paper, pairings: Some(&ranked) };
    std::thread::scope(|scope| {
        let each = papers.iter().map(|paper| make(*paper));
        let running: Vec<_> = each.map(|make| scope.spawn(move || look_at(&make, &Document::ALL))).collect();
        running.into_iter().map(|one| one.join().expect("no page is overfull")).collect()
    })
}

#[test]
fn no_example_is_overfull() {
    let folder = concat!(env!("CARGO_MANIFEST_DIR"), "/../../examples");
    let mut seen = 0;
    for entry in std::fs::read_dir(folder).expect("examples") {
        let file = entry.expect("an entry").path().join("dial.toml");
        let Ok(text) = std::fs::read_to_string(&file) else { continue };
        let pages = looked(&text, &workshop::starter(), &[Paper::A4, Paper::Letter]);
        assert!(pages.iter().all(|count| *count > 9), "{}: {pages:?}", file.display());
        seen += 1;
    }
    assert!(seen >= 7);
}

/// Six wheels, one of them with a hundred stops, very long names, and a cover larger than a page.
#[test]
fn a_crowded_dial_is_not_overfull() {
    let mut workshop = workshop::starter();
    (workshop.machine.bed_width, workshop.machine.bed_height) = (1200.0, 900.0);
    let mut text =
        format!("name = \"{}\"\nstock = \"birch plywood 3 mm\"\n", "A name of many words ".repeat(14).trim_end());
    for k in 0..6 {
        let name = if k % 2 == 0 { "provisions for the long way home ".repeat(8) } else { "x".repeat(300) };
        let values = if k == 0 { "0..99" } else { "0..12" };
        text += &format!(
            "[[counter]]\nname = \"{k} {}\"\nlabel = \"\"\nvalues = \"{values}\"\nmark = {{ height = \"3.5 mm\" }}\n",
            name.trim_end()
        );
    }
    assert!(looked(&text, &workshop, &[Paper::Letter])[0] > 15);
}
