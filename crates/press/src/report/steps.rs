//! The job: sheets, setups, steps.

use super::number::{Place, place, rounded};
use crate::job_files::sheet_name;
use crate::sheet::step_id;
use dial::job::{Job, Setup, Sheet, Step};
use schemars::JsonSchema;
use serde::Serialize;

/// All that is cut for a dial. Sheet coordinates: from the sheet's lower left corner.
#[derive(Serialize, JsonSchema)]
pub(super) struct JobReport {
    /// How many setups in all.
    setups: usize,
    sheets: Vec<SheetReport>,
}

/// One sheet of stock.
#[derive(Serialize, JsonSchema)]
struct SheetReport {
    number: usize,
    stock: String,
    kerf_x_mm: f64,
    kerf_y_mm: f64,
    width_mm: Option<f64>,
    height_mm: Option<f64>,
    parts: Vec<PartReport>,
    setups: Vec<SetupReport>,
}

/// One part on a sheet.
#[derive(Serialize, JsonSchema)]
struct PartReport {
    name: String,
    /// Its middle.
    at: Place,
}

/// One placement of the stock.
#[derive(Serialize, JsonSchema)]
struct SetupReport {
    number: usize,
    /// The sheet's file in the job folder.
    file: String,
    /// Parts that lie turned over; empty when the stock lies face up.
    turned_over: Vec<String>,
    steps: Vec<StepReport>,
}

/// One operation.
#[derive(Serialize, JsonSchema)]
struct StepReport {
    /// The group's name in the sheet's file.
    group: String,
    kind: &'static str,
    /// `null` for a cut, which goes right through.
    depth_mm: Option<f64>,
    pieces: usize,
}

impl JobReport {
    pub(super) fn of(job: &Job) -> JobReport {
        JobReport {
            setups: job.sheets.iter().map(|sheet| sheet.setups.len()).sum(),
            sheets: job.sheets.iter().map(SheetReport::of).collect(),
        }
    }
}

impl SheetReport {
    fn of(sheet: &Sheet) -> SheetReport {
        let parts = sheet.parts.iter().map(|part| PartReport { name: part.name.clone(), at: place(part.at) });
        SheetReport {
            number: sheet.number,
            stock: sheet.stock.name.clone(),
            kerf_x_mm: sheet.stock.kerf.x,
            kerf_y_mm: sheet.stock.kerf.y,
            width_mm: rounded(sheet.width),
            height_mm: rounded(sheet.height),
            parts: parts.collect(),
            setups: sheet.setups.iter().map(|one| SetupReport::of(sheet, one)).collect(),
        }
    }
}

impl SetupReport {
    fn of(sheet: &Sheet, setup: &Setup) -> SetupReport {
        let step = |(i, step): (usize, &Step)| StepReport {
            group: step_id(i + 1, step),
            kind: step.kind.words(),
            depth_mm: step.depth(),
            pieces: step.work.len(),
        };
        SetupReport {
            number: setup.number,
            file: format!("sheets/{}", sheet_name(sheet, setup)),
            turned_over: setup.turned.iter().map(|part| part.name.clone()).collect(),
            steps: setup.steps.iter().enumerate().map(step).collect(),
        }
    }
}
