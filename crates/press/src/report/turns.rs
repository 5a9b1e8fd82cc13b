//! The turn test.

use super::number::{degrees, rounded};
use dial::turning::{Fault, Other, Stop, TurnTest};
use schemars::JsonSchema;
use serde::Serialize;

/// Every stop of every wheel in its window.
#[derive(Serialize, JsonSchema)]
pub(super) struct TurnTestReport {
    /// Whether every stop passes.
    passes: bool,
    /// How far any wheel may be turned off any stop before something fails.
    slack_angle_deg: Option<f64>,
    /// How far any wheel may be pushed aside before something fails.
    slack_drift_mm: Option<f64>,
    wheels: Vec<TurnsReport>,
}

/// One wheel turned through all its stops.
#[derive(Serialize, JsonSchema)]
struct TurnsReport {
    name: String,
    /// Unit vector to the side of the window from which the next mark comes, right and up.
    next_mark_from: [Option<f64>; 2],
    stops: Vec<StopReport>,
}

/// One stop in its window.
#[derive(Serialize, JsonSchema)]
struct StopReport {
    /// The mark in words.
    mark: String,
    /// Share of the mark's area that is seen.
    seen_share: f64,
    /// From the mark to the window's edge; negative outside.
    margin_mm: Option<f64>,
    /// What else comes nearest to the window.
    nearest_other: OtherReport,
    other_distance_mm: Option<f64>,
    /// From upright.
    lean_deg: Option<f64>,
    /// Whether the next mark is the next of the sequence.
    in_order: bool,
    slack_angle_deg: Option<f64>,
    slack_drift_mm: Option<f64>,
    /// What fails.
    faults: Vec<&'static str>,
}

/// What should not be seen in a window: the mark of a stop, or a part.
#[derive(Serialize, JsonSchema)]
#[serde(untagged)]
enum OtherReport {
    /// The mark of another stop, by its index.
    Mark {
        /// The stop.
        mark_of_stop: usize,
    },
    /// "rim" or "pocket".
    Part(&'static str),
}

impl TurnTestReport {
    pub(super) fn of(turns: &TurnTest) -> TurnTestReport {
        let slack = turns.slack();
        let wheels = turns.wheels.iter().map(|wheel| TurnsReport {
            name: wheel.name.clone(),
            next_mark_from: [rounded(wheel.next_from.x), rounded(wheel.next_from.y)],
            stops: wheel.stops.iter().map(StopReport::of).collect(),
        });
        TurnTestReport {
            passes: turns.passes(),
            slack_angle_deg: degrees(slack.angle),
            slack_drift_mm: rounded(slack.drift),
            wheels: wheels.collect(),
        }
    }
}

impl StopReport {
    fn of(stop: &Stop) -> StopReport {
        StopReport {
            mark: stop.words.clone(),
            seen_share: stop.seen,
            margin_mm: rounded(stop.margin),
            nearest_other: match stop.other {
                Other::Mark(stop) => OtherReport::Mark { mark_of_stop: stop },
                Other::Rim => OtherReport::Part("rim"),
                Other::Pocket => OtherReport::Part("pocket"),
            },
            other_distance_mm: rounded(stop.other_distance),
            lean_deg: degrees(stop.lean),
            in_order: stop.in_order,
            slack_angle_deg: degrees(stop.slack_angle),
            slack_drift_mm: rounded(stop.slack_drift),
            faults: stop.faults.iter().map(fault).collect(),
        }
    }
}

fn fault(fault: &Fault) -> &'static str {
    match fault {
        Fault::NotWhole => "not whole",
        Fault::Tight => "tight",
        Fault::NotAlone(_) => "not alone",
        Fault::Close(_) => "close",
        Fault::Leans => "leans",
        Fault::OutOfOrder => "out of order",
        Fault::NeighbourHidden => "neighbour hidden",
    }
}
