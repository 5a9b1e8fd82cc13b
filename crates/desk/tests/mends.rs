//! Every mend that is offered removes its finding and makes nothing worse, told by reading the mended file anew.

use desk::store::{Change, apply};
use desk::{By, Kin, Mend, Seen, mends};
use dial::findings::{Finding, Severity};
use std::fs;
use std::path::Path;

const ONE: &str = "[[counter]]\nname = \"c0\"\nvalues = \"0..12\"\n";
const TWO: &str = "[[counter]]\nname = \"c0\"\nvalues = \"0..12\"\n[[counter]]\nname = \"c1\"\nvalues = \"0..12\"\n";

/// A dial's text, the rule that says so, and a key and value by which the rule itself knows to mend it.
type Failing = (String, &'static str, Option<(&'static str, &'static str)>);

/// Dials that fail, each with the rule that says so, and a value by which the rule itself knows to mend it; none where it
/// cannot know.
fn failing() -> Vec<Failing> {
    let dial =
        |more: &str, counters: &str| format!("name = \"Test\"\nstock = \"birch plywood 3 mm\"\n{more}\n{counters}");
    let one = |more: &str| dial("", &format!("[[counter]]\nname = \"c0\"\n{more}\n"));
    vec![
        (
            one("values = \"8..22\"\nwindow = { width = \"6 mm\", height = \"7 mm\" }"),
            "turn test",
            Some(("window.width", "")),
        ),
        (one("values = \"0..12\"\nwindow = { distance = \"9 mm\" }"), "turn test", Some(("window.distance", ""))),
        (dial("[mark]\nheight = \"1.6 mm\"", ONE), "marks too small to cut", Some(("mark.height", "\"2.4 mm\""))),
        (dial("[mark]\nheight = \"2 mm\"", ONE), "height as it is seen", Some(("mark.height", "mm"))),
        (dial("[notch]\ndepth = \"2.2 mm\"", ONE), "bared rim", Some(("notch.depth", ""))),
        (dial("[cover]\nwidth = \"40 mm\"", ONE), "wheel sticks out", Some(("cover.width", ""))),
        (dial("[wheel]\ngap = \"0.1 mm\"", TWO), "clearance", Some(("wheel.gap", "0.2"))),
        (dial("[cover]\nedge = \"0.1 mm\"", ONE), "clearance", Some(("cover.edge", "0.2"))),
        (dial("[wheel]\nland = \"0.8 mm\"\ngap = \"0.6 mm\"", TWO), "web between cuts", None),
        (dial("[magnet]\nwheel_pocket = \"2.3 mm\"", ONE), "floor under a pocket", Some(("magnet.wheel_pocket", ""))),
        (dial("[magnet]\nthickness = \"2 mm\"", ONE), "floor under a pocket", None),
        (
            one("values = \"0..12\"\nnotch = { angle = \"9 o'clock\" }"),
            "cover symmetric for turning over",
            Some(("turn_over", "\"endways\"")),
        ),
        (dial("[magnet]\ndiameter = \"2 mm\"\nthickness = \"0.5 mm\"", ONE), "turning and keeping", None),
        (dial("[mark]\nmargin = \"0.1 mm\"\nclear = \"0.1 mm\"", ONE), "slack", Some(("mark.margin", "mm"))),
        (
            dial("[mark]\nweight = \"regular\"\n[reading]\nseats = [\"across\"]\neyesight = 60", ONE),
            "strokes as they are seen",
            Some(("mark.", "")),
        ),
        (dial("[wheel]\nstock = \"walnut plywood 3 mm\"", ONE), "contrast of the engraving", None),
    ]
}

fn of(text: &str) -> (Seen, Vec<Option<Mend>>) {
    let shop = workshop::starter();
    let seen = Seen::of(text, &shop, &[]).unwrap_or_else(|mistakes| panic!("{text}\n{mistakes:?}"));
    let all = mends(&seen, text, &shop, &Kin::none());
    (seen, all)
}

/// How many findings of a rule a dial has at least as grave.
fn count(seen: &Seen, like: &Finding) -> usize {
    let alike = |one: &&Finding| one.rule == like.rule && one.part == like.part && one.severity >= like.severity;
    seen.findings.iter().filter(alike).count()
}

fn grave(seen: &Seen, severity: Severity) -> usize {
    seen.findings.iter().filter(|one| one.severity >= severity).count()
}

/// Reads the mended file anew.
fn holds(text: &str, seen: &Seen, finding: &Finding, mend: &Mend) {
    let after = apply(text, &mend.changes).expect("fits");
    let then = Seen::of(&after, &workshop::starter(), &[]).expect("reads");
    let told = format!("{finding:?}\n{mend:?}\n{:?}", then.findings.iter().map(|one| &one.what).collect::<Vec<_>>());
    assert!(count(&then, finding) < count(seen, finding), "still there: {told}");
    assert!(grave(&then, Severity::Refuse) <= grave(seen, Severity::Refuse), "worse: {told}");
    assert!(
        finding.severity == Severity::Refuse || grave(&then, Severity::Mend) < grave(seen, Severity::Mend),
        "worse: {told}"
    );
    let now = |severity| then.findings.iter().filter(|one| one.severity == severity).count();
    assert_eq!((mend.then.refuse, mend.then.mend), (now(Severity::Refuse), now(Severity::Mend)), "{told}");
}

#[test]
fn what_is_offered_on_failing_dials_helps() {
    for (text, rule, known) in failing() {
        let (seen, all) = of(&text);
        let told = || {
            seen.findings.iter().map(|f| format!("{} {}: {}", f.severity.word(), f.rule, f.what)).collect::<Vec<_>>()
        };
        let n = seen.findings.iter().position(|one| one.rule == rule && one.severity > Severity::Note);
        let n = n.unwrap_or_else(|| panic!("no {rule} in {text}: {:#?}", told()));
        for (finding, mend) in seen.findings.iter().zip(&all) {
            mend.iter().for_each(|mend| holds(&text, &seen, finding, mend));
            assert!(mend.is_none() || finding.severity > Severity::Note, "a note is not mended: {finding:?}");
        }
        let Some((key, value)) = known else { continue };
        let mend = all[n].as_ref().unwrap_or_else(|| panic!("{rule}: no mend; {:?}", seen.findings[n].remedies));
        assert_eq!(mend.by, By::Rule, "{rule}: {mend:?}");
        let fits = mend.changes.iter().any(|change| match change {
            Change::Set { path, value: set } => {
                path.contains(key) && !value.is_empty() && set.to_string().contains(value)
            }
            Change::Leave { path } => path.contains(key) && value.is_empty(),
            _ => false,
        });
        let any = key.ends_with('.') && mend.changes.iter().any(|change| change.place().contains(key));
        assert!(fits || any, "{rule}: {mend:?}");
    }
}

#[test]
fn what_is_offered_on_the_examples_helps() {
    let examples = Path::new(env!("CARGO_MANIFEST_DIR")).join("../../examples");
    let mut offered = 0;
    for folder in fs::read_dir(examples).expect("examples").flatten() {
        let Ok(text) = fs::read_to_string(folder.path().join("dial.toml")) else { continue };
        let (seen, all) = of(&text);
        for (finding, mend) in seen.findings.iter().zip(&all) {
            let Some(mend) = mend else { continue };
            holds(&text, &seen, finding, mend);
            offered += 1;
        }
    }
    assert!(offered > 0, "some example has something to mend");
}

/// What a material is, only the maker can say: a slip of the pen in its name is not mended by a touch.
#[test]
fn no_mend_says_what_a_material_is() {
    let slip = "[stocks.\"my ply\"]\nlayers = [{ material = \"birch plywod\", thickness = \"3 mm\" }]\n";
    let text = format!("name = \"Test\"\nstock = \"my ply\"\n{ONE}{slip}");
    let (seen, all) = of(&text);
    let n = seen.findings.iter().position(|one| one.rule == "materials").expect("refused");
    assert!(seen.findings[n].severity == Severity::Refuse && seen.findings[n].mend.contains("birch plywood"));
    assert!(all[n].is_none(), "{:?}", all[n]);
}
