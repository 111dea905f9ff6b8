//! The water of circuits as the choice of pieces asks for it: which room it reaches how warm, once the
//! flows are known.

use super::super::balance::Circuit;
use super::super::lower::Plumbing;
use super::super::run::Running;
use crate::building::RoomLoad;
use crate::emitter::{self, Element};
use crate::fluid::{Fluid, Stream};
use crate::job::Job;
use crate::network::{Place, Surface};
use crate::numeric::pow;
use crate::pipe;
use crate::quantity::{
    Length, LinearTransmittance, MassFlow, Power, Temperature, TemperatureDifference,
};
use crate::sizing::joint::{After, Water};

/// In mild weather half the design day's heat is wanted: judgement.
const MILD: f64 = 0.5;

/// Plain pipe as the water passes it.
struct Pipe {
    transmittance: LinearTransmittance,
    around: Temperature,
    length: Length,
    flow: MassFlow,
}

/// A room on its circuit.
pub(super) struct Stop {
    pub(super) room: usize,
    /// From the stop before, or the boiler.
    before: Vec<Pipe>,
    /// From a main to the element; nothing on a loop.
    branch: Vec<Pipe>,
    flow: MassFlow,
    air: Temperature,
    load: Power,
    /// Between two tees: the way back to the main, and the main beside it.
    around: Option<(Vec<Pipe>, Vec<Pipe>)>,
}

/// The rooms of a circuit in the order of its water.
pub(super) fn way(
    job: &Job,
    loads: &[RoomLoad],
    circuit: &Circuit,
    at: usize,
    running: &Running,
) -> Option<Vec<Stop>> {
    let plumbing = &running.plumbing;
    let path = &plumbing.circuits.get(at)?.path;
    let mut stops = Vec::new();
    let mut before = Vec::new();
    let stop = |room: usize, before, branch, element: usize, around| {
        Some(Stop {
            room,
            before,
            branch,
            flow: flow(running, element)?,
            air: job.house.rooms.get(room)?.temperature,
            load: loads.get(room)?.wanted(),
            around,
        })
    };
    for &stretch in path {
        let place = plumbing.stretches.get(stretch)?.link.place;
        match (plumbing.tags.get(stretch)?.element, place) {
            (Some(room), _) if circuit.rooms.contains(&room) => {
                stops.push(stop(room, std::mem::take(&mut before), Vec::new(), stretch, None)?);
            }
            // The lowering lays a branch, its element and its way back behind the main beside them.
            (None, Place::Between(_)) => {
                let [out, element, back] = [stretch + 1, stretch + 2, stretch + 3];
                let room = plumbing.tags.get(element)?.element?;
                let branch = pipes(plumbing, running, &[out])?;
                let around =
                    (pipes(plumbing, running, &[back])?, pipes(plumbing, running, &[stretch])?);
                let before = std::mem::take(&mut before);
                stops.push(stop(room, before, branch, element, Some(around))?);
            }
            _ => before.extend(pipes(plumbing, running, &[stretch])?),
        }
    }
    Some(stops)
}

/// The flow of a stretch, if it runs as it was laid.
fn flow(running: &Running, stretch: usize) -> Option<MassFlow> {
    let flow = running.walked.passages.get(stretch)?.mass_flow;
    (flow > MassFlow::ZERO).then_some(flow)
}

fn pipes(plumbing: &Plumbing, running: &Running, stretches: &[usize]) -> Option<Vec<Pipe>> {
    let mut pipes = Vec::new();
    for &stretch in stretches {
        let link = &plumbing.stretches.get(stretch)?.link;
        let flow = flow(running, stretch)?;
        if let Surface::Bare { film, cover, .. } = link.surface
            && link.length > Length::ZERO
        {
            pipes.push(Pipe {
                transmittance: pipe::linear_transmittance(link.tube, cover, film),
                around: link.surroundings,
                length: link.length,
                flow,
            });
        }
    }
    Some(pipes)
}

