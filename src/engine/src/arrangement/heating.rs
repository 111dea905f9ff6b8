//! A designed system as what it gives to rooms that may be warmer or colder than they are meant to be.

use super::balance::circuits;
use super::lower::Plumbing;
use super::pumping::Built;
use super::run::{pumps, running_from, source, usual_drive};
use crate::building::RoomLoad;
use crate::design::Design;
use crate::emitter::{Element, length_for};
use crate::job::Job;
use crate::network::{Passage, Place, Solved, Source, Stretch, Surface, walk};
use crate::pipe::linear_transmittance;
use crate::quantity::{Length, Power, Temperature, TemperatureDifference};
use serde::Serialize;

/// Flows settle to this share of the largest, which turns no heat by a millionth.
const SETTLED: f64 = 1e-6;

/// Some zones of a system calling, with the flows found once: how warm the air is does not move them by
/// anything that counts.
#[derive(Debug)]
pub(crate) struct Heating {
    plumbing: Plumbing,
    solved: Solved,
    source: Source,
    /// The room whose air is around each stretch.
    air: Vec<Option<usize>>,
    exponent: f64,
    /// By circulator, from the mains: of each zone, or the one of all.
    pub(crate) electric_w: Vec<(Option<usize>, f64)>,
    /// Through the boiler.
    pub(crate) flow_kg_s: f64,
    /// In each zone's tubes, m3.
    pub(crate) zone_volume_m3: Vec<f64>,
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

impl Heating {
    /// While these zones call, with this supply; none where the flows are not found. The job is the one
    /// designed.
    pub(crate) fn of(
        job: &Job,
        design: &Design,
        on: &[bool],
        supply: Temperature,
    ) -> Option<Heating> {
        let mut at_supply = job.clone();
        at_supply.circuit.supply = supply;
        let loads: Vec<RoomLoad> = design.rooms.iter().map(|room| room.load.clone()).collect();
        let built = Built::of(job, design);
        let circuits = circuits(&at_supply, &loads);
        let mut plan = built.plan(on, usual_drive(job));
        (plan.job, plan.circuits) = (&at_supply, &circuits);
        let running = running_from(plan, None, SETTLED);
        let pumped = pumps(&at_supply, &running);
        let electric_w = running.plumbing.pumps.iter().zip(&pumped);
        let electric_w = electric_w.map(|(link, pump)| (link.zone, pump.electric.si())).collect();
        let source = source(&at_supply, &running.plumbing);
        let place = |id| job.house.rooms.iter().position(|room| room.id == id);
        let air = running.plumbing.stretches.iter().map(|stretch| match stretch.link.place {
            Place::Element(id) | Place::Inside(id) | Place::Above(id) => place(id),
            _ => None,
        });
        let first = running.walked.passages.first();
        let mut zone_volume_m3 = vec![0.0; job.zones.len()];
        for (tag, passage) in running.plumbing.tags.iter().zip(&running.walked.passages) {
            let volume = passage.tube.flow_area() * passage.length;
            add(&mut zone_volume_m3, tag.zone, volume.si());
        }
        Some(Heating {
            air: air.collect(),
            solved: running.solved.ok()?,
            source,
            exponent: job.baseboard.element.rating.exponent,
            electric_w,
            flow_kg_s: first.map_or(0.0, |boiler| boiler.mass_flow.si()),
            zone_volume_m3,
            plumbing: running.plumbing,
        })
    }

    /// What it gives to rooms as warm as this, in K, in a system of so many zones.
    pub(crate) fn give(&mut self, rooms_k: &[f64], zones: usize) -> Given {
        self.surround(rooms_k);
        let Plumbing { network, stretches, tags, .. } = &mut self.plumbing;
        let walked = walk(network, Some(&self.solved), self.source, stretches, &mut |_, _, _| {});
        let mut given = Given {
            to_room_w: vec![0.0; rooms_k.len()],
            slope_w_k: vec![0.0; rooms_k.len()],
            zone_lost_w: vec![0.0; zones],
            back_k: walked.back.si(),
        };
        for (at, passage) in walked.passages.iter().enumerate() {
            let Some(room) = self.air[at].filter(|room| *room < rooms_k.len()) else {
                add(&mut given.zone_lost_w, tags[at].zone, passage.heat.si());
                continue;
            };
            let (heat_w, exponent) = match stretches[at].link.surface {
                Surface::Finned { .. } => (passage.to_room.si(), self.exponent),
                Surface::Bare { .. } => (passage.heat.si(), 1.0),
            };
            given.to_room_w[room] += heat_w;
            given.slope_w_k[room] += slope_w_k(passage, heat_w, exponent, rooms_k[room]);
        }
        given
    }
}

impl Heating {
    /// The finned length, m, that gives each room what it needs, in W, with the water that the rooms before
    /// it leave: no less than it has, and of those that need more just that. None where no length does.
    pub(crate) fn lengthen(&mut self, rooms_k: &[f64], need_w: &[f64]) -> Vec<Option<f64>> {
        self.surround(rooms_k);
        let Plumbing { network, stretches, tags, .. } = &mut self.plumbing;
        let flows = Some(&self.solved);
        let walked = walk(network, flows, self.source, stretches, &mut |_, _, _| {});
        let mut left_w = need_w.to_vec();
        for (at, passage) in walked.passages.iter().enumerate() {
            let bare = matches!(stretches[at].link.surface, Surface::Bare { .. });
            if let Some(left) = self.air[at].filter(|_| bare).and_then(|room| left_w.get_mut(room))
            {
                *left -= passage.heat.si();
            }
        }
        let mut lengths = vec![Some(0.0); need_w.len()];
        let mut longer = stretches.clone();
        walk(network, flows, self.source, &mut longer, &mut |at, link, stream| {
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

    /// Puts the rooms' air around the stretches in them.
    fn surround(&mut self, rooms_k: &[f64]) {
        for (stretch, air) in self.plumbing.stretches.iter_mut().zip(&self.air) {
            if let Some(k) = air.and_then(|room| rooms_k.get(room)) {
                stretch.link.surroundings = Temperature::from_si(*k);
            }
        }
    }
}

fn add(sums: &mut [f64], zone: Option<usize>, value: f64) {
    if let Some(sum) = zone.and_then(|zone| sums.get_mut(zone)) {
        *sum += value;
    }
}

fn slope_w_k(passage: &Passage, heat_w: f64, exponent: f64, air_k: f64) -> f64 {
    let excess = passage.mean_water() - Temperature::from_si(air_k);
    match excess > TemperatureDifference::ZERO && heat_w > 0.0 {
        true => exponent * heat_w / excess.si(),
        false => 0.0,
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
        let one = |(stretch, room): (&Stretch, &Option<usize>)| {
            let same = (self.solved.flow(stretch.id).si() - flow_kg_s).abs() <= 1e-9 * flow_kg_s;
            let link = &stretch.link;
            let (pipe_w_mk, element, length) = match link.surface {
                Surface::Bare { film, cover, .. } => {
                    let w_mk = linear_transmittance(link.tube, cover, film).si();
                    (Some(w_mk), None, link.length)
                }
                Surface::Finned { element, finned } => (None, Some(exported(&element)), finned),
            };
            same.then(|| LoopStretch {
                room: *room,
                surroundings_k: link.surroundings.si(),
                length_m: length.si(),
                pipe_w_mk,
                element,
            })
        };
        stretches.iter().zip(&self.air).map(one).collect()
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
