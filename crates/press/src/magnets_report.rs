//! The figures of the magnets, as JSON.

use crate::report::{degrees, place, rounded};
use dial::magnets::{self, Candidate, Choice, Held, Map, Range};
use dial::{Dial, Looked};
use process::Workshop;
use serde_json::{Value, json};

/// How each wheel is held, what its neighbours do, the pole plan, what is to be counted, and what a loose one can do.
pub(crate) fn magnets_report(dial: &Dial, held: &[Option<Held>]) -> Value {
    let names = |i: usize| dial.wheels[i].name.as_str();
    let wheels = dial.wheels.iter().zip(held).map(|(wheel, held)| {
        json!({
            "wheel": wheel.name,
            "held": held.as_ref().map(held_report),
            "clicks": held.as_ref().and_then(|held| magnets::clicking(wheel, held)).map(|one| json!({
                "magnets_in_wheel": one.magnets.0,
                "magnets_in_cover": one.magnets.1,
                "ring_radius_mm": rounded(one.ring),
                "torque_n_mm": rounded(one.torque),
                "torque_at_deg": degrees(one.at),
                "friction_n_mm": rounded(one.friction),
                "effort_n": rounded(one.effort),
                "felt": one.felt(),
                "most_stops": one.most_stops,
            })),
        })
    });
    let neighbours = magnets::neighbours(dial).into_iter().map(|one| {
        json!({
            "wheel": names(one.wheel), "other": names(one.other), "apart_mm": rounded(one.apart),
            "force_n": one.force, "shift_mm": one.shift,
        })
    });
    let poles = magnets::plan(dial).into_iter().map(|one| {
        json!({
            "wheel": names(one.wheel),
            "part": one.part.words(),
            "at": place(one.pocket.centre),
            "click": one.clicks,
            "marked_face": one.poles.words(),
        })
    });
    let counts = magnets::count(dial).into_iter().map(|(disc, count)| {
        json!({
            "diameter_mm": disc.diameter, "thickness_mm": disc.thickness,
            "glued": count.glued, "master": count.master, "spares": count.spares, "all": count.all(),
            "apart_on_the_bench_mm": magnets::spares_apart(&disc),
        })
    });
    let loose = magnets::loose(dial).into_iter().map(|one| {
        json!({
            "diameter_mm": one.disc.diameter, "thickness_mm": one.disc.thickness, "count": one.count,
            "flux_index_kg2_mm2": rounded(one.flux.index),
            "flux_index_least_kg2_mm2": rounded(one.flux.span[0]),
            "flux_index_most_kg2_mm2": rounded(one.flux.span[1]),
            "limit_kg2_mm2": ::magnet::FLUX_INDEX_LIMIT,
            "over_the_limit": one.flux.hazardous(),
            "small_part": one.small_part,
        })
    });
    json!({
        "wheels": wheels.collect::<Vec<_>>(),
        "neighbours": neighbours.collect::<Vec<_>>(),
        "pole_plan": poles.collect::<Vec<_>>(),
        "count": counts.collect::<Vec<_>>(),
        "loose": loose.collect::<Vec<_>>(),
    })
}

fn range(range: Range) -> Value {
    json!({ "least": rounded(range.low), "likely": rounded(range.likely), "most": rounded(range.high) })
}

fn degrees_range(range: Range) -> Value {
    json!({ "least": degrees(range.low), "likely": degrees(range.likely), "most": degrees(range.high) })
}

fn held_report(held: &Held) -> Value {
    json!({
        "verdict": held.likely.verdict.words(),
        "touches": held.contact.touch.words(),
        "touches_from_mm": rounded(held.contact.inner),
        "touches_to_mm": rounded(held.contact.outer),
        "friction": [held.friction.low, held.friction.high],
        "under_the_face_mm": [rounded(held.build.under.0), rounded(held.build.under.1)],
        "gap_mm": range(held.gap),
        "pull_n": range(held.pull),
        "effort_n": range(held.effort),
        "drift_mm": range(held.drift),
        "drift_with_two_fingers_mm": 0.0,
        "window_forgives_mm": rounded(held.forgives),
        "rest_mm": range(held.rest),
        "centred_by_deg": degrees_range(held.centred_by),
        "stiffness_n_per_mm": rounded(held.stiffness),
        "rests_aside_mm": held.rests_aside.map(rounded),
        "slips_at_g": rounded(held.slips_at),
        "thrown_at_g": rounded(held.likely.thrown_at),
        "lifts_at_g": rounded(held.lifts_at),
        "drop_on_its_edge_m": rounded(held.drop),
        "press_n": rounded(held.press),
        "tips_outwards_n": rounded(held.tips_outwards),
        "tips_inwards_n": held.tips_inwards.map(rounded),
        "mass_g": rounded(held.build.mass),
    })
}

/// Every pair of the shelf, tried for the wheel that is hardest to hold; best first.
pub fn chooser_report(looked: &Looked, workshop: &Workshop) -> Value {
    let all = magnets::choose(looked, workshop);
    let one = |one: &Candidate| {
        json!({
            "cover": one.cover.name,
            "wheel": one.wheel.name,
            "does": one.choice == Choice::Does,
            "why_not": match &one.choice { Choice::Does => None, Choice::Fails(why) => Some(why) },
            "cover_pocket_mm": rounded(one.depths.0),
            "wheel_pocket_mm": rounded(one.depths.1),
            "may_be_shallower_mm": rounded(one.band.0),
            "may_be_deeper_mm": rounded(one.band.1),
            "pull_n": rounded(one.likely.pull),
            "effort_n": rounded(one.likely.effort),
            "drift_mm": one.likely.drift.map(rounded),
            "price_of_a_pair": one.price,
        })
    };
    all.iter().map(one).collect()
}

/// The map as figures: one row for each depth of the cover's pocket, one column for each of the wheel's.
pub fn map_report(looked: &Looked, workshop: &Workshop) -> Value {
    let Some((wheel, map)) = magnets::map_of_hardest(looked, workshop) else {
        return Value::Null;
    };
    let grid = |of: &dyn Fn(usize, usize) -> Value| -> Vec<Vec<Value>> {
        (0..map.cover.len()).map(|i| (0..map.wheel.len()).map(|j| of(i, j)).collect()).collect()
    };
    let figure = |of: fn(&magnets::Likely) -> Option<f64>| {
        grid(&|i, j| map.cells[i][j].as_ref().and_then(of).map_or(Value::Null, rounded))
    };
    let Map { cover, wheel: depths, deepest, point, within, .. } = &map;
    json!({
        "wheel": looked.laid.dial.wheels[wheel].name,
        "cover_pocket_mm": cover.iter().map(|one| rounded(*one)).collect::<Vec<_>>(),
        "wheel_pocket_mm": depths.iter().map(|one| rounded(*one)).collect::<Vec<_>>(),
        "design_mm": [rounded(point.0), rounded(point.1)],
        "within_mm": rounded(*within),
        "deepest_mm": [rounded(deepest.0), rounded(deepest.1)],
        "effort_n": figure(|one| Some(one.effort)),
        "drift_mm": figure(|one| one.drift),
        "thrown_at_g": figure(|one| Some(one.thrown_at)),
        "good": grid(&|i, j| json!(map.good(i, j))),
    })
}
