//! The ways of each arrangement, from where a zone's water has been let in to the boiler.

use super::tubes::whole;
use super::{At, Builder, NONE};
use crate::job::{Approach, Arrangement, BackPath, Diverters, PipeLeg, ShutOff, Zone};
use crate::network::{Link, Place};
use crate::pipe::{Fitting, Tube};
use crate::quantity::Length;

impl Builder<'_> {
    /// Everything of a zone from where its water has been let in to the boiler.
    pub(super) fn rooms(&mut self, from: At, index: usize, boiler: At) {
        let job = self.plan.job;
        let zone = &job.zones[index];
        let trunk = zone.trunk.length > Length::ZERO || zone.trunk.elbows > 0;
        let start = match trunk {
            true => self.outside(from, Place::Trunk(zone.id), zone.main, zone.trunk, &[], None),
            false => from,
        };
        let end = if trunk { self.node() } else { boiler };
        let shared = self.way.clone();
        match zone.arrangement {
            Arrangement::Series | Arrangement::Split => {
                for rooms in &zone.loops {
                    self.way.clone_from(&shared);
                    self.series(start, index, rooms, end);
                }
            }
            Arrangement::DiverterTees => self.diverters(start, index, end),
            Arrangement::DirectReturn | Arrangement::ReverseReturn => {
                self.two_pipe(start, index, end);
            }
            Arrangement::HomeRun => self.home_run(start, index, end),
        }
        if trunk {
            self.way.clear();
            let back = self.stretches.len();
            let place = Place::TrunkBack(zone.id);
            self.outside(end, place, zone.main, zone.trunk, &[], Some(boiler));
            for (circuit, links) in self.plan.circuits.iter().zip(&mut self.circuits) {
                if circuit.zone == index {
                    links.path.push(back);
                }
            }
        }
    }

    /// A loop through each room in turn.
    fn series(&mut self, start: At, index: usize, rooms: &[usize], end: At) {
        let job = self.plan.job;
        let zone = &job.zones[index];
        let tee: &[(Fitting, u32)] =
            if zone.loops.len() > 1 { &[(Fitting::TeeBranch, 1)] } else { &[] };
        let mut at = start;
        for (nth, &room) in rooms.iter().enumerate() {
            let tee = if nth == 0 { tee } else { &[] };
            at = self.approach(at, room, zone.pipe, tee);
            at = self.element(at, room, None);
        }
        let Some(&last) = rooms.last() else { return };
        let id = job.house.rooms[last].id;
        let mut back = job.approaches[last].back;
        if zone.back == BackPath::InEnclosure {
            back = NONE;
            for &room in rooms.iter().rev() {
                let (over, outside) = self.over(room);
                back.length += outside.length;
                back.elbows += outside.elbows;
                at = self.stretch(at, Link { tube: zone.pipe, ..over }, None);
            }
        }
        let circuit = self.circuit_of(index, rooms);
        let end_of_pipe = self.node();
        at = self.outside(at, Place::Back(id), zone.pipe, back, tee, Some(end_of_pipe));
        self.close(at, circuit, zone, end);
    }

    /// The return above a room's element with what of its route lies in the enclosure; and what does
    /// not.
    fn over(&self, room: usize) -> (Link, PipeLeg) {
        let job = self.plan.job;
        let Approach { inside, outside, .. } = job.approaches[room];
        let leg = PipeLeg {
            length: inside.length + self.plan.choices[room].nominal,
            elbows: inside.elbows,
        };
        let place = Place::Above(job.house.rooms[room].id);
        (self.in_room(place, room, job.circuit.tube, leg), outside)
    }

    fn diverters(&mut self, start: At, index: usize, end: At) {
        let job = self.plan.job;
        let zone = &job.zones[index];
        let rooms = self.all_rooms(zone);
        let mut at = start;
        for &room in &rooms {
            at = self.approach(at, room, zone.main, &[]);
            if !self.has_branch(room) {
                continue;
            }
            let Approach { branch, tee_spacing, diverters, .. } = job.approaches[room];
            let id = job.house.rooms[room].id;
            let (count, plain) = match diverters {
                Diverters::One => (1.0, 1),
                Diverters::Two => (2.0, 0),
            };
            let between = Link {
                extra_k: count * job.circuit.parts.diverter_k,
                fittings: vec![(Fitting::TeeRun, plain)],
                ..self.pipe(
                    Place::Between(id),
                    zone.main,
                    PipeLeg { length: tee_spacing, elbows: 0 },
                )
            };
            let tees = at;
            at = self.stretch(tees, between, None);
            let main = self.way.clone();
            self.branch(tees, room, zone.pipe, branch, at);
            self.way = main;
        }
        let circuit = self.circuit_of(index, &rooms);
        if let Some(&last) = rooms.last() {
            let place = Place::Back(job.house.rooms[last].id);
            let back = job.approaches[last].back;
            at = self.outside(at, place, zone.main, back, &[], None);
        }
        self.close(at, circuit, zone, end);
    }

    /// From a main through a room's element to `end`, where the flow joins again.
    fn branch(&mut self, from: At, room: usize, tube: Tube, branch: PipeLeg, end: At) {
        let id = self.plan.job.house.rooms[room].id;
        let out = PipeLeg { length: branch.length / 2.0, elbows: branch.elbows.div_ceil(2) };
        let back = PipeLeg { elbows: branch.elbows / 2, ..out };
        let tee = [(Fitting::TeeBranch, 1)];
        let at = self.outside(from, Place::Branch(id), tube, out, &tee, None);
        let at = self.element(at, room, None);
        self.outside(at, Place::BranchBack(id), tube, back, &tee, Some(end));
    }

    fn two_pipe(&mut self, start: At, index: usize, end: At) {
        let job = self.plan.job;
        let zone = &job.zones[index];
        let rooms = self.all_rooms(zone);
        let reverse = zone.arrangement == Arrangement::ReverseReturn;
        let joins: Vec<At> = rooms.iter().map(|_| self.node()).collect();
        let mut at = start;
        // The ways of the circuits as far as the return main.
        let mut open = Vec::new();
        for (nth, &room) in rooms.iter().enumerate() {
            at = self.approach(at, room, zone.main, &[(Fitting::TeeRun, 1)]);
            if !self.has_branch(room) {
                continue;
            }
            let supply = self.way.clone();
            let circuit = self.circuit_of(index, &[room]);
            let Some(circuit) = circuit else { continue };
            let before = self.node();
            self.branch(at, room, zone.pipe, job.approaches[room].branch, before);
            self.valve_of(before, circuit, zone, joins[nth]);
            open.push((nth, circuit, std::mem::replace(&mut self.way, supply)));
        }
        let tee = [(Fitting::TeeRun, 1)];
        let first_main = self.stretches.len();
        for nth in 0..rooms.len() {
            // Direct: from the last room on; reverse: from the first.
            let here = if reverse { nth } else { rooms.len() - 1 - nth };
            let id = job.house.rooms[rooms[here]].id;
            let (leg, to) = match (reverse, here) {
                (false, 0) => (job.approaches[rooms[0]].back, end),
                (false, _) => (job.approaches[rooms[here]].back, joins[here - 1]),
                (true, _) if here + 1 == rooms.len() => (job.approaches[rooms[here]].back, end),
                (true, _) => (whole(&job.approaches[rooms[here + 1]]), joins[here + 1]),
            };
            self.outside(joins[here], Place::ReturnMain(id), zone.main, leg, &tee, Some(to));
        }
        for (nth, circuit, mut way) in open {
            let from = if reverse { nth } else { rooms.len() - 1 - nth };
            way.extend((from..rooms.len()).map(|main| first_main + main));
            self.circuits[circuit].path = way;
        }
    }

    fn home_run(&mut self, start: At, index: usize, end: At) {
        let job = self.plan.job;
        let zone = &job.zones[index];
        let tee = [(Fitting::TeeBranch, 1)];
        let shared = self.way.clone();
        for room in self.all_rooms(zone) {
            let Some(circuit) = self.circuit_of(index, &[room]) else { continue };
            self.way.clone_from(&shared);
            let at = self.approach(start, room, zone.pipe, &tee);
            let at = self.element(at, room, None);
            let place = Place::Back(job.house.rooms[room].id);
            let at = self.outside(at, place, zone.pipe, job.approaches[room].back, &tee, None);
            self.close(at, Some(circuit), zone, end);
        }
    }

    fn all_rooms(&self, zone: &Zone) -> Vec<usize> {
        zone.loops.iter().flatten().copied().collect()
    }

    /// Whether a room that hangs between mains is connected: it needs heat, and is not shut off.
    fn has_branch(&self, room: usize) -> bool {
        let circuits = self.plan.circuits.iter();
        self.plan.job.approaches[room].shut_off == ShutOff::Open
            && circuits.flat_map(|circuit| &circuit.rooms).any(|&other| other == room)
    }

    /// The circuit of a zone that heats one of these rooms.
    fn circuit_of(&self, zone: usize, rooms: &[usize]) -> Option<usize> {
        self.plan.circuits.iter().position(|circuit| {
            circuit.zone == zone && circuit.rooms.iter().any(|room| rooms.contains(room))
        })
    }
}
