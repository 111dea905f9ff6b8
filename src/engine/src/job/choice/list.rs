//! What may be chosen in each place, as the page lists it.

use super::super::control::{Holds, RoomMass};
use super::super::draft::{Behind, Draft, LayerMaterial, UValue};
use super::super::piping::{Arrangement, Hung, PumpKind};
use super::{Choice, Pick};
use crate::building::{
    Assembly, Material, OpeningKind, Position, RoomId, RoomUse, SurfaceId, SurfaceKind, Used,
    ZoneId,
};
use crate::named::Named;

impl Draft {
    /// What may be chosen, in the order of the list; empty when the thing is gone.
    pub fn picks(&self, choice: Choice) -> Vec<Pick> {
        match choice {
            Choice::DesignHours => all(Pick::DesignHours),
            Choice::AirClass => all(Pick::AirClass),
            Choice::AirBasis => all(Pick::AirBasis),
            Choice::Storeys => all(Pick::Storeys),
            Choice::Shelter => all(Pick::Shelter),
            Choice::Flue => all(Pick::Flue),
            Choice::Soil => all(Pick::Soil),
            Choice::GroundMethod => all(Pick::GroundMethod),
            Choice::Edge => all(Pick::Edge),
            Choice::SlabEdge => all(Pick::SlabEdge),
            Choice::Fuel => all(Pick::Fuel),
            Choice::Tube | Choice::Main(_) | Choice::Pipe(_) => all(Pick::Tube),
            Choice::Objective => all(Pick::Objective),
            Choice::Sticks => all(Pick::Sticks),
            Choice::FlowBasis => all(Pick::FlowBasis),
            Choice::PipeCover => all(Pick::PipeCover),
            Choice::Zoning => all(Pick::Zoning),
            Choice::Pump | Choice::ZonePump(_) => PumpKind::ALL.map(Pick::Pump).to_vec(),
            Choice::PumpSet => all(Pick::PumpSet),
            Choice::BoilerKind => all(Pick::BoilerKind),
            Choice::TankHeating => all(Pick::TankHeating),
            Choice::Metal => all(Pick::Metal),
            Choice::ValveKind => all(Pick::ValveKind),
            Choice::Antifreeze => all(Pick::Antifreeze),
            Choice::Standing => all(Pick::Standing),
            Choice::Ran => all(Pick::Ran),
            Choice::SupplyBy => all(Pick::SupplyBy),
            Choice::Mass => all(Pick::Mass),
            Choice::Holds(zone) => self.holds_picks(zone),
            Choice::RoomMass(_) => RoomMass::ALL.map(Pick::RoomMass).to_vec(),
            Choice::Arrangement(_) => all(Pick::Arrangement),
            Choice::Balancing(_) => all(Pick::Balancing),
            Choice::BackPath(_) => all(Pick::BackPath),
            Choice::Hung(room) => self.hung_picks(room),
            Choice::Diverters(_) => all(Pick::Diverters),
            Choice::ShutOff(_) => all(Pick::ShutOff),
            Choice::Leg(..) => all(Pick::Leg),
            Choice::Level(_) => all(Pick::Level),
            Choice::Shape(_) => all(Pick::Shape),
            Choice::Behind(room, surface) => self.behind_picks(room, surface),
            Choice::WallUse(..) => all(Pick::WallUse),
            Choice::SurfaceBuild(room, surface) => self
                .surface(room, surface)
                .map(|s| self.builds(&[self.used_at(room, s.kind, s.behind)], s.u_value))
                .unwrap_or_default(),
            Choice::OpeningBuild(room, surface, opening) => {
                let garage = self.room(room).is_some_and(|room| room.used == RoomUse::Garage);
                self.opening(room, surface, opening)
                    .map(|o| match o.kind {
                        OpeningKind::Window => self.builds(&[Used::Window], o.u_value),
                        OpeningKind::Door if garage => {
                            self.builds(&[Used::GarageDoor, Used::Door], o.u_value)
                        }
                        OpeningKind::Door => self.builds(&[Used::Door], o.u_value),
                    })
                    .unwrap_or_default()
            }
            Choice::Position(_) => all(Pick::Position),
            Choice::Framing(_) => all(Pick::Framing),
            Choice::LayerMaterial(..) => {
                let listed = Material::ALL.iter().copied().map(LayerMaterial::Listed);
                listed.chain([LayerMaterial::TypedR]).map(Pick::LayerMaterial).collect()
            }
            Choice::LayerPlace(..) => all(Pick::LayerPlace),
            Choice::ChangeKind(_) => all(Pick::ChangeKind),
            Choice::ChangeWhose(id) => self.whose_picks(id),
            Choice::ChangeBuild(id) => match self.change(id) {
                Some(change) => self.builds(change.kind.used().as_slice(), change.build),
                None => Vec::new(),
            },
            Choice::ChangeLeaks(_) => all(Pick::AirBasis),
            Choice::ChangeAirClass(_) => all(Pick::AirClass),
            Choice::ChangeLevel(_) => all(Pick::Level),
            Choice::OutsideWalls(_) => all(Pick::OutsideWalls),
        }
    }

