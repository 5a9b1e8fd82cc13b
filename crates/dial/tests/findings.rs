//! Every rule fires on a dial that breaks it, at the place and with the weight it should, and is silent on one that does not.

mod common;

use common::{dial, look};
use dial::findings::{Finding, Quantity, Severity};

const ONE: &[(&str, &str)] = &[("values = \"0..12\"", "")];
const TWO: &[(&str, &str)] = &[("values = \"0..12\"", ""), ("values = \"0..12\"", "")];

/// The finding of a rule with a weight.
#[track_caller]
fn found(text: &str, rule: &str, severity: Severity) -> Finding {
    let looked = look(text);
    let all = &looked.findings;
    let told =
        || all.iter().map(|f| format!("{} {}: {}", f.severity.word(), f.rule, f.what)).collect::<Vec<_>>().join("\n");
    let one = all
        .iter()
        .find(|finding| finding.rule == rule && finding.severity == severity)
        .unwrap_or_else(|| panic!("no {rule}:\n{}", told()));
    assert!(!one.source.is_empty() && !one.what.is_empty(), "{one:?}");
    assert!(severity == Severity::Note || !one.mend.is_empty(), "{one:?}");
    one.clone()
}

fn length(quantity: Option<Quantity>) -> f64 {
    match quantity {
        Some(Quantity::Length(mm)) => mm,
        other => panic!("not a length: {other:?}"),
    }
}

#[test]
fn a_usual_dial_has_nothing_to_mend() {
    for counters in [ONE, TWO] {
        let looked = look(&dial("", counters));
        let grave: Vec<_> = looked.findings.iter().filter(|f| f.severity != Severity::Note).collect();
        assert!(grave.is_empty(), "{grave:?}");
    }
}

#[test]
fn a_window_too_small_hides_its_marks() {
    let text = dial("", &[("values = \"8..22\"", "window = { width = \"6 mm\", height = \"7 mm\" }")]);
    let finding = found(&text, "turn test", Severity::Refuse);
    assert!(matches!(finding.measured, Some(Quantity::Share(share)) if share < 1.0 && share > 0.5), "{finding:?}");
}

#[test]
fn a_window_too_near_the_middle_shows_neighbours() {
    let text = dial("", &[("values = \"0..12\"", "window = { distance = \"9 mm\" }")]);
    assert!(found(&text, "turn test", Severity::Refuse).what.contains("seen beside"));
}

#[test]
fn marks_too_small_to_cut_are_told_with_the_height_that_would_do() {
    let text = dial("[mark]\nheight = \"1.6 mm\"", ONE);
    let finding = found(&text, "marks too small to cut", Severity::Mend);
    assert!(length(finding.measured) < length(finding.limit));
    // The height it names is free of the finding.
    let wanted: String =
        finding.mend.split("make it ").nth(1).and_then(|rest| rest.split(" high").next()).expect("a height").into();
    let mended = look(&dial(&format!("[mark]\nheight = \"{wanted}\""), ONE));
    assert!(
        !mended
            .findings
            .iter()
            .any(|f| f.rule == finding.rule && f.part == finding.part && f.measured == finding.measured)
    );
}

#[test]
fn symbols_too_small_to_cut_are_told_too() {
    let small = dial("[mark]\nheight = \"2 mm\"", &[("symbols = [\"wheat\", \"gem\", \"key\"]", "")]);
    let finding = found(&small, "marks too small to cut", Severity::Mend);
    assert!(length(finding.measured) < length(finding.limit));
    let large =
        look(&dial("[mark]\nheight = \"9 mm\"", &[("symbols = [\"wheat\", \"gem\", \"key\"]", "label = \"\"")]));
    assert!(!large.findings.iter().any(|f| f.rule == "marks too small to cut"));
}

#[test]
fn thin_webs_break() {
    // Two windows side by side across the middle: the wheels' land is nearly all that parts them.
    let text = dial("[wheel]\nland = \"0.3 mm\"\ngap = \"0.2 mm\"\n", TWO);
    let finding = found(&text, "web between cuts", Severity::Refuse);
    assert!((length(finding.measured) - 1.12).abs() < 0.01, "{finding:?}");
    let text = dial("[wheel]\nland = \"0.8 mm\"\ngap = \"0.6 mm\"\n", TWO);
    found(&text, "web between cuts", Severity::Mend);
}

