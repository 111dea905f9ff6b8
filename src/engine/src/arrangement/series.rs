//! A single series loop: from the boiler through each room in turn and back.

use crate::building::{Behind, Room, RoomLoad, Run, SurfaceId};
use crate::design::RoomElement;
use crate::emitter;
use crate::fluid::{Fluid, Stream};
use crate::job::{Flow, Job, PipeLeg};
use crate::network::{Link, Passage, Place, Surface, pass};
use crate::pipe::Fitting;
use crate::quantity::{
    Length, MassFlow, Power, Temperature, TemperatureDifference, Velocity, VolumeFlow,
};
use crate::sizing::{Choice, choose};
use serde::Serialize;

/// The water's way round.
#[derive(Debug, Clone, PartialEq, Serialize)]
pub struct LoopDesign {
    #[serde(rename = "mass_flow_kg_s")]
    pub mass_flow: MassFlow,
    /// At the supply temperature.
    #[serde(rename = "flow_m3_s")]
    pub flow: VolumeFlow,
    #[serde(rename = "supply_k")]
    pub supply: Temperature,
    #[serde(rename = "back_k")]
    pub back: Temperature,
    /// What the boiler puts back: elements and pipes.
    #[serde(rename = "heat_w")]
    pub heat: Power,
    /// Lost from bare pipe outside the rooms.
    #[serde(rename = "pipe_loss_w")]
    pub pipe_loss: Power,
    /// The highest on the loop.
    #[serde(rename = "velocity_m_s")]
    pub velocity: Velocity,
    /// Head that the circulator must give at this flow, as height of the water at supply temperature.
    #[serde(rename = "head_m")]
    pub head: Length,
    /// Stretches in the order of flow.
    pub passages: Vec<Passage>,
}

impl LoopDesign {
    pub fn drop(&self) -> TemperatureDifference {
        self.supply - self.back
    }
}

/// A loop with the elements it was sized with, in the order of the rooms.
#[derive(Debug, Clone, PartialEq)]
pub struct Solved {
    pub circuit: LoopDesign,
    pub elements: Vec<RoomElement>,
}

/// Marches the water once round, sizing each room's element for the water that reaches it.
pub fn series_loop(job: &Job, loads: &[RoomLoad]) -> Solved {
    let mass_flow = flow_for(job, loads);
    let mut march = March { job, mass_flow, water: job.circuit.supply, passages: Vec::new() };
    march.through(boiler_room(job));
    let mut elements = Vec::new();
    for ((room, approach), load) in job.house.rooms.iter().zip(&job.approaches).zip(loads) {
        march.through(bare_pipe(job, Place::To(room.id), approach));
        elements.push(march.heat(room, load.total));
    }
    march.through(bare_pipe(job, Place::Back, &job.circuit.back));
    Solved { circuit: march.finish(), elements }
}

/// The flow of the loop: typed, or the one that loses the chosen drop while it gives the loads,
/// `m = sum(Q) / (c_p dT)` with the specific heat at the mean of supply and return.
pub fn flow_for(job: &Job, loads: &[RoomLoad]) -> MassFlow {
    let supply = job.circuit.supply;
    match job.circuit.flow {
        Flow::Typed(flow) => flow * Fluid::Water.density(supply),
        Flow::FromDrop(drop) => {
            let heat: Power = loads.iter().map(|load| load.total.max(Power::ZERO)).sum();
            let specific_heat = Fluid::Water.specific_heat(supply - drop / 2.0);
            heat / drop / specific_heat
        }
    }
}

/// The state of the water on its way round.
struct March<'a> {
    job: &'a Job,
    mass_flow: MassFlow,
    water: Temperature,
    passages: Vec<Passage>,
}

impl March<'_> {
    fn stream(&self) -> Stream {
        Stream { fluid: Fluid::Water, flow: self.mass_flow, temperature: self.water }
    }

    fn through(&mut self, link: Link) -> Passage {
        let passage = pass(&link, self.stream());
        self.water = passage.water_out;
        self.passages.push(passage);
        passage
    }

    /// Sizes the element of a room and passes the water through it.
    fn heat(&mut self, room: &Room, load: Power) -> RoomElement {
        let element = self.job.baseboard.element;
        let load = load.max(Power::ZERO);
        let water_in = self.water;
        let needed = emitter::length_for(&element, self.stream(), room.temperature, load);
        let choice = choose_for(self.job, room, needed);
        let passage = self.through(Link {
            place: Place::Element(room.id),
            tube: self.job.circuit.tube,
            length: choice.nominal,
            surface: Surface::Finned { element, finned: choice.finned },
            surroundings: room.temperature,
            fittings: Vec::new(),
            equipment: Length::ZERO,
        });
        RoomElement {
            needed,
            output: passage.to_room,
            water_in,
            water_out: passage.water_out,
            rule_of_thumb: load / element.rating.output,
            choice,
        }
    }

    fn finish(self) -> LoopDesign {
        let supply = self.job.circuit.supply;
        let density = Fluid::Water.density(supply);
        let pressure = self.passages.iter().map(Passage::pressure_drop).sum();
        LoopDesign {
            mass_flow: self.mass_flow,
            flow: self.mass_flow / density,
            supply,
            back: self.water,
            heat: self.passages.iter().map(|p| p.heat).sum(),
            pipe_loss: self
                .passages
                .iter()
                .filter(|p| !matches!(p.place, Place::Element(_)))
                .map(|p| p.heat)
                .sum(),
            velocity: self.passages.iter().fold(Velocity::ZERO, |most, p| most.max(p.velocity)),
            head: crate::pipe::head(pressure, density),
            passages: self.passages,
        }
    }
}

/// Pieces on the outside walls where they suffice, otherwise on all walls. Without a length that
/// would do, as much as the walls take is chosen, so that the shortfall is the least possible.
fn choose_for(job: &Job, room: &Room, needed: Option<Length>) -> Choice {
    let needed = needed.unwrap_or(Length::from_si(1e4));
    if needed == Length::ZERO {
        return Choice::none();
    }
    let outside =
        |behind| matches!(behind, Behind::Outdoors | Behind::Ground { .. } | Behind::Unheated(..));
    let (outer, inner): (Vec<_>, Vec<_>) =
        room.surfaces.iter().partition(|surface| outside(surface.behind));
    let runs = |surfaces: &[&crate::building::Surface]| -> Vec<(SurfaceId, Run)> {
        surfaces.iter().flat_map(|s| s.runs.iter().map(|&run| (s.id, run))).collect()
    };
    let first = choose(&runs(&outer), &job.baseboard, needed);
    if first.finned.si() >= needed.si() * (1.0 - 1e-9) {
        return first;
    }
    choose(&runs(&[outer, inner].concat()), &job.baseboard, needed)
}

fn bare_pipe(job: &Job, place: Place, leg: &PipeLeg) -> Link {
    Link {
        place,
        tube: job.circuit.tube,
        length: leg.length,
        surface: Surface::Bare { film: job.circuit.pipe_film },
        surroundings: job.circuit.pipe_surroundings,
        fittings: vec![(Fitting::Elbow90, leg.elbows)],
        equipment: Length::ZERO,
    }
}

fn boiler_room(job: &Job) -> Link {
    let circuit = &job.circuit;
    Link {
        fittings: vec![
            (Fitting::Elbow90, circuit.boiler_elbows),
            (Fitting::TeeRun, circuit.boiler_tees),
            (Fitting::BallValve, circuit.boiler_valves),
        ],
        equipment: circuit.equipment_head,
        ..bare_pipe(job, Place::BoilerRoom, &PipeLeg { length: Length::ZERO, elbows: 0 })
    }
}
