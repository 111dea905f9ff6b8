//! A designed system as what it gives to rooms that may be warmer or colder than they are meant to be.

mod measuring;

pub(crate) use measuring::Seen;

use super::balance::circuits;
use super::lower::Plumbing;
use super::pumping::Built;
use super::run::{Running, pumps, running_from, source, usual_drive};
use crate::building::RoomLoad;
use crate::design::Design;
use crate::emitter::{self, Element, length_for};
use crate::job::Job;
use crate::network::{Place, Solved, Source, Stretch, Surface, follow, places, walk};
use crate::pipe::{self, linear_transmittance};
use crate::quantity::{Length, LinearTransmittance, MassFlow, Power, SpecificHeat, Temperature};
use serde::Serialize;

/// Flows settle to this share of the largest, which turns no heat by a millionth.
const SETTLED: f64 = 1e-6;

/// A designed system that may run at another supply.
#[derive(Debug)]
pub(crate) struct Tried<'a> {
    built: Built<'a>,
    /// At the supply that was tried last.
    job: Job,
    loads: Vec<RoomLoad>,
    /// The share of its output that each room's damper leaves; none where all are open.
    dampers: Vec<f64>,
}

/// Some zones of a system calling, with the flows found once: how warm the air is does not move them by
/// anything that counts.
#[derive(Debug)]
pub(crate) struct Heating {
    plumbing: Plumbing,
    solved: Solved,
    source: Source,
    /// The stretch of each link.
    of_link: Vec<usize>,
    pass: Vec<Pass>,
    exponent: f64,
    /// By circulator, from the mains: of each zone, or the one of all.
    pub(crate) electric_w: Vec<(Option<usize>, f64)>,
    /// Through the boiler.
    pub(crate) flow_kg_s: f64,
    /// In each zone's tubes, m3.
    pub(crate) zone_volume_m3: Vec<f64>,
}

/// A stretch as heat alone.
#[derive(Debug, Clone, Copy)]
struct Pass {
    /// The room whose air is around it.
    air: Option<usize>,
    zone: Option<usize>,
    through: Through,
    length: Length,
    surroundings: Temperature,
    /// At its mean water of the last time: rooms a little warmer turn it by nothing that counts.
    specific_heat: SpecificHeat,
}

#[derive(Debug, Clone, Copy)]
enum Through {
    Bare(LinearTransmittance),
    Finned(Element),
}

/// What a system gives while it runs.
#[derive(Debug, Clone, Default)]
pub(crate) struct Given {
    /// To each room, from its element and the pipe in it, W.
    pub(crate) to_room_w: Vec<f64>,
    /// By how much that falls for each kelvin of warmer air, the water's inlet held, W/K.
    pub(crate) slope_w_k: Vec<f64>,
    /// Lost outside the rooms, of each zone, W.
    pub(crate) zone_lost_w: Vec<f64>,
    pub(crate) back_k: f64,
}

