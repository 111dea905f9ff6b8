//! Jobs for the rooms: walls that are too short, water that is too cool, losses entered twice.

use super::cases::{Case, typed_flow, wall};
use super::{FIRST, FIRST_WALL, SECOND};
use crate::support::{room, set};
use finrun_engine::building::{RoomId, RoomUse, SurfaceKind};
use finrun_engine::job::{Behind, Draft, Field, RoomField, SurfaceField};

pub(super) const ROOMS: &[Case] = &[
    // 3 ft of pieces where some 6 ft are needed; no water the boiler makes would do.
    Case {
        change: |draft| wall(draft, SurfaceField::Free, "4", "12"),
        brings: &["stop room-1 does-not-fit: more-wall, higher-output-element, reduce-loss"],
        takes: &["holds house rooms-heated"],
    },
    // 5 ft nearly do: hotter water does.
    Case {
        change: |draft| wall(draft, SurfaceField::Free, "5' 6\"", "12"),
        brings: &["stop room-1 does-not-fit: more-wall, higher-output-element, reduce-loss"],
        takes: &["holds house rooms-heated"],
    },
    // Slow water is cool by the second room: as the first one it would be heated.
    Case {
        change: |draft| {
            typed_flow(draft, "0.9");
            wall(draft, SurfaceField::Free, "12", "7' 4\"");
        },
        brings: &[
            "stop room-3 does-not-fit: more-wall, higher-output-element, reduce-loss",
            "watch loop velocity: more-flow, other-tube, purge-at-high-flow",
        ],
        takes: &["holds house rooms-heated", "holds loop velocity"],
    },
    // 0.05 gpm carries 25 lb/h: cooled to the room it gives less than 3360 Btu/h.
    Case {
        change: |draft| typed_flow(draft, "0.05"),
        brings: &[
            "stop room-1 water-too-cool: second-circuit, reduce-loss",
            "stop room-3 water-too-cool: second-circuit, reduce-loss",
            "watch loop drop: more-flow, second-circuit",
            "watch loop velocity: more-flow, other-tube, purge-at-high-flow",
            "watch boiler return-cool: mixing-valve, condensing-boiler",
        ],
        takes: &["holds house rooms-heated", "holds loop drop", "holds loop velocity"],
    },
    Case {
        change: |draft| wall(draft, SurfaceField::Free, "0", "12"),
        brings: &["stop room-1 no-wall: add-free-wall"],
        takes: &["holds house rooms-heated"],
    },
    Case {
        change: |draft| draft.remove_surface(FIRST, FIRST_WALL),
        brings: &["watch room-1 no-load: add-surfaces"],
        takes: &[],
    },
    Case {
        change: |draft| {
            let surface = draft.surface_mut(FIRST, FIRST_WALL).expect("its wall");
            surface.behind = Behind::Unheated;
            let field = SurfaceField::BehindTemperature;
            set(draft, Field::Surface(FIRST, FIRST_WALL, field), "80");
        },
        brings: &["watch room-1 no-load"],
        takes: &[],
    },
    // The same wall from both sides, and a ceiling that is the other's floor.
    Case {
        change: |draft| {
            room(draft, SECOND, RoomField::Temperature, "66");
            between(draft, FIRST, SurfaceKind::Wall);
            between(draft, SECOND, SurfaceKind::Wall);
        },
        brings: &["watch room-1 entered-twice: remove-one-entry"],
        takes: &[],
    },
    Case {
        change: |draft| {
            room(draft, SECOND, RoomField::Temperature, "66");
            between(draft, FIRST, SurfaceKind::Ceiling);
            between(draft, SECOND, SurfaceKind::Floor);
        },
        brings: &["watch room-1 entered-twice: remove-one-entry"],
        takes: &[],
    },
    // A garage wall entered in the room and in the garage, whatever the garage's temperature.
    Case {
        change: |draft| {
            let garage = draft.add_space(RoomUse::Garage, "Garage");
            room(draft, garage, RoomField::FloorArea, "200");
            for (of, behind) in [(SECOND, garage), (garage, SECOND)] {
                let wall = draft.add_surface_to(of, SurfaceKind::Wall, Behind::Room(behind));
                let wall = wall.expect("the room is there");
                set(draft, Field::Surface(of, wall, SurfaceField::Length), "1");
            }
        },
        brings: &["watch room-3 entered-twice: remove-one-entry"],
        takes: &[],
    },
    // A garage wall entered once, and the attic over both rooms.
    Case {
        change: |draft| {
            let garage = draft.add_space(RoomUse::Garage, "Garage");
            room(draft, garage, RoomField::FloorArea, "200");
            let wall = draft.add_surface_to(garage, SurfaceKind::Wall, Behind::Room(SECOND));
            let wall = wall.expect("the space is there");
            set(draft, Field::Surface(garage, wall, SurfaceField::Length), "1");
            let attic = draft.add_space(RoomUse::Attic, "Attic");
            for of in [FIRST, SECOND] {
                let ceiling = draft.add_surface_to(of, SurfaceKind::Ceiling, Behind::Room(attic));
                let ceiling = ceiling.expect("the room is there");
                set(draft, Field::Surface(of, ceiling, SurfaceField::Area), "5");
            }
        },
        brings: &[],
        takes: &[],
    },
    // From one side only, from both at one temperature, or two ceilings: nothing to say.
    Case {
        change: |draft| {
            room(draft, SECOND, RoomField::Temperature, "66");
            between(draft, FIRST, SurfaceKind::Wall);
        },
        brings: &[],
        takes: &[],
    },
    Case {
        change: |draft| {
            between(draft, FIRST, SurfaceKind::Wall);
            between(draft, SECOND, SurfaceKind::Wall);
        },
        brings: &[],
        takes: &[],
    },
    Case {
        change: |draft| {
            room(draft, SECOND, RoomField::Temperature, "66");
            between(draft, FIRST, SurfaceKind::Ceiling);
            between(draft, SECOND, SurfaceKind::Ceiling);
        },
        brings: &[],
        takes: &[],
    },
];

/// An inside surface of `room` to the other room.
fn between(draft: &mut Draft, room: RoomId, kind: SurfaceKind) {
    let id = draft.add_surface(room, kind).expect("the room is there");
    let other = if room == FIRST { SECOND } else { FIRST };
    draft.surface_mut(room, id).expect("just added").behind = Behind::Room(other);
    if kind == SurfaceKind::Wall {
        set(draft, Field::Surface(room, id, SurfaceField::Length), "10");
    }
}
