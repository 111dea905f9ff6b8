//! Workings of the air that comes in.

use super::heat::along;
use super::{Formula, Found, Steps};
use crate::building::air::{self, stack_coefficient_m2_s2k, wind_coefficient};
use crate::building::flows::{SPACE_AIR, exposed_areas, vent_shielding};
use crate::building::{BlowerDoor, House, Leaks, OpenFlue, PathLoss, Room, RoomId, Space};
use crate::job::Job;
use crate::quantity::Temperature;

/// What leaks into the house, with what fans draw in.
pub(super) fn house_air(steps: &mut Steps, job: &Job) -> Found {
    house_flow(steps, &job.house);
    Some(())
}

fn house_flow(steps: &mut Steps, house: &House) -> f64 {
    let air = &house.air;
    let by_changes = match air.leaks {
        Leaks::Changes(rate) => {
            let volume = volume(steps, house);
            Some(steps.add(Formula::AirChange, &[rate.si(), volume], "V_n"))
        }
        Leaks::Measured(BlowerDoor { flow, exponent }) => {
            // As the engine has it: air at 20 °C and sea level.
            let rho = steps.add(Formula::AirDensity, &[0.0, 293.15], "rho");
            let area = steps.add(Formula::LeakageArea, &[flow.si(), exponent, rho], "A_50");
            steps.part("A_50", area);
            None
        }
        Leaks::Estimated(leakage) => {
            steps.part("A_50", leakage.area().si());
            None
        }
    };
    if air.flue != OpenFlue::None {
        steps.part("A_flue", air.flue.area().si());
    }
    let through = (!steps.parts.is_empty()).then(|| {
        let gaps = steps.sum("A_L");
        let difference = difference(steps, house);
        let numbers = [
            gaps,
            stack_coefficient_m2_s2k(air.storeys),
            difference,
            wind_coefficient(air.storeys, air.shelter),
            house.site.wind.si(),
        ];
        steps.add(Formula::Infiltration, &numbers, "V_L")
    });
    if let Some(flow) = by_changes {
        steps.part("V_n", flow);
    }
    if let Some(flow) = through {
        steps.part("V_L", flow);
    }
    let (supply, exhaust) = (air.ventilation.supply.si(), air.ventilation.exhaust.si());
    if supply == exhaust {
        return steps.sum("V_h");
    }
    let leaked = steps.sum("V_i");
    steps.part("V_fan", supply.max(exhaust));
    if supply.min(exhaust) > 0.0 {
        steps.part("V_fan", -supply.min(exhaust));
    }
    let unbalanced = steps.sum("V_u");
    steps.add(Formula::WithFans, &[unbalanced, leaked], "V_h")
}

/// What leaks into a room or an unheated space.
pub(super) fn leaked(steps: &mut Steps, job: &Job, id: RoomId, loss: &PathLoss) -> Found {
    let house = &job.house;
    let (flow, temperature) = match house.rooms.iter().position(|room| room.id == id) {
        Some(index) => {
            let room = house.rooms.get(index)?;
            (room_flow(steps, house, index, room), room.temperature)
        }
        None => {
            let space = house.spaces.iter().find(|space| space.id == id)?;
            (space_flow(steps, house, space), SPACE_AIR)
        }
    };
    let rho = density(steps, house, temperature);
    let numbers = [rho, air::SPECIFIC_HEAT.si(), flow];
    along(steps, Formula::AirLoss, &numbers, loss)
}

/// What the fans bring into a room.
pub(super) fn ventilated(steps: &mut Steps, job: &Job, id: RoomId, loss: &PathLoss) -> Found {
    let house = &job.house;
    let room = house.rooms.iter().find(|room| room.id == id)?;
    let fans = &house.air.ventilation;
    let balanced = fans.supply.min(fans.exhaust).si();
    let flow = by_volume(steps, house, balanced, room);
    let rho = density(steps, house, room.temperature);
    let numbers = [rho, air::SPECIFIC_HEAT.si(), flow, fans.recovery];
    along(steps, Formula::RecoveredAirLoss, &numbers, loss)
}

fn density(steps: &mut Steps, house: &House, temperature: Temperature) -> f64 {
    let numbers = [house.site.altitude.si(), temperature.si()];
    steps.add(Formula::AirDensity, &numbers, "rho")
}

/// A room's share of a flow by its volume.
fn by_volume(steps: &mut Steps, house: &House, flow: f64, room: &Room) -> f64 {
    let numbers = [flow, room.volume().si(), volume(steps, house)];
    steps.add(Formula::ShareByVolume, &numbers, "V_r")
}

/// A room's share of the house's air, or what it is known to take at least.
fn room_flow(steps: &mut Steps, house: &House, index: usize, room: &Room) -> f64 {
    let all = house_flow(steps, house);
    let exposed = exposed_areas(house);
    let share = match exposed.is_empty() {
        true => by_volume(steps, house, all, room),
        false => {
            let mut rooms = vec![0.0; house.rooms.len()];
            for (at, area) in exposed {
                if let Some(sum) = rooms.get_mut(at) {
                    *sum += area.si();
                }
                if at == index {
                    steps.part("A_i", area.si());
                }
            }
            let own = steps.sum("A_r");
            for area in rooms {
                steps.part("A_i", area);
            }
            let whole = steps.sum("A_x");
            steps.add(Formula::ShareByArea, &[all, own, whole], "V_r")
        }
    };
    let volume = room.volume();
    match room.least_air {
        Some(rate) if (rate * volume).si() > share => {
            steps.done.clear();
            steps.add(Formula::OwnAirChange, &[rate.si(), volume.si()], "V_r")
        }
        _ => share,
    }
}

/// An unheated space's own air, and the wind through its vents.
fn space_flow(steps: &mut Steps, house: &House, space: &Space) -> f64 {
    let numbers = [space.air_changes.si(), space.volume().si()];
    let own = steps.add(Formula::OwnAirChange, &numbers, "V_n");
    steps.part("V_n", own);
    let vents = space.vent_area.si();
    if vents > 0.0 {
        let numbers = [house.site.wind.si(), vent_shielding(house.air.shelter), vents];
        let through = steps.add(Formula::VentFlow, &numbers, "V_v");
        steps.part("V_v", through);
    }
    steps.sum("V_r")
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
    for (inside, volume) in degrees {
        let numbers = [volume, all, inside.si(), outdoors];
        let part = steps.add(Formula::WeighedDifference, &numbers, "dT_i");
        steps.part("dT_i", part);
    }
    steps.sum("dT")
}

/// Of all heated rooms.
fn volume(steps: &mut Steps, house: &House) -> f64 {
    for room in &house.rooms {
        steps.part("Vol_i", room.volume().si());
    }
    steps.sum("Vol")
}
