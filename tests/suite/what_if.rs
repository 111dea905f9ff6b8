//! Changes that are weighed: the changed job is what a user would have made by hand, and what it saves
//! is what the handbook says.

mod arithmetic;
mod by_hand;

use crate::shipped::{COTTAGE, SHIPPED, TWO_STOREY};
use crate::support::{DEMO, V5_FIXTURE, V6_FIXTURE, open, set};
use finrun_engine::building::{ChangeId, RoomId};
use finrun_engine::design::design;
use finrun_engine::job::{
    AirBasis, BillsField, ChangeField, ChangeKind, Counted, Draft, Field, File, PriceField,
    Problem, StockField, UValue, Whose, read,
};
use finrun_engine::named::Named;
use finrun_engine::quantity::{Money, Power};
use finrun_engine::what_if::{NotWeighed, Payback, Weighed, Weighing, apply, payback, reach};

/// Adds a change to this U.
pub(crate) fn add_u(draft: &mut Draft, kind: ChangeKind, u: &str) -> ChangeId {
    let id = draft.add_change(kind);
    draft.change_mut(id).expect("just added").build = UValue::TypedU;
    set(draft, Field::Change(id, ChangeField::U), u);
    id
}

fn weigh(draft: &Draft) -> Weighed {
    Weighing::of(draft).expect("something to weigh").all().expect("a comparison")
}

#[test]
fn without_changes_nothing_is_weighed() {
    let mut draft = open(DEMO);
    assert_eq!(apply(&draft), draft);
    assert_eq!(Weighing::of(&draft).err(), Some(NotWeighed::NothingOn));
    let id = add_u(&mut draft, ChangeKind::Windows, "0.2");
    draft.change_mut(id).expect("it").counted = Counted::Off;
    assert_eq!(apply(&draft), draft);
    assert_eq!(Weighing::of(&draft).err(), Some(NotWeighed::NothingOn));
}

/// What is on is made and is then no change any more; what is off stays one. Made, it is made.
#[test]
fn what_is_made_is_no_change_any_more() {
    let mut draft = open(TWO_STOREY);
    add_u(&mut draft, ChangeKind::Windows, "0.2");
    let off = add_u(&mut draft, ChangeKind::Ceilings, "0.02");
    draft.change_mut(off).expect("it").counted = Counted::Off;
    let changed = apply(&draft);
    assert_eq!(changed.what_if.len(), 1);
    assert_eq!(changed.what_if[0].id, off);
    assert_eq!(apply(&changed), changed);
}

/// The job knows nothing of its changes.
#[test]
fn a_change_that_is_only_weighed_changes_nothing() {
    for text in SHIPPED {
        let plain = open(text);
        let mut draft = plain.clone();
        for &kind in ChangeKind::ALL {
            let id = draft.add_change(kind);
            for (field, text) in [(ChangeField::FloorLength, "12"), (ChangeField::FloorWidth, "10")]
            {
                set(&mut draft, Field::Change(id, field), text);
            }
        }
        let (with, without) = (read(&draft), read(&plain));
        assert_eq!(with.errors, []);
        assert_eq!(with.job, without.job);
        assert_ne!(read(&apply(&draft)).job, without.job);
    }
}

/// Sides are what the two jobs' own designs and seasons say.
#[test]
fn sides_are_the_designs_of_two_jobs() {
    for text in SHIPPED {
        let mut draft = open(text);
        add_u(&mut draft, ChangeKind::Windows, "0.2");
        add_u(&mut draft, ChangeKind::Ceilings, "0.02");
        let found = weigh(&draft);
        for (side, draft) in [(&found.before, &draft), (&found.after, &apply(&draft))] {
            let job = read(draft).job.expect("a job");
            let design = design(&job);
            assert_eq!(side.load, design.load);
            assert_eq!(side.element, design.element_length());
            assert_eq!(side.pieces, design.piece_count());
            let needed = design.plant.as_ref().and_then(|plant| plant.needed);
            assert_eq!(side.boiler, needed.map(|needed| needed.output));
            let loads: Vec<Power> = design.rooms.iter().map(|room| room.load.total).collect();
            assert_eq!(side.rooms.iter().map(|room| room.load).collect::<Vec<_>>(), loads);
            let long = |room: &finrun_engine::design::RoomDesign| room.element.choice.nominal;
            let element: Vec<_> = design.rooms.iter().map(long).collect();
            assert_eq!(side.rooms.iter().map(|room| room.element).collect::<Vec<_>>(), element);
            let bins = finrun_engine::climate::Season::of(draft.station.as_ref().expect("one"));
            let controls = finrun_engine::season::Controls::of(&job, &design);
            let year = finrun_engine::season::season(&job, &design, &bins.bins(), &controls, None);
            let (year, side_year) = (year.expect("a year"), side.year.expect("a year"));
            let side_year = side_year.expect("a year");
            assert_eq!(side_year.heat_j, year.heat_j);
            let most = year.rooms.iter().map(|room| room.cold_h).fold(0.0, f64::max);
            assert_eq!(side_year.cold_h, most);
            let most = year.rooms.iter().map(|room| room.warm_h).fold(0.0, f64::max);
            assert_eq!(side_year.warm_h, most);
            let short = design.rooms.iter().filter(|room| room.short() > Power::ZERO).count();
            assert_eq!(side.short, short);
            for (room, year) in side.rooms.iter().zip(&year.rooms) {
                assert_eq!((room.cold_h, room.warm_h), (Some(year.cold_h), Some(year.warm_h)));
            }
        }
        assert!(found.after.load < found.before.load);
    }
}

