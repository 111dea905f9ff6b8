//! Changes of the piping: zones, arrangements, routes, and which room hangs where.

use super::draft::{Draft, RoomDraft};
use super::entries::Entries;
use super::piping::{
    Arrangement, Balancing, Hung, LegDraft, LegKind, MOST_ZONES, PumpKind, ZoneDraft,
};
use crate::building::{RoomId, ZoneId};
use crate::order;
use crate::pipe::{Material, Tube};

impl Draft {
    /// Adds a zone like the last one.
    pub fn add_zone(&mut self) -> ZoneId {
        let next = self.zones.iter().map(|zone| zone.id.0 + 1).max().unwrap_or(0);
        let id = ZoneId(next);
        let mut zone = match self.zones.last() {
            Some(last) => last.clone(),
            None => ZoneDraft::series(id, self.tube),
        };
        zone.id = id;
        zone.name = String::new();
        if self.zones.len() < MOST_ZONES {
            self.zones.push(zone);
        }
        id
    }

    /// Removes a zone; its rooms go to the first that is left. The last one stays.
    pub fn remove_zone(&mut self, id: ZoneId) {
        if self.zones.len() < 2 {
            return;
        }
        self.zones.retain(|zone| zone.id != id);
        let first = self.zones[0].id;
        for room in self.rooms.iter_mut().filter(|room| room.zone == id) {
            (room.zone, room.branch) = (first, 0);
        }
    }

    /// Hangs every room on one loop of one zone, in the order in which the water passes them now. What
    /// was typed of the zones goes with them; one zone stays as it is.
    pub(crate) fn join_zones(&mut self) {
        let (Some(first), true) = (self.zones.first().map(|zone| zone.id), self.zones.len() > 1)
        else {
            return;
        };
        let order = self.in_order();
        order::sort_by_key(&mut self.rooms, |room| order.iter().position(|id| *id == room.id));
        self.zones = vec![ZoneDraft::series(first, self.tube)];
        for room in &mut self.rooms {
            (room.zone, room.branch) = (first, 0);
        }
    }

    /// Arranges a zone anew, with the tubes and valves usual there.
    pub fn arrange(&mut self, id: ZoneId, arrangement: Arrangement) {
        let tube = self.tube;
        let rooms: Vec<RoomId> = self.rooms_of(id).map(|room| room.id).collect();
        let Some(zone) = self.zone_mut(id) else { return };
        let before = std::mem::replace(&mut zone.arrangement, arrangement);
        if before == arrangement {
            return;
        }
        zone.pipe = match arrangement {
            Arrangement::HomeRun => Tube::PexHalf,
            _ => tube,
        };
        zone.main = match arrangement.has_main() {
            true => larger(tube),
            false => tube,
        };
        zone.balancing = match arrangement {
            Arrangement::Series | Arrangement::DiverterTees => Balancing::None,
            _ => Balancing::Valves,
        };
        // Two loops of half the rooms each, to begin with.
        if arrangement == Arrangement::Split && self.rooms_of(id).all(|room| room.branch == 0) {
            for (index, room) in rooms.iter().enumerate() {
                if let Some(room) = self.room_mut(*room) {
                    room.branch = u32::from(index >= rooms.len().div_ceil(2));
                }
            }
        }
    }

    /// The tube of the elements, and of every pipe that was of the same.
    pub fn set_tube(&mut self, tube: Tube) {
        let before = std::mem::replace(&mut self.tube, tube);
        for zone in &mut self.zones {
            if zone.pipe == before {
                zone.pipe = tube;
            }
            if zone.main == before {
                zone.main = tube;
            }
        }
    }

    pub fn add_leg(&mut self, room: RoomId, kind: LegKind) {
        if let Some(room) = self.room_mut(room)
            && room.route.len() < MOST_ZONES
        {
            room.route.push(LegDraft { kind, entries: Entries::default() });
        }
    }

    pub fn remove_leg(&mut self, room: RoomId, row: usize) {
        if let Some(room) = self.room_mut(room)
            && row < room.route.len()
        {
            room.route.remove(row);
        }
    }

    /// Moves a room one place towards the supply of its own loop.
    pub fn move_room_earlier(&mut self, id: RoomId) {
        self.trade(id, |places, at| places[..at].last().copied());
    }

    /// Moves a room one place towards the return of its own loop.
    pub fn move_room_later(&mut self, id: RoomId) {
        self.trade(id, |places, at| places.get(at + 1).copied());
    }