impl<'a> Tried<'a> {
    /// The job is the one designed.
    pub(crate) fn of(job: &'a Job, design: &Design) -> Tried<'a> {
        let loads = design.rooms.iter().map(|room| room.load.clone()).collect();
        Tried { built: Built::of(job, design), job: job.clone(), loads, dampers: Vec::new() }
    }

    /// Turns the dampers of the rooms' enclosures. What of an element's output is left, less heat is
    /// taken from the water too.
    pub(crate) fn damp(&mut self, dampers: &[f64]) {
        self.dampers = dampers.to_vec();
    }

    /// While these zones call, with this supply, from the flows that they had at another; none where the
    /// flows are not found.
    pub(crate) fn heating(
        &mut self,
        on: &[bool],
        supply: Temperature,
        before: Option<&Heating>,
    ) -> Option<Heating> {
        self.job.circuit.supply = supply;
        let job = &self.job;
        let circuits = circuits(job, &self.loads);
        let mut plan = self.built.plan(on, usual_drive(job));
        (plan.job, plan.circuits) = (job, &circuits);
        let running = running_from(plan, before.map(|before| before.solved.clone()), SETTLED);
        heating_of(job, running, &self.dampers)
    }
}

/// A running system as heat alone, the dampers of its rooms set to these shares of the output; wide open
/// where none is named.
fn heating_of(job: &Job, running: Running, dampers: &[f64]) -> Option<Heating> {
    let pumped = pumps(job, &running);
    let electric_w = running.plumbing.pumps.iter().zip(&pumped);
    let electric_w = electric_w.map(|(link, pump)| (link.zone, pump.electric.si())).collect();
    let source = source(job, &running.plumbing);
    let mut zone_volume_m3 = vec![0.0; job.zones.len()];
    let mut pass = Vec::new();
    let all = running.plumbing.tags.iter().zip(&running.plumbing.stretches);
    for ((tag, Stretch { link, .. }), passage) in all.zip(&running.walked.passages) {
        add(&mut zone_volume_m3, tag.zone, (link.tube.flow_area() * link.length).si());
        let air = match link.place {
            Place::Element(id) | Place::Inside(id) | Place::Above(id) => {
                job.house.rooms.iter().position(|room| room.id == id)
            }
            _ => None,
        };
        let (through, length) = match link.surface {
            Surface::Bare { film, cover, .. } => {
                (Through::Bare(linear_transmittance(link.tube, cover, film)), link.length)
            }
            Surface::Finned { mut element, finned } => {
                element.derate *= air.and_then(|room| dampers.get(room)).unwrap_or(&1.0);
                (Through::Finned(element), finned)
            }
        };
        let specific_heat = source.fluid.specific_heat(passage.mean_water());
        let (zone, surroundings) = (tag.zone, link.surroundings);
        pass.push(Pass { air, zone, through, length, surroundings, specific_heat });
    }
    let first = running.walked.passages.first();
    Some(Heating {
        of_link: places(&running.plumbing.network, &running.plumbing.stretches),
        solved: running.solved.ok()?,
        source,
        pass,
        exponent: job.baseboard.element.rating.exponent,
        electric_w,
        flow_kg_s: first.map_or(0.0, |boiler| boiler.mass_flow.si()),
        zone_volume_m3,
        plumbing: running.plumbing,
    })
}

impl Heating {
    /// What it gives to rooms as warm as this, in K, in a system of so many zones.
    pub(crate) fn give(&mut self, rooms_k: &[f64], zones: usize) -> Given {
        self.give_seen(rooms_k, zones, &mut |_, _, _| {})
    }

