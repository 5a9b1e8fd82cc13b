//! From the assembled dial to the job.

use super::rows::{self, BORDER};
use super::turn_over::turned_over;
use super::{Job, JobError, Placed, Setup, Sheet, Step, StepKind, TurnedPart, Work};
use crate::assembled::{Dial, Pocket};
use outline::{Curve, KerfSide, Motion, Shape, Vec2, compensated};
use process::{Stock, Workshop};

/// Least distance between two parts on a sheet, so that the web between them stays flat until both are cut (common practice).
const GAP: f64 = 3.0;

/// One part, in assembled coordinates, with all that is done to it.
struct Part<'a> {
    name: String,
    stock: &'a Stock,
    outline: Shape,
    inside: Vec<Shape>,
    face: Vec<(Shape, f64)>,
    face_pockets: Vec<Pocket>,
    back_pockets: Vec<Pocket>,
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
    let cover = Part {
        name: "cover".into(),
        stock: &dial.cover.stock,
        outline: dial.cover.plate.clone(),
        inside: dial.wheels.iter().map(|wheel| Shape::from(wheel.window.edge.clone())).collect(),
        face: dial.cover.art.iter().map(|art| (art.shape.clone(), dial.cover.engrave_depth)).collect(),
        face_pockets: Vec::new(),
        back_pockets: dial.wheels.iter().map(|wheel| wheel.cover_pocket).collect(),
    };
    let wheels = dial.wheels.iter().map(|wheel| Part {
        name: format!("wheel {}", wheel.name),
        stock: &wheel.stock,
        outline: Shape::from(wheel.rim.clone()),
        inside: Vec::new(),
        face: wheel.marks.iter().map(|mark| (mark.shape.clone(), wheel.mark_depth)).collect(),
        face_pockets: vec![wheel.pocket],
        back_pockets: Vec::new(),
    });
    std::iter::once(cover).chain(wheels).collect()
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
    let gap = GAP.max(stock.thickness());
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
        pockets.extend(part.face_pockets.iter().map(|pocket| area(part, disc(pocket).moved(&lay), pocket.depth)));
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
        pockets.extend(
            part.back_pockets.iter().map(|pocket| area(part, disc(pocket).moved(&lay).moved(&over), pocket.depth)),
        );
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

fn disc(pocket: &Pocket) -> Shape {
    Shape::from(Curve::circle(pocket.centre, pocket.radius))
}
