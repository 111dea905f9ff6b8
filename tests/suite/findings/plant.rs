//! Jobs for the boiler and the filling: output, cycles, pressures, frost, the boiler's return.

use super::cases::{Case, circuit, long_walls};
use crate::support::{room, set};
use finrun_engine::building::RoomUse;
use finrun_engine::job::{
    Antifreeze, BoilerKind, CircuitField, Draft, Field, PlantField, RoomField, TankHeating,
};

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

fn plant(draft: &mut Draft, field: PlantField, text: &str) {
    set(draft, Field::Plant(field), text);
}

fn cold_space(draft: &mut Draft, used: RoomUse) {
    let space = draft.add_space(used, "");
    room(draft, space, RoomField::FloorArea, "100");
    room(draft, space, RoomField::Temperature, "20");
}
