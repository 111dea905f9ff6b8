//! Workings of the air that comes in.

use super::heat::along;
use super::{Formula, Part, Step, Steps};
use crate::building::air::{self, stack_coefficient_m2_s2k, wind_coefficient};
use crate::building::flows::{SPACE_AIR, exposed_areas, vent_shielding};
use crate::building::{BlowerDoor, House, Leaks, OpenFlue, PathLoss, Room, RoomId, Space};
use crate::job::Job;
use crate::quantity::Temperature;

/// What leaks into the house, with what fans draw in.
pub(super) fn house_air(job: &Job) -> Vec<Step> {
    let mut steps = Steps::default();
    house_flow(&mut steps, &job.house);
    steps.0
}

fn house_flow(steps: &mut Steps, house: &House) -> f64 {
    let air = &house.air;
    let mut flow: Option<Part> = None;
    let mut gaps: Option<Part> = None;
    match air.leaks {
        Leaks::Changes(rate) => {
            let numbers = [rate.si(), volume(steps, house)];
            flow = Some(("V_n", steps.add(Formula::AirChange, &numbers, "V_n")));
        }
        Leaks::Measured(BlowerDoor { flow, exponent }) => {
            // As the engine has it: air at 20 °C and sea level.
            let rho = steps.add(Formula::AirDensity, &[0.0, 293.15], "rho");
            let numbers = [flow.si(), exponent, rho];
            gaps = Some(("A_50", steps.add(Formula::LeakageArea, &numbers, "A_50")));
        }
        Leaks::Estimated(leakage) => gaps = Some(("A_50", leakage.area().si())),
    }
    let flue = (air.flue != OpenFlue::None).then(|| ("A_flue", air.flue.area().si()));
    if gaps.or(flue).is_some() {
        let numbers = [
            steps.sum(&mut gaps.into_iter().chain(flue), "A_L"),
            stack_coefficient_m2_s2k(air.storeys),
            difference(steps, house),
            wind_coefficient(air.storeys, air.shelter),
            house.site.wind.si(),
        ];
        let through = ("V_L", steps.add(Formula::Infiltration, &numbers, "V_L"));
        flow = Some(("V_i", steps.sum(&mut flow.into_iter().chain([through]), "V_i")));
    }
    let (supply, exhaust) = (air.ventilation.supply.si(), air.ventilation.exhaust.si());
    if supply == exhaust {
        return steps.sum(&mut flow.into_iter(), "V_h");
    }
    let leaked = steps.sum(&mut flow.into_iter(), "V_i");
    let fans = [supply.max(exhaust), -supply.min(exhaust)];
    let fans = fans.into_iter().filter(|fan| *fan != 0.0);
    let numbers = [steps.sum(&mut fans.map(|fan| ("V_fan", fan)), "V_u"), leaked];
    steps.add(Formula::WithFans, &numbers, "V_h")
}

/// What leaks into a room or an unheated space.
pub(super) fn leaked(job: &Job, id: RoomId, loss: &PathLoss) -> Option<Vec<Step>> {
    let house = &job.house;
    let (steps, flow, temperature) = match house.rooms.iter().position(|room| room.id == id) {
        Some(index) => {
            let room = house.rooms.get(index)?;
            let (steps, flow) = room_flow(house, index, room);
            (steps, flow, room.temperature)
        }
        None => {
            let (steps, flow) = space_flow(house, house.spaces.iter().find(|s| s.id == id)?);
            (steps, flow, SPACE_AIR)
        }
    };
    Some(warmed(steps, house, &[flow], temperature, loss))
}

/// What the fans bring into a room.
pub(super) fn ventilated(job: &Job, id: RoomId, loss: &PathLoss) -> Option<Vec<Step>> {
    let house = &job.house;
    let room = house.rooms.iter().find(|room| room.id == id)?;
    let mut steps = Steps::default();
    let fans = &house.air.ventilation;
    let balanced = fans.supply.min(fans.exhaust).si();
    let numbers = [balanced, room.volume().si(), volume(&mut steps, house)];
    let flow = steps.add(Formula::ShareByVolume, &numbers, "V_r");
    Some(warmed(steps, house, &[flow, fans.recovery], room.temperature, loss))
}

