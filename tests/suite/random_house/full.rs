//! Random houses with all that lies around heated rooms: unheated spaces, ground, a leakage from any
//! source, and assemblies of the user's own.

use super::{houses, number};
use crate::support::{house, room, set};
use finrun_engine::building::{
    Material, OpenFlue, OpeningKind, Place, Position, RoomId, RoomUse, Shelter, Soil, Storeys,
    SurfaceKind,
};
use finrun_engine::job::{
    AirBasis, AirField, AssemblyField, Behind, Draft, EdgeBasis, Field, GroundField, GroundMethod,
    HouseField, LayerField, LayerMaterial, RoomField, Shape, SurfaceField, UValue,
};
use finrun_engine::named::Named;
use proptest::prelude::*;
use proptest::sample::{Index, select};

#[derive(Debug, Clone)]
struct AirPlan {
    basis: AirBasis,
    storeys: Storeys,
    shelter: Shelter,
    flue: OpenFlue,
    blower: f64,
    area: Option<f64>,
    /// In, out, share won back.
    fans: (f64, f64, f64),
}

#[derive(Debug, Clone)]
struct GroundPlan {
    soil: Soil,
    method: GroundMethod,
    edge: EdgeBasis,
    edge_depth: f64,
    edge_r: f64,
    mean: f64,
    /// How much colder the coldest month is.
    colder: f64,
}

#[derive(Debug, Clone)]
struct SpacePlan {
    used: RoomUse,
    size: (f64, f64),
    temperature: Option<f64>,
    air_changes: Option<f64>,
    /// With all that such a space has around it, or cut off.
    shell: bool,
    /// A wall to another space, or to a room.
    beside: Option<Index>,
}

/// What is changed of one heated room.
#[derive(Debug, Clone)]
struct RoomPlan {
    level: usize,
    cut: Option<(f64, f64)>,
    ceiling: Option<Index>,
    floor: FloorPlan,
    /// Depth of a wall in the earth, in feet.
    buried: Option<f64>,
}

#[derive(Debug, Clone)]
enum FloorPlan {
    None,
    Ground { perimeter: Option<f64> },
    Space(Index),
}

#[derive(Debug, Clone)]
struct LayerPlan {
    material: Option<Material>,
    thickness: f64,
    r: f64,
    between: bool,
}

fn airs() -> impl Strategy<Value = AirPlan> {
    let fans = (0.0..200.0, 0.0..200.0, 0.0..90.0);
    (
        (select(AirBasis::ALL), select(Storeys::ALL), select(Shelter::ALL), select(OpenFlue::ALL)),
        (100.0..5000.0, proptest::option::of(10.0..300.0), fans),
    )
        .prop_map(|((basis, storeys, shelter, flue), (blower, area, fans))| AirPlan {
            basis,
            storeys,
            shelter,
            flue,
            blower,
            area,
            fans,
        })
}

fn grounds() -> impl Strategy<Value = GroundPlan> {
    (
        (select(Soil::ALL), select(GroundMethod::ALL), select(EdgeBasis::ALL)),
        (0.5..6.0, 1.0..40.0, 35.0..65.0, 0.0..40.0),
    )
        .prop_map(|((soil, method, edge), (edge_depth, edge_r, mean, colder))| GroundPlan {
            soil,
            method,
            edge,
            edge_depth,
            edge_r,
            mean,
            colder,
        })
}

fn spaces() -> impl Strategy<Value = SpacePlan> {
    (
        (select(&RoomUse::ALL[1..]), (5.0..40.0, 5.0..30.0), any::<bool>()),
        (
            proptest::option::weighted(0.2, -20.0..60.0),
            proptest::option::of(0.0..5.0),
            proptest::option::of(any::<Index>()),
        ),
    )
        .prop_map(|((used, size, shell), (temperature, air_changes, beside))| SpacePlan {
            used,
            size,
            temperature,
            air_changes,
            shell,
            beside,
        })
}

