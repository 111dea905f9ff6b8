//! How much outdoor air each room takes: the house's leakage shared by exposed area, and its
//! mechanical ventilation shared by volume.

use super::air::{self, Leakage, Ventilation, air_density};
use super::certainty::Subject;
use super::conductor::{Nodes, buried_area, surfaces};
use super::{Behind, House, OpenFlue, Shelter, Space, Storeys};
use crate::quantity::{Area, ChangeRate, LossCoefficient, Temperature, Volume, VolumeFlow};
use serde::Serialize;

/// What is known of the house's leakage.
#[derive(Debug, Clone, Copy, PartialEq)]
pub enum Leaks {
    /// Air changes of the whole heated volume on the design day.
    Changes(ChangeRate),
    /// From a blower door.
    Measured(BlowerDoor),
    /// From the floor area, or by judgement.
    Estimated(Leakage),
}

/// What a blower door measures.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct BlowerDoor {
    /// At 50 Pa.
    pub flow: VolumeFlow,
    /// How the flow goes with the pressure.
    pub exponent: f64,
}

/// Air through the whole house.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct HouseAir {
    pub leaks: Leaks,
    pub storeys: Storeys,
    pub shelter: Shelter,
    pub flue: OpenFlue,
    pub ventilation: Ventilation,
}

/// What one room's air carries off, a kelvin.
pub(super) struct RoomAir {
    pub leaked: LossCoefficient,
    pub ventilated: LossCoefficient,
    pub subject: Subject,
    /// How much of a relative change of the fans goes into `leaked`; the rest of it is the gaps'.
    pub by_fans: f64,
}

/// The flows of the whole house on the design day.
#[derive(Debug, Clone, Copy, PartialEq, Serialize)]
pub struct HouseFlow {
    /// Through gaps, before fans.
    #[serde(rename = "infiltration_m3_s")]
    pub infiltration: VolumeFlow,
    /// Through gaps, with what unbalanced fans draw in.
    #[serde(rename = "leaked_m3_s")]
    pub leaked: VolumeFlow,
    /// Through both fans at once.
    #[serde(rename = "balanced_m3_s")]
    pub balanced: VolumeFlow,
}

/// The house's flows: its leakage, an open flue's, and what the fans add.
pub fn house_flow(house: &House) -> HouseFlow {
    flow_at(house, house.site.outdoors)
}

/// The same on a day as warm as this, with the wind of the coldest month.
pub(super) fn flow_at(house: &House, outdoors: Temperature) -> HouseFlow {
    let volume: Volume = house.rooms.iter().map(|room| room.volume()).sum();
    let air = &house.air;
    let (own, leakage) = match air.leaks {
        Leaks::Changes(rate) => (rate * volume, Leakage::of(Area::ZERO)),
        Leaks::Measured(BlowerDoor { flow, exponent }) => {
            (VolumeFlow::ZERO, Leakage::from_blower_door(flow, exponent))
        }
        Leaks::Estimated(leakage) => (VolumeFlow::ZERO, leakage),
    };
    let difference = mean_temperature(house) - outdoors;
    let leakage = leakage.with(air.flue);
    let modelled =
        air::infiltration(leakage, air.storeys, air.shelter, difference, house.site.wind);
    let infiltration = own + modelled;
    let combined = air::combine(infiltration, air.ventilation);
    HouseFlow { infiltration, leaked: combined.leaked, balanced: combined.balanced }
}

/// Mean design temperature of the heated rooms, by volume.
pub fn mean_temperature(house: &House) -> Temperature {
    let volume: f64 = house.rooms.iter().map(|room| room.volume().si()).sum();
    let weighed: f64 =
        house.rooms.iter().map(|room| room.volume().si() * room.temperature.si()).sum();
    match volume > 0.0 {
        true => Temperature::from_si(weighed / volume),
        false => house.site.outdoors,
    }
}

