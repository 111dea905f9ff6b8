//! Rules on a room: is it heated, and if not, why not and what would help.

use super::circuit::MOST_VELOCITY;
use super::{Check, Finding, Remedy, Severity, Subject, shop};
use crate::arrangement::size_elements;
use crate::building::{Room, RoomLoad};
use crate::design::Design;
use crate::job::{Flow, Job, ShutOff, Zone};
use crate::quantity::{MassFlow, Power, Temperature, TemperatureDifference, VolumeFlow};

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
    // What is done for the first room that is short changes the water of all that follow, so only
    // there are the numbers of a remedy worked out; each is a search that solves the loop anew.
    let is_first = design.rooms.iter().find(|r| r.short() > Power::ZERO) == Some(solved);
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
    if is_first {
        remedies.extend(first_would_do(job, design, room).then_some(Remedy::MoveFirst));
        let supply = hotter_water(job, design, room);
        remedies.extend(supply.map(|supply| Remedy::HotterWater { supply }));
    }
    match finding {
        // The water runs out of heat before the element does: more of it helps, output does not.
        Finding::WaterTooCool { .. } if is_first => {
            remedies.extend(more_flow(job, design, room).map(|flow| Remedy::MoreFlow { flow }));
        }
        Finding::WaterTooCool { .. } => remedies.push(Remedy::SecondCircuit),
        _ => remedies.push(Remedy::HigherOutputElement),
    }
    remedies.push(Remedy::ReduceLoss);
    check(Severity::Stop, finding, remedies)
}

/// What `room` is short of when the loop is sized again with `change` made to the job.
fn short_with(job: &Job, design: &Design, room: &Room, change: impl FnOnce(&mut Job)) -> Power {
    let mut changed = job.clone();
    change(&mut changed);
    let load_of =
        |id| design.rooms.iter().find(|solved| solved.room == id).map(|solved| solved.load.clone());
    let loads: Vec<RoomLoad> = changed.house.rooms.iter().filter_map(|r| load_of(r.id)).collect();
    loads
        .iter()
        .zip(&size_elements(&changed, &loads))
        .find(|(load, _)| load.room == room.id)
        .map_or(Power::ZERO, |(load, element)| load.wanted() - element.output)
}

/// Whether the room would be heated as the first of its loop.
fn first_would_do(job: &Job, design: &Design, room: &Room) -> bool {
    let Some(at) = job.house.rooms.iter().position(|r| r.id == room.id) else { return false };
    let behind = |rooms: &Vec<usize>| rooms.iter().position(|&r| r == at).is_some_and(|at| at > 0);
    let in_turn = |zone: &Zone| !zone.arrangement.has_branches() && zone.loops.iter().any(behind);
    if !job.zones.iter().any(in_turn) {
        return false;
    }
    let short = short_with(job, design, room, |job| {
        for rooms in job.zones.iter_mut().flat_map(|zone| &mut zone.loops) {
            if let Some(place) = rooms.iter().position(|&r| r == at) {
                rooms[..=place].rotate_right(1);
            }
        }
    });
    short <= Power::ZERO
}

/// The least flow above today's, within a percent, that heats the room before the tube is heard.
fn more_flow(job: &Job, design: &Design, room: &Room) -> Option<VolumeFlow> {
    let limit = MOST_VELOCITY * job.circuit.tube.flow_area();
    let enough = |flow: VolumeFlow| {
        short_with(job, design, room, |job| job.circuit.flow = Flow::Typed(flow)) <= Power::ZERO
    };
    let (mut low, mut high) = (design.piping.flow, limit);
    if low >= high || !enough(high) {
        return None;
    }
    while high - low > high * 0.01 {
        let middle = low + (high - low) / 2.0;
        match enough(middle) {
            true => high = middle,
            false => low = middle,
        }
    }
    Some(high)
}

/// The lowest supply above today's, within a quarter kelvin, that heats the room and that the
/// boiler's limit allows.
fn hotter_water(job: &Job, design: &Design, room: &Room) -> Option<Temperature> {
    let limit = job.circuit.boiler_limit;
    let supply = job.circuit.supply;
    let enough = |supply: Temperature| {
        short_with(job, design, room, |job| job.circuit.supply = supply) <= Power::ZERO
    };
    if supply >= limit || !enough(limit) {
        return None;
    }
    let (mut low, mut high) = (supply, limit);
    // Finer than any boiler control.
    while high - low > TemperatureDifference::from_si(0.25) {
        let middle = low + (high - low) / 2.0;
        match enough(middle) {
            true => high = middle,
            false => low = middle,
        }
    }
    Some(high)
}
