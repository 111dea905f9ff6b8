//! Jobs for the loop and its water: drop, velocity, what the tube carries, supply and return.

use super::cases::{Case, circuit, long_walls, typed_flow, wall};
use super::{FIRST, FIRST_WALL, SECOND, SECOND_WALL};
use crate::support::room;
use finrun_engine::job::{CircuitField, Draft, FlowBasis, RoomField, SurfaceField};
use finrun_engine::pipe::Tube;

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

fn drop(draft: &mut Draft, fahrenheit: &str) {
    draft.flow_basis = FlowBasis::FromDrop;
    circuit(draft, CircuitField::Drop, fahrenheit);
}
