//! From a job's zones to a network: one lowering for every arrangement.
//!
//! The expansion tank stands between the boiler room and the circulator, so that all pressures count
//! from there. Zones leave the header behind the circulator, or each has its own.

mod tubes;
mod ways;

pub(crate) use tubes::bare;

use super::balance::Circuit;
use crate::job::{Balancing, Job, PipeLeg, PumpSet, Zone, Zoning};
use crate::network::{
    Component, Equipment, Link, LinkId, Liquid, Network, NodeId, Place, Pump, PumpCurve, Stretch,
    Way,
};
use crate::pipe::{Cv, Tube};
use crate::quantity::{Length, MassFlow, Pressure, Temperature};
use crate::sizing::Choice;
use tubes::boiler_room;

/// What moves the water.
#[derive(Debug, Clone, Copy)]
pub(super) enum Drive<'a> {
    /// Each circuit has the flow that it is meant to have, whatever that takes.
    Targets,
    /// The circulators move the sum of what their circuits are meant to have.
    Sums,
    /// The circulators move what their curves say, at a share of their full speed.
    Curves { speed: f64 },
    /// The circulators move this share of the sum.
    Share(f64),
    /// One curve for every circulator instead of its own.
    Instead(&'a PumpCurve),
}

/// All that a network is made from.
#[derive(Debug, Clone, Copy)]
pub(super) struct Plan<'a> {
    pub(super) job: &'a Job,
    pub(super) circuits: &'a [Circuit],
    /// The elements, by room.
    pub(super) choices: &'a [Choice],
    /// By circuit; nothing where the arrangement has no valve.
    pub(super) valves: &'a [Option<Cv>],
    /// By zone.
    pub(super) on: &'a [bool],
    /// The water of each stretch, midway; the supply's while it is not known.
    pub(super) means: &'a [Temperature],
    pub(super) drive: Drive<'a>,
}

/// A network with what each of its links stands for.
#[derive(Debug)]
pub(super) struct Plumbing {
    pub(super) network: Network,
    /// In the order of flow, zone after zone.
    pub(super) stretches: Vec<Stretch>,
    /// Of the stretches.
    pub(super) tags: Vec<Tag>,
    /// The boiler's inlet, where the water is warmed to the supply.
    pub(super) boiler: NodeId,
    pub(super) pumps: Vec<PumpLink>,
    /// By circuit: where its flow is given, or its valve.
    pub(super) circuits: Vec<CircuitLinks>,
}

/// Whose a stretch is.
#[derive(Debug, Clone, Copy)]
pub(super) struct Tag {
    pub(super) zone: Option<usize>,
    /// The room whose element it is, by its place in the house.
    pub(super) element: Option<usize>,
}

#[derive(Debug, Clone, Copy)]
pub(super) struct PumpLink {
    pub(super) zone: Option<usize>,
    pub(super) id: LinkId,
}

#[derive(Debug, Clone, Default)]
pub(super) struct CircuitLinks {
    /// Where the flow is given, while it is.
    pub(super) given: Option<LinkId>,
    /// The stretch that is its valve.
    pub(super) valve: Option<usize>,
    /// Its stretches, with those that it shares.
    pub(super) path: Vec<usize>,
}

/// A node before the nodes are numbered.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
struct At(usize);

struct Builder<'a> {
    plan: Plan<'a>,
    nodes: usize,
    joined: Vec<(At, At, Component, Way)>,
    stretches: Vec<Stretch>,
    tags: Vec<Tag>,
    pumps: Vec<PumpLink>,
    circuits: Vec<CircuitLinks>,
    zone: Option<usize>,
    /// Whether its zone is off: its stretches are listed, but nothing of it is joined.
    off: bool,
    /// The stretches from the circulator to where the builder stands.
    way: Vec<usize>,
}

