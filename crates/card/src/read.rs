//! The way from a photo to a reading.

use kurbo::{Point, Rect, Vec2};

use crate::alarm;
use crate::light::{Field, rms};
use crate::locate::{Located, locate};
use crate::patch::{Decoded, Patch, luminance};
use crate::photo::Photo;
use crate::plan::CardPlan;
use crate::reading::{Outlines, Print, Reading, Step};
use crate::refused::{Place, Refused, Why};
use crate::settle;
use crate::surface::{self, Doubt, Seen};

/// Pixels to a mm that are needed: a patch then has some hundreds of them.
pub(crate) const LEAST_SCALE: f64 = 2.5;
/// Largest tilt, in degrees: beyond it plates hide their own edges and gloss begins.
pub(crate) const MOST_TILT: f64 = 42.0;
/// Widest edge, in mm: a patch is read 2 mm inside its own, and must not see its neighbour.
pub(crate) const MOST_BLUR: f64 = 1.3;
/// Left out of a patch at its edges, in mm.
const RIM: f64 = 1.0;
/// Left out of a patch of the sample, in mm: it may lie aside.
const SAMPLE_RIM: f64 = 2.0;
/// Share of pixels of a patch that may be clipped.
const MOST_CLIPPED: f64 = 0.02;
/// Light of white, linear, below which a photo is too dark to measure in.
const LEAST_WHITE: f64 = 0.06;
/// How much the faces of the steps may differ, as a share of their mean: wood does by some percent.
const MOST_FACE_OFF: f64 = 0.15;
/// Contrast below which nothing was engraved.
const NOTHING: f64 = 1.04;

/// Reads a photo given as the bytes of a JPEG or PNG.
pub fn read(bytes: &[u8], plan: &CardPlan, print: &Print) -> Result<Reading, Refused> {
    read_photo(&Photo::decode(bytes)?, plan, print)
}

/// Reads a photo: find the card, judge sharpness, exposure and light, measure the steps.
pub fn read_photo(photo: &Photo, plan: &CardPlan, print: &Print) -> Result<Reading, Refused> {
    let located = locate(photo, plan)?;
    let shift = settle::shift(photo, &located.plane, plan);
    let outlines = Outlines::of(&located, plan, shift);
    measure(photo, plan, print, &located, shift, outlines.clone())
        .map_err(|why| Refused { why, found: Box::new(outlines) })
}

fn measure(
    photo: &Photo,
    plan: &CardPlan,
    print: &Print,
    located: &Located,
    shift: Vec2,
    outlines: Outlines,
) -> Result<Reading, Why> {
    let edge = located.sharpness(photo, plan);
    if edge > MOST_BLUR {
        return Err(Why::Blurred { edge });
    }
    let decoded = Decoded::new();
    let see = |rect: Rect, rim: f64| (rect.center(), decoded.patch(photo, &located.plane, rect.inset(-rim)));
    let whites: Vec<_> = plan.whites.iter().map(|white| see(*white, RIM)).collect();
    let blacks: Vec<_> = plan.blacks.iter().map(|black| see(*black, 1.5 * RIM)).collect();
    let cores: Vec<[Rect; 2]> = plan
        .sample
        .steps
        .iter()
        .map(|step| [step.face, step.engraved].map(|patch| patch.inset(-SAMPLE_RIM) + shift))
        .collect();
    let patches: Vec<_> = cores.iter().map(|both| both.map(|core| see(core, 0.0))).collect();
    exposed(plan, &whites, &blacks, &patches)?;

    let middle = |range: measure::Interval| (range.low + range.high) / 2.0;
    let ink_to_paper = middle(print.ink) / middle(print.paper);
    let field = Field::fit(plan.size, &whites, &blacks, ink_to_paper).ok_or(Why::NoCard)?;
    alarm::look(photo, &decoded, &located.plane, plan, &field, [&whites, &blacks])?;
    alarm::look_at_sample(photo, &decoded, &located.plane, &field, &cores)?;

    let doubt = Doubt { white: rms(&field.white_off).max(0.003), stray: rms(&field.black_off).max(0.0005) };
    let seen = |(place, patch): (Point, Patch)| Seen { patch, white: field.white(place), stray: field.stray(place) };
    let steps: Vec<Step> = patches
        .iter()
        .map(|patches| {
            let [face, engraved] = patches.map(seen);
            surface::step([&face, &engraved], print, &doubt)
        })
        .collect();
    same_face(&steps)?;
    let best = (0..steps.len()).max_by(|&a, &b| steps[a].contrast.value.total_cmp(&steps[b].contrast.value));
    let best = best.filter(|best| steps[*best].contrast.value > NOTHING).ok_or(Why::NoSample)?;
    let light: Vec<f64> = whites.iter().map(|(_, patch)| patch.luminance()).collect();
    let (least, most) = light.iter().fold((f64::MAX, 0.0_f64), |(l, m), v| (l.min(*v), m.max(*v)));
    Ok(Reading {
        steps,
        best,
        px_per_mm: located.scale,
        tilt: located.tilt,
        edge,
        unevenness: most / least - 1.0,
        roughness: rms(&field.white_off),
        stray: luminance(field.stray(Rect::from_origin_size(Point::ORIGIN, plan.size).center())),
        shift,
        outlines,
    })
}

/// Whether no patch ran out of the camera's scale.
fn exposed(
    plan: &CardPlan,
    whites: &[(Point, Patch)],
    blacks: &[(Point, Patch)],
    sample: &[[(Point, Patch); 2]],
) -> Result<(), Why> {
    let place = |p: Point| Place::of(p, plan.size);
    let on_card = whites.iter().chain(blacks).map(|(p, patch)| (place(*p), patch));
    let all: Vec<_> = on_card.chain(sample.iter().flatten().map(|(_, patch)| (Place::Sample, patch))).collect();
    if let Some((place, _)) = all.iter().find(|(_, patch)| patch.bright > MOST_CLIPPED) {
        return Err(Why::TooBright(*place));
    }
    let dark = all.iter().find(|(_, patch)| patch.dark > MOST_CLIPPED || patch.count == 0).map(|(place, _)| *place);
    let dim = whites.iter().find(|(_, white)| white.luminance() < LEAST_WHITE).map(|(p, _)| place(*p));
    dark.or(dim).map_or(Ok(()), |place| Err(Why::TooDark(place)))
}

/// Whether the faces of all steps look alike, as those of one material do.
fn same_face(steps: &[Step]) -> Result<(), Why> {
    let face = |step: &Step| step.face.reflectance.value;
    let mut faces: Vec<f64> = steps.iter().map(face).collect();
    faces.sort_by(f64::total_cmp);
    let middle = faces[faces.len() / 2];
    let off = |step: &Step| (face(step) - middle).abs() / middle.max(0.02);
    let worst = (0..steps.len()).max_by(|&a, &b| off(&steps[a]).total_cmp(&off(&steps[b]))).unwrap_or(0);
    let percent = 100.0 * off(&steps[worst]);
    if percent > 100.0 * MOST_FACE_OFF { Err(Why::UnevenSample { step: worst + 1, percent }) } else { Ok(()) }
}
