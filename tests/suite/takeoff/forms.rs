//! Where a thing stands and in which size: what a count alone does not tell.

use super::{counted, part, row, sum};
use crate::support::{add_room, add_wall, cold_day, set, solve};
use finrun_engine::building::{Level, RoomId};
use finrun_engine::job::{
    Antifreeze, Arrangement, CircuitField, Draft, Field, LegField, LegKind, PlantField, PriceField,
    RoomField,
};
use finrun_engine::pipe::Tube;
use finrun_engine::quantity::{Length, Unit};
use finrun_engine::takeoff::item::{Class, Form, Item, Reason, Whose};
use finrun_engine::takeoff::spacing::hangers;

fn vents(draft: &Draft) -> Vec<Whose> {
    let items = counted(draft);
    let vents = items.iter().filter(|item| item.class == Class::Part(PriceField::AirVent));
    vents.map(|item| item.whose).collect()
}

/// Air rises: the vent of a loop is upstairs, wherever on the loop that is; but only at an element, as it
/// sits on its end.
#[test]
fn a_loop_is_vented_at_its_highest_element() {
    for high in 0..3 {
        let (mut draft, rooms) = row();
        let all: Vec<RoomId> = rooms.iter().map(|(room, _)| *room).collect();
        draft.room_mut(all[high]).expect("it").level = Level::Second;
        assert_eq!(vents(&draft), [Whose::Room(all[high])]);
        // Without an element up there, the last of those below that have one.
        set(&mut draft, Field::Room(all[high], RoomField::OtherHeat), "99999");
        let last = if high == 2 { all[1] } else { all[2] };
        assert_eq!(vents(&draft), [Whose::Room(last)]);
    }
}

/// A reducer is sold by its larger end. Mains of 1 in, branches of 1/2 in, elements and the boiler room of
/// 3/4 in, three rooms: at each room two from the main to the branch and two from the element to the branch;
/// two where the main leaves the boiler room and comes back to it.
#[test]
fn a_reducer_goes_by_its_larger_end() {
    let (mut draft, _) = row();
    let zone = draft.zones[0].id;
    draft.arrange(zone, Arrangement::DirectReturn);
    let (large, middle, small) = (Tube::CopperMOne, Tube::CopperMThreeQuarter, Tube::CopperMHalf);
    assert_eq!(draft.tube, middle);
    (draft.zones[0].main, draft.zones[0].pipe) = (large, small);
    let items = counted(&draft);
    let reducers = |tube: Tube, to: Tube| {
        sum(&items, |item| {
            item.class == Class::Part(PriceField::Reducer)
                && item.tube == Some(tube)
                && item.form == Form::To(to)
        })
    };
    assert_eq!((reducers(large, small), reducers(middle, small)), (6.0, 6.0));
    let (_, design) = solve(&draft);
    let boiler = design.piping.passage(finrun_engine::network::Place::BoilerRoom).expect("it").tube;
    let at_boiler = if boiler == large { 0.0 } else { 2.0 };
    assert_eq!(reducers(large, boiler), at_boiler);
    assert_eq!(part(&items, PriceField::Reducer), 12.0 + at_boiler);
}

/// By hand: a return of 160 °F that is to be 165 takes (165 - 160)/(180 - 160), a quarter, of supply water,
/// by a bypass with a valve between two tees; to be 175, three quarters, by a mixing valve with one tee.
#[test]
fn a_cold_return_is_warmed_by_the_parts_for_it() {
    let parts = |least: &str| {
        let (mut draft, _) = row();
        set(&mut draft, Field::Circuit(CircuitField::Supply), "180");
        set(&mut draft, Field::Circuit(CircuitField::Drop), "20");
        set(&mut draft, Field::Plant(PlantField::LeastReturn), least);
        let items = counted(&draft);
        let of = |field| {
            let is_one =
                |item: &Item| item.class == Class::Part(field) && item.reason == Reason::ColdReturn;
            sum(&items, is_one)
        };
        [PriceField::BalancingValve, PriceField::Tee, PriceField::MixingValve].map(of)
    };
    assert_eq!(parts("130"), [0.0, 0.0, 0.0]);
    assert_eq!(parts("165"), [1.0, 2.0, 0.0]);
    assert_eq!(parts("175"), [0.0, 1.0, 1.0]);
}

