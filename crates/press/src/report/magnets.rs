//! Magnets: how each wheel is held, poles, counts, what a loose one can do; the chooser and the map.

use super::number::{Place, Spread, degrees, place, rounded, spread, spread_degrees};
use super::value;
use dial::magnets::{self, Candidate, Choice, Clicking, Held, Likely, Map};
use dial::{Dial, Looked};
use process::Workshop;
use schemars::JsonSchema;
use serde::Serialize;
use serde_json::Value;

/// All about the magnets.
#[derive(Serialize, JsonSchema)]
pub(super) struct MagnetsReport {
    wheels: Vec<WheelMagnets>,
    /// The strongest neighbour of every wheel.
    neighbours: Vec<NeighbourReport>,
    /// What every pocket does to the marked face of the master magnet.
    pole_plan: Vec<PoleReport>,
    /// What to have at hand.
    count: Vec<CountReport>,
    /// What a loose one can do; computed, no test report.
    loose: Vec<LooseReport>,
}

/// One wheel's magnets.
#[derive(Serialize, JsonSchema)]
struct WheelMagnets {
    wheel: String,
    /// `null` for magnets that cannot be.
    held: Option<HeldReport>,
    /// `null` without clicks.
    clicks: Option<ClicksReport>,
}

/// How a wheel is held.
#[derive(Serialize, JsonSchema)]
struct HeldReport {
    /// "easy and keeps", "slips by itself", "stiff", "will not turn" or "does not centre".
    verdict: &'static str,
    touches: &'static str,
    touches_from_mm: Option<f64>,
    touches_to_mm: Option<f64>,
    /// Coefficient, from and to.
    friction: [f64; 2],
    /// How far the magnets of cover and wheel lie under the faces; negative where they stand out.
    under_the_face_mm: [Option<f64>; 2],
    /// Between the magnets' faces.
    gap_mm: Spread,
    pull_n: Spread,
    /// Force at the rim that turns it.
    effort_n: Spread,
    /// Where one finger pushes it while it turns; boundless where it is pushed off.
    drift_mm: Spread,
    /// Two opposite fingers push it nowhere.
    drift_with_two_fingers_mm: f64,
    window_forgives_mm: Option<f64>,
    /// How far off centre friction lets it rest.
    rest_mm: Spread,
    /// Turning that centres it from there.
    centred_by_deg: Spread,
    stiffness_n_per_mm: Option<f64>,
    rests_aside_mm: Option<f64>,
    /// Multiples of gravity.
    slips_at_g: Option<f64>,
    thrown_at_g: Option<f64>,
    lifts_at_g: Option<f64>,
    /// Height of a fall on its edge that knocks it off.
    drop_on_its_edge_m: Option<f64>,
    /// How hard a finger presses to turn it.
    press_n: Option<f64>,
    tips_outwards_n: Option<f64>,
    tips_inwards_n: Option<f64>,
    mass_g: Option<f64>,
}

/// What clicks do.
#[derive(Serialize, JsonSchema)]
struct ClicksReport {
    magnets_in_wheel: usize,
    magnets_in_cover: usize,
    ring_radius_mm: Option<f64>,
    torque_n_mm: Option<f64>,
    torque_at_deg: Option<f64>,
    friction_n_mm: Option<f64>,
    effort_n: Option<f64>,
    felt: bool,
    most_stops: usize,
}

/// What one wheel's pair does to another wheel.
#[derive(Serialize, JsonSchema)]
struct NeighbourReport {
    wheel: String,
    other: String,
    apart_mm: Option<f64>,
    force_n: f64,
    shift_mm: f64,
}

/// A pocket with its pole.
#[derive(Serialize, JsonSchema)]
struct PoleReport {
    wheel: String,
    part: &'static str,
    at: Place,
    /// Whether it is one of the small ones that click.
    click: bool,
    /// "pulls" or "pushes".
    marked_face: &'static str,
}

/// Magnets of one kind.
#[derive(Serialize, JsonSchema)]
struct CountReport {
    diameter_mm: f64,
    thickness_mm: f64,
    glued: usize,
    master: usize,
    spares: usize,
    all: usize,
    apart_on_the_bench_mm: f64,
}

