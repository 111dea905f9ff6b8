//! Making changes: typing and choosing what they stand for.

use super::reach::{openings, surfaces};
use crate::building::{OpeningKind, SurfaceKind};
use crate::job::{
    AirBasis, AirField, Behind, ChangeDraft, ChangeField, ChangeKind, Counted, Draft, Entry, Field,
    HouseField, OpeningField, RoomField, SurfaceField, UValue, Whose, resolve,
};
use crate::quantity::Unit;

/// The job with the changes that are on made, in their order. They are no longer among its changes;
/// those that are off are.
pub fn apply(draft: &Draft) -> Draft {
    let mut changed = draft.clone();
    changed.what_if.retain(|change| change.counted == Counted::Off);
    for change in draft.what_if.iter().filter(|change| change.counted == Counted::On) {
        let windows = resolve(draft, Field::Change(change.id, ChangeField::Windows));
        make(&mut changed, change, windows.si());
    }
    changed
}

fn make(draft: &mut Draft, change: &ChangeDraft, windows: Option<f64>) {
    match change.kind {
        ChangeKind::Air => tighten(draft, change),
        ChangeKind::RoomLike => add_like(draft, change),
        ChangeKind::NewRoom => add_new(draft, change, windows),
        _ => build(draft, change),
    }
}

/// Surfaces or openings built anew.
fn build(draft: &mut Draft, change: &ChangeDraft) {
    let typed = match change.build {
        UValue::TypedU => Some(ChangeField::U),
        UValue::TypedR => Some(ChangeField::R),
        UValue::Listed(_) | UValue::Own(_) => None,
    };
    let entry = typed.map(|field| (field, entry(change, field)));
    for (room, id) in surfaces(draft, change) {
        if let Some(surface) = draft.surface_mut(room, id) {
            surface.u_value = change.build;
        }
        if let Some((field, entry)) = &entry {
            let field = match field {
                ChangeField::U => SurfaceField::U,
                _ => SurfaceField::R,
            };
            draft.set_entry(Field::Surface(room, id, field), entry.clone());
        }
    }
    for (room, surface, id) in openings(draft, change) {
        if let Some(opening) = draft.opening_mut(room, surface, id) {
            opening.u_value = change.build;
        }
        if let Some((field, entry)) = &entry {
            let field = match field {
                ChangeField::U => OpeningField::U,
                _ => OpeningField::R,
            };
            draft.set_entry(Field::Opening(room, surface, id, field), entry.clone());
        }
    }
}

/// What is typed, or a blank.
fn entry(change: &ChangeDraft, field: ChangeField) -> Entry {
    let blank = || Entry { text: String::new(), unit: Unit::One };
    change.entries.get(field).cloned().unwrap_or_else(blank)
}

/// The leakage that there will be; what rooms are known to leak at least stays.
fn tighten(draft: &mut Draft, change: &ChangeDraft) {
    draft.air.basis = change.leaks;
    let (from, to) = match change.leaks {
        AirBasis::Class => {
            draft.air_class = change.air_class;
            (ChangeField::AirChanges, Field::House(HouseField::AirChanges))
        }
        AirBasis::BlowerDoor => (ChangeField::BlowerFlow, Field::Air(AirField::BlowerFlow)),
        AirBasis::LeakageArea => (ChangeField::LeakageArea, Field::Air(AirField::LeakageArea)),
    };
    draft.set_entry(to, entry(change, from));
}

/// A room like another, behind it.
fn add_like(draft: &mut Draft, change: &ChangeDraft) {
    let Whose::Room(id) = change.whose else { return };
    let Some(like) = draft.room(id) else { return };
    let name = match change.name.trim() {
        "" => format!("{} 2", like.name.trim()),
        name => name.to_string(),
    };
    if let Some(copy) = draft.copy_room(id, &name)
        && let Some(copy) = draft.room_mut(copy)
    {
        // Pieces that stay are those that hang there already.
        copy.surfaces.iter_mut().for_each(|surface| surface.fixed.clear());
    }
}

/// A room at the end of the last one's loop, with all that a room of its storey has around it; its
/// windows by turns in its outside walls.
fn add_new(draft: &mut Draft, change: &ChangeDraft, windows: Option<f64>) {
    let room = draft.add_room(change.name.trim());
    if let Some(added) = draft.room_mut(room) {
        added.level = change.level;
    }
    for (from, to) in [
        (ChangeField::FloorLength, RoomField::FloorLength),
        (ChangeField::FloorWidth, RoomField::FloorWidth),
        (ChangeField::Height, RoomField::Height),
    ] {
        draft.set_entry(Field::Room(room, to), entry(change, from));
    }
    draft.add_shell(room);
    let walls: Vec<_> = draft
        .room(room)
        .iter()
        .flat_map(|room| &room.surfaces)
        .filter(|surface| surface.kind == SurfaceKind::Wall)
        .map(|surface| surface.id)
        .collect();
    for &inside in walls.iter().skip(change.outside.count()) {
        draft.set_behind(room, inside, Behind::SameTemperature);
    }
    let outside = walls.get(..change.outside.count()).unwrap_or(&walls);
    // Its bounds are small, so the conversion is exact.
    let windows = windows.unwrap_or(0.0) as usize;
    for &wall in outside.iter().cycle().take(windows) {
        draft.add_opening(room, wall, OpeningKind::Window);
    }
}