    /// Each zone, a split one by its loops, with one loop more to begin.
    fn hung_picks(&self, room: RoomId) -> Vec<Pick> {
        let mut picks = Vec::new();
        if self.heated_room(room).is_none() {
            return picks;
        }
        for zone in &self.zones {
            let loops = match zone.arrangement {
                Arrangement::Split => {
                    let used = self.rooms_of(zone.id).map(|room| room.branch + 1).max();
                    (used.unwrap_or(0) + 1).min(MOST_LOOPS)
                }
                _ => 1,
            };
            picks.extend((0..loops).map(|branch| Pick::Hung(Hung { zone: zone.id, branch })));
        }
        picks
    }

    /// A thermostat in the first room or in another, and valves where each room has a way of its own.
    fn holds_picks(&self, id: ZoneId) -> Vec<Pick> {
        let Some(zone) = self.zone(id) else { return Vec::new() };
        let mut picks = vec![Holds::FirstRoom];
        picks.extend(self.rooms_of(id).map(|room| Holds::Thermostat(room.id)));
        picks.extend(zone.arrangement.has_branches().then_some(Holds::RoomValves));
        // What is chosen stays on the list, also when it is gone.
        if !picks.contains(&zone.holds) {
            picks.push(zone.holds);
        }
        picks.into_iter().map(Pick::Holds).collect()
    }

    /// Outdoors and ground, then guesses, then every other room and space.
    fn behind_picks(&self, room: RoomId, surface: SurfaceId) -> Vec<Pick> {
        let mut picks = vec![Behind::Outdoors];
        // Nothing but birds lies under the earth over a ceiling.
        if self.surface(room, surface).is_none_or(|s| s.kind != SurfaceKind::Ceiling) {
            picks.push(Behind::Ground);
        }
        picks.extend([Behind::Unheated, Behind::SameTemperature]);
        picks.extend(self.all_rooms().map(|r| r.id).filter(|id| *id != room).map(Behind::Room));
        // What is chosen stays on the list, also when it is wrong.
        if let Some(now) = self.surface(room, surface).map(|s| s.behind)
            && !picks.contains(&now)
        {
            picks.push(now);
        }
        picks.into_iter().map(Pick::Behind).collect()
    }

    /// Where a surface of this kind finds its assemblies on the list.
    pub(in crate::job) fn used_at(&self, room: RoomId, kind: SurfaceKind, behind: Behind) -> Used {
        let attic = self.room(room).is_some_and(|r| r.used == RoomUse::Attic);
        match (kind, behind) {
            (SurfaceKind::Wall, Behind::Ground) => Used::BasementWall,
            (SurfaceKind::Wall, _) => Used::Wall,
            (SurfaceKind::Ceiling, Behind::Outdoors) if attic => Used::Roof,
            (SurfaceKind::Ceiling, _) => Used::Ceiling,
            (SurfaceKind::Floor, Behind::Ground) => Used::Slab,
            (SurfaceKind::Floor, _) => Used::Floor,
        }
    }

    /// The user's own assemblies of these places, the listed ones, and the two ways to type a value.
    fn builds(&self, used: &[Used], now: UValue) -> Vec<Pick> {
        let own =
            self.assemblies.iter().filter(|a| used.iter().any(|&used| fits(a.position, used)));
        let mut builds: Vec<UValue> = own.map(|a| UValue::Own(a.id)).collect();
        for &used in used {
            builds.extend(Assembly::used_in(used).map(UValue::Listed));
        }
        builds.extend([UValue::TypedU, UValue::TypedR]);
        // What is chosen stays on the list, also when it is gone or meant for another place.
        if !builds.contains(&now) {
            builds.push(now);
        }
        builds.into_iter().map(Pick::Build).collect()
    }
}

/// More loops than any zone is split into.
const MOST_LOOPS: u32 = 12;

fn all<T: Named>(pick: fn(T) -> Pick) -> Vec<Pick> {
    T::ALL.iter().copied().map(pick).collect()
}

/// Whether an assembly of the user's own can stand there.
fn fits(position: Position, used: Used) -> bool {
    match used {
        Used::Wall => matches!(position, Position::Wall | Position::Partition),
        // A ceiling and roof in one stands over a room as over an attic.
        Used::Ceiling => matches!(position, Position::Ceiling | Position::Roof),
        Used::Roof => position == Position::Roof,
        Used::Floor => position == Position::Floor,
        Used::Slab => position == Position::Slab,
        Used::BasementWall => position == Position::GroundWall,
        Used::Window | Used::Door | Used::GarageDoor => false,
    }
}
