//! Findings. A measured value and its limit stand under a name with their unit.

use super::number::{Place, degrees, place, rounded};
use dial::Dial;
use dial::findings::{Finding, Quantity};
use schemars::JsonSchema;
use serde::Serialize;

/// What a rule says.
#[derive(Serialize, JsonSchema)]
pub(super) struct FindingReport {
    /// Name of the rule.
    rule: &'static str,
    /// "refuse", "mend" or "note".
    severity: &'static str,
    /// In a sentence.
    what: String,
    #[serde(flatten)]
    measured: Measured,
    #[serde(flatten)]
    limit: Limit,
    /// The part, in words.
    part: String,
    #[serde(skip_serializing_if = "Option::is_none")]
    place: Option<Place>,
    /// Where the limit comes from.
    source: &'static str,
    /// How to mend it; empty for a note.
    mend: String,
    /// Keys of the dial file that matter here.
    keys: Vec<String>,
}

/// A figure under a name that carries its unit: one of these at most.
macro_rules! quantity {
    ($(#[$doc:meta])* $name:ident, $mm:literal, $deg:literal, $share:literal, $count:literal, $n:literal, $arcmin:literal, $ratio:literal) => {
        $(#[$doc])*
        #[derive(Default, Serialize, JsonSchema)]
        struct $name {
            #[serde(rename = $mm, skip_serializing_if = "Option::is_none")]
            length: Option<f64>,
            #[serde(rename = $deg, skip_serializing_if = "Option::is_none")]
            angle: Option<f64>,
            #[serde(rename = $share, skip_serializing_if = "Option::is_none")]
            share: Option<f64>,
            #[serde(rename = $count, skip_serializing_if = "Option::is_none")]
            count: Option<usize>,
            #[serde(rename = $n, skip_serializing_if = "Option::is_none")]
            force: Option<f64>,
            #[serde(rename = $arcmin, skip_serializing_if = "Option::is_none")]
            sight: Option<f64>,
            #[serde(rename = $ratio, skip_serializing_if = "Option::is_none")]
            ratio: Option<f64>,
        }

        impl $name {
            fn of(quantity: Option<Quantity>) -> $name {
                let none = $name::default();
                match quantity {
                    None => none,
                    Some(Quantity::Length(mm)) => $name { length: rounded(mm), ..none },
                    Some(Quantity::Angle(radians)) => $name { angle: degrees(radians), ..none },
                    Some(Quantity::Share(share)) => $name { share: Some(share), ..none },
                    Some(Quantity::Count(count)) => $name { count: Some(count), ..none },
                    Some(Quantity::Force(force)) => $name { force: rounded(force), ..none },
                    Some(Quantity::Sight(radians)) => $name { sight: rounded(sight::arcmin(radians)), ..none },
                    Some(Quantity::Ratio(ratio)) => $name { ratio: Some(ratio), ..none },
                }
            }
        }
    };
}

quantity!(
    /// What was measured.
    Measured, "measured_mm", "measured_deg", "measured_share", "measured_count", "measured_n",
    "measured_arcmin", "measured_ratio"
);
quantity!(
    /// What it was held against.
    Limit, "limit_mm", "limit_deg", "limit_share", "limit_count", "limit_n", "limit_arcmin", "limit_ratio"
);

impl FindingReport {
    pub(super) fn of(dial: &Dial, finding: &Finding) -> FindingReport {
        FindingReport {
            rule: finding.rule,
            severity: finding.severity.word(),
            what: finding.what.clone(),
            measured: Measured::of(finding.measured),
            limit: Limit::of(finding.limit),
            part: finding.part.words(dial),
            place: finding.place.map(place),
            source: finding.source,
            mend: finding.mend.clone(),
            keys: finding.keys.clone(),
        }
    }
}
