//! The printed card: what must be bare is bare, what must lie apart lies apart.

use card::{CardPlan, Drawn, Paper, Point, Rect, STEPS};

fn plans() -> impl Iterator<Item = CardPlan> {
    let papers = [Paper::A4, Paper::Letter];
    papers.into_iter().flat_map(|paper| STEPS.map(move |steps| CardPlan::new(paper, steps).expect("it is allowed")))
}

/// Bounds of everything drawn, in card coordinates.
fn bounds(thing: &Drawn) -> Rect {
    let of = |points: &[Point], grown: f64| {
        let first = Rect::from_points(points[0], points[0]);
        points.iter().fold(first, |all, p| all.union_pt(*p)).inset(grown)
    };
    match thing {
        Drawn::Solid { rings } => of(&rings.concat(), 0.0),
        Drawn::Line { from, to, width } => of(&[*from, *to], width / 2.0),
        Drawn::Outline { ring, width } => of(ring, width / 2.0),
        // With room for what hangs below the line.
        Drawn::Label { at, height, width, .. } => {
            Rect::new(at.x - width / 2.0, at.y - 0.3 * height, at.x + width / 2.0, at.y + height)
        }
    }
}

fn apart(a: Rect, b: Rect) -> f64 {
    let gap = |a0: f64, a1: f64, b0: f64, b1: f64| (b0 - a1).max(a0 - b1).max(0.0);
    gap(a.x0, a.x1, b.x0, b.x1).hypot(gap(a.y0, a.y1, b.y0, b.y1))
}

#[test]
fn whites_and_lanes_are_bare_paper() {
    for plan in plans() {
        let lanes = plan.lanes.map(|lane| Rect::from_points(lane.from, lane.to).inset(lane.width / 2.0));
        for thing in plan.drawn() {
            // The card's outline and that of the opening go round others; they are looked at by themselves.
            if matches!(thing, Drawn::Outline { .. }) {
                continue;
            }
            let printed = bounds(&thing);
            for white in &plan.whites {
                // A white is read 1 mm inside its own.
                assert!(apart(white.inset(-1.0), printed) >= 1.5, "{white} beside {thing:?}");
            }
            for lane in lanes {
                assert!(apart(lane, printed) >= 1.0, "{lane} beside {thing:?}");
            }
        }
        let opening = Rect::new(24.0, 30.0, 116.0, 70.0);
        for bare in plan.whites.iter().chain(&lanes) {
            assert!(apart(*bare, opening) >= 4.0, "the sample's shadow must not reach {bare}");
            assert!(plan.size.to_rect().inset(-2.0).contains_rect(*bare), "{bare}");
        }
    }
}

/// At least twelve whites and four blacks in each half of the card.
#[test]
fn whites_and_blacks_are_spread_over_the_card() {
    for plan in plans() {
        for (spots, least) in [(&plan.whites, 12), (&plan.blacks, 4)] {
            let halves: [fn(&Rect) -> bool; 4] = [
                |spot| spot.center().x < 70.0,
                |spot| spot.center().x > 70.0,
                |spot| spot.center().y < 50.0,
                |spot| spot.center().y > 50.0,
            ];
            for half in halves {
                assert!(spots.iter().filter(|spot| half(spot)).count() >= least);
            }
        }
    }
}

#[test]
fn every_patch_lies_on_the_sample_and_apart_from_the_next() {
    for plan in plans() {
        let ring = &plan.sample.outline;
        let patches: Vec<Rect> = plan.sample.steps.iter().flat_map(|s| [s.face, s.engraved, s.mark]).collect();
        for (i, patch) in patches.iter().enumerate() {
            for k in 0..ring.len() {
                let (a, b) = (ring[k], ring[(k + 1) % ring.len()]);
                for corner in [(patch.x0, patch.y0), (patch.x1, patch.y0), (patch.x1, patch.y1), (patch.x0, patch.y1)] {
                    let off = (b - a).cross(Point::from(corner) - a) / (b - a).hypot();
                    assert!(off >= 1.5, "{patch} is {off} mm from the sample's edge");
                }
            }
            // Read 2 mm inside: at least 4 mm wide.
            assert!(patch.width() >= 8.0 && patch.height() >= 8.0, "{patch}");
            for other in &patches[i + 1..] {
                assert!(apart(*patch, *other) >= 1.5, "{patch} {other}");
            }
        }
        assert!(plan.sample.steps.is_sorted_by(|a, b| a.face.x1 < b.face.x0), "from left to right");
    }
}

/// Everything lies on the page with the 6.4 mm (quarter inch) that office printers leave white (common practice).
#[test]
fn the_page_takes_all_of_it() {
    for plan in plans() {
        let page = plan.paper.size().to_rect().inset(-6.4);
        for thing in plan.drawn() {
            let on_page = bounds(&thing) + plan.on_page;
            assert!(page.contains_rect(on_page), "{thing:?} at {on_page}");
        }
        assert_eq!(plan.check_line[0].distance(plan.check_line[1]), 100.0);
    }
}

#[test]
fn too_few_and_too_many_steps_are_told() {
    for steps in [0, 4, 9, usize::MAX] {
        let told = CardPlan::new(Paper::A4, steps).expect_err("it is not allowed").to_string();
        assert!(told.contains("5 to 8"), "{told}");
    }
}
