//! The cover must be its own mirror image about the axis it is turned over on, or it does not lie in its own hole.

use super::{Bench, Finding, Part, Quantity, Remedy, Severity};
use crate::assembled::Dial;
use outline::{Axis, Mismatch};

/// More than the play of a kerf, and the turned cover jams or wanders (play is one kerf each way, 0.1 to 0.25 mm: common practice).
const PLAY: f64 = 0.1;

/// How far the plate is from its mirror image.
#[derive(Clone, Copy, Debug)]
pub struct Mirrored {
    /// About the axis that it is turned over on.
    pub own: Mismatch,
    /// About the other axis through the middle.
    pub other: Mismatch,
}

/// Measures the cover's plate against its mirror image about both axes.
pub fn mirrored(dial: &Dial) -> Mirrored {
    let across = Axis {
        point: dial.turn_axis.point,
        direction: outline::Vec2::new(-dial.turn_axis.direction.y, dial.turn_axis.direction.x),
    };
    Mirrored {
        own: outline::mirror_mismatch(&dial.cover.plate, &dial.turn_axis),
        other: outline::mirror_mismatch(&dial.cover.plate, &across),
    }
}

pub(super) fn check(bench: &Bench) -> Vec<Finding> {
    let own = outline::mirror_mismatch(&bench.dial.cover.plate, &bench.dial.turn_axis);
    if own.distance <= PLAY {
        return Vec::new();
    }
    let other = mirrored(bench.dial).other;
    let upright = bench.dial.turn_axis.direction.y.abs() > 0.5;
    let half = Remedy::set("symmetry", if upright { "left" } else { "top" });
    let over = Remedy::set("turn_over", if upright { "endways" } else { "sideways" });
    let remedies = if other.distance <= PLAY { vec![over, half] } else { vec![half] };
    let mend = if other.distance <= PLAY {
        let word = if upright { "endways" } else { "sideways" };
        format!(
            "turn it over the other way (`turn_over = \"{word}\"`: there it fits), or make one half the master with `symmetry`"
        )
    } else {
        format!(
            "make one half the master of the other with `symmetry = {}`",
            if upright { "\"left\"" } else { "\"top\"" }
        )
    };
    vec![Finding {
        rule: "cover symmetric for turning over",
        severity: Severity::Refuse,
        what: format!(
            "turned over about the {} axis the cover misses its own hole by {}; {} is the play of the kerf",
            if upright { "upright" } else { "level" },
            bench.show(own.distance),
            bench.show(PLAY)
        ),
        measured: Some(Quantity::Length(own.distance)),
        limit: Some(Quantity::Length(PLAY)),
        part: Part::Cover,
        place: Some(own.at),
        source: "turning over in its own hole (common practice)",
        mend,
        remedies,
        keys: vec!["symmetry".into(), "turn_over".into(), "cover.points".into()],
    }]
}
