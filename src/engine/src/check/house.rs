//! Rules on the job as a whole.

use super::{Check, Finding, Remedy, Severity, Subject};
use crate::building::{Behind, RoomId, SurfaceKind};
use crate::design::Design;
use crate::job::Job;
use crate::quantity::{Area, Kind, Power, Value};

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
    let circuit = &design.piping;
    let round =
        (!(circuit.head.is_finite() && circuit.back.is_finite())).then(|| fault(Subject::Loop));
    rooms.map(|room| fault(Subject::Room(room.room))).chain(round).collect()
}

/// Heat loss of heated floor area a kelvin between indoors and the design day, W/(m2 K): a tight new
/// house, and a leaky old one. Common practice, no source: 10 and 60 Btu/(h ft2) at 70 °F.
const LEAST_W_M2K: f64 = 0.81;
const MOST_W_M2K: f64 = 4.9;

/// A second opinion on the load, by floor area.
pub(super) fn per_area(job: &Job, design: &Design) -> Option<Check> {
    let rooms = &job.house.rooms;
    let area: Area = rooms.iter().map(|room| room.floor_area).sum();
    let degrees: f64 = rooms
        .iter()
        .map(|room| (room.temperature - job.house.site.outdoors).si() * (room.floor_area / area))
        .sum();
    let of = |w_m2| Value::new(Kind::PowerDensity, w_m2);
    let per_area = design.load.si() / area.si();
    if !per_area.is_finite() || design.load <= Power::ZERO {
        return None;
    }
    let (least, most) = (LEAST_W_M2K * degrees, MOST_W_M2K * degrees);
    let within = (least..=most).contains(&per_area);
    Some(Check {
        severity: if within { Severity::Holds } else { Severity::Watch },
        subject: Subject::House,
        finding: Finding::PerArea { per_area: of(per_area), least: of(least), most: of(most) },
        remedies: Vec::new(),
    })
}

/// What two rooms share, or a room and an unheated space, is entered in one of them; the other then
/// knows of it.
pub(super) fn entered_twice(job: &Job) -> Vec<Check> {
    let house = &job.house;
    let rooms = house.rooms.iter().map(|r| (r.id, Some(r.temperature), r.surfaces.as_slice()));
    let spaces = house.spaces.iter().map(|s| (s.id, None, s.surfaces.as_slice()));
    let all: Vec<_> = rooms.chain(spaces).collect();
    let mut by_id: Vec<(RoomId, usize)> = Vec::new();
    for (index, (id, ..)) in all.iter().enumerate() {
        let place = by_id.partition_point(|(known, _)| known < id);
        by_id.insert(place, (*id, index));
    }
    let find = |id| {
        let place = by_id.binary_search_by_key(&id, |(known, _)| *known).ok()?;
        Some(by_id.get(place)?.1)
    };
    let mut out: Vec<Check> = Vec::new();
    for (index, &(id, temperature, surfaces)) in all.iter().enumerate() {
        let mut said: Vec<RoomId> = Vec::new();
        for surface in surfaces {
            let Behind::Room(other) = surface.behind else { continue };
            let Some(at) = find(other).filter(|at| *at > index) else { continue };
            let (_, beyond, others) = all[at];
            // A floor seen from above is a ceiling seen from below.
            let seen_from_there = match surface.kind {
                SurfaceKind::Wall => SurfaceKind::Wall,
                SurfaceKind::Ceiling => SurfaceKind::Floor,
                SurfaceKind::Floor => SurfaceKind::Ceiling,
            };
            let twice =
                others.iter().any(|s| s.behind == Behind::Room(id) && s.kind == seen_from_there);
            // Between two rooms as warm no heat is counted, once or twice.
            let as_warm = temperature.is_some() && temperature == beyond;
            if twice && !as_warm && !said.contains(&other) {
                said.push(other);
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
