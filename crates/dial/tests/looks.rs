//! What can be read from where: rules fire where they should, and what they name as mending mends.

mod common;

use common::{dial, examples, look};
use dial::findings::{Finding, Quantity, Severity};

const ONE: &[(&str, &str)] = &[("values = \"0..12\"", "")];
const RULES: [&str; 4] = [
    "contrast of the engraving",
    "height as it is seen",
    "hidden by the cover's thickness",
    "strokes as they are seen",
];

fn all(text: &str, rule: &str) -> Vec<Finding> {
    look(text).findings.into_iter().filter(|one| one.rule == rule).collect()
}

#[track_caller]
fn grave(text: &str, rule: &str) -> Finding {
    let found = all(text, rule);
    let one = found.iter().find(|one| one.severity == Severity::Mend);
    one.unwrap_or_else(|| panic!("no {rule}: {found:?}")).clone()
}

/// What stands between the quotes after a key in a mend.
fn named(mend: &str, key: &str) -> String {
    let rest = mend.split(&format!("{key} = \"")).nth(1).unwrap_or_else(|| panic!("no {key}: {mend}"));
    rest.split('"').next().unwrap_or_default().to_owned()
}

/// A light-wood dial read by its owner: nothing to mend of any of this.
#[test]
fn a_usual_dial_is_read_by_its_owner() {
    for stock in ["birch plywood 3 mm", "basswood plywood 3 mm", "beech plywood 3 mm", "bamboo 3 mm", "maple 3 mm"] {
        let text = dial("[cover]\nedge = \"2 mm\"", ONE).replace("birch plywood 3 mm", stock);
        for one in look(&text).findings {
            assert!(!RULES.contains(&one.rule) || one.severity == Severity::Note, "{stock}: {one:?}");
        }
    }
    for (name, text) in examples() {
        for one in look(&text).findings {
            assert!(!RULES.contains(&one.rule) || one.severity == Severity::Note, "{name}: {one:?}");
        }
    }
}

/// The three seats, worked by hand from d A / 3437.75 / sin(elevation): for 16' the owner needs 3.4 mm, the neighbour 5.8 mm, the one
/// across 11.1 mm. The height that the finding names is free of it, a tenth less is not.
#[test]
fn each_seat_needs_its_height() {
    for (seat, needed) in [("owner", 3.4), ("neighbour", 5.8), ("across", 11.2)] {
        let text = |height: &str| {
            dial(
                &format!("[reading]\nseats = [\"{seat}\"]\n[mark]\nheight = \"{height}\""),
                &[("values = \"0..3\"", "label = \"\"")],
            )
        };
        let finding = grave(&text("2.5 mm"), "height as it is seen");
        assert!(matches!(finding.limit, Some(Quantity::Sight(angle)) if (sight::arcmin(angle) - 16.0).abs() < 1e-9));
        let would = named(&finding.mend, "mark.height");
        let figure: f64 = would.trim_end_matches(" mm").parse().expect("mm");
        assert!((figure - needed).abs() < 0.11, "{seat}: {would}");
        assert!(all(&text(&would), "height as it is seen").is_empty(), "{seat}: {would}");
        assert!(!all(&text(&format!("{:.1} mm", figure - 0.1)), "height as it is seen").is_empty(), "{seat}: {would}");
    }
}

/// 3 mm of cover hide 2.23 mm at 53° and 6.06 mm at 26° (3 / tan): less the 0.8 mm of margin, measured on the outlines of marks whose
/// feet stand at the margin.
#[test]
fn thickness_hides_what_the_slant_says() {
    for (seat, hidden) in [("owner", 2.23 - 0.8), ("neighbour", 3.83 - 0.8), ("across", 6.06 - 0.8)] {
        let text = dial(&format!("[reading]\nseats = [\"{seat}\"]"), &[("values = [\"E\", \"H\"]", "")]);
        let seen = &look(&text).looks.wheels[0].seen[0];
        let worst = seen.at_worst();
        // The one across looks over the tops first: of 5 mm nothing is left.
        let expected = f64::min(hidden, worst.extent);
        assert!((worst.hidden - expected).abs() < 0.02, "{seat}: {} of {}, {expected}", worst.hidden, worst.extent);
        let grave = look(&text).findings.iter().any(|f| f.rule == RULES[2] && f.severity == Severity::Mend);
        assert_eq!(grave, seat != "owner", "{seat}");
    }
}

