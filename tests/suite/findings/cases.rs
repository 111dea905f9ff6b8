//! The jobs: what is changed in the sound one, and what findings come and go with it.

use super::{FIRST, FIRST_WALL, SECOND, SECOND_WALL};
use crate::support::{room, set};
use finrun_engine::building::{RoomId, RoomUse, SurfaceKind};
use finrun_engine::job::{
    Antifreeze, Behind, BoilerKind, CircuitField, Draft, Field, FlowBasis, PlantField, RoomField,
    SurfaceField, TankHeating,
};
use finrun_engine::pipe::Tube;

fn circuit(draft: &mut Draft, field: CircuitField, text: &str) {
    set(draft, Field::Circuit(field), text);
}

pub(super) fn typed_flow(draft: &mut Draft, gpm: &str) {
    draft.flow_basis = FlowBasis::Typed;
    circuit(draft, CircuitField::Flow, gpm);
}

fn drop(draft: &mut Draft, fahrenheit: &str) {
    draft.flow_basis = FlowBasis::FromDrop;
    circuit(draft, CircuitField::Drop, fahrenheit);
}

pub(super) fn wall(draft: &mut Draft, field: SurfaceField, first: &str, second: &str) {
    set(draft, Field::Surface(FIRST, FIRST_WALL, field), first);
    set(draft, Field::Surface(SECOND, SECOND_WALL, field), second);
}

/// Fifty feet of wall, so that any length fits; the area stays 96 ft2.
fn long_walls(draft: &mut Draft, u: &str) {
    wall(draft, SurfaceField::Length, "50", "50");
    wall(draft, SurfaceField::Area, "96", "96");
    wall(draft, SurfaceField::U, u, u);
}

/// An inside surface of `room` to the other room.
fn between(draft: &mut Draft, room: RoomId, kind: SurfaceKind) {
    let id = draft.add_surface(room, kind).expect("the room is there");
    let other = if room == FIRST { SECOND } else { FIRST };
    draft.surface_mut(room, id).expect("just added").behind = Behind::Room(other);
    if kind == SurfaceKind::Wall {
        set(draft, Field::Surface(room, id, SurfaceField::Length), "10");
    }
}

pub(super) struct Case {
    pub(super) change: fn(&mut Draft),
    /// Findings that the change brings.
    pub(super) brings: &'static [&'static str],
    /// Findings of the sound job that it takes away.
    pub(super) takes: &'static [&'static str],
}

fn plant(draft: &mut Draft, field: PlantField, text: &str) {
    set(draft, Field::Plant(field), text);
}

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

