//! From what the maker asked to the assembled dial: the smallest wheel on which every mark stands
//! whole and alone in its window, then windows, notches, cover and art, with every clearance.
//!
//! The order is the order of the folder: marks, window, wheel, places, cover with its notches, art.

mod art;
mod cover;
mod marks;
mod notch;
mod places;
pub(crate) mod seat;
mod size;
mod wheel;
mod window;

use crate::assembled::{Asked, Cover, Dial, Mark, Wheel};
use crate::design::{Design, TurnOver};
use crate::spans::Mistake;
use marks::Inscribed;
use outline::{Axis, Motion, Vec2};
use places::Place;
pub(crate) use places::next_from;
pub use size::{Driver, Sizing, Smaller};
use wheel::Fitted;
use wheel::MARK_TO_POCKET;
pub(crate) use wheel::WINDOW_TO_POCKET;

/// An assembled dial, and what drove its size.
#[derive(Clone, Debug)]
pub struct Laid {
    /// The dial.
    pub dial: Dial,
    /// One for each wheel whose size was derived.
    pub sizing: Vec<Sizing>,
}

/// Lays out a dial.
///
/// # Errors
/// What cannot be drawn at all: a character that the font does not have, a polygon that crosses itself.
/// Whatever can be drawn is drawn, however poor; the findings say so.
pub fn assemble(design: &Design) -> Result<Laid, Vec<Mistake>> {
    let inscribed = marks::inscribe_all(design)?;
    let kind = cover::kind(design);
    let directions = places::directions(design, kind, &inscribed);
    let fitted = wheel::fit_all(design, &inscribed, &directions);
    let places = places::place(design, kind, &directions, &fitted);
    let outline = cover::outline(design, kind, &places)?;
    let notches = notch::all(design, &outline, &places)?;
    let plate = cover::plate(design, &outline, &notches);
    let sizing = size::explain(design, &inscribed, &directions, &fitted);
    let wheels = assemble_wheels(design, inscribed, &fitted, &places, notches);
    let art = art::all(design, &plate, &wheels)?;
    let turn_axis = match design.turn_over {
        TurnOver::Sideways => Axis::vertical(0.0),
        TurnOver::Endways => Axis::horizontal(0.0),
    };
    let cover = Cover {
        stock: design.cover.stock.clone(),
        outline,
        plate,
        art,
        engrave_depth: design.cover.engrave_depth,
        edge: design.cover.edge,
    };
    let dial = Dial {
        name: design.name.clone(),
        show: design.show,
        cover,
        wheels,
        turn_axis,
        gauges: design.gauges,
        reading: design.reading.clone(),
        spares: design.magnet.spares,
    };
    Ok(Laid { dial, sizing })
}

fn assemble_wheels(
    design: &Design,
    inscribed: Vec<Vec<Inscribed>>,
    fitted: &[Fitted],
    places: &[Place],
    notches: Vec<crate::assembled::Notch>,
) -> Vec<Wheel> {
    let parts = design.counters.iter().zip(inscribed).zip(fitted).zip(places).zip(notches);
    parts
        .map(|((((counter, inscribed), fit), place), notch)| {
            let window = fit.window.built(place.centre, place.window_angle, fit.distance);
            let counts_up = places::sense(counter.running, place.window_angle);
            let pockets = seat::pockets(design, place.centre);
            let stops = inscribed.len();
            let mut wheel = Wheel {
                name: counter.name.clone(),
                stock: design.wheel_stock.clone(),
                centre: place.centre,
                radius: fit.radius,
                rim_kind: fit.rim,
                rim: wheel::rim(place.centre, fit.radius, fit.rim),
                marks: Vec::new(),
                mark_depth: counter.mark.depth,
                weight: counter.mark.weight,
                asked: Asked {
                    height: counter.mark.height,
                    margin: counter.mark.margin,
                    clear: counter.mark.clear,
                    neighbours: window::neighbours_share(&counter.window),
                    running: counter.running,
                },
                counts_up,
                window,
                notch,
                seat: seat::seat(design, &pockets),
                clicks: None,
                cover_pocket: pockets.0,
                pocket: pockets.1,
            };
            wheel.marks = lay_marks(&wheel, inscribed);
            wheel.clicks = seat::clicks(design, place.centre, place.window_angle, stops, free_radius(&wheel));
            wheel
        })
        .collect()
}

/// Radius about a wheel's middle within which a pocket keeps clear of its marks, and is never seen in its window.
pub(crate) fn free_radius(wheel: &Wheel) -> f64 {
    let loops = wheel.marks.iter().flat_map(|mark| mark.shape.loops());
    let marks = loops.map(|one| one.nearest_to(wheel.centre)).fold(f64::INFINITY, f64::min);
    (marks - MARK_TO_POCKET).min(wheel.window.edge.nearest_to(wheel.centre) - wheel.asked.clear)
}

/// Lays each mark on the wheel such that it stands upright in the window when its stop is turned there:
/// a mark is placed once, by the window that will show it.
fn lay_marks(wheel: &Wheel, inscribed: Vec<Inscribed>) -> Vec<Mark> {
    let stops = inscribed.len() as f64;
    let to_window = Motion::shift(wheel.window.centre.to_vec2());
    inscribed
        .into_iter()
        .enumerate()
        .map(|(k, mark)| {
            let back = -wheel.counts_up.sign() * std::f64::consts::TAU * k as f64 / stops;
            let lay = to_window.then(&Motion::turn(wheel.centre, back));
            Mark {
                motif: mark.motif,
                words: mark.words,
                shape: mark.shape.moved(&lay),
                up: lay.apply_vec(Vec2::new(0.0, 1.0)),
                told_apart: mark.told_apart,
            }
        })
        .collect()
}
