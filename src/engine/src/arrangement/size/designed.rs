//! What a sized system comes to: flows, circuits, zones and elements as the design has them.

use super::super::balance::{Circuit, ValveSetting};
use super::super::lower::{Plan, Plumbing, Tag};
use super::super::run::{Running, fastest, pumps, ran, running, usual_drive};
use super::super::together::Together;
use super::super::{CircuitDesign, PipingDesign, RunDesign, ZoneDesign};
use super::{Sizing, Solved, means};
use crate::building::{RoomLoad, ZoneId};
use crate::design::RoomElement;
use crate::job::{Balancing, Job};
use crate::network::{NodeId, Passage, Place, Stretch};
use crate::pipe::Cv;
use crate::quantity::{Length, MassFlow, Power, Pressure, Temperature, Velocity};
use crate::sizing::Choice;

impl Sizing<'_> {
    pub(super) fn finish(
        self,
        circuits: &[Circuit],
        valves: &[ValveSetting],
        running: Running,
        together: Together,
    ) -> Solved {
        let elements = self.elements(&running);
        let job = self.job;
        let (supply, fluid) = (job.circuit.supply, job.circuit.fluid);
        let density = fluid.density(supply);
        let passages = &running.walked.passages;
        let mass_flow = passages.first().map_or(MassFlow::ZERO, |boiler| boiler.mass_flow);
        let circuits_designed: Vec<CircuitDesign> = circuits
            .iter()
            .enumerate()
            .map(|(at, circuit)| circuit_design(job, &running, circuit, at, valves.get(at)))
            .collect();
        let piping = PipingDesign {
            mass_flow,
            flow: mass_flow / density,
            supply,
            back: running.walked.back,
            heat: passages.iter().map(|p| p.heat).sum(),
            pipe_loss: passages.iter().filter(|p| is_lost(p.place)).map(|p| p.heat).sum(),
            velocity: fastest(passages),
            head: Length::ZERO,
            passages: passages.clone(),
            zones: zones(job, &running),
            pumps: pumps(job, &running),
            alone: self.alone(circuits, valves, &running),
            not_solved: running.solved.as_ref().err().copied(),
            circuits: circuits_designed,
        };
        let head = piping.critical().map_or(Pressure::ZERO, |circuit| {
            circuit.path.iter().map(|&at| passages[at].pressure_drop()).sum()
        });
        let piping = PipingDesign { head: crate::pipe::head(head, density), ..piping };
        Solved { piping, elements, together }
    }

    /// Each zone by itself.
    fn alone(
        &self,
        circuits: &[Circuit],
        valves: &[ValveSetting],
        all: &Running,
    ) -> Vec<RunDesign> {
        if self.job.zones.len() < 2 || all.solved.is_err() {
            return Vec::new();
        }
        let set: Vec<Option<Cv>> = valves.iter().map(|valve| valve.cv.and_then(Cv::new)).collect();
        let means = means(&all.walked);
        let one = |zone: usize| {
            let on: Vec<bool> = (0..self.job.zones.len()).map(|other| other == zone).collect();
            let plan = Plan {
                job: self.job,
                circuits,
                choices: &self.choices,
                valves: &set,
                on: &on,
                means: &means,
                drive: usual_drive(self.job),
            };
            ran(self.job, &[self.job.zones[zone].id], &running(plan))
        };
        (0..self.job.zones.len()).map(one).collect()
    }

    pub(super) fn elements(&self, running: &Running) -> Vec<RoomElement> {
        let element = self.job.baseboard.element;
        let supply = self.job.circuit.supply;
        let mut of_room: Vec<Option<&Passage>> = vec![None; self.loads.len()];
        for (tag, passage) in running.plumbing.tags.iter().zip(&running.walked.passages) {
            if let Some(room) = tag.element {
                of_room[room] = Some(passage);
            }
        }
        let one = |(at, load): (usize, &RoomLoad)| {
            let passage = of_room[at];
            // Not connected: shut off, or without a load between two mains.
            let connected = passage.is_some();
            RoomElement {
                needed: match connected {
                    true => self.needed[at],
                    false => (load.wanted() <= Power::ZERO).then_some(Length::ZERO),
                },
                choice: match connected {
                    true => self.choices[at].clone(),
                    false => Choice::none(),
                },
                output: passage.map_or(Power::ZERO, |passage| passage.to_room),
                water_in: passage.map_or(supply, |passage| passage.water_in),
                water_out: passage.map_or(supply, |passage| passage.water_out),
                flow: passage.map_or(MassFlow::ZERO, |passage| passage.mass_flow.abs()),
                rule_of_thumb: load.wanted().max(Power::ZERO) / element.rating.output,
            }
        };
        self.loads.iter().enumerate().map(one).collect()
    }
}