pub(super) fn lower(plan: Plan<'_>) -> Plumbing {
    let mut builder = Builder {
        plan,
        nodes: 0,
        joined: Vec::new(),
        stretches: Vec::new(),
        tags: Vec::new(),
        pumps: Vec::new(),
        circuits: vec![CircuitLinks::default(); plan.circuits.len()],
        zone: None,
        off: false,
        way: Vec::new(),
    };
    let boiler = builder.node();
    let tank = builder.node();
    builder.stretch(boiler, boiler_room(&plan), Some(tank));
    let several = plan.job.zones.len() > 1;
    let own_pumps = several && plan.job.circuit.zoning == Zoning::Circulators;
    let header = if own_pumps { tank } else { builder.pump(tank, None) };
    for zone in 0..plan.job.zones.len() {
        builder.zone = Some(zone);
        builder.off = several && !builder.runs(zone);
        builder.way = vec![0];
        let mut at = header;
        if own_pumps {
            at = builder.pump(tank, Some(zone));
            at = builder.valve(
                at,
                Place::FlowCheck(plan.job.zones[zone].id),
                plan.job.circuit.parts.flow_check,
                Way::Forward,
            );
        } else if several {
            at = builder.zone_valve(at, zone);
        }
        builder.rooms(at, zone, boiler);
    }
    builder.finish(boiler, tank)
}

impl<'a> Builder<'a> {
    fn node(&mut self) -> At {
        self.nodes += 1;
        At(self.nodes - 1)
    }

    fn join(&mut self, from: At, to: At, component: Component, way: Way) -> LinkId {
        if self.off {
            return NOWHERE;
        }
        self.joined.push((from, to, component, way));
        LinkId::nth(self.joined.len() - 1)
    }

    fn liquid(&self, stretch: usize) -> Liquid {
        let circuit = &self.plan.job.circuit;
        let mean = self.plan.means.get(stretch).copied().unwrap_or(circuit.supply);
        Liquid::at(circuit.fluid, mean)
    }

    /// Adds a stretch that ends at `to`, or at a new node, and gives that.
    fn stretch(&mut self, from: At, link: Link, to: Option<At>) -> At {
        let to = to.unwrap_or_else(|| self.node());
        let index = self.stretches.len();
        let liquid = self.liquid(index);
        let equipment = match link.equipment {
            Equipment::Head { head, at } if head > Length::ZERO && at > MassFlow::ZERO => {
                let at = at / liquid.density;
                Some(Component::Equipment { head, at, density: liquid.density })
            }
            Equipment::Valve(cv) => Some(Component::Valve { cv, density: liquid.density }),
            Equipment::Head { .. } | Equipment::None => None,
        };
        let tube =
            Component::Pipe { length: link.length, bore: link.tube.bore(), k: link.k(), liquid };
        let id = match equipment {
            None => self.join(from, to, tube, Way::Both),
            Some(valve) if matches!(link.equipment, Equipment::Valve(_)) => {
                self.join(from, to, valve, Way::Both)
            }
            Some(equipment) => {
                let middle = self.node();
                let id = self.join(from, middle, tube, Way::Both);
                self.join(middle, to, equipment, Way::Both);
                id
            }
        };
        self.way.push(index);
        self.stretches.push(Stretch { link, id });
        self.tags.push(Tag { zone: self.zone, element: None });
        to
    }

    fn valve(&mut self, from: At, place: Place, cv: Cv, way: Way) -> At {
        let link = Link {
            equipment: Equipment::Valve(cv),
            ..self.pipe(place, self.plan.job.circuit.tube, NONE)
        };
        let to = self.stretch(from, link, None);
        if let (false, Some(joined)) = (self.off, self.joined.last_mut()) {
            joined.3 = way;
        }
        to
    }

    fn zone_valve(&mut self, from: At, zone: usize) -> At {
        let place = Place::ZoneValve(self.plan.job.zones[zone].id);
        self.valve(from, place, self.plan.job.circuit.parts.zone_valve, Way::Both)
    }

    /// Whether the zone calls, and has something to do.
    fn runs(&self, zone: usize) -> bool {
        self.plan.on.get(zone).copied().unwrap_or(true) && self.target(Some(zone)) > MassFlow::ZERO
    }

    /// What the circuits of a zone, or of all that run, are meant to have.
    fn target(&self, zone: Option<usize>) -> MassFlow {
        let circuits = self.plan.circuits.iter();
        circuits
            .filter(|circuit| match zone {
                Some(zone) => circuit.zone == zone,
                None => self.plan.on.get(circuit.zone).copied().unwrap_or(true),
            })
            .map(|circuit| circuit.target)
            .sum()
    }

