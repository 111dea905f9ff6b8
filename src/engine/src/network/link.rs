//! One stretch of tube, bare or finned, with its fittings.

use crate::building::{RoomId, ZoneId};
use crate::emitter::{self, Element};
use crate::fluid::Stream;
use crate::pipe::{self, Cv, Fitting, Insulation, STANDARD_GRAVITY, Tube};
use crate::quantity::{
    Density, Length, MassFlow, Power, Pressure, Temperature, Transmittance, Velocity,
};
use serde::Serialize;

/// Where a stretch lies.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize)]
#[serde(rename_all = "kebab-case")]
pub enum Place {
    BoilerRoom,
    /// An electric valve that lets a zone's water through.
    ZoneValve(ZoneId),
    /// Behind a zone's own circulator.
    FlowCheck(ZoneId),
    /// From the boiler to where a zone's rooms begin, and back.
    Trunk(ZoneId),
    TrunkBack(ZoneId),
    /// From the room before it, the boiler, the main or the manifold to this room, outside the
    /// rooms. Where a main passes the rooms, it is the main.
    To(RoomId),
    /// The same in the enclosure.
    Inside(RoomId),
    /// From the main to the element, and from it to the main.
    Branch(RoomId),
    BranchBack(RoomId),
    /// The baseboard in this room.
    Element(RoomId),
    /// The main between a room's two tees.
    Between(RoomId),
    /// The return main from this room on.
    ReturnMain(RoomId),
    /// Above the element of this room, in its enclosure, on the way back.
    Above(RoomId),
    /// From this room back: the last of its loop, or each on a manifold.
    Back(RoomId),
    /// The balancing valve of the circuit that this room is the first of.
    Balance(RoomId),
}

/// How a stretch loses heat.
#[derive(Debug, Clone, Copy, PartialEq)]
pub enum Surface {
    Bare { film: Transmittance, cover: Option<Insulation>, warms: Warms },
    Finned { element: Element, finned: Length },
}

/// What the heat of plain pipe is good for.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Warms {
    Nothing,
    /// The room it runs in.
    Room,
}

/// What stands in a stretch beside tube and fittings.
#[derive(Debug, Clone, Copy, PartialEq)]
pub enum Equipment {
    None,
    /// Its head is known at one flow, and goes by the square.
    Head {
        head: Length,
        at: MassFlow,
    },
    Valve(Cv),
}

/// A stretch of tube.
#[derive(Debug, Clone, PartialEq)]
pub struct Link {
    pub place: Place,
    pub tube: Tube,
    pub length: Length,
    pub surface: Surface,
    /// Air around it.
    pub surroundings: Temperature,
    pub fittings: Vec<(Fitting, u32)>,
    /// Loss coefficients beyond those of the fittings.
    pub extra_k: f64,
    pub equipment: Equipment,
}

impl Link {
    /// Sum of the loss coefficients, on the velocity in the tube.
    pub fn k(&self) -> f64 {
        let nominal = self.tube.nominal();
        let fittings =
            self.fittings.iter().map(|&(kind, count)| kind.k(nominal) * f64::from(count));
        fittings.sum::<f64>() + self.extra_k
    }
}

/// What the water does on a stretch.
#[derive(Debug, Clone, Copy, PartialEq, Serialize)]
pub struct Passage {
    pub place: Place,
    pub tube: Tube,
    #[serde(rename = "length_m")]
    pub length: Length,
    #[serde(rename = "mass_flow_kg_s")]
    pub mass_flow: MassFlow,
    #[serde(rename = "water_in_k")]
    pub water_in: Temperature,
    #[serde(rename = "water_out_k")]
    pub water_out: Temperature,
    /// Heat that the water gives up.
    #[serde(rename = "heat_w")]
    pub heat: Power,
    /// What its room is credited with.
    #[serde(rename = "to_room_w")]
    pub to_room: Power,
    #[serde(rename = "velocity_m_s")]
    pub velocity: Velocity,
    pub reynolds: f64,
    pub friction_factor: f64,
    #[serde(rename = "friction_pa")]
    pub friction: Pressure,
    #[serde(rename = "fittings_pa")]
    pub fittings: Pressure,
    #[serde(rename = "equipment_pa")]
    pub equipment: Pressure,
    /// Of the water midway.
    #[serde(rename = "density_kg_m3")]
    pub density: Density,
    /// Where it begins, above that at the expansion tank; without the weight of the water.
    #[serde(rename = "pressure_in_pa")]
    pub pressure_in: Pressure,
}

impl Passage {
    /// All pressure lost on the stretch, as the height of its own water.
    pub fn head(&self) -> Length {
        pipe::head(self.pressure_drop(), self.density)
    }

    /// All pressure lost on the stretch.
    pub fn pressure_drop(&self) -> Pressure {
        self.friction + self.fittings + self.equipment
    }

    /// Midway between inlet and outlet.
    pub fn mean_water(&self) -> Temperature {
        self.water_in + (self.water_out - self.water_in) / 2.0
    }
}

/// Passes `stream` through `link`.
///
/// The element's tube counts at its nominal length for friction and at its finned length for heat.
/// Friction takes the properties at the mean of inlet and outlet. The pressure at the inlet is left
/// at zero: one stretch does not know it.
pub fn pass(link: &Link, stream: Stream) -> Passage {
    let (outlet, heat, to_room) = match link.surface {
        Surface::Bare { film, cover, warms } => {
            let transmittance = pipe::linear_transmittance(link.tube, cover, film);
            let cooling = pipe::cool(transmittance, stream, link.surroundings, link.length);
            let to_room = match warms {
                Warms::Nothing => Power::ZERO,
                Warms::Room => cooling.heat,
            };
            (cooling.outlet, cooling.heat, to_room)
        }
        Surface::Finned { element, finned } => {
            let cooling = emitter::cool(&element, stream, link.surroundings, finned);
            (cooling.outlet, cooling.from_water, cooling.to_room)
        }
    };
    let mean = stream.temperature + (outlet - stream.temperature) / 2.0;
    let flow = pipe::pipe_flow(link.tube.bore(), Stream { temperature: mean, ..stream });
    let equipment = match link.equipment {
        Equipment::None => Pressure::ZERO,
        // Where no flow is meant, the head is what was typed.
        Equipment::Head { head, at } => {
            let over = if at > MassFlow::ZERO { stream.flow / at } else { 1.0 };
            let pressure_pa = flow.density.si() * STANDARD_GRAVITY * head.si();
            Pressure::from_si(pressure_pa * over * over)
        }
        Equipment::Valve(cv) => {
            pipe::cv_pressure_drop(stream.flow / flow.density, flow.density, cv)
        }
    };
    Passage {
        place: link.place,
        tube: link.tube,
        length: link.length,
        mass_flow: stream.flow,
        water_in: stream.temperature,
        water_out: outlet,
        heat,
        to_room,
        velocity: flow.velocity,
        reynolds: flow.reynolds,
        friction_factor: flow.friction_factor,
        friction: flow.pressure_drop(link.length),
        fittings: flow.fitting_drop(link.k()),
        equipment,
        density: flow.density,
        pressure_in: Pressure::ZERO,
    }
}