fn rooms() -> impl Strategy<Value = RoomPlan> {
    let floor = prop_oneof![
        Just(FloorPlan::None),
        proptest::option::of(0.0..60.0).prop_map(|perimeter| FloorPlan::Ground { perimeter }),
        any::<Index>().prop_map(FloorPlan::Space),
    ];
    (
        0..3_usize,
        proptest::option::of((0.5..5.5, 0.5..5.5)),
        proptest::option::of(any::<Index>()),
        floor,
        proptest::option::weighted(0.3, 0.0..8.0),
    )
        .prop_map(|(level, cut, ceiling, floor, buried)| RoomPlan {
            level,
            cut,
            ceiling,
            floor,
            buried,
        })
}

fn layers() -> impl Strategy<Value = LayerPlan> {
    let material = proptest::option::weighted(0.8, select(Material::ALL));
    (material, 0.1..10.0, 0.0..30.0, any::<bool>())
        .prop_map(|(material, thickness, r, between)| LayerPlan { material, thickness, r, between })
}

/// Drafts without an error, of one to five rooms and up to three spaces.
pub(crate) fn full_houses() -> impl Strategy<Value = Draft> {
    let own = (
        proptest::collection::vec(layers(), 1..6),
        proptest::option::weighted(0.2, 0.02..2.0),
        any::<Index>(),
    );
    (
        houses(),
        airs(),
        grounds(),
        proptest::collection::vec(spaces(), 0..4),
        proptest::collection::vec(rooms(), 5),
        own,
    )
        .prop_map(|(mut draft, air, ground, spaces, rooms, (layers, u, wall))| {
            type_air(&mut draft, &air);
            type_ground(&mut draft, &ground);
            let ids: Vec<RoomId> =
                spaces.iter().map(|space| type_space(&mut draft, space)).collect();
            for (plan, &id) in spaces.iter().zip(&ids) {
                join_space(&mut draft, plan, id);
            }
            let heated: Vec<RoomId> = draft.rooms.iter().map(|room| room.id).collect();
            for (&id, plan) in heated.iter().zip(&rooms) {
                type_room(&mut draft, id, plan, &ids);
            }
            build_own(&mut draft, &layers, u, heated[wall.index(heated.len())]);
            draft
        })
}

fn type_air(draft: &mut Draft, plan: &AirPlan) {
    let AirPlan { basis, storeys, shelter, flue, blower, area, fans } = plan.clone();
    (draft.air.basis, draft.air.storeys) = (basis, storeys);
    (draft.air.shelter, draft.air.flue) = (shelter, flue);
    let typed = [
        (AirField::BlowerFlow, Some(blower)),
        (AirField::LeakageArea, area),
        (AirField::Supply, Some(fans.0)),
        (AirField::Exhaust, Some(fans.1)),
        (AirField::Recovery, Some(fans.2)),
    ];
    for (field, value) in typed {
        if let Some(value) = value {
            set(draft, Field::Air(field), &number(value));
        }
    }
}

fn type_ground(draft: &mut Draft, plan: &GroundPlan) {
    (draft.ground.soil, draft.ground.method) = (plan.soil, plan.method);
    draft.ground.edge = plan.edge;
    set(draft, Field::Ground(GroundField::EdgeDepth), &number(plan.edge_depth));
    set(draft, Field::Ground(GroundField::EdgeR), &number(plan.edge_r));
    house(draft, HouseField::MeanTemperature, &number(plan.mean));
    house(draft, HouseField::ColdestMonth, &number(plan.mean - plan.colder));
}

