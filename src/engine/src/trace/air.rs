//! Workings of the air that comes in.

use super::heat::ends;
use super::{Formula, Step, Steps, Term, number, of, term};
use crate::building::air::{self, stack_coefficient_m2_s2k, wind_coefficient};
use crate::building::flows::{SPACE_AIR, exposed_areas, vent_shielding};
use crate::building::{BlowerDoor, House, Leaks, OpenFlue, PathLoss, Room, RoomId, Space};
use crate::job::Job;
use crate::quantity::{Area, Kind, Length, Temperature, Volume, VolumeFlow};

/// What leaks into the house, with what fans draw in.
pub(super) fn house_air(job: &Job) -> Vec<Step> {
    let mut steps = Steps::default();
    house_flow(&mut steps, &job.house);
    steps.0
}

fn house_flow(steps: &mut Steps, house: &House) -> Term {
    let air = &house.air;
    let mut flows = Vec::new();
    let mut gaps = Vec::new();
    match air.leaks {
        Leaks::Changes(rate) => {
            let terms = [term("n", rate), volume(steps, house)];
            flows.push(steps.add(Formula::AirChange, &terms, "V_n", Kind::AirFlow));
        }
        Leaks::Measured(BlowerDoor { flow: at_50, exponent }) => {
            // As the engine has it: air at 20 °C and sea level.
            let rho = density(steps, Length::ZERO, Temperature::from_si(293.15));
            let terms = [flow("V_50", at_50), number("n", exponent), rho];
            gaps.push(steps.add(Formula::LeakageArea, &terms, "A_i", Kind::SmallArea));
        }
        Leaks::Estimated(leakage) => gaps.push(small("A_i", leakage.area())),
    }
    if air.flue != OpenFlue::None {
        gaps.push(small("A_flue", air.flue.area()));
    }
    if !gaps.is_empty() {
        let gaps = steps.sum(&gaps, "A_L");
        let terms = [
            gaps,
            number("C_s", stack_coefficient_m2_s2k(air.storeys)),
            difference(steps, house),
            number("C_w", wind_coefficient(air.storeys, air.shelter)),
            wind(house),
        ];
        flows.push(steps.add(Formula::Infiltration, &terms, "V_L", Kind::AirFlow));
    }
    let (supply, exhaust) = (air.ventilation.supply, air.ventilation.exhaust);
    if supply == exhaust {
        return steps.sum(&flows, "V_h");
    }
    let leaked = steps.sum(&flows, "V_i");
    let (more, less) = (supply.max(exhaust), supply.min(exhaust));
    let mut fans = vec![flow("V_fan", more)];
    if less > VolumeFlow::ZERO {
        fans.push(flow("V_fan", -less));
    }
    let terms = [steps.sum(&fans, "V_u"), leaked];
    steps.add(Formula::WithFans, &terms, "V_h", Kind::AirFlow)
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
    Some(warmed(steps, house, (flow, temperature), None, loss))
}

/// What the fans bring into a room.
pub(super) fn ventilated(job: &Job, id: RoomId, loss: &PathLoss) -> Option<Vec<Step>> {
    let house = &job.house;
    let room = house.rooms.iter().find(|room| room.id == id)?;
    let mut steps = Steps::default();
    let fans = &house.air.ventilation;
    let balanced = flow("V_h", fans.supply.min(fans.exhaust));
    let terms = [balanced, term("Vol_r", room.volume()), volume(&mut steps, house)];
    let flow = steps.add(Formula::ShareByVolume, &terms, "V", Kind::AirFlow);
    let recovery = number("eta", fans.recovery);
    Some(warmed(steps, house, (flow, room.temperature), Some(recovery), loss))
}

/// The heat that warms a flow.
fn warmed(
    mut steps: Steps,
    house: &House,
    (flow, temperature): (Term, Temperature),
    recovery: Option<Term>,
    loss: &PathLoss,
) -> Vec<Step> {
    let rho = density(&mut steps, house.site.altitude, temperature);
    let mut terms = vec![rho, term("c", air::SPECIFIC_HEAT), flow];
    terms.extend(recovery);
    terms.extend(ends(loss));
    let formula = match recovery {
        Some(_) => Formula::RecoveredAirLoss,
        None => Formula::AirLoss,
    };
    steps.end(formula, &terms, term("Q", loss.loss))
}