    fn pump(&mut self, from: At, zone: Option<usize>) -> At {
        let circuit = &self.plan.job.circuit;
        let liquid = Liquid::at(circuit.fluid, circuit.supply);
        let curve = match zone {
            Some(zone) => &self.plan.job.zones[zone].pump,
            None => &circuit.pump,
        };
        let of_curve = |curve: &PumpCurve, speed: f64| {
            let (in_parallel, in_series) = match (zone, circuit.pumps) {
                (None, PumpSet::TwoInParallel) => (2, 1),
                (None, PumpSet::TwoInSeries) => (1, 2),
                _ => (1, 1),
            };
            let pump = Pump { speed, in_parallel, in_series, ..Pump::one(curve.clone(), liquid) };
            Component::Pump(pump)
        };
        let component = match self.plan.drive {
            Drive::Targets => joint(liquid),
            Drive::Sums => Component::Circulation(self.target(zone)),
            Drive::Share(share) => Component::Circulation(self.target(zone) * share),
            Drive::Curves { speed } => of_curve(curve, speed),
            Drive::Instead(curve) => of_curve(curve, 1.0),
        };
        let to = self.node();
        let id = self.join(from, to, component, Way::Both);
        self.pumps.push(PumpLink { zone, id });
        to
    }

    /// Ends a circuit at `end` with its valve, and notes its way.
    fn close(&mut self, at: At, circuit: Option<usize>, zone: &Zone, end: At) {
        let Some(circuit) = circuit else {
            // Nothing on it needs heat: it stands still where its flow is given.
            let component = match self.plan.drive {
                Drive::Targets => Component::Closed,
                _ => joint(self.liquid(0)),
            };
            self.join(at, end, component, Way::Both);
            return;
        };
        self.valve_of(at, circuit, zone, end);
        self.circuits[circuit].path = self.way.clone();
    }

    fn valve_of(&mut self, at: At, circuit: usize, zone: &Zone, end: At) {
        let given = match self.plan.drive {
            Drive::Targets => Some(Component::Circulation(self.plan.circuits[circuit].target)),
            _ => None,
        };
        let id = match (zone.balancing, self.plan.circuits[circuit].rooms.first()) {
            (Balancing::Valves, Some(&room)) => {
                let cv = self.plan.valves.get(circuit).copied().flatten();
                let link = Link {
                    equipment: Equipment::Valve(
                        cv.unwrap_or(self.plan.job.circuit.parts.balancing),
                    ),
                    ..self.pipe(Place::Balance(self.plan.job.house.rooms[room].id), zone.pipe, NONE)
                };
                self.circuits[circuit].valve = Some(self.stretches.len());
                self.stretch(at, link, Some(end));
                self.stretches.last().map_or(NOWHERE, |valve| valve.id)
            }
            _ => self.join(at, end, joint(self.liquid(0)), Way::Both),
        };
        if let (Some(given), Some(joined)) = (given, self.joined.get_mut(id.index())) {
            joined.2 = given;
            self.circuits[circuit].given = Some(id);
        }
    }

    /// Numbers the nodes: those between two links first, in the order of the way, and those where
    /// ways part and join last, so that the solver's matrix keeps close to its diagonal.
    fn finish(self, boiler: At, tank: At) -> Plumbing {
        let mut degree = vec![0u32; self.nodes];
        for (from, to, ..) in &self.joined {
            degree[from.0] += 1;
            degree[to.0] += 1;
        }
        let mut network = Network::new();
        let mut numbers = vec![None; self.nodes];
        let plain = (0..self.nodes).filter(|&node| degree[node] == 2);
        // Nodes of zones that are off have no link at all.
        let others = (0..self.nodes).rev().filter(|&node| !matches!(degree[node], 0 | 2));
        for node in plain.chain(others) {
            numbers[node] = Some(network.node());
        }
        // Every node was numbered just now.
        let number = |at: At| numbers[at.0].unwrap_or_else(|| NodeId::nth(0));
        for (from, to, component, way) in self.joined {
            network.link(number(from), number(to), component, way);
        }
        network.fix(number(tank), Pressure::ZERO);
        Plumbing {
            network,
            stretches: self.stretches,
            tags: self.tags,
            boiler: number(boiler),
            pumps: self.pumps,
            circuits: self.circuits,
        }
    }
}

/// The link of what is not joined.
const NOWHERE: LinkId = LinkId::nth(u32::MAX as usize);

const NONE: PipeLeg = PipeLeg { length: Length::ZERO, elbows: 0 };

/// Joins two nodes by next to nothing.
fn joint(liquid: Liquid) -> Component {
    let bore = Tube::CopperMOne.bore();
    Component::Pipe { length: Length::ZERO, bore, k: 0.0, liquid }
}