/// The water of all circuits, as [`joint`] asks for it.
pub(super) struct Chains {
    fluid: Fluid,
    element: Element,
    supply: Temperature,
    mild: Temperature,
    pub(super) ways: Vec<Vec<Stop>>,
}

impl Chains {
    pub(super) fn of(job: &Job, ways: Vec<Vec<Stop>>) -> Chains {
        let element = job.baseboard.element;
        let supply = job.circuit.supply;
        Chains {
            fluid: job.circuit.fluid,
            element,
            supply,
            mild: mild_supply(&ways, supply, &element),
            ways,
        }
    }

    fn stop(&self, circuit: usize, room: usize) -> Option<&Stop> {
        self.ways.get(circuit)?.get(room)
    }

    fn along(&self, pipes: &[Pipe], water: Temperature) -> Temperature {
        pipes.iter().fold(water, |water, pipe| {
            let stream = Stream { fluid: self.fluid, flow: pipe.flow, temperature: water };
            pipe::cool(pipe.transmittance, stream, pipe.around, pipe.length).outlet
        })
    }

    fn reaching(&self, stop: &Stop, water_k: f64) -> (Temperature, Stream) {
        let main = self.along(&stop.before, Temperature::from_si(water_k));
        let temperature = self.along(&stop.branch, main);
        (main, Stream { fluid: self.fluid, flow: stop.flow, temperature })
    }

    fn passed(&self, circuit: usize, room: usize, water_k: f64, finned_m: f64) -> After {
        let Some(stop) = self.stop(circuit, room) else {
            return After { water_k, output_w: 0.0 };
        };
        let (main, stream) = self.reaching(stop, water_k);
        let cooling = emitter::cool(&self.element, stream, stop.air, Length::from_si(finned_m));
        let water = match &stop.around {
            None => cooling.outlet,
            Some((back, beside)) => {
                let back = self.along(back, cooling.outlet);
                let rest = beside.first().map_or(MassFlow::ZERO, |pipe| pipe.flow);
                let main = self.along(beside, main);
                main + (back - main) * (stop.flow / (stop.flow + rest))
            }
        };
        After { water_k: water.si(), output_w: cooling.to_room.si() }
    }
}

/// The supply at which elements give about half: their excess over the rooms goes with the output's
/// exponent.
fn mild_supply(ways: &[Vec<Stop>], supply: Temperature, element: &Element) -> Temperature {
    let airs = ways.iter().flatten().map(|stop| stop.air.si());
    let count = ways.iter().map(Vec::len).sum::<usize>().max(1);
    let air = Temperature::from_si(airs.sum::<f64>() / count as f64);
    let excess: TemperatureDifference = supply - air;
    air + excess * pow(MILD, 1.0 / element.rating.exponent.max(1.0))
}

impl Water for Chains {
    fn enters_k(&self, _: usize) -> f64 {
        self.supply.si()
    }

    fn needed_m(&self, circuit: usize, room: usize, water_k: f64) -> Option<f64> {
        let stop = self.stop(circuit, room)?;
        let (_, stream) = self.reaching(stop, water_k);
        emitter::length_for(&self.element, stream, stop.air, stop.load).map(Length::si)
    }

    fn after(&self, circuit: usize, room: usize, water_k: f64, finned_m: f64) -> After {
        self.passed(circuit, room, water_k, finned_m)
    }

    fn load_w(&self, circuit: usize, room: usize) -> f64 {
        self.stop(circuit, room).map_or(0.0, |stop| stop.load.si())
    }

    fn part_enters_k(&self, _: usize) -> f64 {
        self.mild.si()
    }

    fn part_after(&self, circuit: usize, room: usize, water_k: f64, finned_m: f64) -> After {
        let After { water_k, output_w } = self.passed(circuit, room, water_k, finned_m);
        After { water_k, output_w: output_w / MILD }
    }
}