    /// The same; `seen` is told of each stretch, by its place, the water that enters it and the water that
    /// leaves it.
    fn give_seen(
        &mut self,
        rooms_k: &[f64],
        zones: usize,
        seen: &mut dyn FnMut(usize, Temperature, Temperature),
    ) -> Given {
        let mut given = Given {
            to_room_w: vec![0.0; rooms_k.len()],
            slope_w_k: vec![0.0; rooms_k.len()],
            zone_lost_w: vec![0.0; zones],
            back_k: 0.0,
        };
        let Heating { of_link, pass, source, exponent, .. } = self;
        let network = &self.plumbing.network;
        let back = follow(network, Some(&self.solved), *source, &mut |link, mass, water| {
            let Some(stretch) = pass.get_mut(of_link[link]) else { return water };
            let room = stretch.air.filter(|room| *room < rooms_k.len());
            if let Some(room) = room {
                stretch.surroundings = Temperature::from_si(rooms_k[room]);
            }
            let flow = MassFlow::from_si(mass.abs());
            let (leaves, heat) = stretch.cool(flow, water);
            seen(of_link[link], water, leaves);
            let mean = water + (leaves - water) / 2.0;
            stretch.specific_heat = source.fluid.specific_heat(mean);
            match room {
                Some(room) => {
                    given.to_room_w[room] += heat.si();
                    let by = match stretch.through {
                        Through::Finned(_) => *exponent,
                        Through::Bare(_) => 1.0,
                    };
                    let excess_k = mean.si() - rooms_k[room];
                    if excess_k > 0.0 {
                        given.slope_w_k[room] += by * heat.si() / excess_k;
                    }
                }
                None => add(&mut given.zone_lost_w, stretch.zone, heat.si()),
            }
            leaves
        });
        given.back_k = back.si();
        given
    }
}

impl Pass {
    /// The water that leaves it, and the heat that is good for its room, or lost.
    fn cool(&self, flow: MassFlow, water: Temperature) -> (Temperature, Power) {
        let Pass { through, length, surroundings: air, specific_heat: heat, .. } = *self;
        match through {
            Through::Bare(transmittance) => {
                let cooled =
                    pipe::cool_at_specific_heat(transmittance, heat, flow, water, air, length);
                (cooled.outlet, cooled.heat)
            }
            Through::Finned(element) => {
                let cooled =
                    emitter::cool_at_specific_heat(&element, heat, flow, water, air, length);
                (cooled.outlet, cooled.to_room)
            }
        }
    }
}

impl Heating {
    /// The finned length, m, that gives each room what it needs, in W, with the water that the rooms before
    /// it leave: no less than it has, and of those that need more just that. None where no length does.
    pub(crate) fn lengthen(&mut self, rooms_k: &[f64], need_w: &[f64]) -> Vec<Option<f64>> {
        let mut stretches = self.plumbing.stretches.clone();
        for (stretch, pass) in stretches.iter_mut().zip(&self.pass) {
            if let Some(k) = pass.air.and_then(|room| rooms_k.get(room)) {
                stretch.link.surroundings = Temperature::from_si(*k);
            }
        }
        let Plumbing { network, tags, .. } = &self.plumbing;
        let flows = Some(&self.solved);
        let walked = walk(network, flows, self.source, &mut stretches, &mut |_, _, _| {});
        let mut left_w = need_w.to_vec();
        for (pass, passage) in self.pass.iter().zip(&walked.passages) {
            let room = pass.air.filter(|_| matches!(pass.through, Through::Bare(_)));
            if let Some(left) = room.and_then(|room| left_w.get_mut(room)) {
                *left -= passage.heat.si();
            }
        }
        let mut lengths = vec![Some(0.0); need_w.len()];
        walk(network, flows, self.source, &mut stretches, &mut |at, link, stream| {
            let (Some(room), Surface::Finned { element, finned }) =
                (tags[at].element, link.surface)
            else {
                return;
            };
            let heat = Power::from_si(left_w[room].max(0.0));
            let needed = length_for(&element, stream, link.surroundings, heat);
            let length = needed.map(|needed| needed.max(finned));
            lengths[room] = length.map(Length::si);
            // A room that no length heats takes no more than it does now.
            link.surface = Surface::Finned { element, finned: length.unwrap_or(finned) };
        });
        lengths
    }
}

fn add(sums: &mut [f64], zone: Option<usize>, value: f64) {
    if let Some(sum) = zone.and_then(|zone| sums.get_mut(zone)) {
        *sum += value;
    }
}

/// A stretch of a loop as plain data, for a check by another program.
#[derive(Debug, Clone, PartialEq, Serialize)]
pub struct LoopStretch {
    /// The room that it warms, by its place in the job.
    pub room: Option<usize>,
    /// Around it, where that is no room.
    pub surroundings_k: f64,
    /// For heat: of an element its finned length.
    pub length_m: f64,
    /// Of plain pipe.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub pipe_w_mk: Option<f64>,
    #[serde(skip_serializing_if = "Option::is_none")]
    pub element: Option<LoopElement>,
}

/// An element's rating.
#[derive(Debug, Clone, PartialEq, Serialize)]
pub struct LoopElement {
    /// With what it is derated by.
    pub output_w_m: f64,
    pub water_k: f64,
    pub air_k: f64,
    pub exponent: f64,
    pub flow_kg_s: f64,
    pub room_share: f64,
    pub water_share: f64,
}

impl Heating {
    /// The stretches of a single loop, in the order of flow; none of any other network.
    pub(crate) fn single_loop(&self) -> Option<Vec<LoopStretch>> {
        let Plumbing { stretches, .. } = &self.plumbing;
        let flow_kg_s = self.flow_kg_s;
        let one = |(stretch, pass): (&Stretch, &Pass)| {
            let same = (self.solved.flow(stretch.id).si() - flow_kg_s).abs() <= 1e-9 * flow_kg_s;
            let (pipe_w_mk, element) = match pass.through {
                Through::Bare(transmittance) => (Some(transmittance.si()), None),
                Through::Finned(element) => (None, Some(exported(&element))),
            };
            same.then(|| LoopStretch {
                room: pass.air,
                surroundings_k: stretch.link.surroundings.si(),
                length_m: pass.length.si(),
                pipe_w_mk,
                element,
            })
        };
        stretches.iter().zip(&self.pass).map(one).collect()
    }
}

fn exported(element: &Element) -> LoopElement {
    let Element { rating, derate } = element;
    LoopElement {
        output_w_m: rating.output.si() * derate,
        water_k: rating.water.si(),
        air_k: rating.air.si(),
        exponent: rating.exponent,
        flow_kg_s: rating.flow.si(),
        room_share: rating.effect.room_share(),
        water_share: rating.effect.water_share(),
    }
}
