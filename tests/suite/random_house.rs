//! Random jobs: houses, elements and loops within what people build, and a little beyond.

mod full;

pub(crate) use full::full_houses;

use crate::support::{house, room, set};
use finrun_engine::building::{Assembly, OpeningKind, RoomId, SurfaceKind, Used};
use finrun_engine::emitter::HeatingEffect;
use finrun_engine::job::{
    Behind, CircuitField, Draft, ElementField, Field, FlowBasis, HouseField, OpeningField,
    RoomField, SurfaceField, UValue,
};
use finrun_engine::pipe::Tube;
use finrun_engine::quantity::System;
use proptest::prelude::*;
use proptest::sample::{select, subsequence};

#[derive(Debug, Clone)]
enum Beyond {
    Outdoors,
    Unheated(Option<f64>),
    SameTemperature,
    /// The room so many places on, round the list.
    Room(usize),
}

#[derive(Debug, Clone)]
enum Built {
    Listed(usize),
    U(f64),
    R(f64),
}

#[derive(Debug, Clone)]
struct WallPlan {
    length: f64,
    beyond: Beyond,
    built: Built,
    /// Width as a share of the wall.
    window: Option<f64>,
    door: bool,
}

#[derive(Debug, Clone)]
struct RoomPlan {
    size: (f64, f64),
    temperature: Option<f64>,
    air_changes: Option<f64>,
    walls: Vec<WallPlan>,
    ceiling: Option<Built>,
    floor: Option<Built>,
    pipe: f64,
    elbows: u32,
}

#[derive(Debug, Clone)]
struct ElementPlan {
    output: f64,
    exponent: f64,
    effect: HeatingEffect,
    derate: f64,
    bare: f64,
    ends: f64,
    stock: Vec<u8>,
}

#[derive(Debug, Clone)]
struct CircuitPlan {
    tube: Tube,
    supply: f64,
    /// The drop, or the flow.
    flow: Result<f64, f64>,
    surroundings: f64,
    film: f64,
}

fn built() -> impl Strategy<Value = Built> {
    prop_oneof![
        (0..8_usize).prop_map(Built::Listed),
        (0.02..0.5).prop_map(Built::U),
        (2.0..50.0).prop_map(Built::R),
    ]
}

fn walls() -> impl Strategy<Value = WallPlan> {
    let beyond = prop_oneof![
        4 => Just(Beyond::Outdoors),
        1 => proptest::option::of(20.0..60.0).prop_map(Beyond::Unheated),
        1 => Just(Beyond::SameTemperature),
        1 => (1..4_usize).prop_map(Beyond::Room),
    ];
    (5.0..30.0, beyond, built(), proptest::option::of(0.1..0.4), any::<bool>()).prop_map(
        |(length, beyond, built, window, door)| WallPlan { length, beyond, built, window, door },
    )
}

fn rooms() -> impl Strategy<Value = RoomPlan> {
    (
        (6.0..30.0, 6.0..25.0),
        proptest::option::weighted(0.3, 60.0..78.0),
        proptest::option::weighted(0.3, 0.0..2.0),
        proptest::collection::vec(walls(), 1..4),
        proptest::option::of(built()),
        proptest::option::of(built()),
        0.0..40.0,
        0..8_u32,
    )
        .prop_map(|(size, temperature, air_changes, walls, ceiling, floor, pipe, elbows)| {
            RoomPlan { size, temperature, air_changes, walls, ceiling, floor, pipe, elbows }
        })
}

fn elements() -> impl Strategy<Value = ElementPlan> {
    let effects = [
        HeatingEffect::AsTyped,
        HeatingEffect::CertifiedCredited,
        HeatingEffect::CertifiedStrict,
        HeatingEffect::Unknown,
    ];
    (
        300.0..900.0,
        prop_oneof![Just(1.0), 1.2..1.6],
        select(effects.to_vec()),
        60.0..110.0,
        // More bare tube than this can make one long piece on an inside wall shorter in all than
        // several on the outside walls, which are taken first.
        prop_oneof![Just(0.0), 0.0..1.0],
        0.0..8.0,
        subsequence((2..=10).collect::<Vec<u8>>(), 1..=9),
    )
        .prop_map(|(output, exponent, effect, derate, bare, ends, stock)| ElementPlan {
            output,
            exponent,
            effect,
            derate,
            bare,
            ends,
            stock,
        })
}

fn circuits() -> impl Strategy<Value = CircuitPlan> {
    let flow = prop_oneof![(8.0..40.0).prop_map(Ok), (0.3..8.0).prop_map(Err)];
    (select(&Tube::ALL[..]), 120.0..210.0, flow, 30.0..80.0, 0.0..15.0).prop_map(
        |(tube, supply, flow, surroundings, film)| CircuitPlan {
            tube,
            supply,
            flow,
            surroundings,
            film,
        },
    )
}

/// Drafts without an error, of one to five rooms.
pub(crate) fn houses() -> impl Strategy<Value = Draft> {
    (-30.0..45.0, 0.0..9000.0, proptest::collection::vec(rooms(), 1..6), elements(), circuits())
        .prop_map(|(outdoors, altitude, rooms, element, circuit)| {
            let mut draft = Draft::new("Random", System::Us);
            house(&mut draft, HouseField::Outdoors, &number(outdoors));
            house(&mut draft, HouseField::Altitude, &number(altitude));
            type_element(&mut draft, &element);
            type_circuit(&mut draft, &circuit);
            let ids: Vec<RoomId> = rooms.iter().map(|_| draft.add_room("")).collect();
            for (index, plan) in rooms.iter().enumerate() {
                type_room(&mut draft, &ids, index, plan);
            }
            draft
        })
}