pub(super) const LOOP: &[Case] = &[
    // Long bare pipe loses as much again.
    Case {
        change: |draft| {
            drop(draft, "8");
            room(draft, FIRST, RoomField::PipeTo, "150");
        },
        brings: &[
            "watch loop drop: more-flow, second-circuit",
            "watch loop velocity: more-flow, smaller-drop, other-tube, purge-at-high-flow",
        ],
        takes: &["holds loop drop", "holds loop velocity"],
    },
    // Slow: in a tube that has a smaller one, with a drop that could be planned smaller, and in
    // the smallest tube.
    Case {
        change: |draft| typed_flow(draft, "1"),
        brings: &["watch loop velocity: more-flow, other-tube, purge-at-high-flow"],
        takes: &["holds loop velocity"],
    },
    Case {
        change: |draft| drop(draft, "15"),
        brings: &["watch loop velocity: more-flow, smaller-drop, other-tube, purge-at-high-flow"],
        takes: &["holds loop velocity"],
    },
    Case {
        change: |draft| {
            typed_flow(draft, "1.2");
            draft.set_tube(Tube::PexHalf);
        },
        brings: &[],
        takes: &[],
    },
    Case {
        change: |draft| {
            typed_flow(draft, "0.7");
            draft.set_tube(Tube::CopperMHalf);
        },
        brings: &["watch loop velocity: more-flow, purge-at-high-flow"],
        takes: &["holds loop velocity"],
    },
    // Fast, likewise.
    Case {
        change: |draft| typed_flow(draft, "8"),
        brings: &["watch loop velocity: less-flow, other-tube, second-circuit"],
        takes: &["holds loop velocity"],
    },
    Case {
        change: |draft| {
            drop(draft, "2");
            circuit(draft, CircuitField::PipeFilm, "0");
        },
        brings: &[
            "watch loop velocity: less-flow, larger-drop, other-tube, second-circuit",
            "watch loop tube-carries: second-circuit, other-tube, larger-drop",
        ],
        takes: &["holds loop velocity", "holds loop tube-carries"],
    },
    Case {
        change: |draft| {
            typed_flow(draft, "20");
            draft.set_tube(Tube::CopperLOneAndQuarter);
        },
        brings: &["watch loop velocity: less-flow, second-circuit"],
        takes: &["holds loop velocity"],
    },
    // 2 x 96 ft2 x 2.8 x 70 °F = 37 600 Btu/h; half-inch type M at 4 ft/s and 20 °F carries 31 000.
    Case {
        change: |draft| {
            long_walls(draft, "2.8");
            drop(draft, "20");
            draft.set_tube(Tube::CopperMHalf);
        },
        // Each room loses 157 Btu/(h ft2) of its floor.
        brings: &[
            "watch house per-area",
            "watch loop velocity: less-flow, larger-drop, other-tube, second-circuit",
            "watch loop tube-carries: second-circuit, other-tube, larger-drop",
        ],
        takes: &["holds house per-area", "holds loop velocity", "holds loop tube-carries"],
    },
    Case {
        change: |draft| circuit(draft, CircuitField::BoilerLimit, "170"),
        brings: &["stop boiler supply: lower-supply"],
        takes: &["holds boiler supply"],
    },
    Case {
        change: |draft| circuit(draft, CircuitField::BoilerLimit, "180"),
        brings: &[],
        takes: &[],
    },
    Case {
        change: |draft| {
            long_walls(draft, "0.5");
            circuit(draft, CircuitField::Supply, "133");
        },
        brings: &["watch boiler return-cool: bypass, condensing-boiler"],
        takes: &[],
    },
    Case {
        change: |draft| {
            long_walls(draft, "0.5");
            circuit(draft, CircuitField::Supply, "140");
        },
        brings: &[],
        takes: &[],
    },
    // The property data end at 105 °C, 221 °F.
    Case {
        change: |draft| {
            circuit(draft, CircuitField::Supply, "222");
            circuit(draft, CircuitField::BoilerLimit, "230");
        },
        brings: &[
            "stop boiler outside-data: lower-supply",
            "watch boiler boils: fill, lower-supply",
        ],
        takes: &[],
    },
    Case {
        change: |draft| {
            circuit(draft, CircuitField::Supply, "221");
            circuit(draft, CircuitField::BoilerLimit, "230");
        },
        brings: &["watch boiler boils: fill, lower-supply"],
        takes: &[],
    },
    // Without elements there is nothing on the loop to judge.
    Case {
        change: |draft| {
            draft.remove_surface(FIRST, FIRST_WALL);
            draft.remove_surface(SECOND, SECOND_WALL);
        },
        brings: &["watch room-1 no-load: add-surfaces", "watch room-3 no-load: add-surfaces"],
        takes: &[
            "holds house rooms-heated",
            "holds house per-area",
            "holds loop drop",
            "holds loop velocity",
            "holds loop tube-carries",
        ],
    },
    // Pipes in warm air put in more than the elements take out: no length to speak of.
    Case {
        change: |draft| {
            circuit(draft, CircuitField::Supply, "80");
            circuit(draft, CircuitField::PipeSurroundings, "100");
            circuit(draft, CircuitField::PipeFilm, "50 W/m²K");
            room(draft, FIRST, RoomField::PipeTo, "500");
            wall(draft, SurfaceField::U, "0.02", "0.02");
        },
        brings: &[
            "watch house per-area",
            "watch boiler return-cool: hotter-boiler, condensing-boiler",
        ],
        takes: &["holds house per-area", "holds loop tube-carries"],
    },
];

