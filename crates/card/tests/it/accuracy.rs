//! The promise: within 2 L* and 10 % of the contrast ratio, or a reason why not. A small part of the run of
//! `examples/accuracy.rs`, in small pictures, so that it takes seconds.

use card::{CardPlan, Paper};

use super::trial::{Kind, Tally, Trial};

const WIDTH: usize = 1280;

/// Perspective to 35 degrees, light uneven by up to 40 %, lamps, vignetting, barrel, stray light, noise, JPEG 60 to 95, dot
/// gain, samples up to 3 mm thick and a little askew; paper and print measured.
#[test]
fn what_is_accepted_is_right() {
    let tally = Tally::over(Kind::Clean, 0..20, WIDTH);
    assert!(tally.acceptance() >= 0.85, "{}\n{:#?}", Tally::HEADING, tally.remarks());
    assert!(tally.good() >= 0.95 && tally.held() >= 0.95, "{}\n{tally}\n{:#?}", Tally::HEADING, tally.remarks());
    let short = tally.read.iter().map(|(_, errors)| errors.best_short).fold(0.0, f64::max);
    assert!(short < 0.05, "the best step is named, or one that cannot be told from it: {short}");
}

/// When more power gives no more contrast, the step to choose is the gentlest of those that read best.
#[test]
fn the_gentlest_of_equal_steps_is_offered() {
    let trial = Trial { kind: Kind::Clean, seed: 1, width: WIDTH };
    let plan = CardPlan::new(Paper::A4, trial.steps()).expect("it is allowed");
    let mut scene = trial.scene(&plan);
    let full = scene.sample.engraved[3];
    scene.sample.engraved[4..].fill(full);
    let reading = trial.read(&scene, &plan).unwrap_or_else(|refused| panic!("refused: {refused}"));
    assert_eq!(reading.gentlest_as_good(), 3, "{:?}", reading.steps.iter().map(|s| s.contrast).collect::<Vec<_>>());
}

/// Whoever has measured neither paper nor print gets the wider intervals of what is typical, and they hold the truth.
#[test]
fn the_intervals_of_typical_prints_hold_the_truth() {
    let tally = Tally::over(Kind::Typical, 100..108, WIDTH);
    assert!(tally.acceptance() >= 0.85 && tally.held() >= 0.95, "{}\n{tally}\n{:#?}", Tally::HEADING, tally.remarks());
}

/// At least nine of ten, and for the right reason.
fn refused(kind: Kind, seeds: std::ops::Range<u64>, reasons: &[&str]) {
    let tally = Tally::over(kind, seeds, WIDTH);
    let right = tally.refused.iter().filter(|(_, why)| reasons.iter().any(|reason| why.contains(reason))).count();
    let all = tally.read.len() + tally.refused.len();
    assert!(10 * right >= 9 * all, "{right} of {all}: {:#?}", tally.remarks());
}

#[test]
fn edges_of_shadow_are_refused() {
    refused(Kind::Shadow, 200..210, &["edge of a shadow"]);
}

#[test]
fn overexposed_photos_are_refused() {
    refused(Kind::Clipped, 300..310, &["overexposed"]);
}

/// A reflection between the blacks looks like a lamp's spot, and one on the sample alone like an uneven sample: all of these
/// tell where, and to look for a reflection or spot.
#[test]
fn reflections_are_refused() {
    refused(Kind::Glare, 400..407, &["reflect", "lamp's spot", "overexposed"]);
}

#[test]
fn blurred_photos_are_refused() {
    refused(Kind::Blurred, 500..506, &["not sharp", "sharp and not mirrored"]);
}