/// A loose magnet.
#[derive(Serialize, JsonSchema)]
struct LooseReport {
    diameter_mm: f64,
    thickness_mm: f64,
    count: usize,
    flux_index_kg2_mm2: Option<f64>,
    flux_index_least_kg2_mm2: Option<f64>,
    flux_index_most_kg2_mm2: Option<f64>,
    limit_kg2_mm2: f64,
    over_the_limit: bool,
    /// Whether it fits the small-parts cylinder.
    small_part: bool,
}

impl MagnetsReport {
    pub(super) fn of(dial: &Dial, held: &[Option<Held>]) -> MagnetsReport {
        let name = |i: usize| dial.wheels[i].name.clone();
        let wheels = dial.wheels.iter().zip(held).map(|(wheel, held)| WheelMagnets {
            wheel: wheel.name.clone(),
            held: held.as_ref().map(HeldReport::of),
            clicks: held.as_ref().and_then(|held| magnets::clicking(wheel, held)).map(ClicksReport::of),
        });
        let neighbours = magnets::neighbours(dial).into_iter().map(|one| NeighbourReport {
            wheel: name(one.wheel),
            other: name(one.other),
            apart_mm: rounded(one.apart),
            force_n: one.force,
            shift_mm: one.shift,
        });
        let poles = magnets::plan(dial).into_iter().map(|one| PoleReport {
            wheel: name(one.wheel),
            part: one.part.words(),
            at: place(one.pocket.centre),
            click: one.clicks,
            marked_face: one.poles.words(),
        });
        let counts = magnets::count(dial).into_iter().map(|(disc, count)| CountReport {
            diameter_mm: disc.diameter,
            thickness_mm: disc.thickness,
            glued: count.glued,
            master: count.master,
            spares: count.spares,
            all: count.all(),
            apart_on_the_bench_mm: magnets::spares_apart(&disc),
        });
        let loose = magnets::loose(dial).into_iter().map(|one| LooseReport {
            diameter_mm: one.disc.diameter,
            thickness_mm: one.disc.thickness,
            count: one.count,
            flux_index_kg2_mm2: rounded(one.flux.index),
            flux_index_least_kg2_mm2: rounded(one.flux.span[0]),
            flux_index_most_kg2_mm2: rounded(one.flux.span[1]),
            limit_kg2_mm2: ::magnet::FLUX_INDEX_LIMIT,
            over_the_limit: one.flux.hazardous(),
            small_part: one.small_part,
        });
        MagnetsReport {
            wheels: wheels.collect(),
            neighbours: neighbours.collect(),
            pole_plan: poles.collect(),
            count: counts.collect(),
            loose: loose.collect(),
        }
    }
}

impl HeldReport {
    fn of(held: &Held) -> HeldReport {
        HeldReport {
            verdict: held.likely.verdict.words(),
            touches: held.contact.touch.words(),
            touches_from_mm: rounded(held.contact.inner),
            touches_to_mm: rounded(held.contact.outer),
            friction: [held.friction.low, held.friction.high],
            under_the_face_mm: [rounded(held.build.under.0), rounded(held.build.under.1)],
            gap_mm: spread(held.gap),
            pull_n: spread(held.pull),
            effort_n: spread(held.effort),
            drift_mm: spread(held.drift),
            drift_with_two_fingers_mm: 0.0,
            window_forgives_mm: rounded(held.forgives),
            rest_mm: spread(held.rest),
            centred_by_deg: spread_degrees(held.centred_by),
            stiffness_n_per_mm: rounded(held.stiffness),
            rests_aside_mm: held.rests_aside.and_then(rounded),
            slips_at_g: rounded(held.slips_at),
            thrown_at_g: rounded(held.likely.thrown_at),
            lifts_at_g: rounded(held.lifts_at),
            drop_on_its_edge_m: rounded(held.drop),
            press_n: rounded(held.press),
            tips_outwards_n: rounded(held.tips_outwards),
            tips_inwards_n: held.tips_inwards.and_then(rounded),
            mass_g: rounded(held.build.mass),
        }
    }
}