/// By hand: 8400 and 350 are on, 1000 is off.
#[test]
fn only_what_is_on_costs() {
    let mut draft = open(DEMO);
    for (kind, cost, counted) in [
        (ChangeKind::Windows, "8400", Counted::On),
        (ChangeKind::Ceilings, "1000", Counted::Off),
        (ChangeKind::Doors, "350", Counted::On),
    ] {
        let id = add_u(&mut draft, kind, "0.05");
        draft.change_mut(id).expect("it").counted = counted;
        set(&mut draft, Field::Change(id, ChangeField::Cost), cost);
    }
    let found = weigh(&draft);
    assert_eq!((found.cost, found.uncosted), (Money::from_si(8750.0), 0));
}

/// By hand: pieces of one length at 48 each cost 48 times their number, whatever else has a price.
#[test]
fn pieces_cost_their_number_times_their_price() {
    let mut draft = open(DEMO);
    draft.element.stock_ft = vec![6];
    set(&mut draft, Field::Stocked(6, StockField::Price), "48");
    for &field in PriceField::ALL {
        set(&mut draft, Field::Price(field), "3");
    }
    add_u(&mut draft, ChangeKind::Windows, "0.2");
    let found = weigh(&draft);
    for side in [&found.before, &found.after] {
        assert!(side.pieces > 0);
        assert_eq!(side.pieces_cost, Some(Money::from_si(48.0 * side.pieces as f64)));
    }
}

/// A change that lacks its number is not weighed, and says so at its own field; one that is off may.
#[test]
fn what_a_change_lacks_is_said_at_its_field() {
    let mut draft = open(DEMO);
    let id = draft.add_change(ChangeKind::Windows);
    draft.change_mut(id).expect("it").build = UValue::TypedU;
    let problems = |draft: &Draft| -> Vec<(Field, Problem)> {
        read(draft).errors.into_iter().map(|e| (e.field, e.problem)).collect()
    };
    let u = Field::Change(id, ChangeField::U);
    assert_eq!(problems(&draft), [(u, Problem::Missing)]);
    assert_eq!(Weighing::of(&draft).err(), Some(NotWeighed::Unread));
    draft.change_mut(id).expect("it").counted = Counted::Off;
    assert_eq!(problems(&draft), []);
    draft.change_mut(id).expect("it").counted = Counted::On;
    set(&mut draft, u, "0.3");
    assert_eq!(problems(&draft), []);
    // What cannot be read of a change that is off stops nothing.
    let off = add_u(&mut draft, ChangeKind::Doors, "thick");
    draft.change_mut(off).expect("it").counted = Counted::Off;
    assert!(Weighing::of(&draft).is_ok());
    draft.remove_change(off);
    // A cost that is no number is said, too, and nothing else waits for it.
    let cost = Field::Change(id, ChangeField::Cost);
    set(&mut draft, cost, "cheap");
    assert_eq!(read(&draft).errors.len(), 1);
    assert_eq!(read(&draft).errors[0].field, cost);
    assert_eq!(weigh(&draft).uncosted, 1);
    set(&mut draft, cost, "8400");
    assert_eq!((weigh(&draft).cost, weigh(&draft).uncosted), (Money::from_si(8400.0), 0));
    // A room that is gone, and an assembly.
    draft.change_mut(id).expect("it").whose = Whose::Room(RoomId(999));
    assert_eq!(problems(&draft), [(Field::Change(id, ChangeField::Whose), Problem::RoomGone)]);
    let change = draft.change_mut(id).expect("it");
    (change.whose, change.build) =
        (Whose::House, UValue::Own(finrun_engine::building::AssemblyId(999)));
    assert_eq!(problems(&draft), [(u, Problem::AssemblyGone)]);
}

/// Windows wider than the walls of a new room: the changed job is wrong, and says how.
#[test]
fn what_is_wrong_with_the_changed_job_is_said() {
    let mut draft = open(DEMO);
    let id = draft.add_change(ChangeKind::NewRoom);
    for (field, text) in [
        (ChangeField::FloorLength, "8"),
        (ChangeField::FloorWidth, "8"),
        (ChangeField::Windows, "9"),
    ] {
        set(&mut draft, Field::Change(id, field), text);
    }
    match Weighing::of(&draft).err() {
        Some(NotWeighed::Wrong(changed, errors)) => {
            let new = changed.rooms.last().expect("the new room").id;
            assert!(matches!(errors[0].field, Field::Opening(room, ..) if room == new));
        }
        other => panic!("{other:?}"),
    }
}

