//! Houses of any size, to measure with. All numbers are invented.

use finrun_engine::building::{OpeningKind, SurfaceKind};
use finrun_engine::job::{
    Draft, Entry, Field, HouseField, Job, OpeningField, PriceField, RoomField, StockField,
    SurfaceField, read,
};
use finrun_engine::quantity::System;

/// A house of `count` rooms, each a little larger than the one before, two walls of it outside.
pub fn house(count: u32) -> Draft {
    let mut draft = Draft::new("Bench", System::Us);
    set(&mut draft, Field::House(HouseField::Outdoors), "5".to_string());
    for index in 0..count {
        let room = draft.add_room(&format!("Room {index}"));
        let (length, width) =
            (10.0 + 0.25 * f64::from(index % 16), 9.0 + 0.5 * f64::from(index % 7));
        set(&mut draft, Field::Room(room, RoomField::FloorLength), length.to_string());
        set(&mut draft, Field::Room(room, RoomField::FloorWidth), width.to_string());
        for side in [length, width] {
            let wall = draft.add_surface(room, SurfaceKind::Wall).expect("the room is there");
            set(&mut draft, Field::Surface(room, wall, SurfaceField::Length), side.to_string());
            let kind = if side == length { OpeningKind::Window } else { OpeningKind::Door };
            let opening = draft.add_opening(room, wall, kind).expect("the wall is there");
            let field = Field::Opening(room, wall, opening, OpeningField::Width);
            set(&mut draft, field, "2' 8\"".to_string());
        }
        draft.add_surface(room, SurfaceKind::Ceiling);
    }
    draft
}

/// Parts its rooms into zones of so many, each a loop.
pub fn zones_of(draft: &mut Draft, rooms: usize) {
    let all: Vec<_> = draft.rooms.iter().map(|room| room.id).collect();
    for some in all.chunks(rooms).skip(1) {
        let zone = draft.add_zone();
        for &room in some {
            draft.room_mut(room).expect("its room").zone = zone;
        }
    }
}

/// A price for every length, such that a longer piece is now and then the cheaper one, and for joints
/// and end caps.
pub fn price(draft: &mut Draft) {
    for (feet, price) in (2..).zip([23, 29, 29, 39, 48, 47, 48, 65, 66]) {
        set(draft, Field::Stocked(feet, StockField::Price), price.to_string());
    }
    set(draft, Field::Price(PriceField::Joint), "6.50".to_string());
    set(draft, Field::Price(PriceField::EndCap), "4.25".to_string());
}

/// So many of each length in the shop.
pub fn count(draft: &mut Draft, each: [u32; 9]) {
    for (feet, count) in (2..).zip(each) {
        set(draft, Field::Stocked(feet, StockField::Available), count.to_string());
    }
}

fn set(draft: &mut Draft, field: Field, text: String) {
    let unit = draft.box_unit(field);
    draft.set_entry(field, Entry { text, unit });
}

pub fn job(draft: &Draft) -> Job {
    let reading = read(draft);
    assert!(reading.errors.is_empty(), "{:?}", reading.errors);
    reading.job.expect("a whole job")
}
