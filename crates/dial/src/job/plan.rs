//! From the assembled dial to the job.

use super::gauges::gauges;
use super::rows::{self, BORDER};
use super::turn_over::turned_over;
use super::{Job, JobError, Placed, Setup, Sheet, Step, StepKind, TurnedPart, Work};
use crate::assembled::{Dial, Pocket, Wheel};
use outline::{Curve, KerfSide, Motion, Point, Shape, Vec2, compensated};
use process::{Stock, Workshop};

/// Least distance between two parts on a sheet, so that the web between them stays flat until both are cut (common practice).
const GAP: f64 = 3.0;

/// Distance between two parts on a sheet.
pub(crate) fn between_parts(stock: &Stock) -> f64 {
    GAP.max(stock.thickness())
}

/// How much smaller than its ledge a cap is, all round (our own proposal: it is held by glue, not by force).
const CAP_PLAY: f64 = 0.1;

/// One part, in assembled coordinates, with all that is done to it.
pub(super) struct Part<'a> {
    pub(super) name: String,
    pub(super) stock: &'a Stock,
    pub(super) outline: Shape,
    pub(super) inside: Vec<Shape>,
    pub(super) face: Vec<(Shape, f64)>,
    pub(super) face_pockets: Vec<Pocket>,
    /// Taken down on the back, beside pockets.
    pub(super) back: Vec<(Shape, f64)>,
    pub(super) back_pockets: Vec<Pocket>,
}

/// Plans the job: parts grouped by stock, set in rows on sheets no larger than the bed, each sheet with its setups.
///
/// # Errors
/// A part that does not fit the bed, or an opening that is narrower than the kerf.
pub fn plan(dial: &Dial, workshop: &Workshop) -> Result<Job, Vec<JobError>> {
    let parts = parts_of(dial);
    let mut stocks: Vec<&Stock> = Vec::new();
    for part in &parts {
        if !stocks.contains(&part.stock) {
            stocks.push(part.stock);
        }
    }
    let (mut sheets, mut errors) = (Vec::new(), Vec::new());
    let mut setups = 0;
    for stock in stocks {
        let same: Vec<&Part> = parts.iter().filter(|part| part.stock == stock).collect();
        match sheets_of(dial, &same, workshop, sheets.len(), &mut setups) {
            Ok(more) => sheets.extend(more),
            Err(more) => errors.extend(more),
        }
    }
    if errors.is_empty() { Ok(Job { sheets }) } else { Err(errors) }
}

fn parts_of(dial: &Dial) -> Vec<Part<'_>> {
    let clicks = |of: fn(&crate::assembled::ClickRing) -> &Vec<Pocket>| {
        dial.wheels.iter().filter_map(|wheel| wheel.clicks.as_ref()).flat_map(of).copied()
    };
    let cover = Part {
        name: "cover".into(),
        stock: &dial.cover.stock,
        outline: dial.cover.plate.clone(),
        inside: dial.wheels.iter().map(|wheel| Shape::from(wheel.window.edge.clone())).collect(),
        face: dial.cover.art.iter().map(|art| (art.shape.clone(), dial.cover.engrave_depth)).collect(),
        face_pockets: Vec::new(),
        back: round_standing_rings(dial).into_iter().collect(),
        back_pockets: dial.wheels.iter().map(|wheel| wheel.cover_pocket).chain(clicks(|ring| &ring.cover)).collect(),
    };
    let wheels = dial.wheels.iter().map(|wheel| Part {
        name: format!("wheel {}", wheel.name),
        stock: &wheel.stock,
        outline: Shape::from(wheel.rim.clone()),
        inside: Vec::new(),
        face: wheel.marks.iter().map(|mark| (mark.shape.clone(), wheel.mark_depth)).collect(),
        face_pockets: wheel
            .clicks
            .iter()
            .flat_map(|ring| &ring.wheel)
            .chain(std::iter::once(&wheel.pocket))
            .copied()
            .collect(),
        back: Vec::new(),
        back_pockets: Vec::new(),
    });
    std::iter::once(cover).chain(wheels).chain(thin_parts(dial)).chain(gauges(dial)).collect()
}

