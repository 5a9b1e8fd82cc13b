//! Who can read the dial from where.

use super::rounded;
use dial::Looked;
use dial::assembled::Wheel;
use dial::looks::{Engraving, Reader, Seen, WheelLook};
use schemars::JsonSchema;
use serde::Serialize;
use sight::{ARCMIN, Acuity};

/// What can be read: engravings, readers, and what each sees in every window.
#[derive(Serialize, JsonSchema)]
pub(crate) struct ReadingReport {
    /// Who must read the dial, and from where.
    readers: Vec<ReaderReport>,
    /// How fine the readers' eyes are, as 20/40.
    eyesight: String,
    /// How the art on the cover stands out; null where it goes through.
    cover: Option<EngravingReport>,
    /// One for each wheel.
    wheels: Vec<WheelReadingReport>,
}

/// One who reads the dial, which lies flat on the table.
#[derive(Serialize, JsonSchema)]
struct ReaderReport {
    /// Who it is.
    name: String,
    /// From the dial along the table to below the eye.
    away_mm: Option<f64>,
    /// Height of the eye above the dial.
    eye_mm: Option<f64>,
    /// From the dial to the eye.
    distance_mm: Option<f64>,
    /// How steeply the reader looks down.
    elevation_deg: Option<f64>,
    /// Where the reader sits: 0 before the upright dial, anticlockwise from there, 180 across.
    azimuth_deg: Option<f64>,
    /// Height of a mark that looks 16 minutes of arc high from there, foreshortened.
    height_for_16_arcmin_mm: Option<f64>,
    /// Height of a mark that looks 20 minutes of arc high from there, foreshortened.
    height_for_20_arcmin_mm: Option<f64>,
    /// Width of the thinnest stroke that eyes can tell from there.
    critical_stroke_mm: CriticalStrokes,
}

/// Width of the thinnest stroke for eyes of several kinds, in mm.
#[derive(Serialize, JsonSchema)]
struct CriticalStrokes {
    /// For a normal eye.
    #[serde(rename = "20/20")]
    normal: Option<f64>,
    /// For an older reader.
    older: Option<f64>,
    /// For weak eyes.
    #[serde(rename = "20/40")]
    weak: Option<f64>,
    /// For the eyes that the dial file asks for.
    asked: Option<f64>,
}

/// How an engraving stands out from its face.
#[derive(Serialize, JsonSchema)]
struct EngravingReport {
    /// Colour of the face, as #rrggbb in sRGB.
    face: String,
    /// Colour of the floor that stands out least.
    engraved: String,
    /// Its depth.
    depth_mm: Option<f64>,
    /// Layer that this floor shows, counted from the face, the first being 1.
    layer: usize,
    /// Whether the floor may show another layer than it should.
    may_show_another_layer: bool,
    /// Contrast ratio, 1 to 21 (WCAG 2.2); never rounded up.
    ratio: f64,
    /// Least ratio that a measure of this very stock allows; null where colours are taken as said.
    measured_ratio_least: Option<f64>,
    /// Most ratio that it allows.
    measured_ratio_most: Option<f64>,
    /// Dark on light, or light on dark.
    polarity: String,
    /// Lightness L* of the face, 0 to 100.
    face_l_star: Option<f64>,
    /// Lightness L* of the floor, 0 to 100.
    engraved_l_star: Option<f64>,
    /// Colour difference of the two.
    ciede2000: Option<f64>,
}

/// What can be read of one wheel.
#[derive(Serialize, JsonSchema)]
struct WheelReadingReport {
    /// The wheel's name.
    wheel: String,
    /// How its marks stand out; null where they go through.
    engraving: Option<EngravingReport>,
    /// Height of its marks.
    height_mm: Option<f64>,
    /// Width of its thinnest stroke.
    stroke_mm: Option<f64>,
    /// That width over the height.
    stroke_to_height: Option<f64>,
    /// One for each reader.
    seen: Vec<SeenReport>,
}