#[test]
fn a_shallow_notch_bares_too_little() {
    let text = dial("[notch]\ndepth = \"2.2 mm\"", ONE);
    let finding = found(&text, "bared rim", Severity::Mend);
    assert!(length(finding.measured) > 1.0 && length(finding.measured) < 12.0);
    found(&dial("[notch]\ndepth = \"1 mm\"", ONE), "bared rim", Severity::Refuse);
}

/// The rim that a scoop bares, against circle geometry: chord and angle of two circles.
#[test]
fn bared_rim_is_what_circle_geometry_says() {
    let looked =
        look(&dial("[notch]\ndepth = \"3 mm\"\nwidth = \"14 mm\"\nbares = \"15 mm\"\n[cover]\nedge = \"1 mm\"", ONE));
    let wheel = &looked.laid.dial.wheels[0];
    let (half, depth, reach) = (7.0f64, 3.0, wheel.radius + 1.0);
    let scoop = (half * half + depth * depth) / (2.0 * depth);
    let middle = reach - depth + scoop;
    let cos = (wheel.radius.powi(2) + middle * middle - scoop * scoop) / (2.0 * wheel.radius * middle);
    let finding = looked.findings.iter().find(|f| f.rule == "bared rim").expect("less than asked");
    assert!((length(finding.measured) - 2.0 * wheel.radius * cos.acos()).abs() < 1e-6);
}

#[test]
fn wheels_that_stick_out_or_touch_are_refused() {
    found(&dial("[cover]\nwidth = \"40 mm\"", ONE), "wheel sticks out", Severity::Refuse);
    let text = dial(
        "",
        &[("values = \"0..12\"", "at = [\"-12 mm\", \"0 mm\"]"), ("values = \"0..12\"", "at = [\"12 mm\", \"0 mm\"]")],
    );
    assert!(length(found(&text, "clearance", Severity::Refuse).measured) < 0.0);
}

/// Wood Handbook table 13-5: a maple wheel moves 0.353 % for each per cent of moisture across the grain; plywood does not.
#[test]
fn solid_wood_needs_room_to_move() {
    let maple = dial("[wheel]\nstock = \"maple 3 mm\"\ngap = \"0.8 mm\"", TWO)
        .replace("stock = \"birch plywood 3 mm\"\n[wheel]", "[cover]\nstock = \"birch plywood 3 mm\"\n[wheel]");
    let finding = found(&maple, "clearance", Severity::Mend);
    let looked = look(&maple);
    let needed = 0.2 + 2.0 * looked.laid.dial.wheels[0].radius * 0.00353 * 4.0;
    assert!((length(finding.limit) - needed).abs() < 1e-9);
    assert!(!look(&dial("[wheel]\ngap = \"0.8 mm\"", TWO)).findings.iter().any(|f| f.rule == "clearance"));
}

#[test]
fn pockets_need_walls_and_floors() {
    let text = dial(
        "[magnet]\ndiameter = \"14 mm\"",
        &[("values = \"0..3\"", "window = { distance = \"9 mm\" }\nlabel = \"\"\nmark = { height = \"3 mm\" }")],
    );
    found(&text, "room for pockets", Severity::Refuse);
    // EN 315: 3 mm plywood may come 2.51 mm; a pocket of 2.2 mm leaves 0.31 mm.
    let finding = found(&dial("[magnet]\nthickness = \"2 mm\"", ONE), "floor under a pocket", Severity::Mend);
    assert!((length(finding.measured) - 0.31).abs() < 1e-9, "{finding:?}");
    found(&dial("[magnet]\nthickness = \"2.4 mm\"", ONE), "floor under a pocket", Severity::Refuse);
    // Engraving over the pocket takes from the floor.
    let art = dial(
        "[magnet]\nthickness = \"1.8 mm\"\n[cover]\nart = [{ text = \"H\", at = [\"0 mm\", \"0 mm\"], height = \"4 mm\" }]",
        ONE,
    );
    let finding = found(&art, "floor under a pocket", Severity::Mend);
    assert!((length(finding.measured) - (2.51 - 2.0 - 0.3)).abs() < 1e-9, "{finding:?}");
}

