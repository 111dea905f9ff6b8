//! How much outdoor air each room takes: the house's leakage shared by exposed area, and its
//! mechanical ventilation shared by volume.

use super::air::{self, Leakage, Ventilation, air_density};
use super::certainty::Subject;
use super::conductor::{Nodes, buried_area, surfaces};
use super::{Behind, House, OpenFlue, Shelter, Space, Storeys};
use crate::quantity::{Area, ChangeRate, LossCoefficient, Temperature, Volume, VolumeFlow};

/// What is known of the house's leakage.
#[derive(Debug, Clone, Copy, PartialEq)]
pub enum Leaks {
    /// Air changes of the whole heated volume on the design day.
    Changes(ChangeRate),
    /// From a blower door.
    Measured(Leakage),
    /// From the floor area, or by judgement.
    Estimated(Leakage),
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
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct HouseFlow {
    /// Through gaps, before fans.
    pub infiltration: VolumeFlow,
    /// Through gaps, with what unbalanced fans draw in.
    pub leaked: VolumeFlow,
    /// Through both fans at once.
    pub balanced: VolumeFlow,
}

/// The house's flows: its leakage, an open flue's, and what the fans add.
pub fn house_flow(house: &House) -> HouseFlow {
    let volume: Volume = house.rooms.iter().map(|room| room.volume()).sum();
    let air = &house.air;
    let (own, leakage) = match air.leaks {
        Leaks::Changes(rate) => (rate * volume, Leakage::of(Area::ZERO)),
        Leaks::Measured(leakage) | Leaks::Estimated(leakage) => (VolumeFlow::ZERO, leakage),
    };
    let difference = mean_temperature(house) - house.site.outdoors;
    let leakage = leakage.with(air.flue);
    let modelled =
        air::infiltration(leakage, air.storeys, air.shelter, difference, house.site.wind);
    let infiltration = own + modelled;
    let combined = air::combine(infiltration, air.ventilation);
    HouseFlow { infiltration, leaked: combined.leaked, balanced: combined.balanced }
}

/// Mean design temperature of the heated rooms, by volume.
fn mean_temperature(house: &House) -> Temperature {
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
pub(super) fn room_air(house: &House, nodes: &Nodes) -> Vec<RoomAir> {
    let flow = house_flow(house);
    let exposed = exposed_areas(house, nodes);
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

/// The area of each heated room that faces outdoor air or an unheated space.
fn exposed_areas(house: &House, nodes: &Nodes) -> Vec<Area> {
    let rooms = house.rooms.len();
    let mut exposed = vec![Area::ZERO; rooms];
    for (node, (_, surfaces)) in surfaces(house).enumerate() {
        for surface in surfaces {
            let area = surface.gross_area - buried_area(surface);
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
            if let Some(sum) = of.and_then(|of| exposed.get_mut(of)) {
                *sum += area;
            }
        }
    }
    exposed
}

/// Wind through the vents of a crawl space (ISO 13370, suspended floors, wind shielding factors
/// 0.02 sheltered, 0.05 average, 0.10 exposed): `1450 eps v f_w / B` over the floor's area is
/// `725 v f_w` times the vents' area, as a conductance; here as a flow of air of 1200 J/(m3 K), the
/// heat capacity that the standard's number holds.
pub(super) fn vented(space: &Space, house: &House) -> VolumeFlow {
    let shielding = match house.air.shelter {
        Shelter::Open => 0.10,
        Shelter::Light | Shelter::Moderate => 0.05,
        Shelter::Heavy | Shelter::VeryHeavy => 0.02,
    };
    VolumeFlow::from_si(725.0 / 1200.0 * house.site.wind.si() * shielding * space.vent_area.si())
}
