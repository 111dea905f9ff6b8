//! Rules on the job as a whole.

use super::{Check, Finding, Remedy, Severity, Subject};
use crate::building::{Behind, SurfaceKind};
use crate::design::Design;
use crate::job::Job;

/// A number that is none is named, never shown as a result.
pub(super) fn not_finite(design: &Design) -> Vec<Check> {
    let fault = |subject| Check {
        severity: Severity::Stop,
        subject,
        finding: Finding::NotFinite,
        remedies: Vec::new(),
    };
    let rooms = design.rooms.iter().filter(|room| {
        !(room.load.total.is_finite()
            && room.element.output.is_finite()
            && room.element.water_out.is_finite())
    });
    let circuit = &design.circuit;
    let round =
        (!(circuit.head.is_finite() && circuit.back.is_finite())).then(|| fault(Subject::Loop));
    rooms.map(|room| fault(Subject::Room(room.room))).chain(round).collect()
}

/// A wall between two rooms is entered in one of them; the other then knows of it.
pub(super) fn entered_twice(job: &Job) -> Vec<Check> {
    let mut out = Vec::new();
    for (index, room) in job.house.rooms.iter().enumerate() {
        for other in job.house.rooms.iter().skip(index + 1) {
            let leads = |from: &crate::building::Room, to| {
                from.surfaces
                    .iter()
                    .filter(move |s| s.behind == Behind::Room(to))
                    .map(|s| s.kind)
                    .collect::<Vec<_>>()
            };
            let there = leads(room, other.id);
            let back = leads(other, room.id);
            // A floor seen from above is a ceiling seen from below.
            let twice = there.iter().any(|kind| {
                back.contains(match kind {
                    SurfaceKind::Wall => &SurfaceKind::Wall,
                    SurfaceKind::Ceiling => &SurfaceKind::Floor,
                    SurfaceKind::Floor => &SurfaceKind::Ceiling,
                })
            });
            if twice && room.temperature != other.temperature {
                out.push(Check {
                    severity: Severity::Watch,
                    subject: Subject::Room(room.id),
                    finding: Finding::EnteredTwice { other: other.id },
                    remedies: vec![Remedy::RemoveOneEntry],
                });
            }
        }
    }
    out
}
