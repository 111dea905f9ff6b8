//! Every arrangement through the whole engine: balances, valves, circulators, zones.

mod balances;
mod reference_d;
mod valves;
mod zones;

use crate::support::{add_room, add_wall, cold_day, set};
use finrun_engine::building::{RoomId, ZoneId};
use finrun_engine::design::Design;
use finrun_engine::job::{Arrangement, Draft, Field, FlowBasis, RoomField};
use finrun_engine::network::{Passage, Place};

/// Six rooms of the same load, 0.5 Btu/(h ft2 F) x 96 ft2 x 70 °F = 3360 Btu/h, ten feet apart.
fn six_rooms(arrangement: Arrangement) -> Draft {
    rooms(6, arrangement)
}

fn rooms(count: usize, arrangement: Arrangement) -> Draft {
    let mut draft = cold_day();
    for name in ["A", "B", "C", "D", "E", "F", "G", "H"].iter().cycle().take(count) {
        let id = add_room(&mut draft, name, "12", "10");
        add_wall(&mut draft, id, "12", "0.5");
    }
    draft.arrange(ZoneId(0), arrangement);
    draft
}

/// The same in two zones of three rooms.
fn two_zones(arrangement: Arrangement) -> Draft {
    let mut draft = six_rooms(Arrangement::Series);
    let second = draft.add_zone();
    let ids: Vec<RoomId> = draft.rooms.iter().map(|room| room.id).skip(3).collect();
    for id in ids {
        draft.room_mut(id).expect("its room").zone = second;
    }
    draft.arrange(ZoneId(0), arrangement);
    draft.arrange(second, arrangement);
    draft
}

fn from_pump(draft: &mut Draft) {
    draft.flow_basis = FlowBasis::FromPump;
}

fn type_room(draft: &mut Draft, at: usize, field: RoomField, text: &str) {
    let id = draft.rooms[at].id;
    set(draft, Field::Room(id, field), text);
}

/// Unlike rooms and unlike ways, so that nothing is even by chance.
fn uneven(arrangement: Arrangement) -> Draft {
    let mut draft = six_rooms(arrangement);
    for (at, (pipe, elbows)) in
        [("5", "2"), ("22", "6"), ("9", "4"), ("31", "8"), ("4", "0"), ("14", "4")]
            .iter()
            .enumerate()
    {
        type_room(&mut draft, at, RoomField::PipeTo, pipe);
        type_room(&mut draft, at, RoomField::Elbows, elbows);
        let id = draft.rooms[at].id;
        add_wall(&mut draft, id, ["12", "3", "8", "1", "5", "2"][at], "0.4");
    }
    draft
}

const ALL: [Arrangement; 6] = [
    Arrangement::Series,
    Arrangement::Split,
    Arrangement::DiverterTees,
    Arrangement::DirectReturn,
    Arrangement::ReverseReturn,
    Arrangement::HomeRun,
];

fn at(design: &Design, place: Place) -> &Passage {
    design.piping.passage(place).unwrap_or_else(|| panic!("no {place:?}"))
}

fn near(found: f64, expected: f64, share: f64) {
    let off = (found - expected).abs();
    assert!(off <= share * expected.abs().max(1e-9), "{found} instead of {expected}");
}
