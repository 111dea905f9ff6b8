//! Elements sized for the water that reaches them, in whatever arrangement.

mod designed;

use super::PipingDesign;
use super::balance::{Circuit, ValveSetting, circuits, settings};
use super::lower::{Plan, Plumbing, lower};
use super::run::{Running, agree, rest, source, usual_drive};
use super::together::{self, Together, choose_together, fixed_only};
use crate::building::{Behind, Room, RoomLoad, Run, Surface as Wall, SurfaceId};
use crate::design::RoomElement;
use crate::emitter;
use crate::fluid::Stream;
use crate::job::{Balancing, Job, Standing};
use crate::network::{Link, NotSolved, Surface, Walked, walk};
use crate::pipe::Cv;
use crate::quantity::{Length, Power, Temperature};
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
