//! Names of rooms, assemblies, surfaces and openings, also of those that have none, and which of all
//! things a field belongs to.

use crate::choices::both_kinds;
use crate::language::{Language, either, language, say};
use crate::{control, install, what_if};
use finrun_engine::building::{AssemblyId, OpeningId, RoomId, RoomUse, SurfaceId, SurfaceKind};
use finrun_engine::job::{Draft, Field, SpotField};

/// A room's name, or its place on the loop while it has none; a space's name, or what it is.
pub fn room_name(draft: &Draft, id: RoomId) -> String {
    match draft.all_rooms().enumerate().find(|(_, room)| room.id == id) {
        Some((_, room)) if !room.name.trim().is_empty() => room.name.trim().to_string(),
        Some((_, space)) if space.used != RoomUse::Heated => {
            crate::room_use(space.used).to_string()
        }
        Some((index, _)) => say!("Room {}", "Habitación {}"; index + 1),
        None => crate::removed_room().to_string(),
    }
}

/// The name of an assembly of the user's own, or its place among them.
pub fn assembly_name(draft: &Draft, id: AssemblyId) -> String {
    match draft.assemblies.iter().enumerate().find(|(_, assembly)| assembly.id == id) {
        Some((_, assembly)) if !assembly.name.trim().is_empty() => assembly.name.trim().to_string(),
        Some((index, _)) => say!("Own assembly {}", "Construcción propia {}"; index + 1),
        None => crate::removed_assembly().to_string(),
    }
}

/// A surface's name, such as "North wall" or "Wall 2".
pub fn surface_name(draft: &Draft, room: RoomId, id: SurfaceId) -> String {
    let Some(room) = draft.room(room) else { return String::new() };
    let Some(surface) = room.surfaces.iter().find(|surface| surface.id == id) else {
        return String::new();
    };
    let kind = crate::surface_kind(surface.kind);
    let name = surface.name.trim();
    if !name.is_empty() {
        return named_surface(name, surface.kind);
    }
    let alike: Vec<_> = room.surfaces.iter().filter(|s| s.kind == surface.kind).collect();
    match alike.iter().position(|s| s.id == id) {
        Some(index) if alike.len() > 1 => format!("{kind} {}", index + 1),
        _ => kind.to_string(),
    }
}

/// "South wall" for a wall named "south"; a name that says what it is, in whatever language, stays as
/// it is.
fn named_surface(name: &str, kind: SurfaceKind) -> String {
    let (english, spanish) = both_kinds(kind);
    let typed = name.to_ascii_lowercase();
    let says = |kind: &str| typed.contains(&kind.to_ascii_lowercase());
    match (says(english) || says(spanish), language()) {
        (true, _) => capital(name),
        (false, Language::English) => format!("{} {}", capital(name), english.to_ascii_lowercase()),
        (false, Language::Spanish) => format!("{spanish} {name}"),
    }
}

fn capital(name: &str) -> String {
    let mut letters = name.chars();
    let first = letters.next().map(|c| c.to_ascii_uppercase()).into_iter();
    first.chain(letters).collect()
}

/// An opening's name, such as "Window 2".
pub fn opening_name(draft: &Draft, room: RoomId, surface: SurfaceId, id: OpeningId) -> String {
    let Some(surface) = draft.surface(room, surface) else { return String::new() };
    let Some(opening) = surface.openings.iter().find(|opening| opening.id == id) else {
        return String::new();
    };
    let kind = crate::opening_kind(opening.kind);
    let alike: Vec<_> = surface.openings.iter().filter(|o| o.kind == opening.kind).collect();
    match alike.iter().position(|o| o.id == id) {
        Some(index) if alike.len() > 1 => format!("{kind} {}", index + 1),
        _ => kind.to_string(),
    }
}

/// Which thing a field belongs to, for an error summary: "Kitchen, north wall, window".
pub fn field_owner(draft: &Draft, field: Field) -> String {
    match field {
        Field::House(_) => either(("House", "Casa")).to_string(),
        Field::Air(_) => either(("Air", "Aire")).to_string(),
        Field::Ground(_) => either(("Ground", "Suelo")).to_string(),
        Field::Certainty(_) => either(("How sure", "Qué tan seguro")).to_string(),
        Field::Assembly(id, _) => assembly_name(draft, id),
        Field::Layer(id, row, _) => say!(
            "{}, layer {}",
            "{}, capa {}";
            assembly_name(draft, id), row + 1
        ),
        Field::Bills(_) => either(("Fuel bills", "Facturas de combustible")).to_string(),
        Field::Bill(id, _) => {
            let index = draft.bills.list.iter().position(|bill| bill.id == id).unwrap_or(0);
            crate::bill_name(index)
        }
        Field::Element(_) | Field::Stock => either(("Element", "Elemento")).to_string(),
        Field::Stocked(feet, _) => say!("{feet} ft piece", "Pieza de {feet} pies"),
        Field::Price(_) => either(("Prices", "Precios")).to_string(),
        Field::SizedPrice(tube, _) => say!("Prices, {}", "Precios, {}"; crate::tube(tube)),
        Field::Spare(_) => either(("To spare", "De reserva")).to_string(),
        Field::Cut(_) => either(("Cutting", "Corte")).to_string(),
        Field::Point(row, _) => say!(
            "Maker's table, row {}",
            "Tabla del fabricante, renglón {}";
            row + 1
        ),
        Field::Circuit(_) => either(("Loop", "Circuito")).to_string(),
        Field::Part(_) => either(("Valves and tees", "Válvulas y tes")).to_string(),
        Field::Plant(_) => either(("Boiler and fill", "Caldera y llenado")).to_string(),
        Field::Control(_) => either(control::SETBACK).to_string(),
        Field::Zone(zone, _) => crate::zone_name(draft, zone),
        Field::PumpPoint(row, _) => say!(
            "Circulator's curve, point {}",
            "Curva del circulador, punto {}";
            row + 1
        ),
        Field::Leg(room, row, _) => say!(
            "{}, step {}",
            "{}, paso {}";
            room_name(draft, room), row + 1
        ),
        Field::Room(room, _) => room_name(draft, room),
        Field::Measured(_) => either(("Readings", "Lecturas")).to_string(),
        Field::Spot(room, SpotField::Air | SpotField::WaterIn | SpotField::WaterOut) => {
            room_name(draft, room)
        }
        Field::Spot(room, _) => install::circuit_at(draft, room),
        Field::Change(id, _) => what_if::change_name(draft, id),
        Field::Surface(room, surface, _) => {
            format!("{}, {}", room_name(draft, room), surface_name(draft, room, surface))
        }
        Field::Opening(room, surface, opening, _) => format!(
            "{}, {}, {}",
            room_name(draft, room),
            surface_name(draft, room, surface),
            opening_name(draft, room, surface, opening)
        ),
    }
}