/// The cover's back round rings that are left standing, as far as the wheels reach; as one area, since what the beam clears twice gets
/// deeper.
fn round_standing_rings(dial: &Dial) -> Option<(Shape, f64)> {
    let standing = |wheel: &Wheel| wheel.seat.ring.clone().filter(|ring| ring.washer.is_none());
    let rings: Vec<_> = dial.wheels.iter().filter_map(|wheel| Some((wheel, standing(wheel)?))).collect();
    let disc = |wheel: &Wheel, radius: f64| Shape::from(Curve::circle(wheel.centre, radius));
    // A beam's breadth beyond the rim, so that a wheel pushed aside still runs free.
    let under = rings.iter().map(|(wheel, _)| disc(wheel, wheel.radius + 1.0)).reduce(|all, one| all.united(&one))?;
    let under = under.common(&dial.cover.plate);
    let round = rings.iter().fold(under, |under, (wheel, ring)| under.minus(&disc(wheel, ring.outer)));
    Some((round, rings[0].1.height))
}

/// Washers and caps, cut from thin stock of their own.
fn thin_parts(dial: &Dial) -> Vec<Part<'_>> {
    let thin = |name: String, stock, outer: f64, inner: Option<f64>| Part {
        name,
        stock,
        outline: Shape::from(Curve::circle(Point::ZERO, outer)),
        inside: inner.map(|inner| Shape::from(Curve::circle(Point::ZERO, inner))).into_iter().collect(),
        face: Vec::new(),
        face_pockets: Vec::new(),
        back: Vec::new(),
        back_pockets: Vec::new(),
    };
    let mut parts = Vec::new();
    for wheel in &dial.wheels {
        if let Some((ring, washer)) = wheel.seat.ring.as_ref().and_then(|ring| Some((ring, ring.washer.as_ref()?))) {
            parts.push(thin(format!("washer {}", wheel.name), washer, ring.outer, Some(ring.inner)));
        }
        for (pocket, side) in [(&wheel.cover_pocket, "cover"), (&wheel.pocket, "wheel")] {
            if let Some((cap, ledge)) = wheel.seat.cap.as_ref().zip(pocket.ledge) {
                // A cap drops into its ledge with a little play.
                parts.push(thin(format!("cap {side} {}", wheel.name), cap, ledge.radius - CAP_PLAY, None));
            }
        }
    }
    parts
}

fn sheets_of(
    dial: &Dial,
    parts: &[&Part],
    workshop: &Workshop,
    sheets_before: usize,
    setups: &mut usize,
) -> Result<Vec<Sheet>, Vec<JobError>> {
    let Some(stock) = parts.first().map(|part| part.stock) else {
        return Ok(Vec::new());
    };
    let half_kerf = (stock.kerf.x / 2.0, stock.kerf.y / 2.0);
    let bed = (workshop.machine.bed_width, workshop.machine.bed_height);
    let boxes: Vec<_> = parts.iter().map(|part| part.outline.bounds().inflate(half_kerf.0, half_kerf.1)).collect();
    let gap = between_parts(stock);
    let seats = rows::seats(&boxes, gap, bed).map_err(|i| {
        let needs = (boxes[i].width() + 2.0 * BORDER, boxes[i].height() + 2.0 * BORDER);
        vec![JobError::TooLarge { part: parts[i].name.clone(), needs, bed }]
    })?;
    let count = seats.last().map_or(0, |seat| seat.sheet + 1);
    let (mut sheets, mut errors) = (Vec::new(), Vec::new());
    for index in 0..count {
        let here: Vec<(&Part, Vec2)> = parts
            .iter()
            .zip(&seats)
            .filter(|(_, seat)| seat.sheet == index)
            .map(|(part, seat)| (*part, seat.shift))
            .collect();
        match sheet(dial, &here, sheets_before + index + 1, half_kerf, setups) {
            Ok(sheet) => sheets.push(sheet),
            Err(more) => errors.extend(more),
        }
    }
    if errors.is_empty() { Ok(sheets) } else { Err(errors) }
}

fn sheet(
    dial: &Dial,
    parts: &[(&Part, Vec2)],
    number: usize,
    half_kerf: (f64, f64),
    setups: &mut usize,
) -> Result<Sheet, Vec<JobError>> {
    let placed: Vec<Placed> = parts
        .iter()
        .map(|(part, shift)| Placed {
            name: part.name.clone(),
            at: outline::Point::ZERO + *shift + part.outline.bounds().center().to_vec2(),
            outline: part.outline.moved(&Motion::shift(*shift)),
        })
        .collect();
    let around = placed
        .iter()
        .map(|part| part.outline.bounds().inflate(half_kerf.0, half_kerf.1))
        .reduce(|all, one| all.union(one))
        .unwrap_or_default();
    let mut list = vec![face_up(parts, half_kerf, setups)?];
    list.extend(turned(dial, parts, setups));
    let stock = parts[0].0.stock.clone();
    Ok(Sheet { number, stock, width: around.x1 + BORDER, height: around.y1 + BORDER, parts: placed, setups: list })
}