/// What the outdoor air of each heated room carries off.
///
/// A room that the user knows to take more than its share takes that; the others keep theirs.
pub(super) fn room_air(house: &House, nodes: &Nodes, flow: HouseFlow) -> Vec<RoomAir> {
    let mut exposed = vec![Area::ZERO; house.rooms.len()];
    for (room, area) in exposed_surfaces(house, nodes) {
        if let Some(sum) = exposed.get_mut(room) {
            *sum += area;
        }
    }
    let volumes: Vec<Volume> = house.rooms.iter().map(|room| room.volume()).collect();
    let leaked = air::share(flow.leaked, &exposed, &volumes);
    let all: Volume = volumes.iter().copied().sum();
    let gaps = flow.infiltration / flow.leaked;
    house
        .rooms
        .iter()
        .zip(leaked)
        .map(|(room, share)| {
            let least = room.least_air.map_or(VolumeFlow::ZERO, |rate| rate * room.volume());
            let density = air_density(room.temperature, house.site.altitude);
            let heat = |flow: VolumeFlow| flow * density * air::SPECIFIC_HEAT;
            let balanced = flow.balanced * (room.volume() / all);
            RoomAir {
                leaked: heat(share.max(least)),
                ventilated: heat(balanced) * (1.0 - house.air.ventilation.recovery),
                subject: Subject::Leakage,
                // Gaps and unbalanced fans add as squares.
                by_fans: if share > least { 1.0 - gaps * gaps } else { 0.0 },
            }
        })
        .collect()
}

/// The areas among which the house's leakage is shared.
pub(crate) fn exposed_areas(house: &House) -> Vec<(usize, Area)> {
    exposed_surfaces(house, &Nodes::of(house))
}

/// Every surface of a heated room that faces outdoor air or an unheated space: the room's place
/// among the rooms, and the area.
fn exposed_surfaces(house: &House, nodes: &Nodes) -> Vec<(usize, Area)> {
    let rooms = house.rooms.len();
    let mut exposed = Vec::new();
    for (node, (_, surfaces)) in surfaces(house).enumerate() {
        for surface in surfaces {
            // What a space shares with a room may be entered on the space's side.
            let of = match surface.behind {
                Behind::Outdoors | Behind::Ground { .. } | Behind::Unheated(..) => Some(node),
                Behind::Room(id) => match nodes.find(id) {
                    Some(other) if node < rooms && other >= rooms => Some(node),
                    Some(other) if node >= rooms && other < rooms => Some(other),
                    _ => None,
                },
                Behind::SameTemperature => None,
            };
            let area = surface.gross_area - buried_area(surface);
            exposed.extend(of.filter(|of| *of < rooms && area > Area::ZERO).map(|of| (of, area)));
        }
    }
    exposed
}

/// Wind through the vents of a crawl space (ISO 13370, suspended floors, wind shielding factors
/// 0.02 sheltered, 0.05 average, 0.10 exposed): its flow is 0.59 of `v f_w` over the vents' area. From
/// memory, with its air of 1.23 kg/m3 and 1000 J/(kg K), which bear out the number in `1450 eps v
/// f_w / B`: twice 0.59 times 1230. What the flow carries here is the air's own, as everywhere.
pub(super) fn vented(space: &Space, house: &House) -> VolumeFlow {
    let speed = house.site.wind.si() * vent_shielding(house.air.shelter);
    VolumeFlow::from_si(0.59 * speed * space.vent_area.si())
}

pub(crate) fn vent_shielding(shelter: Shelter) -> f64 {
    match shelter {
        Shelter::Open => 0.10,
        Shelter::Light | Shelter::Moderate => 0.05,
        Shelter::Heavy | Shelter::VeryHeavy => 0.02,
    }
}

/// Judgement: air of an unheated space on a cold day is near the freezing point.
pub(crate) const SPACE_AIR: Temperature = Temperature::from_si(273.15);
