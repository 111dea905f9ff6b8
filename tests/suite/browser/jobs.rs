//! Jobs made in code, as files that the page opens. Their numbers are invented.

use finrun_engine::building::{OpeningKind, Position, RoomId, RoomUse, SurfaceId, SurfaceKind};
use finrun_engine::climate::{Found, Station, Table, search};
use finrun_engine::job::FlowBasis;
use finrun_engine::job::{
    AirBasis, AirField, Arrangement, Behind, BillField, Choice, Draft, Field, File, GroundField,
    Hung, LayerField, LegField, LegKind, OpeningField, Pick, PriceField, PumpKind, PumpPointField,
    RoomField, Shape, StockField, SurfaceField, UValue, read,
};
use finrun_engine::named::find;
use finrun_engine::network::TypicalPump;
use finrun_engine::quantity::System;

use super::place::Place;
use crate::support::{DEMO, add_opening, job_of, open, room, set};

/// A job with something on every page, and where its rooms stand.
pub(super) struct Whole {
    pub(super) text: String,
    /// A heated room, L-shaped, with openings.
    pub(super) kitchen: Place,
    /// A heated room whose floor is on the ground.
    pub(super) den: Place,
    pub(super) attic: Place,
    pub(super) crawl_space: Place,
}

pub(super) fn file(draft: Draft) -> String {
    serde_json::to_string(&File::new(draft)).expect("a draft is JSON")
}

pub(super) fn burlington() -> Station {
    let table = Table::parse(include_str!("../../../public/climate.txt")).expect("the table");
    match search(&table, "05401", None) {
        Found::Zip { hits, .. } => hits.first().expect("a station").station.clone(),
        other => panic!("05401 came to {other:?}"),
    }
}

fn add_room(draft: &mut Draft, name: &str, level: &str, sizes: [&str; 2]) -> RoomId {
    let id = draft.add_room(name);
    draft.room_mut(id).expect("just added").level = find(level).expect("a storey");
    room(draft, id, RoomField::FloorLength, sizes[0]);
    room(draft, id, RoomField::FloorWidth, sizes[1]);
    id
}

fn add_space(draft: &mut Draft, used: RoomUse, sizes: [&str; 2]) -> RoomId {
    let id = draft.add_space(used, "");
    room(draft, id, RoomField::FloorLength, sizes[0]);
    room(draft, id, RoomField::FloorWidth, sizes[1]);
    id
}

fn walls(draft: &Draft, room: RoomId) -> Vec<SurfaceId> {
    let surfaces = draft.room(room).map(|r| r.surfaces.as_slice()).unwrap_or_default();
    surfaces.iter().filter(|s| s.kind == SurfaceKind::Wall).map(|s| s.id).collect()
}