/// The first setup: everything on the faces, then the cuts, inside ones before outside ones.
fn face_up(parts: &[(&Part, Vec2)], half_kerf: (f64, f64), setups: &mut usize) -> Result<Setup, Vec<JobError>> {
    let mut engrave = Vec::new();
    let mut pockets = Vec::new();
    let (mut inside, mut outside, mut errors) = (Vec::new(), Vec::new(), Vec::new());
    for (part, shift) in parts {
        let lay = Motion::shift(*shift);
        engrave.extend(part.face.iter().map(|(shape, depth)| area(part, shape.moved(&lay), *depth)));
        for (shape, depth) in part.face_pockets.iter().flat_map(hollows) {
            pockets.push(area(part, shape.moved(&lay), depth));
        }
        let mut cut = |shape: &Shape, side, into: &mut Vec<Work>| match compensated(
            &shape.moved(&lay),
            side,
            half_kerf.0,
            half_kerf.1,
        ) {
            Ok(paths) if !paths.is_empty() => {
                into.extend(paths.into_iter().map(|path| Work::Path { part: part.name.clone(), path }));
            }
            Ok(_) => errors.push(JobError::Kerf { part: part.name.clone(), why: outline::OutlineError::Vanished }),
            Err(why) => errors.push(JobError::Kerf { part: part.name.clone(), why }),
        };
        for opening in &part.inside {
            cut(opening, KerfSide::KeepOutside, &mut inside);
        }
        cut(&part.outline, KerfSide::KeepInside, &mut outside);
    }
    if !errors.is_empty() {
        return Err(errors);
    }
    *setups += 1;
    let steps = [
        (StepKind::Engrave, engrave),
        (StepKind::Pocket, pockets),
        (StepKind::CutInside, inside),
        (StepKind::CutOutside, outside),
    ];
    Ok(Setup { number: *setups, turned: Vec::new(), steps: steps_of(steps) })
}

/// The second setup, if any part has work on its back: each such part turned over in its own hole.
fn turned(dial: &Dial, parts: &[(&Part, Vec2)], setups: &mut usize) -> Option<Setup> {
    let mut turned = Vec::new();
    let mut pockets = Vec::new();
    for (part, shift) in parts.iter().filter(|(part, _)| !part.back_pockets.is_empty()) {
        let lay = Motion::shift(*shift);
        let (over, axis) = turned_over(dial, outline::Point::ZERO + *shift);
        turned.push(TurnedPart { name: part.name.clone(), axis, hole: part.outline.moved(&lay) });
        for (shape, depth) in part.back.iter().cloned().chain(part.back_pockets.iter().flat_map(hollows)) {
            pockets.push(area(part, shape.moved(&lay).moved(&over), depth));
        }
    }
    if turned.is_empty() {
        return None;
    }
    *setups += 1;
    Some(Setup { number: *setups, turned, steps: steps_of([(StepKind::Pocket, pockets)]) })
}

/// Steps with something to do; areas of different depths are steps of their own, the shallowest first.
fn steps_of<const N: usize>(steps: [(StepKind, Vec<Work>); N]) -> Vec<Step> {
    let mut all = Vec::new();
    for (kind, work) in steps {
        let mut depths: Vec<f64> = work.iter().map(depth_of).collect();
        depths.sort_by(f64::total_cmp);
        depths.dedup();
        for depth in depths {
            let work = work.iter().filter(|one| depth_of(one) == depth).cloned().collect();
            all.push(Step { kind, work });
        }
    }
    all
}

/// Depth of an area; a cut goes right through.
fn depth_of(work: &Work) -> f64 {
    match work {
        Work::Area { depth, .. } => *depth,
        Work::Path { .. } => f64::INFINITY,
    }
}

fn area(part: &Part, shape: Shape, depth: f64) -> Work {
    Work::Area { part: part.name.clone(), shape, depth }
}

/// All that a pocket takes out: its disc, and the ledge for its cap as a ring about it, since what the beam clears twice gets deeper.
fn hollows(pocket: &Pocket) -> Vec<(Shape, f64)> {
    let disc = |radius: f64| Shape::from(Curve::circle(pocket.centre, radius));
    let ledge = pocket.ledge.map(|ledge| (disc(ledge.radius).minus(&disc(pocket.radius)), ledge.depth));
    ledge.into_iter().chain(std::iter::once((disc(pocket.radius), pocket.depth))).collect()
}
