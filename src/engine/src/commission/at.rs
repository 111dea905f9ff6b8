//! The designed system, run at the water and the air that were measured.

use crate::arrangement::{CircuitDesign, RunDesign, run};
use crate::building::{Room, RoomId, ZoneId};
use crate::design::Design;
use crate::job::{Job, Measured};
use crate::network::Place;
use crate::quantity::{Power, Temperature};

/// The air that the elements meet.
#[derive(Debug, Clone, Copy, PartialEq)]
pub(super) enum Air {
    /// As measured, and as designed where it was not.
    Measured,
    /// As the rooms are meant to be.
    Wanted,
}

/// Which way the water runs.
#[derive(Debug, Clone, Copy, PartialEq)]
pub(super) enum Way {
    Designed,
    /// From the last room of each loop to the first.
    Backward,
}

#[derive(Debug, Clone, Copy, PartialEq)]
pub(super) struct At {
    pub(super) supply: Temperature,
    pub(super) air: Air,
    pub(super) way: Way,
}

/// Runs of one system, each worked out once: circuits are mostly read at one supply.
pub(super) struct Runs<'a> {
    pub(super) job: &'a Job,
    pub(super) design: &'a Design,
    pub(super) measured: &'a Measured,
    known: Vec<(At, RunDesign)>,
}

impl<'a> Runs<'a> {
    pub(super) fn new(job: &'a Job, design: &'a Design, measured: &'a Measured) -> Runs<'a> {
        Runs { job, design, measured, known: Vec::new() }
    }

    /// None where the system finds no rest.
    pub(super) fn at(&mut self, at: At) -> Option<&RunDesign> {
        if !self.known.iter().any(|(known, _)| *known == at) {
            let ran = self.run(at);
            self.known.push((at, ran));
        }
        let ran = self.known.iter().find(|(known, _)| *known == at).map(|(_, ran)| ran);
        ran.filter(|ran| ran.not_solved.is_none())
    }

    fn run(&self, at: At) -> RunDesign {
        let mut job = self.job.clone();
        job.circuit.supply = at.supply;
        for room in &mut job.house.rooms {
            room.temperature = self.air(room, at.air);
        }
        if at.way == Way::Backward {
            job.zones.iter_mut().flat_map(|zone| &mut zone.loops).for_each(|rooms| rooms.reverse());
        }
        let zones: Vec<ZoneId> = job.zones.iter().map(|zone| zone.id).collect();
        run(&job, self.design, &zones)
    }

    pub(super) fn air(&self, room: &Room, air: Air) -> Temperature {
        match air {
            Air::Measured => self.measured.at(room.id).air.unwrap_or(room.temperature),
            Air::Wanted => room.temperature,
        }
    }

    /// The supply of a circuit: what was measured there, or else at any other circuit.
    pub(super) fn supply_of(&self, circuit: &CircuitDesign) -> Option<Temperature> {
        let at = |circuit: &CircuitDesign| self.measured.at(*circuit.rooms.first()?).supply;
        at(circuit).or_else(|| self.design.piping.circuits.iter().find_map(at))
    }
}

/// What comes back from a circuit, before it joins others, as [`CircuitDesign::back`] counts it.
pub(super) fn back(circuit: &CircuitDesign, ran: &RunDesign) -> Option<Temperature> {
    let own = circuit.path.iter().filter_map(|&at| ran.passages.get(at));
    let shared = |place: Place| {
        matches!(place, Place::ReturnMain(_) | Place::TrunkBack(_) | Place::Balance(_))
    };
    own.rev().find(|passage| !shared(passage.place)).map(|passage| passage.water_out)
}

/// The heat that a room is credited with.
pub(super) fn output(room: RoomId, ran: &RunDesign) -> Power {
    let own = ran.passages.iter().filter(|passage| passage.place == Place::Element(room));
    own.map(|passage| passage.to_room).sum()
}