/// Two storeys with an attic, a garage and a crawl space; an assembly of its own, bills, a blower
/// door's flow, edge insulation.
pub(super) fn whole_draft() -> (Draft, [RoomId; 4]) {
    let mut draft = Draft::new("Every page has something", System::Us);
    draft.station = Some(burlington());
    draft.air.basis = AirBasis::BlowerDoor;
    set(&mut draft, Field::Air(AirField::BlowerFlow), "2100");
    set(&mut draft, Field::Air(AirField::Exhaust), "50");
    draft.pick(Choice::Edge, Pick::Edge(find("vertical").expect("a kind of edge")));
    set(&mut draft, Field::Ground(GroundField::EdgeDepth), "2");
    set(&mut draft, Field::Ground(GroundField::EdgeR), "10");

    let attic = add_space(&mut draft, RoomUse::Attic, ["32", "24"]);
    draft.add_shell(attic);
    let crawl = add_space(&mut draft, RoomUse::CrawlSpace, ["32", "16"]);
    room(&mut draft, crawl, RoomField::Height, "4");
    draft.add_shell(crawl);
    for wall in walls(&draft, crawl) {
        set(&mut draft, Field::Surface(crawl, wall, SurfaceField::Depth), "2");
    }
    let garage = add_space(&mut draft, RoomUse::Garage, ["24", "12"]);
    draft.add_shell(garage);

    let own = draft.add_assembly(Position::Wall, "Bedroom wall, filled");
    for (row, (material, inches)) in
        [("gypsum-board", "0.5"), ("cellulose", "3.5"), ("softwood", "0.75")].iter().enumerate()
    {
        draft.add_layer(own);
        let material = finrun_engine::job::LayerMaterial::Listed(find(material).expect("listed"));
        draft.pick(Choice::LayerMaterial(own, row), Pick::LayerMaterial(material));
        set(&mut draft, Field::Layer(own, row, LayerField::Thickness), inches);
    }

    let kitchen = add_room(&mut draft, "Kitchen", "first", ["20", "16"]);
    draft.room_mut(kitchen).expect("just added").shape = Shape::LShape;
    room(&mut draft, kitchen, RoomField::CutLength, "8");
    room(&mut draft, kitchen, RoomField::CutWidth, "5");
    draft.add_shell(kitchen);
    let all = walls(&draft, kitchen);
    for (wall, size) in [(all[0], ["5", "4"]), (all[1], ["3", "4"])] {
        let sizes = [(OpeningField::Width, size[0]), (OpeningField::Height, size[1])];
        add_opening(&mut draft, kitchen, wall, OpeningKind::Window, &sizes);
    }
    draft.set_behind(kitchen, all[3], Behind::Room(garage));

    let den = add_room(&mut draft, "Den", "first", ["12", "16"]);
    draft.add_walls(den);
    draft.add_surface_to(den, SurfaceKind::Floor, Behind::Ground);

    let bedroom = add_room(&mut draft, "Bedroom", "second", ["16", "12"]);
    draft.add_shell(bedroom);
    for wall in walls(&draft, bedroom) {
        draft.surface_mut(bedroom, wall).expect("a wall").u_value = UValue::Own(own);
    }
    let bath = add_room(&mut draft, "Bath", "second", ["8", "8"]);
    draft.add_shell(bath);

    // Upstairs hangs on tees, by a curve of its own; a way is told step by step.
    let upstairs = draft.add_zone();
    draft.zone_mut(upstairs).expect("just added").name = "Upstairs".to_owned();
    draft.arrange(upstairs, Arrangement::DiverterTees);
    for room in [bedroom, bath] {
        draft.place_room(room, Hung { zone: upstairs, branch: 0 }, None);
    }
    for kind in [LegKind::InsideCorner, LegKind::Doorway] {
        draft.add_leg(den, kind);
    }
    draft.pick(Choice::Pump, Pick::Pump(PumpKind::Points));
    for (row, (flow, head)) in [("0", "12"), ("6", "9"), ("12", "2")].into_iter().enumerate() {
        set(&mut draft, Field::PumpPoint(row, PumpPointField::Flow), flow);
        set(&mut draft, Field::PumpPoint(row, PumpPointField::Head), head);
    }

    set(&mut draft, Field::Stocked(5, StockField::Price), "41.50");
    set(&mut draft, Field::Stocked(5, StockField::Have), "2");
    set(&mut draft, Field::Price(PriceField::Joint), "3.50");
    let wall = walls(&draft, den)[0];
    draft.fix_pieces(den, wall, 0, vec![3]);

    for (from, to, therms) in [
        ("2024-11-01", "2024-12-05", "94"),
        ("2024-12-05", "2025-01-07", "138"),
        ("2025-01-07", "2025-02-06", "149"),
        ("2025-02-06", "2025-03-10", "131"),
        ("2025-05-10", "2025-06-12", "22"),
    ] {
        let id = draft.add_bill();
        let bill = draft.bill_mut(id).expect("just added");
        (bill.from, bill.to) = (from.to_owned(), to.to_owned());
        set(&mut draft, Field::Bill(id, BillField::Amount), therms);
    }
    (draft, [kitchen, den, attic, crawl])
}

pub(super) fn whole() -> Whole {
    let (draft, rooms) = whole_draft();
    let bills = job_of(&draft).bills;
    assert!(matches!(bills, Some(Ok(_))), "{bills:?}");
    placed(draft, rooms)
}