/// Whether a stretch's heat is lost outside the rooms.
fn is_lost(place: Place) -> bool {
    !matches!(place, Place::Element(_) | Place::Inside(_) | Place::Above(_))
}

fn circuit_design(
    job: &Job,
    running: &Running,
    circuit: &Circuit,
    at: usize,
    valve: Option<&ValveSetting>,
) -> CircuitDesign {
    let links = &running.plumbing.circuits[at];
    let passages = &running.walked.passages;
    let heats = |place: Place| {
        circuit.rooms.iter().any(|&room| place == Place::Element(job.house.rooms[room].id))
    };
    // What belongs to it alone ends at the last stretch before it joins others: the one after its
    // elements that carries no more than they do.
    let own = links.path.iter().map(|&at| &passages[at]);
    let shared = |passage: &&Passage| {
        matches!(passage.place, Place::ReturnMain(_) | Place::TrunkBack(_) | Place::Balance(_))
    };
    let last = own.clone().rev().find(|passage| !shared(passage));
    let heating = own.clone().find(|passage| heats(passage.place)).or(last);
    let none =
        ValveSetting { pressure: Pressure::ZERO, cv: None, fitted: Balancing::None, order: 1 };
    CircuitDesign {
        zone: job.zones[circuit.zone].id,
        rooms: circuit.rooms.iter().map(|&room| job.house.rooms[room].id).collect(),
        target: circuit.target,
        mass_flow: heating.map_or(MassFlow::ZERO, |passage| passage.mass_flow),
        back: last.map_or(job.circuit.supply, |passage| passage.water_out),
        valve: valve.copied().unwrap_or(none),
        path: links.path.clone(),
    }
}

fn zones(job: &Job, running: &Running) -> Vec<ZoneDesign> {
    let at_boiler = ends_at_boiler(&running.plumbing);
    let of = |zone: usize, id: ZoneId| {
        let plumbing = &running.plumbing;
        let all = plumbing.stretches.iter().zip(&plumbing.tags).zip(&running.walked.passages);
        let own: Vec<(&Stretch, &Tag, &Passage)> = all
            .filter(|((_, tag), _)| tag.zone == Some(zone))
            .map(|((stretch, tag), passage)| (stretch, tag, passage))
            .collect();
        // What flows into the boiler's node from this zone.
        let (mut mass, mut weighted) = (0.0, 0.0);
        for (stretch, _, passage) in &own {
            let end = plumbing.network.ends(stretch.id).map(|(_, end)| end);
            if end.is_some_and(|end| at_boiler.contains(&end)) {
                mass += passage.mass_flow.si();
                weighted += passage.mass_flow.si() * passage.water_out.si();
            }
        }
        ZoneDesign {
            zone: id,
            mass_flow: MassFlow::from_si(mass),
            back: match mass > 0.0 {
                true => Temperature::from_si(weighted / mass),
                false => job.circuit.supply,
            },
            velocity: own.iter().fold(Velocity::ZERO, |most, (_, _, p)| most.max(p.velocity.abs())),
            heat: own.iter().map(|(_, _, passage)| passage.heat).sum(),
            element: own
                .iter()
                .filter(|(_, tag, _)| tag.element.is_some())
                .map(|(stretch, _, _)| stretch.link.length)
                .sum(),
        }
    };
    job.zones.iter().enumerate().map(|(at, zone)| of(at, zone.id)).collect()
}

/// The nodes from which a stretch's water comes to the boiler's inlet: that inlet, and where a joint
/// that is no stretch leads on to it.
fn ends_at_boiler(plumbing: &Plumbing) -> Vec<NodeId> {
    let Plumbing { network, stretches, boiler, .. } = plumbing;
    let mut is_stretch = vec![false; network.links().len()];
    for stretch in stretches {
        if let Some(is) = is_stretch.get_mut(stretch.id.index()) {
            *is = true;
        }
    }
    let joints = network.links().filter(|link| !is_stretch[link.index()]);
    let leading = joints.filter_map(|link| network.ends(link)).filter(|(_, to)| to == boiler);
    leading.map(|(from, _)| from).chain([*boiler]).collect()
}
