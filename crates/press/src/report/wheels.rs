//! Cover and wheels.

use super::number::{Place, degrees, place, rounded};
use dial::assembled::{Cover, Pocket, Sense, Wheel};
use dial::layout::{Driver, Laid, Sizing};
use schemars::JsonSchema;
use serde::Serialize;

/// The plate on top.
#[derive(Serialize, JsonSchema)]
pub(super) struct CoverReport {
    /// Name of its stock.
    stock: String,
    thickness_mm: f64,
    width_mm: Option<f64>,
    height_mm: Option<f64>,
    /// Area of the plate with its notches taken out.
    area_mm2: Option<f64>,
    perimeter_mm: Option<f64>,
}

/// One wheel with its window, notch and pockets.
#[derive(Serialize, JsonSchema)]
pub(super) struct WheelReport {
    /// Name of its counter.
    name: String,
    /// Name of its stock.
    stock: String,
    centre: Place,
    /// Over the rim.
    radius_mm: Option<f64>,
    stops: usize,
    /// The marks in counting order, in words.
    marks: Vec<String>,
    mark_height_mm: f64,
    /// Which way it turns to count up, seen from the front.
    counts_up: &'static str,
    /// What decided its size.
    sizing: Option<SizingReport>,
    window: WindowReport,
    notch: NotchReport,
    /// The pocket in its face.
    pocket: PocketReport,
    /// The pocket opposite, in the cover's back.
    cover_pocket: PocketReport,
}

/// What decided a wheel's size.
#[derive(Serialize, JsonSchema)]
struct SizingReport {
    diameter_mm: Option<f64>,
    because: &'static str,
    /// What smaller marks would need.
    smaller_marks: Option<SmallerReport>,
}

/// What smaller marks would need.
#[derive(Serialize, JsonSchema)]
struct SmallerReport {
    mark_height_mm: f64,
    diameter_mm: Option<f64>,
}

/// The opening that shows one stop.
#[derive(Serialize, JsonSchema)]
struct WindowReport {
    centre: Place,
    /// Direction from the wheel's middle, anticlockwise from 3 o'clock.
    angle_deg: Option<f64>,
    /// From the wheel's middle.
    distance_mm: Option<f64>,
    width_mm: Option<f64>,
    height_mm: Option<f64>,
    corner_mm: Option<f64>,
}

/// The finger cut-out.
#[derive(Serialize, JsonSchema)]
struct NotchReport {
    /// Where the cover's edge would be.
    mouth: Place,
    angle_deg: Option<f64>,
    width_mm: Option<f64>,
    depth_mm: Option<f64>,
    /// Unit vector of the push that counts up, right and up.
    push_up: [Option<f64>; 2],
}

/// A recess for a magnet.
#[derive(Serialize, JsonSchema)]
struct PocketReport {
    centre: Place,
    diameter_mm: Option<f64>,
    depth_mm: Option<f64>,
    /// Diameter and depth of the ledge for its cap.
    ledge: Option<LedgeReport>,
}

/// A ledge for a cap.
#[derive(Serialize, JsonSchema)]
struct LedgeReport {
    diameter_mm: Option<f64>,
    depth_mm: Option<f64>,
}

impl CoverReport {
    pub(super) fn of(cover: &Cover) -> CoverReport {
        let plate = cover.plate.bounds();
        CoverReport {
            stock: cover.stock.name.clone(),
            thickness_mm: cover.stock.thickness(),
            width_mm: rounded(plate.width()),
            height_mm: rounded(plate.height()),
            area_mm2: rounded(cover.plate.area()),
            perimeter_mm: rounded(cover.plate.perimeter()),
        }
    }
}

impl WheelReport {
    pub(super) fn all(laid: &Laid) -> Vec<WheelReport> {
        let size = |i: usize| laid.sizing.iter().find(|size| size.wheel == i);
        laid.dial.wheels.iter().enumerate().map(|(i, wheel)| WheelReport::of(wheel, size(i))).collect()
    }

    fn of(wheel: &Wheel, size: Option<&Sizing>) -> WheelReport {
        WheelReport {
            name: wheel.name.clone(),
            stock: wheel.stock.name.clone(),
            centre: place(wheel.centre),
            radius_mm: rounded(wheel.radius),
            stops: wheel.marks.len(),
            marks: wheel.marks.iter().map(|mark| mark.words.clone()).collect(),
            mark_height_mm: wheel.asked.height,
            counts_up: match wheel.counts_up {
                Sense::Clockwise => "clockwise",
                Sense::Anticlockwise => "anticlockwise",
            },
            sizing: size.map(SizingReport::of),
            window: WindowReport {
                centre: place(wheel.window.centre),
                angle_deg: degrees(wheel.window.angle),
                distance_mm: rounded(wheel.window.distance),
                width_mm: rounded(wheel.window.width),
                height_mm: rounded(wheel.window.height),
                corner_mm: rounded(wheel.window.corner),
            },
            notch: NotchReport {
                mouth: place(wheel.notch.mouth),
                angle_deg: degrees(wheel.notch.angle),
                width_mm: rounded(wheel.notch.width),
                depth_mm: rounded(wheel.notch.depth),
                push_up: [rounded(wheel.notch.push_up.x), rounded(wheel.notch.push_up.y)],
            },
            pocket: PocketReport::of(&wheel.pocket),
            cover_pocket: PocketReport::of(&wheel.cover_pocket),
        }
    }
}

impl SizingReport {
    fn of(size: &Sizing) -> SizingReport {
        SizingReport {
            diameter_mm: rounded(size.diameter),
            because: match size.driver {
                Driver::Neighbours { .. } => "neighbours",
                Driver::Pocket => "marks clear of the pocket",
                Driver::WindowPocket => "window clear of the pocket",
                Driver::Asked => "asked",
                Driver::SameSize(_) => "same size as the largest",
            },
            smaller_marks: size
                .smaller
                .map(|small| SmallerReport { mark_height_mm: small.height, diameter_mm: rounded(small.diameter) }),
        }
    }
}

impl PocketReport {
    fn of(pocket: &Pocket) -> PocketReport {
        PocketReport {
            centre: place(pocket.centre),
            diameter_mm: rounded(2.0 * pocket.radius),
            depth_mm: rounded(pocket.depth),
            ledge: pocket
                .ledge
                .map(|ledge| LedgeReport { diameter_mm: rounded(2.0 * ledge.radius), depth_mm: rounded(ledge.depth) }),
        }
    }
}
