//! Page sizes, and what is drawn at true size, to a tenth of a mm.

use crate::accessible::check;
use crate::read::{Drawn, Painted, Read, Ready, example, ready_in};
use workbook::{Document, Paper};

/// Bounds that are as large as asked, to a tenth of a mm.
fn of_size(painted: &[Painted], width: f64, height: f64) -> usize {
    let near = |one: &&Painted| (one[2] - one[0] - width).abs() < 0.1 && (one[3] - one[1] - height).abs() < 0.1;
    painted.iter().filter(near).count()
}

/// ISO 216 and ANSI/ASME Y14.1 for the pages; a rule for the check lines.
fn pages_and_check_lines(read: &Read, paper: Paper) {
    let (width, height) = if paper == Paper::A4 { (210.0, 297.0) } else { (8.5 * 25.4, 11.0 * 25.4) };
    for page in &read.pages {
        let (w, h) = read.size(*page);
        assert!((w - width).abs() < 0.05 && (h - height).abs() < 0.05, "{w} x {h}");
    }
    let painted = read.painted(read.pages[0]);
    assert_eq!(of_size(&painted, 100.0, 0.0), 1, "the check line of 100 mm");
    assert_eq!(of_size(&painted, 4.0 * 25.4, 0.0), 1, "the check line of 4 in");
}

/// The dial itself for what is drawn at true size, drawn in mm and in inches.
#[test]
fn the_proof_is_true_to_size_on_both_papers() {
    for (name, paper) in [("harbour", Paper::A4), ("harbour", Paper::Letter), ("orchard", Paper::Letter)] {
        let ready = example(name);
        let dial = &ready.looked.laid.dial;
        let read = Read::of(&ready.alone(Document::Proof, paper));
        pages_and_check_lines(&read, paper);
        let painted: Vec<Painted> = read.pages.iter().flat_map(|page| read.painted(*page)).collect();
        let plate = dial.cover.plate.bounds();
        assert!(of_size(&painted, plate.width(), plate.height()) >= 1, "the cover: {plate:?}");
        for wheel in &dial.wheels {
            let across = 2.0 * wheel.radius;
            // Once as a wheel to cut, once dashed under the cover.
            assert!(of_size(&painted, across, across) >= 2, "the wheel {}: {across}", wheel.name);
            let window = wheel.window.edge.bounds();
            assert!(of_size(&painted, window.width(), window.height()) >= 1, "the window of {}", wheel.name);
        }
        // The words under the cover tell the size that is drawn, in the dial's own units.
        let told = [plate.width(), plate.height()].map(|side| measure::show(side, dial.show));
        let words = format!("cover, {} \u{d7} {}", told[0], told[1]);
        let text = read.all_text();
        assert!(text.contains(&words), "{words}: {text}");
        assert_eq!(name == "orchard", told[0].ends_with(" in"));
    }
}

/// One piece of a cover that goes over several pages, in the cover's own coordinates.
#[derive(Debug)]
struct Piece {
    bounds: Painted,
    /// What is drawn on it beside the cover: middle lines of the laps, diamonds.
    marks: Vec<Painted>,
}

fn near(one: Painted, other: Painted) -> bool {
    one.iter().zip(&other).all(|(a, b)| (a - b).abs() < 0.1)
}

/// The pieces of the cover: its whole outline is drawn on each, shown within the piece's frame, and the frame is drawn last.
fn pieces(ready: &Ready, read: &Read) -> Vec<Piece> {
    let plate = ready.looked.laid.dial.cover.plate.bounds();
    let mut all = Vec::new();
    for page in &read.pages {
        let (width, height) = read.size(*page);
        let (mut clips, mut cover, mut marks) = (Vec::new(), None, Vec::new());
        for one in read.drawn(*page) {
            match (one, cover) {
                (Drawn::Clip(bounds), _) => clips.push(bounds),
                (Drawn::Painted(bounds), _) if of_size(&[bounds], plate.width(), plate.height()) == 1 => {
                    (cover, marks) = (Some(bounds), Vec::new());
                }
                (Drawn::Painted(frame), Some(at)) if clips.iter().any(|clip| near(*clip, frame)) => {
                    let printed =
                        frame[0] > 10.0 && frame[1] > 10.0 && frame[2] < width - 10.0 && frame[3] < height - 10.0;
                    assert!(printed, "within what every printer prints: {frame:?}");
                    let on_cover = |one: Painted| [one[0] - at[0], one[1] - at[1], one[2] - at[0], one[3] - at[1]];
                    let marks = std::mem::take(&mut marks).into_iter().map(on_cover).collect();
                    all.push(Piece { bounds: on_cover(frame), marks });
                    cover = None;
                }
                (Drawn::Painted(bounds), Some(_)) => marks.push(bounds),
                _ => {}
            }
        }
    }
    all
}

