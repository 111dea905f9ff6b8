//! Tees, valves, manifold, thermostat and vents of a zone.

use super::Counting;
use crate::building::RoomId;
use crate::job::{Arrangement, Balancing, Diverters, PriceField, Zone};
use crate::takeoff::item::{Reason, Whose};

impl Counting<'_> {
    /// Where one way parts into `n`, or `n` join, stand `n - 1` tees.
    pub(super) fn zone(&mut self, zone: &Zone) {
        let connected = self.connected(zone.id);
        let main = zone.main;
        match zone.arrangement {
            Arrangement::Series | Arrangement::Split => {
                for first in zone.loops.iter().skip(1).filter_map(|rooms| rooms.first()) {
                    if let Some(room) = self.room_at(*first) {
                        let whose = Whose::Loop(zone.id, room);
                        self.part(PriceField::Tee, main, whose, Reason::Parts, 2);
                    }
                }
            }
            Arrangement::DiverterTees => {
                for &room in &connected {
                    let diverters = match self.diverters(room) {
                        Diverters::One => 1,
                        Diverters::Two => 2,
                    };
                    let (whose, reason) = (Whose::Room(room), Reason::Parts);
                    self.part(PriceField::DiverterTee, main, whose, reason, diverters);
                    self.part(PriceField::Tee, main, whose, reason, 2 - diverters);
                }
            }
            Arrangement::DirectReturn | Arrangement::ReverseReturn => {
                // Where the mains end at the last room, its branch is their end.
                let parting = connected.split_last().map_or(&[][..], |(_, before)| before);
                for &room in parting {
                    self.part(PriceField::Tee, main, Whose::Room(room), Reason::Parts, 2);
                }
            }
            Arrangement::HomeRun => {
                for &room in &connected {
                    let whose = Whose::Room(room);
                    self.part(PriceField::ManifoldPorts, None, whose, Reason::Manifold, 1);
                }
            }
        }
        self.loop_valves(zone);
        self.balancing(zone);
        let whose = Whose::Zone(zone.id);
        self.part(PriceField::Thermostat, None, whose, Reason::StartsZone, 1);
        if let Some(wire) = zone.wire {
            self.length(PriceField::Wire, None, whose, Reason::MeasuredWire, wire);
        }
        self.vents(zone, &connected);
    }

    /// What can be purged by itself, a loop or all that hangs between the same mains, has a shut-off
    /// where it leaves, a purge valve where it comes back, and a drain valve (common practice, no
    /// source).
    fn loop_valves(&mut self, zone: &Zone) {
        let tube = match zone.arrangement {
            Arrangement::Series | Arrangement::Split => zone.pipe,
            _ => zone.main,
        };
        for first in zone.loops.iter().filter_map(|rooms| rooms.first()) {
            let Some(room) = self.room_at(*first) else { continue };
            let (whose, reason) = (self.of_loop(zone, room), Reason::Purges);
            self.part(PriceField::LoopValves, None, whose, reason, 1);
            self.part(PriceField::ShutOffValve, tube, whose, reason, 1);
            self.part(PriceField::PurgeValve, tube, whose, reason, 1);
            self.part(PriceField::DrainValve, None, whose, reason, 1);
        }
    }

    fn balancing(&mut self, zone: &Zone) {
        let circuits = self.design.piping.circuits.iter();
        let own = circuits.filter(|circuit| circuit.zone == zone.id);
        for circuit in own.filter(|circuit| circuit.valve.fitted == Balancing::Valves) {
            let whose = match circuit.rooms.first() {
                Some(&room) if zone.loops.len() > 1 => Whose::Loop(zone.id, room),
                Some(&room) if zone.arrangement.has_branches() && circuit.rooms.len() == 1 => {
                    Whose::Room(room)
                }
                _ => Whose::Zone(zone.id),
            };
            self.part(PriceField::BalancingValve, zone.pipe, whose, Reason::Balances, 1);
        }
    }

    /// Where air stays: at the highest element of a loop, of several the last, and at each element
    /// between mains (common practice, no source).
    fn vents(&mut self, zone: &Zone, connected: &[RoomId]) {
        let has_element = |room: &RoomId| {
            self.design.room(*room).is_some_and(|room| !room.element.choice.runs.is_empty())
        };
        let mut high = Vec::new();
        if zone.arrangement.has_branches() {
            high.extend(connected.iter().copied().filter(has_element));
        } else {
            for rooms in &zone.loops {
                let rooms = rooms.iter().filter_map(|&at| self.job.house.rooms.get(at));
                let rooms = rooms.filter(|room| has_element(&room.id));
                high.extend(rooms.max_by_key(|room| room.level).map(|room| room.id));
            }
        }
        for room in high {
            self.part(PriceField::AirVent, None, Whose::Room(room), Reason::HighPoint, 1);
        }
    }

    fn diverters(&self, room: RoomId) -> Diverters {
        let place = self.job.house.rooms.iter().position(|of| of.id == room);
        let way = place.and_then(|place| self.job.approaches.get(place));
        way.map(|way| way.diverters).unwrap_or_default()
    }
}
