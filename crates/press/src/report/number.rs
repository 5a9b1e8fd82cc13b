//! Numbers of the report: to a tenth of a micron, since what lies below is noise of the arithmetic; `null` for what is no number.

use outline::Point;
use schemars::JsonSchema;
use serde::Serialize;

/// A place.
#[derive(Serialize, JsonSchema)]
pub(super) struct Place {
    /// To the right.
    x_mm: Option<f64>,
    /// Up.
    y_mm: Option<f64>,
}

/// A figure with what it may come out as; `null` where it is boundless.
#[derive(Serialize, JsonSchema)]
pub(super) struct Spread {
    /// The least.
    least: Option<f64>,
    /// What is likely.
    likely: Option<f64>,
    /// The most.
    most: Option<f64>,
}

pub(crate) fn rounded(value: f64) -> Option<f64> {
    value.is_finite().then(|| (value * 1e4).round() / 1e4 + 0.0)
}

pub(super) fn degrees(radians: f64) -> Option<f64> {
    rounded(radians.to_degrees())
}

pub(super) fn place(p: Point) -> Place {
    Place { x_mm: rounded(p.x), y_mm: rounded(p.y) }
}

pub(super) fn spread(range: dial::magnets::Range) -> Spread {
    Spread { least: rounded(range.low), likely: rounded(range.likely), most: rounded(range.high) }
}

pub(super) fn spread_degrees(range: dial::magnets::Range) -> Spread {
    Spread { least: degrees(range.low), likely: degrees(range.likely), most: degrees(range.high) }
}
