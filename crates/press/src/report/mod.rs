//! Everything that was computed, as JSON: names carry their units, the order is fixed, and the schema is made from these very types.

mod found;
mod magnets;
mod number;
mod reading;
mod steps;
mod turns;
mod wheels;

use dial::Looked;
use dial::job::Job;
use found::FindingReport;
use magnets::MagnetsReport;
pub use magnets::{chooser_report, map_report};
pub(crate) use number::rounded;
use reading::ReadingReport;
use schemars::{JsonSchema, SchemaGenerator, generate::SchemaSettings};
use serde::Serialize;
use serde_json::{Value, json};
use turns::TurnTestReport;
use wheels::{CoverReport, WheelReport};

/// Version of the report's form: it grows when a name changes its meaning or goes; new names do not change it.
const VERSION: u32 = 2;

/// All figures of a dial. Lengths in mm, angles in degrees, forces in N, masses in g; places from the cover's middle, to the right and up,
/// seen from the front.
#[derive(Serialize, JsonSchema)]
struct Report {
    /// Version of this form.
    schema_version: u32,
    /// Name of the dial.
    name: String,
    /// The plate on top.
    cover: CoverReport,
    /// The wheels behind it, in the order of the counters.
    wheels: Vec<WheelReport>,
    /// Every stop of every wheel in its window.
    turn_test: TurnTestReport,
    /// Who can read it from where: engravings, readers, and what each sees in every window.
    reading: ReadingReport,
    /// How the wheels are held.
    magnets: MagnetsReport,
    /// What was found, the gravest first.
    findings: Vec<FindingReport>,
}

/// What can be read of a dial, alone.
pub(crate) fn reading_report(looked: &Looked) -> Value {
    value(&ReadingReport::of(looked))
}

/// The report of a dial.
pub fn report(looked: &Looked) -> Value {
    let Looked { laid, turns, held, findings, .. } = looked;
    let dial = &laid.dial;
    value(&Report {
        schema_version: VERSION,
        name: dial.name.clone(),
        cover: CoverReport::of(&dial.cover),
        wheels: WheelReport::all(laid),
        turn_test: TurnTestReport::of(turns),
        reading: ReadingReport::of(looked),
        magnets: MagnetsReport::of(dial, held),
        findings: findings.iter().map(|one| FindingReport::of(dial, one)).collect(),
    })
}

/// The schema of the report (JSON Schema 2020-12).
pub fn report_schema() -> Value {
    schema::<Report>("The report of a dial")
}

/// The figures of a job: every sheet with its setups and their steps in running order.
pub fn job_report(job: &Job) -> Value {
    value(&steps::JobReport::of(job))
}

/// The schema of the job's figures.
pub fn job_schema() -> Value {
    schema::<steps::JobReport>("The setups and steps of a job")
}

/// What is written never fails: strings, numbers, lists of them.
fn value(report: &impl Serialize) -> Value {
    serde_json::to_value(report).unwrap_or_else(|error| json!({ "fault": error.to_string() }))
}

fn schema<T: JsonSchema>(title: &str) -> Value {
    let mut schema = SchemaGenerator::new(SchemaSettings::draft2020_12()).into_root_schema_for::<T>();
    schema.insert("title".into(), json!(title));
    schema.to_value()
}