fn placed(draft: Draft, rooms: [RoomId; 4]) -> Whole {
    let [kitchen, den, attic, crawl_space] = rooms.map(|id| Place::Room(u64::from(id.0)));
    Whole { text: file(draft), kitchen, den, attic, crawl_space }
}

/// The same with something that cannot be read, or is missing, on every page.
pub(super) fn whole_with_errors() -> Whole {
    let (mut draft, ids) = whole_draft();
    let [kitchen, den, attic, crawl] = ids;
    let wrong = |draft: &mut Draft, field: &str, text: &str| {
        let all = crate::support::fields(draft);
        let field = all.iter().find(|at| at.to_string() == field).expect(field);
        set(draft, *field, text);
    };
    for (field, text) in [
        ("house.outdoors", "cold"),
        ("house.coldest-month", "80"),
        ("house.indoors", "700"),
        ("air.blower-flow", "12x"),
        ("air.recovery", "150"),
        ("ground.edge-r", "R"),
        ("ground.wall-thickness", "99 ft"),
        ("certainty.air", "lots"),
        ("element.output", "5 8 0"),
        ("element.piece-5.price", "a few"),
        ("price.joint", "3 50"),
        ("circuit.supply", "500"),
        ("zone-0.trunk", "far"),
        ("pump.point-2.head", "50"),
    ] {
        wrong(&mut draft, field, text);
    }
    room(&mut draft, kitchen, RoomField::FloorLength, "12x");
    room(&mut draft, kitchen, RoomField::CutWidth, "99");
    room(&mut draft, den, RoomField::Height, "-8");
    let wall = walls(&draft, den)[0];
    draft.fix_pieces(den, wall, 0, vec![10, 9]);
    set(&mut draft, Field::Leg(den, 1, LegField::Length), "there");
    room(&mut draft, attic, RoomField::FloorWidth, "7 6");
    room(&mut draft, crawl, RoomField::VentArea, "many");
    let garage = draft.spaces.last().expect("a garage").id;
    draft.remove_room(garage);
    let own = draft.assemblies[0].id;
    set(&mut draft, Field::Layer(own, 1, LayerField::Thickness), "thick");
    draft.add_assembly(Position::Roof, "");
    let (first, second) = (draft.bills.list[0].id, draft.bills.list[1].id);
    draft.bill_mut(first).expect("a bill").to = "2024-12-20".to_owned();
    draft.bill_mut(second).expect("a bill").to = String::new();
    set(&mut draft, Field::Bill(second, BillField::Amount), "a lot");
    let errors = read(&draft).errors;
    assert!(errors.len() > 15, "{errors:?}");
    placed(draft, ids)
}

/// A job of so many rooms: those of the demonstration house, over and over.
pub(super) fn many_rooms(count: usize) -> String {
    let mut draft = open(DEMO);
    let few: Vec<RoomId> = draft.rooms.iter().map(|room| room.id).collect();
    for (number, id) in (few.len()..count).zip(few.iter().cycle()) {
        draft.copy_room(*id, &format!("Room {}", number + 1)).expect("it is there");
    }
    assert_eq!(draft.rooms.len(), count);
    file(draft)
}

/// The same on eight zones by valve, driven by a circulator's curve that heats them all: every zone is
/// solved alone too.
pub(super) fn many_rooms_on_zones(count: usize) -> String {
    let mut draft = open(&many_rooms(count));
    draft.flow_basis = FlowBasis::FromPump;
    draft.pump.kind = PumpKind::Typical(TypicalPump::Medium);
    let rooms: Vec<RoomId> = draft.rooms.iter().map(|room| room.id).collect();
    for some in rooms.chunks(count.div_ceil(8)).skip(1) {
        let zone = draft.add_zone();
        for id in some {
            draft.room_mut(*id).expect("it is there").zone = zone;
        }
    }
    assert_eq!(draft.zones.len(), 8);
    file(draft)
}

#[test]
fn the_jobs_are_what_they_are_said_to_be() {
    assert_ne!(whole().text, whole_with_errors().text);
    assert_eq!(open(&many_rooms(40)).rooms.len(), 40);
}
