//! Elements sized for the water that reaches them, in whatever arrangement.

use super::balance::{Circuit, ValveSetting, circuits, settings};
use super::lower::{Plan, Plumbing, Tag, lower};
use super::run::{Running, agree, fastest, pumps, ran, rest, running, source, usual_drive};
use super::together::{self, Together, choose_together, fixed_only};
use super::{CircuitDesign, PipingDesign, ZoneDesign};
use crate::building::{Behind, Room, RoomLoad, Run, Surface as Wall, SurfaceId, ZoneId};
use crate::design::RoomElement;
use crate::emitter;
use crate::fluid::Stream;
use crate::job::{Balancing, Job, Standing};
use crate::network::{Link, NodeId, NotSolved, Passage, Place, Stretch, Surface, Walked, walk};
use crate::pipe::Cv;
use crate::quantity::{Length, MassFlow, Power, Pressure, Temperature, Velocity};
use crate::sizing::joint::Instance;
use crate::sizing::{Choice, choose};

/// A system with the elements it was sized with, in the order of the rooms.
#[derive(Debug, Clone, PartialEq)]
pub struct Solved {
    pub piping: PipingDesign,
    pub elements: Vec<RoomElement>,
    pub together: Together,
}

/// After so many rounds an element only grows: where a piece more or less turns the flow just so far
/// that the other is right, the longer one stays.
const FREE_ROUNDS: usize = 6;
const MOST_ROUNDS: usize = 30;
/// Where all pieces are chosen together and that moves the flow, they are chosen again so often.
const MOST_CHOICES: usize = 8;
const NEAR: Length = Length::from_si(1e-7);

/// Sizes each room's element for the water that reaches it, and solves flow and temperature together
/// with the lengths until none of them changes.
pub fn solve_piping(job: &Job, loads: &[RoomLoad]) -> Solved {
    let circuits = circuits(job, loads);
    let mut sizing = Sizing::begin(job, loads);
    let (mut valves, running, together) = sizing.settle_together(&circuits);
    if valves.is_empty() && running.solved.is_ok() {
        let means = means(&running.walked);
        valves = settings(job, &circuits, &sizing.choices, &means).unwrap_or_default();
    }
    sizing.finish(&circuits, &valves, running, together)
}

/// The elements alone, for whoever tries many jobs: no zone by itself, no valve that is not fitted.
pub(crate) fn size_elements(job: &Job, loads: &[RoomLoad]) -> Vec<RoomElement> {
    let circuits = circuits(job, loads);
    let mut sizing = Sizing::begin(job, loads);
    let (_, running, _) = sizing.settle_together(&circuits);
    sizing.elements(&running)
}

/// The system with just the finned length that each room needs, in no pieces; where no length would do,
/// with what its walls take.
pub(crate) fn solve_exact(job: &Job, loads: &[RoomLoad]) -> Solved {
    let circuits = circuits(job, loads);
    let mut sizing = Sizing::begin(job, loads);
    sizing.stance = Stance::Exact;
    let (valves, running) = sizing.settle(&circuits);
    let together = Together::room_by_room(job, Power::ZERO);
    sizing.finish(&circuits, &valves, running, together)
}

/// Each circuit's choice of pieces as an integer programme, for a check by another solver.
pub fn exported_choices(job: &Job, loads: &[RoomLoad]) -> Vec<(Instance, Option<u64>)> {
    let circuits = circuits(job, loads);
    let mut sizing = Sizing::begin(job, loads);
    let (_, running) = sizing.settle(&circuits);
    together::exported(job, loads, &circuits, &running)
}

/// The water of each stretch, midway.
fn means(walked: &Walked) -> Vec<Temperature> {
    walked.passages.iter().map(|passage| passage.mean_water()).collect()
}

/// The elements in the making.
struct Sizing<'a> {
    job: &'a Job,
    loads: &'a [RoomLoad],
    choices: Vec<Choice>,
    needed: Vec<Option<Length>>,
    /// Whether a room's pieces are more than a length to begin with.
    chosen: Vec<bool>,
    stance: Stance,
}