/// The heat that warms a flow, less what is recovered of it where that is given.
fn warmed(
    mut steps: Steps,
    house: &House,
    flow: &[f64],
    temperature: Temperature,
    loss: &PathLoss,
) -> Vec<Step> {
    let numbers = [house.site.altitude.si(), temperature.si()];
    let rho = steps.add(Formula::AirDensity, &numbers, "rho");
    let formula = match flow.len() {
        1 => Formula::AirLoss,
        _ => Formula::RecoveredAirLoss,
    };
    along(steps, formula, &[&[rho, air::SPECIFIC_HEAT.si()], flow].concat(), loss)
}

/// A room's share of the house's air, or what it is known to take at least.
fn room_flow(house: &House, index: usize, room: &Room) -> (Steps, f64) {
    let mut steps = Steps::default();
    let all = house_flow(&mut steps, house);
    let volume_r = room.volume().si();
    let exposed = exposed_areas(house);
    let share = match exposed.is_empty() {
        true => {
            let numbers = [all, volume_r, volume(&mut steps, house)];
            steps.add(Formula::ShareByVolume, &numbers, "V_r")
        }
        false => {
            let areas = |at: usize| {
                exposed.iter().filter(move |(room, _)| *room == at).map(|(_, area)| area.si())
            };
            let own = steps.sum(&mut areas(index).map(|area| ("A_i", area)), "A_r");
            let rooms = (0..house.rooms.len()).map(|at| ("A_i", areas(at).sum::<f64>()));
            let numbers = [all, own, steps.sum(&mut { rooms }, "A_x")];
            steps.add(Formula::ShareByArea, &numbers, "V_r")
        }
    };
    match room.least_air {
        Some(rate) if rate.si() * volume_r > share => {
            let mut steps = Steps::default();
            let flow = steps.add(Formula::OwnAirChange, &[rate.si(), volume_r], "V_r");
            (steps, flow)
        }
        _ => (steps, share),
    }
}

/// An unheated space's own air, and the wind through its vents.
fn space_flow(house: &House, space: &Space) -> (Steps, f64) {
    let mut steps = Steps::default();
    let numbers = [space.air_changes.si(), space.volume().si()];
    let own = ("V_n", steps.add(Formula::OwnAirChange, &numbers, "V_n"));
    let vents = space.vent_area.si();
    let through = (vents > 0.0).then(|| {
        let numbers = [house.site.wind.si(), vent_shielding(house.air.shelter), vents];
        ("V_v", steps.add(Formula::VentFlow, &numbers, "V_v"))
    });
    let flow = steps.sum(&mut [own].into_iter().chain(through), "V_r");
    (steps, flow)
}

/// How much warmer the house is than outdoors, its rooms weighed by their volume.
fn difference(steps: &mut Steps, house: &House) -> f64 {
    let mut degrees: Vec<(Temperature, f64)> = Vec::new();
    for room in &house.rooms {
        match degrees.iter_mut().find(|(known, _)| *known == room.temperature) {
            Some((_, volume)) => *volume += room.volume().si(),
            None => degrees.push((room.temperature, room.volume().si())),
        }
    }
    let outdoors = house.site.outdoors.si();
    if let [(inside, _)] = degrees[..] {
        return steps.add(Formula::Difference, &[inside.si(), outdoors], "dT");
    }
    let all = volume(steps, house);
    let mut parts: Vec<Part> = Vec::new();
    for (inside, volume) in degrees {
        let numbers = [volume, all, inside.si(), outdoors];
        parts.push(("dT_i", steps.add(Formula::WeighedDifference, &numbers, "dT_i")));
    }
    steps.sum(&mut parts.into_iter(), "dT")
}

/// Of all heated rooms.
fn volume(steps: &mut Steps, house: &House) -> f64 {
    steps.sum(&mut house.rooms.iter().map(|room| ("Vol_i", room.volume().si())), "Vol")
}