/// Sheets joined by their marks give the cover: neighbours lie 12 mm over each other, their middle lines and diamonds meet.
#[test]
fn a_proof_over_several_pages_joins_to_the_true_size() {
    // Six wheels; and the same with larger numbers in inches, for pieces beside and below each other.
    let mut large = std::fs::read_to_string(concat!(env!("CARGO_MANIFEST_DIR"), "/../../examples/caravan/dial.toml"));
    large = large.map(|text| text.replace("\"4.5 mm\"", "\"5/16 in\"").replace("[cover]", "show = \"inch\"\n[cover]"));
    let mut workshop = workshop::starter();
    (workshop.machine.bed_width, workshop.machine.bed_height) = (1200.0, 900.0);
    let large = ready_in(&large.expect("reads"), workshop);
    let caravan = example("caravan");
    for (ready, paper, seams) in [(&caravan, Paper::A4, 1), (&caravan, Paper::Letter, 1), (&large, Paper::Letter, 4)] {
        let read = Read::of(&ready.alone(Document::Proof, paper));
        pages_and_check_lines(&read, paper);
        let all = pieces(ready, &read);
        let plate = ready.looked.laid.dial.cover.plate.bounds();
        // All pieces together: the cover, and half a mm for its line.
        let joined = all.iter().fold([f64::INFINITY, f64::INFINITY, f64::NEG_INFINITY, f64::NEG_INFINITY], |b, one| {
            let p = one.bounds;
            [b[0].min(p[0]), b[1].min(p[1]), b[2].max(p[2]), b[3].max(p[3])]
        });
        assert!(near(joined, [-0.5, -0.5, plate.width() + 0.5, plate.height() + 0.5]), "{joined:?} of {plate:?}");
        let mut met = 0;
        for (i, one) in all.iter().enumerate() {
            for other in &all[i + 1..] {
                let (a, b) = (one.bounds, other.bounds);
                let lap = [a[0].max(b[0]), a[1].max(b[1]), a[2].min(b[2]), a[3].min(b[3])];
                let (wide, high) = (lap[2] - lap[0], lap[3] - lap[1]);
                // Pieces that only meet at a corner share a square.
                if wide < 13.0 && high < 13.0 {
                    assert!((wide - 12.0).abs() < 0.1 && (high - 12.0).abs() < 0.1 || wide.min(high) < 0.1, "{lap:?}");
                    continue;
                }
                met += 1;
                assert!((wide.min(high) - 12.0).abs() < 0.1, "the lap is 12 mm: {lap:?}");
                let shared = |mark: &&Painted| other.marks.iter().any(|theirs| near(**mark, *theirs));
                let within = |mark: &&Painted| {
                    let middle = [(mark[0] + mark[2]) / 2.0, (mark[1] + mark[3]) / 2.0];
                    lap[0] < middle[0] && middle[0] < lap[2] && lap[1] < middle[1] && middle[1] < lap[3]
                };
                let here: Vec<Painted> = one.marks.iter().filter(within).filter(shared).copied().collect();
                assert!(of_size(&here, 4.0, 4.0) >= 2, "diamonds of {lap:?}: {here:?}");
                let line = if wide < high { of_size(&here, 0.0, high) } else { of_size(&here, wide, 0.0) };
                assert_eq!(line, 1, "one middle line of {lap:?}: {here:?}");
            }
        }
        assert_eq!(met, seams, "{all:?}");
    }
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