/// A room's share of the house's air, or what it is known to take at least.
fn room_flow(house: &House, index: usize, room: &Room) -> (Steps, Term) {
    let mut steps = Steps::default();
    let all = house_flow(&mut steps, house);
    let volume_r = term("Vol_r", room.volume());
    let exposed = exposed_areas(house);
    let share = match exposed.is_empty() {
        true => {
            let terms = [all, volume_r, volume(&mut steps, house)];
            steps.add(Formula::ShareByVolume, &terms, "V", Kind::AirFlow)
        }
        false => {
            let areas = |at: usize| {
                exposed.iter().filter(move |(room, _)| *room == at).map(|(_, area)| *area)
            };
            let own: Vec<Term> = areas(index).map(|area| term("A_i", area)).collect();
            let rooms = (0..house.rooms.len()).map(|at| areas(at).sum::<Area>());
            let rooms: Vec<Term> = rooms.map(|area| term("A_i", area)).collect();
            let own = match own.is_empty() {
                true => term("A_r", Area::ZERO),
                false => steps.sum(&own, "A_r"),
            };
            let terms = [all, own, steps.sum(&rooms, "A_x")];
            steps.add(Formula::ShareByArea, &terms, "V", Kind::AirFlow)
        }
    };
    match room.least_air {
        Some(rate) if (rate * room.volume()).si() > share.value.si => {
            let mut steps = Steps::default();
            let flow =
                steps.add(Formula::OwnAirChange, &[term("n", rate), volume_r], "V", Kind::AirFlow);
            (steps, flow)
        }
        _ => (steps, share),
    }
}

/// An unheated space's own air, and the wind through its vents.
fn space_flow(house: &House, space: &Space) -> (Steps, Term) {
    let mut steps = Steps::default();
    let terms = [term("n", space.air_changes), term("Vol_r", space.volume())];
    let mut flows = vec![steps.add(Formula::OwnAirChange, &terms, "V_n", Kind::AirFlow)];
    if space.vent_area > Area::ZERO {
        let shielding = number("f_v", vent_shielding(house.air.shelter));
        let terms = [wind(house), shielding, small("A_v", space.vent_area)];
        flows.push(steps.add(Formula::VentFlow, &terms, "V_v", Kind::AirFlow));
    }
    let flow = steps.sum(&flows, "V");
    (steps, flow)
}

/// How much warmer the house is than outdoors, its rooms weighed by their volume.
fn difference(steps: &mut Steps, house: &House) -> Term {
    let mut degrees: Vec<(Temperature, Volume)> = Vec::new();
    for room in &house.rooms {
        match degrees.iter_mut().find(|(known, _)| *known == room.temperature) {
            Some((_, volume)) => *volume += room.volume(),
            None => degrees.push((room.temperature, room.volume())),
        }
    }
    let outdoors = term("T_0", house.site.outdoors);
    let kind = Kind::TemperatureDifference;
    if let [(inside, _)] = degrees[..] {
        return steps.add(Formula::Difference, &[term("T_in", inside), outdoors], "dT", kind);
    }
    let all = volume(steps, house);
    let parts: Vec<Term> = degrees
        .into_iter()
        .map(|(inside, volume)| {
            let terms = [term("Vol_r", volume), all, term("T_in", inside), outdoors];
            steps.add(Formula::WeighedDifference, &terms, "dT_i", kind)
        })
        .collect();
    steps.sum(&parts, "dT")
}

/// Of all heated rooms.
fn volume(steps: &mut Steps, house: &House) -> Term {
    let rooms: Vec<Term> = house.rooms.iter().map(|room| term("Vol_i", room.volume())).collect();
    steps.sum(&rooms, "Vol")
}

fn density(steps: &mut Steps, altitude: Length, temperature: Temperature) -> Term {
    // The gas law counts from absolute zero, so that the page must not show it in °C.
    let absolute = of("T_abs", Kind::TemperatureDifference, temperature.si());
    let terms = [term("h_alt", altitude), absolute];
    steps.add(Formula::AirDensity, &terms, "rho", Kind::Density)
}

fn flow(symbol: &'static str, flow: VolumeFlow) -> Term {
    of(symbol, Kind::AirFlow, flow.si())
}

fn small(symbol: &'static str, area: Area) -> Term {
    of(symbol, Kind::SmallArea, area.si())
}

fn wind(house: &House) -> Term {
    of("v_w", Kind::Wind, house.site.wind.si())
}
