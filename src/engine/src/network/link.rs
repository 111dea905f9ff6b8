//! One stretch of tube, bare or finned, with its fittings.

use crate::building::RoomId;
use crate::emitter::{self, Element};
use crate::fluid::{Fluid, Stream};
use crate::pipe::{self, Fitting, STANDARD_GRAVITY, Tube};
use crate::quantity::{Length, Power, Pressure, Temperature, Transmittance, Velocity};
use serde::Serialize;

/// Where a stretch lies on the loop.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize)]
#[serde(rename_all = "kebab-case")]
pub enum Place {
    BoilerRoom,
    /// From the room before it, or the boiler, to this room.
    To(RoomId),
    /// The baseboard in this room.
    Element(RoomId),
    /// From the last room back to the boiler.
    Back,
}

/// How a stretch loses heat.
#[derive(Debug, Clone, Copy, PartialEq)]
pub enum Surface {
    Bare { film: Transmittance },
    Finned { element: Element, finned: Length },
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
    /// Pressure lost in equipment whose head is known.
    pub equipment: Length,
}

/// What the water does on a stretch.
#[derive(Debug, Clone, Copy, PartialEq, Serialize)]
pub struct Passage {
    pub place: Place,
    #[serde(rename = "length_m")]
    pub length: Length,
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
}

impl Passage {
    /// All pressure lost on the stretch, as the height of its own water.
    pub fn head(&self) -> Length {
        let mean = self.water_in + (self.water_out - self.water_in) / 2.0;
        pipe::head(self.pressure_drop(), Fluid::Water.density(mean))
    }

    /// All pressure lost on the stretch.
    pub fn pressure_drop(&self) -> Pressure {
        self.friction + self.fittings + self.equipment
    }
}

/// Passes `stream` through `link`.
///
/// The element's tube counts at its nominal length for friction and at its finned length for heat.
/// Friction takes the properties at the mean of inlet and outlet.
pub fn pass(link: &Link, stream: Stream) -> Passage {
    let (outlet, heat, to_room) = match link.surface {
        Surface::Bare { film } => {
            let transmittance = pipe::linear_transmittance(link.tube, None, film);
            let cooling = pipe::cool(transmittance, stream, link.surroundings, link.length);
            (cooling.outlet, cooling.heat, Power::ZERO)
        }
        Surface::Finned { element, finned } => {
            let cooling = emitter::cool(&element, stream, link.surroundings, finned);
            (cooling.outlet, cooling.from_water, cooling.to_room)
        }
    };
    let mean = stream.temperature + (outlet - stream.temperature) / 2.0;
    let flow = pipe::pipe_flow(link.tube.bore(), Stream { temperature: mean, ..stream });
    let fittings =
        link.fittings.iter().map(|&(kind, count)| kind.k(link.tube.nominal()) * f64::from(count));
    Passage {
        place: link.place,
        length: link.length,
        water_in: stream.temperature,
        water_out: outlet,
        heat,
        to_room,
        velocity: flow.velocity,
        reynolds: flow.reynolds,
        friction_factor: flow.friction_factor,
        friction: flow.pressure_drop(link.length),
        fittings: flow.fitting_drop(fittings.sum()),
        equipment: Pressure::from_si(flow.density.si() * STANDARD_GRAVITY * link.equipment.si()),
    }
}
