//! The ids of the lists on the page.

use super::Choice;
use std::fmt;

impl fmt::Display for Choice {
    /// The id of the list on the page, such as `room-3.surface-7.behind`.
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        match self {
            Choice::DesignHours => f.write_str("design-hours"),
            Choice::AirClass => f.write_str("air-class"),
            Choice::AirBasis => f.write_str("air-basis"),
            Choice::Storeys => f.write_str("storeys"),
            Choice::Shelter => f.write_str("shelter"),
            Choice::Flue => f.write_str("flue"),
            Choice::Soil => f.write_str("soil"),
            Choice::GroundMethod => f.write_str("ground-method"),
            Choice::Edge => f.write_str("edge"),
            Choice::SlabEdge => f.write_str("slab-edge"),
            Choice::Fuel => f.write_str("fuel"),
            Choice::Tube => f.write_str("tube"),
            Choice::Objective => f.write_str("objective"),
            Choice::Sticks => f.write_str("sticks"),
            Choice::FlowBasis => f.write_str("flow-basis"),
            Choice::PipeCover => f.write_str("pipe-cover"),
            Choice::Zoning => f.write_str("zoning"),
            Choice::Pump => f.write_str("pump"),
            Choice::PumpSet => f.write_str("pump-set"),
            Choice::BoilerKind => f.write_str("boiler-kind"),
            Choice::TankHeating => f.write_str("tank-heating"),
            Choice::Metal => f.write_str("metal"),
            Choice::ValveKind => f.write_str("valve-kind"),
            Choice::Antifreeze => f.write_str("antifreeze"),
            Choice::Standing => f.write_str("standing"),
            Choice::Ran => f.write_str("ran"),
            Choice::SupplyBy => f.write_str("supply-by"),
            Choice::Mass => f.write_str("mass"),
            Choice::Arrangement(zone) => write!(f, "zone-{}.arrangement", zone.0),
            Choice::Main(zone) => write!(f, "zone-{}.main", zone.0),
            Choice::Pipe(zone) => write!(f, "zone-{}.pipe", zone.0),
            Choice::Balancing(zone) => write!(f, "zone-{}.balancing", zone.0),
            Choice::BackPath(zone) => write!(f, "zone-{}.back", zone.0),
            Choice::ZonePump(zone) => write!(f, "zone-{}.pump", zone.0),
            Choice::Holds(zone) => write!(f, "zone-{}.holds", zone.0),
            Choice::Hung(room) => write!(f, "room-{}.zone", room.0),
            Choice::Diverters(room) => write!(f, "room-{}.diverters", room.0),
            Choice::ShutOff(room) => write!(f, "room-{}.shut-off", room.0),
            Choice::RoomMass(room) => write!(f, "room-{}.mass", room.0),
            Choice::Leg(room, row) => write!(f, "room-{}.leg-{}.kind", room.0, row + 1),
            Choice::Level(room) => write!(f, "room-{}.level", room.0),
            Choice::Shape(room) => write!(f, "room-{}.shape", room.0),
            Choice::Behind(room, surface) => {
                write!(f, "room-{}.surface-{}.behind", room.0, surface.0)
            }
            Choice::WallUse(room, surface) => {
                write!(f, "room-{}.surface-{}.wall-use", room.0, surface.0)
            }
            Choice::SurfaceBuild(room, surface) => {
                write!(f, "room-{}.surface-{}.build", room.0, surface.0)
            }
            Choice::OpeningBuild(room, surface, opening) => {
                write!(f, "room-{}.surface-{}.opening-{}.build", room.0, surface.0, opening.0)
            }
            Choice::Position(id) => write!(f, "assembly-{}.position", id.0),
            Choice::Framing(id) => write!(f, "assembly-{}.framing", id.0),
            Choice::LayerMaterial(id, row) => {
                write!(f, "assembly-{}.layer-{}.material", id.0, row + 1)
            }
            Choice::ChangeKind(id) => write!(f, "change-{}.kind", id.0),
            Choice::ChangeWhose(id) => write!(f, "change-{}.whose", id.0),
            Choice::ChangeBuild(id) => write!(f, "change-{}.build", id.0),
            Choice::ChangeLeaks(id) => write!(f, "change-{}.leaks", id.0),
            Choice::ChangeAirClass(id) => write!(f, "change-{}.air-class", id.0),
            Choice::ChangeLevel(id) => write!(f, "change-{}.level", id.0),
            Choice::OutsideWalls(id) => write!(f, "change-{}.outside-walls", id.0),
            Choice::LayerPlace(id, row) => write!(f, "assembly-{}.layer-{}.place", id.0, row + 1),
        }
    }
}