fn type_space(draft: &mut Draft, plan: &SpacePlan) -> RoomId {
    let id = draft.add_space(plan.used, "");
    let fields = [
        (RoomField::FloorLength, Some(plan.size.0)),
        (RoomField::FloorWidth, Some(plan.size.1)),
        (RoomField::Temperature, plan.temperature),
        (RoomField::AirChanges, plan.air_changes),
    ];
    for (field, value) in fields {
        if let Some(value) = value {
            room(draft, id, field, &number(value));
        }
    }
    if plan.shell {
        draft.add_shell(id);
    }
    id
}

fn join_space(draft: &mut Draft, plan: &SpacePlan, id: RoomId) {
    let others: Vec<RoomId> = draft.all_rooms().map(|r| r.id).filter(|&r| r != id).collect();
    if let Some(beside) = plan.beside {
        let behind = Behind::Room(others[beside.index(others.len())]);
        let wall = draft.add_surface_to(id, SurfaceKind::Wall, behind).expect("the space is there");
        set(draft, Field::Surface(id, wall, SurfaceField::Length), "12");
        draft.add_opening(id, wall, OpeningKind::Door).expect("the wall is there");
        // A crawl space is lower than a door.
        set(draft, Field::Surface(id, wall, SurfaceField::Height), "7");
    }
}

fn type_room(draft: &mut Draft, id: RoomId, plan: &RoomPlan, spaces: &[RoomId]) {
    use finrun_engine::building::Level;
    let chosen = draft.room_mut(id).expect("the room is there");
    chosen.level = Level::ALL[plan.level];
    if let Some((length, width)) = plan.cut {
        chosen.shape = Shape::LShape;
        room(draft, id, RoomField::CutLength, &number(length));
        room(draft, id, RoomField::CutWidth, &number(width));
    }
    let add = |draft: &mut Draft, kind, behind| {
        draft.add_surface_to(id, kind, behind).expect("the room is there")
    };
    let space = |index: Index| spaces.get(index.index(spaces.len().max(1))).copied();
    if let Some(space) = plan.ceiling.and_then(space) {
        add(draft, SurfaceKind::Ceiling, Behind::Room(space));
    }
    match plan.floor {
        FloorPlan::None => {}
        FloorPlan::Ground { perimeter } => {
            let floor = add(draft, SurfaceKind::Floor, Behind::Ground);
            if let Some(perimeter) = perimeter {
                let field = Field::Surface(id, floor, SurfaceField::Perimeter);
                set(draft, field, &number(perimeter));
            }
        }
        FloorPlan::Space(index) => {
            if let Some(space) = space(index) {
                add(draft, SurfaceKind::Floor, Behind::Room(space));
            }
        }
    }
    if let Some(depth) = plan.buried {
        let wall = add(draft, SurfaceKind::Wall, Behind::Ground);
        set(draft, Field::Surface(id, wall, SurfaceField::Length), "15");
        set(draft, Field::Surface(id, wall, SurfaceField::Depth), &number(depth));
    }
}

/// An assembly of the user's own, and a wall of this room built of it.
fn build_own(draft: &mut Draft, layers: &[LayerPlan], u: Option<f64>, room: RoomId) {
    let id = draft.add_assembly(Position::Wall, "");
    for (row, plan) in layers.iter().enumerate() {
        draft.add_layer(id);
        let layer = &mut draft.assembly_mut(id).expect("just added").layers[row];
        layer.material = plan.material.map_or(LayerMaterial::TypedR, LayerMaterial::Listed);
        layer.place = if plan.between { Place::BetweenFraming } else { Place::Through };
        set(draft, Field::Layer(id, row, LayerField::Thickness), &number(plan.thickness));
        set(draft, Field::Layer(id, row, LayerField::R), &number(plan.r));
    }
    if let Some(u) = u {
        set(draft, Field::Assembly(id, AssemblyField::U), &number(u));
    }
    let walls = &mut draft.room_mut(room).expect("the room is there").surfaces;
    if let Some(wall) = walls.iter_mut().find(|surface| surface.kind == SurfaceKind::Wall) {
        wall.u_value = UValue::Own(id);
    }
}
