//! The printed card and the sample's cut file, measured on the files; and the card as it is printed, read by the reader.

mod common;

use card::{CardPlan, Paper, Print};
use common::{examples, paths, ready};
use kurbo::Shape as _;

#[test]
fn the_sample_is_cut_true_and_lies_where_the_card_expects_it() {
    let made = ready(&examples()[1].1);
    let dial = &made.looked.laid.dial;
    let plan = CardPlan::new(Paper::A4, 7).expect("seven steps");
    let stock = &dial.wheels[0].stock;
    let svg = press::card_sample(&plan, dial, stock).expect("cut");
    let cut = paths(&svg, "cut-outside")[0].bounding_box();
    assert!((cut.width() - stock.kerf.x - 91.4).abs() < 0.01 && (cut.height() - stock.kerf.y - 39.4).abs() < 0.01);
    let corner = cut.origin() + kurbo::Vec2::new(stock.kerf.x, stock.kerf.y) / 2.0;
    let origin = plan
        .sample
        .outline
        .iter()
        .fold(kurbo::Point::new(f64::MAX, f64::MAX), |all, p| kurbo::Point::new(all.x.min(p.x), all.y.min(p.y)));
    for (k, step) in plan.sample.steps.iter().enumerate() {
        let all = paths(&svg, &format!("power-{}", k + 1));
        let patch = all[0].bounding_box();
        let wanted = step.engraved - origin.to_vec2() + corner.to_vec2();
        assert!((patch.center() - wanted.center()).hypot() < 0.01 && (patch.width() - wanted.width()).abs() < 0.01);
        // The numeral stands in its own room.
        let room = step.mark - origin.to_vec2() + corner.to_vec2();
        assert!(room.inflate(0.01, 0.01).union(all[1].bounding_box()) == room.inflate(0.01, 0.01), "step {k}");
    }
}

/// Printed, laid under a scanner with a sample of known colours, and read: what is drawn is what the reader knows.
#[test]
fn the_printed_card_is_the_card_that_is_read() {
    for paper in [Paper::A4, Paper::Letter] {
        let plan = CardPlan::new(paper, 6).expect("six steps");
        let page = press::card_page(&plan);
        let high = paper.size().height - plan.on_page.y;
        let mut sample = String::new();
        for (k, step) in plan.sample.steps.iter().enumerate() {
            // Face of L* 80; engraved darker from step to step, from L* 62 to 22 (greys by the sRGB curve).
            let greys = ["#c6c6c6", "#969696", "#828282", "#6a6a6a", "#525252", "#3d3d3d", "#363636"];
            for (patch, grey) in [(step.face, greys[0]), (step.engraved, greys[k + 1])] {
                let patch = patch.inflate(0.8, 0.8);
                let (x, y) = (patch.x0 + plan.on_page.x, high - patch.y1);
                sample += &format!(
                    "<rect x=\"{x}\" y=\"{y}\" width=\"{}\" height=\"{}\" fill=\"{grey}\"/>",
                    patch.width(),
                    patch.height()
                );
            }
        }
        let white = "<rect width=\"300\" height=\"300\" fill=\"#f0f0f0\"/>";
        let scanned =
            page.replacen("</title>", &format!("</title>{white}"), 1).replace("</svg>", &format!("{sample}</svg>"));
        // Toner is not black: it sends back 0.033 of the light.
        let scanned = scanned.replace("<path fill-rule", "<path fill=\"#333333\" fill-rule");
        let photo = press::png(&scanned).expect("drawn");
        let reading =
            card::read(&photo, &plan, &Print::measured(0.871, 0.0331)).unwrap_or_else(|why| panic!("{paper:?}: {why}"));
        assert_eq!(reading.best, 5);
        // L* of the greys, worked from the sRGB curve and CIE 1976.
        for (step, known) in reading.steps.iter().zip([62.1, 54.4, 44.8, 34.9, 25.8, 22.6]) {
            assert!((step.face.lightness.value - 79.9).abs() < 2.0, "{:?}", step.face.lightness);
            assert!((step.engraved.lightness.value - known).abs() < 2.0, "{known}: {:?}", step.engraved.lightness);
        }
    }
}
