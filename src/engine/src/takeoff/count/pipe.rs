//! Pipe with its turns, couplings, hangers and insulation; fittings where tubes of two kinds meet.

use super::{Counting, is_pex};
use crate::building::{RoomId, ZoneId};
use crate::job::{Arrangement, PriceField, Zone};
use crate::network::Place;
use crate::takeoff::item::{Reason, Whose};
use crate::takeoff::spacing::{hanger_spacing, hangers};
use crate::takeoff::straights::{couplings, is_inside, longest_sold};

impl Counting<'_> {
    pub(super) fn pipe(&mut self) {
        for laid in self.laid.clone() {
            let (whose, tube) = (whose(laid.place), laid.tube);
            self.length(PriceField::Pipe, Some(tube), whose, Reason::Way, laid.length);
            let reason = match laid.place {
                Place::BoilerRoom => Reason::BoilerRoom,
                _ => Reason::Way,
            };
            self.part(PriceField::Elbow, tube, whose, reason, laid.elbows as usize);
            if matches!(laid.place, Place::Inside(_)) {
                let reason = Reason::OverPipe;
                self.length(PriceField::Enclosure, None, whose, reason, laid.length);
            }
            if self.job.circuit.cover.is_some() && !is_inside(laid.place) {
                let (tube, reason) = (Some(tube), Reason::Way);
                self.length(PriceField::PipeCover, tube, whose, reason, laid.length);
            }
        }
        for straight in self.straights.clone() {
            let (whose, tube) = (whose(straight.place), straight.tube);
            if !straight.is_inside() {
                let count = hangers(straight.length, tube) as usize;
                let reason = Reason::Every(hanger_spacing(tube));
                self.part(PriceField::Hanger, tube, whose, reason, count);
            }
            let longest = longest_sold(self.job, &self.straights, tube);
            let count = couplings(straight.length, longest) as usize;
            self.part(PriceField::Coupling, tube, whose, Reason::LongStraight, count);
            if !is_pex(tube) {
                self.part(PriceField::Joint, None, whose, Reason::LongStraight, count);
            }
        }
    }

    /// Where a zone leaves the boiler's pipe, where branches leave mains, and at the two ends of each
    /// room's element: fittings where size or material changes. A manifold's ports take any tube.
    pub(super) fn meetings(&mut self, zone: &Zone) {
        let first = self.first_tube(zone);
        self.meet(self.boiler_tube(), first, Whose::Zone(zone.id), 2);
        match zone.arrangement {
            Arrangement::HomeRun => {}
            Arrangement::Series | Arrangement::Split => {
                for at in zone.loops.iter().filter_map(|rooms| rooms.first()) {
                    if let Some(room) = self.room_at(*at) {
                        self.meet(first, zone.pipe, self.of_loop(zone, room), 2);
                    }
                }
            }
            _ => {
                for room in self.connected(zone.id) {
                    self.meet(zone.main, zone.pipe, Whose::Room(room), 2);
                }
            }
        }
        for room in self.with_elements(zone) {
            self.meet(zone.pipe, self.job.circuit.tube, Whose::Room(room), 2);
        }
    }

    fn with_elements(&self, zone: &Zone) -> Vec<RoomId> {
        let rooms = zone.loops.iter().flatten().filter_map(|&at| self.design.rooms.get(at));
        let has = |room: &&crate::design::RoomDesign| !room.element.choice.runs.is_empty();
        rooms.filter(has).map(|room| room.room).collect()
    }
}

pub(super) fn whose(place: Place) -> Whose {
    use Place::*;
    let zone = |zone: ZoneId| Whose::Zone(zone);
    match place {
        BoilerRoom => Whose::House,
        ZoneValve(of) | FlowCheck(of) | Trunk(of) | TrunkBack(of) => zone(of),
        To(room) | Inside(room) | Branch(room) | BranchBack(room) | Element(room)
        | Between(room) | ReturnMain(room) | Above(room) | Back(room) | Balance(room) => {
            Whose::Room(room)
        }
    }
}