/// Glycol is sold by the gallon can: three parts of it to seven of water by mass are nearly three tenths of
/// what the loop holds, rounded up to whole cans. (Pure glycol weighs 1.04 kg/L, so that it is a little less
/// by volume: from memory.)
#[test]
fn glycol_is_bought_by_the_can() {
    let (mut draft, _) = row();
    draft.plant.antifreeze = Antifreeze::PropyleneGlycol;
    set(&mut draft, Field::Plant(PlantField::GlycolShare), "30");
    set(&mut draft, Field::Plant(PlantField::BoilerVolume), "20");
    set(&mut draft, Field::Plant(PlantField::OtherVolume), "30");
    let (_, design) = solve(&draft);
    let volume = design.plant.as_ref().and_then(|plant| plant.volume).expect("a volume").total;
    let gallons = volume.si() / 0.003_785_411_784;
    let cans = part(&counted(&draft), PriceField::Glycol);
    let (least, most) = ((0.28 * gallons).ceil(), (0.31 * gallons).ceil());
    assert!((least..=most).contains(&cans), "{cans} cans for {gallons} gallons");
}

/// By hand: a hanger for each 6 ft begun of copper, for each 32 in begun of PEX (International Plumbing Code,
/// table 308.5, from memory); brackets at both ends of a run and no farther apart than 4 ft.
#[test]
fn hangers_and_brackets_keep_their_distance() {
    let inches = |inches: f64| Length::of(inches, Unit::Inch);
    for (long, copper, pex) in
        [(32.0, 1, 1), (33.0, 1, 2), (72.0, 1, 3), (73.0, 2, 3), (150.0, 3, 5)]
    {
        assert_eq!(hangers(inches(long), Tube::CopperMThreeQuarter), copper, "{long} in");
        assert_eq!(hangers(inches(long), Tube::PexThreeQuarter), pex, "{long} in");
    }
    // 10 and 3 ft in a row are 13 ft: four spaces, five brackets.
    let mut draft = cold_day();
    let room = add_room(&mut draft, "Room", "14", "10");
    let wall = add_wall(&mut draft, room, "14", "0.05");
    draft.fix_pieces(room, wall, 0, vec![10, 3]);
    let items = counted(&draft);
    assert_eq!(sum(&items, |item| matches!(item.class, Class::Piece(_))), 0.0, "no piece more");
    assert_eq!(part(&items, PriceField::Cradle), 5.0);
}

/// Where two pieces meet there is a coupling under a splice cover; between the pieces of two walls there is
/// none. An enclosure that starts on the way to a room, behind a room without one, goes on in the room's own
/// once.
#[test]
fn enclosures_are_spliced_where_they_meet() {
    let mut draft = cold_day();
    let room = add_room(&mut draft, "Corner room", "8", "8");
    for pieces in [vec![4], vec![3, 2]] {
        let wall = add_wall(&mut draft, room, "8", "0.05");
        draft.fix_pieces(room, wall, 0, pieces);
    }
    let items = counted(&draft);
    assert_eq!(sum(&items, |item| item.reason == Reason::BetweenPieces), 1.0 + 1.0);

    let (mut draft, rooms) = row();
    draft.add_leg(rooms[2].0, LegKind::Along);
    set(&mut draft, Field::Leg(rooms[2].0, 0, LegField::Length), "3");
    let splices = |draft: &Draft| {
        sum(&counted(draft), |item| {
            item.class == Class::Part(PriceField::SpliceCover)
                && item.reason == Reason::EnclosureRunsOn
        })
    };
    assert_eq!(splices(&draft), 2.0, "behind the second room's element, and before the third's");
    set(&mut draft, Field::Room(rooms[1].0, RoomField::OtherHeat), "99999");
    assert_eq!(splices(&draft), 1.0);
}