fn number(value: f64) -> String {
    format!("{value:.3}")
}

fn type_element(draft: &mut Draft, plan: &ElementPlan) {
    use ElementField::*;
    let fields = [
        (Output, plan.output),
        (Exponent, plan.exponent),
        (Derate, plan.derate),
        (BarePerPiece, plan.bare),
        (EndAllowance, plan.ends),
    ];
    for (field, value) in fields {
        set(draft, Field::Element(field), &number(value));
    }
    draft.element.heating_effect = plan.effect;
    draft.element.stock_ft = plan.stock.clone();
}

fn type_circuit(draft: &mut Draft, plan: &CircuitPlan) {
    use CircuitField::*;
    draft.set_tube(plan.tube);
    let (flow_field, flow) = match plan.flow {
        Ok(drop) => (Drop, drop),
        Err(flow) => (Flow, flow),
    };
    if flow_field == Flow {
        draft.flow_basis = FlowBasis::Typed;
    }
    set(draft, Field::Circuit(flow_field), &number(flow));
    set(draft, Field::Circuit(Supply), &number(plan.supply));
    set(draft, Field::Circuit(PipeSurroundings), &number(plan.surroundings));
    // The box stands in Btu/(h ft2 F); the plan is in W/(m2 K).
    set(draft, Field::Circuit(PipeFilm), &number(plan.film / 5.678));
}

fn type_room(draft: &mut Draft, ids: &[RoomId], index: usize, plan: &RoomPlan) {
    let id = ids[index];
    let fields = [
        (RoomField::FloorLength, Some(plan.size.0)),
        (RoomField::FloorWidth, Some(plan.size.1)),
        (RoomField::Temperature, plan.temperature),
        (RoomField::AirChanges, plan.air_changes),
        (RoomField::PipeTo, Some(plan.pipe)),
    ];
    for (field, value) in fields {
        if let Some(value) = value {
            room(draft, id, field, &number(value));
        }
    }
    room(draft, id, RoomField::Elbows, &plan.elbows.to_string());
    for wall in &plan.walls {
        type_wall(draft, ids, index, wall);
    }
    for (kind, built) in [(SurfaceKind::Ceiling, &plan.ceiling), (SurfaceKind::Floor, &plan.floor)]
    {
        if let Some(built) = built {
            type_surface(draft, id, kind, built);
        }
    }
}

fn type_surface(
    draft: &mut Draft,
    room: RoomId,
    kind: SurfaceKind,
    built: &Built,
) -> finrun_engine::building::SurfaceId {
    let id = draft.add_surface(room, kind).expect("the room is there");
    let used = match kind {
        SurfaceKind::Wall => Used::Wall,
        SurfaceKind::Ceiling => Used::Ceiling,
        SurfaceKind::Floor => Used::Floor,
    };
    let listed: Vec<Assembly> = Assembly::used_in(used).collect();
    let surface = draft.surface_mut(room, id).expect("just added");
    let (field, value) = match *built {
        Built::Listed(index) => {
            surface.u_value = UValue::Listed(listed[index % listed.len()]);
            return id;
        }
        Built::U(value) => (SurfaceField::U, value),
        Built::R(value) => (SurfaceField::R, value),
    };
    surface.u_value = if field == SurfaceField::U { UValue::TypedU } else { UValue::TypedR };
    set(draft, Field::Surface(room, id, field), &number(value));
    id
}

fn type_wall(draft: &mut Draft, ids: &[RoomId], index: usize, plan: &WallPlan) {
    let id = ids[index];
    let wall = type_surface(draft, id, SurfaceKind::Wall, &plan.built);
    set(draft, Field::Surface(id, wall, SurfaceField::Length), &number(plan.length));
    let behind = match plan.beyond {
        Beyond::Outdoors => Behind::Outdoors,
        Beyond::SameTemperature => Behind::SameTemperature,
        Beyond::Unheated(_) => Behind::Unheated,
        Beyond::Room(step) => match ids[(index + step) % ids.len()] {
            other if other != id => Behind::Room(other),
            _ => Behind::SameTemperature,
        },
    };
    draft.surface_mut(id, wall).expect("just added").behind = behind;
    if let Beyond::Unheated(Some(temperature)) = plan.beyond {
        let field = Field::Surface(id, wall, SurfaceField::BehindTemperature);
        set(draft, field, &number(temperature));
    }
    if let Some(share) = plan.window {
        let opening = draft.add_opening(id, wall, OpeningKind::Window).expect("the wall is there");
        let of = |field| Field::Opening(id, wall, opening, field);
        set(draft, of(OpeningField::Width), &number(plan.length * share));
        set(draft, of(OpeningField::Height), "3");
    }
    if plan.door {
        let opening = draft.add_opening(id, wall, OpeningKind::Door).expect("the wall is there");
        let field = Field::Opening(id, wall, opening, OpeningField::Width);
        set(draft, field, "2' 6\"");
    }
}
