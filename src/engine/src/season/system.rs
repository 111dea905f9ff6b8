//! Who calls for heat, and what the system gives to whom while they call.

use super::{Controls, Holds};
use crate::arrangement::{Heating, Tried};
use crate::design::Design;
use crate::job::{Job, ShutOff};
use crate::quantity::{Power, Temperature};

/// One thermostat, or one room's valve.
#[derive(Debug, Clone, PartialEq)]
pub(crate) struct Caller {
    pub(crate) zone: usize,
    /// The room in which it hangs.
    pub(crate) holder: usize,
    pub(crate) set_k: f64,
    /// That get heat while it calls.
    pub(crate) rooms: Vec<usize>,
}

/// A designed system with its callers.
#[derive(Debug)]
pub(crate) struct System {
    pub(crate) callers: Vec<Caller>,
    zones: usize,
    rooms_k: Vec<f64>,
    /// All zones at once, and each alone where there are several.
    pub(crate) all: Heating,
    pub(crate) alone: Vec<Heating>,
}

/// What the system gives while it runs, each zone as often alone and together with others as happens
/// when zones call without regard to one another.
#[derive(Debug, Clone, Default)]
pub(crate) struct Mixed {
    pub(crate) to_room_w: Vec<f64>,
    pub(crate) slope_w_k: Vec<f64>,
    /// Lost outside the rooms while a zone calls.
    pub(crate) zone_lost_w: Vec<f64>,
    /// Of all zones at once, and of each alone.
    pub(crate) back_k: Vec<f64>,
}

impl System {
    /// None where the flows are not found.
    pub(crate) fn of(
        job: &Job,
        design: &Design,
        controls: &Controls,
        tried: &mut Tried<'_>,
    ) -> Option<System> {
        let zones = job.zones.len();
        let supply = job.circuit.supply;
        tried.damp(&controls.dampers);
        let all = tried.heating(&vec![true; zones], supply, None)?;
        let mut alone = Vec::new();
        if zones > 1 {
            for zone in 0..zones {
                alone.push(tried.heating(&only(zone, zones), supply, None)?);
            }
        }
        let rooms_k = job.house.rooms.iter().map(|room| room.temperature.si()).collect();
        let callers = callers(job, design, controls);
        Some(System { callers, zones, rooms_k, all, alone })
    }

    /// Turns to another supply.
    pub(crate) fn supply(&mut self, tried: &mut Tried<'_>, supply: Temperature) -> Option<()> {
        self.all = tried.heating(&vec![true; self.zones], supply, Some(&self.all))?;
        for (zone, alone) in self.alone.iter_mut().enumerate() {
            *alone = tried.heating(&only(zone, self.zones), supply, Some(alone))?;
        }
        Some(())
    }

    /// Rooms as warm as they are meant to be, and every other node as the mean of them.
    pub(crate) fn meant_k(&self, nodes: usize) -> Vec<f64> {
        let mean = self.rooms_k.iter().sum::<f64>() / self.rooms_k.len().max(1) as f64;
        let mut at_k = self.rooms_k.clone();
        at_k.resize(nodes, mean);
        at_k
    }

    /// The share of the time that each zone's water runs.
    pub(crate) fn running(&self, shares: &[f64]) -> Vec<f64> {
        let mut running = vec![0.0; self.zones];
        for (caller, share) in self.callers.iter().zip(shares) {
            // Where rooms call one by one, the water runs as long as the coldest calls.
            running[caller.zone] = f64::max(running[caller.zone], *share);
        }
        running
    }

    /// What it gives while it runs, to nodes as warm as this, in K; nothing while it stands still.
    pub(crate) fn give(&mut self, at_k: &[f64], shares: &[f64], still: bool) -> Mixed {
        let rooms = self.rooms_k.len();
        if still {
            let zero = vec![0.0; rooms];
            return Mixed {
                to_room_w: zero.clone(),
                slope_w_k: zero,
                zone_lost_w: vec![0.0; self.zones],
                back_k: Vec::new(),
            };
        }
        let rooms_k = &at_k[..rooms];
        let together = self.all.give(rooms_k, self.zones);
        let mut mixed = Mixed {
            to_room_w: together.to_room_w,
            slope_w_k: together.slope_w_k,
            zone_lost_w: together.zone_lost_w,
            back_k: vec![together.back_k],
        };
        let running = self.running(shares);
        for (zone, heating) in self.alone.iter_mut().enumerate() {
            let given = heating.give(rooms_k, self.zones);
            let alone = chance_alone(&running, zone);
            let mix = |sum: &mut f64, own: f64| *sum += alone * (own - *sum);
            let own = self.callers.iter().filter(|caller| caller.zone == zone);
            for &room in own.flat_map(|caller| &caller.rooms) {
                mix(&mut mixed.to_room_w[room], given.to_room_w[room]);
                mix(&mut mixed.slope_w_k[room], given.slope_w_k[room]);
            }
            mix(&mut mixed.zone_lost_w[zone], given.zone_lost_w[zone]);
            mixed.back_k.push(given.back_k);
        }
        mixed
    }
}

/// The chance that no other zone calls.
pub(crate) fn chance_alone(running: &[f64], zone: usize) -> f64 {
    let others = running.iter().enumerate().filter(|(other, _)| *other != zone);
    others.map(|(_, share)| 1.0 - share).product()
}

fn only(zone: usize, zones: usize) -> Vec<bool> {
    (0..zones).map(|other| other == zone).collect()
}

fn callers(job: &Job, design: &Design, controls: &Controls) -> Vec<Caller> {
    let mut callers = Vec::new();
    for (zone, of) in job.zones.iter().enumerate() {
        let rooms: Vec<usize> = of.loops.iter().flatten().copied().collect();
        let set_k = |room: usize| job.house.rooms[room].temperature.si();
        // A valve in a loop that has no other way would stop the whole loop.
        let holds = controls.holds(of.id);
        if holds == Holds::RoomValves && of.arrangement.has_branches() {
            callers.extend(rooms.iter().map(|&room| Caller {
                zone,
                holder: room,
                set_k: set_k(room),
                rooms: vec![room],
            }));
            continue;
        }
        let named = |room: &usize| match holds {
            Holds::Thermostat(id) => job.house.rooms[*room].id == id,
            Holds::FirstRoom | Holds::RoomValves => false,
        };
        let heated = |room: &usize| {
            design.rooms[*room].element.output > Power::ZERO
                && job.approaches[*room].shut_off == ShutOff::Open
        };
        let holder = rooms.iter().find(|room| named(room));
        let holder = holder.or_else(|| rooms.iter().find(|room| heated(room))).or(rooms.first());
        if let Some(&holder) = holder {
            callers.push(Caller { zone, holder, set_k: set_k(holder), rooms });
        }
    }
    callers
}