/// Rooms and pipes need some 8100 Btu/h, the loop gives 9100, and 11 gal go round.
pub(super) const PLANT: &[Case] = &[
    Case {
        change: |draft| plant(draft, PlantField::Output, "7000"),
        brings: &["stop boiler boiler-size: larger-boiler, reduce-loss"],
        takes: &[],
    },
    Case {
        change: |draft| plant(draft, PlantField::Output, "9000"),
        brings: &["holds boiler boiler-size"],
        takes: &[],
    },
    Case {
        change: |draft| plant(draft, PlantField::Output, "15000"),
        brings: &["watch boiler boiler-size: smaller-boiler, modulating-boiler"],
        takes: &[],
    },
    // The indirect tank counts besides, or alone.
    Case {
        change: |draft| {
            draft.plant.tank = TankHeating::AtOnce;
            plant(draft, PlantField::Output, "65000");
            plant(draft, PlantField::LeastOutput, "9000");
        },
        brings: &["stop boiler boiler-size: larger-boiler, reduce-loss"],
        takes: &[],
    },
    Case {
        change: |draft| {
            draft.plant.tank = TankHeating::Priority;
            plant(draft, PlantField::Output, "65000");
            plant(draft, PlantField::LeastOutput, "9000");
        },
        brings: &["holds boiler boiler-size"],
        takes: &[],
    },
    // 30 000 Btu/h too many warm 11 gal by 20 °F in four minutes, with 60 gal more in half an hour.
    Case {
        change: |draft| plant(draft, PlantField::LeastOutput, "40000"),
        brings: &["watch boiler short-cycle: modulating-boiler, buffer, join-zones"],
        takes: &[],
    },
    Case {
        change: |draft| {
            plant(draft, PlantField::LeastOutput, "40000");
            plant(draft, PlantField::OtherVolume, "60");
        },
        brings: &[],
        takes: &[],
    },
    // 18 ft of water weigh 7.8 psi: next to nothing is left of 8, and no boiling point above 215 °F.
    Case {
        change: |draft| {
            plant(draft, PlantField::TopHeight, "18");
            plant(draft, PlantField::Fill, "8");
        },
        brings: &["watch boiler fill-low: fill"],
        takes: &[],
    },
    Case {
        change: |draft| {
            plant(draft, PlantField::TopHeight, "18");
            plant(draft, PlantField::Fill, "8");
            circuit(draft, CircuitField::Supply, "216");
            circuit(draft, CircuitField::BoilerLimit, "230");
        },
        brings: &["stop boiler boils: fill, lower-supply"],
        takes: &[],
    },
    Case { change: |draft| plant(draft, PlantField::TopHeight, "18"), brings: &[], takes: &[] },
    // 9 ft of water and 5 psi are 8.9 psi.
    Case {
        change: |draft| plant(draft, PlantField::Relief, "9"),
        brings: &["watch boiler relief-near"],
        takes: &[],
    },
    Case {
        change: |draft| plant(draft, PlantField::Relief, "8.5"),
        brings: &["stop boiler relief-near"],
        takes: &[],
    },
    Case {
        change: |draft| plant(draft, PlantField::Fill, "28"),
        brings: &["watch boiler relief-near: fill"],
        takes: &[],
    },
    // Cold air around the pipes, and the same with a filling that stands it.
    Case {
        change: |draft| circuit(draft, CircuitField::PipeSurroundings, "20"),
        brings: &["watch loop may-freeze: warm-pipes, glycol"],
        takes: &[],
    },
    Case {
        change: |draft| {
            circuit(draft, CircuitField::PipeSurroundings, "20");
            draft.plant.antifreeze = Antifreeze::PropyleneGlycol;
        },
        brings: &[],
        takes: &[],
    },
    // A crawl space is where pipes run, a garage is not.
    Case {
        change: |draft| cold_space(draft, RoomUse::CrawlSpace),
        brings: &["watch room-5 may-freeze: warm-pipes, glycol"],
        takes: &[],
    },
    Case { change: |draft| cold_space(draft, RoomUse::Garage), brings: &[], takes: &[] },
    // A cool return, by what the boiler asks of it.
    Case {
        change: |draft| {
            long_walls(draft, "0.5");
            circuit(draft, CircuitField::Supply, "128");
        },
        brings: &["watch boiler return-cool: hotter-boiler, condensing-boiler"],
        takes: &[],
    },
    Case {
        change: |draft| {
            long_walls(draft, "0.5");
            circuit(draft, CircuitField::Supply, "128");
            plant(draft, PlantField::LeastReturn, "115");
        },
        brings: &[],
        takes: &[],
    },
    Case {
        change: |draft| {
            long_walls(draft, "0.5");
            circuit(draft, CircuitField::Supply, "128");
            draft.plant.boiler = BoilerKind::Condensing;
        },
        brings: &[],
        takes: &[],
    },
];

fn cold_space(draft: &mut Draft, used: RoomUse) {
    let space = draft.add_space(used, "");
    room(draft, space, RoomField::FloorArea, "100");
    room(draft, space, RoomField::Temperature, "20");
}
