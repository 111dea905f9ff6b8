//! Rules on a room: is it heated, and if not, why not and what may help.

use super::{Check, Finding, Remedy, Severity, Subject, shop};
use crate::design::Design;
use crate::job::{Job, ShutOff};
use crate::quantity::{MassFlow, Power};

pub(super) fn rooms(job: &Job, design: &Design) -> Vec<Check> {
    let mut out: Vec<Check> =
        (0..design.rooms.len()).filter_map(|at| one(job, design, at)).collect();
    let heated = design.rooms.iter().filter(|r| r.load.wanted() > Power::ZERO).count();
    if heated > 0 && design.rooms.iter().all(|room| room.short() == Power::ZERO) {
        out.push(Check {
            severity: Severity::Holds,
            subject: Subject::House,
            finding: Finding::RoomsHeated { rooms: heated },
            remedies: Vec::new(),
        });
    }
    out
}

fn one(job: &Job, design: &Design, at: usize) -> Option<Check> {
    let (room, solved) = (&job.house.rooms[at], &design.rooms[at]);
    let load = solved.load.wanted();
    let check = |severity, finding, remedies| {
        Some(Check { severity, subject: Subject::Room(room.id), finding, remedies })
    };
    if load <= Power::ZERO && solved.load.total > Power::ZERO {
        let finding =
            Finding::OtherHeatCovers { load: solved.load.total, other: solved.load.other };
        return check(Severity::Watch, finding, vec![Remedy::LessOtherHeat]);
    }
    if load <= Power::ZERO {
        let remedies = match room.surfaces.is_empty() {
            true => vec![Remedy::AddSurfaces],
            false => Vec::new(),
        };
        return check(Severity::Watch, Finding::NoLoad { load }, remedies);
    }
    let short = solved.short();
    if design.piping.not_solved.is_some() {
        return None;
    }
    if job.approaches.get(at).is_some_and(|approach| approach.shut_off == ShutOff::Shut)
        && solved.element.flow == MassFlow::ZERO
    {
        return check(Severity::Watch, Finding::ShutOff { load }, vec![Remedy::OpenValve]);
    }
    // A room whose result is no number has a finding of its own.
    if short == Power::ZERO || !short.is_finite() {
        return None;
    }
    if let Some((finding, remedies)) = shop::why_short(job, room, solved) {
        return check(Severity::Stop, finding, remedies);
    }
    let has_run = room.surfaces.iter().any(|surface| !surface.runs.is_empty());
    if !has_run {
        return check(Severity::Stop, Finding::NoWall { load }, vec![Remedy::AddFreeWall]);
    }
    let mut remedies = Vec::new();
    let finding = match solved.element.needed {
        Some(needed) => {
            let fitted = solved.element.choice.finned;
            remedies.push(Remedy::MoreWall { length: needed - fitted });
            remedies.extend(shop::of_choices(room));
            Finding::DoesNotFit { needed, fitted, short }
        }
        None => {
            Finding::WaterTooCool { water: solved.element.water_in, room: room.temperature, short }
        }
    };
    // What is worked out by trying stands in `remedy`: it takes as long as many designs.
    remedies.push(match finding {
        // The water runs out of heat before the element does: more output does not help.
        Finding::WaterTooCool { .. } => Remedy::SecondCircuit,
        _ => Remedy::HigherOutputElement,
    });
    remedies.push(Remedy::ReduceLoss);
    check(Severity::Stop, finding, remedies)
}