#[test]
fn a_lopsided_cover_cannot_be_turned_over() {
    let lopsided = "[cover]\noutline = \"polygon\"\ncorner = \"3 mm\"\npoints = [[\"-30 mm\", \"-30 mm\"], [\"32 mm\", \"-30 mm\"], [\"32 mm\", \"30 mm\"], [\"-30 mm\", \"30 mm\"]]";
    let finding = found(&dial(lopsided, ONE), "cover symmetric for turning over", Severity::Refuse);
    assert!((length(finding.measured) - 2.0).abs() < 2e-3, "{finding:?}");
    assert!(finding.mend.contains("symmetry"), "{}", finding.mend);
    for half in ["left", "right"] {
        let mended = look(&dial(&format!("symmetry = \"{half}\"\n{lopsided}"), ONE));
        assert!(!mended.findings.iter().any(|f| f.rule == finding.rule), "{half}");
        let measured = dial::findings::mirrored(&mended.laid.dial).own.distance;
        assert!(measured < 1e-6, "{half}: {measured}");
    }
    // Notch at the side of a single wheel: not for sideways, but endways.
    let finding = found(
        &dial("", &[("values = \"0..12\"", "notch = { angle = \"9 o'clock\" }")]),
        "cover symmetric for turning over",
        Severity::Refuse,
    );
    assert!(finding.mend.contains("endways"), "{}", finding.mend);
}

#[test]
fn art_keeps_off_the_cuts() {
    let art = |x: &str| {
        dial(&format!("[cover]\nart = [{{ symbol = \"star\", at = [\"{x}\", \"0 mm\"], height = \"5 mm\" }}]"), TWO)
    };
    found(&art("0 mm"), "room for art", Severity::Refuse);
    found(&art("200 mm"), "room for art", Severity::Refuse);
}

#[test]
fn what_does_not_fit_the_bed_is_refused() {
    found(&dial("[cover]\nwidth = \"420 mm\"", TWO), "part inside the bed", Severity::Refuse);
}

#[test]
fn unknown_and_never_cut_materials_are_refused() {
    let stock = |material: &str| {
        format!(
            "name = \"T\"\nstock = \"mine\"\n[stocks.mine]\nlayers = [{{ material = \"{material}\", thickness = \"0.8 mm\" }}, {{ material = \"birch plywood\", thickness = \"3 mm\" }}]\n[[counter]]\nname = \"a\"\nvalues = \"0..12\"\n"
        )
    };
    for material in ["PVC", "vinyl", "faux leather", "ABS", "polycarbonate", "moon cheese"] {
        assert!(found(&stock(material), "materials", Severity::Refuse).what.contains(material));
    }
    found(&stock("PVC-free leather substitute"), "materials", Severity::Note);
    assert!(!look(&stock("maple veneer")).findings.iter().any(|f| f.rule == "materials"));
}

#[test]
fn twins_are_told_apart_by_font_bar_or_dot() {
    let told = |twins: &str| {
        look(&dial(&format!("[mark]\ntwins = \"{twins}\""), &[("values = \"0..99\"", "mark = { height = \"3 mm\" }")]))
    };
    // Half-turn partners within 0 to 99, without leading zeros: 6/9, 16/91, 18/81, 19/61, 66/99, 68/89, 86/98.
    let finding = told("where needed").findings.into_iter().find(|f| f.rule == "upside-down twins").expect("told");
    assert_eq!(finding.measured, Some(Quantity::Count(7)), "{finding:?}");
    let barred = told("bar");
    let marked: Vec<&str> = barred.laid.dial.wheels[0]
        .marks
        .iter()
        .filter(|mark| mark.told_apart)
        .map(|mark| mark.words.as_str())
        .collect();
    assert_eq!(marked, ["6", "9", "16", "18", "19", "61", "66", "68", "81", "86", "89", "91", "98", "99"]);
    assert!(barred.turns.passes());
    assert!(told("dot").turns.passes());
}

#[test]
fn counting_says_which_push_counts_up() {
    let finding = found(&dial("", TWO), "counting", Severity::Note);
    assert!(finding.what.contains("at the notch on the left, pushing the rim up counts up"), "{}", finding.what);
}

/// One to six wheels under every kind of cover: nothing to refuse, nothing to mend.
#[test]
fn every_number_of_wheels_fits_every_outline() {
    for outline in ["rounded rectangle", "circle", "stadium", "regular polygon"] {
        for wheels in 1..=6 {
            let counters: Vec<(&str, &str)> = (0..wheels).map(|_| ("values = \"0..9\"", "")).collect();
            let sides = if outline == "regular polygon" { "sides = 6" } else { "" };
            let looked = look(&dial(&format!("[cover]\noutline = \"{outline}\"\n{sides}"), &counters));
            let grave: Vec<String> =
                looked.findings.iter().filter(|f| f.severity != Severity::Note).map(|f| f.what.clone()).collect();
            assert!(grave.is_empty(), "{wheels} wheels, {outline}: {grave:?}");
        }
    }
}