/// What one reader sees of one wheel.
#[derive(Serialize, JsonSchema)]
struct SeenReport {
    /// How high its marks look, in minutes of arc.
    angle_arcmin: Option<f64>,
    /// From the cover's face down to the wheel's.
    edge_above_wheel_mm: Option<f64>,
    /// How much of the mark that is seen worst the cover's edge hides.
    hidden_mm: Option<f64>,
    /// Share of its height that is seen, 0 to 1.
    seen_height_share: f64,
    /// Share of its area that is seen, 0 to 1.
    seen_area_share: f64,
    /// Height of the window (diameter of a round one) that would hide nothing of any mark.
    window_for_all_mm: Option<f64>,
    /// Who sees it.
    reader: String,
    /// The mark that is seen worst.
    worst_mark: String,
}

impl ReadingReport {
    pub(crate) fn of(looked: &Looked) -> ReadingReport {
        let reading = &looked.laid.dial.reading;
        let wheels = looked.laid.dial.wheels.iter().zip(&looked.looks.wheels);
        ReadingReport {
            readers: reading.readers.iter().map(|reader| ReaderReport::of(reader, reading.acuity)).collect(),
            eyesight: reading.acuity.to_string(),
            cover: looked.looks.cover.as_ref().map(EngravingReport::of),
            wheels: wheels.map(|(wheel, look)| WheelReadingReport::of(wheel, look, &reading.readers)).collect(),
        }
    }
}

impl ReaderReport {
    fn of(reader: &Reader, asked: Acuity) -> ReaderReport {
        let (view, seat) = (&reader.view, reader.view.seat());
        let stroke = |acuity: Acuity| rounded(view.critical_stroke(acuity));
        ReaderReport {
            name: reader.name.clone(),
            away_mm: rounded(seat.away()),
            eye_mm: rounded(seat.eye()),
            distance_mm: rounded(seat.distance()),
            elevation_deg: rounded(seat.elevation().to_degrees()),
            azimuth_deg: rounded(view.azimuth().to_degrees()),
            height_for_16_arcmin_mm: rounded(view.height_for(16.0 * ARCMIN)),
            height_for_20_arcmin_mm: rounded(view.height_for(20.0 * ARCMIN)),
            critical_stroke_mm: CriticalStrokes {
                normal: stroke(Acuity::NORMAL),
                older: stroke(Acuity::NORMAL.older()),
                weak: stroke(Acuity::WEAK),
                asked: stroke(asked),
            },
        }
    }
}

impl EngravingReport {
    fn of(one: &Engraving) -> EngravingReport {
        let (face, floor) = one.lightness();
        EngravingReport {
            face: one.face.to_string(),
            engraved: one.worst.colour.to_string(),
            depth_mm: rounded(one.depth),
            layer: one.worst.layer + 1,
            may_show_another_layer: one.may_differ(),
            ratio: one.contrast.ratio(),
            measured_ratio_least: one.measured.map(|measured| measured.low),
            measured_ratio_most: one.measured.map(|measured| measured.high),
            polarity: one.contrast.polarity().to_string(),
            face_l_star: rounded(face),
            engraved_l_star: rounded(floor),
            ciede2000: rounded(one.difference),
        }
    }
}

impl WheelReadingReport {
    fn of(wheel: &Wheel, look: &WheelLook, readers: &[Reader]) -> WheelReadingReport {
        let seen = readers.iter().zip(&look.seen).map(|(reader, seen)| SeenReport::of(wheel, reader, seen));
        WheelReadingReport {
            wheel: wheel.name.clone(),
            engraving: look.engraving.as_ref().map(EngravingReport::of),
            height_mm: rounded(wheel.asked.height),
            stroke_mm: look.stroke.and_then(rounded),
            stroke_to_height: look.stroke.and_then(|stroke| rounded(stroke / wheel.asked.height)),
            seen: seen.collect(),
        }
    }
}

impl SeenReport {
    fn of(wheel: &Wheel, reader: &Reader, seen: &Seen) -> SeenReport {
        let worst = seen.at_worst();
        SeenReport {
            angle_arcmin: rounded(sight::arcmin(seen.angle)),
            edge_above_wheel_mm: rounded(seen.depth),
            hidden_mm: rounded(worst.hidden),
            seen_height_share: worst.height_share().max(0.0),
            seen_area_share: worst.share,
            window_for_all_mm: rounded(seen.window_for_all),
            reader: reader.name.clone(),
            worst_mark: wheel.marks.get(seen.worst).map(|mark| mark.words.clone()).unwrap_or_default(),
        }
    }
}