    /// Hangs a room elsewhere: before another of that loop, or behind all that hang there.
    pub fn place_room(&mut self, id: RoomId, hung: Hung, before: Option<RoomId>) {
        let Some(own) = self.rooms.iter().position(|room| room.id == id) else { return };
        if before == Some(id) || self.zone(hung.zone).is_none() {
            return;
        }
        let mut room = self.rooms.remove(own);
        (room.zone, room.branch) = (hung.zone, hung.branch);
        let hung = self.hung(&room);
        let there = |at: &usize| self.hung(&self.rooms[*at]) == hung;
        let mut places = (0..self.rooms.len()).filter(there);
        let named = |at: &usize| Some(self.rooms[*at].id) == before;
        let at = match places.clone().find(named) {
            Some(at) => at,
            // Alone there it may as well stay where it was in the list.
            None => places.next_back().map_or(own, |last| last + 1),
        };
        self.rooms.insert(at, room);
    }

    /// Hangs the rooms of a zone on these loops, each in the order of its water: one makes a series
    /// loop, several a split one. A room of the zone that is not named stays behind the one that it
    /// follows now.
    pub fn hang_on_loops(&mut self, zone: ZoneId, loops: &[&[RoomId]]) {
        let now: Vec<RoomId> = self.rooms_of(zone).map(|room| room.id).collect();
        let named = |id: &RoomId| loops.iter().any(|rooms| rooms.contains(id));
        let mut order: Vec<(RoomId, u32)> = Vec::new();
        for (branch, rooms) in (0..).zip(loops) {
            for room in rooms.iter().filter(|room| now.contains(room)) {
                if !order.iter().any(|(other, _)| other == room) {
                    order.push((*room, branch));
                }
            }
        }
        for (at, room) in now.iter().enumerate().filter(|(_, room)| !named(room)) {
            let before = at.checked_sub(1).and_then(|at| now.get(at));
            let before = before.and_then(|id| order.iter().position(|(other, _)| other == id));
            let branch = before.and_then(|at| order.get(at)).map_or(0, |(_, branch)| *branch);
            order.insert(before.map_or(0, |at| at + 1), (*room, branch));
        }
        self.arrange(
            zone,
            match loops.len() {
                0 | 1 => Arrangement::Series,
                _ => Arrangement::Split,
            },
        );
        let places: Vec<usize> =
            (0..self.rooms.len()).filter(|&at| now.contains(&self.rooms[at].id)).collect();
        let before = self.rooms.clone();
        for (&(id, branch), place) in order.iter().zip(places) {
            if let Some(room) = before.iter().find(|room| room.id == id) {
                self.rooms[place] = RoomDraft { zone, branch, ..room.clone() };
            }
        }
    }

    /// Whether another draft differs from this one in nothing but where its rooms hang, and in which
    /// order.
    pub fn only_moved(&self, other: &Draft) -> bool {
        let settled = |draft: &Draft| {
            let mut draft = draft.clone();
            order::sort_by_key(&mut draft.rooms, |room| room.id);
            for room in &mut draft.rooms {
                (room.zone, room.branch) = (ZoneId(0), 0);
            }
            draft
        };
        self.rooms != other.rooms && settled(self) == settled(other)
    }

    /// A curve that is to be typed begins with rows to fill in.
    pub(super) fn begin_points(&mut self, kind: PumpKind) {
        while kind == PumpKind::Points && self.pump.points.len() < 3 {
            self.pump.points.push(Entries::default());
        }
    }

    /// Swaps a room with another of its loop, whichever `with` picks from the places of them all.
    fn trade(&mut self, id: RoomId, with: fn(&[usize], usize) -> Option<usize>) {
        let Some(own) = self.rooms.iter().position(|room| room.id == id) else { return };
        let hung = self.hung(&self.rooms[own]);
        let places: Vec<usize> =
            (0..self.rooms.len()).filter(|&at| self.hung(&self.rooms[at]) == hung).collect();
        let at = places.iter().position(|&place| place == own);
        if let Some(other) = at.and_then(|at| with(&places, at)) {
            self.rooms.swap(own, other);
        }
    }
}

/// The next size of the same tube, or itself.
fn larger(tube: Tube) -> Tube {
    let material: Material = tube.material();
    let mut sizes = Tube::ALL.into_iter().filter(|other| other.material() == material);
    sizes.find(|other| other.nominal() > tube.nominal()).unwrap_or(tube)
}
