//! Every part inside the machine's bed.

use super::{Bench, Finding, Part, Severity};
use crate::job::{self, JobError};

pub(super) fn check(bench: &Bench) -> Vec<Finding> {
    let Err(errors) = job::plan(bench.dial, bench.workshop) else {
        return Vec::new();
    };
    errors
        .into_iter()
        .map(|error| Finding {
            rule: match error {
                JobError::TooLarge { .. } => "part inside the bed",
                JobError::Kerf { .. } => "kerf",
            },
            severity: Severity::Refuse,
            what: error.to_string(),
            measured: None,
            limit: None,
            part: Part::Dial,
            place: None,
            source: "the machine in the workshop file",
            mend: error.mend().into(),
            remedies: Vec::new(),
            keys: vec!["cover.width".into(), "cover.height".into()],
        })
        .collect()
}