/// What may become of the pieces while flow and temperature settle.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
enum Stance {
    Free,
    GrowOnly,
    /// They were chosen together, or stand already.
    Held,
    /// No pieces: just the length that is needed.
    Exact,
}

impl<'a> Sizing<'a> {
    /// With lengths by the rated output, to begin with; of a system that stands, with what stands there.
    fn begin(job: &'a Job, loads: &'a [RoomLoad]) -> Sizing<'a> {
        if job.standing == Standing::Installed {
            return Sizing {
                job,
                loads,
                choices: job.house.rooms.iter().map(|room| fixed_only(job, room)).collect(),
                needed: vec![None; loads.len()],
                chosen: vec![true; loads.len()],
                stance: Stance::Held,
            };
        }
        let length = |load: &RoomLoad| {
            let length = load.wanted().max(Power::ZERO) / job.baseboard.element.rating.output;
            Choice { runs: Vec::new(), nominal: length, finned: length }
        };
        Sizing {
            job,
            loads,
            choices: loads.iter().map(length).collect(),
            needed: vec![None; loads.len()],
            chosen: vec![false; loads.len()],
            stance: Stance::Free,
        }
    }

    /// Each room's least length first; then, where that may not be best, all pieces together for the
    /// flows that were found, until choosing moves no flow.
    fn settle_together(&mut self, circuits: &[Circuit]) -> (Vec<ValveSetting>, Running, Together) {
        let (mut valves, mut running) = self.settle(circuits);
        if self.job.standing == Standing::Installed || !together::is_asked(self.job) {
            let elements = self.elements(&running);
            let surplus = elements.iter().zip(self.loads).map(|(element, load)| {
                (element.output - load.wanted().max(Power::ZERO)).max(Power::ZERO)
            });
            let surplus = surplus.sum();
            return (valves, running, Together::room_by_room(self.job, surplus));
        }
        let mut found = Together::unsettled(self.job);
        for _ in 0..MOST_CHOICES {
            let Ok(before) = running.solved.clone() else { break };
            let chosen = choose_together(self.job, self.loads, circuits, &running, &self.choices);
            let Some((choices, together)) = chosen else { break };
            let same = self.stance == Stance::Held && choices == self.choices;
            if !same {
                self.choices = choices;
                self.stance = Stance::Held;
                (valves, running) = self.settle(circuits);
            }
            let stands = running.solved.as_ref().is_ok_and(|now| agree(now, &before));
            if same || stands {
                found = together;
                break;
            }
        }
        (valves, running, found)
    }

    /// Chooses elements until neither they nor any flow changes; with the valves that are fitted.
    fn settle(&mut self, circuits: &[Circuit]) -> (Vec<ValveSetting>, Running) {
        let job = self.job;
        let on = vec![true; job.zones.len()];
        let balanced = job.zones.iter().any(|zone| zone.balancing == Balancing::Valves);
        let mut means = Vec::new();
        let mut before: Option<crate::network::Solved> = None;
        let mut rounds = 0;
        let (valves, running) = loop {
            rounds += 1;
            // Without valves, what one would have to take matters only at the end.
            let valves = match balanced {
                true => settings(job, circuits, &self.choices, &means),
                false => Ok(Vec::new()),
            };
            let valves = match valves {
                Ok(valves) => valves,
                Err(error) => break (Vec::new(), Err(error)),
            };
            let set: Vec<Option<Cv>> =
                valves.iter().map(|valve| valve.cv.and_then(Cv::new)).collect();
            let plan = Plan {
                job,
                circuits,
                choices: &self.choices,
                valves: &set,
                on: &on,
                means: &means,
                drive: usual_drive(job),
            };
            let mut plumbing = lower(plan);
            let solved = match rest(&plan, &plumbing, before.as_ref()) {
                Ok(solved) => solved,
                Err(error) => break (valves, Err(error)),
            };
            let chosen: Vec<Length> = self.choices.iter().map(|choice| choice.nominal).collect();
            if self.stance == Stance::Free && rounds > FREE_ROUNDS {
                self.stance = Stance::GrowOnly;
            }
            let walked = self.walk(&mut plumbing, Some(&solved));
            // Pieces differ by more; lengths that are no pieces come to rest by and by.
            let near = |(choice, old): (&Choice, &Length)| (choice.nominal - *old).abs() < NEAR;
            let same = self.choices.iter().zip(&chosen).all(near);
            let agrees = same && before.as_ref().is_some_and(|before| agree(&solved, before));
            if agrees || rounds == MOST_ROUNDS {
                break (valves, Ok(Running { plumbing, solved: Ok(solved), walked }));
            }
            means = self::means(&walked);
            before = Some(solved);
        };
        let running = running.unwrap_or_else(|error| self.unsolved(circuits, &on, error));
        (valves, running)
    }

    /// Follows the water, choosing each element as it comes to it.
    fn walk(&mut self, plumbing: &mut Plumbing, solved: Option<&crate::network::Solved>) -> Walked {
        let source = source(self.job, plumbing);
        let tags = &plumbing.tags;
        let stretches = &mut plumbing.stretches;
        walk(&plumbing.network, solved, source, stretches, &mut |index, link, stream| {
            if let Some(room) = tags[index].element {
                self.choose(room, link, stream);
            }
        })
    }

    fn choose(&mut self, at: usize, link: &mut Link, stream: Stream) {
        let (room, element) = (&self.job.house.rooms[at], self.job.baseboard.element);
        let load = self.loads[at].wanted().max(Power::ZERO);
        let needed = emitter::length_for(&element, stream, room.temperature, load);
        // What was the least that reached less is still the least, as long as it reaches this.
        let stands = match (needed, self.needed[at]) {
            (Some(now), Some(before)) if self.chosen[at] => {
                before <= now && now <= self.choices[at].finned
            }
            _ => false,
        };
        self.needed[at] = needed;
        if let (Stance::Exact, Some(needed)) = (self.stance, needed) {
            self.choices[at] = Choice { runs: Vec::new(), nominal: needed, finned: needed };
        } else if !stands && self.stance != Stance::Held {
            let choice = choose_for(self.job, room, needed);
            if self.stance != Stance::GrowOnly || choice.nominal > self.choices[at].nominal {
                self.choices[at] = choice;
            }
            self.chosen[at] = true;
        }
        let choice = &self.choices[at];
        link.length = choice.nominal;
        link.surface = Surface::Finned { element, finned: choice.finned };
    }

    /// The system at rest, for want of a better answer.
    fn unsolved(&mut self, circuits: &[Circuit], on: &[bool], error: NotSolved) -> Running {
        let plan = Plan {
            job: self.job,
            circuits,
            choices: &self.choices,
            valves: &[],
            on,
            means: &[],
            drive: usual_drive(self.job),
        };
        let mut plumbing = lower(plan);
        let walked = self.walk(&mut plumbing, None);
        Running { plumbing, solved: Err(error), walked }
    }

    fn finish(
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
    ) -> Vec<super::RunDesign> {
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

    fn elements(&self, running: &Running) -> Vec<RoomElement> {
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

/// Pieces on the outside walls where they suffice, otherwise on all walls. Without a length that
/// would do, as much as the walls take is chosen, so that the shortfall is the least possible.
pub(crate) fn choose_for(job: &Job, room: &Room, needed: Option<Length>) -> Choice {
    let needed = needed.unwrap_or(Length::from_si(1e4));
    if needed == Length::ZERO {
        return Choice::none();
    }
    let of = |wanted: fn(&Wall) -> bool| -> Vec<(SurfaceId, Run)> {
        let usable = room.usable_runs().filter(|(wall, _)| wanted(wall));
        usable.map(|(wall, run)| (wall.id, run)).collect()
    };
    let outer = of(is_outer);
    let first = choose(&outer, &job.baseboard, needed);
    if first.finned.si() >= needed.si() * (1.0 - 1e-9) {
        return first;
    }
    let all = [outer, of(|wall| !is_outer(wall))].concat();
    choose(&all, &job.baseboard, needed)
}

/// Whether a wall is cold, so that baseboard stands there first.
pub(super) fn is_outer(wall: &Wall) -> bool {
    matches!(wall.behind, Behind::Outdoors | Behind::Ground { .. } | Behind::Unheated(..))
}
