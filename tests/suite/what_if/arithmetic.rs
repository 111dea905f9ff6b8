//! What a change of U saves, by the handbook: heat is U times area times the difference of
//! temperatures, and in a year U times area times degree-hours (ASHRAE Handbook, Fundamentals: steady
//! heat through a surface, and the degree-day method; from memory).

use super::{add_u, weigh};
use crate::season::station;
use crate::support::{DEMO, add_opening, add_room, add_wall, cold_day, open, set};
use finrun_engine::building::OpeningKind;
use finrun_engine::job::{
    BillsField, ChangeField, ChangeKind, CircuitField, Draft, Field, HouseField, OpeningField,
    UValue,
};
use finrun_engine::quantity::{Money, Power, Unit};
use finrun_engine::what_if::Payback;

/// By hand: windows of 3 by 5 ft twice and of 4 by 4 ft are 46 ft2. From 0.50 to 0.30 Btu/(h ft2 F) at
/// 70 °F in and 0 °F out they lose 0.20 x 46 x 70 = 644 Btu/h less.
fn room_with_windows() -> Draft {
    let mut draft = cold_day();
    let room = add_room(&mut draft, "Room", "20", "10");
    let wall = add_wall(&mut draft, room, "60", "0.1");
    for (width, height) in [("3", "5"), ("3", "5"), ("4", "4")] {
        let size = [(OpeningField::Width, width), (OpeningField::Height, height)];
        let id = add_opening(&mut draft, room, wall, OpeningKind::Window, &size);
        draft.opening_mut(room, wall, id).expect("it").u_value = UValue::TypedU;
        set(&mut draft, Field::Opening(room, wall, id, OpeningField::U), "0.50");
    }
    draft
}

fn btu_h(power: Power) -> f64 {
    power.to(Unit::BtuPerHour)
}

#[test]
fn windows_save_u_times_area_times_difference() {
    let mut draft = room_with_windows();
    add_u(&mut draft, ChangeKind::Windows, "0.30");
    let found = weigh(&draft);
    let saved = btu_h(found.before.load - found.after.load);
    assert!((saved - 644.0).abs() < 1e-6, "{saved}");
    // All of it: 0.1 x (480 - 46) x 70 and 0.5 x 46 x 70 Btu/h.
    assert!((btu_h(found.before.load) - (3038.0 + 1610.0)).abs() < 1e-6);
}

/// The shipped bungalow, its windows from `../jobs/make_bungalow.py`: 92 ft2 in rooms of 70 °F and 6 ft2 in
/// the bath of 74 °F. From 0.30 to 0.20 they lose 0.10 x (92 x (70 - t) + 6 x (74 - t)) less.
#[test]
fn the_bungalows_windows_save_the_same() {
    let draft = open(DEMO);
    let t = f64::from(draft.station.as_ref().expect("its station").t99_f);
    let load = |u: &str| {
        let mut draft = draft.clone();
        add_u(&mut draft, ChangeKind::Windows, u);
        btu_h(weigh(&draft).after.load)
    };
    let expected = 0.10 * (92.0 * (70.0 - t) + 6.0 * (74.0 - t));
    let saved = load("0.30") - load("0.20");
    assert!((saved - expected).abs() < 1e-6, "{saved} {expected}");
}

/// By hand: 9.2 Btu/(h F) less, times 24 h times 7400 degree-days below 65 °F, from where gains carry the
/// house, are 1,633,920 Btu; at 80 % of 100,000 Btu that is 20.424 therms. At 1.50 each they are 30.636 a
/// year, and 612.72 pays back in 20 years.
#[test]
fn windows_save_u_times_area_times_degree_hours_of_fuel() {
    let mut draft = room_with_windows();
    // Water never runs short, and pipes lose nothing outside the room.
    set(&mut draft, Field::House(HouseField::Outdoors), "-40");
    set(&mut draft, Field::Circuit(CircuitField::PipeFilm), "0");
    draft.station = Some(station());
    let id = add_u(&mut draft, ChangeKind::Windows, "0.30");
    set(&mut draft, Field::Bills(BillsField::Efficiency), "80");
    set(&mut draft, Field::Bills(BillsField::Price), "1.50");
    set(&mut draft, Field::Change(id, ChangeField::Cost), "612.72");
    let found = weigh(&draft);
    let [before, after] =
        [&found.before, &found.after].map(|side| side.year.expect("a year").expect("a year"));
    let saved = before.fuel.expect("fuel") - after.fuel.expect("fuel");
    assert!((saved / 20.424 - 1.0).abs() < 1e-3, "{saved}");
    let money = before.fuel_cost.expect("a cost") - after.fuel_cost.expect("a cost");
    assert!((money.si() / 30.636 - 1.0).abs() < 1e-3, "{money:?}");
    assert_eq!(found.cost, Money::from_si(612.72));
    match found.payback {
        Payback::Years(years) => assert!((years / 20.0 - 1.0).abs() < 1e-3, "{years}"),
        other => panic!("{other:?}"),
    }
}

/// By hand: 0.5 air changes an hour less of 20 by 10 by 8 ft are 800 ft3/h, and 0.018 Btu/(ft3 F) (the
/// trade's 1.08 over 60) at 70 °F of difference make 1008 Btu/h.
#[test]
fn tighter_air_saves_its_flow() {
    let mut draft = room_with_windows();
    set(&mut draft, Field::House(HouseField::AirChanges), "0.8");
    let id = draft.add_change(ChangeKind::Air);
    set(&mut draft, Field::Change(id, ChangeField::AirChanges), "0.3");
    let found = weigh(&draft);
    let saved = btu_h(found.before.load - found.after.load);
    assert!((saved / 1008.0 - 1.0).abs() < 2e-3, "{saved}");
}

/// A room like another brings its whole loss, and its element.
#[test]
fn one_more_room_adds_its_load() {
    let mut draft = room_with_windows();
    draft.add_change(ChangeKind::RoomLike);
    let found = weigh(&draft);
    assert_eq!(found.after.rooms.len(), 2);
    assert!((btu_h(found.after.load) - 2.0 * btu_h(found.before.load)).abs() < 1e-6);
    assert!(found.after.element > found.before.element);
}