impl ClicksReport {
    fn of(one: Clicking) -> ClicksReport {
        ClicksReport {
            magnets_in_wheel: one.magnets.0,
            magnets_in_cover: one.magnets.1,
            ring_radius_mm: rounded(one.ring),
            torque_n_mm: rounded(one.torque),
            torque_at_deg: degrees(one.at),
            friction_n_mm: rounded(one.friction),
            effort_n: rounded(one.effort),
            felt: one.felt(),
            most_stops: one.most_stops,
        }
    }
}

/// A pair from the shelf.
#[derive(Serialize)]
struct CandidateReport {
    cover: String,
    wheel: String,
    does: bool,
    why_not: Option<String>,
    cover_pocket_mm: Option<f64>,
    wheel_pocket_mm: Option<f64>,
    may_be_shallower_mm: Option<f64>,
    may_be_deeper_mm: Option<f64>,
    pull_n: Option<f64>,
    effort_n: Option<f64>,
    drift_mm: Option<f64>,
    price_of_a_pair: Option<f64>,
}

/// Every pair of the shelf, tried for the wheel that is hardest to hold; best first.
pub fn chooser_report(looked: &Looked, workshop: &Workshop) -> Value {
    let one = |one: Candidate| CandidateReport {
        does: one.choice == Choice::Does,
        why_not: match one.choice {
            Choice::Does => None,
            Choice::Fails(why) => Some(why),
        },
        cover: one.cover.name,
        wheel: one.wheel.name,
        cover_pocket_mm: rounded(one.depths.0),
        wheel_pocket_mm: rounded(one.depths.1),
        may_be_shallower_mm: rounded(one.band.0),
        may_be_deeper_mm: rounded(one.band.1),
        pull_n: rounded(one.likely.pull),
        effort_n: rounded(one.likely.effort),
        drift_mm: one.likely.drift.and_then(rounded),
        price_of_a_pair: one.price,
    };
    value(&magnets::choose(looked, workshop).into_iter().map(one).collect::<Vec<_>>())
}

/// The map as figures.
#[derive(Serialize)]
struct MapReport {
    wheel: String,
    cover_pocket_mm: Vec<Option<f64>>,
    wheel_pocket_mm: Vec<Option<f64>>,
    design_mm: [Option<f64>; 2],
    within_mm: Option<f64>,
    deepest_mm: [Option<f64>; 2],
    effort_bands_n: [f64; 5],
    drift_bands_mm: [f64; 5],
    thrown_bands_g: [f64; 5],
    effort_n: Vec<Vec<Option<f64>>>,
    drift_mm: Vec<Vec<Option<f64>>>,
    thrown_at_g: Vec<Vec<Option<f64>>>,
    verdict: Vec<Vec<Option<&'static str>>>,
    good: Vec<Vec<bool>>,
}

/// The map as figures: one row for each depth of the cover's pocket, one column for each of the wheel's.
pub fn map_report(looked: &Looked, workshop: &Workshop) -> Value {
    let Some((wheel, map)) = magnets::map_of_hardest(looked, workshop) else {
        return Value::Null;
    };
    let figure =
        |of: fn(&Likely) -> Option<f64>| grid(&map, |i, j| map.cells[i][j].as_ref().and_then(of).and_then(rounded));
    let all = |depths: &[f64]| depths.iter().map(|one| rounded(*one)).collect();
    value(&MapReport {
        wheel: looked.laid.dial.wheels[wheel].name.clone(),
        cover_pocket_mm: all(&map.cover),
        wheel_pocket_mm: all(&map.wheel),
        design_mm: [rounded(map.point.0), rounded(map.point.1)],
        within_mm: rounded(map.within),
        deepest_mm: [rounded(map.deepest.0), rounded(map.deepest.1)],
        effort_bands_n: map.bands.effort,
        drift_bands_mm: map.bands.drift,
        thrown_bands_g: map.bands.thrown_at,
        effort_n: figure(|one| Some(one.effort)),
        drift_mm: figure(|one| one.drift),
        thrown_at_g: figure(|one| Some(one.thrown_at)),
        verdict: grid(&map, |i, j| map.cells[i][j].map(|one| one.verdict.words())),
        good: grid(&map, |i, j| map.good(i, j)),
    })
}

fn grid<T>(map: &Map, of: impl Fn(usize, usize) -> T) -> Vec<Vec<T>> {
    (0..map.cover.len()).map(|i| (0..map.wheel.len()).map(|j| of(i, j)).collect()).collect()
}