/// The window that the finding names hides nothing; the cover it names neither.
#[test]
fn the_window_that_would_pass_passes() {
    for shape in ["rounded rectangle", "round"] {
        let text = |more: &str| {
            dial(
                &format!(
                    "[reading]\nseats = [\"neighbour\"]\n[mark]\nheight = \"6 mm\"\n[window]\nshape = \"{shape}\"\n{more}"
                ),
                &[("values = \"0..9\"", "label = \"\"")],
            )
        };
        let key = if shape == "round" { "window.width" } else { "window.height" };
        let found = all(&text(""), RULES[2]);
        let would = named(&found.first().expect("some is hidden").mend, key);
        let mended = look(&text(&format!("{} = \"{would}\"", key.trim_start_matches("window."))));
        assert!(mended.looks.wheels[0].seen[0].stops.iter().all(|stop| stop.share > 1.0 - 1e-9), "{shape} {would}");
    }
}

/// Of figures whose lower part is gone, some cannot be told apart; whole ones all can.
#[test]
fn what_is_left_must_tell_figures_apart() {
    let looked = look(&dial("", &[("values = \"0..9\"", "")]));
    let wheel = &looked.laid.dial.wheels[0];
    let view = looked.laid.dial.reading.readers[0].view;
    assert!(dial::looks::alike(wheel, view, 0.0).is_empty());
    assert!(dial::looks::alike(wheel, view, 1.4).is_empty());
    assert!(!dial::looks::alike(wheel, view, 4.9).is_empty());
}

/// Dark on dark is told with its figures; a finding says where they come from.
#[test]
fn char_on_walnut_does_not_stand_out() {
    let text = dial("", ONE).replace("birch plywood 3 mm", "walnut plywood 3 mm");
    let finding = grave(&text, RULES[0]);
    assert!(matches!(finding.measured, Some(Quantity::Ratio(ratio)) if (1.9..2.3).contains(&ratio)), "{finding:?}");
    assert!(finding.source.contains("WCAG") && finding.mend.contains("typical"), "{finding:?}");
    // Engraving sheet: just through its cap is named, and does.
    let text = |depth: &str| {
        dial(&format!("[mark]\ndepth = \"{depth}\""), ONE)
            .replace("birch plywood 3 mm", "two-ply acrylic, white over black")
    };
    let would = named(&grave(&text("0.1 mm"), RULES[0]).mend, "mark.depth");
    assert!(all(&text(&would), RULES[0]).iter().all(|one| !one.what.starts_with("marks")), "{would}");
}

/// Howett: a 20/40 eye at 1060 mm needs strokes of 0.617 mm square on, 1.39 mm flat at 26.3°.
#[test]
fn weak_eyes_need_thicker_strokes() {
    let text = |more: &str| dial(&format!("[reading]\nseats = [\"across\"]\n{more}\n[mark]\nheight = \"4 mm\""), ONE);
    let finding = grave(&text(""), RULES[3]);
    assert!(matches!(finding.limit, Some(Quantity::Length(mm)) if (mm - 1.39).abs() < 0.01), "{finding:?}");
    let normal = grave(&text("eyesight = 20\n"), RULES[3]);
    assert!(matches!(normal.limit, Some(Quantity::Length(mm)) if (mm - 0.696).abs() < 0.005), "{normal:?}");
    assert!(all(&text("eyesight = 20\n").replace("across", "owner"), RULES[3]).is_empty());
}

/// Nobody needs to read it, or somebody from another place.
#[test]
fn readers_are_those_that_were_asked_for() {
    let readers = |more: &str| look(&dial(more, ONE)).laid.dial.reading.readers;
    assert_eq!(readers("").len(), 1);
    assert!(readers("[reading]\nseats = []").is_empty());
    let own = readers(
        "[reading]\nseats = [\"owner\", \"across\"]\ndistance = \"1.5 in\"\neye = \"400 mm\"\nside = \"90 deg\"",
    );
    assert_eq!(own.iter().map(|one| one.name.as_str()).collect::<Vec<_>>(), ["owner", "across", "reader at 38.1 mm"]);
    assert!((own[2].view.seat().eye() - 400.0).abs() < 1e-9);
    let findings = look(&dial("[reading]\nseats = []", ONE)).findings;
    assert!(findings.iter().all(|one| !RULES.contains(&one.rule)));
}