/// By division: 3000 over 600 a year are 5 years; the money is the user's, and so the unit is nobody's.
#[test]
fn payback_is_cost_over_saving() {
    let money = Money::from_si;
    assert_eq!(payback(money(3000.0), money(600.0)), Payback::Years(5.0));
    assert_eq!(payback(money(0.0), money(600.0)), Payback::Years(0.0));
    for saved in [0.0, -10.0] {
        assert_eq!(payback(money(3000.0), money(saved)), Payback::NothingSaved);
    }
    let mut draft = open(DEMO);
    let id = add_u(&mut draft, ChangeKind::Windows, "0.2");
    assert_eq!(weigh(&draft).payback, Payback::PriceMissing);
    set(&mut draft, Field::Bills(BillsField::Price), "1.50");
    assert_eq!(weigh(&draft).payback, Payback::CostMissing);
    set(&mut draft, Field::Change(id, ChangeField::Cost), "5000");
    let found = weigh(&draft);
    let [before, after] = [&found.before, &found.after]
        .map(|side| side.year.expect("a year").expect("a year").fuel.expect("its fuel"));
    let years = 5000.0 / (1.50 * (before - after));
    assert!(matches!(found.payback, Payback::Years(found) if (found / years - 1.0).abs() < 1e-12));
    // A draughty house burns more.
    let leaky = draft.add_change(ChangeKind::Air);
    set(&mut draft, Field::Change(leaky, ChangeField::AirChanges), "3");
    set(&mut draft, Field::Change(leaky, ChangeField::Cost), "0");
    assert_eq!(weigh(&draft).payback, Payback::NothingSaved);
    draft.station = None;
    crate::support::house(&mut draft, finrun_engine::job::HouseField::Outdoors, "0");
    crate::support::house(&mut draft, finrun_engine::job::HouseField::MeanTemperature, "50");
    crate::support::house(&mut draft, finrun_engine::job::HouseField::ColdestMonth, "25");
    assert_eq!(weigh(&draft).payback, Payback::NoYear);
}

/// Older files have no changes; the sixth version's fixture has one of most kinds, by what it says.
#[test]
fn files_keep_changes() {
    assert_eq!(open(V5_FIXTURE).what_if, []);
    let draft = open(V6_FIXTURE);
    let kinds: Vec<ChangeKind> = draft.what_if.iter().map(|change| change.kind).collect();
    assert_eq!(
        kinds,
        [
            ChangeKind::Windows,
            ChangeKind::Ceilings,
            ChangeKind::OutsideWalls,
            ChangeKind::Air,
            ChangeKind::RoomLike,
            ChangeKind::NewRoom,
            ChangeKind::Roofs,
        ]
    );
    let [windows, ceilings, walls, air, like, new, roof] = &draft.what_if[..] else { panic!() };
    assert_eq!(windows.entries.get(ChangeField::Cost).expect("a cost").text, "8400");
    assert_eq!((ceilings.whose, ceilings.build), (Whose::Room(RoomId(103)), UValue::TypedR));
    assert_eq!((walls.counted, air.leaks), (Counted::Off, AirBasis::BlowerDoor));
    assert_eq!((like.name.as_str(), like.whose), ("Guest room", Whose::Room(RoomId(104))));
    assert_eq!(new.outside.count(), 1);
    assert_eq!(roof.build, UValue::Own(finrun_engine::building::AssemblyId(2)));
    // Two things of one id, and an id still to be given out.
    for id in [101, 999] {
        let mut file = serde_json::to_value(File::new(draft.clone())).expect("a file");
        file["job"]["what_if"][0]["id"] = id.into();
        let file: File = serde_json::from_value(file).expect("its shape");
        assert_eq!(file.open().err(), Some(finrun_engine::job::OpenError::RepeatedId { id }));
    }
}

/// The bungalow's windows by hand, from `../jobs/make_bungalow.py`: 27, 9, 6, 12, 12, 12 and 20 ft2.
#[test]
fn the_reach_of_a_change_is_counted() {
    let mut draft = open(DEMO);
    let id = draft.add_change(ChangeKind::Windows);
    let reach_of = |draft: &Draft, id| reach(draft, draft.change(id).expect("it"));
    let found = reach_of(&draft, id);
    let square_feet = |area: finrun_engine::quantity::Area| area.si() / 0.3048 / 0.3048;
    assert_eq!(found.count, 7);
    assert!((square_feet(found.area.expect("an area")) - 98.0).abs() < 1e-9);
    let bath = draft.rooms[2].id;
    draft.change_mut(id).expect("it").whose = Whose::Room(bath);
    let found = reach_of(&draft, id);
    assert_eq!((found.count, square_feet(found.area.expect("an area")).round()), (1, 6.0));
    // Its one outside wall of 8 by 8 ft without that window.
    let walls = draft.add_change(ChangeKind::OutsideWalls);
    draft.change_mut(walls).expect("it").whose = Whose::Room(bath);
    let found = reach_of(&draft, walls);
    assert_eq!((found.count, square_feet(found.area.expect("an area")).round()), (1, 58.0));
    let cottage = open(COTTAGE);
    assert!(cottage.spaces.iter().any(|space| !space.surfaces.is_empty()));
}
