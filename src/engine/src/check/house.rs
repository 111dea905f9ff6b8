//! Rules on the job as a whole.

use super::{Check, Finding, Remedy, Severity, Subject};
use crate::building::{Behind, RoomId, Surface, SurfaceKind};
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

/// What two rooms share, or a room and an unheated space, is entered in one of them; the other then
/// knows of it.
pub(super) fn entered_twice(job: &Job) -> Vec<Check> {
    let house = &job.house;
    let rooms = house.rooms.iter().map(|r| (r.id, Some(r.temperature), r.surfaces.as_slice()));
    let spaces = house.spaces.iter().map(|s| (s.id, None, s.surfaces.as_slice()));
    let all: Vec<_> = rooms.chain(spaces).collect();
    let mut out = Vec::new();
    for (index, &(id, temperature, surfaces)) in all.iter().enumerate() {
        for &(other, beyond, others) in all.iter().skip(index + 1) {
            // Between two rooms as warm no heat is counted, once or twice.
            let as_warm = temperature.is_some() && temperature == beyond;
            if !as_warm && shared_twice(id, surfaces, other, others) {
                out.push(Check {
                    severity: Severity::Watch,
                    subject: Subject::Room(id),
                    finding: Finding::EnteredTwice { other },
                    remedies: vec![Remedy::RemoveOneEntry],
                });
            }
        }
    }
    out
}

fn shared_twice(id: RoomId, surfaces: &[Surface], other: RoomId, others: &[Surface]) -> bool {
    let leads = |from: &[Surface], to: RoomId, kind: SurfaceKind| {
        from.iter().any(|s| s.kind == kind && s.behind == Behind::Room(to))
    };
    // A floor seen from above is a ceiling seen from below.
    [
        (SurfaceKind::Wall, SurfaceKind::Wall),
        (SurfaceKind::Ceiling, SurfaceKind::Floor),
        (SurfaceKind::Floor, SurfaceKind::Ceiling),
    ]
    .into_iter()
    .any(|(here, there)| leads(surfaces, other, here) && leads(others, id, there))
}
