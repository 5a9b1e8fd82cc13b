//! A dial looked over: the whole chain from a design to its findings, in one place for all who need it.

use crate::design::Design;
use crate::family::Member;
use crate::findings::{self, Bench, Finding};
use crate::layout::{self, Laid};
use crate::looks::{self, Looks, Reader, Reading};
use crate::magnets::{self, Held};
use crate::spans::Mistake;
use crate::turning::{self, TurnTest};
use process::Workshop;

/// A dial with all that is known of it.
#[derive(Clone, Debug)]
pub struct Looked {
    /// The assembled dial, and what drove its size.
    pub laid: Laid,
    /// Its turn test.
    pub turns: TurnTest,
    /// How each wheel is held; `None` for magnets that cannot be.
    pub held: Vec<Option<Held>>,
    /// What can be read of it, and from where.
    pub looks: Looks,
    /// Its findings, the gravest first.
    pub findings: Vec<Finding>,
}

/// Lays out, turns, weighs and checks a dial, also against others of its family.
///
/// # Errors
/// What cannot be drawn at all.
pub fn look(design: &Design, workshop: &Workshop, family: &[Member]) -> Result<Looked, Vec<Mistake>> {
    let laid = layout::assemble(design)?;
    let turns = turning::turn(&laid.dial);
    let held = magnets::hold_all(&laid.dial, &turns, &workshop.feel);
    let looks = looks::look_at(&laid.dial);
    let bench = Bench { dial: &laid.dial, turns: &turns, held: &held, looks: &looks, workshop, family };
    let findings = findings::check(&bench);
    Ok(Looked { laid, turns, held, looks, findings })
}

/// The same dial read by one reader alone, with the findings of what can be read from there and no others.
pub fn look_from(looked: &Looked, reader: Reader, workshop: &Workshop) -> Looked {
    let mut from = looked.clone();
    let dial = &mut from.laid.dial;
    dial.reading = Reading { readers: vec![reader], acuity: dial.reading.acuity };
    from.looks = looks::look_at(&from.laid.dial);
    let (laid, turns, held, looks) = (&from.laid, &from.turns, &from.held, &from.looks);
    from.findings = findings::check_reading(&Bench { dial: &laid.dial, turns, held, looks, workshop, family: &[] });
    from
}
